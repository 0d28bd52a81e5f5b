"""The dovetailed corners of the case, counted for the hours: rails and bottom into the sides."""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.choose import rank
from casewright.measure.units import Inches
from casewright.pieces.openings import Face
from casewright.pieces.spec import UnitSpec

HALF_PIN = 3 / 8
PIN = 1 / 4
"""Pins of a carcase are wider than a drawer's (common practice) [in]."""
LEAST_TAILS = 2


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
    width: float
    tails: int
    corners: int


def corner_tails(width: Inches, thickness: Inches, tail_length: Inches, slope: float, kerf: Inches) -> int:
    """How many tails a corner of the case gets, by the ranking that drawers use.

    Args:
        width: width of the joint [in]
        thickness: thickness of the board with the tails [in]
        tail_length: length of the tails [in]
        slope: how far along for one across, 8 for 1:8
        kerf: how wide the dovetail saw cuts [in]

    Returns:
        The number of tails, two at least.

    Source: common practice: tails about three thicknesses wide, two inches at most.
    """
    choices = rank(width, thickness, tail_length, HALF_PIN, PIN, slope, kerf)
    return max([choice.count for choice in choices[:1]], default=LEAST_TAILS)


def case_corners(spec: UnitSpec, face: Face, rack: Rack) -> tuple[CaseCorner, ...]:
    """The dovetailed corners of one case.

    Args:
        spec: what the maker chose
        face: the depth of the case
        rack: the dovetail saw

    Returns:
        The corners of the rails, and those of the bottom.

    Source: common practice: rails and bottom are half-blind dovetailed into the sides.
    """
    case = spec.case
    length = case.side - case.lap

    def corners(name: str, width: float, thickness: float, count: int) -> CaseCorner:
        tails = corner_tails(
            width=width,
            thickness=thickness,
            tail_length=length,
            slope=case.carcase_slope,
            kerf=rack.kerf,
        )
        return CaseCorner(name=name, width=width, tails=max(tails, LEAST_TAILS), corners=count)

    return (
        corners("sub-top rails into sides", case.rail_width, case.sub_top_rail, 4),
        corners("case bottom into sides", face.opening_depth, case.bottom, 2),
    )
