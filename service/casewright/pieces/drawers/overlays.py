"""What each front covers where the fronts stand before the case: all of it, or the edges of its opening."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import FullOverlay, HalfOverlay
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.openings import Face, FaceRow
from casewright.pieces.rules import front_rules as rules

LEAST_GAP = 1 / 8
"""What stays between two fronts where their overlay is chosen (common practice) [in]."""
LEAST_FRONT = 1.0
"""A lower or narrower front is none (common practice) [in]."""


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
    if len(face.rows) > 1:
        yield spec.frame.divider
    if any(row.uprights for row in face.rows):
        yield spec.frame.upright


def _over_all(spec: UnitSpec, style: FullOverlay, face: Face, ledger: Ledger) -> dict[str, Cover]:
    rows = face.rows
    total = ledger.take(
        "drawers.style.fronts_height",
        rules.all_fronts,
        face=face.body_height,
        edge=style.edge,
        gap=style.gap,
        count=len(rows),
    )
    shares = _row_shares(style, face)
    heights = _shared(total, shares, ledger, "drawers.style.row_{}_front")
    _refuse_none(heights, "height")
    found, top = {}, face.body_height - style.edge
    for row, height in zip(rows, heights, strict=True):
        for code, left, width in _along(spec, style, row, ledger):
            found[code] = Cover(left=left, bottom=top - height, width=width, height=height)
        top -= height + style.gap
    return found


def _row_shares(style: FullOverlay, face: Face) -> list[Inches]:
    """What each row counts for when they share the height of the case."""
    if style.share == "as the openings":
        return [row.height for row in face.rows]
    # The middle of each divider parts two rows; the outer edges are those of the case.
    rows, edges = face.rows, [face.body_height - style.edge + style.gap / 2]
    edges += [(upper.bottom + lower.bottom + lower.height) / 2 for upper, lower in pairwise(rows)]
    edges.append(style.edge - style.gap / 2)
    return [above - below - style.gap for above, below in pairwise(edges)]


def _along(
    spec: UnitSpec, style: FullOverlay, row: FaceRow, ledger: Ledger
) -> Iterable[tuple[str, Inches, Inches]]:
    """The fronts of a row from left to right: code, left edge and width."""
    under = ledger.under(f"R{row.number}")
    total = under.take(
        "fronts_width",
        rules.all_fronts,
        face=spec.body.width,
        edge=style.edge,
        gap=style.gap,
        count=len(row.openings),
    )
    shares = [opening.designed_width for opening in row.openings]
    widths = _shared(total, shares, under, "front_{}_width")
    _refuse_none(widths, "width")
    left = style.edge
    for opening, width in zip(row.openings, widths, strict=True):
        yield opening.code, left, width
        left += width + style.gap


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
