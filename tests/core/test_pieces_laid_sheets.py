"""Sheets for several jobs: counted by hand where that can be done, the rack before new sheets."""

import pytest

from casewright.pieces.takeoff.laid_sheets import lay_sheets
from casewright.pieces.takeoff.sheets_asked import SheetOnHand, SheetPart, SheetsAsked, sheet_parts
from units import built, chest


def part(job="a", width=23.6875, length=47.625, count=1, may_turn=False):
    return SheetPart(job=job, width=width, length=length, count=count, may_turn=may_turn)


def asked(*parts, on_hand=(), **more):
    return SheetsAsked(parts=parts, on_hand=on_hand, **({"width": 48, "length": 96} | more))


@pytest.mark.parametrize(("count", "sheets"), [(3, 1), (4, 1), (5, 2), (8, 2)])
def test_four_to_a_sheet_of_four_by_eight(count, sheets):
    """By hand: 2 × 23-11/16 + 1/8 = 47-1/2 and 2 × 47-5/8 + 1/8 = 95-3/8, inside 47-1/2 by 95-1/2."""
    found = lay_sheets(asked(part(count=count)))

    assert (found.sheets, found.too_large) == (sheets, 0)
    assert found.fewest <= found.sheets


def test_a_64th_more_and_only_two_lie_side_by_side_no_more():
    assert lay_sheets(asked(part(width=23.703125, count=4))).sheets == 2


def test_two_jobs_share_a_sheet():
    one, other = part("a", count=2), part("b", count=2)

    assert [lay_sheets(asked(each)).sheets for each in (one, other)] == [1, 1]
    assert lay_sheets(asked(one, other)).sheets == 1


def test_an_offcut_that_spares_a_sheet_is_used_and_says_whose_parts_lie_on_it():
    offcut = SheetOnHand(id="O1", width=23.6875, length=47.625, is_offcut=True)

    found = lay_sheets(asked(part("a", count=4), part("b"), on_hand=(offcut,)))

    assert found.sheets == 1
    [(piece, jobs)] = found.taken
    assert piece == "O1"
    assert jobs in {("a",), ("b",)}


def test_one_that_spares_none_stays_on_the_rack():
    offcut = SheetOnHand(id="O1", width=10, length=10, is_offcut=True)

    assert lay_sheets(asked(part(count=4), on_hand=(offcut,))).taken == ()


def test_a_whole_sheet_on_the_rack_loses_its_edges_and_an_offcut_does_not():
    """By hand: a piece of just the part's size holds it, unless a quarter inch comes off each edge."""
    for is_offcut, sheets in ((True, 0), (False, 1)):
        there = SheetOnHand(id="S1", width=23.6875, length=47.625, is_offcut=is_offcut)
        assert lay_sheets(asked(part(), on_hand=(there,))).sheets == sheets


def test_what_no_sheet_holds_is_counted_out():
    assert lay_sheets(asked(part(width=50), part())).too_large == 1


def test_grain_keeps_a_part_from_turning():
    across = {"width": 90, "length": 40}

    assert lay_sheets(asked(part(**across))).too_large == 1
    assert lay_sheets(asked(part(**across, may_turn=True))).sheets == 1


def test_the_parts_of_a_unit_are_those_of_its_cut_list():
    made = built(chest({"drawers.bottom": {"kind": "ply", "sheet": "birch plywood"}}))

    found = list(sheet_parts(made, 2, "a"))

    lines = [line for line in made.lines if line.part.sheet]
    assert lines
    assert [name for name, _ in found] == [line.part.wood for line in lines]
    assert [each.count for _, each in found] == [2 * line.quantity for line in lines]
