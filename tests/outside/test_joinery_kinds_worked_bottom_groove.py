"""Drawer bottoms in their grooves against figures worked with a pencil, and against the handbook."""

import pytest

from casewright.joinery.kinds import solve
from casewright.joinery.season import SEASON, change_across
from casewright.measure.lengths import show
from casewright.wood.movement import movement
from casewright.wood.species import wood

WIDE = {
    "width": 37.9375,
    "length": 18.75,
    "side": 0.5,
    "front": 0.8125,
    "movement": 0.00289,
}
"""A dresser's wide drawer with a muntin; sizes by common practice."""
SMALL = {
    "width": 14.9375,
    "length": 13.25,
    "side": 0.375,
    "front": 0.75,
    "slip": 0.375,
    "groove_height": 0.25,
    "movement": 0.0,
}
"""A bedside's drawer with slips and a bottom of plywood; sizes by common practice."""


@pytest.mark.parametrize(
    ("drawer", "setting", "expected", "sum_by_hand"),
    [
        (WIDE, "bottom_width", "17-29/32", "(36-15/16 - 2) / 2 + 1/2 - 1/16"),
        (WIDE, "bottom_depth", "18-3/16", "18-3/4 - 13/16 + 1/4"),
        (WIDE, "muntin_length", "18-3/16", "18-3/4 - 13/16 + 1/4"),
        (WIDE, "muntin_place", "17-15/32", "(36-15/16 - 2) / 2"),
        (WIDE, "muntin_groove", "3/16", "(5/8 - 1/4) / 2"),
        (SMALL, "bottom_width", "13-3/4", "14-15/16 - 3/4 - 3/4 + 3/8 - 1/16"),
        (SMALL, "bottom_depth", "12-3/4", "13-1/4 - 3/4 + 1/4"),
        (SMALL, "slip_length", "12-1/2", "13-1/4 - 3/4"),
        (SMALL, "slip_height", "5/8", "1/4 + 1/4 + 1/8"),
        (SMALL, "groove_depth", "3/16", "half of a slip of 3/8"),
    ],
)
def test_the_sizes_are_those_of_the_pencil(drawer, setting, expected, sum_by_hand):
    settings = {each.name: each.value for each in solve("bottom-groove", drawer).joint.settings}

    assert show(settings[setting]) == expected, sum_by_hand


def test_a_poplar_bottom_grows_and_shrinks_by_the_handbook():
    """Wood Handbook, chapter 13, equation 13-2: 18.1875 x 0.00289 x 2.5, and x 2.3."""
    found = solve("bottom-groove", WIDE).joint

    assert found.grows == pytest.approx(0.1314, abs=0.00005)
    assert found.shrinks == pytest.approx(0.1209, abs=0.00005)


@pytest.mark.parametrize("change", [0.0, 2.5, 4.0])
def test_joints_and_parts_move_alike(change):
    assert change_across(18.1875, 0.00289, change) == movement(18.1875, 0.00289, change)


def test_where_nobody_says_the_wood_is_taken_to_be_flat_sawn_red_oak():
    """Wood Handbook, chapter 13, Table 13-5."""
    assert wood("red oak").tangential == SEASON.movement.value
