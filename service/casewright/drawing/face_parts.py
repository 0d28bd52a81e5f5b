"""The parts of a case as its front shows them: without what lies in housings and sockets."""

from collections.abc import Iterator

from casewright.drawing.bases import foot_outline, is_in_front
from casewright.drawing.canvas import Line
from casewright.drawing.hidden import Seen, fronts_before, in_sight
from casewright.drawing.legs import leg_outlines
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.openings import FaceRow, Stack, Wall
from casewright.pieces.layout.parts import Part

RAILS_OF_THE_CASE, BOTTOMS = ("C2", "C11", "E2", "G1", "R1", "R2", "R3"), ("C5", "C6")
DIVIDERS = ("C3", "D1", "D2")
UPRIGHT_STRIP = "G2"
BETWEEN_COLUMNS = ("C4", "C8", "C10", "R4")


def draw_case(view: View, unit: Construction, *, doors_open: bool = False, coded: bool = True) -> None:
    """Draws every part that is seen from the front.

    Args:
        view: the front of the unit
        unit: the unit, worked out
        doors_open: whether its doors stand open and cover nothing of it
        coded: whether each part keeps its code, by which a page finds it again

    Source: common practice of shop drawing.
    """
    outlines = leg_outlines(unit, unit.spec.body.width)
    stacks = {f"D{row.mark}": stack for stack in unit.face.stacks for row in stack.rows[:-1]}
    rows = {row.code: row for row in unit.face.all_rows}
    fronts = fronts_before(unit, doors_open=doors_open)
    for part in unit.case.parts:
        code = part.code if coded else ""
        is_base = part.line[0] == "B"
        if not is_in_front(unit, part) if is_base else part.box.y > 0:
            continue
        if is_base and (foot := foot_outline(unit, part)):
            view.polygon(Line.OBJECT, foot, code)
            continue
        if part.line == "L1":
            view.polygon(Line.OBJECT, next(outlines), code)
            continue
        seen = _broken(unit, part) if part.line == UPRIGHT_STRIP else (_seen(unit, part, stacks, rows),)
        for piece in (found for each in seen for found in in_sight(each, fronts)):
            view.rectangle(Line.OBJECT, *piece, code)


def _broken(unit: Construction, part: Part) -> tuple[Seen, ...]:
    """An upright strip of a crate: the level ones run through before it."""
    box, base = part.box, unit.face.base_height
    return tuple((box.x, base + row.bottom, box.width, row.height) for row in unit.face.rows)


def _seen(unit: Construction, part: Part, stacks: dict[str, Stack], rows: dict[str, FaceRow]) -> Seen:
    """What is seen of a part between those that it is let into."""
    box, place = part.box, part.code.removeprefix(f"{unit.spec.code}-").rpartition("-")[0]
    if part.line in RAILS_OF_THE_CASE:
        return unit.spec.frame.side, box.z, unit.face.clear_width, box.height
    if part.line in DIVIDERS:
        stack = stacks[place]
        return stack.left, box.z, stack.width, box.height
    if part.line in BOTTOMS:
        left, right = _between_walls(unit, box.x + box.width / 2)
        return left, box.z, right - left, box.height
    if part.line in BETWEEN_COLUMNS:
        row, base = rows[place], unit.face.base_height
        top = base + row.bottom + row.height
        low = box.z if abs(box.z - base) < 1e-6 else base + row.bottom
        return box.x, low, box.width, top - low
    return box.x, box.z, box.width, box.height


def _between_walls(unit: Construction, middle: Inches) -> tuple[Inches, Inches]:
    """The inner faces of the walls of the pedestal that stands at a place [in]."""
    frame = unit.spec.frame
    pedestal = next(each for each in unit.face.pedestals if each.left <= middle <= each.right)
    at_left, at_right = (frame.side if wall is Wall.SIDE else frame.upright for wall in pedestal.walls)
    return pedestal.left + at_left, pedestal.right - at_right


def seen_rows(unit: Construction) -> Iterator[FaceRow]:
    """The rows whose widths are worth a chain: those of the whole face, and parted ones within columns.

    Args:
        unit: the unit, worked out

    Yields:
        Each of them.

    Source: common practice of shop drawing.
    """
    for stack in unit.face.stacks:
        for row in stack.rows:
            if not stack.code or len(row.cells) > 1:
                yield row
