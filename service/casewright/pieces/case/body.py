"""The body of a solid carcase: sides, rails, uprights and bottom."""

from collections.abc import Iterator

from casewright.joinery.families.carcase.layout import dovetailed_length
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Timber
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, timber
from casewright.pieces.rules import case_rules as rules
from casewright.wood.waste import PartUse


def body_parts(case: CasePlan) -> Iterator[Part]:
    """Sides, sub-top rails, divider rails, uprights and bottom of a case.

    Args:
        case: what the case is worked out from

    Returns:
        The parts, show wood first.

    Source: common practice of solid-wood case making.
    """
    spec, face = case.spec, case.face
    body, woods, thick = spec.body, spec.woods, spec.case
    floor, joint = face.base_height, say("carcase dovetail, lap {:fraction}", thick.lap)
    for mark, x in (("SL", 0.0), ("SR", body.width - thick.side)):
        yield Part(
            code=case.code(f"C-{mark}"),
            line="C1",
            name="Case side",
            **timber(woods.case),
            thickness=thick.side,
            width=body.depth,
            length=face.body_height,
            face=FaceClass.SHOW,
            grain=Grain.UPRIGHT,
            use=PartUse.CASE,
            ends=("sockets for the case bottom", "sockets for the sub-top rails"),
            box=Box(x, 0.0, floor, thick.side, body.depth, face.body_height),
        )
    length = case.ledger.take("rail_length", dovetailed_length, width=body.width, lap=thick.lap)
    top_of_rail = floor + face.body_height - thick.sub_top_rail
    yield _rail(
        case, "C2", "C-RF", "Sub-top rail, front", woods.case, length, 0.0, top_of_rail, FaceClass.EDGE
    )
    yield from _divider_rails(case)
    yield from _uprights(case)
    yield from _bottom(case, length, joint)
    yield _rail(
        case,
        "C7",
        "C-RB",
        "Sub-top rail, back",
        woods.inside,
        length,
        face.opening_depth - thick.rail_width,
        top_of_rail,
        FaceClass.INSIDE,
    )


def _rail(
    case: CasePlan,
    line: str,
    mark: str,
    name: str,
    wood: Timber,
    length: Inches,
    y: Inches,
    z: Inches,
    seen: FaceClass,
) -> Part:
    thick = case.spec.case
    return Part(
        code=case.code(mark),
        line=line,
        name=name,
        **timber(wood),
        thickness=thick.sub_top_rail,
        width=thick.rail_width,
        length=length,
        face=seen,
        grain=Grain.ACROSS,
        use=PartUse.CASE if seen is FaceClass.EDGE else PartUse.INSIDE,
        ends=(say("carcase dovetail, lap {:fraction}", thick.lap),) * 2,
        box=Box(thick.lap, y, z, length, thick.rail_width, thick.sub_top_rail),
    )


def _divider_rails(case: CasePlan) -> Iterator[Part]:
    thick = case.spec.case
    length = case.ledger.take(
        "divider_length", rules.housed_length, opening=case.face.clear_width, housing=thick.housing
    )
    for row in case.face.rows[:-1]:
        yield Part(
            code=case.code(f"D{row.number}-RF"),
            line="C3",
            name="Divider rail, front",
            **timber(case.spec.woods.case),
            thickness=thick.divider,
            width=thick.rail_width,
            length=length,
            face=FaceClass.EDGE,
            grain=Grain.ACROSS,
            use=PartUse.CASE,
            ends=(say("{}, {:fraction} deep", thick.divider_end, thick.housing),) * 2,
            box=case.divider_box(row, 0.0, length, thick.rail_width),
        )


def _uprights(case: CasePlan) -> Iterator[Part]:
    thick = case.spec.case
    for row in case.face.rows:
        if not row.uprights:
            continue
        deep = case.upright_housing(row)
        length = case.ledger.take(
            f"R{row.number}.upright_length", rules.housed_length, opening=row.height, housing=deep
        )
        z = case.face.base_height + row.bottom - deep
        for number, x in enumerate(row.uprights, start=1):
            yield Part(
                code=case.code(f"R{row.number}-U{number}"),
                line="C4",
                name="Upright between drawers",
                **timber(case.spec.woods.case),
                thickness=thick.upright,
                width=thick.rail_width,
                length=length,
                face=FaceClass.EDGE,
                grain=Grain.UPRIGHT,
                use=PartUse.CASE,
                ends=(say("housing, {:fraction} deep", deep),) * 2,
                box=Box(x, 0.0, z, thick.upright, thick.rail_width, length),
            )


def _bottom(case: CasePlan, length: float, joint: Words) -> Iterator[Part]:
    thick, face = case.spec.case, case.face
    depth = face.opening_depth
    if thick.lipping:
        yield Part(
            code=case.code("C-BL"),
            line="C5",
            name="Case bottom lipping",
            **timber(case.spec.woods.case),
            thickness=thick.bottom,
            width=thick.lipping,
            length=length,
            face=FaceClass.EDGE,
            grain=Grain.ACROSS,
            use=PartUse.CASE,
            ends=(joint, joint),
            box=Box(thick.lap, 0.0, face.base_height, length, thick.lipping, thick.bottom),
        )
        depth = case.ledger.take(
            "bottom_width", rules.between, whole=depth, one_end=thick.lipping, other_end=0.0
        )
    yield Part(
        code=case.code("C-B"),
        line="C6",
        name="Case bottom panel" if thick.lipping else "Case bottom",
        **timber(case.spec.woods.inside if thick.lipping else case.spec.woods.case),
        thickness=thick.bottom,
        width=depth,
        length=length,
        face=FaceClass.INSIDE if thick.lipping else FaceClass.EDGE,
        grain=Grain.ACROSS,
        use=PartUse.INSIDE if thick.lipping else PartUse.CASE,
        ends=(joint, joint),
        box=Box(thick.lap, thick.lipping, face.base_height, length, depth, thick.bottom),
    )
