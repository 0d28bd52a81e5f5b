"""The web frames that carry the drawers, and the kickers over the top row."""

from collections.abc import Iterator

from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.case.dust import dust_depth, dust_parts
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import FaceRow
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, timber
from casewright.pieces.rules import case_rules as rules
from casewright.wood.waste import PartUse


def frame_parts(case: CasePlan) -> Iterator[Part]:
    """Rear rails, runners and kickers: a side pair under each row but the lowest, more under uprights.

    A front rail alone has no frame behind it, nor a board over the full depth; and a plywood top is a kicker
    over its whole width.

    Args:
        case: what the case is worked out from

    Returns:
        The parts.

    Source: common practice; the rear joint is left dry so that a solid side can move past it.
    """
    thick = case.spec.case
    if thick.has_webs:
        yield from _webs(case)
    if thick.divider_kind != "rail" and not thick.is_ply:
        yield from _kickers(case)


def _webs(case: CasePlan) -> Iterator[Part]:
    """The frame of each divider behind its front rail."""
    thick, frames, face = case.spec.case, case.spec.frames, case.face
    take = case.ledger.take
    back_y = face.opening_depth - frames.back_rail_width
    length = take("divider_length", rules.housed_length, opening=face.clear_width, housing=thick.housing)
    for row in face.rows[:-1]:
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
    runner = take(
        "runner_length",
        rules.runner_length,
        **_shared(case),
        back_rail=frames.back_rail_width,
        slack=case.slack,
    )
    deep = dust_depth(case) if thick.divider_kind == "dust frame" else None
    for row, below in zip(face.rows[:-1], face.rows[1:], strict=True):
        z = face.base_height + row.bottom - thick.divider
        members = tuple(_frame_members(case, row, below, z, runner))
        yield from members
        if deep:
            yield from dust_parts(case, row, members, deep)


def _shared(case: CasePlan) -> dict[str, Inches]:
    """What runners and kickers have in common."""
    thick, frames = case.spec.case, case.spec.frames
    return {"depth": case.face.opening_depth, "front_rail": thick.rail_width, "tenon": frames.tenon}


def _kickers(case: CasePlan) -> Iterator[Part]:
    """The kickers over the top row, between the rails under the top."""
    thick, frames, face = case.spec.case, case.spec.frames, case.face
    kicker = case.ledger.take(
        "kicker_length",
        rules.runner_length,
        **_shared(case),
        back_rail=thick.rail_width,
        slack=case.slack,
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
