"""Whether some boards hold everything: exact fits, and no promise that a plan does not keep."""

import pytest

from casewright.cutting.budget import Budget
from casewright.cutting.guillotine.problem import Piece, Stock
from casewright.cutting.panels.holding import lacking
from casewright.cutting.panels.problem import Panel, PanelProblem, StripRule
from casewright.cutting.panels.solving import plan_panels

RULE = StripRule(allowance=2, narrowest=20, widest=60)


def problem(*boards, panels=(), pieces=()):
    stocks = tuple(
        Stock(width=width, length=length, cost=width * length, limit=1) for width, length in boards
    )
    return PanelProblem(panels=panels, pieces=pieces, stocks=stocks, strips=RULE)


def test_what_fills_a_board_exactly_is_held_and_a_step_more_is_not():
    pieces = (Piece(width=25, length=50, count=8),)

    assert not lacking(problem((100, 100), pieces=pieces), 1, rounds=0, seed=1)
    short = lacking(problem((99, 100), pieces=pieces), 1, rounds=0, seed=1)
    assert (bool(short), short.pieces) == (True, (2,))


def test_a_panel_takes_its_strips_and_what_each_of_them_loses():
    """Two strips of 48 net from 50 each: 96 of net width, and no step more."""
    for width, held in ((96, True), (97, False)):
        found = lacking(problem((100, 80), panels=(Panel(width=width, length=80),)), 1, rounds=0, seed=1)
        assert found.panels == (0 if held else 1,)


def test_boards_that_are_lent_are_done_without_or_counted_as_lacking():
    pieces = (Piece(width=30, length=70, count=2),)

    assert lacking(problem((30, 70), (30, 70), pieces=pieces), 1, rounds=2, seed=1).pieces == (1,)
    assert not lacking(problem((30, 140), (30, 70), pieces=pieces), 1, rounds=2, seed=1)


@pytest.mark.parametrize("seed", range(12))
def test_what_is_held_can_be_planned_by_whoever_plans_with_more_time(seed):
    """The planner itself, with more rounds, places everything that is said to be held."""
    panels = (Panel(width=75, length=90, count=2), Panel(width=130, length=60))
    pieces = (Piece(width=22, length=70, count=5), Piece(width=35, length=48, count=6))
    boards = [(60 + 7 * (seed + place) % 41, 200 + 13 * place) for place in range(6)]
    asked = problem(*boards, panels=panels, pieces=pieces)

    if not lacking(asked, 5, rounds=3, seed=seed):
        own = problem(*boards[:5], panels=panels, pieces=pieces)
        answer = plan_panels(own, Budget(now=lambda: 0.0, steps=6, seed=seed))
        assert (sum(answer.unplaced_panels), sum(answer.unplaced_pieces)) == (0, 0)


def test_of_stock_without_end_nobody_can_say_whether_it_holds():
    asked = PanelProblem(
        panels=(), pieces=(Piece(width=5, length=5),), stocks=(Stock(width=9, length=9, cost=1),), strips=RULE
    )

    with pytest.raises(ValueError, match="just one board"):
        lacking(asked, 1, rounds=0, seed=1)
