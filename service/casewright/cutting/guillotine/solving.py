"""The least cost at which all pieces come out of the stock, as far as the time allows to find it."""

from concurrent.futures import ThreadPoolExecutor

import numpy as np

from casewright.cutting.budget import Budget, Progress
from casewright.cutting.guillotine.bounding import Bounding
from casewright.cutting.guillotine.bounds import area_bound
from casewright.cutting.guillotine.chain import Chain
from casewright.cutting.guillotine.diving import dive
from casewright.cutting.guillotine.filling import Taste, filled, left_over
from casewright.cutting.guillotine.growing import Growth
from casewright.cutting.guillotine.plans import Plan, plan_of, quick_plan
from casewright.cutting.guillotine.problem import Answer, Problem
from casewright.cutting.guillotine.rounding import best_mixture, whole_sheets
from casewright.cutting.guillotine.tables import Layout, Table
from casewright.measure.units import Count

TASTES = ((0.0, 0.0), (0.1, 0.5), (0.03, 0.5), (0.1, 1.0), (0.0, 1.0))

DIVES_FIRST = 10
DIVES_AT_ONCE = 3


def solve(problem: Problem, budget: Budget) -> Answer:
    """Layouts for the pieces, at once and then better until the budget ends or they are proven the best.

    Args:
        problem: what is wanted, and from what
        budget: how long to go on, by which clock; a step is one search or one refill

    Returns:
        Every piece that could be placed, the cost, and what no layout can undercut.
    """
    table = Table(problem)
    work = Work(table, budget)
    work.run()
    return work.answer()


