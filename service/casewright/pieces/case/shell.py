"""What closes a case: its top, base and back."""

from collections.abc import Iterator
from typing import Any

from casewright.joinery.families.edge.sizes import board_width, boards_over
from casewright.pieces.asked.spec import Plinth
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import Pedestal
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


def base_parts(case: CasePlan) -> Iterator[Part]:
    """The boards of the plinth, under each pedestal; none where the case stands on the floor.

    Args:
        case: what the case is worked out from

    Returns:
        The parts.

    Source: common practice.
    """
    base = case.spec.plinth
    if base is None:
        return
    several = len(case.face.pedestals) > 1
    for number, pedestal in enumerate(case.face.pedestals, start=1):
        yield from _plinth(case, base, pedestal, str(number) if several else "")


def _plinth(case: CasePlan, base: Plinth, pedestal: Pedestal, number: str) -> Iterator[Part]:
    """The boards under one pedestal, or under the whole case."""
    body, woods, width = case.spec.body, case.spec.woods, pedestal.right - pedestal.left
    if not number:
        width = body.width
    shared: dict[str, Any] = {"thickness": base.thickness, "width": base.height, "grain": Grain.ACROSS}
    show = {**shared, **timber(woods.case), "face": FaceClass.EDGE, "use": PartUse.CASE}
    yield Part(
        code=case.code(f"B-F{number}"),
        line="B1",
        name="Plinth front",
        length=width,
        ends=("mitre", "mitre"),
        box=Box(pedestal.left, 0.0, 0.0, width, base.thickness, base.height),
        **show,
    )
    for mark, x in (("L", pedestal.left), ("R", pedestal.right - base.thickness)):
        yield Part(
            code=case.code(f"B-{mark}{number}"),
            line="B2",
            name="Plinth return",
            length=body.depth,
            ends=("mitre", "butt, screwed to the rear rail"),
            box=Box(x, 0.0, 0.0, base.thickness, body.depth, base.height),
            **{**show, "grain": Grain.BACK},
        )
    length = case.ledger.take(
        f"plinth_back_length{number and f'_{number}'}",
        rules.between,
        whole=width,
        one_end=base.thickness,
        other_end=base.thickness,
    )
    # Its rear face is flush with that of the case bottom, which it has to carry.
    rear = case.face.opening_depth - base.thickness
    yield Part(
        code=case.code(f"B-B{number}"),
        line="B3",
        name="Plinth back rail",
        length=length,
        **timber(woods.inside),
        face=FaceClass.INSIDE,
        use=PartUse.INSIDE,
        ends=("butt, between the returns",) * 2,
        box=Box(pedestal.left + base.thickness, rear, 0.0, length, base.thickness, base.height),
        **shared,
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
