"""What a groove for the bottom leaves of the boards of a dovetail and of a box joint."""

import pytest
from hypothesis import given

from casewright.joinery.groove_left import board_for_groove, wood_behind_groove
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from joints import finding, sizes

GROOVE = {"groove_height": 5 / 8, "groove_width": 1 / 4}
BOX = {"height": 4.0, "side": 0.5} | GROOVE
FRONT = {"height": 8.40625, "front": 0.8125, "side": 0.5} | GROOVE
BACK = {"height": 7.65625, "side": 0.5, "back": 0.5} | GROOVE
BY_KIND = [("box", BOX), ("half-blind", FRONT), ("through", BACK)]


@pytest.mark.parametrize(("kind", "values"), BY_KIND)
@pytest.mark.parametrize(
    ("depth", "verdict", "remedy"),
    [
        (1 / 4, Verdict.PASS, ""),
        (17 / 64, Verdict.PASS, ""),  # a 64th is what a plane takes
        (5 / 16, Verdict.STOP, "Make the groove 1/4 in deep, or the side 5/8 in thick."),
    ],
)
def test_a_groove_takes_no_more_than_half_of_a_side(kind, values, depth, verdict, remedy):
    found = finding(solve(kind, values | {"groove_depth": depth}).joint, "side behind groove")

    assert (found.verdict, str(found.remedy)) == (verdict, remedy)


@pytest.mark.parametrize(("kind", "values"), BY_KIND)
@pytest.mark.parametrize("depth", [1 / 2, 3 / 4])
def test_a_groove_through_a_side_is_refused(kind, values, depth):
    with pytest.raises(CannotBeLaidOut, match="goes through the side of 1/2; make it 1/4 deep or shallower"):
        solve(kind, values | {"groove_depth": depth})


def test_a_groove_through_a_board_too_thin_for_any_asks_for_a_thicker_one():
    with pytest.raises(CannotBeLaidOut, match="through the front of 1/8; make the front 1/2 in thick"):
        solve("box", BOX | {"front": 1 / 8, "groove_depth": 1 / 4, "fingers": 8})


def test_the_front_keeps_half_too():
    thin = {"front": 0.5, "lap": 0.125, "side": 0.75, "groove_depth": 5 / 16}

    found = finding(solve("half-blind", FRONT | thin).joint, "front behind groove")

    assert found.verdict is Verdict.STOP


@given(sizes(1 / 16, 1))
def test_a_board_as_thick_as_is_advised_takes_the_groove(depth):
    assert wood_behind_groove(board_for_groove(depth), depth, "side").verdict is Verdict.PASS
