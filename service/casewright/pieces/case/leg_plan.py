"""What the parts of a piece on legs share."""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.measure.units import Inches
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.case.leg_sizes import LegSizes, leg_sizes
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.rules import leg_rules


@dataclass(frozen=True, slots=True, kw_only=True)
class LegPlan:
    """What the parts of a piece on legs share.

    Attributes:
        case: what the case is worked out from
        legs: what the maker chose
        sizes: what was left out of it, chosen
        inside: from the outside of a leg to the inside of its side apron [in]
    """

    case: CasePlan
    legs: LegsAndAprons
    sizes: LegSizes
    inside: Inches

    @property
    def floor(self) -> Inches:
        """Lower edge of the aprons above the floor [in]."""
        return self.case.face.base_height


def leg_plan(case: CasePlan, legs: LegsAndAprons, rack: Rack) -> LegPlan:
    """What the parts of a piece on legs share.

    Args:
        case: what the case is worked out from
        legs: what the maker chose
        rack: the shop's chisels, by which the tenons are chosen

    Returns:
        The plan.

    Source: geometry of the piece.
    """
    sizes = leg_sizes(legs, rack, case.ledger)
    return LegPlan(case=case, legs=legs, sizes=sizes, inside=legs.setback + legs.apron)


def runner_length(plan: LegPlan) -> Inches:
    """How long every runner and kicker is: from its tongue in the rail to the back apron.

    Args:
        plan: what the parts share

    Returns:
        The length [in]

    Source: geometry of the piece.
    """
    return plan.case.ledger.take(
        "runner_length",
        leg_rules.leg_runner_length,
        depth=plan.case.face.opening_depth,
        rail=plan.sizes.rail_width,
        tongue=plan.legs.tongue,
    )
