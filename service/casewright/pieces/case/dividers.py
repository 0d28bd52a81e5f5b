"""What divides two rows: the front rail of a web frame, that rail alone, or a board over the full depth."""

from collections.abc import Iterator

from casewright.pieces.case.boards import Board, board_parts
from casewright.pieces.case.frames import divider_rails, end_words, housed_from
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.case.web_frames import WebFrame, web_frames
from casewright.pieces.layout.parts import Part


def divider_parts(case: CasePlan) -> Iterator[Part]:
    """The dividers between the rows, without the rear rails and runners of web frames.

    Args:
        case: what the case is worked out from

    Yields:
        A rail for each; or a board over the full depth, its lipping first.

    Source: common practice of case making.
    """
    if case.spec.case.divider_kind != "solid":
        yield from divider_rails(case)
        return
    for frame in web_frames(case):
        yield from board_parts(case, _board(case, frame))


def _board(case: CasePlan, frame: WebFrame) -> Board:
    start, length = housed_from(case, frame.mark, frame.left, frame.width, frame.walls)
    return Board(
        mark=f"{frame.mark}-B",
        name="Divider",
        lines=("D1", "D2"),
        figure="divider_width",
        thickness=case.spec.case.divider,
        start=start,
        length=length,
        clear=(frame.left, frame.width),
        ends=end_words(case, frame.walls),
        z=case.face.base_height + frame.z,
    )
