"""The inner loop of destroying and refilling: steps by the thousand without the interpreter."""

from typing import Any

import numpy as np

from casewright.cutting.compiled import compiled
from casewright.cutting.guillotine.beam import Real, Whole, search

# what a record holds: of the plan now, and of the best one
MISSING, COST, SPREAD, BEST_MISSING, BEST_COST, BEST_SPREAD, HEAT, STEP = range(8)
DRAWS = 40  # targets drawn, of which one is tried
MOST = 8  # sheets emptied in one step


@compiled
def drawn(state: Any) -> float:
    """The next random number from 0 to 1 (xorshift, Marsaglia 2003) [1]."""
    word = state[0]
    word ^= word << np.uint64(13)
    word ^= word >> np.uint64(7)
    word ^= word << np.uint64(17)
    state[0] = word
    return float(word >> np.uint64(11)) / 9007199254740992.0


@compiled
def better(missing: float, cost: float, spread: float, record: Real) -> bool:
    """Whether a plan with these is better than the best so far."""
    if missing != record[BEST_MISSING]:
        return bool(missing < record[BEST_MISSING])
    if cost != record[BEST_COST]:
        return bool(cost < record[BEST_COST])
    return bool(spread > record[BEST_SPREAD] + 1e-9)


@compiled
def target(
    removed: Any,
    size: int,
    slot_stock: Any,
    spare: Whole,
    cost: Whole,
    stock_area: Whole,
    area: float,
    state: Any,
) -> Any:
    """Stocks to fill instead of those removed: cheaper and large enough, or the same ones."""
    price = 0
    pool = np.empty(size + int(np.minimum(spare, size + 1).sum()), dtype=np.int64)
    for i in range(size):
        pool[i] = slot_stock[removed[i]]
        price += cost[pool[i]]
    length = size
    for s in range(len(spare)):
        for _ in range(min(spare[s], size + 1)):
            pool[length] = s
            length += 1
    chosen = pool[:size].copy()
    chosen_cost = -1
    aim = price * (1.0 - 0.04 * drawn(state) ** 2)
    for _ in range(DRAWS):
        some = max(1, min(length, size - 1 + int(3 * drawn(state))))
        total = 0
        room = 0.0
        for i in range(some):
            j = i + int((length - i) * drawn(state))
            pool[i], pool[j] = pool[j], pool[i]
            total += cost[pool[i]]
            room += stock_area[pool[i]]
        if total >= price or room < area:
            continue
        nearer = total > chosen_cost if total <= aim else (chosen_cost > aim and total < chosen_cost)
        if chosen_cost < 0 or nearer or (total <= aim and chosen_cost > aim):
            chosen_cost = total
            chosen = pool[:some].copy()
    for i in range(len(chosen) - 1, 0, -1):
        j = int((i + 1) * drawn(state))
        chosen[i], chosen[j] = chosen[j], chosen[i]
    return chosen


