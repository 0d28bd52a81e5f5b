"""How rails, top and bottom of a carcase end in its sides: how far they reach in, and how long they are."""

from dataclasses import dataclass

from casewright.joinery.families.carcase.layout import dovetailed_length
from casewright.joinery.families.frame_tenon.asked import usual_frame_length
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.rules import corner_rules as rules

CASE_DOVETAIL = "carcase dovetail, lap {:fraction}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ends:
    """Both ends of a board between the sides.

    Attributes:
        reach: how far it reaches into each side [in]
        start: its left end, from the outside of the left side [in]
        length: over both ends [in]
        words: the joint at each end
    """

    reach: Inches
    start: Inches
    length: Inches
    words: Words


def rail_ends(case: CasePlan) -> Ends:
    """How the rails under the top end in the sides.

    Args:
        case: what the case is worked out from

    Returns:
        Both ends of each.

    Source: geometry of the joints.
    """
    thick, corner = case.spec.case, case.spec.case.joined
    if corner in ("half-blind", "through"):
        return _dovetailed(case)
    if corner == "tenon":
        tenon = corner_tenon(case)
        return _let_in(case, "rail_length", tenon, say("twin tenons, {:fraction} long", tenon))
    if corner == "housing":
        words = say("housed and screwed, {:fraction} deep", thick.housing)
        return _let_in(case, "rail_length", thick.housing, words)
    return _let_in(case, "rail_length", 0.0, f"butt, {corner.replace('-', ' ')}")


def bottom_ends(case: CasePlan) -> Ends:
    """How the case bottom ends in the sides: as the rails, but housed where those are tenoned or framed.

    Args:
        case: what the case is worked out from

    Returns:
        Both ends.

    Source: common practice: no tenon holds a board over its whole width, and no dovetail a panelled side.
    """
    thick = case.spec.case
    if not is_housed(case):
        return rail_ends(case)
    words = say("housed, {:fraction} deep, glued at the front", thick.housing)
    return _let_in(case, "bottom_length", thick.housing, words)


def is_housed(case: CasePlan) -> bool:
    """Whether the bottom lies in a housing of its own while the rails are joined otherwise."""
    thick = case.spec.case
    dovetailed = thick.is_framed and thick.joined in ("half-blind", "through")
    return thick.joined == "tenon" or dovetailed


def corner_tenon(case: CasePlan) -> Inches:
    """The length of the rails' tenons in the sides [in]."""
    typed = case.spec.case.corner_tenon
    if typed is not None:
        return typed
    return case.ledger.take("corner_tenon", usual_frame_length, stile=case.spec.case.side)


def _dovetailed(case: CasePlan) -> Ends:
    thick = case.spec.case
    lap = 0.0 if thick.joined == "through" else thick.lap
    length = case.ledger.take("rail_length", dovetailed_length, width=case.spec.body.width, lap=lap)
    words = say(CASE_DOVETAIL, lap) if lap else "carcase dovetail, through"
    return Ends(reach=thick.side - lap, start=lap, length=length, words=words)


def _let_in(case: CasePlan, figure: str, reach: Inches, words: Words) -> Ends:
    side, width = case.spec.case.side, case.spec.body.width
    length = case.ledger.take(figure, rules.let_in_length, width=width, side=side, reach=reach)
    return Ends(reach=reach, start=side - reach, length=length, words=words)
