"""The inner loops of the panel planner, compiled: filling one clear rectangle of a board, either way.

A rectangle is filled by value: a part is worth its area; a strip is worth the area of boards that its panel
takes less once it has it, so that a strip which spares another one is worth more than its width. Both fills
change what is left to be made, and write rows of (kind, which, across, along, width, length) from row `at`
on.
"""

import numpy as np

from casewright.cutting.compiled import compiled
from casewright.cutting.panels.arrays import Flags, Floats, Ints, Left, Parts, Rule

CELLS = 640
"""A length is shared out on a grid of at most so many cells, each need rounded up to one."""
MOST_SECTIONS = 64
SINGLE, STRIP = 0, 1
ALL_WIDTHS = 6
"""So many widths of a rip are weighed each time, of the others some."""
SKIPPED = 0.6


@compiled
def strip_net(room: int, lacking: int, rule: Rule) -> int:
    """The net width of the next strip of a panel from so much width; 0 where none fits.

    What a panel lacks after it must still make a strip, so a strip gives some of its width away for that.
    """
    allowance, narrowest, widest = rule
    most = min(room - allowance, widest)
    if most < narrowest:
        return 0
    if lacking <= most:
        return max(lacking, narrowest)
    if lacking - most < narrowest:
        return max(narrowest, lacking - narrowest)
    return most


