"""A plan made better piecemeal: a few sheets are emptied and their pieces laid out anew, on less."""

import math

import numpy as np

from casewright.cutting.guillotine.filling import Taste, filled
from casewright.cutting.guillotine.plans import Plan, plan_of
from casewright.cutting.guillotine.tables import Layout, Table
from casewright.measure.units import Count

TASTES = ((0.0, 0.0), (0.1, 0.5), (0.03, 0.5), (0.1, 1.0), (0.0, 1.0))


class Refilling:
    """Destroys and refills a plan, step by step, and keeps the best plan that it came across.

    Args:
        table: the problem's sizes
        plan: where to begin
        seed: of every choice made [1]
    """

    def __init__(self, table: Table, plan: Plan, seed: Count) -> None:
        self.table = table
        self.plan = plan
        self.best = plan
        self.random = np.random.default_rng(seed)
        self.step_number = 0
        limits = [stock.limit for stock in table.problem.stocks]
        self.limit = np.array([2**30 if limit is None else limit for limit in limits], dtype=np.int64)
        self.unit = float(table.cost.mean())

    def step(self) -> bool:
        """Empty some sheets and refill them; say whether the best plan became better."""
        self.step_number += 1
        layouts = list(self.plan.layouts)
        if not layouts:
            return False
        removed = self._choose(layouts)
        kept = [layout for i, layout in enumerate(layouts) if i not in removed]
        counts = self.plan.unplaced + sum(layouts[i].counts for i in removed)
        area = float(counts @ self.table.area)
        target = self._target([layouts[i] for i in removed], kept, area)
        if target is None:
            return False
        base, power = TASTES[int(self.random.integers(len(TASTES)))]
        taste = Taste(
            keep=int(2 ** self.random.uniform(2, 5.5)),
            base=base,
            power=power,
            noise=float(self.random.choice([0.0, 0.05, 0.2])),
            seed=int(self.random.integers(2**30)),
        )
        slack = math.inf
        if not self.plan.missing:
            slack = float(self.table.stock_area[target].sum()) - area
        new = filled(self.table, counts, target, taste, slack)
        plan = plan_of(self.table, kept + new)
        if self._takes(plan):
            self.plan = plan
        if plan.key < self.best.key:
            self.best = plan
            return True
        return False

    def _takes(self, plan: Plan) -> bool:
        """Whether to go on from this plan: if it is no worse, or not much worse, now and then."""
        if plan.missing > self.plan.missing:
            return False
        if plan.missing < self.plan.missing or plan.cost < self.plan.cost:
            return True
        worse = (plan.cost - self.plan.cost) / self.unit * 10 - (plan.spread - self.plan.spread)
        heat = 0.02
        return worse <= 0 or self.random.random() < math.exp(-worse / heat)

    def _choose(self, layouts: list[Layout]) -> set[int]:
        """Some sheets, those with more waste more likely."""
        area = self.table.stock_area
        waste = np.array(
            [area[layout.stock] - layout.counts @ self.table.area for layout in layouts], dtype=np.float64
        )
        weights = waste + waste.mean() * 0.3 + 1e-9
        most = min(len(layouts), 6)
        size = min(most, 1 + int(self.random.choice(5, p=[0.05, 0.3, 0.3, 0.2, 0.15])))
        return set(
            self.random.choice(len(layouts), size=size, replace=False, p=weights / weights.sum()).tolist()
        )

    def _target(self, removed: list[Layout], kept: list[Layout], area: float) -> list[int] | None:
        """Stocks to fill instead: of no more cost and, if it can be, large enough for all."""
        old = [layout.stock for layout in removed]
        if len(self.table.cost) == 1 and self.limit[0] >= 2**30:
            return old + ([0] if self.plan.missing else [])
        price = int(self.table.cost[old].sum())
        used = np.bincount([layout.stock for layout in kept], minlength=len(self.table.cost))
        free = np.minimum(self.limit - used, len(old) + 2)
        pool = np.repeat(np.arange(len(free)), free)
        if self.plan.missing:
            self.random.shuffle(pool)
            return old + [int(s) for s in pool if s not in old]
        best: tuple[float, list[int]] | None = None
        for _ in range(30):
            size = max(1, len(old) + int(self.random.integers(-1, 2)))
            if size > len(pool):
                continue
            some = self.random.choice(pool, size=size, replace=False)
            cost = int(self.table.cost[some].sum())
            room = float(self.table.stock_area[some].sum())
            if cost > price or room < area:
                continue
            if best is None or self.random.random() < 0.5:
                best = (room, [int(s) for s in some])
        return best[1] if best else old
