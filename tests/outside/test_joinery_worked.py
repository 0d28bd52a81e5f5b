"""Joints worked by hand: every line of the worked joints J1, J2, J3 and J5, and the pencil checks."""

from dataclasses import replace

import pytest

from casewright.joinery.choose import points_for_width, rank
from casewright.joinery.dividers import one_move_correction, stepping
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.families.sliding.joint import Sliding, sliding
from casewright.joinery.families.sliding.rules import divider_top_edges
from casewright.joinery.families.through.joint import Through, through
from casewright.joinery.gauges import first_gauge, second_gauge
from casewright.joinery.groove import Groove, groove_fit
from casewright.joinery.kinds import solve
from casewright.joinery.layout import lay_out
from casewright.joinery.spacing import bevel_degrees, neck, pin_inside
from casewright.measure.findings import Verdict, worst
from casewright.measure.lengths import parse_length, show, show_mm
from casewright.measure.rounding import near64

DRESSER_FRONT = HalfBlind(
    height=8.40625,
    front=0.8125,
    lap=0.1875,
    side=0.5,
    rabbet=0.0625,
    half_pin=0.125,
    pin=0.125,
    tails=5,
    groove=Groove(height=0.375, width=0.25, depth=0.25),
)
BEDSIDE_FRONT = HalfBlind(
    height=3.9375,
    front=0.75,
    lap=0.1875,
    side=0.375,
    rabbet=0.03125,
    half_pin=0.125,
    pin=0.09375,
    tails=3,
    groove=Groove(height=0.25, width=0.25, depth=0.1875),
)
DRESSER_BACK = Through(
    height=7.65625,
    side=0.5,
    back=0.5,
    half_pin=0.1875,
    pin=0.125,
    tails=5,
    groove=Groove(height=0.375, width=0.25, depth=0.25),
)
DRESSER_DIVIDER = Sliding(divider=0.75, case_side=0.75, depth=0.25)

J1 = half_blind(DRESSER_FRONT)
J2 = half_blind(BEDSIDE_FRONT)
J3 = through(DRESSER_BACK)
J5 = sliding(DRESSER_DIVIDER)


def printed(inches: float) -> str:
    """A size as the worked joints print it: to the nearest 1/64, and in millimetres to a tenth."""
    return f"{show(near64(inches))} ({show_mm(inches)})"


def row(tail) -> str:
    """One line of a worked joint's table of tails."""
    return " | ".join(map(printed, (tail.lower_end, tail.upper_end, tail.lower_base, tail.upper_base)))


@pytest.mark.parametrize(
    ("size", "expected"),
    [
        (J1.gauge_1, "5/8 (15.9)"),
        (J1.gauge_2, "7/16 (11.1)"),
        (J1.wrong_gauge_2, "1/2 (12.7)"),
        (J1.rabbet_width, "5/8 (15.9)"),
        (J1.layout.pitch, "1-21/32 (42.1)"),
        (J1.stepping.overshoot, "1/8 (3.2)"),
        (J1.layout.tail_width, "1-17/32 (38.9)"),
        (J1.layout.flare, "5/64 (2.0)"),
        (J1.layout.neck, "1-3/8 (34.9)"),
        (J1.layout.pin_inside, "9/32 (7.1)"),
        (J1.layout.half_pin_inside, "13/64 (5.2)"),
        (J1.chisels.sockets, "1-1/4 (31.8)"),
        (J1.chisels.between_tails, "1/4 (6.4)"),
        (J1.side_shortening, "3/16 (4.8)"),
        (J2.gauge_1, "9/16 (14.3)"),
        (J2.gauge_2, "11/32 (8.7)"),
        (J2.wrong_gauge_2, "3/8 (9.5)"),
        (J2.layout.pitch, "1-17/64 (32.0)"),
        (J2.layout.tail_width, "1-11/64 (29.6)"),
        (J2.layout.neck, "1-1/32 (26.1)"),
        (J2.layout.pin_inside, "15/64 (6.0)"),
        (J3.gauge_side, "1/2 (12.7)"),
        (J3.gauge_back, "1/2 (12.7)"),
        (J3.layout.pitch, "1-31/64 (37.6)"),
        (J3.layout.tail_width, "1-23/64 (34.4)"),
        (J3.layout.flare, "1/16 (1.6)"),
        (J3.lower_edge_offset, "5/8 (15.9)"),
        (J5.tip, "5/8 (15.9)"),
        (J5.neck, "35/64 (13.8)"),
        (J5.socket_floor, "5/8 (15.9)"),
        (J5.socket_mouth, "35/64 (13.8)"),
        (J5.wood_left, "1/2 (12.7)"),
    ],
)
def test_the_sizes_of_the_worked_joints_are_found(size, expected):
    assert printed(size) == expected


