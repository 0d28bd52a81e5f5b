"""Pinned rabbets against what is printed and what is common practice."""

import pytest

from casewright.joinery.kinds import solve
from casewright.measure.findings import Verdict, worst

FINE_WOODWORKING = "Fine Woodworking, 2007 special issue, front-corner joints"
VARJU = "Varju, “Fine Drawers Without Dovetails”, Fine Woodworking, 2009"
GRIFFITH = "Griffith, Essentials of Woodworking, section 103"
COMMON = "common practice: first pins 1/2 in from the edges, pins at most 1-1/2 in apart, spaced evenly"


def values(found):
    return {setting.name: setting.value for setting in found.settings}


def verdict(found, rule):
    return next(finding.verdict for finding in found.findings if finding.rule == rule)


@pytest.mark.parametrize("front", [0.5, 0.625, 0.75, 0.8125, 0.875, 1.0])
def test_the_rabbet_takes_half_to_two_thirds_of_the_front(front):
    found = solve("pinned-rabbet", {"height": 5.0, "front": front, "side": 0.5}).joint

    assert 1 / 2 - 1e-9 <= found.rabbet / front <= 2 / 3 + 1e-9, FINE_WOODWORKING


@pytest.mark.parametrize(
    ("part", "expected"),
    [(0.45, Verdict.CAUTION), (0.5, Verdict.PASS), (0.66, Verdict.PASS), (0.7, Verdict.CAUTION)],
)
def test_a_rabbet_outside_the_printed_range_is_cautioned(part, expected):
    found = solve("pinned-rabbet", {"height": 5.0, "front": 0.75, "side": 0.5, "lip": 0.75 * (1 - part)})

    assert verdict(found.joint, "rabbet depth") is expected, FINE_WOODWORKING


def test_a_printed_drawer_passes_every_check():
    # a front of 3/4 in, sides of 1/2 in, a bottom of 1/4 in in grooves; the pins go in after gluing up
    asked = {"height": 4.0, "front": 0.75, "side": 0.5, "groove_height": 0.375, "groove_width": 0.25}
    found = solve("pinned-rabbet", asked).joint

    assert worst(found.findings) is Verdict.PASS, VARJU


def test_the_rabbet_is_as_wide_as_the_side_is_thick_and_gauged_on_the_ends():
    found = values(solve("pinned-rabbet", {"height": 4.0, "front": 0.75, "side": 0.5}).joint)

    # “at a distance from the end equal to the thickness of the drawer sides”; fastened through the sides
    assert found["gauge_2"] == 0.5, GRIFFITH
    assert found["drill_depth"] > 0.5, GRIFFITH


@pytest.mark.parametrize(
    ("height", "pins", "spacing"),
    [
        (4.0, 3, 1.5),  # (4 - 1)/1.5 = 2, and 1
        (5.5, 4, 1.5),  # 4.5/1.5 = 3, and 1
        (6.0, 5, 1.25),  # 5/1.5 = 3.33, up to 4, and 1; 5/4
        (8.40625, 6, 1.48125),  # 7.40625/1.5 = 4.94, up to 5, and 1; 7.40625/5
        (3.9375, 3, 1.46875),  # 2.9375/1.5 = 1.96, up to 2, and 1; 2.9375/2
    ],
)
def test_number_and_spacing_of_the_pins_are_as_by_pencil(height, pins, spacing):
    found = values(solve("pinned-rabbet", {"height": height, "front": 0.8125, "side": 0.5}).joint)

    assert (found["pins"], found["margin"]) == (pins, 0.5), COMMON
    assert found["dividers"] == pytest.approx(spacing, abs=1e-12), COMMON  # one division of floats


@pytest.mark.parametrize(
    ("front", "lip", "depth", "side"), [(0.8125, 0.25, 18.0, 17.75), (0.75, 0.1875, 15.5, 15.3125)]
)
def test_the_side_ends_at_the_lip(front, lip, depth, side):
    # side = depth of the drawer - lip
    asked = {"height": 5.0, "front": front, "side": 0.5, "lip": lip, "drawer_depth": depth}

    assert values(solve("pinned-rabbet", asked).joint)["side_length"] == side, COMMON
