"""The sizes of legs and aprons that a maker may leave out, chosen by the leg and by what lies in it."""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.families.leg_tenon.rules import (
    LIMITS,
    guide_thickness,
    inner_wall,
    usual_face,
    usual_leg_length,
    usual_leg_tenon,
)
from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.rules import leg_rules

USUAL_DOVETAIL, USUAL_TENON = 5 / 8, 3 / 4
"""How far the upper rail and those below it reach into a leg (common practice) [in]."""
REACH = 3 / 4
"""How far a runner stands into the opening (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LegSizes:
    """The sizes that may be left out of legs and aprons.

    Attributes:
        tenon: length of the aprons' tenons [in]
        wall: from a leg's inside face to the mortise of an apron [in]
        guide: thickness of a side guide; nothing where the apron is flush with the leg inside [in]
        rail_width: width of a front rail [in]
        dovetail: length of the upper rail's dovetail [in]
        rail_tenon: length of the tenons of the rails below it [in]
        runner_width: width of a runner or kicker [in]
    """

    tenon: Inches
    wall: Inches
    guide: Inches
    rail_width: Inches
    dovetail: Inches
    rail_tenon: Inches
    runner_width: Inches


def leg_sizes(legs: LegsAndAprons, rack: Rack, ledger: Ledger) -> LegSizes:
    """The sizes that may be left out: as typed, or as is usual for the leg.

    Args:
        legs: what the maker chose
        rack: the shop's chisels, by which tenons are chosen
        ledger: keeps the working

    Returns:
        The sizes.

    Source: common practice of leg-and-apron work.
    """
    take, clear = ledger.take, LIMITS.clear_least.value
    thick = usual_leg_tenon(legs.apron, rack)
    outer = legs.setback + usual_face(legs.apron, legs.setback, thick)
    wall = take("apron_wall", inner_wall, leg=legs.leg, outer_wall=outer, tenon=thick)
    guide = take("guide", guide_thickness, leg=legs.leg, setback=legs.setback, apron=legs.apron)
    tenon, dovetail, rail_tenon, runner = legs.tenon, legs.dovetail, legs.rail_tenon, legs.runner_width
    if tenon is None:
        tenon = take("apron_tenon", usual_leg_length, leg=legs.leg, outer_wall=outer, tenon=thick, aprons=2)
    if dovetail is None:
        dovetail = take("dovetail", leg_rules.rail_reach, usual=USUAL_DOVETAIL, wall=wall, clear=clear)
    if rail_tenon is None:
        rail_tenon = take("rail_tenon", leg_rules.rail_reach, usual=USUAL_TENON, wall=wall, clear=clear)
    if runner is None:
        runner = take("runner_width", leg_rules.runner_width, guide=guide, reach=REACH)
    return LegSizes(
        tenon=tenon,
        wall=wall,
        guide=guide,
        rail_width=legs.leg if legs.rail_width is None else legs.rail_width,
        dovetail=dovetail,
        rail_tenon=rail_tenon,
        runner_width=runner,
    )
