"""The carcase dovetail against figures worked with a pencil from the geometry of the joint."""

import pytest

from casewright.joinery.families.carcase.layout import dovetailed_length, lay_out_carcase
from casewright.joinery.kinds import solve
from casewright.measure.lengths import show


def test_edge_tails_two_thirds_as_wide_as_worked_by_hand():
    """Common practice: edge tails two thirds of the others. (12 - 1/2 - 5/4) / (4 + 4/3) = 1.921875."""
    found = lay_out_carcase(12.0, 0.25, 0.25, 0.25, 6, 2 / 3, 0.5, 8)

    assert found.middle.tail_width == pytest.approx(1.921875)
    assert found.edge_tail == pytest.approx(1.28125)
    assert found.middle.pitch == pytest.approx(2.171875)
    assert found.middle.flare == 1 / 16


@pytest.mark.parametrize(
    ("tail", "lower", "upper"),
    # from 1/4, with 1-9/32 at the edges and 1-59/64 between, 1/4 apart
    [
        (1, "1/4", "1-17/32"),
        (2, "1-25/32", "3-45/64"),
        (3, "3-61/64", "5-7/8"),
        (4, "6-1/8", "8-3/64"),
        (5, "8-19/64", "10-7/32"),
        (6, "10-15/32", "11-3/4"),
    ],
)
def test_each_tail_stands_where_the_pencil_puts_it(tail, lower, upper):
    found = lay_out_carcase(12.0, 0.25, 0.25, 0.25, 6, 2 / 3, 0.5, 8).tails[tail - 1]

    assert (show(found.lower_end), show(found.upper_end)) == (lower, upper)


def test_a_bottom_dovetailed_into_both_sides_of_a_dresser():
    """Geometry: a body 39-1/2 wide with laps of 1/4 has a bottom of 39 over its tails, each 1/2 long."""
    joint = solve("carcase", {"width": 19.25, "tail_board": 0.75, "lap": 0.25, "outside": 39.5}).joint

    assert dovetailed_length(39.5, 0.25) == 39.0
    assert {each.name: each.value for each in joint.settings}["tail_board_length"] == 39.0
    assert joint.gauge_1 == 0.5
