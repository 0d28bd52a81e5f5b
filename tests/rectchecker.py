"""Looks at layouts of rectangles with its own eyes: by where the pieces lie, not by what made them."""

from collections import Counter
from collections.abc import Sequence

from casewright.cutting.guillotine.problem import Answer, First, Placed, Problem, Sheet

Box = tuple[int, int, int, int]
"""From and to along the length, from and to across it."""

ALONG_AXIS = {First.ALONG: (1,), First.ACROSS: (0,), First.EITHER: (0, 1)}
"""The axis on which the first cuts stand apart: rips along the length stand apart across it."""


def faults_of_sheets(problem: Problem, answer: Answer) -> list[str]:
    """All that is wrong with an answer."""
    found = [fault for sheet in answer.sheets for fault in faults_of_sheet(problem, sheet)]
    used: Counter[int] = Counter()
    made: Counter[int] = Counter()
    for sheet in answer.sheets:
        used[sheet.stock] += sheet.copies
        for placed in sheet.placed:
            made[placed.piece] += sheet.copies
    for k, stock in enumerate(problem.stocks):
        if stock.limit is not None and used[k] > stock.limit:
            found.append(f"stock {k} is used {used[k]} times, and there are {stock.limit}")
    for i, piece in enumerate(problem.pieces):
        if made[i] + answer.unplaced[i] != piece.count:
            found.append(f"piece {i}: {made[i]} made, {answer.unplaced[i]} not, {piece.count} wanted")
    cost = sum(problem.stocks[k].cost * count for k, count in used.items())
    if cost != answer.cost:
        found.append(f"the stock costs {cost} and not {answer.cost}")
    return found


def faults_of_sheet(problem: Problem, sheet: Sheet) -> list[str]:
    """What is wrong on one sheet: sizes, turning, edges, knots, overlaps, cuts."""
    stock = problem.stocks[sheet.stock]
    boxes = [_box(placed) for placed in sheet.placed]
    found = [fault for placed in sheet.placed for fault in _size_faults(problem, placed)]
    for box in boxes:
        if box[0] < 0 or box[2] < 0 or box[1] > stock.length or box[3] > stock.width:
            found.append(f"{box} is not inside {stock.length} by {stock.width}")
    knots = [(r.x, r.x + r.length, r.y, r.y + r.width) for r in stock.forbidden]
    for at, box in enumerate(boxes):
        found += [f"{box} lies on {other}" for other in [*boxes[at + 1 :], *knots] if _meet(box, other)]
    if not any(_can_be_cut(boxes, axis, problem.stages) for axis in ALONG_AXIS[problem.first]):
        found.append(f"{boxes} cannot be cut in {problem.stages} stages")
    return found


def _box(placed: Placed) -> Box:
    return placed.x, placed.x + placed.length, placed.y, placed.y + placed.width


def _size_faults(problem: Problem, placed: Placed) -> list[str]:
    """A piece of another size than it is wanted, or turned where it may not be."""
    piece = problem.pieces[placed.piece]
    straight = (piece.length, piece.width)
    wanted = straight[::-1] if placed.turned else straight
    found = []
    if (placed.length, placed.width) != wanted:
        found.append(f"piece {placed.piece} is {placed.length} by {placed.width} and not {wanted}")
    if placed.turned and not piece.may_turn:
        found.append(f"piece {placed.piece} is turned and may not be")
    return found


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[1] and other[0] < one[1] and one[2] < other[3] and other[2] < one[3]


def _can_be_cut(boxes: Sequence[Box], axis: int, stages: int) -> bool:
    """Cut wherever no piece is in the way, then each part the other way: is each piece alone at the end?

    A last cut that trims a piece which is alone is free.
    """
    if len(boxes) <= 1:
        return True
    if not stages:
        return False
    parts: list[list[Box]] = []
    reached = None
    for box in sorted(boxes, key=lambda box: box[2 * axis]):
        if reached is None or box[2 * axis] >= reached:
            parts.append([])
            reached = box[2 * axis + 1]
        parts[-1].append(box)
        reached = max(reached, box[2 * axis + 1])
    return all(_can_be_cut(part, 1 - axis, stages - 1) for part in parts)
