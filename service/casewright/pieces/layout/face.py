"""Works out the face of a case: its stacks of rows and their columns, down to every opening."""

from dataclasses import dataclass, field
from typing import Any

from casewright.measure.ledger import Ledger
from casewright.measure.making import quickly_made
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.graduation import CannotGraduate
from casewright.pieces.asked.layout_spec import Column, Row
from casewright.pieces.asked.measured import MeasuredOpening
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.columns import column_widths
from casewright.pieces.layout.heights import plan_heights
from casewright.pieces.layout.openings import Cell, Face, FaceRow, Opening, Space, Stack, Wall, Walls
from casewright.pieces.layout.pedestals import pedestals
from casewright.pieces.layout.row_heights import StackAsked, origin_of, row_heights, row_words
from casewright.pieces.rules import case_rules as rules
from casewright.pieces.rules import leg_rules
from casewright.pieces.rules.wall_rules import with_cleat

ONE_LEAF = 24.0
"""A door is no wider than this before there are two (common practice) [in]."""
PLAIN = Column()
NOT_MEASURED = MeasuredOpening()


@dataclass(slots=True, kw_only=True)
class _Plan:
    """What all stacks are worked out from, and what has been found so far."""

    spec: UnitSpec
    ledger: Ledger
    depth: Inches
    base: Inches
    stacks: list[Stack] = field(default_factory=list)
    openings: list[Opening] = field(default_factory=list)
    spaces: list[Space] = field(default_factory=list)


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class _Room:
    """Where a stack stands: its clear width, its lower edge, its walls, its place in the case."""

    left: Inches
    width: Inches
    bottom: Inches
    walls: Walls
    is_top: bool
    is_lowest: bool


def plan_face(spec: UnitSpec, ledger: Ledger) -> Face:
    """Works out heights, rows and columns of a unit.

    Args:
        spec: what the maker chose
        ledger: keeps the working

    Returns:
        The face of the case.

    Raises:
        CannotGraduate: no row heights or column widths can be made of what was given

    Source: geometry of the case.
    """
    heights = plan_heights(spec, ledger)
    clear = ledger.take("clear_width", rules.clear_width, width=spec.body.width, side=spec.frame.side)
    depth = _depth(spec, ledger)
    plan = _Plan(spec=spec, ledger=ledger, depth=depth, base=heights.base)
    room = _Room(
        left=spec.frame.side,
        width=clear,
        bottom=spec.frame.lower,
        walls=(Wall.SIDE, Wall.SIDE),
        is_top=True,
        is_lowest=True,
    )
    asked = StackAsked(
        spec=spec, rows=spec.rows, graduation=spec.graduation, code="", path="rows", ledger=ledger
    )
    _stack(plan, asked, room, heights.opening_total)
    return Face(
        body_height=heights.body,
        base_height=heights.base,
        overall_height=heights.overall,
        opening_total=heights.opening_total,
        clear_width=clear,
        opening_depth=depth,
        stacks=tuple(plan.stacks),
        openings=tuple(plan.openings),
        spaces=tuple(plan.spaces),
        pedestals=pedestals(spec, plan.stacks[0]),
    )


def _depth(spec: UnitSpec, ledger: Ledger) -> Inches:
    """The depth of the openings: to the back boards, or to the back apron."""
    legs = spec.legs
    if legs is None:
        back = spec.back.room
        if spec.cleat_room:
            back = ledger.take("back_with_cleat", with_cleat, back=back, cleat=spec.cleat_room)
        return ledger.take("opening_depth", rules.opening_depth, depth=spec.body.depth, back=back)
    return ledger.take(
        "opening_depth",
        leg_rules.depth_to_apron,
        depth=spec.body.depth,
        setback=legs.setback,
        apron=legs.apron,
    )


def _stack(plan: _Plan, asked: StackAsked, room: _Room, total: Inches) -> Stack:
    """Rows one above the other, the total of their openings given; kept before the stacks within it."""
    divider = plan.spec.frame.divider
    height = total + (len(asked.rows) - 1) * divider
    place = len(plan.stacks)
    made = Stack(
        code=asked.code,
        left=room.left,
        width=room.width,
        bottom=room.bottom,
        height=height,
        rows=(),
        walls=room.walls,
    )
    plan.stacks.append(made)
    rows = []
    bottom = room.bottom + height
    heights = row_heights(asked, total)
    for number, (row, high) in enumerate(zip(asked.rows, heights, strict=True), start=1):
        bottom -= high
        rows.append(_row(plan, asked, row, number, room, bottom, high))
        bottom -= divider
    made = Stack(
        code=asked.code,
        left=room.left,
        width=room.width,
        bottom=room.bottom,
        height=height,
        rows=tuple(rows),
        walls=room.walls,
    )
    plan.stacks[place] = made
    return made


