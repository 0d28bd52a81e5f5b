"""The dovetailed corners of the case, counted for the hours: rails and bottom into the sides."""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.choose import rank
from casewright.joinery.families.carcase.checks import CARCASE, widest_tail
from casewright.joinery.families.carcase.layout import FEWEST, fewest_in_a_carcase
from casewright.joinery.limits import LIMITS
from casewright.joinery.spacing import TOLERANCE, flare
from casewright.measure.units import Count, Inches
from casewright.pieces.asked.case_spec import DOVETAILS, Case
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.plan import board_depth
from casewright.pieces.layout.openings import Face, Wall


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseCorner:
    """One kind of dovetailed corner of the case.

    Attributes:
        name: what is joined
        width: width of the joint [in]
        tails: tails in each
        corners: how many there are in one unit
    """

    name: str
    width: Inches
    tails: Count
    corners: Count


def case_corners(spec: UnitSpec, face: Face, rack: Rack) -> tuple[CaseCorner, ...]:
    """The dovetailed corners of one case, tails counted by the ranking that drawers use.

    Args:
        spec: what the maker chose
        face: the depth of the case
        rack: the dovetail saw

    Returns:
        The corners of the rails, and those of the bottom; on legs those of the upper rail.

    Source: common practice: tails about three thicknesses wide, two inches at most.
    """
    case = spec.case
    if spec.legs:
        width = spec.legs.rail_width or spec.legs.leg
        return (CaseCorner(name="upper rail into legs", width=width, tails=1, corners=2),)
    depth = board_depth(spec, face)
    into_sides = sum(each.walls.count(Wall.SIDE) for each in face.pedestals)
    if case.joined not in DOVETAILS:
        wide = depth if case.is_ply else case.rail_width
        return (
            CaseCorner(name="rails or top into sides", width=wide, tails=0, corners=2 if case.is_ply else 4),
            CaseCorner(name="case bottom into sides", width=depth, tails=0, corners=into_sides),
        )
    return (
        _upper(spec, rack),
        CaseCorner(
            name="case bottom into sides",
            width=depth,
            tails=0 if case.is_framed else _tails(case, depth, case.bottom, rack),
            corners=into_sides,
        ),
    )


def _upper(spec: UnitSpec, rack: Rack) -> CaseCorner:
    """What closes the case above: rails, or a top over the whole depth."""
    case = spec.case
    if spec.has_case_top:
        depth = spec.body.depth
        return CaseCorner(
            name="top into sides",
            width=depth,
            tails=_tails(case, depth, spec.top.thickness, rack),
            corners=2,
        )
    return CaseCorner(
        name="sub-top rails into sides",
        width=case.rail_width,
        tails=_tails(case, case.rail_width, case.sub_top_rail, rack),
        corners=4,
    )


def _tails(case: Case, width: Inches, thickness: Inches, rack: Rack) -> Count:
    """How many tails: the best ranked, as long as those left between narrower edge tails stay tight."""
    half_pin, pin = case.corner_half_pin, case.corner_pin
    length = case.side - (case.lap if case.joined == "half-blind" else 0.0)
    choices = rank(width, thickness, length, half_pin, pin, case.carcase_slope, rack.kerf)
    best = choices[0].count if choices else 0
    room, narrowing = width - 2 * half_pin, flare(length, case.carcase_slope)
    least = max(thickness, LIMITS.neck_least.value) + 2 * narrowing
    if best < FEWEST:
        two = 2 * least + pin <= room + TOLERANCE
        return max(best, 2 if two else 1)
    share = CARCASE.share.value
    return max(best, fewest_in_a_carcase(room, pin, share, widest_tail(thickness)))