class Work:
    """The best plan and bound so far, and the ways of making them better."""

    def __init__(self, table: Table, budget: Budget) -> None:
        self.table = table
        self.budget = budget
        self.steps = 0
        self.over = False
        self.one = len(table.cost) == 1 and table.problem.stocks[0].limit is None
        self.low: Count = area_bound(table)
        self.plan = quick_plan(table)
        self.bounding: Bounding | None = None
        self.second: Chain | None = None
        self.rounded: Plan | None = None
        self.luck = np.random.default_rng(budget.seed)

    @property
    def bound(self) -> Count:
        """What no layout undercuts, as far as is known by now [1]."""
        return max(self.low, self.bounding.bound) if self.bounding else self.low

    def run(self) -> None:
        """Make the plan better, with the bound beside it on a second core.

        Where the steps are counted, plan and bound take turns instead, so that the answer does not depend on
        which of them is faster.
        """
        self._tell()
        if self.done():
            return
        if self.budget.steps is not None:
            self.bounding = Bounding(self.table)
            self._improve()
            return
        with ThreadPoolExecutor(1) as pool:
            beside = pool.submit(self._beside)
            try:
                self._improve()
            finally:
                self.over = True
            beside.result()
        if self.second is not None:
            self.take(self.second.best)

    def _beside(self) -> None:
        """The bound, and when nothing more is to be had there, a second line of improvement."""
        if not len(self.table.count):
            return
        self.bounding = Bounding(self.table)
        while not self.bounding.finished and self._goes_on():
            self.bounding.step()
            if self.bounding.priced and self.rounded is None and self.bounding.table is self.table:
                self.rounded = self._round(self.bounding)
        self.second = Chain(self.table, self.plan, self._goes_on, self.budget.seed + 1)
        while self._goes_on() and not self.proven():
            if self.one and self.bounding.table is self.table:
                self._dive(self.bounding, self.second, DIVES_AT_ONCE)
            self.second.round(self.bound)

    def _dive(self, bounding: Bounding, chain: Chain, times: Count) -> None:
        """Try for a sheet fewer, several times."""
        for _ in range(times):
            if chain.best.cost <= self.bound or not self._goes_on():
                return
            dive(bounding.mixture, chain, self.luck)

    def _round(self, bounding: Bounding) -> Plan:
        """The best of some whole sheets made of the mixture, with more or fewer pieces left to a search."""
        chain = Chain(self.table, self.plan, self._goes_on, self.budget.seed + 2)
        best = self.plan
        for few in (2.5, 8.0, 20.0):
            chosen = whole_sheets(bounding.mixture, chain.wanted, chain.stock, few, self._goes_on)
            left = left_over(chain.wanted, chosen)
            tastes = TASTES if self.one else ()
            row = [0] * int(left.sum())
            plans = [
                plan_of(self.table, [*chosen, *filled(self.table, left, row, Taste(60, base, power))])
                for base, power in tastes
                if self._goes_on()
            ]
            best = min(best, chain.grow(Growth(20, 16), chosen), *plans, key=lambda plan: plan.key)
            if best.cost <= self.bound or len(chosen) == 0:
                break
        if self.one and self.budget.steps is None:
            chain.take(best)
            self._dive(bounding, chain, DIVES_FIRST)
            best = chain.best
        seconds = min(2.0, self.budget.left() / 3)
        if best.cost > self.bound and self.budget.steps is None and seconds > 0.1:
            whole = best_mixture(bounding.mixture, chain.wanted, chain.stock, seconds, best.cost)
            best = min(best, plan_of(self.table, whole), key=lambda plan: plan.key)
        return best

    def _goes_on(self) -> bool:
        return not self.over and self.budget.left() > 0

    def _improve(self) -> None:
        if self.one:
            self._search()
        chain = Chain(self.table, self.plan, lambda: not self.done(), self.budget.seed)
        if not self.one:
            for growth in (Growth(6, 4), Growth(99, 8)):
                if self.done():
                    return
                self.take(chain.grow(growth))
            chain.plan = chain.best = self.plan
            if not self.done():
                chain.plan = chain.best = chain.refill(self.plan)
                self.take(chain.best)
        while not self.done():
            chain.round(self.bound)
            self.take(chain.best)
            if self.second is not None and self.second.best.key < self.plan.key:
                self.take(self.second.best)
                chain.plan = chain.best = self.plan

    def _search(self) -> None:
        fitting = self.table.count * self.table.fits().any(axis=1)
        for keep in (10, 40, 150):
            for base, power in TASTES:
                if self.done():
                    return
                row = [0] * int(fitting.sum())
                self.take(plan_of(self.table, filled(self.table, fitting, row, Taste(keep, base, power))))

    def proven(self) -> bool:
        """Whether no layout can be better."""
        return not self.plan.missing and self.plan.cost <= self.bound

    def done(self) -> bool:
        """Count a step, and say whether the work is over."""
        self.steps += 1
        if self.budget.steps is not None and self.bounding is not None:
            self.bounding.step()
            if self.bounding.priced and self.rounded is None and self.bounding.table is self.table:
                self.rounded = self._round(self.bounding)
        if self.rounded is not None:
            self.take(self.rounded)
        return self.proven() or not self.budget.allows(self.steps - 1)

    def take(self, plan: Plan) -> None:
        """Keep a plan if it is better than the best so far."""
        if plan.key < self.plan.key:
            self.plan = plan
            self._tell()

    def _tell(self) -> None:
        self.budget.tell(Progress(cost=self.plan.cost, bound=self.bound, seconds=self.budget.spent()))

    def answer(self) -> Answer:
        """The best plan as sheets, equal ones together."""
        groups: dict[tuple[object, ...], list[Layout]] = {}
        for layout in self.plan.layouts:
            groups.setdefault((layout.stock, layout.turn, layout.moves), []).append(layout)
        cost = self.table.cost
        return Answer(
            sheets=tuple(
                self.table.sheet(same[0], len(same))
                for same in sorted(groups.values(), key=lambda same: (-int(cost[same[0].stock]), -len(same)))
            ),
            unplaced=tuple(int(n) for n in self.plan.unplaced),
            cost=self.plan.cost,
            bound=min(self.bound, self.plan.cost) if not self.plan.missing else self.bound,
            proven=not np.any(self.plan.unplaced) and self.plan.cost <= self.bound,
            seconds=self.budget.spent(),
        )