@pytest.mark.parametrize(
    ("joint", "number", "expected"),
    [
        (J1, 1, "1/8 (3.2) | 1-21/32 (42.1) | 13/64 (5.2) | 1-37/64 (40.1)"),
        (J1, 2, "1-25/32 (45.2) | 3-5/16 (84.1) | 1-55/64 (47.2) | 3-15/64 (82.2)"),
        (J1, 3, "3-7/16 (87.3) | 4-31/32 (126.2) | 3-33/64 (89.3) | 4-57/64 (124.2)"),
        (J1, 4, "5-3/32 (129.4) | 6-5/8 (168.3) | 5-11/64 (131.4) | 6-35/64 (166.3)"),
        (J1, 5, "6-3/4 (171.5) | 8-9/32 (210.3) | 6-53/64 (173.4) | 8-13/64 (208.4)"),
        (J2, 1, "1/8 (3.2) | 1-19/64 (32.8) | 13/64 (5.0) | 1-7/32 (31.0)"),
        (J2, 2, "1-25/64 (35.2) | 2-35/64 (64.8) | 1-29/64 (37.0) | 2-31/64 (63.0)"),
        (J2, 3, "2-41/64 (67.2) | 3-13/16 (96.8) | 2-23/32 (69.0) | 3-3/4 (95.1)"),
        (J3, 1, "3/16 (4.8) | 1-35/64 (39.2) | 1/4 (6.4) | 1-31/64 (37.6)"),
        (J3, 2, "1-43/64 (42.4) | 3-1/32 (76.8) | 1-47/64 (44.0) | 2-31/32 (75.2)"),
        (J3, 3, "3-5/32 (80.0) | 4-1/2 (114.5) | 3-7/32 (81.6) | 4-7/16 (112.9)"),
        (J3, 4, "4-5/8 (117.6) | 5-63/64 (152.1) | 4-11/16 (119.2) | 5-59/64 (150.5)"),
        (J3, 5, "6-7/64 (155.3) | 7-15/32 (189.7) | 6-11/64 (156.8) | 7-13/32 (188.1)"),
    ],
)
def test_every_tail_of_the_worked_joints_stands_where_it_is_printed(joint, number, expected):
    assert row(joint.layout.tails[number - 1]) == expected


@pytest.mark.parametrize(
    ("number", "expected"),
    [
        (1, "13/16 (20.6) – 2-11/64 (55.1)"),
        (2, "2-19/64 (58.3) – 3-21/32 (92.7)"),
        (3, "3-25/32 (95.9) – 5-1/8 (130.3)"),
        (4, "5-1/4 (133.5) – 6-39/64 (168.0)"),
        (5, "6-47/64 (171.1) – 8-3/32 (205.6)"),
    ],
)
def test_the_tails_at_the_back_of_the_dresser_are_given_from_the_sides_edge(number, expected):
    tail = J3.side_tails[number - 1]

    assert f"{printed(tail.lower_end)} – {printed(tail.upper_end)}" == expected


@pytest.mark.parametrize(
    ("joint", "expected"), [(J1, "21.3"), (J2, "12.0")], ids=["worked joint J1", "worked joint J2"]
)
def test_the_lap_index_of_the_worked_joints_is_safe(joint, expected):
    assert f"{joint.lap_index:.1f}" == expected


def test_the_groove_of_the_bedside_is_hidden_by_55_thousandths():
    assert J2.groove_fit is not None
    assert f"{J2.groove_fit.spare:.3f}" == "0.055"


@pytest.mark.parametrize("joint", [J1, J2, J3, J5], ids=["J1", "J2", "J3", "J5"])
def test_the_worked_joints_pass_every_check(joint):
    assert worst(joint.findings) is Verdict.PASS


def test_narrow_pins_of_the_bedside_are_sawn_out():
    note = next(finding for finding in J2.findings if finding.rule == "JC6")

    assert "fret saw" in str(note.message)


def test_the_dresser_ranks_its_numbers_of_tails_as_printed():
    ranked = rank(8.40625, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32)

    assert [(choice.count, round(choice.score, 1)) for choice in ranked[:4]] == [
        (5, 99.3),
        (6, 93.6),
        (4, 90.6),
        (7, 87.4),
    ]


def test_three_tails_of_the_dresser_score_as_printed_before_the_penalty_for_wide_tails():
    # worked joint J1: t = (8.40625 - 0.25 - 0.25)/3
    assert 100 - points_for_width(2.6354167, 0.5) == pytest.approx(79.7, abs=0.05)  # printed to a tenth


