"""What a sheet of each stock could hold at most if every piece had a price and were there without limit.

The strips of a sheet are a knapsack over its width, the stacks of a strip one over its length, the pieces of
a stack one over the strip's height (Gilmore and Gomory 1965). All stocks are priced together: a strip's best
value is known for every length once it is known for the longest.
"""

from typing import Any

import numpy as np

from casewright.cutting.compiled import compiled
from casewright.cutting.guillotine.beam import NEW_SHEET, NEW_STACK, NEW_STRIP, ON_STACK, Real, Whole


@compiled
def stacks(size_a: Whole, size_b: Whole, worth: Real, heights: Whole, stages: int) -> Any:
    """The best value of a stack up to each pose's width (rows) in a strip of each height (columns) [1].

    Args:
        size_a: of the poses along the strip, ascending [1]
        size_b: across it [1]
        worth: of a piece in each pose [1]
        heights: of the strips, ascending [1]
        stages: 2 or 3 [1]
    """
    tallest = heights[-1] if len(heights) else 0
    best = np.zeros(tallest + 1)
    table = np.zeros((len(size_a), len(heights)))
    for p in range(len(size_a)):
        if stages == 3:
            for h in range(size_b[p], tallest + 1):
                with_it = best[h - size_b[p]] + worth[p]
                best[h] = max(best[h], with_it)
        else:
            for h in range(size_b[p], tallest + 1):
                best[h] = max(best[h], worth[p])
        for i in range(len(heights)):
            table[p, i] = best[heights[i]]
    return table


@compiled
def price(
    size_a: Whole, size_b: Whole, worth: Real, heights: Whole, lengths: Whole, widths: Whole, stages: int
) -> Any:
    """The best value of each stock, and of a strip of each height as long as the stock [1].

    Args:
        size_a: of the poses along the strip, ascending [1]
        size_b: across it [1]
        worth: of a piece in each pose [1]
        heights: of the strips, ascending [1]
        lengths: of the stocks along the strips [1]
        widths: of the stocks across them [1]
        stages: 2 or 3 [1]
    """
    table = stacks(size_a, size_b, worth, heights, stages)
    stocks = len(lengths)
    longest = int(lengths.max())
    strips = np.zeros((len(heights), stocks))
    row = np.zeros(longest + 1)
    for i in range(len(heights)):
        row[:] = 0.0
        for p in range(len(size_a)):
            value = table[p, i]
            # in a knapsack without limits a wider stack that is worth no more is never needed
            if value <= 0.0 or (p > 0 and value <= table[p - 1, i]):
                continue
            a = size_a[p]
            for x in range(a, longest + 1):
                row[x] = max(row[x], row[x - a] + value)
        for s in range(stocks):
            strips[i, s] = row[lengths[s]]
    values = np.zeros(stocks)
    for s in range(stocks):
        sheet = np.zeros(widths[s] + 1)
        least = 0.0
        for i in range(len(heights)):
            value = strips[i, s]
            if value <= least:
                continue
            least = value
            for y in range(heights[i], widths[s] + 1):
                sheet[y] = max(sheet[y], sheet[y - heights[i]] + value)
        values[s] = sheet[widths[s]]
    return values, strips


@compiled
def pattern(  # noqa: PLR0912, PLR0915 - one loop over machine numbers, where a call costs as much as the work
    size_a: Whole,
    size_b: Whole,
    worth: Real,
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
    table = stacks(size_a, size_b, worth, heights, stages)
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
    row = np.zeros(length + 1)
    stack_at = np.zeros(length + 1, dtype=np.int64)
    while y > 0 and which[y] >= 0:
        i = which[y]
        y -= heights[i]
        row[:] = 0.0
        stack_at[:] = -1
        for p in range(poses):
            for x in range(size_a[p], length + 1):
                value = row[x - size_a[p]] + table[p, i]
                if value > row[x] + 1e-9:
                    row[x] = value
                    stack_at[x] = p
        x = length
        begin = 0
        top = floor
        first_in_strip = True
        while x > 0 and stack_at[x] >= 0:
            p = stack_at[x]
            x -= size_a[p]
            high = heights[i]
            best = np.zeros(high + 1)
            piece_at = np.full(high + 1, -1, dtype=np.int64)
            for q in range(p + 1):
                for h in range(size_b[q], high + 1):
                    value = (best[h - size_b[q]] if stages == 3 else 0.0) + worth[q]
                    if value > best[h] + 1e-9:
                        best[h] = value
                        piece_at[h] = q
            # poses are ascending, and those chosen come out from the widest down
            h = high
            at = floor
            first_in_stack = True
            end = begin
            while h > 0 and piece_at[h] >= 0:
                q = piece_at[h]
                h = h - size_b[q] if stages == 3 else 0
                if left[kind[q]] <= 0:
                    continue
                left[kind[q]] -= 1
                rows[made, 0] = q
                rows[made, 2] = turn
                rows[made, 3] = begin
                rows[made, 4] = at
                rows[made, 5] = ON_STACK
                if first_in_stack:
                    end = begin + size_a[q]
                    rows[made, 5] = NEW_STACK
                    if first_in_strip:
                        rows[made, 5] = NEW_STRIP if made else NEW_SHEET
                first_in_stack = False
                first_in_strip = False
                at += size_b[q]
                made += 1
            begin = end
            top = max(top, at)
        floor = top
    return rows[:made]
