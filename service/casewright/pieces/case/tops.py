"""The top that closes a case."""

from collections.abc import Iterable, Iterator

from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.ends import rail_ends
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.rules import case_rules as rules
from casewright.wood.waste import PartUse

CASE_TOP = "C11"
"""The line of a top between the sides."""


def top_parts(case: CasePlan) -> Iterator[Part]:
    """The top, with its overhangs; none where the case has its own, or hangs or stands under something.

    Args:
        case: what the case is worked out from

    Returns:
        The part.

    Source: geometry of the case.
    """
    top, body, take = case.spec.top, case.spec.body, case.ledger.take
    if not top.over:
        return
    length = take(
        "top_length",
        rules.over_all,
        inner=body.width,
        one_end=top.overhang_sides,
        other_end=top.overhang_sides,
    )
    width = take(
        "top_width",
        rules.over_all,
        inner=body.depth,
        one_end=top.overhang_front,
        other_end=top.overhang_back,
    )
    yield new_part(
        code=case.code("T"),
        line="T1",
        name="Top",
        **timber(case.spec.woods.of("top")),
        thickness=top.thickness,
        width=width,
        length=length,
        face=FaceClass.SHOW,
        grain=Grain.ACROSS,
        use=PartUse.CASE,
        box=Box(
            -top.overhang_sides,
            -top.overhang_front,
            case.face.overall_height - top.thickness,
            length,
            width,
            top.thickness,
        ),
    )


def top_part(spec: UnitSpec, parts: Iterable[Part]) -> Part | None:
    """The part that closes a piece above.

    Args:
        spec: what the maker chose
        parts: every part of the unit

    Returns:
        The top, or the board dovetailed between the sides; None where there is none.

    Source: geometry of the case.
    """
    line = CASE_TOP if spec.legs is None and spec.top.is_dovetailed else "T1"
    return next((part for part in parts if part.line == line), None)


def between_sides(case: CasePlan) -> Part:
    """The top of a case whose sides it is dovetailed to, over their whole depth.

    Args:
        case: what the case is worked out from

    Returns:
        The part.

    Source: common practice of solid-wood case making.
    """
    spec, ends = case.spec, rail_ends(case)
    return new_part(
        code=case.code("C-T"),
        line=CASE_TOP,
        name="Case top",
        **timber(spec.woods.of("top")),
        thickness=spec.top.thickness,
        width=spec.body.depth,
        length=ends.length,
        face=FaceClass.SHOW,
        grain=Grain.ACROSS,
        use=PartUse.CASE,
        ends=(ends.words, ends.words),
        box=Box(
            ends.start,
            0.0,
            case.face.base_height + case.face.body_height - spec.top.thickness,
            ends.length,
            spec.body.depth,
            spec.top.thickness,
        ),
    )
