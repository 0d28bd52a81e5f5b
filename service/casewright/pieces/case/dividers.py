"""What divides two rows: the front rail of a web frame, that rail alone, or a board over the full depth."""

from collections.abc import Iterator

from casewright.measure.saying import say
from casewright.pieces.case.boards import Board, board_parts
from casewright.pieces.case.ends import Ends
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import FaceRow
from casewright.pieces.layout.parts import FaceClass, Grain, Part, timber
from casewright.pieces.rules import case_rules
from casewright.wood.waste import PartUse


def divider_parts(case: CasePlan) -> Iterator[Part]:
    """The dividers between the rows, without the rear rails and runners of web frames.

    Args:
        case: what the case is worked out from

    Yields:
        A rail for each; or a board over the full depth, its lipping first.

    Source: common practice of case making.
    """
    thick = case.spec.case
    if len(case.face.rows) == 1:
        return
    length = case.ledger.take(
        "divider_length", case_rules.housed_length, opening=case.face.clear_width, housing=thick.housing
    )
    words = say("{}, {:fraction} deep", thick.divider_end, thick.housing)
    ends = Ends(reach=thick.housing, start=thick.side - thick.housing, length=length, words=words)
    for row in case.face.rows[:-1]:
        if thick.divider_kind == "solid":
            yield from board_parts(case, _board(case, row, ends))
        else:
            yield _rail(case, row, ends)


def _rail(case: CasePlan, row: FaceRow, ends: Ends) -> Part:
    thick = case.spec.case
    return Part(
        code=case.code(f"D{row.number}-RF"),
        line="C3",
        name="Divider rail, front",
        **timber(case.spec.woods.case),
        thickness=thick.divider,
        width=thick.rail_width,
        length=ends.length,
        face=FaceClass.EDGE,
        grain=Grain.ACROSS,
        use=PartUse.CASE,
        ends=(ends.words, ends.words),
        box=case.divider_box(row, 0.0, ends.length, thick.rail_width),
    )


def _board(case: CasePlan, row: FaceRow, ends: Ends) -> Board:
    thick = case.spec.case
    return Board(
        mark=f"D{row.number}-B",
        name="Divider",
        lines=("D1", "D2"),
        figure="divider_width",
        thickness=thick.divider,
        ends=ends,
        z=case.face.base_height + row.bottom - thick.divider,
    )
