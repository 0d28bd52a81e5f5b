"""The sliding dovetail of a divider into a case side."""

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.sliding.joint import Sliding, sliding
from casewright.joinery.families.sliding.rules import (
    divider_top_edges,
    tail_neck,
    tail_tip,
    taper,
    usual_socket_depth,
)
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from casewright.measure.lengths import parse_length

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


@given(st.floats(1 / 2, 1 + 1 / 8))
def test_the_usual_socket_passes_its_checks(case_side: float) -> None:
    found = joint(case_side=case_side, depth=usual_socket_depth(case_side)).findings

    assert [finding.verdict for finding in found] == [Verdict.PASS] * 7


@pytest.mark.parametrize(
    ("changes", "rule", "verdict", "remedy"),
    [
        ({}, "socket depth", Verdict.PASS, ""),
        (
            {"depth": 5 / 16},
            "socket depth",
            Verdict.STOP,
            "Make the socket 1/4 in deep or shallower, or the case side 15/16 in thick.",
        ),
        ({"depth": 3 / 8}, "wood behind the socket", Verdict.PASS, ""),
        (
            {"depth": 13 / 32},
            "wood behind the socket",
            Verdict.STOP,
            "Make the socket 1/4 in deep or shallower, or the case side 1-7/32 in thick.",
        ),
        (
            {"case_side": 3 / 8, "depth": 1 / 8},
            "wood behind the socket",
            Verdict.STOP,
            "Make the case side 1/2 in thick, and the socket 1/8 deep.",
        ),
        (
            {"slope": 4},
            "JC12",
            Verdict.CAUTION,
            "Set the bevel to 1:5 or slighter; 1:8 is usual in hardwood.",
        ),
        ({"shoulder": 1 / 32}, "shoulder", Verdict.PASS, ""),
        (
            {"shoulder": 0.0},
            "shoulder",
            Verdict.CAUTION,
            "Cut 1/32 in or more off each face of the divider at the tip.",
        ),
        ({"depth": 1 / 8}, "socket holds", Verdict.PASS, ""),
        ({"depth": 1 / 64}, "socket holds", Verdict.CAUTION, "Make the socket 1/8 in deep or deeper."),
        (
            {"case_side": 3 / 8, "depth": 1 / 64},
            "socket holds",
            Verdict.CAUTION,
            "Make the case side 1/2 in thick, and the socket 1/8 deep.",
        ),
        # the neck is 3/4 - 2 × 9/64 - 1/12 = 37/96, above a half; with 5/32 it is 17/48, below
        ({"shoulder": 9 / 64}, "neck of the tail", Verdict.PASS, ""),
        (
            {"shoulder": 5 / 32},
            "neck of the tail",
            Verdict.CAUTION,
            "Make each shoulder 9/64 in or less, or the socket 3/16 deep.",
        ),
        # 3/4 - 2 × 7/32 - 1/12 = 11/48, below a third
        ({"shoulder": 7 / 32}, "neck of the tail", Verdict.STOP, "Make each shoulder 9/64 in or less."),
        (
            {"divider": 1 / 4},
            "neck of the tail",
            Verdict.STOP,
            "Make each shoulder 1/32 in and the socket 3/16 deep.",
        ),
        (
            {"divider": 1 / 8, "shoulder": 1 / 64, "depth": 1 / 8},
            "neck of the tail",
            Verdict.STOP,
            "Make the divider 15/64 in thick, each shoulder 1/32 and the socket 1/8 deep.",
        ),
        ({"stop": 5 / 16}, "stop at the front", Verdict.PASS, ""),
        ({"stop": 1 / 4}, "stop at the front", Verdict.CAUTION, "Stop it 1/2 in back, or run it through."),
        ({"stop": 0.0}, "stop at the front", Verdict.PASS, ""),
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
        ({"slope": 2.0}, "A slope of 1:2 makes no dovetail: its corners break off. Make it 1:5 or slighter"),
        ({"stop": -0.5}, "The stop cannot be -0.5 in"),
        ({"inside_width": 0.0}, "The inside width cannot be 0 in"),
    ],
)
def test_a_size_that_cannot_be_meant_is_refused(changes, sentence):
    with pytest.raises(ValueError, match=sentence):
        joint(**changes)


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"shoulder": 0.375}, "has no tail left. Make each shoulder 9/64 in or less."),
        # tip 1/8, which at 1:3 has no neck from 3/16 deep
        (
            {"shoulder": 0.3125, "slope": 3},
            "has no neck, at 1:3, left. Make each shoulder 3/32 in or less.",
        ),
        (
            {"length": 18.0, "stop": 18.0},
            "has nothing left of a divider 18 in from front to back; stop it 1/2 back",
        ),
        ({"top_edge": 0.5}, "runs off the end of the case side; put its upper face at 3/4 in or higher"),
    ],
)
def test_a_divider_with_nothing_left_is_refused_with_what_would_do(changes, sentence):
    with pytest.raises(CannotBeLaidOut, match=sentence):
        joint(**changes)


