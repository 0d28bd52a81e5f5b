"""What sides, corners and dividers of a case cannot be."""

from collections.abc import Iterator

from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.row_heights import row_words
from casewright.pieces.panels.frame import LEAST_LEFT, frame_limits

UNDIVIDED = "case.divider_kind"


def refuse_undivided(spec: UnitSpec, face: Face) -> None:
    """Refuses a case with nothing between its rows that needs something there.

    Args:
        spec: what the maker chose
        face: its stacks

    Raises:
        CannotBuild: drawers stand on runners, or a row of a stack has columns, doors or nothing in it

    Source: geometry of the case.
    """
    if spec.legs or spec.crate or spec.case.divider_kind != "none":
        return
    stacks = [stack for stack in face.stacks if len(stack.rows) > 1]
    if stacks and spec.on_frames:
        raise CannotBuild(
            f"{UNDIVIDED}: with nothing between the rows these drawers have nothing to run on; "
            "hang them on slides or at their sides, or choose web frames"
        )
    for row in (row for stack in stacks for row in stack.rows):
        if len(row.cells) > 1 or any(not cell.is_drawer for cell in row.cells):
            raise CannotBuild(
                f"{UNDIVIDED}: {row_words(row.code)} holds more, or other, than one drawer, and needs a "
                "divider; choose rails, or give each column rows of its own"
            )


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
