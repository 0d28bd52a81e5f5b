"""The dovetailed corners of the case, counted for the hours: rails and bottom into the sides."""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.choose import rank
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Face

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


def case_corners(spec: UnitSpec, face: Face, rack: Rack) -> tuple[CaseCorner, ...]:
    """The dovetailed corners of one case, tails counted by the ranking that drawers use.

    Args:
        spec: what the maker chose
        face: the depth of the case
        rack: the dovetail saw

    Returns:
        The corners of the rails, and those of the bottom; two tails each at least.

    Source: common practice: tails about three thicknesses wide, two inches at most.
    """
    case = spec.case
    length = case.side - case.lap

    def corners(name: str, width: float, thickness: float, count: int) -> CaseCorner:
        choices = rank(
            width, thickness, length, case.corner_half_pin, case.corner_pin, case.carcase_slope, rack.kerf
        )
        tails = max(choices[0].count if choices else 0, LEAST_TAILS)
        return CaseCorner(name=name, width=width, tails=tails, corners=count)

    return (
        corners("sub-top rails into sides", case.rail_width, case.sub_top_rail, 4),
        corners("case bottom into sides", face.opening_depth, case.bottom, 2),
    )
