"""A plan made better piecemeal: a few sheets are emptied and their pieces laid out anew, on less."""

import numpy as np

from casewright.cutting.guillotine.plans import Plan, plan_of
from casewright.cutting.guillotine.refill_kernel import (
    BEST_COST,
    BEST_MISSING,
    BEST_SPREAD,
    refill,
)
from casewright.cutting.guillotine.tables import Layout, Table
from casewright.measure.units import Count, Number

SPARE = 2**20  # as many sheets as anybody could need


class Refilling:
    """Destroys and refills a plan, step by step, and keeps the best plan that it came across.

    Args:
        table: the problem's sizes
        plan: where to begin
        seed: of every choice made [1]
        swaps: whether other stock may take the place of what is emptied
    """

    def __init__(self, table: Table, plan: Plan, seed: Count, swaps: bool = True) -> None:
        self.table = table
        self.swaps = swaps
        self.value = table.area.copy()
        slots = len(plan.layouts) * 3 // 2 + 8
        kinds = len(table.count)
        self.stock = np.full(slots, -1, dtype=np.int32)
        self.counts = np.zeros((slots, kinds), dtype=np.int16)
        self.used = np.zeros(slots)
        self.rows = np.zeros((slots, table.most, 6), dtype=np.int32)
        self.length = np.zeros(slots, dtype=np.int32)
        limits = [stock.limit for stock in table.problem.stocks]
        self.spare = np.array([SPARE if limit is None else limit for limit in limits], dtype=np.int64)
        for slot, layout in enumerate(plan.layouts):
            self.stock[slot] = layout.stock
            self.counts[slot] = layout.counts
            self.used[slot] = layout.counts @ table.area
            self.length[slot] = len(layout.moves)
            self.rows[slot, : len(layout.moves)] = [
                (move.pose, 0, layout.turn, move.a, move.b, move.kind) for move in layout.moves
            ]
            self.spare[layout.stock] -= 1
        fitting = table.count * table.fits().any(axis=1)
        self.unplaced = np.maximum(plan.unplaced - (table.count - fitting), 0).astype(np.int64)
        self.rects, self.rect_from = table.rects(range(len(table.cost)))
        missing = float(self.unplaced @ table.area)
        self.record = np.array(
            [missing, plan.cost, plan.spread, missing, plan.cost, plan.spread, 0.02, 0.0], dtype=np.float64
        )
        self.best = (self.stock.copy(), self.rows.copy(), self.length.copy())
        self.state = np.array([seed * 2654435761 % 2**63 + 88172645463325252], dtype=np.uint64)

    def steps(self, number: Count) -> bool:
        """Make some steps; say whether the best plan became better."""
        table = self.table
        improved = refill(
            table.kind,
            table.length,
            table.width,
            self.value,
            table.area,
            table.stock_length,
            table.stock_width,
            table.stock_area,
            table.cost,
            table.way,
            self.rects,
            self.rect_from,
            table.problem.stages,
            self.swaps,
            self.stock,
            self.counts,
            self.used,
            self.rows,
            self.length,
            self.spare,
            self.unplaced,
            *self.best,
            self.record,
            self.state,
            number,
        )
        return improved > 0

    def best_plan(self) -> Plan:
        """The best plan that was come across."""
        stock, rows, length = self.best
        layouts: list[Layout] = []
        for slot in np.flatnonzero(stock >= 0):
            layouts += self.table.layouts(rows[slot, : length[slot]].astype(np.int64), [int(stock[slot])])
        return plan_of(self.table, layouts)

    @property
    def reached(self) -> tuple[Number, Number, Number]:
        """Missing area, cost and spread of the best plan [1]."""
        return (
            float(self.record[BEST_MISSING]),
            float(self.record[BEST_COST]),
            float(self.record[BEST_SPREAD]),
        )
