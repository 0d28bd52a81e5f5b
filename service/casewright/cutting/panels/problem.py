"""What a plan of glued-up panels is asked, and what it answers.

Sizes are whole steps of the caller's grid with the saw kerf folded in, as in `cutting.guillotine`; only the
width of a panel and of its strips is net: what is left of a strip once it is sawn and its edges are jointed.
"""

from dataclasses import dataclass

from casewright.cutting.guillotine.problem import Area, First, Piece, Rect, Stock
from casewright.measure.units import Count, Number


@dataclass(frozen=True, slots=True)
class Panel:
    """A part that is glued up from strips side by side, each as long as the part.

    Args:
        width: of all strips together, net [1]
        length: along the grain, kerf included [1]
        count: how many are wanted [1]
        keep_off: stretches of the width, from and to, in which no glue line may lie [1]

    Raises:
        ValueError: a size or the count is not positive
    """

    width: Count
    length: Count
    count: Count = 1
    keep_off: tuple[tuple[Count, Count], ...] = ()

    def __post_init__(self) -> None:
        if self.width <= 0 or self.length <= 0 or self.count <= 0:
            raise ValueError(f"a panel of {self.width} by {self.length}, {self.count} times, is no panel")


@dataclass(frozen=True, slots=True)
class StripRule:
    """What a strip may be.

    Args:
        allowance: what kerf and jointing take of the board for each strip [1]
        narrowest: least net width [1]
        widest: greatest net width [1]

    Raises:
        ValueError: the limits leave no width, or no two strips can share what is a little too wide for one
    """

    allowance: Count
    narrowest: Count
    widest: Count

    def __post_init__(self) -> None:
        if self.allowance < 0 or self.narrowest <= 0 or self.widest < 2 * self.narrowest:
            raise ValueError("the widest strip is at least twice as wide as the narrowest")


@dataclass(frozen=True, slots=True)
class PanelProblem:
    """Panels and single parts, to be cut from boards at the least cost.

    Args:
        panels: what is glued up
        pieces: what is cut from one board; none of it turns, since boards have a grain
        stocks: the boards there are
        strips: what a strip may be
    """

    panels: tuple[Panel, ...]
    pieces: tuple[Piece, ...]
    stocks: tuple[Stock, ...]
    strips: StripRule


@dataclass(frozen=True, slots=True)
class Laid:
    """A strip or a single part where it lies on its board, kerf and jointing included.

    Args:
        rect: where it lies
        piece: which single part it is; None for a strip [1]
        panel: which panel it is a strip of; None for a single part [1]
        copy: of several panels alike, which one, from 0 [1]
        net: the strip's net width, 0 for a single part [1]
    """

    rect: Rect
    piece: Count | None = None
    panel: Count | None = None
    copy: Count = 0
    net: Count = 0


@dataclass(frozen=True, slots=True)
class BoardPlan:
    """One board, cut up.

    Args:
        stock: which of the problem's stocks it is [1]
        first: which way its first cuts run
        laid: what lies on it
        cuts: the tree of cuts; a leaf's `piece` is its place in `laid`
    """

    stock: Count
    first: First
    laid: tuple[Laid, ...]
    cuts: Area


@dataclass(frozen=True, slots=True)
class GluedUp:
    """One panel put together.

    Args:
        panel: which of the problem's panels [1]
        copy: which one of those alike, from 0 [1]
        strips: net widths from the first edge on; what they are over the panel's width is trimmed off [1]
        trimmed: how much of that comes off the first edge [1]
        lines_clear: does every glue line keep off where none may lie?
    """

    panel: Count
    copy: Count
    strips: tuple[Count, ...]
    trimmed: Count
    lines_clear: bool


@dataclass(frozen=True, slots=True)
class PanelAnswer:
    """The boards that are cut, and the panels that come of them.

    Args:
        boards: each with its layout
        panels: those that are complete
        unplaced_panels: how many of each panel lack boards [1]
        unplaced_pieces: how many of each single part lack boards [1]
        cost: of the boards used [1]
        bound: no plan of everything costs less [1]
        proven: everything is placed, and nothing can cost less
        seconds: how long it took, by the budget's clock
    """

    boards: tuple[BoardPlan, ...]
    panels: tuple[GluedUp, ...]
    unplaced_panels: tuple[Count, ...]
    unplaced_pieces: tuple[Count, ...]
    cost: Count
    bound: Count
    proven: bool
    seconds: Number
