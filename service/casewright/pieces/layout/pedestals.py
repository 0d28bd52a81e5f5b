"""What of a case stands on the floor: all of it, or the pedestals beside its knee spaces."""

from collections.abc import Iterator
from itertools import groupby, pairwise

from casewright.pieces.asked.graduation import CannotGraduate
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Cell, Pedestal, Stack, Wall
from casewright.pieces.layout.row_heights import row_words


def lowest_cells(stack: Stack) -> Iterator[Cell]:
    """The columns that stand lowest in a stack, from the left, through the stacks within them.

    Args:
        stack: the stack

    Yields:
        Each of them.

    Source: geometry of the face.
    """
    for cell in stack.rows[-1].cells:
        if cell.stack is None:
            yield cell
        else:
            yield from lowest_cells(cell.stack)


def pedestals(spec: UnitSpec, whole: Stack) -> tuple[Pedestal, ...]:
    """What stands on the floor, from the left.

    Args:
        spec: what the maker chose
        whole: the stack of the whole face

    Returns:
        The pedestals: one, as wide as the case, where there is no knee space.

    Raises:
        CannotGraduate: two knee spaces meet, nothing stands on the floor, or a side would hang over its base

    Source: common practice of desk making.
    """
    cells = tuple(lowest_cells(whole))
    whole_width = spec.body.width
    if not any(cell.is_knee for cell in cells):
        return (Pedestal(left=0.0, right=whole_width, walls=whole.walls),)
    _refuse_what_hangs(spec, cells)
    side, upright = spec.frame.side, spec.frame.upright
    inner_right = whole.left + whole.width
    found = []
    for is_knee, run in groupby(cells, key=lambda cell: cell.is_knee):
        if is_knee:
            continue
        members = tuple(run)
        left, right = members[0].left, members[-1].left + members[-1].width
        at_left, at_right = members[0] is cells[0], members[-1] is cells[-1]
        found.append(
            Pedestal(
                left=0.0 if at_left else left - upright,
                right=inner_right + side if at_right else right + upright,
                walls=(Wall.SIDE if at_left else Wall.PARTITION, Wall.SIDE if at_right else Wall.PARTITION),
            )
        )
    return tuple(found)


def _refuse_what_hangs(spec: UnitSpec, cells: tuple[Cell, ...]) -> None:
    for cell, after in pairwise(cells):
        if cell.is_knee and after.is_knee:
            raise CannotGraduate(
                f"{row_words(after.code)}: two knee spaces meet here; make them one, wider column"
            )
    if all(cell.is_knee for cell in cells):
        raise CannotGraduate(
            f"{row_words(cells[0].code)}: a knee space as wide as the case leaves nothing to stand on; put "
            "a column beside it, or choose legs and aprons"
        )
    for cell in (cells[0], cells[-1]):
        if cell.is_knee and spec.stands_on is not None:
            raise CannotGraduate(
                f"{row_words(cell.code)}: a knee space beside a side of the case leaves that side no base "
                "to stand on; leave the base out (base: null), or put a column outside it"
            )
