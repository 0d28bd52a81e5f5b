"""What each front covers where the fronts stand before the case: all of it, or the edges of its opening."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import FullOverlay, HalfOverlay
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.openings import Face, FaceRow, Stack
from casewright.pieces.rules import front_rules as rules

LEAST_GAP = 1 / 8
"""What stays between two fronts where their overlay is chosen (common practice) [in]."""
LEAST_FRONT = 1.0
"""A lower or narrower front is none (common practice) [in]."""

COVER_LEAST = 1 / 16
"""How far a front before the case covers each edge of its opening at least (common practice) [in]."""
ROUNDED = 1 / 64
"""What rounding fronts to 1/64 may take from that [in]."""
Span = tuple[Inches, Inches]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover:
    """The rectangle that a front covers.

    Attributes:
        left: its left edge from the outside of the left case side [in]
        bottom: its lower edge above the underside of the case bottom [in]
        width: its width [in]
        height: its height [in]
    """

    left: float
    bottom: float
    width: float
    height: float


def covers(spec: UnitSpec, face: Face, ledger: Ledger) -> Mapping[str, Cover]:
    """What each front before the case covers.

    Args:
        spec: what the maker chose
        face: the openings
        ledger: keeps the working

    Returns:
        By the code of its opening, the rectangle of its front.

    Raises:
        CannotBuild: reveals and gaps leave no front

    Source: geometry of the case; how fronts share it is common practice.
    """
    style = spec.drawers.style
    if isinstance(style, HalfOverlay):
        return _over_edges(spec, style, face, ledger)
    if isinstance(style, FullOverlay):
        return _over_all(spec, style, face, ledger)
    return {}


def _over_edges(spec: UnitSpec, style: HalfOverlay, face: Face, ledger: Ledger) -> dict[str, Cover]:
    overlay = style.overlay
    if overlay is None:
        thin = min(_between(spec, face), default=spec.frame.side)
        overlay = ledger.take("drawers.style.overlay", rules.usual_overlay, divider=thin, gap=LEAST_GAP)
    if overlay <= 0:
        raise CannotBuild(
            say(
                "drawers.style.overlay: dividers leave no room for one; choose inset fronts, or type {}",
                1 / 16,
            )
        )
    found = {}
    for opening in face.openings:
        under = ledger.under(opening.code)
        found[opening.code] = Cover(
            left=opening.left - overlay,
            bottom=opening.bottom - overlay,
            width=under.take("front_width", rules.overlaid_size, opening=opening.width, overlay=overlay),
            height=under.take("front_height", rules.overlaid_size, opening=opening.height, overlay=overlay),
        )
    return found


def _between(spec: UnitSpec, face: Face) -> Iterable[Inches]:
    """The thicknesses of what stands between two openings."""
    rows = tuple(face.all_rows)
    if any(len(stack.rows) > 1 for stack in face.stacks):
        yield spec.frame.divider
    if any(row.uprights or row.partitions for row in rows):
        yield spec.frame.upright


def _over_all(spec: UnitSpec, style: FullOverlay, face: Face, ledger: Ledger) -> dict[str, Cover]:
    """Fronts from edge to edge of the case: its rows share the height, the columns of each its width."""
    whole = Cover(left=0.0, bottom=0.0, width=float(spec.body.width), height=face.body_height)
    under = ledger.under("drawers.style")
    return dict(
        _shared_out(
            style, face.stacks[0], whole, style.edge, under, ledger, is_divided=spec.frame.divider > 0
        )
    )


def _shared_out(
    style: FullOverlay,
    stack: Stack,
    room: Cover,
    edge: Inches,
    under: Ledger,
    ledger: Ledger,
    *,
    is_divided: bool,
) -> Iterator[tuple[str, Cover]]:
    """The fronts of a stack within the room that it has, and those of the stacks in its columns."""
    rows = stack.rows
    total = under.take(
        "fronts_height", rules.all_fronts, face=room.height, edge=edge, gap=style.gap, count=len(rows)
    )
    heights = _shared(
        total, _row_shares(style, stack, room, edge, is_divided=is_divided), under, "row_{}_front"
    )
    _refuse_none(heights, "height")
    top = room.bottom + room.height - edge
    for row, height in zip(rows, heights, strict=True):
        own = ledger.under(row.code)
        along = own.take(
            "fronts_width",
            rules.all_fronts,
            face=room.width,
            edge=edge,
            gap=style.gap,
            count=len(row.cells),
        )
        widths = _shared(along, _column_shares(style, row, room, edge), own, "front_{}_width")
        _refuse_none(widths, "width")
        left = room.left + edge
        for cell, width in zip(row.cells, widths, strict=True):
            cover = Cover(left=left, bottom=top - height, width=width, height=height)
            if cell.stack is not None:
                yield from _shared_out(
                    style, cell.stack, cover, 0.0, ledger.under(cell.code), ledger, is_divided=is_divided
                )
            elif cell.opening is not None and cell.is_drawer:
                yield cell.opening.code, cover
            left += width + style.gap
        top -= height + style.gap


def _row_shares(
    style: FullOverlay, stack: Stack, room: Cover, edge: Inches, *, is_divided: bool
) -> list[Inches]:
    """What each row counts for when they share a height: without dividers, their fronts set them out."""
    top = room.bottom + room.height
    holes = [(top - row.bottom - row.height, top - row.bottom) for row in stack.rows]
    return _shares(style, holes, room.height, edge, is_divided=is_divided)


def _column_shares(style: FullOverlay, row: FaceRow, room: Cover, edge: Inches) -> list[Inches]:
    """What each column counts for when they share a width."""
    holes = [(cell.left - room.left, cell.left + cell.width - room.left) for cell in row.cells]
    return _shares(style, holes, room.width, edge, is_divided=True)


def _shares(
    style: FullOverlay, holes: Sequence[Span], room: Inches, edge: Inches, *, is_divided: bool
) -> list[Inches]:
    """As the openings are, where each is then covered or where that was asked; else by the dividers."""
    alike = [end - start for start, end in holes]
    if style.share == "as the openings" and is_divided:
        return alike
    # The middle of each divider parts two fronts; the outer edges are those of the room.
    middles = [(one[1] + other[0]) / 2 for one, other in pairwise(holes)]
    edges = [edge - style.gap / 2, *middles, room - edge + style.gap / 2]
    parted = [end - start - style.gap for start, end in pairwise(edges)]
    if style.share == "over the dividers" or not is_divided:
        return parted
    each = sum(parted) / sum(alike)
    start = edge
    for hole, share in zip(holes, alike, strict=True):
        end = start + share * each
        if hole[0] - start < COVER_LEAST + ROUNDED or end - hole[1] < COVER_LEAST + ROUNDED:
            return parted
        start = end + style.gap
    return alike


def _shared(total: Inches, shares: Sequence[Inches], ledger: Ledger, name: str) -> list[Inches]:
    """Shares of a total, each to the nearest 1/64; what rounding leaves goes to the last."""
    every = sum(shares)
    found = [
        ledger.take(name.format(number), rules.shared_front, total=total, own=share, every=every)
        for number, share in enumerate(shares[:-1], start=1)
    ]
    basis = "what the others leave of all fronts together: see figure " + getattr(total, "name", "fronts")
    last = ledger.given(name.format(len(shares)), total - sum(found), basis, Inches)
    return [*found, last]


def _refuse_none(sizes: Iterable[Inches], name: str) -> None:
    if min(sizes) < LEAST_FRONT:
        raise CannotBuild(
            f"drawers.style: reveals and gaps leave a front no {name}; make them narrower, "
            "or use fewer fronts"
        )
