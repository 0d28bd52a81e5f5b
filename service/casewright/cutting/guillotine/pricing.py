"""What a sheet of each stock could hold at most if every piece had a price, and of which pieces.

The strips of a sheet are a knapsack over its width, the stacks of a strip one over its length, the pieces of
a stack one over the strip's height (Gilmore and Gomory 1965). All stocks are priced together: a strip's best
value is known for every length once it is known for the longest.

No stack takes a piece in one pose more often than the piece is wanted; and since each stack holds a piece as
wide as itself, no strip has more stacks led by a pose than that. Beyond that pieces are there without limit.
"""

from typing import Any

import numpy as np

from casewright.cutting.compiled import compiled
from casewright.cutting.guillotine.beam import NEW_SHEET, NEW_STACK, NEW_STRIP, ON_STACK, Real, Whole


@compiled
def raised(best: Real, spare: Real, size: int, worth: float, most: int) -> Any:
    """The best values once a size may be taken so often, too; and an array that may be written over.

    Args:
        best: the best value for each room [1]
        spare: an array of the same length
        size: the room that one takes [1]
        worth: of one [1]
        most: how often it may be taken [1]
    """
    if most >= (len(best) - 1) // size:
        for x in range(len(best) - size):
            best[x + size] = max(best[x + size], best[x] + worth)
        return best, spare
    for _ in range(most):
        # Seen as slices, so that one number runs through all of them: this is what makes it quick.
        same, higher = best[size:], spare[size:]
        spare[:size] = best[:size]
        for x in range(len(higher)):
            higher[x] = max(same[x], best[x] + worth)
        best, spare = spare, best
    return best, spare


@compiled
def traced(best: Real, size: int, worth: float, most: int, times: Whole) -> None:
    """Raise the best values in place, and note for each room how often the size is taken.

    Args:
        best: the best value for each room [1]
        size: the room that one takes [1]
        worth: of one [1]
        most: how often it may be taken [1]
        times: how often it is taken, for each room; written over [1]
    """
    times[:] = 0
    if most <= 0 or size >= len(best):
        return
    if most >= (len(best) - 1) // size:
        for x in range(size, len(best)):
            if best[x - size] + worth > best[x] + 1e-9:
                best[x] = best[x - size] + worth
                times[x] = times[x - size] + 1
        return
    for _ in range(most):
        for x in range(len(best) - 1, size - 1, -1):
            if best[x - size] + worth > best[x] + 1e-9:
                best[x] = best[x - size] + worth
                times[x] = times[x - size] + 1


@compiled
def stacks(size_b: Whole, worth: Real, limit: Whole, heights: Whole, stages: int) -> Any:
    """The best value of a stack led by each pose (rows) in a strip of each height (columns) [1].

    Args:
        size_b: of the poses across the strip, in the order of their widths [1]
        worth: of a piece in each pose [1]
        limit: how often each may be taken [1]
        heights: of the strips, ascending [1]
        stages: 2 or 3 [1]
    """
    tallest = heights[-1] if len(heights) else 0
    best, spare = np.zeros(tallest + 1), np.zeros(tallest + 1)
    table = np.zeros((len(size_b), len(heights)))
    for p in range(len(size_b)):
        b = size_b[p]
        if worth[p] <= 0.0 or limit[p] <= 0 or b > tallest:
            continue
        enough = limit[p] >= tallest // b
        if stages == 3:
            best, spare = raised(best, spare, b, worth[p], limit[p] if enough else limit[p] - 1)
        for i in range(len(heights)):
            if heights[i] >= b:
                table[p, i] = worth[p] + best[heights[i] - b]
        if stages == 3 and not enough:
            best, spare = raised(best, spare, b, worth[p], 1)
    return table


@compiled
def price(
    size_a: Whole,
    size_b: Whole,
    worth: Real,
    limit: Whole,
    heights: Whole,
    lengths: Whole,
    widths: Whole,
    stages: int,
) -> Any:
    """The best value of each stock, and of a strip of each height as long as the stock [1].

    Args:
        size_a: of the poses along the strip, ascending [1]
        size_b: across it [1]
        worth: of a piece in each pose [1]
        limit: how often each may be taken [1]
        heights: of the strips, ascending [1]
        lengths: of the stocks along the strips [1]
        widths: of the stocks across them [1]
        stages: 2 or 3 [1]
    """
    table = stacks(size_b, worth, limit, heights, stages)
    stocks = len(lengths)
    longest = int(lengths.max())
    strips = np.zeros((len(heights), stocks))
    row, spare = np.zeros(longest + 1), np.zeros(longest + 1)
    for i in range(len(heights)):
        row[:] = 0.0
        enough = 0.0
        for p in range(len(size_a)):
            value = table[p, i]
            # a stack is not needed beside a narrower one that is worth as much and may fill the strip
            if value <= enough or size_a[p] > longest:
                continue
            if limit[p] >= longest // size_a[p]:
                enough = value
            row, spare = raised(row, spare, size_a[p], value, limit[p])
        for s in range(stocks):
            strips[i, s] = row[lengths[s]]
    values = np.zeros(stocks)
    for s in range(stocks):
        sheet, spare = np.zeros(widths[s] + 1), np.zeros(1)
        least = 0.0
        for i in range(len(heights)):
            value = strips[i, s]
            if value <= least or heights[i] > widths[s]:
                continue
            least = value
            sheet, spare = raised(sheet, spare, heights[i], value, widths[s])
        values[s] = sheet[widths[s]]
    return values, strips


