"""Many part-filled layouts side by side: a search that keeps the most promising ones and forgets the rest.

A layout grows piece by piece, in the order of the cuts: on top of the stack begun last, as a new stack in
the strip begun last, as a new strip, on a new sheet. What lies behind the newest piece is settled, so its
waste is known. Layouts that hold about the same area of pieces are compared with each other, and of each such
group only the best few go on. With one kept it is a greedy filler, with some hundreds a thorough search.

Sizes are taken as `a`, along the strip, and `b`, across it. Without loss a strip's first stack is its tallest
and a stack's first piece its widest, so a strip's height is settled by its first stack.
"""

from typing import Any

import numpy as np
from numpy.typing import NDArray

from casewright.cutting.compiled import compiled

Whole = NDArray[np.int64]
Real = NDArray[np.float64]

# columns of a state
SHEET, DIR, STRIP, TOP, START, END, HEAD, PACKED, LEAD = range(9)
# what a move did
ON_STACK, NEW_STACK, NEW_STRIP, NEW_SHEET = range(4)


@compiled
def lifted(rects: Whole, low: int, high: int, turn: int, a: int, b: int, size_a: int, size_b: int) -> int:
    """The least b, not below the given, at which the rectangle touches none of the forbidden ones [1]."""
    moved = True
    while moved:
        moved = False
        for i in range(low, high):
            ra, rb, la, lb = rects[i, turn], rects[i, 1 - turn], rects[i, 2 + turn], rects[i, 3 - turn]
            if ra < a + size_a and a < ra + la and rb < b + size_b and b < rb + lb:
                b = rb + lb
                moved = True
    return b


@compiled
def noted(
    options: Whole, row: int, pose: int, sheet: int, turn: int, a: int, b: int, new: int, start: int, end: int
) -> int:
    """Write down one way to go on, and give the next free row [1]."""
    options[row, 0] = pose
    options[row, 1] = sheet
    options[row, 2] = turn
    options[row, 3] = a
    options[row, 4] = b
    options[row, 5] = new
    options[row, 6] = start
    options[row, 7] = end
    return row + 1


