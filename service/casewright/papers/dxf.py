"""What is marked on boards as DXF, for a machine or another drawing program: millimetres, a layer a use."""

import io
import re
from collections.abc import Iterable
from typing import TYPE_CHECKING

from casewright.joinery.solid import Flat, Stroke
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.measure.units import MILLIMETRES_PER_INCH
from casewright.papers.full_size import NamedStrip

if TYPE_CHECKING:
    from ezdxf.layouts.layout import Modelspace

VERSION = "R2010"
"""The oldest form that says in which unit it is drawn."""
IN_MILLIMETRES = 4
"""How DXF names millimetres ($INSUNITS)."""
LAYERS = {"EDGE": 7, "GAUGE": 1, "SAW": 5, "STOP": 3, "WASTE": 8, "WORDS": 2}
"""Layers and the numbers of their colours (AutoCAD Color Index, as the DXF reference has it)."""
BETWEEN = 60.0
"""Room between two strips [mm]."""
LETTERS = 3.0
"""Height of the lettering [mm]."""
NOT_PRINTED = re.compile(r"[\x00-\x1f\x7f]+")


def dxf_of(strips: Iterable[NamedStrip]) -> bytes:
    """Strips beside each other, each with its reference edge at the bottom and the board's end at the left.

    Args:
        strips: what is marked, and on which parts

    Returns:
        The file, the same for the same strips.

    Source: DXF Reference (Autodesk, 2010), written by ezdxf.
    """
    import ezdxf  # noqa: PLC0415 - a second and 100 MB, for those who ask alone
    from ezdxf.filemanagement import new  # noqa: PLC0415

    # No clock and no chance in it.
    ezdxf.options.write_fixed_meta_data_for_testing = True  # type: ignore[attr-defined]
    document = new(VERSION, units=IN_MILLIMETRES)
    for layer, colour in LAYERS.items():
        document.layers.add(layer, color=colour)
    space, left = document.modelspace(), 0.0
    for strip in strips:
        _draw(space, strip, left)
        left += strip.strip.length * MILLIMETRES_PER_INCH + BETWEEN
    held = io.StringIO()
    document.write(held)
    return held.getvalue().encode(document.output_encoding, errors="dxfreplace")


def _draw(space: "Modelspace", named: NamedStrip, left: float) -> None:
    strip = named.strip

    def at(point: Flat) -> tuple[float, float]:
        return left + point[0] * MILLIMETRES_PER_INCH, point[1] * MILLIMETRES_PER_INCH

    def outline(corners: Iterable[Flat], layer: str) -> None:
        space.add_lwpolyline([at(corner) for corner in corners], close=True, dxfattribs={"layer": layer})

    long, high = strip.length, strip.height
    outline(((0.0, 0.0), (long, 0.0), (long, high), (0.0, high)), "EDGE")
    for shape in strip.waste:
        outline(shape, "WASTE")
    for line in strip.lines:
        space.add_line(at(line.start), at(line.end), dxfattribs={"layer": _layer(line.stroke)})
        label = in_unit(line.label, LengthUnit.MILLIMETRE)
        if label:
            _letter(space, label, at(line.end))
    words = (named.title, named.serves, f"{strip.board}, {strip.placed}, {strip.foot} at the foot")
    for number, said in enumerate(each for each in words if each):
        x, y = at((0.0, high))
        _letter(space, said, (x, y + LETTERS * (2 + 2 * number)))


def _letter(space: "Modelspace", words: str, at: tuple[float, float]) -> None:
    text = NOT_PRINTED.sub(" ", words)
    space.add_text(text, height=LETTERS, dxfattribs={"layer": "WORDS", "insert": at})


def _layer(stroke: Stroke) -> str:
    return stroke.value.upper()
