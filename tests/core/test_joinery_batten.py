"""Breadboard ends and battens: tongue and groove, pegs, slots by the slab's movement; and that it closes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.batten.asked import peg_count, slot_length, usual_tongue, way
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from closing import faults
from units import built, chest

SLAB = {"width": 18.0, "thickness": 0.875, "end": 2.5}


def solved(**changes):
    return solve("batten", {**SLAB, **changes}).joint


def settings(joint):
    return {each.name: each.value for each in joint.settings}


@given(
    width=st.integers(6 * 16, 40 * 16).map(lambda marks: marks / 16),
    thickness=st.integers(10, 24).map(lambda marks: marks / 16),
    tongue=st.sampled_from([0.0, 0.375, 0.5]),
    short=st.sampled_from([0.0, 1.0]),
)
def test_every_end_and_batten_closes(width, thickness, tongue, short):
    if tongue:
        short = 0.0
    assert faults(solved(width=width, thickness=thickness, tongue=tongue, short=short).shape) == []


def test_an_end_by_hand():
    """18 wide, growing 0.16 and shrinking 0.12: pegs at the middle, and 8 from it.

    Half of 18 less the inch at its end is 8, one step of no more than 9. There the slab moves 8/18 of
    the whole: 0.0711 in and 0.0533 out; with a peg of 1/4 and 1/32 at both ends 0.4369, up to 7/16.
    """
    joint = solved(tongue=0.5, grows=0.16, shrinks=0.12)
    said = settings(joint)

    assert said["middle"] == pytest.approx(9)
    assert said["from_middle_1"] == pytest.approx(8)
    assert said["slot_1"] == pytest.approx(7 / 16)
    assert said["groove_depth"] == pytest.approx(17 / 32)
    assert said["tongue_thickness"] == pytest.approx(5 / 16), "the cutter nearest to a third of 7/8"
    assert joint.slots[0].inward == pytest.approx(0.16 * 8 / 18)


def test_a_batten_by_hand_has_screws_and_no_tongue():
    joint = solved(tongue=0.0, short=1.0, grows=0.18, shrinks=0.0)
    said = settings(joint)

    assert "tongue_thickness" not in said
    assert said["screw"] == pytest.approx(0.875 + 0.875 * 2 / 3)
    # 16 long: 7 from the middle; 0.18 x 7 / 18 = 0.07, with 3/16 and twice 1/32 makes 0.32, up to 11/32
    assert said["slot_1"] == pytest.approx(11 / 32)


@pytest.mark.parametrize(("length", "count"), [(6, 3), (20, 3), (20.5, 5), (38, 5), (38.5, 7)])
def test_one_stands_in_the_middle_and_none_too_far_from_the_next(length, count):
    assert peg_count(length, 1, 9) == count


def test_what_lies_twice_as_far_from_the_middle_moves_twice_as_far():
    assert way(0.2, 6, 20) == pytest.approx(2 * way(0.2, 3, 20))
    assert slot_length(0.25, 0, 0, 1 / 32) == pytest.approx(5 / 16)
    assert usual_tongue(0.875) == pytest.approx(7 / 16)


def test_a_cheek_that_is_too_thin_is_cautioned():
    joint = solved(thickness=0.5, tongue=0.25)

    verdicts = {each.rule: each.verdict for each in joint.findings}
    assert verdicts["cheek beside the groove"] is Verdict.CAUTION


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"tongue": 2.5}, "goes through an end"),
        ({"pegs": 4}, "leave none in the middle"),
        ({"width": 2.0}, "too short to be pegged"),
    ],
)
def test_what_cannot_be_is_refused(changes, said):
    with pytest.raises(CannotBeLaidOut, match=said):
        solved(**{"tongue": 0.5, **changes})


@pytest.mark.parametrize(
    ("held", "marks", "board"), [("breadboard", ("E1", "E2"), "end"), ("battens", ("B1", "B2"), "batten")]
)
def test_doors_of_slabs_have_a_card_with_slots_for_their_movement(held, marks, board):
    make = {"kind": "slab", "held": held}
    made = built(chest({"rows": [{"height": 4}, {"holds": "doors"}], "doors": {"make": make}}))

    [placed] = [each for each in made.case_joints if each.kind == "batten"]
    leaves = [leaf.code for door in made.doors for leaf in door.plan.leaves]
    assert placed.places == 2 * len(leaves)
    assert placed.cut_on(board) == tuple(f"{code}-{mark}" for code in leaves for mark in marks)
    assert placed.cut_on("slab") == tuple(f"{code}-W" for code in leaves)
    codes = {part.code for part in made.parts}
    assert set(placed.parts) <= codes
    plan, [flat] = made.doors[0].plan, [each for each in made.findings if each.rule == "door slab flat"]
    assert placed.joint.given.width == plan.width
    assert max(placed.joint.given.grows, placed.joint.given.shrinks) == pytest.approx(flat.found)


def test_a_plain_slab_has_no_such_card():
    make = {"kind": "slab", "held": "plain"}
    made = built(chest({"rows": [{"height": 4}, {"holds": "doors"}], "doors": {"make": make}}))

    assert not [each for each in made.case_joints if each.kind == "batten"]