@compiled
def pattern(  # noqa: PLR0912, PLR0915 - one loop over machine numbers, where a call costs as much as the work
    size_a: Whole,
    size_b: Whole,
    worth: Real,
    limit: Whole,
    kind: Whole,
    heights: Whole,
    strips: Real,
    length: int,
    width: int,
    stages: int,
    turn: int,
    count: Whole,
    most: int,
) -> Any:
    """The moves of a best sheet, none of a kind more often than the count allows [1].

    Args:
        size_a: of the poses along the strip, ascending [1]
        size_b: across it [1]
        worth: of a piece in each pose [1]
        limit: how often each may be taken in a stack, and lead one in a strip [1]
        kind: of piece in each pose [1]
        heights: of the strips, ascending [1]
        strips: best value of a strip of each height [1]
        length: of the stock along the strips [1]
        width: of the stock across them [1]
        stages: 2 or 3 [1]
        turn: 0 strips along the stock, 1 across [1]
        count: how many of each kind there may be [1]
        most: how many pieces a sheet could hold [1]
    """
    table = stacks(size_b, worth, limit, heights, stages)
    poses = len(size_a)
    left = count.copy()
    sheet = np.zeros(width + 1)
    which = np.full(width + 1, -1, dtype=np.int64)
    for i in range(len(heights)):
        for y in range(heights[i], width + 1):
            value = sheet[y - heights[i]] + strips[i]
            if value > sheet[y] + 1e-9:
                sheet[y] = value
                which[y] = i
    rows = np.zeros((most, 6), dtype=np.int32)
    made = 0
    y = width
    floor = 0
    stack_times = np.zeros((poses, length + 1), dtype=np.int64)
    while y > 0 and which[y] >= 0:
        i = which[y]
        y -= heights[i]
        row = np.zeros(length + 1)
        enough = 0.0
        for p in range(poses):
            often = limit[p] if table[p, i] > enough else 0
            if often >= length // size_a[p] and size_a[p] <= length:
                enough = table[p, i]
            traced(row, size_a[p], table[p, i], often, stack_times[p])
        leads = np.zeros(poses, dtype=np.bool_)
        x = length
        for p in range(poses - 1, -1, -1):
            leads[p] = stack_times[p, x] > 0
            x -= stack_times[p, x] * size_a[p]
        # what is in each stack: the pose that leads it, and what the room above it holds best
        high = heights[i]
        best = np.zeros(high + 1)
        piece_times = np.zeros((poses, high + 1), dtype=np.int64)
        lead_times = np.zeros((poses, high + 1), dtype=np.int64)
        for q in range(poses):
            often = limit[q] if stages == 3 and worth[q] > 0.0 else 0
            if leads[q]:
                traced(best.copy(), size_b[q], worth[q], often - 1, lead_times[q])
            traced(best, size_b[q], worth[q], often, piece_times[q])
        x = length
        begin = 0
        top = floor
        kind_of_move = NEW_STRIP if made else NEW_SHEET
        for p in range(poses - 1, -1, -1):
            stacks_of_it = stack_times[p, x]
            x -= stacks_of_it * size_a[p]
            for _ in range(stacks_of_it):
                kind_of_stack = kind_of_move
                h = high - size_b[p]
                at = floor
                end = begin
                for q in range(p, -1, -1):
                    above = lead_times[q, h] if q == p else piece_times[q, h]
                    h -= above * size_b[q]
                    for _piece in range(above + 1 if q == p else above):
                        if left[kind[q]] <= 0:
                            continue
                        left[kind[q]] -= 1
                        rows[made, 0] = q
                        rows[made, 2] = turn
                        rows[made, 3] = begin
                        rows[made, 4] = at
                        rows[made, 5] = kind_of_stack
                        if kind_of_stack != ON_STACK:
                            end = begin + size_a[q]
                            kind_of_move = NEW_STACK
                        kind_of_stack = ON_STACK
                        at += size_b[q]
                        made += 1
                begin = end
                top = max(top, at)
        floor = top
    return rows[:made]