def _row(
    plan: _Plan, asked: StackAsked, row: Row, number: int, room: _Room, bottom: Inches, height: Inches
) -> FaceRow:
    """One row: its columns from the left, and what stands between them."""
    spec, code = plan.spec, asked.row_code(number)
    widths = column_widths(spec, row, code, room.width, plan.ledger)
    columns = row.across or (PLAIN,) * len(widths)
    if spec.legs:
        _refuse_on_legs(row, code, columns)
    is_top, is_lowest = room.is_top and number == 1, room.is_lowest and number == len(asked.rows)
    plain = [column.rows is None and column.holding(row.holds) == "drawer" for column in columns]
    # What hangs on battens or slides needs a wall to hang on, as deep as the opening.
    hangs = not spec.drawers.on_frames
    last = len(columns) - 1
    left = room.left
    cells: list[Cell] = []
    openings: list[Opening] = []
    uprights: list[Inches] = []
    partitions: list[Inches] = []
    for place, (column, width) in enumerate(zip(columns, widths, strict=True)):
        walls = (
            room.walls[0] if place == 0 else Wall.PARTITION,
            room.walls[1] if place == last else Wall.PARTITION,
        )
        inner = _Room(left=left, width=width, bottom=bottom, walls=walls, is_top=is_top, is_lowest=is_lowest)
        if column.rows is not None:
            cells.append(_nested(plan, asked, column, number, place + 1, inner, height))
        else:
            opening = _opening(plan, asked, column, number, place + 1, inner, height, not openings)
            if not isinstance(opening, Space):
                openings.append(opening)
            cells.append(Cell(code=opening.code, left=left, width=width, opening=opening, stack=None))
        left += width
        if place < last:
            is_upright = plain[place] and plain[place + 1] and not hangs
            (uprights if is_upright else partitions).append(left)
            left += spec.frame.upright
    return FaceRow(
        code=code,
        number=number,
        bottom=bottom,
        height=height,
        is_top=is_top,
        is_lowest=is_lowest,
        cells=tuple(cells),
        openings=tuple(openings),
        uprights=tuple(uprights),
        partitions=tuple(partitions),
    )


def _refuse_on_legs(row: Row, code: str, columns: tuple[Column, ...]) -> None:
    """On legs and aprons rails go from leg to leg: no stack has rows of its own, and no knee needs room."""
    if any(column.rows is not None for column in columns):
        raise CannotGraduate(
            f"{row_words(code)} has a column with rows of its own; on legs the rails between rows go from "
            "leg to leg: give the whole row its rows, or choose a carcase"
        )
    if any(column.knee for column in columns):
        raise CannotGraduate(
            f"{row_words(code)} has a knee space; on legs the knees have their room under the aprons: make "
            "these lower, or choose a carcase"
        )


def _nested(
    plan: _Plan, asked: StackAsked, column: Column, row: int, number: int, room: _Room, height: Inches
) -> Cell:
    """A column with rows of its own, as high as its row."""
    rows, divider = column.rows or (), plan.spec.frame.divider
    code = f"{asked.row_code(row)}-{number}"
    if height - (len(rows) - 1) * divider <= 0:
        raise CannotGraduate(
            say(
                "{}: {:d} rows with their dividers need more than the {} of their row; make the row higher, "
                "or use fewer",
                row_words(code),
                len(rows),
                height,
            )
        )
    total = plan.ledger.take(
        f"{code}.opening_total", rules.stack_total, height=height, divider=divider, rows=len(rows)
    )
    inner = StackAsked(
        spec=plan.spec,
        rows=rows,
        graduation=column.graduation or asked.graduation,
        code=code,
        path=f"{asked.path}.{row}.across.{number}.rows",
        ledger=plan.ledger,
    )
    stack = _stack(plan, inner, room, total)
    return Cell(code=code, left=room.left, width=room.width, opening=None, stack=stack)


def _opening(
    plan: _Plan,
    asked: StackAsked,
    column: Column,
    row: int,
    number: int,
    room: _Room,
    height: Inches,
    is_first: bool,
) -> Opening:
    """One opening; a measured size takes the place of the designed one."""
    code = f"{asked.row_code(row)}-{number}"
    holds = column.holding(asked.rows[row - 1].holds)
    bottom = room.bottom
    if column.knee:
        if not room.is_lowest:
            raise CannotGraduate(
                f"{row_words(code)}: a knee space is open down to the floor, and there is something under "
                "this one; put it into the lowest row"
            )
        height, bottom = height + room.bottom + plan.base, -plan.base
    under = plan.ledger.under(code)
    found = plan.spec.measured.openings.get(code, NOT_MEASURED)
    drawn = {"height": height, "width": room.width, "depth": plan.depth}
    sizes = {}
    for name, designed in drawn.items():
        value = getattr(found, name)
        if value is not None and not designed / 2 < value < designed * 2:
            raise CannotGraduate(
                say(
                    "measured.openings.{}.{}: {} is far from the {:bare} that "
                    "was drawn; measure again, or change the design",
                    code,
                    name,
                    value,
                    designed,
                )
            )
        size = designed if value is None else value
        sizes[name] = under.given(f"opening_{name}", size, origin_of(asked, row, size))
    place: dict[str, Any] = {
        "code": code,
        "row": row,
        "column": number,
        "left": room.left,
        "bottom": bottom,
        "measured": tuple(name for name in sizes if getattr(found, name) is not None),
        **{f"designed_{name}": designed for name, designed in drawn.items()},
        **sizes,
    }
    if holds == "drawer":
        opening = Opening(**place, is_first=is_first)
        plan.openings.append(opening)
        return opening
    leaves = 0
    if holds == "doors":
        leaves = column.leaves or (2 if room.width > ONE_LEAF else 1)
    space = Space(
        **place,
        holds=holds,
        shelves=column.shelves,
        leaves=leaves,
        hinged=column.hinged,
        knee=column.knee,
    )
    plan.spaces.append(space)
    return space