@pytest.mark.parametrize(
    ("number", "inches", "millimetres"),
    [(0, "10", "254.0"), (1, "18-1/2", "469.9"), (2, "26-1/4", "666.8"), (3, "33-1/4", "844.6")],
)
def test_the_dividers_of_the_dresser_stand_where_the_story_stick_has_them(number, inches, millimetres):
    edges = divider_top_edges(0.75, (8.5, 7.75, 7.0, 6.25, 5.5), 0.75)

    assert (show(edges[number]), show_mm(edges[number])) == (inches, millimetres)


def test_the_story_stick_of_the_dresser_closes_at_the_top_of_the_case():
    edges = divider_top_edges(0.75, (8.5, 7.75, 7.0, 6.25, 5.5), 0.75)

    # worked joint J5: the last opening and the sub-top rail bring it to the body height; all binary fractions
    assert edges[-1] + 5.5 + 0.75 == 39.5


@pytest.mark.parametrize(
    ("height", "tails", "pitch"),
    [
        ("5-27/64", 3, 1.7656),
        ("6-11/64", 4, 1.5117),
        ("6-29/32", 4, 1.6953),
        ("7-21/32", 5, 1.5063),
        ("8-13/32", 5, 1.6562),
    ],
)
def test_the_fronts_of_the_dresser_are_stepped_out_as_printed(height, tails, pitch):
    """Worked dresser A, its five rows; the printed number has four decimals."""
    size = float(parse_length(height))

    assert stepping(size, 0.125, 0.125, tails).setting == pytest.approx(pitch, abs=0.00006)


@pytest.mark.parametrize(
    ("height", "tails"),
    [("5-27/64", 3), ("6-11/64", 4), ("6-29/32", 4), ("7-21/32", 5), ("8-13/32", 5), ("3-15/16", 3)],
)
def test_the_front_joint_of_the_dresser_needs_no_more_than_its_sizes(height, tails):
    """Worked dresser A and the bedside: the printed number of tails is the one that is chosen."""
    side, front = (0.375, 0.75) if height == "3-15/16" else (0.5, 0.8125)

    joint = solve("half-blind", {"height": float(parse_length(height)), "front": front, "side": side}).joint

    assert joint.layout.count == tails


def test_check_k12_the_gauges_of_the_dresser():
    assert (first_gauge(0.8125, 0.1875), second_gauge(0.5, 0.0625)) == (0.625, 0.4375)


def test_check_k14_the_dividers_of_the_dresser():
    steps = stepping(8.40625, 0.125, 0.125, 5)

    assert (steps.setting, steps.overshoot) == (1.65625, 0.125)


def test_check_k16_the_neck_and_the_pin_inside():
    flare = 0.625 / 8

    assert (neck(1.53125, flare), pin_inside(0.125, flare)) == (1.375, 0.28125)


@pytest.mark.parametrize(("slope", "degrees"), [(8, 7.13), (6, 9.46)])
def test_check_k17_the_slopes_in_degrees(slope, degrees):
    assert bevel_degrees(slope) == pytest.approx(degrees, abs=0.005)  # printed to a hundredth


def test_check_k18_the_groove_of_the_dresser_is_hidden():
    layout = lay_out(8.40625, 0.125, 0.125, 5, 0.625, 8)

    fit = groove_fit(layout, Groove(height=0.375, width=0.25, depth=0.25))

    assert fit.hidden
    # worked with a pencil: 0.125 + 0.0781, and 0.125 + 1.53125 - 0.0781, to four decimals
    assert (fit.lower, fit.upper) == (pytest.approx(0.2031, abs=6e-5), pytest.approx(1.578, abs=6e-4))


def test_a_landing_that_is_too_long_is_corrected_in_one_move():
    # pencil: five steps landed 7/32 past the mark instead of 1/8: close by (7/32 - 1/8)/5 = 3/160
    assert one_move_correction(7 / 32, 1 / 8, 5) == pytest.approx(-3 / 160, abs=1e-12)  # float error only


def test_a_measured_front_changes_its_lap_and_not_the_locked_gauge():
    thicker = half_blind(replace(DRESSER_FRONT, front=0.828125, locked_gauge_1=0.625))

    # pencil: 53/64 - 40/64 = 13/64
    assert (thicker.gauge_1, thicker.lap, thicker.side_shortening) == (0.625, 0.203125, 0.203125)
    assert thicker.layout == J1.layout


def test_the_first_dividers_socket_stands_between_its_faces_by_hand():
    """J5: the lowest divider's upper face at 10; its neck of 13/24 leaves 5/48 inside each face of 3/4."""
    cut = sliding(replace(DRESSER_DIVIDER, top_edge=10.0, inside_width=37.5))

    # by hand: 10 - 3/4 + 5/48 = 9-17/48 and 10 - 5/48 = 9-43/48; float error only
    assert cut.walls == pytest.approx((9 + 17 / 48, 9 + 43 / 48), abs=1e-12)
    assert cut.over_tails == 38.0
