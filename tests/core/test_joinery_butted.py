"""Dowels and loose tenons: where they stand, how deep their holes are, what is said of those that fail."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as some

from casewright.joinery.families.dowels.joint import doweled, usual_dowel
from casewright.joinery.families.loose_tenon.joint import loose_tenoned
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from joints import example, finding, setting


def test_a_doweled_shelf_by_hand():
    """Common practice: 3/8 dowels in 3/4 boards, 1/2 into the face, the rest of 1-1/2 into the end.

    15-1/2 wide with an inch left at both edges: (15-1/2 - 2) / 3 is 4-1/2, so five spaces, six dowels.
    """
    joint = doweled(15.5, 0.75, 0.75, 30, "A")
    assert joint.given.thick == 3 / 8
    assert joint.given.side_depth == 1 / 2
    assert joint.given.length == 1.5
    assert joint.board_depth == 1.5 + 1 / 16 - 1 / 2
    assert joint.places == pytest.approx([1, 3.7, 6.4, 9.1, 11.8, 14.5])
    assert setting(joint, "middle").value == 3 / 8
    assert setting(joint, "board_length").value == 30
    assert {found.verdict for found in joint.findings} == {Verdict.PASS}


def test_no_rounding_adds_up_along_the_row():
    """Five spaces of 2.7 in, each rounded to 2-45/64, would put the last dowel a 64th off."""
    joint = doweled(15.5, 0.75, 0.75, 30, "A")
    assert joint.places[-1] == 15.5 - 1
    assert abs(round(joint.spacing * 64) / 64 * 5 + 1 - 14.5) == 1 / 64


@pytest.mark.parametrize(
    ("board", "dowel"), [(3 / 8, 3 / 16), (1 / 2, 1 / 4), (23 / 32, 5 / 16), (3 / 4, 3 / 8), (1.25, 1 / 2)]
)
def test_a_dowel_is_the_thickest_that_is_sold_up_to_half_of_the_board(board, dowel):
    assert usual_dowel(board) == dowel


def test_loose_tenons_by_hand():
    """Common practice: a third of a 3/4 board thick, 1-1/2 wide, 1/2 into the side; one in a narrow rail."""
    joint = loose_tenoned(16, 0.75, 0.75, 30, "A")
    assert (joint.given.thick, joint.given.along, joint.given.side_depth) == (1 / 4, 1.5, 1 / 2)
    # 1-1/2 from the edges; (16 - 3) / 5 is 2.6, so three spaces and four tenons.
    assert joint.places == pytest.approx([1.5, 1.5 + 13 / 3, 1.5 + 26 / 3, 14.5])
    assert setting(joint, "hole_length").value == 1.5 + 1 / 32
    alone = loose_tenoned(3, 0.75, 0.75, 30, "A")
    assert alone.places == (1.5,)
    assert {found.verdict for found in alone.findings} == {Verdict.PASS}


@pytest.mark.parametrize("kind", ["dowels", "loose-tenon"])
def test_too_deep_a_hole_shows_outside_and_the_number_that_passes_does(kind):
    joint = example(kind, side_depth=0.6875).joint
    one = "hole" if kind == "dowels" else "mortise"
    found = finding(joint, f"behind the {one}s")
    assert found.verdict is Verdict.STOP
    assert finding(example(kind, side_depth=0.75 - found.needed).joint, found.rule).verdict is Verdict.PASS


def test_dowels_too_close_or_too_far_apart_are_named_with_a_number_that_does():
    close = finding(example("dowels", dowels=22).joint, "dowels apart")
    assert close.verdict is Verdict.STOP
    assert str(close.remedy) == "Take 19 or fewer."
    assert finding(example("dowels", dowels=19).joint, "dowels apart").verdict is Verdict.PASS
    far = finding(example("dowels", dowels=2).joint, "dowels apart")
    assert far.verdict is Verdict.CAUTION
    assert finding(example("dowels", dowels=4).joint, "dowels apart").verdict is Verdict.PASS


def test_what_cannot_be_bored_is_refused():
    for wrong in ({"dowel": 0.75}, {"side_depth": 0.75}, {"length": 0.4}, {"margin": 9}, {"dowels": 60}):
        with pytest.raises(CannotBeLaidOut):
            example("dowels", **wrong)


@given(
    kind=some.sampled_from(["dowels", "loose-tenon"]),
    width=some.integers(2 * 64, 40 * 64).map(lambda marks: marks / 64),
    board=some.integers(24, 96).map(lambda marks: marks / 64),
    side=some.integers(24, 96).map(lambda marks: marks / 64),
)
def test_any_row_stands_within_its_board_alike_from_both_edges(kind, width, board, side):
    joint = solve(kind, {"width": width, "board": board, "case_side": side}).joint
    places, along = joint.places, joint.given.along
    assert places[0] - along / 2 > 0
    assert places[0] == pytest.approx(width - places[-1])
    assert all(after - before == pytest.approx(joint.spacing) for before, after in pairwise(places))
    assert all(after - before > along for before, after in pairwise(places))
    assert joint.given.side_depth + joint.board_depth == pytest.approx(joint.given.length + 1 / 16)
    assert joint.given.side_depth < side
    assert joint.given.thick <= min(board, side) / 2 + 1e-9
