"""The back of a case: boards in laps or tongues, a frame with panels, or plywood."""

from collections.abc import Iterator
from typing import Any

from casewright.joinery.families.edge.sizes import board_width, boards_over
from casewright.measure.units import Inches
from casewright.pieces.asked.shell_spec import Back
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.pieces.panels.frame import FrameAsked, PanelFrame, plan_frame
from casewright.pieces.panels.parts import FramePlace, frame_parts
from casewright.pieces.rules import case_rules as rules
from casewright.wood.movement import Cut
from casewright.wood.sheets import Sheet
from casewright.wood.waste import PartUse

BOARD = "P1"
"""The line of the back boards."""


def back_frame(case: CasePlan) -> PanelFrame | None:
    """The frame of a panelled back, in rabbets in the sides.

    Args:
        case: what the case is worked out from

    Returns:
        The frame; None for another back.

    Source: geometry of the case; the frame by its own rules.
    """
    back = case.spec.back
    if back.kind != "panelled":
        return None
    timber_of = case.spec.woods.of("back")
    asked = FrameAsked(
        width=_over_rabbets(case, back),
        height=case.back_height,
        thickness=back.thickness,
        how=back.panelling,
        timber=timber_of,
        panel=timber_of,
    )
    return plan_frame(asked, case.climate, case.ledger, "back")


def back_parts(case: CasePlan, frame: PanelFrame | None) -> Iterator[Part]:
    """The parts of the back.

    Args:
        case: what the case is worked out from
        frame: the frame of a panelled back

    Returns:
        The parts, from the left; none where a wall stands behind.

    Source: common practice.
    """
    back = case.spec.back
    if back.is_boarded:
        yield from _boards(case, back)
    elif frame:
        place = FramePlace(
            code=case.code("K"),
            line="PF",
            name="Back",
            x=case.spec.frame.side - back.rabbet,
            y=case.face.opening_depth,
            z=case.face.base_height,
            is_side=False,
            shows_first=False,
            face=FaceClass.INSIDE,
            use=PartUse.INSIDE,
        )
        yield from frame_parts(frame, place)
    elif back.sheet:
        yield _ply(case, back, back.sheet)


def _over_rabbets(case: CasePlan, back: Back) -> Inches:
    return case.ledger.take(
        "back_width", rules.housed_length, opening=case.face.clear_width, housing=back.rabbet
    )


def _boards(case: CasePlan, back: Back) -> Iterator[Part]:
    take, whole, long = case.ledger.take, _over_rabbets(case, back), case.back_height
    joined: dict[str, float] = {"overlap": back.lap, "gap": back.gap}
    count = back.boards or take("back_boards", boards_over, width=whole, widest=back.widest, **joined)
    width = take("back_board_width", board_width, width=whole, boards=count, **joined)
    left = case.spec.frame.side - back.rabbet
    chosen = case.spec.woods.of("back")
    for number in range(count):
        yield new_part(
            code=case.code(f"K-{number + 1}"),
            line=BOARD,
            name="Shiplap back board" if back.kind == "shiplap" else "Tongued back board",
            wood=chosen.wood,
            cut=chosen.cut,
            thickness=back.thickness,
            width=width,
            length=long,
            face=FaceClass.INSIDE,
            grain=Grain.UPRIGHT,
            use=PartUse.INSIDE,
            ends=("square", "square"),
            box=Box(
                left + number * (width - back.lap + back.gap),
                case.face.opening_depth,
                case.face.base_height,
                width,
                back.thickness,
                long,
            ),
        )


def _ply(case: CasePlan, back: Back, board: Sheet) -> Part:
    """One sheet: over rabbets in the sides, or in grooves all round."""
    take, face, frame = case.ledger.take, case.face, case.spec.frame
    basis = f"as {board} measures; measure your own sheet"
    thickness = case.ledger.given("back_thickness", board.thickness, basis, Inches)
    foot = face.base_height
    if back.kind == "grooved-ply":
        reach, how = back.groove, "in a groove"
        clear = take(
            "back_clear_height",
            rules.between,
            whole=face.body_height,
            one_end=frame.upper,
            other_end=frame.lower,
        )
        height = take("back_height", rules.housed_length, opening=clear, housing=reach)
        foot += frame.lower - reach
    else:
        reach, how, height = back.rabbet, "over the rail and the bottom", case.back_height
    width = take("back_width", rules.housed_length, opening=face.clear_width, housing=reach)
    material: dict[str, Any] = {"wood": str(board), "cut": Cut.FLAT, "sheet": True}
    return new_part(
        code=case.code("K"),
        line="P2",
        name="Plywood back",
        **material,
        thickness=thickness,
        width=width,
        length=height,
        face=FaceClass.INSIDE,
        grain=Grain.UPRIGHT,
        use=PartUse.INSIDE,
        ends=(how, how),
        box=Box(frame.side - reach, face.opening_depth, foot, width, thickness, height),
    )
