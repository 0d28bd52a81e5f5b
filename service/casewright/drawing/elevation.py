"""The front of a unit: what the customer is shown, and what the bench reads heights and widths from."""

from collections.abc import Iterator

from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.codes import Codes, Place
from casewright.drawing.dimensions import Side, Span, heights, levels, widths
from casewright.drawing.face_parts import draw_case, seen_rows
from casewright.drawing.ground import ground_before, heights_from
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.picks import Where, draw_picks
from casewright.drawing.spaces import draw_spaces
from casewright.drawing.view import View
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Inches, Number
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import FaceRow, Opening, Space, Stack

TOP = "T1"
"""The top, which has an overhang of its own."""
PULL = 0.625
"""Radius of the knob that stands for any pull, which the unit knows only by name (common practice) [in]."""
BAR = 0.5
"""How high a pull with two screws is drawn (common practice) [in]."""


def elevation(unit: Construction, shown: LengthUnit | None = None, where: Where | None = None) -> Drawing:
    """The front elevation of a unit, with heights, widths, drawer codes and pulls.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes; None for that in which the piece was drawn
        where: the address to which an opening, a row or a part of it leads; None for a drawing without links

    Returns:
        The drawing.

    Source: common practice of shop drawing.
    """
    spec, face = unit.spec, unit.face
    return fitted(
        lambda sheet: _draw(View(sheet), unit, where),
        shown or spec.unit,
        name=f"{spec.code}-elevation",
        title=f"{spec.code}: {spec.name}",
        subject="Front elevation",
        work=(spec.overall_width, face.overall_height),
    )


def _draw(view: View, unit: Construction, where: Where | None) -> None:
    codes = Codes(view.sheet)
    draw_case(view, unit)
    draw_spaces(view, unit, codes)
    ground_before(view, unit)
    for drawer in unit.drawers:
        _drawer(view, unit, drawer, codes)
    left_out = codes.letter([each.code for each in _in_order(unit)])
    rows = {drawer.sizes.code: drawer.sizes.opening.row_code for drawer in unit.drawers}
    bare = {rows[code] for code in left_out if code in rows}
    top = _heights(view, unit, bare)
    _levels(view, unit, bare)
    _widths_above(view, unit, top)
    _widths_below(view, unit)
    codes.tell()
    _given_up(view, unit)
    if where:
        draw_picks(view, unit, where)


def _in_order(unit: Construction) -> list[Opening | Space]:
    """All openings, from the top, each row from the left."""
    face = unit.face
    return sorted(
        (*face.openings, *face.spaces),
        key=lambda each: (-round(each.bottom + each.height, 6), each.left),
    )


def _given_up(view: View, unit: Construction) -> None:
    """What does not match although it was wished for: named where the customer signs."""
    letters, left = view.sheet.letters, -unit.spec.top.overhang_sides
    for each in unit.spec.grain.given_up:
        words = f"Not matched: {each.name} ({each.reason.rstrip('.')})"
        _, bottom, _, _ = view.sheet.reach
        view.sheet.letter((left, bottom - letters), words, "start")
        view.sheet.say(words)


def _drawer(view: View, unit: Construction, drawer: Drawer, codes: Codes) -> None:
    """The front in its opening, with pulls and code."""
    front = next(part for part in unit.parts if part.code == f"{drawer.code}-F").box
    view.rectangle(Line.TONE, front.x, front.z, front.width, front.height)
    view.rectangle(Line.FRONT, front.x, front.z, front.width, front.height, f"{drawer.code}-F")
    radius = min(PULL, front.height / 5, front.width / 5)
    for centre in drawer.pulls:
        _pull(view, (centre, front.z + drawer.boring.up), radius, drawer.boring.apart)
    opening = drawer.sizes.opening
    if opening.measured:
        view.sheet.say(f"{opening.code} measured: {', '.join(opening.measured)}")
    left = min(drawer.pulls) - max(0.0, drawer.boring.apart / 2 - radius)
    corner, pull, wide = (front.x, front.z), (left, drawer.boring.up), front.width
    codes.put(
        opening.code,
        opening.code + (" measured" if opening.measured else ""),
        lambda words, size: _room_for_code(view.sheet, (words, size), corner, wide, pull, radius),
    )


