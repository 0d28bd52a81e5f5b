"""The through joint at a drawer's back."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.through.joint import Through, through
from casewright.joinery.groove import Groove
from casewright.measure.findings import Verdict

DRESSER = Through(
    height=7.65625,
    side=0.5,
    back=0.5,
    half_pin=0.1875,
    pin=0.125,
    tails=5,
    groove=Groove(height=0.375, width=0.25, depth=0.25),
)
"""The back of worked joint J3."""


@given(st.floats(0, 2))
def test_every_tail_on_the_side_stands_higher_by_the_offset(offset: float) -> None:
    joint = through(replace(DRESSER, lower_edge_offset=offset))

    raised = [tail.lower_end for tail in joint.side_tails]
    # float error only
    assert raised == pytest.approx([tail.lower_end + offset for tail in joint.layout.tails], abs=1e-12)


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ({}, 0.625),
        ({"groove": None}, 0.0),
        ({"lower_edge_offset": 0.75}, 0.75),
        ({"lower_edge_offset": 0.0}, 0.0),
    ],
)
def test_the_back_stands_on_the_groove_unless_it_is_said_otherwise(changes, expected):
    assert through(replace(DRESSER, **changes)).lower_edge_offset == expected


def test_tails_that_stand_proud_move_the_gauge_and_not_the_layout():
    proud = through(replace(DRESSER, proud=1 / 64))

    assert proud.gauge_side == 33 / 64
    assert proud.layout == through(DRESSER).layout


def test_a_rabbet_at_the_back_sets_the_same_trap_as_at_the_front():
    joint = through(replace(DRESSER, rabbet=1 / 16))

    assert (joint.gauge_back, joint.wrong_gauge_back) == (7 / 16, 1 / 2)
    assert "both ends of the back stand 1/16 proud" in str(joint.wrong_gauge_text)


def test_without_a_rabbet_the_side_sets_the_gauge():
    joint = through(DRESSER)

    assert (joint.gauge_back, joint.wrong_gauge_back, joint.wrong_gauge_text) == (0.5, None, "")


@pytest.mark.parametrize(
    ("height", "verdict", "remedy"),
    [
        (1 / 4, Verdict.PASS, ""),
        (3 / 16, Verdict.CAUTION, "Raise the groove by 1/16 in, to 1/4."),
    ],
)
def test_the_side_keeps_a_quarter_below_its_groove(height, verdict, remedy):
    joint = through(replace(DRESSER, groove=Groove(height=height, width=0.25, depth=0.25)))

    found = next(each for each in joint.findings if each.rule == "side below groove")
    assert (found.rule, found.verdict, str(found.remedy)) == ("side below groove", verdict, remedy)


def test_without_a_groove_nothing_is_said_of_it():
    assert "side below groove" not in {
        finding.rule for finding in through(replace(DRESSER, groove=None)).findings
    }


def test_the_card_lists_the_work_in_its_order():
    names = [setting.name for setting in through(DRESSER).settings]

    assert names == [
        "gauge_side",
        "lower_edge_offset",
        "half_pin",
        "dividers",
        "steps",
        "overshoot",
        "correction",
        "slope",
        "bevel",
        "gauge_back",
        "tail_chisel",
        "socket_chisel",
    ]


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"back": 0.0}, "The back cannot be 0 in"),
        ({"proud": -0.1}, "The amount to stand proud cannot be -0.1 in"),
        ({"lower_edge_offset": -0.5}, "The offset cannot be -0.5 in"),
        ({"rabbet": 0.5}, "The rabbet of 1/2 in leaves nothing of the side"),
    ],
)
def test_a_joint_that_cannot_be_meant_is_refused(changes, sentence):
    with pytest.raises(ValueError, match=sentence):
        replace(DRESSER, **changes)


@pytest.mark.parametrize(("rabbet", "said"), [(0.0, False), (1 / 16, True)])
def test_the_card_says_left_after_the_rabbet_only_where_there_is_one(rabbet, said):
    notes = [str(setting.note) for setting in through(replace(DRESSER, rabbet=rabbet)).settings]

    assert any("left after the rabbet" in note for note in notes) is said
