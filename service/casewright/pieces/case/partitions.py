"""Uprights between two drawers, and the partitions over the full depth that stand beside all else."""

from collections.abc import Iterator
from itertools import pairwise

from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.case.boards import growth
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import Cell, FaceRow, Opening, Space
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.rules import case_rules as rules
from casewright.pieces.rules.corner_rules import free_depth
from casewright.wood.waste import PartUse


def upright_parts(case: CasePlan) -> Iterator[Part]:
    """The uprights of every row, then its partitions.

    Args:
        case: what the case is worked out from

    Yields:
        The parts, row by row.

    Source: common practice of solid-wood case making.
    """
    for row in case.face.all_rows:
        if row.uprights:
            yield from _uprights(case, row)
        if row.partitions:
            yield from _partitions(case, row)


def _uprights(case: CasePlan, row: FaceRow) -> Iterator[Part]:
    thick, deep = case.spec.case, case.upright_housing(row)
    length = case.ledger.take(
        f"{row.code}.upright_length", rules.housed_length, opening=row.height, housing=deep
    )
    z = case.face.base_height + row.bottom - deep
    edge = thick.lipping if thick.is_ply else 0.0
    width = thick.rail_width
    if edge:
        width = case.ledger.take("upright_width", rules.between, whole=width, one_end=edge, other_end=0.0)
    words = (say("housing, {:fraction} deep", deep),) * 2
    for number, x in enumerate(row.uprights, start=1):
        mark = f"{row.code}-U{number}"
        if edge:
            yield _edge(case, f"{mark}E", "Upright edge", Box(x, 0.0, z, thick.upright, edge, length), words)
        yield new_part(
            code=case.code(mark),
            line="C4",
            name="Upright between drawers",
            **(thick.ply.material if thick.is_ply else timber(case.spec.woods.case)),
            thickness=thick.upright,
            width=width,
            length=length,
            face=FaceClass.INSIDE if edge else FaceClass.EDGE,
            grain=Grain.UPRIGHT,
            use=PartUse.INSIDE if edge else PartUse.CASE,
            ends=words,
            box=Box(x, edge, z, thick.upright, width, length),
        )


def _edge(case: CasePlan, mark: str, name: str, box: Box, ends: tuple[Words, Words]) -> Part:
    """The strip of show wood along the front of an upright or a partition."""
    return new_part(
        code=case.code(mark),
        line="C10",
        name=name,
        wood=case.spec.woods.case.wood,
        cut=case.spec.woods.case.cut,
        thickness=box.width,
        width=box.depth,
        length=box.height,
        face=FaceClass.EDGE,
        grain=Grain.UPRIGHT,
        use=PartUse.CASE,
        ends=ends,
        box=box,
    )


def parted(row: FaceRow) -> Iterator[tuple[Cell, Cell]]:
    """The two columns at either side of each partition of a row, from the left.

    Args:
        row: the row

    Yields:
        The column at the left of it and the one at the right.

    Source: geometry of the face.
    """
    for left, right in pairwise(row.cells):
        if all(abs(left.left + left.width - upright) > TOLERANCE for upright in row.uprights):
            yield left, right


def stands_by_a_knee(row: FaceRow, cells: tuple[Cell, Cell]) -> bool:
    """Does a partition stand beside a knee space, so that it goes down past the case bottom?

    Args:
        row: its row
        cells: the columns at its left and at its right

    Returns:
        Whether it does.

    Source: geometry of the face.
    """
    left, right = cells
    return row.is_lowest and (_lowest(left, -1).is_knee or _lowest(right, 0).is_knee)


def _lowest(cell: Cell, side: int) -> Cell:
    """The cell that stands lowest at one side of a column."""
    while cell.stack is not None:
        cell = cell.stack.rows[-1].cells[side]
    return cell


def _partitions(case: CasePlan, row: FaceRow) -> Iterator[Part]:
    thick, face, deep = case.spec.case, case.face, case.upright_housing(row)
    housed = case.ledger.take(
        f"{row.code}.partition_length", rules.housed_length, opening=row.height, housing=deep
    )
    words = say("housing, {:fraction} deep", deep)
    for number, (x, cells) in enumerate(zip(row.partitions, parted(row), strict=True), start=1):
        mark = f"{row.code}-P{number}"
        foot: Words = words
        length, z = housed, face.base_height + row.bottom - deep
        if stands_by_a_knee(row, cells):
            foot, z = "square; the case bottom is housed in it", face.base_height
            length = case.ledger.take(
                f"{mark}.length",
                rules.standing_length,
                opening=row.height,
                housing=deep,
                bottom=thick.bottom,
            )
        yield from _partition(case, mark, (x, z), length, (foot, words), _is_seen(cells))


def _is_seen(cells: tuple[Cell, Cell]) -> bool:
    """Is a face of the partition seen with all drawers and doors closed?"""
    left, right = cells
    beside = (*_beside(left, -1), *_beside(right, 0))
    return any(isinstance(each, Space) and each.holds == "open" for each in beside)


def _beside(cell: Cell, side: int) -> Iterator[Opening]:
    """The openings of a column that reach one of its sides."""
    if cell.opening is not None:
        yield cell.opening
    elif cell.stack is not None:
        for row in cell.stack.rows:
            yield from _beside(row.cells[side], side)


def _partition(
    case: CasePlan,
    mark: str,
    corner: tuple[Inches, Inches],
    length: Inches,
    ends: tuple[Words, Words],
    is_seen: bool,
) -> Iterator[Part]:
    """One partition: of show wood where a face is seen, else with an edge of it; plywood in such a case."""
    thick, woods, (x, z) = case.spec.case, case.spec.woods, corner
    depth, edge = case.face.opening_depth, 0.0 if is_seen and not thick.is_ply else thick.lipping
    grows = growth(case, woods.inside if edge else woods.case, f"partition_growth.{edge:g}")
    if grows:
        depth = case.ledger.take(f"{mark}.free_depth", free_depth, depth=depth, growth=grows)
    if edge:
        strip = Box(x, 0.0, z, thick.upright, edge, length)
        yield _edge(case, f"{mark}E", "Partition edge", strip, ends)
        depth = case.ledger.take(f"{mark}.width", rules.between, whole=depth, one_end=edge, other_end=0.0)
    yield new_part(
        code=case.code(mark),
        line="C8",
        name="Partition",
        **(thick.ply.material if thick.is_ply else timber(woods.inside if edge else woods.case)),
        thickness=thick.upright,
        width=depth,
        length=length,
        face=FaceClass.SHOW if is_seen else FaceClass.INSIDE if edge else FaceClass.EDGE,
        grain=Grain.UPRIGHT,
        use=PartUse.INSIDE if edge else PartUse.CASE,
        ends=ends,
        box=Box(x, edge, z, thick.upright, depth, length),
    )
