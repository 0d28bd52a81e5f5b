"""Lapped and tongued boards against figures worked with a pencil, and against the handbook."""

import pytest

from casewright.joinery.families.edge.asked import Edge
from casewright.joinery.families.edge.joint import edge_joint
from casewright.joinery.kinds import solve
from casewright.measure.lengths import show
from casewright.wood.movement import movement

BACK = Edge(
    width=38.75,
    thickness=0.5,
    boards=7,
    tongue=0.0,
    overlap=0.375,
    gap=0.0625,
    movement=0.00248,
    swelling=2.5,
    shrinking=2.3,
)
"""The cherry back of a dresser: seven boards lapped 3/8 with gaps of 1/16 (common practice)."""


def test_seven_boards_over_a_dressers_back():
    """(38-3/4 + 6 x 5/16) / 7 = 5.8036, which is 5-51/64 to the nearest 64th."""
    board = edge_joint(BACK).board

    assert board == pytest.approx(5.8036, abs=0.00005)
    assert round(board * 64) == 5 * 64 + 51


def test_as_few_boards_as_six_inches_allow():
    """(38-3/4 - 5/16) / (6 - 5/16) = 6.76: seven."""
    values = {"width": 38.75, "thickness": 0.5, "overlap": 0.375, "gap": 0.0625, "end_gap": 0.0}

    assert solve("edge-joint", values).joint.given.boards == 7


def test_the_gaps_of_a_year_by_the_handbook():
    """Wood Handbook, chapter 13, equation 13-2: 5.8036 x 0.00248 x 2.5 = 0.0360, and x 2.3 = 0.0331."""
    found = edge_joint(BACK)

    assert found.wettest == pytest.approx(0.0625 - 0.0360, abs=0.00005)
    assert found.driest == pytest.approx(0.0625 + 0.0331, abs=0.00005)
    assert found.covers == pytest.approx(0.375 * (1 - 0.00248 * 2.3) - 0.0956, abs=0.00005)
    assert found.wettest == 0.0625 - movement(found.board, 0.00248, 2.5)


def test_a_tongue_a_third_of_three_quarters():
    """Common practice: a tongue a third of the board, its cheeks the other two."""
    settings = {
        each.name: each.value
        for each in solve("edge-joint", {"width": 38.75, "thickness": 0.75}).joint.settings
    }

    assert {name: show(settings[name]) for name in ("tongue", "cheek", "overlap", "groove_depth")} == {
        "tongue": "1/4",
        "cheek": "1/4",
        "overlap": "3/8",
        "groove_depth": "13/32",
    }
