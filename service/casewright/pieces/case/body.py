"""The body of a solid carcase: sides, rails, uprights and bottom."""

from collections.abc import Iterator

from casewright.joinery.families.carcase.layout import dovetailed_length
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Timber
from casewright.pieces.case.frames import divider_rails
from casewright.pieces.case.partitions import upright_parts
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import Wall
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
    yield from divider_rails(case)
    yield from upright_parts(case)
    yield from _bottoms(case, length, joint)
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


def _bottoms(case: CasePlan, length: Inches, joint: Words) -> Iterator[Part]:
    """The case bottom: one over the whole width, or one for each pedestal beside a knee space."""
    thick, pedestals = case.spec.case, case.face.pedestals
    if len(pedestals) == 1 and pedestals[0].walls == (Wall.SIDE, Wall.SIDE):
        yield from _bottom(case, "C-B", thick.lap, length, (joint, joint))
        return
    for number, pedestal in enumerate(pedestals, start=1):
        mark, walls = f"C-B{number}", pedestal.walls
        thicknesses = [thick.side if wall is Wall.SIDE else thick.upright for wall in walls]
        reach = [_reach(case, wall) for wall in walls]
        start = pedestal.left + thicknesses[0] - reach[0]
        clear = pedestal.right - pedestal.left - sum(thicknesses)
        long = case.ledger.take(
            f"{mark}.length", rules.housed_between, opening=clear, left=reach[0], right=reach[1]
        )
        into = say("housing, {:fraction} deep, in the partition", case.housing_in(Wall.PARTITION))
        left, right = (joint if wall is Wall.SIDE else into for wall in walls)
        yield from _bottom(case, mark, start, long, (left, right))


def _reach(case: CasePlan, wall: Wall) -> Inches:
    """How far a case bottom goes into what stands beside it: its tails into a side, or a housing [in]."""
    thick = case.spec.case
    return thick.side - thick.lap if wall is Wall.SIDE else case.housing_in(wall)


def _bottom(
    case: CasePlan, mark: str, start: Inches, length: Inches, ends: tuple[Words, Words]
) -> Iterator[Part]:
    thick, face = case.spec.case, case.face
    depth = face.opening_depth
    if thick.lipping:
        yield Part(
            code=case.code(f"{mark}L"),
            line="C5",
            name="Case bottom lipping",
            **timber(case.spec.woods.case),
            thickness=thick.bottom,
            width=thick.lipping,
            length=length,
            face=FaceClass.EDGE,
            grain=Grain.ACROSS,
            use=PartUse.CASE,
            ends=ends,
            box=Box(start, 0.0, face.base_height, length, thick.lipping, thick.bottom),
        )
        depth = case.ledger.take(
            "bottom_width", rules.between, whole=depth, one_end=thick.lipping, other_end=0.0
        )
    yield Part(
        code=case.code(mark),
        line="C6",
        name="Case bottom panel" if thick.lipping else "Case bottom",
        **timber(case.spec.woods.inside if thick.lipping else case.spec.woods.case),
        thickness=thick.bottom,
        width=depth,
        length=length,
        face=FaceClass.INSIDE if thick.lipping else FaceClass.EDGE,
        grain=Grain.ACROSS,
        use=PartUse.INSIDE if thick.lipping else PartUse.CASE,
        ends=ends,
        box=Box(start, thick.lipping, face.base_height, length, depth, thick.bottom),
    )