def _pull(view: View, at: Point, radius: Inches, apart: Inches) -> None:
    """A knob, or a pull with two screws, as long as they are apart."""
    x, z = at
    if not apart:
        view.circle(Line.FRONT, at, radius)
        return
    view.rectangle(Line.FRONT, x - apart / 2, z - BAR / 2, apart, BAR)


def _room_for_code(
    sheet: Sheet,
    lettered: tuple[str, Number],
    corner: Point,
    wide: Inches,
    pull: Point,
    radius: Inches,
) -> Place | None:
    """The lower left corner of a front, if words of a size have room there beside or under its pull."""
    words, size = lettered
    high, long, inset = size * sheet.letters, sheet.width_of(words, size), 0.3 * sheet.letters
    under = high + inset < pull[1] - radius and long + 2 * inset < wide
    beside = high + inset < 2 * pull[1] and corner[0] + long + inset < pull[0] - radius
    if not (under or beside):
        return None
    return (corner[0] + inset, corner[1] + inset + 0.4 * high), "start"


def _heights(view: View, unit: Construction, bare: set[str]) -> Inches:
    """Openings, then base, body and top, then all of it, at the left; rows without codes are named there.

    Gives back how high the openings' lettering gets: where rows are low, it is moved apart [in].
    """
    spec, face, letters = unit.spec, unit.face, view.sheet.letters
    edge, base = _edges(unit)[0], face.base_height
    left = min(edge, -spec.top.overhang_sides)
    whole = face.stacks[0]
    reach = heights(view, _openings(unit, whole, bare), edge, left - 1.3 * letters, Side.BEFORE)
    for stacks in _alike(unit, at_left=True):
        line = reach - 0.9 * letters
        reach = heights(view, _openings(unit, stacks[0], bare), edge, line, Side.BEFORE)
        _name_chain(view, unit, stacks, line)
    _, _, _, top = view.sheet.reach
    body = base + face.body_height
    below, between = ("legs", "apron height") if spec.legs else ("base", "body height")
    stack = [Span(0.0, base, below)] if base else []
    stack.append(Span(base, body, between))
    if face.overall_height > body:
        stack.append(Span(body, face.overall_height, "top thickness"))
    if len(stack) > 1:  # a case alone is as high as the whole
        reach = heights(view, stack, left, reach - 0.9 * letters, Side.BEFORE, upright=True)
    overall = [Span(0.0, face.overall_height, "overall height")]
    heights(view, overall, left, reach - 0.6 * letters, Side.BEFORE, upright=True)
    return top


def _height(row: FaceRow) -> Inches:
    """The height of a row's openings: as measured where they all measured the same, else as designed."""
    found = {opening.height for opening in row.openings}
    return found.pop() if len(found) == 1 else row.height


def _openings(unit: Construction, stack: Stack, bare: set[str]) -> list[Span]:
    """The opening heights of a stack, from the bottom up; rows without codes are named."""
    base = unit.face.base_height
    return [
        Span(
            base + row.bottom,
            base + row.bottom + _height(row),
            f"opening height of row {row.mark}",
            words=f"{row.code}:" if row.code in bare else "",
        )
        for row in reversed(stack.rows)
    ]


def _alike(unit: Construction, *, at_left: bool) -> Iterator[list[Stack]]:
    """The stacks within columns, those with the same heights together; where none stands further left, they
    are measured at the left, else at the right."""
    alike: dict[tuple[tuple[Inches, Inches], ...], list[Stack]] = {}
    for stack in unit.face.stacks[1:]:
        levels_of = tuple((round(row.bottom, 6), round(row.height, 6)) for row in stack.rows)
        if len(stack.rows) > 1:
            alike.setdefault(levels_of, []).append(stack)
    middle = unit.spec.body.width / 2
    return (each for each in alike.values() if (each[0].left < middle) is at_left)


