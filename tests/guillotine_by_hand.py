"""Guillotine layouts looked at and found again without the solver: a checker, and all layouts of few pieces.

Nothing here is shared with `casewright.cutting` but the shapes of question and answer.
"""

from collections import Counter
from collections.abc import Iterator
from functools import cache
from itertools import pairwise, product

from casewright.cutting.guillotine.problem import Answer, Area, First, Problem, Rect, Sheet


def faults(problem: Problem, answer: Answer) -> list[str]:
    """Everything that is wrong with an answer, in words; nothing if it can be cut as it stands."""
    found = [fault for sheet in answer.sheets for fault in _sheet_faults(problem, sheet)]
    made: Counter[int] = Counter()
    used: Counter[int] = Counter()
    for sheet in answer.sheets:
        used[sheet.stock] += sheet.copies
        for placed in sheet.placed:
            made[placed.piece] += sheet.copies
    for kind, piece in enumerate(problem.pieces):
        if made[kind] + answer.unplaced[kind] != piece.count:
            found.append(f"{made[kind]} made and {answer.unplaced[kind]} missing of {piece}")
    for number, stock in enumerate(problem.stocks):
        if stock.limit is not None and used[number] > stock.limit:
            found.append(f"{used[number]} used of {stock}")
    cost = sum(problem.stocks[number].cost * copies for number, copies in used.items())
    if cost != answer.cost:
        found.append(f"it costs {cost}, not {answer.cost}")
    if not any(answer.unplaced) and answer.bound > answer.cost:
        found.append(f"cost {answer.cost} is below the bound {answer.bound}")
    return found


def _sheet_faults(problem: Problem, sheet: Sheet) -> Iterator[str]:
    stock = problem.stocks[sheet.stock]
    if sheet.cuts.rect != Rect(0, 0, stock.length, stock.width):
        yield "the cuts do not begin with the whole sheet"
    if sheet.cuts.cut and problem.first not in {First.EITHER, sheet.cuts.cut}:
        # a first cut the other way is the second stage of a strip that fills the sheet
        yield from _cut_faults(sheet.cuts, problem.stages, 1)
    else:
        yield from _cut_faults(sheet.cuts, problem.stages, 0)
    leaves = Counter((leaf.rect, leaf.piece) for leaf in sheet.cuts.leaves() if leaf.piece is not None)
    placed = Counter((Rect(p.x, p.y, p.length, p.width), p.piece) for p in sheet.placed)
    if leaves != placed:
        yield "the cuts do not give the pieces"
    for p in sheet.placed:
        piece = problem.pieces[p.piece]
        size = (piece.width, piece.length) if p.turned else (piece.length, piece.width)
        if (p.length, p.width) != size or (p.turned and not piece.may_turn):
            yield f"{p} is not {piece}"
        for rect in stock.forbidden:
            apart = (
                p.x + p.length <= rect.x
                or rect.x + rect.length <= p.x
                or p.y + p.width <= rect.y
                or rect.y + rect.width <= p.y
            )
            if not apart:
                yield f"{p} touches {rect}"


def _cut_faults(area: Area, stages: int, depth: int) -> Iterator[str]:
    if area.cut is None:
        return
    if depth > stages:
        yield "more stages than there may be"
    trims = sum(part.piece is not None for part in area.parts) <= 1 and all(
        part.cut is None for part in area.parts
    )
    if depth == stages and not trims:
        yield "a last cut that does more than trim"
    along = area.cut is First.ALONG
    edges = [
        (p.rect.y, p.rect.y + p.rect.width) if along else (p.rect.x, p.rect.x + p.rect.length)
        for p in area.parts
    ]
    across = [(p.rect.x, p.rect.length) if along else (p.rect.y, p.rect.width) for p in area.parts]
    whole = area.rect
    box = (whole.x, whole.length) if along else (whole.y, whole.width)
    ends = (whole.y, whole.y + whole.width) if along else (whole.x, whole.x + whole.length)
    if any(side != box for side in across):
        yield "a cut that does not go from edge to edge"
    if (edges[0][0], edges[-1][1]) != ends or any(a[1] != b[0] for a, b in pairwise(edges)):
        yield "parts that do not fill the whole"
    for part in area.parts:
        yield from _cut_faults(part, stages, depth + (1 if part.cut not in {None, area.cut} else 0))


def _partitions(things: tuple[int, ...]) -> Iterator[list[tuple[int, ...]]]:
    if not things:
        yield []
        return
    head, rest = things[0], things[1:]
    for parts in _partitions(rest):
        yield [(head,), *parts]
        for i, part in enumerate(parts):
            yield [*parts[:i], (head, *part), *parts[i + 1 :]]


def least_cost(problem: Problem) -> int | None:
    """The least cost of all layouts there are, by trying each; None if the pieces do not come out.

    For half a dozen pieces at most, and stock without forbidden places.
    """
    pieces = [piece for piece in problem.pieces for _ in range(piece.count)]
    everything = tuple(range(len(pieces)))

    @cache
    def strip_height(some: tuple[int, ...], along: bool, room: int) -> float:
        best = float("inf")
        for turns in product((False, True), repeat=len(some)):
            if any(turn and not pieces[i].may_turn for i, turn in zip(some, turns, strict=True)):
                continue
            size = {
                i: (pieces[i].length, pieces[i].width)
                if along is not turn
                else (pieces[i].width, pieces[i].length)
                for i, turn in zip(some, turns, strict=True)
            }
            for stacks in _partitions(some):
                if problem.stages == 2 and any(len(stack) > 1 for stack in stacks):
                    continue
                if sum(max(size[i][0] for i in stack) for stack in stacks) <= room:
                    best = min(best, max(sum(size[i][1] for i in stack) for stack in stacks))
        return best

    @cache
    def fits(some: tuple[int, ...], length: int, width: int) -> bool:
        ways = {First.ALONG: [True], First.ACROSS: [False], First.EITHER: [True, False]}[problem.first]
        for along in ways:
            a, b = (length, width) if along else (width, length)
            if any(
                sum(strip_height(strip, along, a) for strip in strips) <= b for strips in _partitions(some)
            ):
                return True
        return False

    best: int | None = None
    for sheets in _partitions(everything):
        stocks = [(s, n) for n, s in enumerate(problem.stocks)]
        for choice in product(stocks, repeat=len(sheets)):
            cost = sum(stock.cost for stock, _ in choice)
            used = Counter(n for _, n in choice)
            if best is not None and cost >= best:
                continue
            if any(s.limit is not None and used[n] > s.limit for s, n in stocks):
                continue
            if all(fits(some, s.length, s.width) for some, (s, _) in zip(sheets, choice, strict=True)):
                best = cost
    return best
