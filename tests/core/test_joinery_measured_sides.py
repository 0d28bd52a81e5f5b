"""A front joint by its measured sides: what the wrong gauge does, what is struck out, and what is drawn."""

from dataclasses import replace

import pytest

from casewright.drawing.tail_joints import half_blind_drawing
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.gauges import gauge_groups, groups_as_set
from casewright.measure.findings import Verdict
from casewright.measure.lengths import show

THIN = HalfBlind(
    height=2.75, front=0.75, lap=0.1875, side=0.375, rabbet=0.03125, half_pin=0.125, pin=0.09375, tails=2
)
"""Sides of 3/8 with a rabbet of 1/32, which leaves 11/32."""
FULL = (("A-SL", 23 / 64), ("A-SR", 3 / 8))


@pytest.mark.parametrize(
    ("in_rabbet", "wrong", "depth", "whose"),
    [
        # side 23/64 with its rabbet of 1/32: 21/64, and 23/64 would be 1/32 too deep
        ((("A-SL", 21 / 64),), 23 / 64, "1/32", "A-SL"),
        # 19/64 in the rabbet: 23/64 would be 1/16 too deep
        ((("A-SL", 19 / 64),), 23 / 64, "1/16", "A-SL"),
        # the setting of the thinner side serves both; 3/8 would be 3/8 - 21/64 = 3/64 too deep
        ((("A-SL", 21 / 64), ("A-SR", 11 / 32)), 3 / 8, "3/64", "A-SR"),
    ],
)
def test_the_error_and_what_is_struck_out_are_those_of_the_measured_group(in_rabbet, wrong, depth, whose):
    joint = half_blind(replace(THIN, measured_sides=in_rabbet, full_sides=FULL))

    assert joint.wrong_gauge_2 == wrong
    assert str(joint.wrong_gauge_text).startswith(f"Every socket for {whose} would be {depth} in too deep")
    assert show(joint.wrong_gauge_2 - joint.gauge_2) == depth  # what lies between the two numbers on the card


def test_the_side_is_drawn_as_it_was_measured():
    joint = half_blind(replace(THIN, measured_sides=(("A-SL", 19 / 64),), full_sides=FULL))

    assert (joint.side_seen, joint.rabbet_seen, joint.proud_seen) == (23 / 64, 1 / 16, 0.0)
    said = half_blind_drawing(joint).svg()
    assert "side 23/64" in said
    assert "rabbet 1/16" in said


def test_a_side_a_64th_thicker_than_the_setting_stands_proud_in_the_drawing():
    sides = (("A-SL", 21 / 64), ("A-SR", 11 / 32))

    joint = half_blind(replace(THIN, measured_sides=sides, full_sides=FULL))

    assert (joint.side_seen, joint.rabbet_seen, joint.proud_seen) == (3 / 8, 1 / 32, 1 / 64)


def test_a_side_measured_beside_its_rabbet_sets_no_gauge():
    joint = half_blind(replace(THIN, measured_sides=(("A-SL", 23 / 64),), full_sides=FULL))

    assert joint.gauge_groups == ()
    assert joint.gauge_2 == 11 / 32
    stop = next(each for each in joint.findings if each.rule == "measured in the rabbet")
    assert stop.verdict is Verdict.STOP
    assert "A-SL measured 23/64 in, the side without its rabbet" in str(stop.message)


def test_each_side_has_its_own_setting_and_one_that_was_not_measured_the_drawn_one():
    joint = half_blind(replace(THIN, measured_sides=(("A-SL", 19 / 64),), full_sides=FULL))

    assert joint.second_gauge_for("A-SL") == (19 / 64, True)
    assert joint.second_gauge_for("A-SR") == (11 / 32, False)


def test_sides_take_the_settings_of_the_batch():
    sides, settings = (("A-SL", 11 / 32), ("A-SR", 23 / 64)), (("A-SL", 21 / 64), ("A-SR", 23 / 64))

    joint = half_blind(replace(THIN, measured_sides=sides, shared_settings=settings))

    assert [(group.setting, group.marks) for group in joint.gauge_groups] == [
        (21 / 64, ("A-SL",)),
        (23 / 64, ("A-SR",)),
    ]
    spread = next(each for each in joint.findings if each.rule == "JC11")
    assert "two gauge groups of the whole unit" in str(spread.message)


def test_without_a_rabbet_no_group_has_a_wrong_setting():
    [group] = gauge_groups((("A-SL", 23 / 64), ("A-SR", 3 / 8)))

    assert (group.wrong, group.wrong_text) == ((), "")


def test_of_many_sides_the_first_two_are_named():
    marks = tuple((f"S{number}", 0.3) for number in range(5))

    [group] = groups_as_set(marks, marks, tuple((mark, 0.35) for mark, _ in marks))

    assert "for S0, S1 and 3 more would be" in str(group.wrong_text)
