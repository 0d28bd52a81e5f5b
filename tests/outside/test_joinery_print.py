"""Our joints against what handbooks and magazines print about dovetails."""

import pytest

from casewright.joinery.choose import rank
from casewright.joinery.defaults import USUAL, usual_lap, usual_pin
from casewright.joinery.gauges import first_gauge
from casewright.joinery.kinds import solve
from casewright.joinery.lap import lap_index
from casewright.joinery.lap_checks import lap_thickness
from casewright.joinery.spacing import bevel_degrees
from casewright.measure.findings import Verdict

FINE_WOODWORKING = "Fine Woodworking, 2007 special issue, p. 84"
JOYCE = "Joyce, The Technique of Furniture Making, Lapped dovetails"
UNDERHILL = "Underhill, The Woodwright's Guide, half-blind dovetails"


@pytest.mark.parametrize(
    ("slope", "degrees", "within", "source"),
    [
        (5, 11.31, 0.005, "angle from square of 1:5, computed by atan(1/n)"),
        (6, 9.462, 0.0005, "angle from square of 1:6, computed by atan(1/n)"),
        (7, 8.13, 0.005, "angle from square of 1:7, computed by atan(1/n)"),
        (8, 7.125, 0.0005, "angle from square of 1:8, computed by atan(1/n)"),
        (9, 6.34, 0.005, "angle from square of 1:9, computed by atan(1/n)"),
        (5.7, 10.0, 0.1, "magazine column on dovetail slope: about 10 degrees, near 1:5.7"),
        (
            12,
            4.8,
            0.05,
            "same column: 1/8 at the narrow end, 1/4 at a baseline 3/4 in away, near 4.8 degrees",
        ),
    ],
)
def test_a_slope_has_the_angle_that_is_printed(slope, degrees, within, source):
    # the tolerance is half of the last digit that is printed, or what “about” allows
    assert bevel_degrees(slope) == pytest.approx(degrees, abs=within), source


@pytest.mark.parametrize("front", [0.75, 0.8125, 0.875])
def test_the_usual_lap_lies_within_the_printed_range(front):
    # for fronts of 3/4 to 7/8 in: laps of 3/32 to 3/16 in
    assert 3 / 32 <= usual_lap(front) <= 3 / 16, FINE_WOODWORKING


def test_a_front_of_three_quarters_has_the_printed_lap_and_gauge():
    lap = usual_lap(0.75)

    assert lap == 3 / 16, JOYCE
    assert first_gauge(0.75, lap) == 9 / 16, FINE_WOODWORKING


@pytest.mark.parametrize("front", [0.75, 0.8125, 0.875, 0.9375, 1.0])
def test_the_usual_sockets_take_three_quarters_to_four_fifths_of_the_front(front):
    part = first_gauge(front, usual_lap(front)) / front

    # Rogowski (2002): about three quarters; rounding the lap to a 16th moves the part by up to 1/24
    assert 0.75 - 1 / 24 <= part <= 0.8 + 1 / 24, UNDERHILL


@pytest.mark.parametrize(
    ("lap", "verdict"),
    [
        (3 / 32 - 1 / 128, Verdict.STOP),
        (3 / 32, Verdict.CAUTION),
        (1 / 8, Verdict.PASS),
        (3 / 16, Verdict.PASS),
    ],
)
def test_a_lap_below_the_printed_range_is_stopped(lap, verdict):
    found = lap_thickness(lap)

    assert found.verdict is verdict, FINE_WOODWORKING


@pytest.mark.parametrize(("side", "lap"), [(0.375, 0.1875), (0.5, 0.1875), (0.375, 0.125)])
def test_joints_within_the_printed_range_have_a_safe_lap_index(side, lap):
    # sides of 3/8 to 1/2 in; the thin end of the laps with the thick end of the sides is what breaks
    assert lap_index(side, lap) <= 30, FINE_WOODWORKING


def test_the_thinnest_printed_lap_with_the_thickest_printed_side_is_stopped():
    # 3/32 and 1/2 in: “can break when chopping”
    assert lap_index(0.5, 3 / 32) > 60, FINE_WOODWORKING


@pytest.mark.parametrize(
    ("height", "whole_pins"),
    [(5.421875, 2), (5.0, 2), (6.171875, 3), (6.90625, 3)],
)
def test_the_best_layout_has_the_printed_number_of_whole_pins(height, whole_pins):
    # two whole pins at a corner of a drawer up to 6 in (152 mm) deep, three above
    best = rank(height, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32)[0]

    assert best.count - 1 == whole_pins, JOYCE


@pytest.mark.parametrize("side", [0.3125, 0.375, 0.5, 0.625])
@pytest.mark.parametrize("height", [3.0, 4.0, 5.5, 7.0, 8.5, 10.0])
def test_tails_of_a_drawer_are_wider_against_their_pins_than_those_of_a_carcase(height, side):
    joint = solve("half-blind", {"height": height, "front": 0.8125, "side": side}).joint

    # tail to pin 2.5 is a fair average for carcases, drawers wider
    assert joint.layout.tail_width / joint.layout.pin > 2.5, JOYCE


@pytest.mark.parametrize("side", [0.3125, 0.375, 0.5, 0.625])
def test_the_usual_pin_is_a_fine_pin(side):
    # common practice: the narrow side of a fine pin is 1/32 to 1/8 in, and a half pin is no thinner
    assert 1 / 32 <= usual_pin(side) <= 1 / 8
    assert USUAL.half_pin_front.value >= usual_pin(side)
