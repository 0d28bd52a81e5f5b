"""What lies around an opening: how thick, and whether another opening begins behind it."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Cell, Face, Space, Stack, Wall


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """What lies at one edge of an opening.

    Attributes:
        thickness: how thick it is [in]
        is_shared: does another opening begin behind it?
        meets_doors: do doors hang there, too?
    """

    thickness: Inches
    is_shared: bool
    meets_doors: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """What lies around an opening."""

    left: Edge
    right: Edge
    above: Edge
    below: Edge


def around_openings(spec: UnitSpec, face: Face) -> dict[str, Around]:
    """What lies around every opening and space.

    Args:
        spec: what the maker chose
        face: the openings

    Returns:
        By the code of the opening.

    Source: geometry of the face.
    """
    frame = spec.frame
    above, below = Edge(thickness=frame.upper, is_shared=False), Edge(thickness=frame.lower, is_shared=False)
    return dict(_of_stack(spec, face.stacks[0], above, below))


def _of_stack(spec: UnitSpec, stack: Stack, above: Edge, below: Edge) -> Iterator[tuple[str, Around]]:
    rows = stack.rows
    for number, row in enumerate(rows):
        upper = _divider(spec, rows[number - 1].cells) if number else above
        lower = _divider(spec, rows[number + 1].cells) if number + 1 < len(rows) else below
        for place, cell in enumerate(row.cells):
            if cell.stack is not None:
                yield from _of_stack(spec, cell.stack, upper, lower)
            if cell.opening is not None:
                left = _wall(spec, stack, 0) if place == 0 else _upright(spec, row.cells[place - 1])
                right = (
                    _upright(spec, row.cells[place + 1])
                    if place + 1 < len(row.cells)
                    else _wall(spec, stack, 1)
                )
                yield cell.opening.code, Around(left=left, right=right, above=upper, below=lower)


def _divider(spec: UnitSpec, cells: tuple[Cell, ...]) -> Edge:
    return Edge(
        thickness=spec.frame.divider, is_shared=True, meets_doors=any(_has_doors(cell) for cell in cells)
    )


def _upright(spec: UnitSpec, cell: Cell) -> Edge:
    return Edge(thickness=spec.frame.upright, is_shared=True, meets_doors=_has_doors(cell))


def _wall(spec: UnitSpec, stack: Stack, place: int) -> Edge:
    if stack.walls[place] is Wall.PARTITION:
        return Edge(thickness=spec.frame.upright, is_shared=True)
    return Edge(thickness=spec.frame.side, is_shared=False)


def _has_doors(cell: Cell) -> bool:
    return isinstance(cell.opening, Space) and cell.opening.holds == "doors"
