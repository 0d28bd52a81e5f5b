"""What of a board or sheet can be used: without its ends and edges, and with what no part may have."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from casewright.cutting.asked.parts_spec import Saw
from casewright.cutting.asked.stock_spec import Board, SheetStock
from casewright.cutting.plans.spots import Spot
from casewright.measure.lengths import to_ticks
from casewright.measure.units import TICKS_PER_INCH, Count, Inches, Ticks

LITTLE_TAPER: Ticks = TICKS_PER_INCH // 2
"""A board that tapers by less is used as wide as it is where it is narrowest."""
STEPS = 8
"""In so many steps a tapered board's edge is followed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """What of a board or sheet can be used.

    Attributes:
        stock: the board or sheet
        outer: all of it, as long as it is and as wide as where it is widest
        usable: without the ends and edges that are cut off
        shut: what no part may have: defects that show, and what the taper leaves off
        back: defects on its back alone
        sap: sapwood
        grain_across: does its grain run across its length?
        has_grain: does it matter which way a part lies?
        limit: how many there are; None for as many as it takes [dimensionless]
        thickness: as it measures; 0 where nothing is known [tick]
        log: mark of its log
    """

    stock: Board | SheetStock
    outer: Spot
    usable: Spot
    shut: tuple[Spot, ...] = ()
    back: tuple[Spot, ...] = ()
    sap: tuple[Spot, ...] = ()
    grain_across: bool = False
    has_grain: bool = True
    limit: Count | None = None
    thickness: Ticks = 0
    log: str = ""


def ground_of(stock: Board | SheetStock, saw: Saw) -> Ground | None:
    """What of a board or sheet can be used.

    Args:
        stock: the board or sheet
        saw: what is cut off its ends and edges

    Returns:
        The ground; None where nothing is left of it.

    Source: geometry; what is cut off is the cut file's.
    """
    return _of_board(stock, saw) if isinstance(stock, Board) else _of_sheet(stock)


def class_thickness(name: str) -> Inches:
    """The rough thickness of a class, which is its name.

    Args:
        name: such as `5/4`

    Returns:
        The thickness [in]

    Source: NHLA rules: lumber is named by its rough thickness in quarters of an inch.
    """
    above, below = name.split("/")
    return int(above) / int(below)


def _of_board(board: Board, saw: Saw) -> Ground | None:
    outer = Spot(0, 0, to_ticks(board.length), to_ticks(board.widest))
    trim, edge = to_ticks(saw.end_trim), to_ticks(saw.edge)
    narrowest, widest = to_ticks(board.narrowest), to_ticks(board.widest)
    is_tapered = widest - narrowest >= LITTLE_TAPER
    far = (widest if is_tapered else narrowest) - edge
    usable = Spot(trim, edge, outer.length - 2 * trim, far - edge)
    if usable.length <= 0 or usable.width <= 0:
        return None
    rectangles = [
        (
            defect.face,
            Spot(*map(to_ticks, (defect.from_end, defect.from_edge, defect.length, defect.width))),
        )
        for defect in board.defects
    ]
    return Ground(
        stock=board,
        outer=outer,
        usable=usable,
        shut=(
            *(_taper(board, usable, edge) if is_tapered else ()),
            *(spot for face, spot in rectangles if face != "back"),
        ),
        back=tuple(spot for face, spot in rectangles if face == "back"),
        sap=tuple(_sap(board, usable)),
        limit=board.count,
        thickness=to_ticks(board.thickness or class_thickness(board.thickness_class)),
        log=board.log.casefold(),
    )


def width_at(board: Board, place: Inches) -> Inches:
    """How wide a board is somewhere along it.

    Args:
        board: the board
        place: how far from its first end [in]

    Returns:
        Its width there [in]

    Source: geometry; between two places where it was measured its edge is taken as straight.
    """
    marks = board.outline
    for (start, from_width), (end, to_width) in pairwise(marks):
        if place <= end:
            return from_width + (to_width - from_width) * (place - start) / (end - start)
    return marks[-1][1]


def _taper(board: Board, usable: Spot, edge: Ticks) -> Iterator[Spot]:
    """What a tapered board leaves off, in steps; between two of them the narrower end counts."""
    for step in range(STEPS):
        start, end = (usable.x + usable.length * number // STEPS for number in (step, step + 1))
        places = (start, end, *(to_ticks(mark) for mark, _ in board.outline))
        narrowest = min(
            to_ticks(width_at(board, place / TICKS_PER_INCH)) for place in places if start <= place <= end
        )
        far = max(usable.y, narrowest - edge)
        if far < usable.far:
            yield Spot(start, far, end - start, usable.far - far)


def _sap(board: Board, usable: Spot) -> Iterator[Spot]:
    """Sapwood along the edges; along a far edge that runs in, it is counted from where that comes in most."""
    near, far = to_ticks(board.sap_near), to_ticks(board.sap_far)
    if near > usable.y:
        yield Spot(usable.x, usable.y, usable.length, min(usable.far, near) - usable.y)
    if far:
        start = max(usable.y, to_ticks(board.narrowest) - far)
        if start < usable.far:
            yield Spot(usable.x, start, usable.length, usable.far - start)


def _of_sheet(sheet: SheetStock) -> Ground | None:
    outer = Spot(0, 0, to_ticks(sheet.length), to_ticks(sheet.width))
    trim = to_ticks(sheet.trim)
    usable = Spot(trim, trim, outer.length - 2 * trim, outer.width - 2 * trim)
    if usable.length <= 0 or usable.width <= 0:
        return None
    return Ground(
        stock=sheet,
        outer=outer,
        usable=usable,
        grain_across=sheet.grain == "width",
        has_grain=sheet.grain != "none",
        limit=sheet.count,
        thickness=to_ticks(sheet.thickness or 0),
    )
