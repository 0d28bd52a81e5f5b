"""Layouts by straight cuts: they can be cut as they stand, and their bound holds."""

import random

import numpy as np
import pytest

from casewright.cutting.budget import Budget
from casewright.cutting.guillotine.bounding import Bounding
from casewright.cutting.guillotine.chain import Chain
from casewright.cutting.guillotine.diving import dive
from casewright.cutting.guillotine.filling import Taste, filled
from casewright.cutting.guillotine.plans import plan_of
from casewright.cutting.guillotine.problem import First, Piece, Problem, Rect, Stock
from casewright.cutting.guillotine.solving import Work, solve
from casewright.cutting.guillotine.tables import Table
from guillotine_by_hand import faults, least_cost


def still() -> float:
    """A clock that stands still, so that only steps end the work."""
    return 0.0


def tiny(seed: int) -> Problem:
    """Three to five pieces and one to three stocks, drawn by lot."""
    draw = random.Random(seed)  # noqa: S311 - no secret
    length, width = draw.randint(6, 20), draw.randint(5, 12)
    kinds: list[Piece] = []
    while sum(piece.count for piece in kinds) < 3:
        kinds.append(
            Piece(
                width=draw.randint(1, width),
                length=draw.randint(1, length),
                count=draw.choice([1, 1, 2, 3]),
                may_turn=draw.random() < 0.3,
            )
        )
    stocks = [Stock(width=width, length=length, cost=length * width)]
    for _ in range(draw.randint(0, 2)):
        other = (draw.randint(4, width), draw.randint(5, length))
        stocks.append(
            Stock(width=other[0], length=other[1], cost=other[0] * other[1], limit=draw.randint(1, 2))
        )
    return Problem(tuple(kinds), tuple(stocks), draw.choice([2, 3, 3]), draw.choice(list(First)))


@pytest.mark.parametrize("seed", range(24))
def test_a_handful_of_pieces_is_laid_out_as_cheaply_as_by_trying_everything(seed):
    problem = tiny(seed)

    answer = solve(problem, Budget(now=still, steps=40, seed=seed))

    assert faults(problem, answer) == []
    least = least_cost(problem)
    assert not any(answer.unplaced)
    assert answer.bound <= least
    assert answer.cost == least


