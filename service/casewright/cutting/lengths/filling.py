"""Layouts at once: the longest piece first, into the first bar with room or the one that it fills best."""

from dataclasses import dataclass

import numpy as np

from casewright.cutting.compiled import compiled
from casewright.cutting.lengths.knapsack import Whole
from casewright.cutting.lengths.task import Task


@dataclass(frozen=True, slots=True)
class Layout:
    """Bars, each cut so often, and what they count with all that they leave over.

    Attributes:
        sets: how often each piece is on each kind of bar
        on: the stock of each kind
        copies: how many of each kind
        left: how many of each piece are left over
        long: the length of all pieces left over
        cost: of the stock
    """

    sets: Whole
    on: Whole
    copies: Whole
    left: Whole
    long: int
    cost: int

    @property
    def rank(self) -> tuple[int, int]:
        """The lower of two layouts is the better: less left over, then cheaper."""
        return self.long, self.cost


def filled(task: Task, demand: Whole, limits: Whole, *, quick: bool = False) -> Layout:
    """The best of some quick layouts, each opening another stock first, by first fit and by best fit.

    Args:
        task: lengths, stock and costs
        demand: how many of each piece are wanted
        limits: how many of each stock there are
        quick: whether it is enough to open the stock first that is cheapest for its length

    Source: Johnson, Near-optimal bin packing algorithms (1973), for first fit and best fit by falling length;
    from memory. Other stock first: common practice.
    """
    best: Layout | None = None
    for opening in _openings(task)[: 1 if quick else None]:
        for tight in (True, False):
            sets, on, count = _fill(task.lengths, demand, task.caps, limits, opening, tight)
            ones = np.ones(count, np.int64)
            layout = _settled(task, together(task, sets[:count], on[:count], ones, demand), demand, limits)
            if best is None or layout.rank < best.rank:
                best = layout
    if best is None:
        raise ValueError("a task has stock")
    return best


def _openings(task: Task) -> list[Whole]:
    """The stocks in the orders in which they may be opened: each one first, then by cost for the length."""
    by_price = np.lexsort((-task.caps, task.costs / task.caps))
    return [np.concatenate([[k], by_price[by_price != k]]).astype(np.int64) for k in by_price]


def _settled(task: Task, layout: Layout, demand: Whole, limits: Whole) -> Layout:
    """The same bars on the cheapest stock that holds them."""
    spare = limits - np.bincount(layout.on, weights=layout.copies, minlength=len(limits)).astype(np.int64)
    sets, on, copies = [], [], []
    cheap = np.argsort(task.costs, kind="stable")
    for bar in range(len(layout.on)):
        stays = int(layout.copies[bar])
        here = int(layout.on[bar])
        long = int(layout.sets[bar] @ task.lengths)
        for k in cheap:
            moved = int(min(stays, spare[k])) if task.caps[k] >= long else 0
            if task.costs[k] >= task.costs[here]:
                break
            if moved > 0:
                spare[k] -= moved
                spare[here] += moved
                stays -= moved
                sets.append(layout.sets[bar])
                on.append(int(k))
                copies.append(moved)
        if stays:
            sets.append(layout.sets[bar])
            on.append(here)
            copies.append(stays)
    if not sets:
        return layout
    return together(task, np.array(sets), np.array(on, np.int64), np.array(copies, np.int64), demand)


def together(task: Task, sets: Whole, on: Whole, copies: Whole, demand: Whole) -> Layout:
    """A layout of these bars, equal ones counted together."""
    kinds: dict[tuple[bytes, int], int] = {}
    rows: list[int] = []
    counts: list[int] = []
    for bar in range(len(on)):
        kind = (sets[bar].tobytes(), int(on[bar]))
        if kind not in kinds:
            kinds[kind] = len(rows)
            rows.append(bar)
            counts.append(0)
        counts[kinds[kind]] += int(copies[bar])
    many = np.array(counts, np.int64)
    left = demand - many @ sets[rows] if rows else demand.copy()
    return Layout(
        sets[rows], on[rows], many, left, int(left @ task.lengths), int(many @ task.costs[on[rows]])
    )


@compiled
def _fill(
    lengths: Whole, demand: Whole, caps: Whole, limits: Whole, opening: Whole, tight: bool
) -> tuple[Whole, Whole, int]:
    """Bars by falling length of the pieces; how often each piece is on each, their stock, how many bars."""
    spare = limits.copy()
    most = min(demand.sum(), spare.sum())
    sets = np.zeros((most, lengths.shape[0]), np.int64)
    on = np.zeros(most, np.int64)
    rest = np.zeros(most, np.int64)
    count = 0
    for i in range(lengths.shape[0]):
        long = lengths[i]
        first = 0
        for _ in range(demand[i]):
            at = -1
            for bar in range(first, count):
                if rest[bar] >= long and (at < 0 or rest[bar] < rest[at]):
                    at = bar
                    if not tight:
                        break
            if not tight:
                first = count if at < 0 else at
            if at < 0:
                for k in opening:
                    if spare[k] > 0 and caps[k] >= long:
                        spare[k] -= 1
                        at = count
                        on[at] = k
                        rest[at] = caps[k]
                        count += 1
                        break
                if at < 0:
                    break
            sets[at, i] += 1
            rest[at] -= long
    return sets, on, count
