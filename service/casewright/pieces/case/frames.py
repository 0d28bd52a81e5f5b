"""The web frames that carry the drawers, and the kickers over the top row."""

from collections.abc import Iterator
from itertools import pairwise

from casewright.measure.saying import say
from casewright.pieces.asked.running_spec import FullRunners
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import FaceRow
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, timber
from casewright.pieces.rules import case_rules as rules
from casewright.wood.waste import PartUse


def frame_parts(case: CasePlan) -> Iterator[Part]:
    """Rear rails, runners and kickers: a side pair under each row but the lowest, more under uprights.

    Args:
        case: what the case is worked out from

    Returns:
        The parts; none where the drawers hang on battens or slides.

    Source: common practice; the rear joint is left dry so that a solid side can move past it.
    """
    if not case.spec.drawers.on_frames:
        return
    is_full = isinstance(case.spec.drawers.running, FullRunners)
    thick, frames, face = case.spec.case, case.spec.frames, case.face
    take = case.ledger.take
    back_y = face.opening_depth - frames.back_rail_width
    length = take("divider_length", rules.housed_length, opening=face.clear_width, housing=thick.housing)
    for row, below in pairwise(face.rows):
        if is_full and not (row.uprights or below.uprights):
            continue
        yield Part(
            code=case.code(f"D{row.number}-RB"),
            line="W1",
            name="Frame back rail",
            **timber(case.spec.woods.inside),
            thickness=thick.divider,
            width=frames.back_rail_width,
            length=length,
            face=FaceClass.INSIDE,
            grain=Grain.ACROSS,
            use=PartUse.INSIDE,
            ends=(say("{}, {:fraction} deep", thick.divider_end, thick.housing),) * 2,
            box=case.divider_box(row, back_y, length, frames.back_rail_width),
        )
    shared = {"depth": face.opening_depth, "front_rail": thick.rail_width, "tenon": frames.tenon}
    runner = take(
        "runner_length", rules.runner_length, **shared, back_rail=frames.back_rail_width, slack=case.slack
    )
    for row, below in pairwise(face.rows):
        z = face.base_height + row.bottom - thick.divider
        if is_full:
            yield from _full_runners(case, row, z)
        yield from _frame_members(case, row, below, z, runner)
    kicker = take(
        "kicker_length", rules.runner_length, **shared, back_rail=thick.rail_width, slack=case.slack
    )
    z = face.base_height + face.body_height - thick.sub_top_rail
    width = frames.runner_width
    for mark, x in _side_places(case, width):
        yield _member(case, "W4", f"C-K{mark}", "Kicker", x, z, kicker, width)
    for number, x in enumerate(_centres(case, face.rows[0], width), start=1):
        yield _member(case, "W4", f"C-KC{number}", "Kicker", x, z, kicker, width)


def _frame_members(case: CasePlan, row: FaceRow, below: FaceRow, z: float, length: float) -> Iterator[Part]:
    """Runners for the row above a divider, and kickers for the row below where no runner does for one."""
    frames, place = case.spec.frames, f"D{row.number}"
    if not isinstance(case.spec.drawers.running, FullRunners):
        for mark, x in _side_places(case, frames.runner_width):
            yield _member(case, "W2", f"{place}-R{mark}", "Runner", x, z, length, frames.runner_width)
    for number, x in enumerate(_centres(case, row, frames.centre_runner_width), start=1):
        yield _member(
            case, "W3", f"{place}-RC{number}", "Centre runner", x, z, length, frames.centre_runner_width
        )
    bare = [upright for upright in below.uprights if not _is_near(upright, row.uprights, case)]
    offset = (case.spec.case.upright - frames.runner_width) / 2
    for number, upright in enumerate(bare, start=1):
        yield _member(
            case,
            "W5",
            f"{place}-KC{number}",
            "Centre kicker",
            upright + offset,
            z,
            length,
            frames.runner_width,
        )


def _full_runners(case: CasePlan, row: FaceRow, z: float) -> Iterator[Part]:
    """Runners the whole depth of the opening, screwed to the sides and notched around the rail in front."""
    frames, thick, depth = case.spec.frames, case.spec.case, case.face.opening_depth
    for mark, x in _side_places(case, frames.runner_width):
        yield Part(
            code=case.code(f"D{row.number}-R{mark}"),
            line="W6",
            name="Runner, full length",
            **timber(case.spec.woods.inside),
            thickness=thick.divider,
            width=frames.runner_width,
            length=depth,
            face=FaceClass.INSIDE,
            grain=Grain.BACK,
            use=PartUse.INSIDE,
            ends=("notched around the rail, screwed to the side", "slotted: the side moves past it"),
            box=Box(x, 0.0, z, frames.runner_width, depth, thick.divider),
        )


def _is_near(upright: float, others: tuple[float, ...], case: CasePlan) -> bool:
    """Does a centre runner above cover the gap that an upright below leaves without a kicker?"""
    reach = (case.spec.frames.centre_runner_width - case.spec.case.upright) / 2
    return any(abs(upright - other) < reach for other in others)


def _side_places(case: CasePlan, width: float) -> tuple[tuple[str, float], ...]:
    side = case.spec.case.side
    return (("L", side), ("R", case.spec.body.width - side - width))


def _centres(case: CasePlan, row: FaceRow, width: float) -> Iterator[float]:
    for upright in row.uprights:
        yield upright + (case.spec.case.upright - width) / 2


def _member(
    case: CasePlan, line: str, mark: str, name: str, x: float, z: float, length: float, width: float
) -> Part:
    thick, tenon = case.spec.case, case.spec.frames.tenon
    thickness = thick.sub_top_rail if line == "W4" else thick.divider
    return Part(
        code=case.code(mark),
        line=line,
        name=name,
        **timber(case.spec.woods.inside),
        thickness=thickness,
        width=width,
        length=length,
        face=FaceClass.INSIDE,
        grain=Grain.BACK,
        use=PartUse.INSIDE,
        ends=(
            say("frame tenon, {:fraction} long", tenon),
            say("frame tenon, {:fraction} long, left dry with a gap of {:fraction}", tenon, case.slack),
        ),
        box=Box(x, thick.rail_width - tenon, z, width, length, thickness),
    )
