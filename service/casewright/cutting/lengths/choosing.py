"""Which sets make the whole layout: a mixed-integer programme over all sets that a better one can hold.

By the prices of the linear programme every bar of a layout pays its cost but for a little, and all these
littles together are no more than what the layout costs above the bound. Where the bound is near the next cost
below the best layout, few sets are left, and often all of them can be written down.

Source: fixing by reduced costs, common practice in integer programming.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

import highspy
import numpy as np

from casewright.cutting.budget import Budget
from casewright.cutting.compiled import compiled
from casewright.cutting.lengths.knapsack import Whole
from casewright.cutting.lengths.prices import Prices
from casewright.cutting.lengths.task import Task
from casewright.measure.units import Count, Number

MOST_SETS = 9_000
MOST_NODES = 3_000_000
"""Of the search for sets: a tenth of a second."""
BRANCHES = 2_000
"""Nodes of the programme, so that it ends by itself where no time is given."""
POOLS = ((500, 0.6), (2_000, 0.8), (MOST_SETS, 0.85))
"""So many sets are tried together, for so much of the time that is left: how long a programme takes is much
a matter of luck, and with fewer sets it is shorter. The rest is kept back, since HiGHS does not look up
often."""


@dataclass(frozen=True, slots=True)
class Near:
    """Sets of which a better layout can be made, if of some pieces more may be cut than are wanted.

    Attributes:
        sets: how often each piece is in each, those first that are worth most beside what their stock needs
        on: the stock of each
        whole: whether these are all
    """

    sets: Whole
    on: Whole
    whole: bool

    def pools(self) -> Iterator[tuple["Near", Number]]:
        """The first sets, and all of them; with the share of the time that is left for each."""
        if len(self.on) <= POOLS[1][0]:
            yield self, POOLS[-1][1]
            return
        for many, share in POOLS:
            yield Near(self.sets[:many], self.on[:many], self.whole and many >= len(self.on)), share


@dataclass(frozen=True, slots=True)
class Chosen:
    """What came of a choice.

    Attributes:
        bars: pieces on each bar of a layout that costs no more than the target; None where none was found
        on: the stock of each
        none: whether there is none, of whatever sets
    """

    bars: Whole | None
    on: Whole
    none: bool = False


def near_sets(task: Task, prices: Prices, over: Whole, target: Count) -> Near:
    """The sets that a layout can hold which costs no more than the target, if each bar is as full as can be.

    Args:
        task: lengths, stock and costs
        prices: of the linear programme
        over: no set on each stock is worth more
        target: the cost that is wanted
    """
    worth = sum(int(d) * int(w) for d, w in zip(task.demand, prices.worths, strict=True))
    rents = sum(
        int(limit) * (int(need) - int(cost) * prices.factor)
        for limit, need, cost in zip(task.limits, prices.needs, task.costs, strict=True)
        if need > cost * prices.factor
    )
    # A bar may pay a little more than it costs, prices being only nearly right: others may then pay less.
    excess = max(0, int((over - prices.needs).max())) * int(task.demand.sum())
    slack = target * prices.factor - worth + rents + excess
    order = np.argsort(-(prices.worths / task.lengths), kind="stable")
    found, on, whole = [], [], True
    for k in range(len(task.caps)):
        room = np.zeros((MOST_SETS, len(order)), np.int64)
        many, all_of_them = _near(
            task.lengths[order],
            task.demand[order],
            prices.worths[order],
            int(task.caps[k]),
            int(prices.needs[k]) - slack,
            room,
            MOST_NODES,
        )
        whole = whole and all_of_them
        sets = np.zeros((many, len(order)), np.int64)
        sets[:, order] = room[:many]
        found.append(sets)
        on.append(np.full(many, k, np.int64))
    sets, stocks = np.concatenate(found), np.concatenate(on)
    nearest = np.argsort(prices.needs[stocks] - sets @ prices.worths, kind="stable")
    return Near(sets[nearest], stocks[nearest], whole)


def chosen(task: Task, near: Near, budget: Budget, target: Count, share: Number = 1) -> Chosen:
    """Bars that cost no more than the target.

    Args:
        task: what is to be cut
        near: the sets
        budget: how long it may take
        target: the cost that is wanted
        share: of the time that is left [1]
    """
    if not len(near.on):
        return Chosen(None, near.on, near.whole)
    pieces, many = len(task.lengths), len(near.on)
    limited = np.flatnonzero(~task.unlimited)
    highs = highspy.Highs()  # type: ignore[no-untyped-call]
    for option, value in {
        "output_flag": False,
        "threads": 1,
        "mip_detect_symmetry": False,
        "mip_max_nodes": BRANCHES,
        "objective_target": target + 0.01,
        "mip_allow_cut_separation_at_nodes": False,
        # They seldom find the few layouts that there are, and do not look up when time is over.
        "mip_heuristic_run_rens": False,
        "mip_heuristic_run_rins": False,
        "mip_heuristic_run_feasibility_jump": False,
    }.items():
        highs.setOptionValue(option, value)
    kept_back = 0.0 if budget.left() == math.inf else (1 - share) * budget.left()

    def look(event: highspy.highs.HighsCallbackEvent) -> None:
        """Stop when the budget does."""
        if budget.left() <= kept_back:
            event.interrupt()

    # HiGHS's own limit goes by the wall's clock, ours by the budget's, and somebody may ask for a stop.
    highs.cbMipInterrupt += look
    highs.cbSimplexInterrupt += look
    rows = pieces + len(limited)
    low = np.concatenate([task.demand.astype(float), np.zeros(len(limited))])
    high = np.concatenate([np.full(pieces, highspy.kHighsInf), task.limits[limited].astype(float)])
    nothing = np.zeros(0, np.int32)
    highs.addRows(rows, low, high, 0, np.zeros(rows, np.int32), nothing, np.zeros(0))
    table = np.concatenate([near.sets, (near.on[:, None] == limited[None, :]).astype(np.int64)], axis=1)
    which, row = np.nonzero(table)
    starts = np.searchsorted(which, np.arange(many)).astype(np.int32)
    values = table[which, row].astype(float)
    none, most = np.zeros(many), np.full(many, highspy.kHighsInf)
    highs.addCols(
        many, task.costs[near.on].astype(float), none, most, len(row), starts, row.astype(np.int32), values
    )
    columns = np.arange(many, dtype=np.int32)
    highs.changeColsIntegrality(many, columns, np.array([highspy.HighsVarType.kInteger] * many))
    # More than the target is of no use: this cuts off what leads there.
    highs.addRow(0.0, float(target) + 0.01, many, columns, task.costs[near.on].astype(float))
    highs.run()
    if highs.getInfo().primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        impossible = highs.getModelStatus() == highspy.HighsModelStatus.kInfeasible
        return Chosen(None, near.on[:0], impossible and near.whole)
    often: Whole = np.rint(np.array(highs.getSolution().col_value)).astype(np.int64)
    bars, on = np.repeat(near.sets, often, axis=0), np.repeat(near.on, often)
    above = bars.sum(axis=0) - task.demand
    if (above < 0).any() or (np.bincount(on, minlength=len(task.caps)) > task.limits).any():
        return Chosen(None, on)
    for at in range(len(bars)):
        fewer = np.minimum(bars[at], above)
        bars[at] -= fewer
        above -= fewer
    return Chosen(bars, on)


@compiled
def _near(
    lengths: Whole, bounds: Whole, worths: Whole, cap: int, need: int, found: Whole, most_nodes: int
) -> tuple[int, bool]:
    """All full sets of a length that are worth so much, pieces by falling density; how many, whether all."""
    pieces = lengths.shape[0]
    taken = np.zeros(pieces, np.int64)
    many = 0
    left = cap
    worth = 0
    i = 0
    for _ in range(most_nodes):
        if i < pieces and worth + left * (worths[i] / lengths[i]) + 1.0 >= need:
            taken[i] = min(bounds[i], left // lengths[i])
            left -= taken[i] * lengths[i]
            worth += taken[i] * worths[i]
            i += 1
            continue
        full = left < cap
        for j in range(pieces):
            if lengths[j] <= left and taken[j] < bounds[j]:
                full = False
                break
        if worth >= need and full:
            if many == found.shape[0]:
                return many, False
            found[many, :i] = taken[:i]
            found[many, i:] = 0
            many += 1
        i -= 1
        while i >= 0 and taken[i] == 0:
            i -= 1
        if i < 0:
            return many, True
        taken[i] -= 1
        left += lengths[i]
        worth -= worths[i]
        i += 1
    return many, False
