"""Mixes of sheets of several sizes: all of them, and whether all pieces come out of one."""

from itertools import product

import numpy as np
import pytest

from casewright.cutting.budget import Budget
from casewright.cutting.guillotine.mixing import Mixing, mixes
from casewright.cutting.guillotine.plans import quick_plan
from casewright.cutting.guillotine.problem import Piece, Problem, Stock
from casewright.cutting.guillotine.solving import solve
from casewright.cutting.guillotine.tables import Table
from rectchecker import faults_of_sheets

STOCKS = (
    Stock(100, 200, 20_500),
    Stock(120, 240, 29_000),
    Stock(60, 100, 6_300, 2),
    Stock(50, 80, 0, 1),
)
"""Two sizes that are bought, two offcuts of the first for a price, one that costs nothing."""
PIECES = (
    Piece(58, 79, 6),
    Piece(40, 118, 5),
    Piece(33, 60, 9, True),
    Piece(24, 98, 7, True),
    Piece(48, 48, 4),
)
PROBLEM = Problem(PIECES, STOCKS)


@pytest.mark.parametrize(("bound", "below"), [(0, 120_001), (100_000, 105_000), (105_000, 105_000)])
def test_every_mix_that_is_large_and_cheap_enough(bound: int, below: int) -> None:
    table = Table(PROBLEM)
    area = sum(each.area * each.count for each in PIECES)
    found = {mix.counts: mix for mix in mixes(table, area, bound, below)}
    expected = {}
    for counts in product(range(7), range(6), range(3), range(2)):
        cost = sum(count * stock.cost for count, stock in zip(counts, STOCKS, strict=True))
        room = sum(count * stock.area for count, stock in zip(counts, STOCKS, strict=True))
        if room >= area and bound <= cost < below:
            expected[counts] = (cost, area / room)
    assert {counts: (mix.cost, mix.full) for counts, mix in found.items()} == expected


def test_no_mixes_of_one_size_nor_of_boards() -> None:
    one = Problem(PIECES, STOCKS[:1])
    boards = Problem(PIECES, tuple(Stock(60 + each, 200, 100, 1) for each in range(30)))
    assert not list(mixes(Table(one), 1.0, 0, 10**6))
    assert not list(mixes(Table(boards), 1.0, 0, 10**6))


def test_a_mix_that_holds_all_makes_a_cheaper_plan() -> None:
    """The first plan is good to within a sheet; trying mixes comes below it, and on what was chosen."""
    table = Table(PROBLEM)
    first = quick_plan(table)
    mixing = Mixing(table, table.count, first, 0, 1)
    best, tries = first, 0
    while mixing.mixes and tries < 12:
        tries += 1
        better = mixing.try_one(best, 0, lambda: True)
        if better is not None:
            assert better.cost < best.cost
            assert not np.any(better.unplaced)
            best = better
    assert best.cost < first.cost
    assert mixing.try_one(best, best.cost, lambda: True) is None  # nothing lies between bound and plan


def test_sheets_cut_up_at_random_are_put_together_again() -> None:
    """Three whole sheets of two sizes cut into strips and pieces: no plan is cheaper than these."""
    draw = np.random.default_rng(4)
    pieces = []
    for width, length in ((120, 240), (120, 240), (100, 200)):
        across = 0
        for strip in [int(each) for each in draw.multinomial(width - 72, [1 / 3] * 3) + 24]:
            ends = sorted(int(each) for each in draw.choice(np.arange(20, length - 20, 10), 3, replace=False))
            for begin, end in zip([0, *ends], [*ends, length], strict=True):
                pieces.append(Piece(strip, end - begin))
            across += strip
        assert across == width
    problem = Problem(tuple(pieces), STOCKS[:2])
    answer = solve(problem, Budget(now=lambda: 0.0, steps=400))
    assert not faults_of_sheets(problem, answer)
    assert answer.cost == 2 * 29_000 + 20_500
