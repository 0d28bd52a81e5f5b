"""The body of a carcase: sides, rails, dividers, uprights and partitions, bottom."""

from collections.abc import Iterator

from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Timber
from casewright.pieces.case.boards import bottom_parts, ply_top_parts
from casewright.pieces.case.crate import strip_parts
from casewright.pieces.case.dividers import divider_parts
from casewright.pieces.case.ends import rail_ends
from casewright.pieces.case.partitions import upright_parts
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.case.sides import side_parts
from casewright.pieces.case.tops import between_sides
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.wood.waste import PartUse


def body_parts(case: CasePlan) -> Iterator[Part]:
    """Sides, rails or top, dividers, uprights and bottom of a case.

    Args:
        case: what the case is worked out from

    Returns:
        The parts, show wood first.

    Source: common practice of case making.
    """
    woods, face, thick = case.spec.woods, case.face, case.spec.case
    yield from side_parts(case)
    top_of_rail = face.base_height + face.body_height - thick.sub_top_rail
    if thick.is_ply:
        yield from ply_top_parts(case)
    elif case.spec.has_case_top:
        yield between_sides(case)
    else:
        yield _rail(case, "C2", "C-RF", "Sub-top rail, front", woods.case, 0.0, top_of_rail)
    if case.spec.crate:
        yield from strip_parts(case, case.spec.crate)
    else:
        yield from divider_parts(case)
        yield from upright_parts(case)
    yield from bottom_parts(case)
    if not case.spec.has_case_top:
        rear = case.board_depth - thick.rail_width
        yield _rail(case, "C7", "C-RB", "Sub-top rail, back", woods.inside, rear, top_of_rail)


def _rail(case: CasePlan, line: str, mark: str, name: str, wood: Timber, y: Inches, z: Inches) -> Part:
    thick, ends = case.spec.case, rail_ends(case)
    is_seen = y == 0.0
    return new_part(
        code=case.code(mark),
        line=line,
        name=name,
        wood=wood.wood,
        cut=wood.cut,
        thickness=thick.sub_top_rail,
        width=thick.rail_width,
        length=ends.length,
        face=FaceClass.EDGE if is_seen else FaceClass.INSIDE,
        grain=Grain.ACROSS,
        use=PartUse.CASE if is_seen else PartUse.INSIDE,
        ends=(ends.words, ends.words),
        box=Box(ends.start, y, z, ends.length, thick.rail_width, thick.sub_top_rail),
    )
