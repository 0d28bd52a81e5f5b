"""What is marked on boards as SVG in full size, for a drawing program or a cutter: a group for each use."""

from collections.abc import Iterable, Sequence
from xml.sax.saxutils import escape

from casewright.drawing.canvas import plain, written
from casewright.joinery.solid import Flat, Stroke
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.measure.units import MILLIMETRES_PER_INCH
from casewright.papers.full_size import NamedStrip

BETWEEN = 60.0
"""Room between two strips [mm]."""
MARGIN = 10.0
"""Room around all of it [mm]."""
LETTERS = 3.0
"""Height of the lettering [mm]."""
LINES = 3
"""Lines of words over a strip."""
COLOURS = {"edge": "#000000", "gauge": "#b00020", "saw": "#0b57d0", "stop": "#137333", "waste": "#9aa0a6"}
"""A colour for each use, as cutters tell their lines apart."""


def strips_svg(strips: Iterable[NamedStrip], title: str) -> bytes:
    """Strips beside each other, each with its reference edge at the bottom and the board's end at the left.

    Args:
        strips: what is marked, and on which parts
        title: what they are of

    Returns:
        The file: a unit of it is a millimetre, the same for the same strips.

    Source: SVG 2, section 8.2 (viewBox), a length in mm for a box in the same number of units.
    """
    held = tuple(strips)
    high = max((each.strip.height for each in held), default=0.0) * MILLIMETRES_PER_INCH
    top = MARGIN + LINES * 2 * LETTERS
    body, left = list[str](), MARGIN
    for each in held:
        body += _strip(each, left, top + high)
        left += each.strip.length * MILLIMETRES_PER_INCH + BETWEEN
    wide, tall = left - BETWEEN + max(MARGIN, 20 * LETTERS), top + high + MARGIN
    size = f'width="{plain(wide)}mm" height="{plain(tall)}mm" viewBox="0 0 {plain(wide)} {plain(tall)}"'
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" {size}>',
        f"<title>{escape(written(title))}</title>",
        *body,
        "</svg>",
        "",
    ]
    return "\n".join(lines).encode()


def _strip(named: NamedStrip, left: float, foot: float) -> list[str]:
    strip = named.strip

    def at(point: Flat) -> str:
        x, y = left + point[0] * MILLIMETRES_PER_INCH, foot - point[1] * MILLIMETRES_PER_INCH
        return f"{plain(x)},{plain(y)}"

    def outline(corners: Iterable[Flat]) -> str:
        return f'<polygon points="{" ".join(map(at, corners))}"/>'

    edges = ((0.0, 0.0), (strip.length, 0.0), (strip.length, strip.height), (0.0, strip.height))
    drawn = {"edge": [outline(edges)], "waste": [outline(shape) for shape in strip.waste]}
    for stroke in Stroke:
        drawn[stroke.value] = [
            f'<polyline points="{at(line.start)} {at(line.end)}"/>'
            for line in strip.lines
            if line.stroke is stroke
        ]
    groups = [_group(use, shapes) for use, shapes in drawn.items() if shapes]
    labels = [
        _text(label, *map(float, at(line.end).split(",")))
        for line in strip.lines
        if (label := in_unit(line.label, LengthUnit.MILLIMETRE))
    ]
    words = (f"{strip.board}, {strip.placed}, {strip.foot} at the foot", named.serves, named.title)
    x, y = (float(number) for number in at((0.0, strip.height)).split(","))
    told = [
        _text(said, x, y - LETTERS * (1 + 2 * number))
        for number, said in enumerate(each for each in words if each)
    ]
    return [
        *groups,
        f'<g class="words" font-size="{plain(LETTERS)}" font-family="sans-serif">',
        *labels,
        *told,
        "</g>",
    ]


def _group(use: str, shapes: Sequence[str]) -> str:
    look = f'fill="none" stroke="{COLOURS[use]}" stroke-width="0.1"'
    return "\n".join([f'<g class="{use}" {look}>', *shapes, "</g>"])


def _text(words: str, x: float, y: float) -> str:
    return f'<text x="{plain(x)}" y="{plain(y)}">{escape(written(words))}</text>'