def test_a_stopped_socket_gives_its_length_its_walls_and_the_notch():
    # by hand for J5: neck 13/24, so the mouth lies (3/4 - 13/24)/2 = 5/48 inside each face of the divider
    cut = joint(length=18.0, stop=0.5, inside_width=30.0, top_edge=10.0)

    values = {each.name: (each.value, each.wrong) for each in cut.settings}
    assert values["divider_length"] == (30.5, 30.0)
    assert values["lower_wall"] == (pytest.approx(9.25 + 5 / 48), 9.25)
    assert values["upper_wall"] == (pytest.approx(10 - 5 / 48), 10.0)
    assert values["socket_length"] == (17.5, 18.0)
    assert (values["stop"][0], values["notch_in"][0], values["notch_back"][0]) == (0.5, 0.25, 0.5)
    assert values["taper"][0] == pytest.approx(17.5 / 6 / 64)


def test_without_the_inside_width_the_card_says_what_both_tails_add():
    added = next(each for each in joint().settings if each.name == "added")

    assert (added.value, added.wrong) == (0.5, 0.25)


def test_a_through_socket_has_no_notch():
    names = {each.name for each in joint(length=18.0).settings}

    assert not {"stop", "socket_length", "notch_in", "notch_back"} & names


@pytest.mark.parametrize(("stop", "strips"), [(0.0, 2), (0.5, 3)])
def test_the_socket_is_marked_on_the_case_side_between_the_dividers_faces(stop, strips):
    cut = joint(length=18.0, stop=stop)

    socket = next(each for each in cut.shape.strips if each.board == "case side")
    assert len(cut.shape.strips) == strips
    assert socket.height == 0.75
    (corner, _, opposite, _) = socket.waste[0]
    assert sorted((corner[1], opposite[1])) == pytest.approx([5 / 48, 0.75 - 5 / 48])
    assert min(corner[0], opposite[0]) == stop


@given(st.floats(3 / 16, 2), st.floats(0, 0.5), st.floats(0.02, 0.5), st.floats(3, 12), st.floats(0.25, 1.5))
def test_what_is_advised_for_a_sliding_dovetail_passes(
    divider: float, shoulder: float, depth: float, slope: float, case_side: float
) -> None:
    """Every size that a remedy or a refusal names is taken, until nothing is left to be mended."""
    sizes = {"divider": divider, "shoulder": shoulder, "depth": depth, "slope": slope, "case_side": case_side}

    verdicts = mended(sizes)

    assert set(verdicts) == {Verdict.PASS}


NAMED = {
    "divider": r"divider (\S+)(?: in)? thick",
    "shoulder": r"shoulder (\S+)|Cut (\S+)",
    "depth": r"socket (\S+)(?: in)?(?: deep)",
    "case_side": r"case side (\S+) in thick, and",
    "slope": r"bevel to 1:(\S+)",
}
"""Where a remedy names a size: of ways that are joined by “or” the first is taken."""


def mended(sizes):
    """The verdicts once everything that is advised has been done, one remedy after the other."""
    for _ in range(8):
        try:
            findings = joint(**sizes).findings
        except ValueError as refused:
            advice = [str(refused)]
        else:
            advice = [str(each.remedy) for each in findings if each.remedy]
        if not advice:
            break
        sizes = sizes | named(advice[0])
    return [each.verdict for each in joint(**sizes).findings]


def named(advice):
    """The sizes that a piece of advice names."""
    first = re.split(r", or |; make it ", advice.split("left. ")[-1])[0]
    if "goes through" in advice:
        return {"depth": float(parse_length(re.search(r"make it (\S+?)\.$", advice)[1].strip("≈")))}
    found = {field: re.search(pattern, first) for field, pattern in NAMED.items()}
    return {
        field: float(parse_length(next(filter(None, match.groups())).strip("≈")))
        for field, match in found.items()
        if match
    }
