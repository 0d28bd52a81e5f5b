"""One line of improvement: emptied in part and grown again, then refilled a few sheets at a time."""

from collections.abc import Callable, Iterable

import numpy as np

from casewright.cutting.guillotine.beam import Whole
from casewright.cutting.guillotine.filling import Taste, filled
from casewright.cutting.guillotine.growing import Growth, grown
from casewright.cutting.guillotine.mixing import Mixing
from casewright.cutting.guillotine.plans import Plan, plan_of
from casewright.cutting.guillotine.refilling import SPARE, Refilling
from casewright.cutting.guillotine.tables import Layout, Table
from casewright.measure.units import Count

BATCH = 10  # steps of refilling between two looks at the clock
PATIENCE = 20  # batches without a better plan before something else is tried


class Chain:
    """A plan, and what is tried in turn to make it better; two chains with other seeds may run side by side.

    Args:
        table: the problem's sizes
        plan: where to begin
        goes_on: asked between steps whether there is time for another
        seed: of every choice made [1]
    """

    def __init__(self, table: Table, plan: Plan, goes_on: Callable[[], bool], seed: Count) -> None:
        self.table = table
        self.goes_on = goes_on
        self.plan = plan
        self.best = plan
        self.random = np.random.default_rng(seed)
        self.state = np.array([seed * 7919 + 88172645463325252], dtype=np.uint64)
        fitting = table.fits().any(axis=1)
        self.wanted: Whole = (table.count * fitting).astype(np.int64)
        limits = [stock.limit for stock in table.problem.stocks]
        self.one = len(limits) == 1 and limits[0] is None
        self.dropping: Refilling | None = None
        self.mixing: Mixing | None = None
        self.idle = 0
        self.stock: Whole = np.array([SPARE if limit is None else limit for limit in limits], dtype=np.int64)

    def grow(self, growth: Growth, kept: Iterable[Layout] = ()) -> Plan:
        """A plan that leaves some layouts as they are and grows the rest.

        Args:
            growth: how it is grown
            kept: the layouts that stay
        """
        kept = list(kept)
        counts = self.wanted.copy()
        spare = self.stock.copy()
        for layout in kept:
            counts -= layout.counts
            spare[layout.stock] -= 1
        return plan_of(
            self.table, [*kept, *grown(self.table, counts, spare, growth, self.table.area, self.state)]
        )

    def regrow(self) -> Plan:
        """Part of the plan emptied, more likely where there is waste, and grown again."""
        layouts = self.plan.layouts
        waste = np.array(
            [self.table.stock_area[x.stock] - x.counts @ self.table.area for x in layouts], dtype=np.float64
        )
        usual = waste.mean() if layouts else 0.0  # a plan without a single layout wastes nothing
        keys = self.random.exponential(size=len(layouts)) / (waste + 0.5 * usual + 1e-9)
        share = self.random.uniform(0.15, 0.6)
        size = min(len(layouts), max(3, round(share * len(layouts))))
        out = set(np.argsort(keys)[:size].tolist())
        growth = Growth(
            tries=int(self.random.choice([6, 12, 99])),
            keep=int(self.random.choice([4, 8, 16])),
            base=float(self.random.choice([0.03, 0.1])),
            power=float(self.random.choice([1.0, 2.0, 3.0])),
            noise=float(self.random.choice([0.0, 0.01, 0.03])),
        )
        return self.grow(growth, [layout for i, layout in enumerate(layouts) if i not in out])

    def refill(self, plan: Plan, batches: Count = 1000) -> Plan:
        """The plan after refilling until nothing has become better for a while."""
        refilling = Refilling(self.table, plan, int(self.random.integers(2**40)))
        idle = 0
        for _ in range(batches):
            before = refilling.reached[:2]
            refilling.steps(BATCH)
            idle = 0 if refilling.reached[:2] < before else idle + 1
            if idle >= PATIENCE or not self.goes_on():
                break
        return refilling.best_plan()

    def round(self, bound: Count) -> None:
        """One turn: grow part of the plan again, refill it, and go on from it if it is not much worse.

        Args:
            bound: what no plan undercuts [1]
        """
        if self.one:
            self.drop()
            return
        self.mix(bound)
        plan = self.regrow()
        if plan.cost <= self.plan.cost * 1.03:
            plan = self.refill(plan)
        limit = self.plan.cost * (1.0 + 0.002 * self.random.exponential())
        if plan.missing <= self.plan.missing and (plan.missing < self.plan.missing or plan.cost <= limit):
            self.plan = plan
        self.take(plan)

    def take(self, plan: Plan) -> None:
        """Keep a plan if it is better than the best so far."""
        if plan.key < self.best.key:
            self.best = plan

    def mix(self, bound: Count) -> None:
        """Where there are a few sizes of sheets: try other mixes of them, as long as that helps."""
        complete = np.all(self.best.unplaced <= self.table.count - self.wanted)
        found: Plan | None = self.best if complete else None
        while found is not None:
            if self.mixing is None:
                self.mixing = Mixing(self.table, self.wanted, found, bound, int(self.random.integers(2**40)))
            found = self.mixing.try_one(self.best, bound, self.goes_on)
            if found is not None:
                self.take(found)
                self.plan = found

    def drop(self) -> None:
        """Where all sheets are alike: do with one fewer, and find room for what was on it."""
        if self.dropping is None or self.idle >= 30:
            self.idle = 0
            begin = self.best
            if self.dropping is not None:
                taste = Taste.drawn(self.random)
                row = [0] * len(self.best.layouts)
                begin = plan_of(self.table, filled(self.table, self.wanted, row, taste))
                self.take(begin)
            most = len(self.best.layouts) - 1
            fullest = sorted(begin.layouts, key=lambda x: -float(x.counts @ self.table.area))[:most]
            self.dropping = Refilling(
                self.table, plan_of(self.table, fullest), int(self.random.integers(2**40)), swaps=False
            )
        if not self.dropping.steps(BATCH * 4):
            self.idle += 1
        if self.dropping.reached[0] == 0.0:
            self.take(self.dropping.best_plan())
            self.dropping = None
