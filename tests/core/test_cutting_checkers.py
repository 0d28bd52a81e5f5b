"""The checkers of layouts see what is wrong, each fault by itself."""

from dataclasses import replace

import pytest

from casewright.cutting.guillotine import problem as sheets
from casewright.cutting.lengths import problem as lengths
from lengthchecker import faults_of_lengths
from rectchecker import faults_of_sheets

BARS = lengths.Problem((lengths.Piece(60, 2), lengths.Piece(30)), (lengths.Stock(100, 5, 2),))
GOOD_BARS = lengths.Answer(
    (lengths.Bar(0, 1, (0, 1)), lengths.Bar(0, 1, (0,))), (0, 0), cost=10, bound=10, proven=True, seconds=0
)

SHEET = sheets.Problem((sheets.Piece(40, 60), sheets.Piece(50, 30, 2)), (sheets.Stock(100, 100, 7, 1),), 2)


def laid(*placed, cost=7, unplaced=(0, 0)):
    """An answer with these pieces on one sheet: which, from the end, from the edge, length, width, turned."""
    whole = sheets.Area(sheets.Rect(0, 0, 100, 100))
    pieces = tuple(
        sheets.Placed(which, x, y, width, long, turned) for which, x, y, long, width, turned in placed
    )
    return sheets.Answer((sheets.Sheet(0, 1, pieces, whole),), unplaced, cost, cost, True, 0.0)


GOOD = ((0, 0, 0, 60, 40, False), (1, 0, 40, 30, 50, False), (1, 30, 40, 30, 50, False))


def test_good_layouts_have_no_faults():
    assert faults_of_lengths(BARS, GOOD_BARS) == []
    assert faults_of_sheets(SHEET, laid(*GOOD)) == []


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        ({"bars": (lengths.Bar(0, 1, (0, 0)), lengths.Bar(0, 1, (1,)))}, "120 lie on a stock of 100"),
        ({"bars": (lengths.Bar(0, 2, (0, 1)),)}, "piece 1: 2 made, 0 not, 1 wanted"),
        ({"bars": (*GOOD_BARS.bars, lengths.Bar(0, 1, ()))}, "stock 0 is used 3 times, and there are 2"),
        ({"unplaced": (1, 0)}, "piece 0: 2 made, 1 not, 2 wanted"),
        ({"cost": 9, "bound": 9}, "the stock costs 10 and not 9"),
        ({"bound": 11}, "the bound 11 is above the cost 10"),
    ],
)
def test_a_fault_in_a_cutting_of_lengths_is_seen(wrong, words):
    assert words in faults_of_lengths(BARS, replace(GOOD_BARS, **wrong))


@pytest.mark.parametrize(
    ("placed", "words"),
    [
        (((0, 41, 0, 60, 40, False), *GOOD[1:]), "(41, 101, 0, 40) is not inside 100 by 100"),
        (((0, 0, 1, 60, 40, False), *GOOD[1:]), "(0, 60, 1, 41) lies on (0, 30, 40, 90)"),
        (((0, 0, 0, 60, 39, False), *GOOD[1:]), "piece 0 is 60 by 39 and not (60, 40)"),
        (((0, 0, 0, 40, 60, True),), "piece 0 is turned and may not be"),
        (GOOD[:2], "piece 1: 1 made, 0 not, 2 wanted"),
    ],
)
def test_a_fault_on_a_sheet_is_seen(placed, words):
    assert words in faults_of_sheets(SHEET, laid(*placed))


def test_a_layout_that_no_straight_cut_divides_is_seen():
    pinwheel = (
        (0, 0, 0, 60, 40, False),
        (1, 60, 0, 40, 60, False),
        (0, 40, 60, 60, 40, False),
        (1, 0, 40, 40, 60, False),
    )
    problem = sheets.Problem((sheets.Piece(40, 60, 2), sheets.Piece(60, 40, 2)), SHEET.stocks, 3)

    assert [fault for fault in faults_of_sheets(problem, laid(*pinwheel)) if "cannot be cut" in fault]


def test_three_stages_are_one_too_many_for_two():
    stacked = ((0, 0, 0, 60, 40, False), (1, 60, 0, 40, 20, False), (1, 60, 20, 40, 20, False))
    problem = sheets.Problem(
        (sheets.Piece(40, 60), sheets.Piece(20, 40, 2)), SHEET.stocks, 3, sheets.First.ALONG
    )

    assert faults_of_sheets(problem, laid(*stacked)) == []
    assert len(faults_of_sheets(replace(problem, stages=2), laid(*stacked))) == 1
