"""A problem as the arrays that the kernels read, and their moves as layouts that people read."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from casewright.cutting.guillotine.beam import NEW_SHEET, NEW_STACK, NEW_STRIP, Real, Whole
from casewright.cutting.guillotine.problem import Area, First, Placed, Problem, Rect, Sheet
from casewright.measure.units import Count

WAYS = {First.ALONG: 0, First.ACROSS: 1, First.EITHER: 2}


@dataclass(frozen=True, slots=True)
class Move:
    """One piece laid on a sheet: which pose, where along and across the strip, and what it began."""

    pose: int
    a: int
    b: int
    kind: int


@dataclass(frozen=True, slots=True, eq=False)
class Layout:
    """One sheet filled: its stock, which way its strips run, its moves in order, how many of each piece."""

    stock: int
    turn: int
    moves: tuple[Move, ...]
    counts: Whole


class Table:
    """A problem's sizes as arrays: poses are the ways in which pieces may lie."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        poses = [
            (kind, *((piece.width, piece.length) if turned else (piece.length, piece.width)), turned)
            for kind, piece in enumerate(problem.pieces)
            for turned in (False, True)
            if not turned or (piece.may_turn and piece.width != piece.length)
        ]
        self.turned = tuple(pose[3] for pose in poses)
        self.kind: Whole = np.array([pose[0] for pose in poses], dtype=np.int64)
        self.length: Whole = np.array([pose[1] for pose in poses], dtype=np.int64)
        self.width: Whole = np.array([pose[2] for pose in poses], dtype=np.int64)
        self.count: Whole = np.array([piece.count for piece in problem.pieces], dtype=np.int64)
        self.area: Real = np.array([piece.area for piece in problem.pieces], dtype=np.float64)
        self.stock_length: Whole = np.array([stock.length for stock in problem.stocks], dtype=np.int64)
        self.stock_width: Whole = np.array([stock.width for stock in problem.stocks], dtype=np.int64)
        self.stock_area = self.stock_length * self.stock_width
        self.cost: Whole = np.array([stock.cost for stock in problem.stocks], dtype=np.int64)
        least = float(min(self.area, default=1.0))
        self.most = int(min(self.count.sum(), max(self.stock_area, default=0) // least))
        self.way: Whole = np.full(len(problem.stocks), WAYS[problem.first], dtype=np.int64)

    def fits(self) -> NDArray[np.bool_]:
        """Whether each kind of piece (row) fits each stock (column) in some pose, if it had no faults."""
        long = self.length[:, None] <= self.stock_length[None, :]
        wide = self.width[:, None] <= self.stock_width[None, :]
        fits = np.zeros((len(self.count), len(self.cost)), dtype=np.bool_)
        np.logical_or.at(fits, self.kind, long & wide)
        return fits

    def rects(self, stocks: Sequence[Count]) -> tuple[Whole, Whole]:
        """The forbidden rectangles of stocks in a row, and where each one's begin [1]."""
        rows = [
            (rect.x, rect.y, rect.length, rect.width)
            for stock in stocks
            for rect in self.problem.stocks[stock].forbidden
        ]
        begins = np.cumsum([0, *(len(self.problem.stocks[stock].forbidden) for stock in stocks)])
        return np.array(rows, dtype=np.int64).reshape(-1, 4), begins.astype(np.int64)

    def layouts(self, rows: Whole, stocks: Sequence[Count]) -> list[Layout]:
        """The moves of a search, sheet by sheet."""
        found: list[Layout] = []
        current: list[Move] = []
        kinds = len(self.problem.pieces)
        moves = rows.tolist()
        for i, (pose, sheet, turn, a, b, kind) in enumerate(moves):
            current.append(Move(pose, a, b, kind))
            if i + 1 == len(moves) or moves[i + 1][5] == NEW_SHEET:
                found.append(self.layout(stocks[sheet], turn, current, kinds))
                current = []
        return found

    def layout(self, stock: Count, turn: Count, moves: Iterable[Move], kinds: Count) -> Layout:
        """One sheet's moves with the pieces on it counted."""
        moves = tuple(moves)
        return Layout(
            stock, turn, moves, np.bincount(self.kind[[move.pose for move in moves]], minlength=kinds)
        )

    def sheet(self, layout: Layout, copies: Count) -> Sheet:
        """A layout with coordinates and its tree of cuts."""
        return Sheet(layout.stock, copies, tuple(self._placed(layout)), Cutting(self, layout).tree())

    def _placed(self, layout: Layout) -> Iterable[Placed]:
        for move in layout.moves:
            length, width = int(self.length[move.pose]), int(self.width[move.pose])
            x, y = (move.b, move.a) if layout.turn else (move.a, move.b)
            yield Placed(int(self.kind[move.pose]), x, y, width, length, self.turned[move.pose])


class Cutting:
    """The tree of cuts of one layout: strips, stacks, pieces, and a last trimming cut."""

    def __init__(self, table: Table, layout: Layout) -> None:
        self.table = table
        self.layout = layout
        stock = table.problem.stocks[layout.stock]
        self.size_a, self.size_b = (stock.width, stock.length) if layout.turn else (stock.length, stock.width)

    def tree(self) -> Area:
        """The whole sheet, cut up."""
        strips: list[list[list[Move]]] = []
        for move in self.layout.moves:
            if move.kind in {NEW_SHEET, NEW_STRIP}:
                strips.append([])
            if move.kind in {NEW_SHEET, NEW_STRIP, NEW_STACK}:
                strips[-1].append([])
            strips[-1][-1].append(move)
        return self._cut(
            (0, self.size_a, 0, self.size_b),
            1,
            [self._strip(strip, low) for strip, low in self._lows(strips)],
        )

    def _size(self, move: Move) -> tuple[int, int]:
        length, width = int(self.table.length[move.pose]), int(self.table.width[move.pose])
        return (width, length) if self.layout.turn else (length, width)

    def _lows(self, strips: list[list[list[Move]]]) -> Iterable[tuple[list[list[Move]], int]]:
        """Each strip with its lower edge; a gap below goes to the strip, except where there are no stacks."""
        top = 0
        for strip in strips:
            low = top if self.table.problem.stages == 3 else strip[0][0].b
            yield strip, low
            top = self._top(strip)

    def _top(self, strip: list[list[Move]]) -> int:
        return max(move.b + self._size(move)[1] for stack in strip for move in stack)

    def _strip(self, strip: list[list[Move]], low: int) -> Area:
        top = self._top(strip)
        stacks = [
            self._cut(
                (stack[0].a, stack[0].a + self._size(stack[0])[0], low, top),
                1,
                [self._piece(move, stack) for move in stack],
            )
            for stack in strip
        ]
        return self._cut((0, self.size_a, low, top), 0, stacks)

    def _piece(self, move: Move, stack: list[Move]) -> Area:
        length, width = self._size(move)
        whole = self._area(
            (move.a, move.a + length, move.b, move.b + width), piece=int(self.table.kind[move.pose])
        )
        return self._cut((move.a, move.a + self._size(stack[0])[0], move.b, move.b + width), 0, [whole])

    def _cut(self, box: tuple[int, int, int, int], across: int, parts: list[Area]) -> Area:
        """A box cut into parts along one axis (0: along the strip, 1: across it), the gaps left over."""
        low, high = box[2 * across], box[2 * across + 1]
        axis = across if not self.layout.turn else 1 - across
        filled: list[Area] = []
        at = low
        for part in parts:
            begin = part.rect.y if axis else part.rect.x
            if begin > at:
                filled.append(self._gap(box, across, at, begin))
            filled.append(part)
            at = begin + (part.rect.width if axis else part.rect.length)
        if at < high:
            filled.append(self._gap(box, across, at, high))
        if len(filled) == 1:
            return filled[0]
        return self._area(box, cut=First.ALONG if axis else First.ACROSS, parts=tuple(filled))

    def _gap(self, box: tuple[int, int, int, int], across: int, low: int, high: int) -> Area:
        return self._area((box[0], box[1], low, high) if across else (low, high, box[2], box[3]))

    def _area(
        self,
        box: tuple[int, int, int, int],
        cut: First | None = None,
        parts: tuple[Area, ...] = (),
        piece: int | None = None,
    ) -> Area:
        a, a_end, b, b_end = box
        if self.layout.turn:
            return Area(Rect(b, a, b_end - b, a_end - a), cut, parts, piece)
        return Area(Rect(a, b, a_end - a, b_end - b), cut, parts, piece)
