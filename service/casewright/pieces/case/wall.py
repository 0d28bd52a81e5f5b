"""What ties a case to the building: the cleats that it hangs on, and the strips scribed to the walls."""

from collections.abc import Iterator
from typing import Any

from casewright.measure.units import Count, Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.asked.wall_spec import Cleat
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.rules import wall_rules
from casewright.wood.waste import PartUse

ON_CASE, ON_WALL, SPACER, SCRIBE = "Q1", "Q2", "Q3", "Q4"
"""Lines of the cut list."""


def wall_parts(case: CasePlan) -> Iterator[Part]:
    """The cleats, the spacer below them, and the scribe strips.

    Args:
        case: what the case is worked out from

    Returns:
        The parts; none for a piece that stands free.

    Source: common practice.
    """
    if case.spec.cleat:
        yield from _cleats(case, case.spec.cleat)
    if case.spec.site.scribe:
        yield from _scribes(case)


def studs_met(spec: UnitSpec, clear_width: Inches) -> Count:
    """How many studs the cleat on the wall is sure to meet.

    Args:
        spec: what the maker chose, with a cleat
        clear_width: between the sides [in]

    Returns:
        The studs; none without a cleat.

    Source: common practice.
    """
    if spec.cleat is None:
        return 0
    length = wall_rules.wall_cleat(length=_length(spec, clear_width), shift=wall_rules.SHIFT)
    return wall_rules.studs_met(length=length, apart=spec.cleat.studs)


def _length(spec: UnitSpec, clear: Inches) -> Inches:
    within = spec.cleat is not None and spec.cleat.room == "within"
    return wall_rules.cleat_length(width=spec.body.width, clear=clear, within=int(within))


def _cleats(case: CasePlan, cleat: Cleat) -> Iterator[Part]:
    spec, face, take = case.spec, case.face, case.ledger.take
    within = cleat.room == "within"
    length = _length(spec, face.clear_width)
    side = (spec.body.width - length) / 2
    y = spec.body.depth - cleat.depth_taken
    top = face.base_height + face.body_height
    if within and (spec.top.is_dovetailed or case.board_depth >= spec.body.depth):
        top -= spec.frame.upper
    foot = top - cleat.height
    low = foot - take("cleat_hooked", wall_rules.hooked, height=cleat.height, thickness=cleat.thickness)
    shared: dict[str, Any] = {
        **timber(spec.woods.inside),
        "thickness": cleat.thickness,
        "width": cleat.height,
        "face": FaceClass.INSIDE,
        "grain": Grain.ACROSS,
        "use": PartUse.INSIDE,
        "ends": ("square", "square"),
    }
    on_wall = take("cleat_on_wall", wall_rules.wall_cleat, length=length, shift=wall_rules.SHIFT)
    for mark, line, name, long, x, z in (
        ("C", ON_CASE, "Cleat on the case, lower edge at 45°", length, side, foot),
        ("W", ON_WALL, "Cleat on the wall, upper edge at 45°", on_wall, side + wall_rules.SHIFT, low),
    ):
        yield new_part(
            code=case.code(f"Q-{mark}"),
            line=line,
            name=name,
            length=long,
            box=Box(x, y, z, long, cleat.thickness, cleat.height),
            **shared,
        )
    if not within:
        yield new_part(
            code=case.code("Q-S"),
            line=SPACER,
            name="Spacer to the wall",
            length=length,
            box=Box(side, y, face.base_height, length, cleat.thickness, cleat.height),
            **shared,
        )


def _scribes(case: CasePlan) -> Iterator[Part]:
    spec, face = case.spec, case.face
    wide, thick = spec.site.scribe, spec.frame.side
    for mark, x in (("L", -wide), ("R", spec.body.width)):
        yield new_part(
            code=case.code(f"Q-{mark}"),
            line=SCRIBE,
            name="Scribe strip",
            **timber(spec.woods.case),
            thickness=thick,
            width=wide,
            length=face.body_height,
            face=FaceClass.EDGE,
            grain=Grain.UPRIGHT,
            use=PartUse.CASE,
            ends=("square", "square"),
            box=Box(x, 0.0, face.base_height, wide, thick, face.body_height),
        )