@compiled
def section_net(room: int, lacking: int, rule: Rule, even: bool) -> int:
    """The net width of the next strip of a panel in a section with so much width left; 0 where none fits.

    The widest that can be, or an even share of the room; less where that leaves too little for another strip.
    """
    allowance, narrowest, widest = rule
    net = strip_net(room, lacking, rule)
    if net in (0, lacking):
        return net
    if even:
        strips = (room + widest + allowance - 1) // (widest + allowance)
        net = min(net, max(narrowest, room // strips - allowance))
    rest = room - net - allowance
    if 0 < rest < narrowest + allowance:
        net = max(narrowest, net - (narrowest + allowance - rest))
    return net


@compiled
def takes(short: int, rule: Rule) -> int:
    """The width of boards that so much net width takes at least, with what its fewest strips lose."""
    return short + (short + rule[2] - 1) // rule[2] * rule[0]


@compiled
def knapsack(sizes: Ints, values: Floats, count: int, room: int, chosen: Flags) -> float:
    """Marks in `chosen` the items of greatest value that fit the room, each taken once; gives their value."""
    step = max(1, (room + CELLS - 1) // CELLS)
    cells = room // step
    best = np.zeros(cells + 1)
    taken = np.zeros((count, cells + 1), np.bool_)
    for i in range(count):
        size = (sizes[i] + step - 1) // step
        for c in range(cells, size - 1, -1):
            more = best[c - size] + values[i]
            if more > best[c] + 1e-12:
                best[c] = more
                taken[i, c] = True
    c = cells
    for i in range(count - 1, -1, -1):
        chosen[i] = taken[i, c]
        if chosen[i]:
            c -= (sizes[i] + step - 1) // step
    return float(best[cells])


@compiled
def lay_single(i: int, across: int, along: int, parts: Parts, left: Left, out: Ints, at: int) -> float:
    """Writes one single part and takes it off the need; gives its value."""
    out[at, 0], out[at, 1], out[at, 2], out[at, 3] = SINGLE, i, across, along
    out[at, 4], out[at, 5] = parts[1][i], parts[0][i]
    left[0][i] -= 1
    return float(parts[2][i])


@compiled
def lay_strip(
    p: int, net: int, across: int, along: int, parts: Parts, left: Left, rule: Rule, out: Ints, at: int
) -> float:
    """Writes one strip and takes its net width off what the panel lacks; gives its value."""
    out[at, 0], out[at, 1], out[at, 2], out[at, 3] = STRIP, p, across, along
    out[at, 4], out[at, 5] = net + rule[0], parts[3][p]
    before = takes(left[1][p], rule)
    left[1][p] = max(0, left[1][p] - net)
    return float(parts[3][p] * (before - takes(left[1][p], rule)))


@compiled
def row_of(
    i: int, across: int, along: int, reach: int, parts: Parts, left: Left, order: Ints, out: Ints, at: int
) -> tuple[float, int]:
    """Lays a row as wide as part `i`: its copies end to end, then whatever else fits behind them."""
    lengths, widths, need = parts[0], parts[1], left[0]
    value, used = 0.0, 0
    for k in range(-1, order.size):
        j = i if k < 0 else order[k]
        if j >= need.size or widths[j] > widths[i]:
            continue
        while need[j] > 0 and used + lengths[j] <= reach:
            value += lay_single(j, across, along + used, parts, left, out, at)
            at += 1
            used += lengths[j]
    return value, at


@compiled
def section(
    reach: int,
    width: int,
    along: int,
    parts: Parts,
    left: Left,
    order: Ints,
    rule: Rule,
    even: bool,
    out: Ints,
    at: int,
) -> tuple[float, int]:
    """Fills one crosscut section over its whole width with parts at most `reach` long.

    Those just so long come first, since it is cut for them; within that, the order that is given.
    """
    need, short = left
    across, value = 0, 0.0
    for shorter in (False, True):
        for k in range(order.size):
            i = order[k]
            p = i - need.size
            length = parts[0][i] if p < 0 else parts[3][p]
            if length > reach or (length < reach) != shorter:
                continue
            if p < 0:
                while need[i] > 0 and across + parts[1][i] <= width:
                    made, at = row_of(i, across, along, reach, parts, left, order, out, at)
                    value += made
                    across += parts[1][i]
                continue
            while short[p] > 0:
                net = section_net(width - across, short[p], rule, even)
                if net == 0:
                    break
                value += lay_strip(p, net, across, along, parts, left, rule, out, at)
                at += 1
                across += net + rule[0]
    return value, at


@compiled
def fill_across(
    room: tuple[int, int], parts: Parts, left: Left, order: Ints, rule: Rule, noise: float, out: Ints, at: int
) -> tuple[float, int]:
    """Fills a rectangle (width, length) crosscut first: a knapsack shares out its length among sections.

    Whether strips are as wide as can be, or share a section's width evenly, is left to luck.
    """
    width, length = room
    need, short = left
    sizes = np.zeros(MOST_SECTIONS, np.int64)
    values = np.zeros(MOST_SECTIONS)
    chosen = np.zeros(MOST_SECTIONS, np.bool_)
    tried = np.zeros((out.shape[0], 6), np.int64)
    seen = np.zeros(order.size, np.int64)
    total, along = 0.0, 0
    even = np.random.randint(2) == 0
    while along < length:
        count, items = 0, 0
        for i in range(order.size):
            p = i - need.size
            wanted = need[i] > 0 if p < 0 else short[p] > 0
            reach = parts[0][i] if p < 0 else parts[3][p]
            if not wanted or reach > length - along or np.any(seen[:count] == reach):
                continue
            seen[count] = reach
            count += 1
            some = need.copy(), short.copy()
            for _ in range((length - along) // reach):
                if items == MOST_SECTIONS:
                    break
                made, _rows = section(reach, width, 0, parts, some, order, rule, even, tried, 0)
                if made <= 0:
                    break
                sizes[items], values[items] = reach, made * (1 + noise * np.random.random())
                items += 1
        if items == 0:
            break
        knapsack(sizes, values, items, length - along, chosen)
        best = -1
        for i in range(items):
            if chosen[i] and (best < 0 or values[i] * sizes[best] > values[best] * sizes[i]):
                best = i
        if best < 0:
            break
        made, at = section(sizes[best], width, along, parts, left, order, rule, even, out, at)
        total += made
        along += sizes[best]
    return total, at


@compiled
def rip_widths(room: int, length: int, parts: Parts, left: Left, rule: Rule, widths: Ints) -> int:
    """Writes how wide the next rip might be; gives how many widths there are.

    A strip that completes its panel, or after which it takes one fewer, even shares of the room, the widest
    strip, each single part's width.
    """
    allowance, narrowest, widest = rule
    need, short = left
    count, wanted = 0, False
    for p in range(short.size):
        if short[p] > 0:
            wanted = True
            if narrowest <= short[p] <= widest and short[p] + allowance <= room:
                widths[count] = short[p] + allowance
                count += 1
            spare = short[p] - (short[p] - 1) // widest * widest
            if narrowest <= spare < short[p] and spare + allowance <= room:
                widths[count] = spare + allowance
                count += 1
    if wanted:
        strips = max(1, (room + widest + allowance - 1) // (widest + allowance))
        for more in range(2):
            even = min(room // (strips + more), widest + allowance)
            if even - allowance >= narrowest:
                widths[count] = even
                count += 1
        if room >= widest + allowance:
            widths[count] = widest + allowance
            count += 1
    for i in range(need.size):
        if need[i] > 0 and parts[1][i] <= room and parts[0][i] <= length:
            widths[count] = parts[1][i]
            count += 1
    return count


@compiled
def rip_items(
    rip: int, length: int, parts: Parts, left: Left, rule: Rule, sizes: Ints, values: Floats, which: Ints
) -> int:
    """Writes what could lie in a rip, an item for each copy and two strips of each panel; gives how many."""
    need, short = left
    items = 0
    for i in range(need.size):
        if parts[1][i] <= rip and parts[0][i] <= length:
            for _ in range(min(need[i], length // parts[0][i])):
                sizes[items], which[items], values[items] = parts[0][i], i, parts[2][i]
                items += 1
    for p in range(short.size):
        lacking = short[p]
        for _ in range(min(2, length // parts[3][p])):
            net = strip_net(rip, lacking, rule) if lacking > 0 else 0
            if net == 0:
                break
            sizes[items], which[items] = parts[3][p], need.size + p
            values[items] = parts[3][p] * (takes(lacking, rule) - takes(max(0, lacking - net), rule))
            lacking -= net
            items += 1
    return items


@compiled
def fill_along(
    room: tuple[int, int], parts: Parts, left: Left, rule: Rule, noise: float, out: Ints, at: int
) -> tuple[float, int]:
    """Fills a rectangle (width, length) ripped first: a knapsack shares out the length of each rip."""
    width, length = room
    need, short = left
    most = need.sum() + 2 * short.size
    sizes, which, best_which = np.zeros(most, np.int64), np.zeros(most, np.int64), np.zeros(most, np.int64)
    values, chosen = np.zeros(most), np.zeros(most, np.bool_)
    rips = np.zeros(need.size + 2 * short.size + 4, np.int64)
    total, across = 0.0, 0
    while across < width:
        best_score, best_rip, best_count = 0.0, 0, 0
        for h in range(rip_widths(width - across, length, parts, left, rule, rips)):
            rip = rips[h]
            if np.any(rips[:h] == rip) or (h >= ALL_WIDTHS and np.random.random() < SKIPPED):
                continue
            items = rip_items(rip, length, parts, left, rule, sizes, values, which)
            if items == 0:
                continue
            for k in range(items):
                values[k] *= 1 + 0.3 * noise * np.random.random()
            score = knapsack(sizes, values, items, length, chosen) / rip
            score *= 1 + 0.5 * noise * np.random.random()
            if score > best_score:
                best_score, best_rip, best_count = score, rip, 0
                for k in range(items):
                    if chosen[k]:
                        best_which[best_count] = which[k]
                        best_count += 1
        if best_count == 0:
            break
        along = 0
        for k in range(best_count):
            i = best_which[k]
            p = i - need.size
            if p < 0:
                total += lay_single(i, across, along, parts, left, out, at)
                along += parts[0][i]
            else:
                net = strip_net(best_rip, short[p], rule)
                total += lay_strip(p, net, across, along, parts, left, rule, out, at)
                along += parts[3][p]
            at += 1
        across += best_rip
    return total, at