@compiled
def search(  # noqa: PLR0912, PLR0915 - one loop over machine numbers, where a call costs as much as the work
    pose_kind: Whole,
    pose_length: Whole,
    pose_width: Whole,
    count: Whole,
    value: Real,
    area: Real,
    sheet_length: Whole,
    sheet_width: Whole,
    sheet_first: Whole,
    rects: Whole,
    rect_from: Whole,
    stages: int,
    keep: int,
    slack: float,
    base: float,
    power: float,
    noise: float,
    seed: int,
) -> Any:
    """The moves of the best layout found: rows of pose, sheet, direction, a, b, kind of move.

    Args:
        pose_kind: kind of piece of each way to lay one [1]
        pose_length: its size along the stock's length [1]
        pose_width: its size across [1]
        count: how many of each kind are wanted [1]
        value: what a piece of each kind is worth; its area, or more where it is awkward [1]
        area: of a piece of each kind [1]
        sheet_length: of the sheets in the order in which they are filled [1]
        sheet_width: of the same [1]
        sheet_first: 0 first cuts along, 1 across, 2 either [1]
        rects: forbidden rectangles: x, y, length, width [1]
        rect_from: where each sheet's begin among them, and the end [1]
        stages: 2 or 3 [1]
        keep: how many layouts of a group go on [1]
        slack: waste beyond which a layout is given up [1]
        base: added to the share of waste before it is compared [1]
        power: how much layouts of few large pieces are favoured [1]
        noise: how far comparisons are shaken, as a share [1]
        seed: of the shaking [1]
    """
    kinds = count.shape[0]
    poses = pose_kind.shape[0]
    sheets = sheet_length.shape[0]
    wanted = 0
    total = 0.0
    for k in range(kinds):
        wanted += count[k]
        total += value[k] * count[k]
    groups = wanted
    levels = groups + wanted + 1
    last = levels - 1
    nodes = levels * keep
    left = np.zeros((nodes, kinds), dtype=np.int16)
    state = np.zeros((nodes, 9), dtype=np.int32)
    move = np.zeros((nodes, 6), dtype=np.int32)
    parent = np.full(nodes, -1, dtype=np.int32)
    worth = np.zeros(nodes)
    bulk = np.zeros(nodes)
    score = np.zeros(nodes)
    mark = np.zeros(nodes, dtype=np.uint64)
    filled = np.zeros(levels, dtype=np.int32)
    worst = np.zeros(levels, dtype=np.int32)
    closed = np.zeros(sheets + 1)
    for s in range(sheets):
        closed[s + 1] = closed[s] + sheet_length[s] * sheet_width[s]
    rng = np.uint64(seed * 2 + 88172645463325252)
    names = np.zeros(kinds, dtype=np.uint64)
    for k in range(kinds):
        rng ^= rng << np.uint64(13)
        rng ^= rng >> np.uint64(7)
        rng ^= rng << np.uint64(17)
        names[k] = rng
    # the root is node 0 of group 0
    for k in range(kinds):
        left[0, k] = count[k]
    state[0, SHEET] = -1
    filled[0] = 1
    best = 0
    best_worth = -1.0
    options = np.zeros((poses * 4, 8), dtype=np.int64)
    for level in range(last):
        for place in range(filled[level]):
            node = level * keep + place
            if worth[node] > best_worth:
                best_worth = worth[node]
                best = node
            sheet = state[node, SHEET]
            top = state[node, TOP]
            strip = state[node, STRIP]
            start, end, head = state[node, START], state[node, END], state[node, HEAD]
            found = 0
            if sheet >= 0:
                turn = state[node, DIR]
                size_a = sheet_width[sheet] if turn == 1 else sheet_length[sheet]
                size_b = sheet_length[sheet] if turn == 1 else sheet_width[sheet]
                low, high = rect_from[sheet], rect_from[sheet + 1]
                for p in range(poses):
                    if left[node, pose_kind[p]] <= 0:
                        continue
                    a = pose_width[p] if turn == 1 else pose_length[p]
                    b = pose_length[p] if turn == 1 else pose_width[p]
                    if stages == 3 and a <= end - start:
                        limit = size_b if state[node, LEAD] == 1 else top
                        at = head
                        if high > low:
                            at = lifted(rects, low, high, turn, start, at, a, b)
                        if at + b <= limit:
                            found = noted(options, found, p, sheet, turn, start, at, ON_STACK, start, end)
                    for new in range(NEW_STACK, NEW_SHEET):
                        begin = end if new == NEW_STACK else 0
                        floor = strip if new == NEW_STACK else top
                        limit = top if new == NEW_STACK else size_b
                        at = floor
                        if high > low:
                            while begin + a <= size_a:
                                at = lifted(rects, low, high, turn, begin, floor, a, b)
                                if at + b <= limit and (stages == 3 or new == NEW_STRIP or at == floor):
                                    break
                                begin = max(begin + 1, lifted(rects, low, high, 1 - turn, floor, begin, b, a))
                        if begin + a <= size_a and at + b <= limit:
                            found = noted(options, found, p, sheet, turn, begin, at, new, begin, begin + a)
            while found == 0 and sheet + 1 < sheets:
                sheet += 1
                low, high = rect_from[sheet], rect_from[sheet + 1]
                for turn in range(2):
                    if sheet_first[sheet] == 1 - turn:
                        continue
                    size_a = sheet_width[sheet] if turn == 1 else sheet_length[sheet]
                    size_b = sheet_length[sheet] if turn == 1 else sheet_width[sheet]
                    for p in range(poses):
                        if left[node, pose_kind[p]] <= 0:
                            continue
                        a = pose_width[p] if turn == 1 else pose_length[p]
                        b = pose_length[p] if turn == 1 else pose_width[p]
                        begin = 0
                        at = 0
                        if high > low:
                            while begin + a <= size_a:
                                at = lifted(rects, low, high, turn, begin, 0, a, b)
                                if at + b <= size_b:
                                    break
                                begin = max(begin + 1, lifted(rects, low, high, 1 - turn, 0, begin, b, a))
                        if begin + a <= size_a and at + b <= size_b:
                            found = noted(
                                options, found, p, sheet, turn, begin, at, NEW_SHEET, begin, begin + a
                            )
            for o in range(found):
                p, sheet, turn = options[o, 0], options[o, 1], options[o, 2]
                kind = pose_kind[p]
                new = options[o, 5]
                at = options[o, 4]
                size_a = sheet_width[sheet] if turn == 1 else sheet_length[sheet]
                b = pose_length[p] if turn == 1 else pose_width[p]
                new_strip = strip
                new_top = top
                if new == ON_STACK:
                    new_top = max(top, at + b)
                elif new == NEW_STRIP:
                    new_strip = top if stages == 3 else at
                    new_top = at + b
                elif new == NEW_SHEET:
                    new_strip = 0 if stages == 3 else at
                    new_top = at + b
                taken = (
                    closed[sheet]
                    + new_strip * size_a
                    + options[o, 6] * (new_top - new_strip)
                    + (options[o, 7] - options[o, 6]) * (at + b - new_strip)
                )
                new_bulk = bulk[node] + area[kind]
                if taken - new_bulk > slack:
                    continue
                new_worth = worth[node] + value[kind]
                packed = state[node, PACKED] + 1
                ratio = base + max(taken - new_worth, 0.0) / taken
                if power != 0.0:
                    ratio *= (packed / new_worth * total / wanted) ** power
                if noise != 0.0:
                    rng ^= rng << np.uint64(13)
                    rng ^= rng >> np.uint64(7)
                    rng ^= rng << np.uint64(17)
                    ratio *= 1.0 + noise * (float(rng >> np.uint64(11)) / 9007199254740992.0)
                if packed == wanted:
                    to = last
                    ratio = sheet * 1e6 + new_top * size_a / (sheet_length[sheet] * sheet_width[sheet])
                else:
                    to = max(level + 1, int(new_worth / total * (groups - 1)))
                first = to * keep
                if filled[to] == keep and ratio >= score[first + worst[to]]:
                    continue
                new_mark = mark[node] + names[kind]
                same = -1
                for i in range(filled[to]):
                    if mark[first + i] == new_mark:
                        same = i
                        break
                if same >= 0:
                    if ratio >= score[first + same]:
                        continue
                    spot = same
                elif filled[to] < keep:
                    spot = filled[to]
                    filled[to] += 1
                else:
                    spot = worst[to]
                child = first + spot
                for k in range(kinds):
                    left[child, k] = left[node, k]
                left[child, kind] -= 1
                state[child, SHEET] = sheet
                state[child, DIR] = turn
                state[child, STRIP] = new_strip
                state[child, TOP] = new_top
                state[child, START] = options[o, 6]
                state[child, END] = options[o, 7]
                state[child, HEAD] = at + b
                state[child, PACKED] = packed
                if new == NEW_STACK:
                    state[child, LEAD] = 0
                elif new == ON_STACK:
                    state[child, LEAD] = state[node, LEAD]
                else:
                    state[child, LEAD] = 1
                move[child, 0] = p
                move[child, 1] = sheet
                move[child, 2] = turn
                move[child, 3] = options[o, 3]
                move[child, 4] = at
                move[child, 5] = new
                parent[child] = node
                worth[child] = new_worth
                bulk[child] = new_bulk
                score[child] = ratio
                mark[child] = new_mark
                w = 0
                for i in range(1, filled[to]):
                    if score[first + i] > score[first + w]:
                        w = i
                worst[to] = w
    for i in range(filled[last]):
        node = last * keep + i
        if i == 0 or score[node] < score[best]:
            best = node
    length = state[best, PACKED]
    rows = np.zeros((length, 6), dtype=np.int32)
    node = best
    for i in range(length):
        for j in range(6):
            rows[length - 1 - i, j] = move[node, j]
        node = parent[node]
    return rows
