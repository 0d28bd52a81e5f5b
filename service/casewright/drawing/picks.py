"""Places in the views of a unit that lead to what they show: openings, rows, top, base and sides."""

from collections.abc import Callable, Iterable, Iterator

from casewright.drawing.canvas import Link
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import Opening, Space

FINGER = 0.46
"""What is pressed is at least so large on paper: 44 px of a screen (WCAG 2.2, 2.5.5) [in]."""
Where = Callable[[str], str]
"""The address of a code, such as `R1-2`, `R1`, `top`, `base` or `side`; empty for none."""
Rectangle = tuple[Inches, Inches, Inches, Inches]
"""Left, lower edge, width and height [in]."""


def draw_picks(view: View, unit: Construction, where: Where) -> None:
    """Lays a link over every opening, row, top, base and side of a front elevation.

    Args:
        view: what it is drawn on
        unit: the unit, worked out
        where: the address of each

    Source: common practice of drawings that are worked with; least sizes by WCAG 2.2, 2.5.5 and 2.5.8.
    """
    for code, words, (left, bottom, width, height) in (
        *_parts(view, unit),
        *_rows(view, unit),
        *_openings(view, unit),
    ):
        address = where(code)
        if address:
            corner = view.at(left, bottom)
            link = Link(code, address, words)
            view.sheet.link(corner, width * view.factor, height * view.factor, link)


def draw_drawer_picks(
    view: View, unit: Construction, drawers: Iterable[Drawer], where: Where, *, are_open: bool = False
) -> None:
    """Lays a link over every drawer of a view from the side, the front at its left.

    Args:
        view: what it is drawn on
        unit: the unit, worked out
        drawers: those that are seen, or cut
        where: the address of each
        are_open: are they drawn open to their stops, or shut?

    Source: common practice of drawings that are worked with.
    """
    for drawer in drawers:
        opening = drawer.sizes.opening
        out = drawer.travel if are_open else 0.0
        front = out + unit.spec.drawers.stands_before
        rectangle = (-front, unit.face.base_height + opening.bottom, front + opening.depth, opening.height)
        _place(view, opening, rectangle, where)


def draw_picks_from_above(view: View, drawers: Iterable[Drawer], where: Where) -> None:
    """Lays a link over every drawer that a plan cuts, the front below.

    Args:
        view: what it is drawn on
        drawers: those that are cut
        where: the address of each

    Source: common practice of drawings that are worked with.
    """
    for drawer in drawers:
        opening = drawer.sizes.opening
        _place(view, opening, (opening.left, 0.0, opening.width, opening.depth), where)


def _place(view: View, opening: Opening, rectangle: Rectangle, where: Where) -> None:
    address = where(opening.code)
    if address:
        left, bottom, width, height = rectangle
        link = Link(opening.code, address, _words(view, opening))
        view.sheet.link(view.at(left, bottom), width * view.factor, height * view.factor, link)


def _openings(view: View, unit: Construction) -> Iterator[tuple[str, str, Rectangle]]:
    """The openings from the top, each row from the left; a little of the dividers goes with each."""
    face, base = unit.face, unit.face.base_height
    around = unit.spec.frame.divider / 3
    for each in sorted(
        (*face.openings, *face.spaces), key=lambda each: (-each.bottom - each.height, each.left)
    ):
        where = (each.left, base + each.bottom - around, each.width, each.height + 2 * around)
        yield each.code, _words(view, each), where


def _words(view: View, opening: Opening) -> str:
    held = opening.holds if isinstance(opening, Space) else "drawer"
    size = view.sheet.size
    return f"{opening.code}: {held}, opening {size(opening.width)} wide, {size(opening.height)} high"


def _rows(view: View, unit: Construction) -> Iterator[tuple[str, str, Rectangle]]:
    """The rows of the whole face, where their heights are lettered."""
    letters, over = view.sheet.letters, unit.spec.top.overhang_sides
    for row in unit.face.rows:
        left = -over - 4.2 * letters
        words = f"Row {row.number}, {view.sheet.size(row.height)} high"
        yield row.code, words, (left, unit.face.base_height + row.bottom, 2.9 * letters, row.height)


def _parts(view: View, unit: Construction) -> Iterator[tuple[str, str, Rectangle]]:
    """Top, base and sides, each made large enough for a finger where there is room outside."""
    spec, face, least = unit.spec, unit.face, FINGER * view.sheet.scale
    over, base, body = spec.top.overhang_sides, face.base_height, spec.body.width
    side = max(spec.frame.side + 1.6 * view.sheet.letters, least / 2)
    for name, left in (("Left side", -(side - spec.frame.side)), ("Right side", body - spec.frame.side)):
        yield "side", f"{name} of the case", (left, base, side, face.body_height)
    top = max(spec.top.thickness, least)
    yield (
        "top",
        f"Top, {view.sheet.size(spec.top.thickness)} thick",
        (
            -over,
            base + face.body_height,
            body + 2 * over,
            top,
        ),
    )
    if base:
        low = max(base, least)
        words = f"{'Legs' if spec.legs else 'Base'}, {view.sheet.size(base)} high"
        yield "base", words, (0.0, base - low, body, low)
