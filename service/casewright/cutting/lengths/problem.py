"""What a cutting of lengths is asked, and what it answers.

All lengths are whole steps of a grid that the caller chooses (a 64th of an inch, a tenth of a millimetre).
The saw's kerf is folded in by the caller: added once to each piece and once to each length of stock. Then a
row of pieces that fits exactly still fits.
"""

from dataclasses import dataclass

from casewright.measure.units import Count, Seconds


@dataclass(frozen=True, slots=True)
class Piece:
    """A length that is wanted.

    Args:
        length: kerf included [1]
        count: how many are wanted [1]

    Raises:
        ValueError: length or count is not positive
    """

    length: Count
    count: Count = 1

    def __post_init__(self) -> None:
        if self.length <= 0 or self.count <= 0:
            raise ValueError(f"a piece of {self.length}, {self.count} times, is no piece")


@dataclass(frozen=True, slots=True)
class Stock:
    """A length that can be had.

    Args:
        length: kerf included [1]
        cost: of one, in whatever the caller counts: 1 each, its length, cents [1]
        limit: how many there are; None for as many as are needed [1]

    Raises:
        ValueError: the length is not positive, or cost or limit is negative
    """

    length: Count
    cost: Count = 1
    limit: Count | None = None

    def __post_init__(self) -> None:
        if self.length <= 0:
            raise ValueError(f"stock of {self.length} is no stock")
        if self.cost < 0 or (self.limit is not None and self.limit < 0):
            raise ValueError("cost and limit of a stock are not negative")


@dataclass(frozen=True, slots=True)
class Problem:
    """Pieces to be cut from stock at the least cost.

    Args:
        pieces: what is wanted
        stocks: what there is
    """

    pieces: tuple[Piece, ...]
    stocks: tuple[Stock, ...]


@dataclass(frozen=True, slots=True)
class Bar:
    """One way to cut up a length, done as often as `copies` says.

    Args:
        stock: which of the problem's stocks, from 0 [1]
        copies: how many are cut like this [1]
        pieces: which of the problem's pieces lie on it, one behind the other, the longest first [1]
    """

    stock: Count
    copies: Count
    pieces: tuple[Count, ...]


@dataclass(frozen=True, slots=True)
class Answer:
    """How the stock is cut up.

    Where the stock runs out, each step of length that is left over counts more than the dearest stock for
    each step of the shortest piece; so nothing is left over to save stock.

    Args:
        bars: the ways to cut, the dearest stock first
        unplaced: how many of each piece found no room, in the problem's order [1]
        cost: of all stock used [1]
        bound: whatever places as much length as this answer costs no less [1]
        proven: nothing that leaves over no more costs less
        seconds: how long it took, by the budget's clock [s]
    """

    bars: tuple[Bar, ...]
    unplaced: tuple[Count, ...]
    cost: Count
    bound: Count
    proven: bool
    seconds: Seconds