@compiled
def refill(  # noqa: PLR0912, PLR0915 - one loop over machine numbers, where a call costs as much as the work
    pose_kind: Whole,
    pose_length: Whole,
    pose_width: Whole,
    value: Real,
    area: Real,
    stock_length: Whole,
    stock_width: Whole,
    stock_area: Whole,
    cost: Whole,
    way: Whole,
    rects: Whole,
    rect_from: Whole,
    stages: int,
    swaps: bool,
    slot_stock: Any,
    slot_counts: Any,
    slot_used: Real,
    slot_rows: Any,
    slot_length: Any,
    spare: Whole,
    unplaced: Whole,
    best_stock: Any,
    best_rows: Any,
    best_length: Any,
    record: Real,
    state: Any,
    steps: int,
) -> int:
    """Empty and refill some sheets, `steps` times; the arrays hold the plan now and the best one [1].

    Args:
        pose_kind: kind of piece of each way to lay one [1]
        pose_length: its size along the stock [1]
        pose_width: its size across [1]
        value: what a piece of each kind is worth [1]
        area: of a piece of each kind [1]
        stock_length: of each stock [1]
        stock_width: of each stock [1]
        stock_area: of each stock [1]
        cost: of each stock [1]
        way: 0 first cuts along, 1 across, 2 either, of each stock [1]
        rects: forbidden rectangles, stock by stock [1]
        rect_from: where each stock's begin, and the end [1]
        stages: 2 or 3 [1]
        swaps: whether other stock may take the place of what is emptied
        slot_stock: stock of each sheet in use, -1 where there is none [1]
        slot_counts: pieces of each kind on it [1]
        slot_used: area of those [1]
        slot_rows: moves on it [1]
        slot_length: how many [1]
        spare: how many of each stock are not in use [1]
        unplaced: pieces of each kind that are on no sheet [1]
        best_stock: as slot_stock, of the best plan [1]
        best_rows: its moves [1]
        best_length: how many [1]
        record: missing area, cost, spread now and of the best, heat, number of the step [1]
        state: of the random numbers [1]
        steps: how many steps to make [1]

    Returns:
        How often the best plan became better.
    """
    kinds = len(area)
    slots = len(slot_stock)
    removed = np.zeros(MOST, dtype=np.int64)
    keys = np.zeros(slots)
    short = np.zeros(kinds, dtype=np.int64)
    improved = 0
    unit = cost.mean()
    for _step in range(steps):
        record[STEP] += 1
        active = 0
        waste = 0.0
        for i in range(slots):
            if slot_stock[i] >= 0:
                active += 1
                waste += stock_area[slot_stock[i]] - slot_used[i]
        if active == 0:
            break
        luck = drawn(state)
        size = 1 if luck < 0.05 else 2 if luck < 0.35 else 3 if luck < 0.65 else 4 if luck < 0.85 else 5
        size = min(size, active)
        for i in range(slots):
            keys[i] = np.inf
            if slot_stock[i] >= 0:
                weight = stock_area[slot_stock[i]] - slot_used[i] + 0.3 * waste / active + 1e-9
                keys[i] = -np.log(drawn(state) + 1e-300) / weight
        counts = unplaced.copy()
        price = 0.0
        freed = 0.0
        for j in range(size):
            first = 0
            for i in range(1, slots):
                if keys[i] < keys[first]:
                    first = i
            keys[first] = np.inf
            removed[j] = first
            price += cost[slot_stock[first]]
            free = 1.0 - slot_used[first] / stock_area[slot_stock[first]]
            freed += free * free
            for k in range(kinds):
                counts[k] += slot_counts[first, k]
        bulk = 0.0
        some = 0
        for k in range(kinds):
            bulk += counts[k] * area[k]
            short[k] = -1
            if counts[k] > 0:
                short[k] = some
                some += 1
        if swaps:
            stocks = target(removed, size, slot_stock, spare, cost, stock_area, bulk - record[MISSING], state)
        else:
            stocks = np.empty(size, dtype=np.int64)
            for j in range(size):
                stocks[j] = slot_stock[removed[j]]
        room = 0.0
        holes = 0
        for s in stocks:
            room += stock_area[s]
            holes += rect_from[s + 1] - rect_from[s]
        hole = np.empty((holes, 4), dtype=np.int64)
        hole_from = np.zeros(len(stocks) + 1, dtype=np.int64)
        for i in range(len(stocks)):
            low, high = rect_from[stocks[i]], rect_from[stocks[i] + 1]
            hole_from[i + 1] = hole_from[i] + high - low
            for r in range(high - low):
                for c in range(4):
                    hole[hole_from[i] + r, c] = rects[low + r, c]
        which = np.flatnonzero(counts[pose_kind] > 0)
        which_kind = short[pose_kind[which]]
        there = np.flatnonzero(counts > 0)
        luck = drawn(state)
        base = 0.0 if luck < 0.2 else 0.1 if luck < 0.6 else 0.03
        power = 0.0 if luck < 0.3 else 0.5 if luck < 0.7 else 1.0
        luck = drawn(state)
        rows = search(
            which_kind,
            pose_length[which],
            pose_width[which],
            counts[there],
            value[there],
            area[there],
            stock_length[stocks],
            stock_width[stocks],
            way[stocks],
            hole,
            hole_from,
            stages,
            int(2.0 ** (2.0 + 3.5 * drawn(state))),
            room - bulk + record[MISSING] * 1.3 + (0.05 * area.mean() if record[MISSING] > 0 else 0.0),
            base,
            power,
            0.0 if luck < 0.3 else 0.05 if luck < 0.7 else 0.2,
            int(drawn(state) * 2**30),
        )
        sheets = 0
        packed = 0.0
        new_cost = record[COST] - price
        new_spread = record[SPREAD] - freed
        number = len(rows)
        i = 0
        while i < number:
            j = i
            held = 0.0
            while j < number and rows[j, 1] == rows[i, 1]:
                held += area[pose_kind[which[rows[j, 0]]]]
                j += 1
            stock = stocks[rows[i, 1]]
            packed += held
            new_cost += cost[stock]
            free = 1.0 - held / stock_area[stock]
            new_spread += free * free
            sheets += 1
            i = j
        if active - size + sheets > slots:
            continue
        missing = bulk - packed
        if missing < 0.5:
            missing = 0.0
        worse = (new_cost - record[COST]) / unit * 20.0 - (new_spread - record[SPREAD])
        if missing > 0.0 or record[MISSING] > 0.0:
            worse = (missing - record[MISSING]) / stock_area.mean() * 4.0
            if record[MISSING] == 0.0:
                worse = 1e9
        if worse > 0.0 and drawn(state) >= np.exp(-worse / record[HEAT]):
            continue
        for j in range(size):
            spare[slot_stock[removed[j]]] += 1
            slot_stock[removed[j]] = -1
        for k in range(kinds):
            unplaced[k] = counts[k]
        i = 0
        slot = 0
        while i < number:
            while slot_stock[slot] >= 0:
                slot += 1
            stock = stocks[rows[i, 1]]
            spare[stock] -= 1
            slot_stock[slot] = stock
            slot_used[slot] = 0.0
            slot_counts[slot, :] = 0
            j = i
            while j < number and rows[j, 1] == rows[i, 1]:
                pose = which[rows[j, 0]]
                slot_used[slot] += area[pose_kind[pose]]
                slot_counts[slot, pose_kind[pose]] += 1
                unplaced[pose_kind[pose]] -= 1
                slot_rows[slot, j - i, :] = rows[j, :]
                slot_rows[slot, j - i, 0] = pose
                slot_rows[slot, j - i, 1] = 0
                j += 1
            slot_length[slot] = j - i
            i = j
        record[MISSING] = missing
        record[COST] = new_cost
        record[SPREAD] = new_spread
        if better(missing, new_cost, new_spread, record):
            improved += 1
            record[BEST_MISSING] = missing
            record[BEST_COST] = new_cost
            record[BEST_SPREAD] = new_spread
            best_stock[:] = slot_stock
            best_length[:] = slot_length
            best_rows[:] = slot_rows
    return improved
