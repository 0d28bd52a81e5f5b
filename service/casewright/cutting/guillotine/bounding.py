"""What no layout undercuts, found step by step: by prices first, then by asking which stock would do.

First the linear program: sheets may be used in parts, pieces on them more often than they are wanted. Then
the stock is counted in whole sheets: every pricing has shown that so much stock is needed, so the cheapest
whole numbers of sheets that satisfy all of these are looked for, and the program is asked whether they do. If
not, its prices show why, and that rules these numbers out (Benders 1962).
"""

from dataclasses import replace

import highspy
import numpy as np

from casewright.cutting.guillotine.beam import Real
from casewright.cutting.guillotine.bounds import area_bound, whole_cost
from casewright.cutting.guillotine.generator import Cut, Generator
from casewright.cutting.guillotine.problem import First
from casewright.cutting.guillotine.programs import program
from casewright.cutting.guillotine.tables import Table
from casewright.measure.units import Count, Number

EVERY = 8  # coarse pricings after which an exact one is made in any case
NEAR = 1e-6
ENOUGH = 1e9  # sums in an exact pricing


class Bounding:
    """The bound of a problem, better with each step.

    Args:
        table: the problem's sizes
    """

    def __init__(self, table: Table) -> None:
        self.bound: Count = area_bound(table)
        self.table = table = easier(table)
        cost = table.cost.astype(np.float64)
        self.mixture = Generator(table, cost, np.full(len(table.count), 2.0 * float(cost.max(initial=1.0))))
        self.whole: Generator | None = None
        self.counts: Real = np.zeros(len(cost))
        self.priced = False  # whether the linear program is at its end
        self.finished = False
        self._exact = False
        self._coarse = 0
        _, layouts = self.mixture.price(table.area, exact=False)
        self.mixture.add(layouts)

    def step(self) -> None:
        """One pricing, and what it shows."""
        if self.finished:
            return
        generator = self.whole or self.mixture
        value, prices, dear = generator.solve()
        exact = self._exact or self._coarse >= EVERY
        worth, layouts = generator.price(prices, exact)
        reduced = generator.cost - dear - worth
        scale = max(1.0, float(np.abs(generator.cost).max()), float(worth.max(initial=0.0)))
        new = generator.add(x for x in layouts if reduced[x.stock] < -NEAR * scale)
        self._coarse = 0 if exact else self._coarse + 1
        self._exact = new == 0 and not exact
        if self.whole is None:
            self._mixture_step(generator, value, prices, worth, exact, new)
        elif exact:
            self._whole_step(generator, value, prices, worth, new)

    def effort(self) -> Number:
        """About how many sums an exact pricing takes [1]."""
        return self.mixture.effort(exact=True)

    def _mixture_step(
        self, generator: Generator, value: Number, prices: Real, worth: Real, exact: bool, new: Count
    ) -> None:
        if not exact:
            return
        low = generator.bound(prices, worth)
        self.bound = max(self.bound, whole_cost(self.table, low))
        if new == 0 or low >= value * (1.0 - NEAR):
            self.priced = True
            self._count()

    def _whole_step(self, generator: Generator, value: Number, prices: Real, worth: Real, new: Count) -> None:
        needed = generator.cuts[-1].needed
        lacking = needed - float(worth @ self.counts)
        if lacking > NEAR * max(1.0, needed):
            self._count()
        elif new == 0 or value <= NEAR * float(self.table.area.sum()):
            self.finished = True  # these whole numbers of sheets would do, as far as the program can tell

    def _count(self) -> None:
        """The cheapest whole numbers of sheets that satisfy every cut so far; these are looked at next."""
        cuts = [*self.mixture.cuts, *(self.whole.cuts if self.whole else [])]
        cost, counts = cheapest(self.table, cuts)
        if cost is None:
            self.finished = True
            return
        self.bound = max(self.bound, cost)
        if self.whole is None:
            none = np.zeros(len(self.table.cost))
            self.whole = Generator(self.table, none, self.table.area.copy())
            self.whole.add(self.mixture.layouts)
        self.counts = counts
        self.whole.limit(counts)
        self._exact = False


def easier(table: Table) -> Table:
    """The problem on a wider grid, where an exact pricing would take too long on its own.

    Pieces and stock are both rounded down: whatever fitted side by side still fits, so what no layout
    undercuts here, none undercuts there.

    Args:
        table: the problem's sizes

    Returns:
        The same problem, or one that is no dearer.
    """
    problem = table.problem
    fits = table.fits().any(axis=1)
    pieces = [problem.pieces[kind] for kind in np.flatnonzero(fits).tolist()]
    if not pieces:
        return table
    finest = min(min(piece.width, piece.length) for piece in pieces)
    step = 1
    while step * 2 <= finest and _effort(table) / step**2 > ENOUGH:
        step *= 2
    if step == 1:
        return table
    return Table(
        replace(
            problem,
            pieces=tuple(replace(p, width=p.width // step, length=p.length // step) for p in pieces),
            stocks=tuple(
                replace(s, width=s.width // step, length=s.length // step, forbidden=())
                for s in problem.stocks
            ),
        )
    )


def _effort(table: Table) -> float:
    turns = 2 if table.problem.first is First.EITHER else 1
    return float(len(table.kind)) * float(table.stock_length.max()) * float(table.stock_width.max()) * turns


def cheapest(table: Table, cuts: list[Cut]) -> tuple[Count | None, Real]:
    """The least cost of whole sheets that satisfy all the cuts, and how many of each stock they are [1].

    Args:
        table: the problem's sizes
        cuts: what stock is needed at least

    Returns:
        No cost if it was not found in a second's work, or if there is not enough stock.
    """
    solver = program()
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_max_nodes", 2000)
    stocks = len(table.cost)
    for stock in range(stocks):
        limit = table.problem.stocks[stock].limit
        most = float(table.count.sum()) if limit is None else float(limit)
        solver.addCol(float(table.cost[stock]), 0.0, most, 0, [], [])
        solver.changeColIntegrality(stock, highspy.HighsVarType.kInteger)
    every = np.arange(stocks, dtype=np.int32)
    for cut in cuts:
        if cut.needed > 0:
            share = np.ascontiguousarray(cut.worth / cut.needed)
            solver.addRow(1.0 - 1e-7, highspy.kHighsInf, stocks, every, share)
    solver.run()
    if solver.getModelStatus() not in {
        highspy.HighsModelStatus.kOptimal,
        highspy.HighsModelStatus.kSolutionLimit,
    }:
        return None, np.zeros(stocks)
    low = float(solver.getInfo().mip_dual_bound)
    counts = np.round(np.array(solver.getSolution().col_value))
    return whole_cost(table, low), counts
