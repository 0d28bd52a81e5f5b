"""A problem in the form in which it is worked on: equal lengths together, what cannot matter left out."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from casewright.cutting.lengths.knapsack import Whole
from casewright.cutting.lengths.problem import Problem
from casewright.measure.units import Count


@dataclass(frozen=True)
class Task:
    """Pieces by falling length, stock by rising length.

    Attributes:
        lengths: of the pieces, each once, the longest first
        demand: how many of each are wanted
        caps: the lengths of stock
        costs: what one of each costs
        limits: how many of each there are; no more than could be used
        unlimited: whether there are as many as could be used
        missing: what a piece left over counts for each step of its length: so much that no stock is dearer
            than the shortest piece on it
    """

    lengths: Whole
    demand: Whole
    caps: Whole
    costs: Whole
    limits: Whole
    unlimited: Whole
    missing: Count

    @cached_property
    def step(self) -> Count:
        """Every sum of costs is a multiple of this [1]."""
        return math.gcd(*(int(c) for c in self.costs)) or 1

    @property
    def left_over(self) -> Whole:
        """What each piece counts that is left over."""
        return self.missing * self.lengths


@dataclass(frozen=True)
class Origin:
    """Where the pieces and the stock of a task come from.

    Attributes:
        pieces: for each length of the task, which pieces of the problem have it, and how many of each
        stocks: for each stock of the task, which of the problem's it is
        too_long: which pieces of the problem fit no stock
    """

    pieces: tuple[tuple[tuple[int, int], ...], ...]
    stocks: tuple[int, ...]
    too_long: tuple[int, ...]


def task_of(problem: Problem) -> tuple[Task, Origin] | None:
    """The task in a problem, and where it came from; None where nothing can be placed.

    Args:
        problem: pieces and stock as asked
    """
    stocks = _worth_having(problem)
    longest = max((problem.stocks[k].length for k in stocks), default=0)
    by_length: dict[int, list[tuple[int, int]]] = {}
    for i, piece in enumerate(problem.pieces):
        if piece.length <= longest:
            by_length.setdefault(piece.length, []).append((i, piece.count))
    if not by_length:
        return None
    lengths = sorted(by_length, reverse=True)
    demand = [sum(count for _, count in by_length[long]) for long in lengths]
    wanted = sum(demand)
    limits = [problem.stocks[k].limit for k in stocks]
    task = Task(
        lengths=_whole(lengths),
        demand=_whole(demand),
        caps=_whole(problem.stocks[k].length for k in stocks),
        costs=_whole(problem.stocks[k].cost for k in stocks),
        limits=_whole(wanted if limit is None else min(limit, wanted) for limit in limits),
        unlimited=np.array([limit is None or limit >= wanted for limit in limits]),
        missing=max(problem.stocks[k].cost for k in stocks) // lengths[-1] + 1,
    )
    too_long = tuple(i for i, piece in enumerate(problem.pieces) if piece.length > longest)
    return task, Origin(tuple(tuple(by_length[long]) for long in lengths), tuple(stocks), too_long)


def _whole(numbers: Iterable[int]) -> Whole:
    """Whole numbers as an array."""
    return np.array(list(numbers), np.int64)


def _worth_having(problem: Problem) -> list[int]:
    """The stock by rising length, without what is never better than a longer one that never runs out."""
    kept: list[int] = []
    cheapest = math.inf
    falling = sorted(
        range(len(problem.stocks)), key=lambda k: (-problem.stocks[k].length, problem.stocks[k].cost)
    )
    for k in falling:
        stock = problem.stocks[k]
        if stock.cost < cheapest and stock.limit != 0:
            kept.append(k)
            cheapest = stock.cost if stock.limit is None else cheapest
    return kept[::-1]
