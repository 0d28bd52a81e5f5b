"""What would make a whole piece stand, each remedy with the figure at which every situation passes."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import up_to
from casewright.measure.units import Inches, Number, Pounds
from casewright.stability.limits import Limits, house_limits
from casewright.stability.masses import Piece
from casewright.stability.remedies import (
    BEFORE_REAR,
    ballast,
    deeper_body,
    feet_forward,
    greatest_travel,
)
from casewright.stability.situations import situations
from casewright.stability.tipping import TipCase, tip_case

POUNDS, DEEP, FORWARD = 0.5, 1 / 4, 1 / 16
"""To what a weight, a depth and a place of the feet are rounded up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Remedies:
    """What would make every situation reach the factor that is wanted; each of them by itself.

    Attributes:
        travel: outstops at so much for every drawer; 0 where no travel is enough [in]
        whatever_travel: the worst situation that no travel mends, as nothing is drawn out in it; None where
            there is none
        interlock: the least factor when one drawer opens at a time; None where that holds already, or there
            is one drawer
        deeper: the body deeper by so much, with drawers that open no further [in]
        added: weight low at the back of the case [lb]
        forward: the front feet forward by so much [in]
    """

    travel: Inches
    whatever_travel: TipCase | None
    interlock: Number | None
    deeper: Inches
    added: Pounds
    forward: Inches


def least_factor(piece: Piece, limits: Limits | None = None) -> Number:
    """The factor of the worst situation of a piece.

    Args:
        piece: the piece
        limits: weights, forces and the block; None for what a shop starts with

    Returns:
        The least factor; endless where nothing tips it [dimensionless]

    Source: ASTM F2057-23, 9.2.1 to 9.2.3; a design screen, its geometry from memory.
    """
    return min(tip_case(situation).factor for situation in situations(piece, limits))


def remedies(
    piece: Piece, cases: Iterable[TipCase], limits: Limits | None = None, ledger: Ledger = UNKEPT
) -> Remedies:
    """What would make a piece stand in every situation.

    Args:
        piece: the piece
        cases: its situations, worked out
        limits: the factor wanted; None for what a shop starts with
        ledger: where the working is kept

    Returns:
        The remedies, rounded to the safe side; noughts where nothing need be done.

    Source: statics; a design screen.
    """
    held = limits or house_limits()
    target, tried = held.target_factor, tuple(cases)
    locks = not piece.one_at_a_time and len(piece.drawers) > 1
    moves = [case.situation for case in tried if case.situation.moving]
    lacking = [case for case in tried if case.factor < target]
    # A child on an open door tips the piece just as much with every drawer shut.
    unmoved = [case for case in lacking if not case.situation.moving]
    fixed = min(unmoved, key=lambda case: case.factor, default=None)
    travel = 0.0 if fixed else min((greatest_travel(each, target) for each in moves), default=0.0)
    interlock = least_factor(replace(piece, one_at_a_time=True), held) if locks else None
    if not lacking:
        return Remedies(
            travel=travel, whatever_travel=None, interlock=interlock, deeper=0.0, added=0.0, forward=0.0
        )
    depth = piece.support_depth
    back = depth - BEFORE_REAR
    deepest = max(lacking, key=lambda case: deeper_body(case, depth, target))
    heaviest = max(lacking, key=lambda case: ballast(case, back, target))
    furthest = max(lacking, key=lambda case: feet_forward(case, target))
    deeper = ledger.take("deeper_body", deeper_body, case=deepest, depth=depth, target=target)
    added = ledger.take("ballast", ballast, case=heaviest, x=back, target=target)
    forward = ledger.take("feet_forward", feet_forward, case=furthest, target=target)
    return Remedies(
        travel=travel,
        whatever_travel=fixed,
        interlock=interlock,
        deeper=up_to(deeper, DEEP),
        added=up_to(added, POUNDS),
        forward=up_to(forward, FORWARD),
    )
