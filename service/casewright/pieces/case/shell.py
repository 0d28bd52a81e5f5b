"""What closes a case: its top and its back."""

from collections.abc import Iterator

from casewright.joinery.families.edge.sizes import board_width, boards_over
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, timber
from casewright.pieces.rules import case_rules as rules
from casewright.wood.waste import PartUse


def top_parts(case: CasePlan) -> Iterator[Part]:
    """The top, with its overhangs.

    Args:
        case: what the case is worked out from

    Returns:
        The part.

    Source: geometry of the case.
    """
    top, body, take = case.spec.top, case.spec.body, case.ledger.take
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
    yield Part(
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


def back_parts(case: CasePlan) -> Iterator[Part]:
    """The shiplap boards of the back.

    Args:
        case: what the case is worked out from

    Returns:
        The parts, from the left.

    Source: common practice.
    """
    back, face, take = case.spec.back, case.face, case.ledger.take
    whole = take("back_width", rules.housed_length, opening=face.clear_width, housing=back.rabbet)
    count = back.boards or take(
        "back_boards", boards_over, width=whole, widest=back.widest, overlap=back.lap, gap=back.gap
    )
    width = take("back_board_width", board_width, width=whole, boards=count, overlap=back.lap, gap=back.gap)
    left = case.spec.case.side - back.rabbet
    for number in range(count):
        yield Part(
            code=case.code(f"K-{number + 1}"),
            line="P1",
            name="Shiplap back board",
            **timber(case.spec.woods.of("back")),
            thickness=back.thickness,
            width=width,
            length=face.body_height,
            face=FaceClass.INSIDE,
            grain=Grain.UPRIGHT,
            use=PartUse.INSIDE,
            ends=("square", "square"),
            box=Box(
                left + number * (width - back.lap + back.gap),
                face.opening_depth,
                face.base_height,
                width,
                back.thickness,
                face.body_height,
            ),
        )
