"""The front of a unit: what the customer is shown, and what the bench reads heights and widths from."""

from collections.abc import Iterator

from casewright.drawing.bases import foot_outline, is_in_front
from casewright.drawing.canvas import Line
from casewright.drawing.dimensions import Side, Span, heights, levels, widths
from casewright.drawing.legs import leg_outlines
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.view import View
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Count, Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import FaceRow
from casewright.pieces.layout.parts import Part

PULL = 0.625
"""Radius of the knob that stands for any pull, which the unit knows only by name (common practice) [in]."""


def elevation(unit: Construction, shown: LengthUnit | None = None) -> Drawing:
    """The front elevation of a unit, with heights, widths, drawer codes and pulls.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes; None for that in which the piece was drawn

    Returns:
        The drawing.

    Source: common practice of shop drawing.
    """
    spec, face = unit.spec, unit.face
    return fitted(
        lambda sheet: _draw(View(sheet), unit),
        shown or spec.unit,
        name=f"{spec.code}-elevation",
        title=f"{spec.code}: {spec.name}",
        subject="Front elevation",
        work=(spec.overall_width, face.overall_height),
    )


def _draw(view: View, unit: Construction) -> None:
    _case(view, unit)
    bare = {drawer.sizes.opening.row for drawer in unit.drawers if not _drawer(view, unit, drawer)}
    top = _heights(view, unit, bare)
    _levels(view, unit)
    _widths_above(view, unit, top)
    _widths_below(view, unit)


def _case(view: View, unit: Construction) -> None:
    """Every part that is seen from the front, without what lies in housings and sockets."""
    side, clear = unit.spec.frame.side, unit.face.clear_width
    outlines = leg_outlines(unit, unit.spec.body.width)
    for part in unit.case.parts:
        is_base = part.line[0] == "B"
        if not is_in_front(unit, part) if is_base else part.box.y > 0:
            continue
        if is_base and (foot := foot_outline(unit, part)):
            view.polygon(Line.OBJECT, foot, part.code)
            continue
        box = part.box
        x, width, z, height = box.x, box.width, box.z, box.height
        if part.line in ("C2", "C3", "C5", "C6", "R1", "R2", "R3"):
            x, width = side, clear
        elif part.line == "C4":
            row = _row_of_upright(unit, part)
            z, height = unit.face.base_height + row.bottom, row.height
        elif part.line == "L1":
            view.polygon(Line.OBJECT, next(outlines), part.code)
            continue
        view.rectangle(Line.OBJECT, x, z, width, height, part.code)
    over = unit.spec.top.overhang_sides + view.sheet.letters
    view.polyline(Line.FLOOR, (-over, 0.0), (unit.spec.body.width + over, 0.0))


def _row_of_upright(unit: Construction, part: Part) -> FaceRow:
    mark = part.code.removeprefix(f"{unit.spec.code}-").split("-")[0]
    return next(row for row in unit.face.rows if mark == f"R{row.number}")


def _drawer(view: View, unit: Construction, drawer: Drawer) -> bool:
    """The front in its opening, with pulls and code; was there room for the code?"""
    front = next(part for part in unit.parts if part.code == f"{drawer.code}-F").box
    view.rectangle(Line.TONE, front.x, front.z, front.width, front.height)
    view.rectangle(Line.FRONT, front.x, front.z, front.width, front.height, f"{drawer.code}-F")
    radius = min(PULL, front.height / 5, front.width / 5)
    for centre in drawer.pulls:
        view.circle(Line.FRONT, (centre, front.z + front.height / 2), radius)
    opening = drawer.sizes.opening
    if opening.measured:
        view.sheet.say(f"{opening.code} measured: {', '.join(opening.measured)}")
    return _letter_code(view, drawer, (front.x, front.z), (min(drawer.pulls), front.height / 2), radius)


def _letter_code(
    view: View, drawer: Drawer, corner: tuple[Inches, Inches], pull: tuple[Inches, Inches], radius: Inches
) -> bool:
    """The code in the lower left corner of the front, as large as it fits beside or under the pull."""
    sheet = view.sheet
    words = drawer.sizes.code + (" measured" if drawer.sizes.opening.measured else "")
    for size in (1.0, 0.85, 0.7):
        high, long, inset = size * sheet.letters, sheet.width_of(words, size), 0.3 * sheet.letters
        under = high + inset < pull[1] - radius and long + 2 * inset < drawer.sizes.width
        beside = high + inset < 2 * pull[1] and corner[0] + long + inset < pull[0] - radius
        if under or beside:
            at = (corner[0] + inset, corner[1] + inset + 0.4 * high)
            sheet.letter(at, words, "start", size=size)
            return True
    return False


