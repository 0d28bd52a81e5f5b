"""The cheapest way to cut pieces from lengths, as near as the time allows, and how near that is."""

from collections.abc import Iterator

import numpy as np

from casewright.cutting.budget import Budget, Progress
from casewright.cutting.lengths.filling import Layout
from casewright.cutting.lengths.problem import Answer, Bar, Problem
from casewright.cutting.lengths.search import Search
from casewright.cutting.lengths.task import Origin, Task, task_of


def solve(problem: Problem, budget: Budget) -> Answer:
    """How to cut the pieces from the stock.

    There is an answer within milliseconds; it becomes better until it is proven, or the budget is at an end.
    A step of the budget is one solution of the linear programme.

    Args:
        problem: pieces and stock
        budget: how long it may take

    Returns:
        The ways to cut, what found no room, the cost, and what nothing can cost less than.

    Source: Gilmore, Gomory, A linear programming approach to the cutting-stock problem (1961); from memory.
    """
    known = task_of(problem)
    if known is None:
        budget.tell(Progress(cost=0, bound=0, seconds=budget.spent()))
        return Answer((), tuple(piece.count for piece in problem.pieces), 0, 0, True, budget.spent())
    task, origin = known
    search = Search(task, budget)
    search.run()
    bars, unplaced = _as_asked(problem, task, origin, search.best)
    cost, bound = search.best.cost, min(search.bound, search.best.cost)
    return Answer(bars, unplaced, cost, bound, cost == bound, budget.spent())


def _as_asked(
    problem: Problem, task: Task, origin: Origin, layout: Layout
) -> tuple[tuple[Bar, ...], tuple[int, ...]]:
    """The layout in the problem's own pieces, which may be several of one length; what found no room."""
    waiting = [[[piece, count] for piece, count in pieces] for pieces in origin.pieces]
    counts: dict[tuple[int, tuple[int, ...]], int] = {}
    for bar in np.lexsort((layout.on, -task.costs[layout.on])):
        stock = origin.stocks[layout.on[bar]]
        for cut, copies in _cut(waiting, layout.sets[bar].tolist(), int(layout.copies[bar])):
            counts[stock, cut] = counts.get((stock, cut), 0) + copies
    unplaced = [0] * len(problem.pieces)
    for pieces in waiting:
        for piece, count in pieces:
            unplaced[piece] = count
    for piece in origin.too_long:
        unplaced[piece] = problem.pieces[piece].count
    return tuple(Bar(stock, copies, cut) for (stock, cut), copies in counts.items()), tuple(unplaced)


def _cut(
    waiting: list[list[list[int]]], taken: list[int], copies: int
) -> Iterator[tuple[tuple[int, ...], int]]:
    """The pieces of bars that are cut alike, as long as there are enough of the same; then of the next."""
    on_it = [(waiting[which], count) for which, count in enumerate(taken) if count]
    while copies:
        alike = min([copies, *(max(1, there[0][1] // count) for there, count in on_it)])
        cut: list[int] = []
        for there, count in on_it:
            wanted = count * alike
            while wanted:
                some = min(wanted, there[0][1])
                cut += [there[0][0]] * (some // alike)
                wanted -= some
                there[0][1] -= some
                if not there[0][1]:
                    del there[0]
        yield tuple(cut), alike
        copies -= alike
