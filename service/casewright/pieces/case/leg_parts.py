"""The parts of a piece on legs: legs, aprons, front rails, runners, kickers and side guides."""

from collections.abc import Iterator
from typing import Any

from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.case.leg_columns import column_parts, upright_depth
from casewright.pieces.case.leg_plan import LegPlan, runner_length
from casewright.pieces.case.leg_spaces import space_parts
from casewright.pieces.layout.openings import FaceRow, Space
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.rules import case_rules, leg_rules
from casewright.wood.waste import PartUse

CORNERS = ("FL", "FR", "BL", "BR")
"""The legs by their place: front or back, left or right."""


def leg_parts(plan: LegPlan) -> Iterator[Part]:
    """Legs, aprons and rails, then what the drawers run on.

    Args:
        plan: what the parts share

    Returns:
        The parts, show wood first.

    Source: common practice of leg-and-apron work.
    """
    yield from _legs(plan)
    yield from _aprons(plan)
    yield from _rails(plan)
    yield from _runners(plan)
    if plan.case.spec.drawers.running.kind == "runners":
        yield from _guides(plan)
    yield from column_parts(plan)
    yield from space_parts(plan, upright_depth(plan))


def _legs(plan: LegPlan) -> Iterator[Part]:
    case, thick = plan.case, plan.legs.leg
    body = case.spec.body
    length = case.ledger.take(
        "leg", case_rules.over_all, inner=case.face.body_height, one_end=plan.floor, other_end=0.0
    )
    foot: Words = "square"
    solid = 1.0
    if plan.legs.tapered:
        floor = plan.legs.at_the_floor
        foot = say("tapered below the aprons to {}, inside faces", floor)
        solid = case.ledger.take(
            "leg_share", leg_rules.tapered_share, leg=thick, foot=floor, below=plan.floor, length=length
        )
    for mark in CORNERS:
        head = "socket for the upper rail; apron mortise" if mark[0] == "F" else "apron mortises"
        yield new_part(
            code=case.code(f"L-{mark}"),
            line="L1",
            name="Leg, square, then tapered" if plan.legs.tapered else "Leg",
            **timber(case.spec.woods.case),
            thickness=thick,
            width=thick,
            length=length,
            face=FaceClass.SHOW,
            grain=Grain.UPRIGHT,
            use=PartUse.LEG,
            ends=(foot, head),
            solid=solid,
            box=Box(
                0.0 if mark[1] == "L" else body.width - thick,
                0.0 if mark[0] == "F" else body.depth - thick,
                0.0,
                thick,
                thick,
                length,
            ),
        )


def _aprons(plan: LegPlan) -> Iterator[Part]:
    case, legs, tenon = plan.case, plan.legs, plan.sizes.tenon
    body, start = case.spec.body, legs.leg - tenon
    shared: dict[str, Any] = {
        **timber(case.spec.woods.case),
        "thickness": legs.apron,
        "width": legs.apron_height,
        "face": FaceClass.SHOW,
        "use": PartUse.CASE,
    }
    into = say("leg tenon, {:fraction} long", tenon)
    deep = case.ledger.take(
        "side_apron_length", leg_rules.over_tenons, overall=body.depth, leg=legs.leg, tenon=tenon
    )
    for mark, x in (("L", legs.setback), ("R", body.width - plan.inside)):
        yield new_part(
            code=case.code(f"AP-{mark}"),
            line="A1",
            name="Side apron",
            length=deep,
            grain=Grain.BACK,
            ends=(into, into),
            box=Box(x, start, plan.floor, legs.apron, deep, legs.apron_height),
            **shared,
        )
    wide = case.ledger.take(
        "back_apron_length", leg_rules.over_tenons, overall=body.width, leg=legs.leg, tenon=tenon
    )
    yield new_part(
        code=case.code("AP-B"),
        line="A2",
        name="Back apron",
        length=wide,
        grain=Grain.ACROSS,
        ends=(into, into),
        box=Box(start, case.face.opening_depth, plan.floor, wide, legs.apron, legs.apron_height),
        **shared,
    )


