"""Cutting lengths: against every way there is on small jobs, and by what may never happen on larger ones."""

import time
from functools import cache
from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from casewright.cutting.budget import Budget
from casewright.cutting.lengths.choosing import Near, chosen, near_sets
from casewright.cutting.lengths.prices import Prices
from casewright.cutting.lengths.problem import Piece, Problem, Stock
from casewright.cutting.lengths.solving import solve
from casewright.cutting.lengths.task import task_of
from lengthchecker import faults_of_lengths


def steps(count=60, **others):
    """A budget that does not depend on how busy the machine is."""
    return Budget(now=time.monotonic, steps=count, **others)


def job(lengths, *stocks):
    """Pieces, one of each length given, and stock."""
    return Problem(tuple(Piece(long) for long in lengths), tuple(Stock(*stock) for stock in stocks))


def all_costs(problem: Problem) -> dict[int, int]:
    """By trying every way: the least cost for each length that is left over."""
    lengths = [piece.length for piece in problem.pieces for _ in range(piece.count)]

    @cache
    def least(waiting: tuple[int, ...], there: tuple[int, ...]) -> dict[int, int]:
        if not waiting:
            return {0: 0}
        first, rest = waiting[0], waiting[1:]
        found = {left + first: cost for left, cost in least(rest, there).items()}
        for k, stock in enumerate(problem.stocks):
            if not there[k]:
                continue
            after = (*there[:k], there[k] - 1, *there[k + 1 :])
            for size in range(len(rest) + 1):
                for others in combinations(range(len(rest)), size):
                    if first + sum(rest[i] for i in others) <= stock.length:
                        unused = tuple(rest[i] for i in range(len(rest)) if i not in others)
                        for left, cost in least(unused, after).items():
                            found[left] = min(found.get(left, cost + stock.cost), cost + stock.cost)
        return found

    limits = tuple(len(lengths) if stock.limit is None else stock.limit for stock in problem.stocks)
    return least(tuple(sorted(lengths, reverse=True)), limits)


small_jobs = st.builds(
    Problem,
    st.lists(st.builds(Piece, st.integers(1, 14), st.integers(1, 3)), min_size=1, max_size=3).map(tuple),
    st.lists(
        st.builds(Stock, st.integers(5, 20), st.integers(0, 12), st.one_of(st.none(), st.integers(0, 2))),
        min_size=1,
        max_size=3,
    ).map(tuple),
)


@settings(max_examples=120)
@given(small_jobs)
def test_the_bound_is_never_above_the_best_of_all_ways(problem):
    every = all_costs(problem)

    answer = solve(problem, steps())

    left = sum(piece.length * count for piece, count in zip(problem.pieces, answer.unplaced, strict=True))
    best = min(cost for long, cost in every.items() if long <= left)
    assert faults_of_lengths(problem, answer) == []
    assert answer.bound <= best <= answer.cost
    assert not answer.proven or answer.cost == best


@settings(max_examples=60)
@given(small_jobs)
def test_all_is_placed_wherever_all_can_be_and_the_least_cost_is_found(problem):
    every = all_costs(problem)

    answer = solve(problem, steps(200))

    assert (sum(answer.unplaced) == 0) == (0 in every)
    assert 0 not in every or answer.cost == every[0]


many_pieces = st.lists(st.builds(Piece, st.integers(50, 900), st.integers(1, 9)), min_size=1, max_size=30)


def first_fit(problem: Problem) -> int:
    """So many bars are used if the longest piece goes first into the first bar with room."""
    bars: list[int] = []
    for long in sorted((p.length for p in problem.pieces for _ in range(p.count)), reverse=True):
        at = next((at for at, rest in enumerate(bars) if rest >= long), None)
        if at is None:
            bars.append(problem.stocks[0].length)
            at = -1
        bars[at] -= long
    return len(bars)


@given(many_pieces.map(tuple))
def test_the_answer_is_never_worse_than_first_fit(pieces):
    problem = Problem(pieces, (Stock(1000),))

    answer = solve(problem, steps(3))

    assert faults_of_lengths(problem, answer) == []
    assert answer.bound <= answer.cost <= first_fit(problem)


def test_exact_fits_are_found():
    lengths = [470, 280, 250, 460, 290, 250, 450, 300, 250, 490, 260, 250]

    answer = solve(job(lengths, (1000,)), steps())

    assert (answer.cost, answer.bound, answer.proven) == (4, 4, True)


def test_the_cheaper_of_two_stocks_is_taken_and_its_limit_kept():
    answer = solve(job([30] * 6, (100, 100), (60, 50, 2)), steps())

    # Two short ones take four pieces for 100, and the third pair a long one; two long ones cost as much.
    assert answer.cost == 200
    assert sum(bar.copies for bar in answer.bars if bar.stock == 1) <= 2


def test_what_is_too_long_is_left_over_and_the_rest_is_cut():
    answer = solve(job([120, 40], (100,)), steps())

    assert answer.unplaced == (1, 0)
    assert [bar.pieces for bar in answer.bars] == [(1,)]
    assert answer.proven


