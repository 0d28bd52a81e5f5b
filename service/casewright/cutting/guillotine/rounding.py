"""A mixture of sheets in parts made into whole sheets: all but the best for many copies of few sizes."""

from collections.abc import Callable
from dataclasses import replace

import highspy
import numpy as np

from casewright.cutting.guillotine.beam import ON_STACK, Real, Whole
from casewright.cutting.guillotine.generator import Generator
from casewright.cutting.guillotine.programs import program
from casewright.cutting.guillotine.tables import Layout, Move
from casewright.measure.units import Count, Number

ROUNDS = 400
PRICINGS = 3  # after each sheet that is taken
SHAKEN = 0.3  # of a share


def whole_sheets(
    generator: Generator,
    wanted: Whole,
    stock: Whole,
    few: Number,
    goes_on: Callable[[], bool],
    luck: np.random.Generator | None = None,
) -> list[Layout]:
    """Whole sheets out of the mixture, as long as there are enough pieces for it; some pieces stay over.

    Args:
        generator: whose program is at its end
        wanted: how many of each kind of piece are wanted [1]
        stock: how many of each stock there are [1]
        few: sheets' worth of pieces that are left for being laid out piece by piece [1]
        goes_on: whether there is still time
        luck: which sheets come first is shaken by it, where it is given; and after each of them the rest is
            priced more thoroughly, with no more of a piece in a strip than is left

    Returns:
        Layouts that hold no more of any kind than is wanted.
    """
    table = generator.table
    left, spare = wanted.copy(), stock.copy()
    chosen: list[Layout] = []
    biggest = float(table.stock_area.max())
    for _ in range(ROUNDS):
        if not goes_on() or float(left @ table.area) <= few * biggest:
            break
        _, prices, _ = generator.solve()
        shares = generator.shares()
        if luck is not None:
            shares *= 1.0 + SHAKEN * luck.random() * luck.random(len(shares))
        took = _take(generator, shares, left, spare, chosen)
        if not took:
            break
        generator.demand(left, strictly=luck is not None)
        generator.limit(spare.astype(np.float64))
        for _ in range(1 if luck is None else PRICINGS):
            if luck is not None:
                _, prices, _ = generator.solve()
            _, layouts = generator.price(prices, exact=False)
            if not generator.add(layouts):
                break
    generator.demand(wanted, strictly=True)
    generator.limit(generator.all_stock)
    return chosen


def _take(generator: Generator, shares: Real, left: Whole, spare: Whole, chosen: list[Layout]) -> Count:
    """Take the whole part of each share, or one sheet of the largest; say how many sheets these are."""
    took = 0
    best: int | None = None
    for j in np.argsort(-shares, kind="stable").tolist():
        if shares[j] < 1e-6:
            break
        layout = generator.layouts[j]
        holds = layout.counts > 0
        copies = min(int(np.min(left[holds] // layout.counts[holds])), int(spare[layout.stock]))
        if copies < 1:
            continue
        best = j if best is None else best
        copies = min(copies, int(shares[j] + 1e-6))
        _use(layout, copies, left, spare, chosen)
        took += copies
    if not took and best is not None:
        _use(generator.layouts[best], 1, left, spare, chosen)
        took = 1
    return took


def _use(layout: Layout, copies: int, left: Whole, spare: Whole, chosen: list[Layout]) -> None:
    left -= copies * layout.counts
    spare[layout.stock] -= copies
    chosen += [layout] * copies


def best_mixture(
    generator: Generator, wanted: Whole, stock: Whole, seconds: Number, upper: Number
) -> list[Layout]:
    """Whole sheets, of those that the generator knows, that hold all pieces at the least cost.

    Args:
        generator: whose sheets may be used
        wanted: how many of each kind of piece are wanted [1]
        stock: how many of each stock there are [1]
        seconds: how long it may take [s]
        upper: what it must undercut [1]

    Returns:
        The layouts, without what would be cut too often; none if nothing better was found in time.
    """
    table = generator.table
    solver = program()
    solver.setOptionValue("time_limit", seconds)
    solver.setOptionValue("objective_bound", float(upper))
    kinds, inf = len(wanted), highspy.kHighsInf
    for kind in range(kinds):
        solver.addRow(float(wanted[kind]), inf, 0, [], [])
    for most in stock.tolist():
        solver.addRow(-inf, float(most), 0, [], [])
    for j, layout in enumerate(generator.layouts):
        holds = np.flatnonzero(layout.counts)
        rows = np.append(holds, kinds + layout.stock).astype(np.int32)
        values = np.append(layout.counts[holds], 1).astype(np.float64)
        solver.addCol(float(table.cost[layout.stock]), 0.0, float(wanted.sum()), len(rows), rows, values)
        solver.changeColIntegrality(j, highspy.HighsVarType.kInteger)
    solver.run()
    if solver.getInfo().primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return []
    left = wanted.copy()
    chosen: list[Layout] = []
    copies = np.round(np.array(solver.getSolution().col_value)).astype(np.int64)
    for j in np.flatnonzero(copies).tolist():
        for _ in range(int(copies[j])):
            layout = _within(generator, generator.layouts[j], left)
            left -= layout.counts
            chosen.append(layout)
    return chosen if not left.any() else []


def _within(generator: Generator, layout: Layout, left: Whole) -> Layout:
    """The layout without the pieces of which there are enough already."""
    table = generator.table
    more = left.copy()
    moves: list[Move] = []
    begins = ON_STACK
    for move in layout.moves:
        kind = table.kind[move.pose]
        begins = max(begins, move.kind)
        if more[kind] <= 0:
            continue
        more[kind] -= 1
        moves.append(replace(move, kind=begins))
        begins = ON_STACK
    return table.layout(layout.stock, layout.turn, moves, len(left))