def _rails(plan: LegPlan) -> Iterator[Part]:
    case, legs = plan.case, plan.legs
    top = plan.floor + legs.apron_height - legs.rail
    dovetail: Words = say("dovetail, {:fraction} long, into the top of the leg", plan.sizes.dovetail)
    tenon: Words = say("tenon, {:fraction} long", plan.sizes.rail_tenon)
    yield _rail(plan, "R1", "C-UF", "Upper front rail", top, plan.sizes.dovetail, dovetail)
    yield _rail(plan, "R2", "C-LF", "Lower front rail", plan.floor, plan.sizes.rail_tenon, tenon)
    for row in case.face.rows[:-1]:
        z = plan.floor + row.bottom - legs.rail
        yield _rail(plan, "R3", f"D{row.number}-RF", "Divider rail, front", z, plan.sizes.rail_tenon, tenon)


def _rail(plan: LegPlan, line: str, mark: str, name: str, z: Inches, reach: Inches, joint: Words) -> Part:
    case, legs = plan.case, plan.legs
    length = case.ledger.take(
        f"{mark}.length", leg_rules.over_tenons, overall=case.spec.body.width, leg=legs.leg, tenon=reach
    )
    return new_part(
        code=case.code(mark),
        line=line,
        name=name,
        **timber(case.spec.woods.case),
        thickness=legs.rail,
        width=plan.sizes.rail_width,
        length=length,
        face=FaceClass.EDGE,
        grain=Grain.ACROSS,
        use=PartUse.CASE,
        ends=(joint, joint),
        box=Box(legs.leg - reach, 0.0, z, length, plan.sizes.rail_width, legs.rail),
    )


def _runners(plan: LegPlan) -> Iterator[Part]:
    """A pair under each row; between two rows it keeps the lower drawer from tipping, too.

    Drawers on slides need none; the floor of an open space, or of what stands behind doors, lies on one.
    """
    face, on_frames = plan.case.face, plan.case.spec.drawers.on_frames
    for row in reversed(face.rows):
        if not on_frames and not any(isinstance(cell.opening, Space) for cell in row.cells):
            continue
        place = "C" if row is face.rows[-1] else f"D{row.number}"
        yield from _pair(plan, "W1", f"{place}-R", "Runner", plan.floor + row.bottom - plan.legs.rail)
    if on_frames:
        z = plan.floor + plan.legs.apron_height - plan.legs.rail
        yield from _pair(plan, "W2", "C-K", "Kicker", z)


def _pair(plan: LegPlan, line: str, mark: str, name: str, z: Inches) -> Iterator[Part]:
    case, legs = plan.case, plan.legs
    length = runner_length(plan)
    for side, x in (("L", plan.inside), ("R", case.spec.body.width - plan.inside - plan.sizes.runner_width)):
        yield new_part(
            code=case.code(f"{mark}{side}"),
            line=line,
            name=name,
            **timber(case.spec.woods.inside),
            thickness=legs.rail,
            width=plan.sizes.runner_width,
            length=length,
            face=FaceClass.INSIDE,
            grain=Grain.BACK,
            use=PartUse.INSIDE,
            ends=(
                say("tongue, {:fraction} long, in the rail; notched around the leg", legs.tongue),
                "notched around the leg; butt, screwed to the back apron",
            ),
            box=Box(x, plan.sizes.rail_width - legs.tongue, z, plan.sizes.runner_width, length, legs.rail),
        )


def _guides(plan: LegPlan) -> Iterator[Part]:
    """Cut with the runners, as long as they are; each is then trimmed to go between its two legs."""
    case, legs = plan.case, plan.legs
    if plan.sizes.guide <= 0:
        return
    between = case.ledger.take(
        "guide_between", case_rules.between, whole=case.spec.body.depth, one_end=legs.leg, other_end=legs.leg
    )
    fitted = say("trimmed to {:fraction} between the legs", between)
    for row in case.face.rows:
        for side, x in _guided(plan, row):
            yield new_part(
                code=case.code(f"R{row.number}-G{side}"),
                line="W3",
                name="Side guide",
                **timber(case.spec.woods.inside),
                thickness=plan.sizes.guide,
                width=legs.guide_height,
                length=runner_length(plan),
                face=FaceClass.INSIDE,
                grain=Grain.BACK,
                use=PartUse.INSIDE,
                ends=(fitted, fitted),
                box=Box(
                    x,
                    legs.leg,
                    plan.floor + row.bottom,
                    plan.sizes.guide,
                    between,
                    legs.guide_height,
                ),
            )


def _guided(plan: LegPlan, row: FaceRow) -> Iterator[tuple[str, Inches]]:
    """The sides at which a drawer runs beside an apron, and where its guide lies [in]."""
    if row.cells[0].is_drawer:
        yield "L", plan.inside
    if row.cells[-1].is_drawer:
        yield "R", plan.case.spec.body.width - plan.legs.leg
