"""Crossing strips: notched for half, as wide as the other measures, and that they close."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.cross_lap.asked import CrossLap, half_notch
from casewright.joinery.families.cross_lap.joint import KIND, cross_lap
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from closing import faults

THICK = st.integers(12, 64).map(lambda marks: marks / 64)
DEEP = st.integers(128, 1280).map(lambda marks: marks / 128)


def joint(**given):
    usual = {"depth": 7.0, "level": 0.5, "upright": 0.5, "notch": 3.5}
    return cross_lap(CrossLap(**{**usual, "level_marks": (8.25,), "upright_marks": (4.25,), **given}))


def settings(found):
    return {setting.name: setting.value for setting in found.settings}


def verdict(found, rule):
    return next(finding.verdict for finding in found.findings if finding.rule == rule)


@given(DEEP, THICK, THICK, st.sampled_from([0.0, 0.002, 0.008]))
def test_crossing_strips_close_but_for_their_play(depth, level, upright, play):
    found = joint(depth=depth, level=level, upright=upright, play=play, notch=half_notch(depth, 2))

    assert faults(found.shape) == []


@given(DEEP)
def test_both_notches_together_are_the_depth_of_the_strips(depth):
    notch = half_notch(depth, 2)
    found = joint(depth=depth, notch=notch)

    # half, down to a 64th: the level strip keeps no less than the upright one
    assert depth / 2 - 1 / 64 < notch <= depth / 2
    assert settings(found)["level_notch"] + settings(found)["upright_notch"] == pytest.approx(
        depth, abs=1e-12
    )


def test_each_notch_is_as_wide_as_the_other_strip_measured():
    found = settings(joint(level=0.49, upright=0.385))

    assert (found["level_width"], found["upright_width"]) == (0.385, 0.49)


def test_every_place_is_counted_from_the_end():
    found = settings(joint(level_marks=(8.25, 17.0, 25.75), upright_marks=(4.25, 9.0)))

    assert [found[f"level_{number}"] for number in (1, 2, 3)] == [8.25, 17.0, 25.75]
    assert [found[f"upright_{number}"] for number in (1, 2)] == [4.25, 9.0]


def test_the_template_has_every_notch_of_both_strips():
    shape = joint(level_marks=(8.25, 17.0), upright_marks=(4.25,)).shape

    level, upright = shape.strips
    assert [outline[0] for outline in level.waste] == [(8.25, 3.5), (17.0, 3.5)]
    assert [outline[0] for outline in upright.waste] == [(4.25, 0.0)]


@pytest.mark.parametrize(
    ("asked", "rule", "expected"),
    [
        ({"notch": 3.5}, "wood left at the lap", Verdict.PASS),
        ({"notch": 4.75}, "wood left at the lap", Verdict.CAUTION),
        ({"notch": 2.25}, "wood left at the lap", Verdict.CAUTION),
        ({"level_marks": (0.5,)}, "wood beyond the lap", Verdict.PASS),
        ({"upright_marks": (0.484375,)}, "wood beyond the lap", Verdict.CAUTION),
        ({"play": 0.008}, "lap fits", Verdict.PASS),
        ({"play": 0.0085}, "lap fits", Verdict.CAUTION),
    ],
)
def test_each_limit_holds_on_both_sides(asked, rule, expected):
    assert verdict(joint(**asked), rule) == expected


def test_a_notch_through_the_strip_is_refused():
    with pytest.raises(CannotBeLaidOut, match="in two"):
        joint(notch=7.0)


def test_left_out_the_notch_is_half_and_there_is_no_play():
    """Common practice of egg crates: half of the depth each, as wide as the other strip."""
    given = {"depth": 6.984375, "level": 0.5, "upright": 0.375, "level_first": 8, "upright_first": 4}
    found = solve(KIND.name, given)

    # half of 6-63/64 is 3-63/128, down to 3-31/64
    assert {chosen.name: chosen.value for chosen in found.chosen} == {"notch": 3.484375, "play": 0.0}
