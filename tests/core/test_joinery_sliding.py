"""The sliding dovetail of a divider into a case side."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.sliding.joint import (
    Sliding,
    divider_top_edges,
    sliding,
    tail_neck,
    tail_tip,
    taper,
    usual_socket_depth,
)
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict

openings = st.lists(st.floats(1, 15), min_size=1, max_size=9).map(tuple)


def joint(**changes):
    """The divider of worked joint J5, with changes."""
    return sliding(Sliding(**({"divider": 0.75, "case_side": 0.75, "depth": 0.25} | changes)))


@given(st.floats(0.25, 2), st.floats(0, 0.1), st.floats(0.05, 0.5), st.floats(4, 12))
def test_the_tail_and_the_socket_have_the_same_shape(
    divider: float, shoulder: float, depth: float, slope: float
) -> None:
    tip = tail_tip(divider, shoulder)

    # the flare on each cheek is the depth over the slope; float error only
    assert tip - tail_neck(tip, depth, slope) == pytest.approx(2 * depth / slope, abs=1e-12)


@given(openings, st.floats(0.25, 1.5), st.floats(0.25, 1.5))
def test_between_two_dividers_lies_an_opening(
    heights: tuple[float, ...], bottom: float, divider: float
) -> None:
    edges = divider_top_edges(bottom, heights, divider)

    clear = [upper - divider - lower for lower, upper in pairwise((bottom, *edges))]
    # sums of up to nine openings, float error only
    assert clear == pytest.approx(list(heights[:-1]), abs=1e-9)


def test_a_case_with_one_opening_has_no_divider():
    assert divider_top_edges(0.75, (8.0,), 0.75) == ()


@pytest.mark.parametrize(
    ("length", "expected"),
    [(0.0, 0.0), (3.0, 0.0), (6.0, 1 / 64), (12.0, 1 / 32), (18.0, 3 / 64)],
)
def test_a_long_joint_narrows_by_a_64th_in_six_inches(length, expected):
    assert taper(length) == pytest.approx(expected, abs=1e-12)  # float error only


@pytest.mark.parametrize(
    ("case_side", "expected"),
    [
        (3 / 4, 1 / 4),
        (7 / 8, 1 / 4),
        (1.0, 5 / 16),
        # a third would be 3/16 and leave 3/8
        (5 / 8, 3 / 16),
        # 3/8 must be left
        (1 / 2, 1 / 8),
    ],
)
def test_the_usual_socket_takes_a_third_and_leaves_enough(case_side, expected):
    assert usual_socket_depth(case_side) == expected


@given(st.floats(7 / 16, 2))
def test_the_usual_socket_passes_its_checks(case_side: float) -> None:
    found = joint(case_side=case_side, depth=usual_socket_depth(case_side)).findings

    assert [finding.verdict for finding in found] == [Verdict.PASS] * 3


@pytest.mark.parametrize(
    ("changes", "rule", "verdict", "remedy"),
    [
        ({}, "socket depth", Verdict.PASS, ""),
        ({"depth": 5 / 16}, "socket depth", Verdict.STOP, "Make the socket 1/4 in deep or shallower."),
        ({"depth": 3 / 8}, "wood behind the socket", Verdict.PASS, ""),
        (
            {"depth": 13 / 32},
            "wood behind the socket",
            Verdict.STOP,
            "Make the socket 1/32 in shallower, or the case side 1/32 thicker.",
        ),
        (
            {"case_side": 3 / 8, "depth": 1 / 8},
            "wood behind the socket",
            Verdict.STOP,
            "Make the case side 1/8 in thicker: it is too thin for any socket.",
        ),
        (
            {"slope": 4},
            "JC12",
            Verdict.CAUTION,
            "Set the bevel to 1:5 or slighter; 1:8 is usual in hardwood.",
        ),
    ],
)
def test_a_socket_is_stopped_where_it_weakens_the_side(changes, rule, verdict, remedy):
    found = next(finding for finding in joint(**changes).findings if finding.rule == rule)

    assert (found.verdict, str(found.remedy)) == (verdict, remedy)


def test_the_taper_is_on_the_card_of_a_long_joint_only():
    names = [setting.name for setting in joint(length=18.0).settings]

    assert names[-1] == "taper"
    assert "taper" not in [setting.name for setting in joint(length=3.0).settings]


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"divider": 0.0}, "The divider cannot be 0 in"),
        ({"depth": 0.75}, "goes through the case side of 3/4; make it 1/4"),
        ({"shoulder": -0.1}, "The shoulder cannot be -0.1 in"),
        ({"slope": 0.0}, "A slope of 1:0 is no slope; 1:6 is usual"),
    ],
)
def test_a_size_that_cannot_be_meant_is_refused(changes, sentence):
    with pytest.raises(ValueError, match=sentence):
        joint(**changes)


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"shoulder": 0.375}, "has no tail left; make each shoulder less than 3/8."),
        # tip 1/8, which at 1:2 has no neck from 1/8 deep
        ({"shoulder": 0.3125, "slope": 2}, "has no neck left at 1:2; make the socket less than 1/8 deep."),
    ],
)
def test_a_divider_with_nothing_left_is_refused_with_what_would_do(changes, sentence):
    with pytest.raises(CannotBeLaidOut, match=sentence):
        joint(**changes)
