"""What a guillotine layout is asked, and what it answers: pieces, stock, sheets with their cuts.

All sizes are whole steps of a grid that the caller chooses (a 64th of an inch, a tenth of a millimetre). The
saw's kerf is folded in by the caller: added once to length and width of a piece, and of the stock. Then a row
of pieces that fits exactly still fits, and the solver need not know of kerfs at all. The grain of the stock,
where it has one, runs along its length.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from casewright.measure.units import Count, Number


class First(StrEnum):
    """Which way the first cuts of a board or sheet run."""

    ALONG = "length"  # rips from end to end: the strips are as long as the stock
    ACROSS = "width"  # crosscuts from edge to edge: the strips are as long as the stock is wide
    EITHER = "either"  # chosen for each board or sheet by itself


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle on the stock, from its lower left corner.

    Args:
        x: from the stock's left end, along the length [1]
        y: from the stock's lower edge, across the width [1]
        length: along the stock's length [1]
        width: across it [1]
    """

    x: Count
    y: Count
    length: Count
    width: Count


@dataclass(frozen=True, slots=True)
class Piece:
    """A size that is wanted.

    Args:
        width: across the grain, kerf included [1]
        length: along the grain, kerf included [1]
        count: how many are wanted [1]
        may_turn: whether it may lie with its length across the stock

    Raises:
        ValueError: a size or the count is not positive
    """

    width: Count
    length: Count
    count: Count = 1
    may_turn: bool = False

    def __post_init__(self) -> None:
        if self.width <= 0 or self.length <= 0 or self.count <= 0:
            raise ValueError(f"a piece of {self.width} by {self.length}, {self.count} times, is no piece")

    @property
    def area(self) -> Count:
        """Width times length [1]."""
        return self.width * self.length


@dataclass(frozen=True, slots=True)
class Stock:
    """A board, or sheets of one size.

    Args:
        width: across, kerf included [1]
        length: along the grain, kerf included [1]
        cost: of one, in whatever the caller counts: area, cents [1]
        limit: how many there are; None for as many as are needed [1]
        forbidden: what no piece may touch: knots, splits, what is taken already

    Raises:
        ValueError: a size is not positive, or the cost or the limit is negative
    """

    width: Count
    length: Count
    cost: Count
    limit: Count | None = None
    forbidden: tuple[Rect, ...] = ()

    def __post_init__(self) -> None:
        if self.width <= 0 or self.length <= 0:
            raise ValueError(f"stock of {self.width} by {self.length} is no stock")
        if self.cost < 0 or (self.limit is not None and self.limit < 0):
            raise ValueError("cost and limit of a stock are not negative")

    @property
    def area(self) -> Count:
        """Width times length [1]."""
        return self.width * self.length


@dataclass(frozen=True, slots=True)
class Problem:
    """Pieces to be cut from stock at the least cost.

    Args:
        pieces: what is wanted
        stocks: what there is
        stages: 3: strips, stacks across a strip, pieces in a stack; 2: strips, then pieces. A last cut that
            only trims a piece to its size is always free.
        first: which way the first cuts run

    Raises:
        ValueError: another number of stages
    """

    pieces: tuple[Piece, ...]
    stocks: tuple[Stock, ...]
    stages: Literal[2, 3] = 3
    first: First = First.EITHER

    def __post_init__(self) -> None:
        if self.stages not in {2, 3}:
            raise ValueError(f"layouts have two or three stages, not {self.stages}")


@dataclass(frozen=True, slots=True)
class Placed:
    """One piece where it lies, kerf included.

    Args:
        piece: which of the problem's pieces, from 0 [1]
        x: from the stock's left end, along the length [1]
        y: from the stock's lower edge [1]
        width: what it takes across the stock [1]
        length: what it takes along the stock [1]
        turned: its length lies across the stock
    """

    piece: Count
    x: Count
    y: Count
    width: Count
    length: Count
    turned: bool


@dataclass(frozen=True, slots=True)
class Area:
    """A rectangle in the tree of cuts: cut up further, or a piece, or left over.

    Args:
        rect: where it lies, kerfs included
        cut: which way it is cut up: along the length or across the width; None if it is not
        parts: what the cuts make of it, from the lower edge or the left end on; they fill it
        piece: which piece it is once it is cut free; None if it is cut up or left over [1]
    """

    rect: Rect
    cut: First | None = None
    parts: tuple["Area", ...] = ()
    piece: Count | None = None

    def leaves(self) -> Iterator["Area"]:
        """Everything that is not cut up further, in the order of the cuts."""
        if not self.parts:
            yield self
        for part in self.parts:
            yield from part.leaves()


@dataclass(frozen=True, slots=True)
class Sheet:
    """One layout, cut as often as `copies` says.

    Args:
        stock: which of the problem's stocks, from 0 [1]
        copies: how many boards or sheets are cut like this [1]
        placed: the pieces on it
        cuts: the tree of cuts
    """

    stock: Count
    copies: Count
    placed: tuple[Placed, ...]
    cuts: Area


@dataclass(frozen=True, slots=True)
class Answer:
    """Layouts for all that could be placed.

    Args:
        sheets: the layouts, the dearest stock first
        unplaced: how many of each piece found no room, in the problem's order [1]
        cost: of all stock used [1]
        bound: no layout of all pieces costs less [1]
        proven: nothing is unplaced and no layout costs less, or no layout can place more
        seconds: how long it took, by the budget's clock [1]
    """

    sheets: tuple[Sheet, ...]
    unplaced: tuple[Count, ...]
    cost: Count
    bound: Count
    proven: bool
    seconds: Number