def tight(seed: int) -> Problem:
    """Three to five pieces, often several of a kind, on stock that more of them would fill."""
    draw = random.Random(seed)  # noqa: S311 - no secret
    length, width = draw.randint(6, 14), draw.randint(5, 10)
    most = draw.choice([3, 4, 5, 5])
    kinds: list[Piece] = []
    while (left := most - sum(piece.count for piece in kinds)) > 0:
        size = (draw.randint(1, max(2, width * 2 // 3)), draw.randint(1, max(2, length * 2 // 3)))
        kinds.append(Piece(*size, min(left, draw.choice([1, 2, 2, 3])), draw.random() < 0.5))
    stocks = [Stock(width=width, length=length, cost=draw.choice([length * width, 10]))]
    for _ in range(draw.randint(0, 2)):
        other = (draw.randint(3, width), draw.randint(4, length))
        cost = draw.choice([other[0] * other[1], draw.randint(1, 12)])
        stocks.append(Stock(*other, cost, draw.choice([1, 2, None])))
    return Problem(tuple(kinds), tuple(stocks), draw.choice([2, 3, 3]), draw.choice(list(First)))


@pytest.mark.parametrize("seed", range(80))
def test_no_layout_is_below_the_bound_where_there_are_few_of_each_piece(seed):
    problem = tight(seed)
    bounding = Bounding(Table(problem))

    for _ in range(400):
        bounding.step()

    assert bounding.finished
    assert bounding.bound <= least_cost(problem)


def test_a_sheet_is_priced_with_no_more_of_a_piece_in_a_strip_than_is_wanted():
    problem = Problem((Piece(10, 30, 2), Piece(10, 20)), (Stock(10, 90, 900),), 2, First.ALONG)
    bounding = Bounding(Table(problem))

    worth, layouts = bounding.mixture.price(np.array([3.0, 1.0]), exact=True)

    # Three of the long ones would be worth 9.
    assert list(worth) == [7.0]
    assert [list(layout.counts) for layout in layouts] == [[2, 1]]


def test_a_dive_does_with_a_sheet_fewer_and_leaves_the_prices_as_they_were():
    draw = random.Random(3)  # noqa: S311 - no secret
    pieces = tuple(Piece(draw.randint(20, 60), draw.randint(30, 90), draw.randint(1, 4)) for _ in range(12))
    table = Table(Problem(pieces, (Stock(120, 240, 1),)))
    singly = [
        layout
        for kind, count in enumerate(table.count)
        for layout in filled(table, np.eye(12, dtype=np.int64)[kind] * count, [0], Taste())
    ]
    bounding = Bounding(table)
    while not bounding.priced:
        bounding.step()
    value, _, _ = bounding.mixture.solve()

    found = []
    for _ in range(2):
        chain = Chain(table, plan_of(table, singly), lambda: True, 1)
        dive(bounding.mixture, chain, np.random.default_rng(5))
        found.append(chain.best)

    assert bounding.bound <= found[0].cost < len(singly)
    assert [plan.missing for plan in found] == [0.0, 0.0]
    assert bounding.mixture.solve()[0] == pytest.approx(value)
    shown = Work(table, Budget(now=still, steps=0))
    shown.take(found[0])
    assert faults(table.problem, shown.answer()) == []


def some_hundred(seed: int, first: First, stages: int) -> Problem:
    """Cabinet parts on sheets with faults, of a size and number as a shop has them."""
    draw = random.Random(seed)  # noqa: S311 - no secret
    pieces = tuple(
        Piece(
            width=draw.randint(80, 560),
            length=draw.randint(100, 900),
            count=draw.randint(1, 4),
            may_turn=draw.random() < 0.5,
        )
        for _ in range(14)
    )
    knots = tuple(
        Rect(draw.randint(0, 2200), draw.randint(0, 1000), draw.randint(10, 200), draw.randint(10, 100))
        for _ in range(3)
    )
    stocks = (
        Stock(width=1203, length=2423, cost=100),
        Stock(width=1203, length=1203, cost=45, limit=2),
        Stock(width=1203, length=2423, cost=60, limit=3, forbidden=knots),
    )
    return Problem(pieces, stocks, stages, first)


@pytest.mark.parametrize("stages", [2, 3])
@pytest.mark.parametrize("first", list(First))
@pytest.mark.parametrize("seed", range(1))
def test_a_shop_job_can_be_cut_as_it_stands_and_touches_no_fault(seed, first, stages):
    problem = some_hundred(seed, first, stages)

    answer = solve(problem, Budget(now=still, steps=12, seed=seed))

    assert faults(problem, answer) == []
    assert not any(answer.unplaced)


def test_the_same_seed_and_steps_give_the_same_layout():
    problem = some_hundred(7, First.EITHER, 3)

    answers = [solve(problem, Budget(now=still, steps=8, seed=3)) for _ in range(2)]

    assert answers[0] == answers[1]


def test_what_fits_no_stock_is_said_and_the_rest_is_laid_out():
    problem = Problem(
        (Piece(width=10, length=200, count=2), Piece(width=10, length=50, count=3)),
        (Stock(width=20, length=100, cost=5, limit=1),),
    )

    answer = solve(problem, Budget(now=still, steps=5))

    assert faults(problem, answer) == []
    assert answer.unplaced == (2, 0)
    assert answer.cost == 5


def test_too_little_stock_takes_as_much_as_it_can():
    problem = Problem(
        (Piece(width=10, length=50, count=9),),
        (Stock(width=20, length=100, cost=5, limit=2),),
        2,
        First.ALONG,
    )

    answer = solve(problem, Budget(now=still, steps=5))

    assert faults(problem, answer) == []
    assert answer.unplaced == (1,)


def test_a_piece_beside_a_fault_is_moved_past_it():
    stock = Stock(width=10, length=100, cost=1, limit=1, forbidden=(Rect(45, 2, 10, 3),))
    problem = Problem((Piece(width=10, length=45, count=2),), (stock,))

    answer = solve(problem, Budget(now=still, steps=5))

    assert faults(problem, answer) == []
    assert answer.unplaced == (0,)


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: Piece(width=0, length=5), "no piece"),
        (lambda: Stock(width=5, length=-1, cost=1), "no stock"),
        (lambda: Stock(width=5, length=5, cost=-1), "not negative"),
        (lambda: Problem((), (), 4), "two or three stages"),
    ],
)
def test_sizes_that_are_none_are_refused(make, message):
    with pytest.raises(ValueError, match=message):
        make()
