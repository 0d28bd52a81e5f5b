"""A drawer that is notched around pipes, from above: its boards, and what is cut out of its bottom."""

from itertools import pairwise

from casewright.drawing.canvas import Line, Point
from casewright.drawing.dimensions import Side, Span, levels, widths
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.view import View, box
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import INNER_BACK, NotchSizes
from casewright.pieces.layout.parts import Box, CutOut

BOTTOM = "N"


def notch_plan(unit: Construction, drawer: Drawer, shown: LengthUnit | None = None) -> Drawing:
    """The plan of a notched drawer, cut through its boards, the front below.

    Args:
        unit: the unit, worked out
        drawer: one of its drawers, notched around pipes
        shown: the unit of its sizes; None for that in which the piece was drawn

    Returns:
        The drawing; the bottom, which lies below the cut, is dashed with its cut-out.

    Raises:
        ValueError: the drawer has no notch

    Source: common practice of shop drawing.
    """
    notch, cut = drawer.sizes.notch, drawer.bottom.cut_out
    if notch is None or cut is None:
        raise ValueError(f"{drawer.code} has no notch")
    return fitted(
        lambda sheet: _draw(View(sheet), unit, drawer, notch, cut),
        shown or unit.spec.unit,
        name=f"{drawer.code}-notch",
        title=f"{drawer.code}, notched around pipes",
        subject="Plan, cut through its boards, the bottom dashed",
        work=(drawer.sizes.width, drawer.sizes.length),
    )


def _draw(view: View, unit: Construction, drawer: Drawer, notch: NotchSizes, cut: CutOut) -> None:
    start = f"{drawer.code}-"
    parts = {part.code.removeprefix(start): part for part in unit.parts if part.code.startswith(start)}
    side = parts["SL"].box
    # From the outside of the left side, and from the face of the board that the sides are joined to.
    aside, back = side.x, parts[INNER_BACK].box.y - notch.start
    level, front = side.z + side.height / 2, 0.0
    for part in parts.values():
        if part.box.z < level < part.box.z + part.box.height:
            place = _moved(part.box, aside, back)
            front = min(front, place.y)
            corners = box(place.x, place.y, place.width, place.depth)
            view.cut(corners, part.code, rising=place.width >= place.depth)
    bottom = _moved(parts[BOTTOM].box, aside, back)
    view.polyline(Line.HIDDEN, *_outline(bottom, cut))
    view.sheet.letter(view.at(drawer.sizes.width / 2, drawer.sizes.inner + notch.room / 2), drawer.sizes.code)
    _sizes(view, drawer, notch, (bottom, cut), front)


def _moved(place: Box, aside: Inches, back: Inches) -> Box:
    return Box(place.x - aside, place.y - back, place.z, place.width, place.depth, place.height)


def _outline(bottom: Box, cut: CutOut) -> list[Point]:
    """The bottom with its cut-out at the rear, from its left front corner."""
    right, rear = bottom.x + bottom.width, bottom.y + bottom.depth
    start, floor = bottom.x + cut.along, rear - cut.depth
    return [
        (bottom.x, bottom.y),
        (right, bottom.y),
        (right, rear),
        (start + cut.length, rear),
        (start + cut.length, floor),
        (start, floor),
        (start, rear),
        (bottom.x, rear),
        (bottom.x, bottom.y),
    ]


def _sizes(view: View, drawer: Drawer, notch: NotchSizes, bottom: tuple[Box, CutOut], front: Inches) -> None:
    """Arms and notch behind, the cut-out of the bottom behind those; what lies how far back at the right."""
    sizes, letters = drawer.sizes, view.sheet.letters
    place, cut = bottom
    rear = max(notch.start + notch.head + notch.depth, place.y + place.depth)
    clear = (0.0, notch.left, notch.left + notch.width, sizes.width)
    names = ("left arm, outside", "notch", "right arm, outside")
    spans = [Span(start, end, name) for name, (start, end) in zip(names, pairwise(clear), strict=True)]
    line = rear + 1.2 * letters
    line = widths(view, spans, line, Side.AFTER, rear) + 0.8 * letters
    start = place.x + cut.along
    sawn = [
        Span(place.x, start, "cut-out of the bottom, from its left end"),
        Span(start, start + cut.length, "cut-out of the bottom, wide", words="cut-out"),
    ]
    widths(view, sawn, line, Side.AFTER, rear)
    whole = [Span(0.0, sizes.width, "width of the drawer", words="drawer")]
    widths(view, whole, front - 2.2 * letters, Side.BEFORE, front)
    marks = [
        (0.0, "front of the box"),
        (notch.start, "front face of the inner back"),
        (notch.start + notch.head, "front of the notch"),
        (place.y + place.depth - cut.depth, "front of the cut-out of the bottom"),
        (place.y + place.depth, "rear edge of the bottom"),
        (rear, "rear end of the sides"),
    ]
    found = {round(back, 6): name for back, name in marks}
    levels(
        view, sorted(found.items()), sizes.width, sizes.width + 1.3 * letters, Side.AFTER, "from the\nfront"
    )
