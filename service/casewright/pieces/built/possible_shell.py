"""What top, base and back of no case can be."""

from collections.abc import Iterator

from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words
from casewright.measure.units import Inches
from casewright.pieces.asked.case_spec import DOVETAILS
from casewright.pieces.asked.running_spec import OnRunners
from casewright.pieces.asked.shell_spec import FLUSH, BracketFeet, Plinth, ToeBase, TurnedFeet
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.row_heights import row_words
from casewright.pieces.panels.frame import frame_limits

UNDIVIDED = "case.divider_kind"
LEAST_LEFT = 1 / 16
"""Wood or room that must be left for a part to be one at all [in]."""


def base_limits(spec: UnitSpec, face: Face) -> Iterator[tuple[str, Inches, Inches, str]]:
    """The sizes of a base that its case sets a limit to.

    Args:
        spec: what the maker chose
        face: what of the case stands on the floor

    Returns:
        Field, value, the most it may be, and why.

    Source: geometry of the base.
    """
    base, body = spec.stands_on, spec.body
    across = min(body.depth, *(each.right - each.left for each in face.pedestals)) / 2 - LEAST_LEFT
    if isinstance(base, Plinth):
        yield "base.setback", base.setback, across / 2, "the case would stand on too little"
        yield "base.thickness", base.thickness, across - base.setback, "two boards must fit front to back"
    elif isinstance(base, BracketFeet):
        room = (body.depth + base.forward - base.setback - base.rear) / 2 - LEAST_LEFT
        yield "base.width", base.width, min(across, room), "two feet must fit side by side"
        yield "base.thickness", base.thickness, base.width / 2, "a foot is wider than its boards are thick"
    elif isinstance(base, TurnedFeet):
        room = (body.depth + base.forward - base.setback - base.rear) / 2 - LEAST_LEFT
        yield "base.diameter", base.diameter, min(across, room), "two feet must fit side by side"
    elif isinstance(base, ToeBase):
        most = body.depth / 2 - base.facing
        yield "base.toe_space", base.toe_space, most, "the box must carry the case"
        yield "base.thickness", base.wall, across / 2, "front and rear must fit in the base"


def back_limits(spec: UnitSpec, height: Inches) -> Iterator[tuple[str, Inches, Inches, Words]]:
    """The sizes of a back that its case sets a limit to.

    Args:
        spec: what the maker chose
        height: height of the case body [in]

    Returns:
        Field, value, the most it may be, and why.

    Source: geometry of the back.
    """
    back, frame = spec.back, spec.frame
    if back.kind == "grooved-ply":
        board = min(frame.side, frame.upper, frame.lower)
        yield "back.groove", back.groove, board - back.play - LEAST_LEFT, "the case must go on behind it"
        yield "back.behind", back.behind, spec.body.depth / 4, "the drawers need the depth"
        return
    if back.kind != "none":
        yield "back.rabbet", back.rabbet, frame.side - LEAST_LEFT, "the side must go on outside it"
    if back.is_boarded:
        yield "back.lap", back.lap, back.widest / 2, "a board is no wider"
        yield "back.gap", back.gap, back.lap - LEAST_LEFT, "the laps must still cover it"
        yield (
            "back.tongue",
            back.tongue or 0.0,
            back.thickness - LEAST_LEFT,
            "there is wood on both its sides",
        )
    elif back.kind == "panelled":
        width = spec.body.width - 2 * (frame.side - back.rabbet)
        yield from frame_limits("back.panelling", back.panelling, width, height, back.thickness)


def refuse_top(spec: UnitSpec) -> None:
    """Refuses a top that the case has nothing to hold by, and a cleat on legs.

    Args:
        spec: what the maker chose

    Raises:
        CannotBuild: with the field and what would do

    Source: common practice of case making.
    """
    fixing, case = spec.top.fixing, spec.case
    if spec.legs and fixing in FLUSH:
        raise CannotBuild(
            "top.fixing: on legs the top lies on the aprons; choose buttons, slots or clips, or a carcase"
        )
    if spec.legs and spec.cleat:
        raise CannotBuild(
            "cleat: a piece on legs stands on the floor; leave the cleat out, or choose a carcase"
        )
    if spec.top.is_dovetailed and (case.joined not in DOVETAILS or case.is_framed):
        corners = case.joined.replace("-", " ")
        raise CannotBuild(
            f"top.fixing: the corners of the case are {corners}, which hold no top between the sides; "
            "choose half-blind or through corners of solid sides, or another way to hold the top"
        )


def wall_limits(spec: UnitSpec, height: Inches) -> Iterator[tuple[str, Inches, Inches, Words]]:
    """The sizes of a cleat that its case sets a limit to.

    Args:
        spec: what the maker chose
        height: height of the case body [in]

    Returns:
        Field, value, the most it may be, and why.

    Source: geometry of the case.
    """
    if spec.cleat:
        yield "cleat.height", spec.cleat.height, height / 2, "two of them hang behind the case"
        yield (
            "cleat.thickness",
            spec.cleat.thickness,
            spec.cleat.height - LEAST_LEFT,
            "its bevel rises over it",
        )


def refuse_crate(spec: UnitSpec, face: Face) -> None:
    """Refuses a crate whose strips would not run through, or stand between no boards.

    Args:
        spec: what the maker chose
        face: the rows and their columns

    Raises:
        CannotBuild: with the field and what would do

    Source: geometry of crossing strips.
    """
    if spec.crate is None:
        return
    if spec.case.sides == "solid" and not spec.top.is_dovetailed:
        raise CannotBuild(
            "top.fixing: the strips of a crate stand between the boards of its case; choose dovetails, or a "
            "carcase"
        )
    if not isinstance(spec.drawers.running, OnRunners):
        raise CannotBuild("drawers.running: the drawers of a crate run on its strips; choose runners")
    first, *others = face.rows
    if len(face.stacks) > 1 or face.spaces:
        raise CannotBuild("rows: the strips of a crate run through; give rows of drawers alone, or a carcase")
    for row in others:
        apart = [abs(one - two) > TOLERANCE for one, two in zip(row.uprights, first.uprights, strict=False)]
        if any(apart) or len(row.uprights) != len(first.uprights):
            raise CannotBuild(
                f"rows[{row.number}].columns: the strips of a crate run through; give every row the same "
                f"columns as row 1, which has {len(first.openings)}"
            )


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
