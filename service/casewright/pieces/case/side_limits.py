"""What sides, corners and dividers of a case cannot be."""

from collections.abc import Iterator

from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Face
from casewright.pieces.panels.frame import LEAST_LEFT, frame_limits


def side_limits(spec: UnitSpec, face: Face) -> Iterator[tuple[str, Inches, Inches, str]]:
    """What the fields of sides, corners and dividers cannot be more than.

    Args:
        spec: what the maker chose
        face: height of the body and depth of the openings

    Yields:
        The field, its value, the most that it may be, and why.

    Source: geometry of the case.
    """
    case = spec.case
    if case.is_framed:
        sizes = (spec.body.depth, face.body_height, case.side)
        for field, value, most, why in frame_limits("case.panelling", case.panelling, *sizes):
            yield field, value, most, str(why)
    if case.corner_tenon is not None and case.joined == "tenon":
        yield "case.corner_tenon", case.corner_tenon, case.side - LEAST_LEFT, "the side must go on beyond it"
    if case.is_ply:
        yield "case.ply.lipping", case.ply.lipping, spec.body.depth / 4, "the plywood must go on behind it"
    if case.divider_kind == "dust-frame":
        least = min(spec.frames.runner_width, case.rail_width, spec.frames.back_rail_width) / 2
        yield "case.dust.groove", case.dust.groove, least - LEAST_LEFT, "the runners must go on beside it"
        thick, within = case.dust.bought.thickness, case.divider - 2 * LEAST_LEFT
        yield "case.dust.nominal", thick, within, "its grooves must leave wood above and below"