def _name_chain(view: View, unit: Construction, stacks: list[Stack], line: Inches) -> None:
    """Which columns a chain of heights belongs to, lettered over it."""
    sheet, stack = view.sheet, stacks[0]
    words = ", ".join(each.code for each in stacks)
    up = unit.face.base_height + stack.bottom + stack.height + sheet.letters
    while not sheet.is_free(sheet.patch((line, up), words)):
        up += sheet.letters / 2
    sheet.letter((line, up), words, size=0.85)


def _levels(view: View, unit: Construction, bare: set[str]) -> None:
    """How high each row begins, at the right, beyond the stacks that are measured there."""
    spec, face, letters = unit.spec, unit.face, view.sheet.letters
    edge = _edges(unit)[1]
    right = max(edge, spec.body.width + spec.top.overhang_sides)
    reach = right + 0.4 * letters
    for stacks in _alike(unit, at_left=False):
        line = reach + 0.9 * letters
        reach = heights(view, _openings(unit, stacks[0], bare), edge, line, Side.AFTER)
        _name_chain(view, unit, stacks, line)
    lowest, heading = heights_from(unit)
    marks = [(0.0, lowest)]
    marks += [(face.base_height + row.bottom, f"row {row.number}") for row in reversed(face.rows)]
    marks.append((face.overall_height, "top"))
    levels(view, marks, edge, reach + 0.9 * letters, Side.AFTER, heading)


def _edges(unit: Construction) -> tuple[Inches, Inches]:
    """From where to where the case is seen under its top, with strips scribed to walls [in]."""
    boxes = [part.box for part in unit.case.parts if part.box.y <= 0 and part.line != TOP]
    left = min((box.x for box in boxes), default=0.0)
    right = max((box.x + box.width for box in boxes), default=0.0)
    return min(0.0, left), max(unit.spec.body.width, right)


def _widths_above(view: View, unit: Construction, top: Inches) -> None:
    """The opening widths, one chain for all rows that are parted alike."""
    letters = view.sheet.letters
    line = top + 1.2 * letters
    for label, row in reversed(list(_parted_alike(unit))):
        spans = [
            Span(left, left + width, f"opening width of {cell.code}")
            for cell, (left, width) in zip(row.cells, _across(row), strict=True)
        ]
        line = widths(view, spans, line, Side.AFTER, label=label) + 0.8 * letters


def _parted_alike(unit: Construction) -> Iterator[tuple[str, FaceRow]]:
    """Rows with the same openings across: their names, and the first of them."""
    alike: dict[tuple[tuple[Inches, Inches], ...], list[FaceRow]] = {}
    for row in seen_rows(unit):
        across = tuple((round(left, 6), round(width, 6)) for left, width in _across(row))
        alike.setdefault(across, []).append(row)
    for rows in alike.values():
        yield _named(rows), rows[0]


def _across(row: FaceRow) -> list[tuple[Inches, Inches]]:
    """Left edge and width of each column of a row: of an opening as measured, of a stack as designed."""
    return [
        (cell.left, cell.width) if cell.opening is None else (cell.opening.left, cell.opening.width)
        for cell in row.cells
    ]


def _named(rows: list[FaceRow]) -> str:
    """R1, or R2–R5 for a run of rows of one stack, or R1, R3 for others."""
    first, last = rows[0], rows[-1]
    stacks = {row.code.rpartition("-")[0] for row in rows}
    if len(stacks) == 1 and last.number > first.number and last.number - first.number == len(rows) - 1:
        return f"{first.code}–{last.code}"
    return ", ".join(row.code for row in rows)


def _widths_below(view: View, unit: Construction) -> None:
    """Body and overall width."""
    body, over, letters = unit.spec.body.width, unit.spec.top.overhang_sides, view.sheet.letters
    line = -2.2 * letters
    widths(view, [Span(0.0, body, "body width", words="body")], line, Side.BEFORE, 0.0)
    if over:
        whole = [Span(-over, body + over, "overall width", words="overall")]
        widths(view, whole, line - 1.9 * letters, Side.BEFORE, 0.0)
