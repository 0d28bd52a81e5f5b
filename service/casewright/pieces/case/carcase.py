"""The carcase: its parts, and how far its sides move.

Rails and bottom are joined to the sides as the maker chose; dividers are housed or slid in with a dovetail;
web frames carry the drawers and are left dry at the rear, so that solid sides can move past them.
"""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.backs import BOARD, back_frame, back_parts
from casewright.pieces.case.bases import base_parts
from casewright.pieces.case.body import body_parts
from casewright.pieces.case.floors import floor_parts
from casewright.pieces.case.frames import frame_parts
from casewright.pieces.case.leg_parts import leg_parts
from casewright.pieces.case.leg_plan import leg_plan
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.case.shelves import shelf_parts
from casewright.pieces.case.sides import side_frame, side_moves
from casewright.pieces.case.tops import top_parts
from casewright.pieces.case.wall import wall_parts
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.season import Climate
from casewright.pieces.panels.frame import PanelFrame
from casewright.pieces.rules import case_rules as rules

LEAST_SLACK = 1 / 8
"""A gap at the rear of a runner that a maker can leave by eye (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Carcase:
    """What the case gives to the drawers and to the checks, besides its parts.

    Attributes:
        side_shrinkage: how much shallower a side gets between now and the driest [in]
        side_swelling: how much deeper a side gets between now and the wettest [in]
        slack: gap at the rear of each runner [in]
        back_board: width of each back board; 0 without any [in]
        back_frame: the frame of a panelled back
        plan: what every part of it was worked out from
        parts: every part of case, frames, top, base and back
    """

    side_shrinkage: float
    side_swelling: float
    slack: float
    back_board: float
    plan: CasePlan
    back_frame: PanelFrame | None = None
    parts: tuple[Part, ...]


def carcase(spec: UnitSpec, face: Face, climate: Climate, rack: Rack, ledger: Ledger) -> Carcase:
    """All parts of the case, and how far its sides move.

    Args:
        spec: what the maker chose
        face: heights and widths
        climate: the moisture contents between which the wood moves
        rack: the shop's chisels, by which the tenons of legs are chosen
        ledger: keeps the working

    Returns:
        The carcase; on legs it does not move in depth, where the aprons' long grain sets it.

    Source: common practice of solid-wood case making.
    """
    under = ledger.under("case")
    if spec.legs:
        return _on_legs(spec, spec.legs, face, climate, rack, under)
    moves = side_moves(spec, climate, ledger)
    slack = spec.frames.slack
    if slack is None:
        slack = under.take("runner_slack", rules.runner_slack, shrinkage=moves.shrinkage, least=LEAST_SLACK)
    plan = CasePlan(
        spec=spec,
        face=face,
        climate=climate,
        slack=slack,
        ledger=under,
        moves=moves,
        frame=side_frame(spec, face, climate, ledger),
    )
    frame = back_frame(plan)
    parts = (
        *top_parts(plan),
        *body_parts(plan),
        *base_parts(plan),
        *(() if spec.crate else frame_parts(plan)),
        *floor_parts(plan),
        *shelf_parts(plan),
        *back_parts(plan, frame),
        *wall_parts(plan),
    )
    return Carcase(
        side_shrinkage=moves.shrinkage,
        side_swelling=moves.swelling,
        slack=slack,
        back_board=next((part.width for part in parts if part.line == BOARD), 0.0),
        back_frame=frame,
        plan=plan,
        parts=parts,
    )


def _on_legs(
    spec: UnitSpec, legs: LegsAndAprons, face: Face, climate: Climate, rack: Rack, under: Ledger
) -> Carcase:
    plan = CasePlan(spec=spec, face=face, climate=climate, slack=0.0, ledger=under)
    return Carcase(
        side_shrinkage=0.0,
        side_swelling=0.0,
        slack=0.0,
        back_board=0.0,
        plan=plan,
        parts=(
            *top_parts(plan),
            *leg_parts(leg_plan(plan, legs, rack)),
            *floor_parts(plan),
            *shelf_parts(plan),
        ),
    )
