"""How a piece stands with its drawers out further than they are stopped, and how far each may come."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import Inches, Number
from casewright.stability.limits import Limits, house_limits
from casewright.stability.masses import Piece, leaned, tilt_of
from casewright.stability.remedies import greatest_travel
from casewright.stability.situations import all_open_filled, child_on_drawer, one_open
from casewright.stability.tipping import Kind, TipCase, tip_case

TRIED = 14.0
"""A travel that every deep chest is looked at, whatever its stops are (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Further:
    """All that can be open, at one travel.

    Attributes:
        travel: how far every drawer comes out, or as far as it is long [in]
        why: the stops as drawn, the travel that is always tried, or no stops at all
        case: the situation, worked out
    """

    travel: Inches
    why: str
    case: TipCase


def capped(piece: Piece, travel: Inches) -> Piece:
    """The same piece with every drawer out so far, or as far as it is long.

    Args:
        piece: the piece
        travel: how far each drawer comes out [in]

    Returns:
        A new piece.

    Source: common practice.
    """
    return replace(
        piece,
        drawers=tuple(replace(each, travel=min(travel, each.full or each.travel)) for each in piece.drawers),
    )


def further_travels(piece: Piece) -> tuple[Further, ...]:
    """Full drawers open as far as they are stopped, 14 in, and as far as they are long.

    Args:
        piece: the piece

    Returns:
        One for each travel that its drawers can reach, the least first; with an interlock the worst drawer
        alone. None for a piece without drawers.

    Source: ASTM F2057-23, 9.2.1; a design screen, its geometry from memory.
    """
    if not piece.drawers:
        return ()
    stops = max(each.travel for each in piece.drawers)
    full = max(each.full or each.travel for each in piece.drawers)
    reached = [(stops, "as stopped")]
    if stops + TOLERANCE < TRIED < full - TOLERANCE:
        reached.append((TRIED, "were the stops left out"))
    if full > stops + TOLERANCE:
        reached.append((full, "drawn out to the end"))
    return tuple(
        Further(travel=travel, why=why, case=_open_at(capped(piece, travel) if place else piece))
        for place, (travel, why) in enumerate(reached)
    )


def _open_at(piece: Piece) -> TipCase:
    if not piece.one_at_a_time:
        return tip_case(all_open_filled(piece))
    found = (tip_case(one_open(piece, each.label)) for each in piece.drawers)
    return min(found, key=lambda case: case.factor)


def child_with_others_open(piece: Piece, limits: Limits | None = None) -> TipCase | None:
    """A child's weight on the worst drawer, on carpet, with every other drawer open and empty too.

    Args:
        piece: the piece
        limits: the child's weight and the block; None for what a shop starts with

    Returns:
        The situation, worked out; None where an interlock forbids it, or there is one drawer.

    Source: ASTM F2057-23, 9.2.3: others open as interlocks allow, as reported; hold the standard.
    """
    if piece.one_at_a_time or len(piece.drawers) < 2:
        return None
    held = limits or house_limits()
    tilt = tilt_of(held.block_thickness, piece.support_depth)
    # All are empty and open, so the place where the weight hangs alone tells the drawers apart.
    worst = min(piece.drawers, key=lambda each: leaned(each.front - each.travel, each.load_height, tilt))
    return tip_case(child_on_drawer(piece, worst.label, held.child_weight, held.block_thickness, True))


def alone_travel(cases: Iterable[TipCase], target: Number, ledger: Ledger = UNKEPT) -> dict[str, Inches]:
    """How far each drawer may come out by itself, with a child's weight on it, level and on carpet.

    Args:
        cases: the situations of a piece, worked out
        target: the factor wanted [dimensionless]
        ledger: where the working is kept

    Returns:
        The travel of each drawer by its label, rounded down; 0 where none is safe [in]

    Source: ASTM F2057-23, 9.2.3; a design screen.
    """
    found: dict[str, Inches] = {}
    for case in cases:
        kind, label = case.situation.kind, case.situation.about
        if kind in (Kind.CHILD_LEVEL, Kind.CHILD_CARPET):
            travel = greatest_travel(case.situation, target, ledger)
            found[label] = min(travel, found.get(label, travel))
    return found
