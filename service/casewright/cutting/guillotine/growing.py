"""A plan grown sheet by sheet: always the stock next that pieces fill best for its price."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from casewright.cutting.compiled import compiled
from casewright.cutting.guillotine.beam import Real, Whole, search
from casewright.cutting.guillotine.refill_kernel import drawn
from casewright.cutting.guillotine.tables import Layout, Table
from casewright.measure.units import Count, Number


@compiled
def grow(  # noqa: PLR0912, PLR0915 - one loop over machine numbers, where a call costs as much as the work
    pose_kind: Whole,
    pose_length: Whole,
    pose_width: Whole,
    value: Real,
    area: Real,
    stock_length: Whole,
    stock_width: Whole,
    cost: Whole,
    way: Whole,
    rects: Whole,
    rect_from: Whole,
    stages: int,
    counts: Whole,
    spare: Whole,
    tries: int,
    keep: int,
    base: float,
    power: float,
    noise: float,
    state: Any,
    most: int,
) -> Any:
    """Moves of a plan as rows of pose, number of the sheet, direction, a, b, kind of move; and the stocks.

    Args:
        pose_kind: kind of piece of each way to lay one [1]
        pose_length: its size along the stock [1]
        pose_width: its size across [1]
        value: what a piece of each kind is worth [1]
        area: of a piece of each kind [1]
        stock_length: of each stock [1]
        stock_width: of each stock [1]
        cost: of each stock [1]
        way: 0 first cuts along, 1 across, 2 either, of each stock [1]
        rects: forbidden rectangles, stock by stock [1]
        rect_from: where each stock's begin, and the end [1]
        stages: 2 or 3 [1]
        counts: pieces of each kind to be placed [1]
        spare: how many of each stock there are [1]
        tries: stocks that are filled anew before the best is taken [1]
        keep: layouts kept side by side in filling one [1]
        base: added to the share of waste [1]
        power: how much layouts of few large pieces are favoured [1]
        noise: how far the choice of the stock is shaken, as a share [1]
        state: of the random numbers [1]
        most: how many pieces one sheet may hold [1]
    """
    stocks = len(cost)
    kinds = len(area)
    left = counts.copy()
    more = spare.copy()
    known = np.zeros(stocks, dtype=np.int64)  # pieces in the layout that is kept of this stock
    known_rows = np.zeros((stocks, most, 6), dtype=np.int32)
    known_counts = np.zeros((stocks, kinds), dtype=np.int16)
    known_worth = np.zeros(stocks)
    wanted = int(left.sum())
    rows = np.zeros((wanted, 6), dtype=np.int32)
    order = np.zeros(wanted, dtype=np.int64)
    used = 0
    made = 0
    short = np.zeros(kinds, dtype=np.int64)
    turn = np.arange(stocks)
    while made < wanted:
        for i in range(stocks - 1, 0, -1):
            j = int((i + 1) * drawn(state))
            turn[i], turn[j] = turn[j], turn[i]
        total = 0.0
        some = 0
        for k in range(kinds):
            short[k] = -1
            if left[k] > 0:
                short[k] = some
                some += 1
                total += left[k] * value[k]
        which = np.flatnonzero(left[pose_kind] > 0)
        which_kind = short[pose_kind[which]]
        there = np.flatnonzero(left > 0)
        best = -1
        best_score = -1.0
        last = False
        fresh = 0
        for t in range(stocks):
            s = turn[t]
            if more[s] <= 0:
                continue
            good = known[s] > 0
            if good:
                for k in range(kinds):
                    if known_counts[s, k] > left[k]:
                        good = False
                        break
            if not good:
                if fresh >= tries and best >= 0:
                    continue
                fresh += 1
                one = np.array([0, rect_from[s + 1] - rect_from[s]], dtype=np.int64)
                found = search(
                    which_kind,
                    pose_length[which],
                    pose_width[which],
                    left[there],
                    value[there],
                    area[there],
                    stock_length[s : s + 1],
                    stock_width[s : s + 1],
                    way[s : s + 1],
                    rects[rect_from[s] : rect_from[s + 1]],
                    one,
                    stages,
                    keep,
                    np.inf,
                    base,
                    power,
                    0.0,
                    0,
                )
                known[s] = len(found)
                known_worth[s] = 0.0
                known_counts[s, :] = 0
                for i in range(len(found)):
                    pose = which[found[i, 0]]
                    known_rows[s, i, :] = found[i, :]
                    known_rows[s, i, 0] = pose
                    known_counts[s, pose_kind[pose]] += 1
                    known_worth[s] += value[pose_kind[pose]]
            if known[s] == 0:
                more[s] = 0
                continue
            score = known_worth[s] / max(cost[s], 1) * (1.0 + noise * drawn(state))
            takes_all = known_worth[s] >= total - 1e-6 * total
            if takes_all and (not last or cost[s] < cost[best]):
                last = True
                best = s
            elif not last and score > best_score:
                best_score = score
                best = s
        if best < 0:
            break
        for i in range(known[best]):
            rows[made, :] = known_rows[best, i, :]
            rows[made, 1] = used
            made += 1
        for k in range(kinds):
            left[k] -= known_counts[best, k]
        order[used] = best
        used += 1
        more[best] -= 1
    return rows[:made], order[:used]


@dataclass(frozen=True, slots=True)
class Growth:
    """How a plan is grown.

    Attributes:
        tries: stocks that are filled anew before the best is taken [1]
        keep: layouts kept side by side in filling one [1]
        base: added to the share of waste [1]
        power: how much layouts of few large pieces are favoured [1]
        noise: how far the choice of the stock is shaken, as a share [1]
    """

    tries: Count
    keep: Count
    base: Number = 0.1
    power: Number = 2.0
    noise: Number = 0.0


def grown(
    table: Table, counts: Whole, spare: Whole, growth: Growth, value: Real, state: Any
) -> Sequence[Layout]:
    """Layouts of these pieces on what stock there is, as far as it goes.

    Args:
        table: the problem's sizes
        counts: pieces of each kind to be placed [1]
        spare: how many of each stock there are [1]
        growth: how it is done
        value: what a piece of each kind is worth [1]
        state: of the random numbers [1]

    Returns:
        The layouts, in the order in which they were chosen.
    """
    if not counts.any():
        return []
    rects, rect_from = table.rects(range(len(table.cost)))
    rows, order = grow(
        table.kind,
        table.length,
        table.width,
        value,
        table.area,
        table.stock_length,
        table.stock_width,
        table.cost,
        table.way,
        rects,
        rect_from,
        table.problem.stages,
        counts,
        spare,
        growth.tries,
        growth.keep,
        growth.base,
        growth.power,
        growth.noise,
        state,
        table.most,
    )
    return table.layouts(rows, order.tolist())
