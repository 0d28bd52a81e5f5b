"""The best layout by the prices of the linear programme: sets are fixed one by one, priced anew each time.

Source: Sadykov, Vanderbeck, Pessoa, Tahiri, Uchoa, Primal heuristics for branch-and-price (2019), for diving
with limited discrepancy; from memory.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from casewright.cutting.budget import Budget, Progress
from casewright.cutting.lengths.choosing import chosen, near_sets
from casewright.cutting.lengths.filling import Layout, filled, together
from casewright.cutting.lengths.knapsack import Found, Knapsacks, Whole
from casewright.cutting.lengths.master import Master, Reals
from casewright.cutting.lengths.prices import LEAST, Prices, proven, whole_prices
from casewright.cutting.lengths.task import Task
from casewright.measure.units import Count, Seconds

AT_ONCE = 40
"""Sets that are taken from one pricing."""
NEARLY_ONE = 0.8
"""A set that is cut so often in the mixture is fixed together with the one that is cut most."""
HEAVY = 6_000
"""Knapsacks with so many states are not asked again for each bar of a whole layout."""
FIRST_DIVES = 0.15
"""So much of the time goes to the first dive before all sets of a better layout are looked for."""
CLOSE = 0.05
"""Of a bar: where the mixture costs less by more than that, too many sets can be in a better layout."""
CHOICE = 20
"""Steps that a mixed-integer programme counts for."""
BARS_AT_ONCE = 60


@dataclass(frozen=True, slots=True)
class AtRoot:
    """The best prices of the whole task.

    Attributes:
        prices: what pieces are worth and stock needs
        over: no set on each stock is worth more
    """

    prices: Prices
    over: Whole


@dataclass(frozen=True, slots=True)
class Node:
    """What is decided, and what is still wanted.

    Attributes:
        demand: how many of each piece are still wanted
        limits: how many of each stock are left
        bars: sets that are decided, with their stock and how often
        cost: of what is decided
        spare: how often another set than the likeliest may still be tried
        barred: sets that were tried here and stay out
    """

    demand: Whole
    limits: Whole
    bars: tuple[tuple[Count, Count], ...] = ()
    cost: Count = 0
    spare: Count = 0
    barred: tuple[Count, ...] = ()


class Search:
    """Work on one task: the best layout so far, the bound so far, the sets found so far.

    Attributes:
        best: the best layout so far
        bound: below which no layout of all pieces costs
    """

    def __init__(self, task: Task, budget: Budget) -> None:
        self.task = task
        self.budget = budget
        self.steps = 0
        self.best = filled(task, task.demand, task.limits)
        self.low = _by_length(task)
        self._knapsacks = Knapsacks(task.lengths, task.caps)
        self._chance = np.random.default_rng(budget.seed)
        self._master = Master(self.task)
        self._at_root: AtRoot | None = None
        self._hard = (math.inf, True)
        self._tell()

    @property
    def bound(self) -> Count:
        """No layout that leaves over as little costs less [1]."""
        if self.best.long:
            return max(0, math.ceil(self.low - self.best.long * self.task.missing))
        return self._up(self.low)

    @property
    def done(self) -> bool:
        """Is the best layout proven, or are time and steps at an end?"""
        return self.best.cost <= self.bound or not self.budget.allows(self.steps)

    def run(self) -> None:
        """Improve layout and bound until both meet or the budget is at an end."""
        if self.done:
            return
        self._master.add(self.best.sets, self.best.on)
        turn = 0
        while not self.done:
            self._dive(turn, math.inf if turn else FIRST_DIVES * self.budget.left())
            if not turn and not self.done:
                self._choose()
            turn += 1

    def _choose(self) -> None:
        """Look for a better layout among all sets that one can hold, where they are few enough."""
        value, heavy = self._hard
        if heavy or self.best.cost - self.task.step - value > CLOSE * int(self.task.costs.max()):
            return
        if self.best.long or self._mixture(Node(self.task.demand, self.task.limits), to_the_end=True) is None:
            return
        at_root, target = self._at_root, self.best.cost - self.task.step
        if at_root is None:
            return
        near = near_sets(self.task, at_root.prices, at_root.over, target)
        if not near.whole:
            self.steps += CHOICE
            return
        for pool, share in near.pools():
            self.steps += CHOICE
            found = chosen(self.task, pool, self.budget, target, share)
            if found.bars is not None:
                ones = np.ones(len(found.on), np.int64)
                self._offer(together(self.task, found.bars, found.on, ones, self.task.demand))
            elif found.none:
                self.low = max(self.low, Fraction(self.best.cost))
                self._tell()
            if self.done:
                return

    def _up(self, value: Fraction) -> int:
        """The least that all stock can cost if it costs no less than this."""
        return math.ceil(value / self.task.step) * self.task.step

    def _tell(self) -> None:
        cost = self.best.cost
        self.budget.tell(Progress(cost=cost, bound=min(self.bound, cost), seconds=self.budget.spent()))

    def _offer(self, layout: Layout) -> None:
        """Keep a layout if it is the best so far."""
        if layout.rank < self.best.rank:
            self.best = layout
            self._tell()

    def _hopeless(self, low: Fraction) -> bool:
        """Can nothing that counts at least this be better than the best layout?"""
        if self.best.long:
            return low >= self.best.cost + self.best.long * self.task.missing
        return self._up(low) >= self.best.cost

    def _mixture(self, node: Node, *, to_the_end: bool = False) -> Reals | None:
        """The mixture for what is wanted, with new sets as long as some pay; None where it cannot be best."""
        low = Fraction(0)
        barred = np.array(node.barred, np.int64)
        self._master.want(node.demand, node.limits, barred)
        while True:
            solved = self._master.solve()
            self.steps += 1
            prices = whole_prices(self.task, solved.worths, solved.rents)
            found = self._knapsacks.paying(node.demand, prices.worths, prices.needs, LEAST, AT_ONCE)
            if found.exact and not node.barred:
                low = max(low, proven(self.task, prices, found.over, node.demand, node.limits) + node.cost)
                if not node.bars and low > self.low:
                    self.low = low
                    self._at_root = AtRoot(prices, found.over)
                    self._tell()
            if self._hopeless(low) or self.done:
                return None
            new = self._master.add(found.sets, found.on)
            if new and found.states < HEAVY:
                new += self._bar_by_bar(node.demand, prices, found)
            if not node.bars:
                self._hard = (solved.value, found.states >= HEAVY)
            near = self._up(low) >= self._up(Fraction(solved.value + node.cost - 1e-6))
            if not new or (near and not to_the_end):
                return solved.often

    def _bar_by_bar(self, demand: Whole, prices: Prices, found: Found) -> Count:
        """Sets for one bar after the other, each of what those before it leave: together almost a layout."""
        new = 0
        left = demand
        for _ in range(BARS_AT_ONCE):
            if not len(found.sets) or not self.budget.left():
                break
            taken = found.sets[0]
            left = left - taken * _times(left, taken)
            found = self._knapsacks.paying(left, prices.worths, prices.needs, LEAST, 1, best=True)
            new += self._master.add(found.sets, found.on)
        return new

    def _dive(self, turn: Count, seconds: Seconds) -> None:
        """Fix sets until nothing is wanted, and go back to where another set was almost as likely."""
        open_nodes = [Node(self.task.demand, self.task.limits, spare=min(turn, 3))]
        until = math.inf
        while open_nodes and not self.done and self.budget.spent() < until:
            node = open_nodes.pop()
            often = self._mixture(node)
            # The whole task's own mixture takes long, and does not count.
            until = min(until, self.budget.spent() + seconds)
            if often is None:
                continue
            there = np.flatnonzero(often > 1e-6)
            likely = often[there] * (1 + (0.2 * self._chance.random(len(there)) if turn else 0))
            ranked = there[np.argsort(-likely, kind="stable")]
            children = []
            for other in range(min(node.spare + 1, len(ranked))):
                order = ranked[other : other + 1] if other else ranked
                child = self._fixed(
                    node, often, order, node.spare - other, (*node.barred, *ranked[:other].tolist())
                )
                self._finish(child)
                if child.demand.any() and child.bars != node.bars:
                    children.append(child)
            open_nodes.extend(children[::-1])

    def _fixed(
        self, node: Node, often: Reals, ranked: Whole, spare: Count, barred: tuple[Count, ...]
    ) -> Node:
        """The node with the first of these sets decided, and those that are as good as decided."""
        demand, limits, cost, bars = node.demand.copy(), node.limits.copy(), node.cost, list(node.bars)
        for at in ranked:
            wanted = int(often[at] + 1e-6)
            if not wanted and (len(bars) == len(node.bars) or often[at] > NEARLY_ONE):
                wanted = 1
            taken, k = self._master.sets[at], self._master.on[at]
            times = min(wanted, _times(demand, taken), int(limits[k]))
            if times:
                demand -= times * taken
                limits[k] -= times
                cost += times * int(self.task.costs[k])
                bars.append((int(at), times))
        return Node(demand, limits, tuple(bars), cost, spare, barred)

    def _finish(self, node: Node) -> None:
        """Fill what is still wanted at once, and keep the whole if it is the best."""
        rest = filled(self.task, node.demand, node.limits, quick=True)
        if (rest.long, node.cost + rest.cost) < self.best.rank:
            chosen = np.array([at for at, _ in node.bars], np.int64)
            often = np.array([times for _, times in node.bars], np.int64)
            self._offer(
                together(
                    self.task,
                    np.concatenate([self._master.sets[chosen], rest.sets]),
                    np.concatenate([self._master.on[chosen], rest.on]),
                    np.concatenate([often, rest.copies]),
                    self.task.demand,
                )
            )


def _times(demand: Whole, taken: Whole) -> Count:
    """How often a set can be cut before more of a piece is made than is wanted."""
    there = taken > 0
    return int((demand[there] // taken[there]).min()) if there.any() else 0


def _by_length(task: Task) -> Fraction:
    """What the pieces cost by their length alone, on the stock that is cheapest for its length."""
    cheapest = min(Fraction(int(c), int(cap)) for c, cap in zip(task.costs, task.caps, strict=True))
    return min(cheapest, Fraction(task.missing)) * int(task.demand @ task.lengths)
