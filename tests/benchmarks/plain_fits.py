"""The plainest layouts that a shop could make for itself, to stand beside the engines' in the benchmark."""

from collections.abc import Iterable

from casewright.cutting.guillotine.problem import First
from casewright.cutting.guillotine.problem import Problem as Sheets
from casewright.cutting.lengths.problem import Problem as Lengths


def first_fit(problem: Lengths) -> int | None:
    """The longest piece first into the first bar with room: the cost, opening the best stock first.

    None where the stock runs out.
    """
    lengths = sorted((p.length for p in problem.pieces for _ in range(p.count)), reverse=True)
    by_price = sorted(
        range(len(problem.stocks)), key=lambda k: problem.stocks[k].cost / problem.stocks[k].length
    )
    orders = [[k, *(other for other in by_price if other != k)] for k in by_price]
    return min(
        (cost for order in orders if (cost := _bars(problem, lengths, order)) is not None), default=None
    )


def _bars(problem: Lengths, lengths: Iterable[int], order: Iterable[int]) -> int | None:
    order = list(order)
    spare = [stock.limit for stock in problem.stocks]
    rests: list[int] = []
    cost = 0
    last, start = None, 0
    for long in lengths:
        # A bar that had no room for the same length just before has none now.
        start = start if long == last else 0
        last = long
        at = next((at for at in range(start, len(rests)) if rests[at] >= long), None)
        if at is None:
            k = next((k for k in order if spare[k] != 0 and problem.stocks[k].length >= long), None)
            if k is None:
                return None
            left = spare[k]
            spare[k] = None if left is None else left - 1
            cost += problem.stocks[k].cost
            at = len(rests)
            rests.append(problem.stocks[k].length)
        rests[at] -= long
        start = at
    return cost


def shelves(problem: Sheets) -> int | None:
    """The cost of strips as high as their first piece, filled first fit by falling height, sheet after sheet.

    None where the stock runs out.
    """
    ways = {First.ALONG: (False,), First.ACROSS: (True,), First.EITHER: (False, True)}[problem.first]
    cheap = sorted(range(len(problem.stocks)), key=lambda k: problem.stocks[k].cost / problem.stocks[k].area)
    orders = [[k, *(other for other in cheap if other != k)] for k in cheap[:6]]
    costs = [_shelves(problem, order, across) for order in orders for across in ways]
    return min((cost for cost in costs if cost is not None), default=None)


def _shelves(problem: Sheets, order: list[int], across: bool) -> int | None:
    """One row of strips after the other; `across` exchanges length and width."""
    pieces = []
    for piece in problem.pieces:
        long, high = (piece.width, piece.length) if across else (piece.length, piece.width)
        pieces += [(high, long, piece.may_turn)] * piece.count
    pieces.sort(reverse=True)
    spare = [stock.limit for stock in problem.stocks]
    strips: list[list[int]] = []
    sheets: list[list[int]] = []
    cost = 0
    for high, long, may_turn in pieces:
        poses = [(high, long), (long, high)] if may_turn else [(high, long)]
        if _into_strip(strips, poses) or _new_strip(strips, sheets, poses):
            continue
        for k in order:
            stock = problem.stocks[k]
            sheet = [stock.length, stock.width] if across else [stock.width, stock.length]
            if spare[k] != 0 and any(h <= sheet[0] and w <= sheet[1] for h, w in poses):
                left = spare[k]
                spare[k] = None if left is None else left - 1
                sheets.append(sheet)
                cost += stock.cost
                _new_strip(strips, sheets, poses)
                break
        else:
            return None
    return cost


def _into_strip(strips: list[list[int]], poses: list[tuple[int, int]]) -> bool:
    for strip in strips:
        for high, long in poses:
            if high <= strip[0] and long <= strip[1]:
                strip[1] -= long
                return True
    return False


def _new_strip(strips: list[list[int]], sheets: list[list[int]], poses: list[tuple[int, int]]) -> bool:
    for sheet in sheets:
        for high, long in poses:
            if high <= sheet[0] and long <= sheet[1]:
                sheet[0] -= high
                strips.append([high, sheet[1] - long])
                return True
    return False