def _heights(view: View, unit: Construction, bare: set[Count]) -> Inches:
    """Openings, then base, body and top, then all of it, at the left; rows without codes are named there.

    Gives back how high the openings' lettering gets: where rows are low, it is moved apart [in].
    """
    spec, face, letters = unit.spec, unit.face, view.sheet.letters
    left, base = -spec.top.overhang_sides, face.base_height
    openings = [
        Span(
            base + row.bottom,
            base + row.bottom + _height(row),
            f"opening height of row {row.number}",
            words=f"R{row.number}:" if bare else "",
        )
        for row in reversed(face.rows)
    ]
    reach = heights(view, openings, 0.0, left - 1.3 * letters, Side.BEFORE)
    _, _, _, top = view.sheet.reach
    body = base + face.body_height
    below, between = ("legs", "apron height") if spec.legs else ("base", "body height")
    stack = [Span(0.0, base, below)] if base else []
    stack += [Span(base, body, between), Span(body, face.overall_height, "top thickness")]
    reach = heights(view, stack, left, reach - 0.9 * letters, Side.BEFORE, upright=True)
    whole = [Span(0.0, face.overall_height, "overall height")]
    heights(view, whole, left, reach - 0.6 * letters, Side.BEFORE, upright=True)
    return top


def _height(row: FaceRow) -> Inches:
    """The height of a row's openings: as measured where they all measured the same, else as designed."""
    found = {opening.height for opening in row.openings}
    return found.pop() if len(found) == 1 else row.height


def _levels(view: View, unit: Construction) -> None:
    """How high each opening begins above the floor, at the right."""
    spec, face = unit.spec, unit.face
    right = spec.body.width + spec.top.overhang_sides
    marks = [(0.0, "floor")]
    marks += [(face.base_height + row.bottom, f"row {row.number}") for row in reversed(face.rows)]
    marks.append((face.overall_height, "top"))
    levels(
        view,
        marks,
        spec.body.width,
        right + 1.3 * view.sheet.letters,
        Side.AFTER,
        "from the\nfloor",
    )


def _widths_above(view: View, unit: Construction, top: Inches) -> None:
    """The opening widths, one chain for all rows that are parted alike."""
    letters = view.sheet.letters
    line = top + 1.2 * letters
    for label, row in reversed(list(_parted_alike(unit))):
        spans = [
            Span(opening.left, opening.left + opening.width, f"opening width of {opening.code}")
            for opening in row.openings
        ]
        line = widths(view, spans, line, Side.AFTER, label=label) + 0.8 * letters


def _parted_alike(unit: Construction) -> Iterator[tuple[str, FaceRow]]:
    """Rows with the same openings across: their names, and the first of them."""
    alike: dict[tuple[tuple[Inches, Inches], ...], list[FaceRow]] = {}
    for row in unit.face.rows:
        across = tuple((round(opening.left, 6), round(opening.width, 6)) for opening in row.openings)
        alike.setdefault(across, []).append(row)
    for rows in alike.values():
        yield _named([row.number for row in rows]), rows[0]


def _named(numbers: list[int]) -> str:
    """R1, or R2–R5 for a run of rows, or R1, R3 for others."""
    first, last = numbers[0], numbers[-1]
    if last > first and last - first == len(numbers) - 1:
        return f"R{first}–R{last}"
    return ", ".join(f"R{number}" for number in numbers)


def _widths_below(view: View, unit: Construction) -> None:
    """Body and overall width."""
    body, over, letters = unit.spec.body.width, unit.spec.top.overhang_sides, view.sheet.letters
    line = -2.2 * letters
    widths(view, [Span(0.0, body, "body width", words="body")], line, Side.BEFORE, 0.0)
    if over:
        whole = [Span(-over, body + over, "overall width", words="overall")]
        widths(view, whole, line - 1.9 * letters, Side.BEFORE, 0.0)
