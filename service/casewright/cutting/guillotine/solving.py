"""The least cost at which all pieces come out of the stock, as far as the time allows to find it."""

import numpy as np

from casewright.cutting.budget import Budget, Progress
from casewright.cutting.guillotine.bounds import area_bound
from casewright.cutting.guillotine.filling import Taste, filled
from casewright.cutting.guillotine.plans import Plan, orders, plan_of, quick_plan, sequence
from casewright.cutting.guillotine.problem import Answer, Problem
from casewright.cutting.guillotine.refilling import TASTES, Refilling
from casewright.cutting.guillotine.tables import Layout, Table
from casewright.measure.units import Count


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
        self.bound: Count = area_bound(table)
        self.plan = quick_plan(table)

    def run(self) -> None:
        """Search with more and more layouts side by side, then refill."""
        self._tell()
        fitting = self.table.count * self.table.fits().any(axis=1)
        wanted = int(fitting.sum())
        for keep in (10, 40, 150):
            for order in orders(self.table):
                for base, power in TASTES:
                    if self.done():
                        return
                    row = sequence(self.table, order, wanted)
                    self.take(plan_of(self.table, filled(self.table, fitting, row, Taste(keep, base, power))))
        refilling = Refilling(self.table, self.plan, self.budget.seed)
        while not self.done():
            if refilling.step():
                self.take(refilling.best)

    def done(self) -> bool:
        """Count a step, and say whether the work is over."""
        self.steps += 1
        proven = not self.plan.missing and self.plan.cost <= self.bound
        return proven or not self.budget.allows(self.steps - 1)

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