def test_where_stock_runs_out_the_longer_pieces_come_first():
    answer = solve(job([50, 90, 40], (100, 1, 1)), steps())

    assert answer.unplaced in {(1, 0, 1), (0, 1, 0)}
    assert faults_of_lengths(job([50, 90, 40], (100, 1, 1)), answer) == []


def test_nothing_is_cut_from_nothing():
    answer = solve(job([50], (100, 1, 0)), steps())

    assert (answer.bars, answer.unplaced, answer.cost, answer.proven) == ((), (1,), 0, True)


def test_pieces_of_one_length_keep_their_names():
    problem = Problem((Piece(30, 2), Piece(30, 1), Piece(40, 1)), (Stock(100),))

    answer = solve(problem, steps())

    assert sorted(piece for bar in answer.bars for piece in bar.pieces * bar.copies) == [0, 0, 1, 2]


def test_the_same_seed_gives_the_same_answer():
    problem = job([137 * k % 611 + 90 for k in range(60)], (1000, 10), (700, 8, 9))

    first = solve(problem, steps(40, seed=4))
    second = solve(problem, steps(40, seed=4))

    assert (first.bars, first.bound) == (second.bars, second.bound)


def test_a_stop_brings_the_layout_that_is_there():
    problem = job([137 * k % 611 + 90 for k in range(60)], (1000,))

    answer = solve(problem, steps(stop=lambda: True))

    assert faults_of_lengths(problem, answer) == []
    assert answer.unplaced == (0,) * 60


def test_progress_only_gets_better():
    heard = []

    pairs = [(380 + 37 * k % 115, 250 + 23 * k % 60) for k in range(20)]
    lengths = [long for a, b in pairs for long in (a, b, 1000 - a - b)]
    solve(job(lengths, (1000,)), steps(tell=heard.append))

    assert [told.cost for told in heard] == sorted((told.cost for told in heard), reverse=True)
    assert [told.bound for told in heard] == sorted(told.bound for told in heard)
    assert heard[-1].cost < heard[0].cost


@pytest.mark.parametrize(
    ("made", "words"),
    [
        (lambda: Piece(0), "is no piece"),
        (lambda: Piece(5, 0), "is no piece"),
        (lambda: Stock(0), "is no stock"),
        (lambda: Stock(5, -1), "not negative"),
    ],
)
def test_what_cannot_be_is_refused(made, words):
    with pytest.raises(ValueError, match=words):
        made()


def test_a_tight_job_is_solved_by_choosing_among_all_sets_that_can_be_in_it():
    problem = job([50, 50, 40, 40, 30, 30, 30, 30], (100, 1))
    task, _ = task_of(problem)
    # Every step of length is worth a hundredth of a bar: three full bars are the whole of it.
    prices = Prices(task.lengths * 10, np.array([1000]), 1000)

    near = near_sets(task, prices, np.array([1000]), 3)
    found = chosen(task, near, steps(), 3)

    assert near.whole
    assert sorted(tuple(counts) for counts in near.sets) == [(0, 1, 2), (2, 0, 0)]
    assert sorted(tuple(bar) for bar in found.bars) == [(0, 1, 2), (0, 1, 2), (2, 0, 0)]
    assert list(found.on) == [0, 0, 0]


def test_only_full_bars_are_looked_at_and_what_they_hold_too_much_stays_out():
    problem = job([50, 50, 50, 40], (100, 1))
    task, _ = task_of(problem)
    prices = Prices(np.array([500, 400]), np.array([1000]), 1000)

    near = near_sets(task, prices, np.array([1000]), 2)
    found = chosen(task, near, steps(), 2)

    assert sorted(tuple(counts) for counts in near.sets) == [(1, 1), (2, 0)]
    assert sorted(tuple(bar) for bar in found.bars) == [(1, 1), (2, 0)]


def test_where_no_layout_can_be_chosen_there_is_none():
    problem = job([60, 60, 60], (100, 1))
    task, _ = task_of(problem)
    prices = Prices(np.array([600]), np.array([1000]), 1000)

    near = near_sets(task, prices, np.array([1000]), 2)
    found = chosen(task, near, steps(), 2)

    assert found.bars is None
    assert found.none


def test_a_layout_of_some_sets_only_proves_nothing():
    problem = job([50, 50, 40, 40, 30, 30, 30, 30], (100, 1))
    task, _ = task_of(problem)
    near = near_sets(task, Prices(task.lengths * 10, np.array([1000]), 1000), np.array([1000]), 3)

    found = chosen(task, Near(near.sets[:1], near.on[:1], False), steps(), 3)

    assert (found.bars, found.none) == (None, False)


def test_a_layout_is_proven_the_best_where_the_linear_programme_asks_for_one_bar_less():
    """Rietz, Scheithauer, Terno, Families of non-IRUP instances (2002): 44, 33 and 12 on 132; from memory."""
    problem = Problem((Piece(44, 2), Piece(33, 3), Piece(12, 6)), (Stock(132),))
    assert min(all_costs(problem).items()) == (0, 3)

    answer = solve(problem, steps())

    assert (answer.cost, answer.bound, answer.proven) == (3, 3, True)
