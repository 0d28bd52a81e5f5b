"""A unit in a few lines, to be told from others at a glance: no size, no code."""

from casewright.drawing.bases import foot_outline, is_in_front
from casewright.drawing.canvas import Line, Sheet
from casewright.drawing.legs import leg_outlines
from casewright.drawing.page import Drawing
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction

LARGEST = 1.75
"""The longer side of the work on paper [in]."""
KNOB = 0.7
"""Radius of the dot that stands for a pull [in]."""


def small_elevation(unit: Construction) -> Drawing:
    """The front of a unit in outline: case, top, base, drawers and pulls.

    Args:
        unit: the unit, worked out

    Returns:
        The drawing.

    Source: common practice of catalogues.
    """
    spec, face = unit.spec, unit.face
    width, height = spec.overall_width, face.overall_height
    view = View(Sheet(max(width, height) / LARGEST, spec.unit))
    _draw(view, unit)
    left, bottom, right, top = view.sheet.reach
    margin = 0.04 * view.sheet.scale
    return Drawing(
        name=f"{spec.code}-small",
        title=f"{spec.name}, front",
        description=f"{len(unit.drawers)} drawers in {len(face.rows)} rows.",
        scale=view.sheet.scale,
        left=left - margin,
        top=-top - margin,
        width=right - left + 2 * margin,
        height=top - bottom + 2 * margin,
        body=view.sheet.body(),
    )


def _draw(view: View, unit: Construction) -> None:
    spec, face = unit.spec, unit.face
    over, base = spec.top.overhang_sides, face.base_height
    view.rectangle(Line.OBJECT, 0.0, base, spec.body.width, face.body_height)
    view.rectangle(
        Line.OBJECT, -over, base + face.body_height, spec.body.width + 2 * over, spec.top.thickness
    )
    for outline in leg_outlines(unit, spec.body.width):
        view.polygon(Line.OBJECT, outline)
    for part in unit.case.parts:
        if part.line[0] != "B" or not is_in_front(unit, part):
            continue
        if foot := foot_outline(unit, part):
            view.polygon(Line.OBJECT, foot)
        else:
            view.rectangle(Line.OBJECT, part.box.x, part.box.z, part.box.width, part.box.height)
    for opening in face.openings:
        where = (opening.left, base + opening.bottom, opening.width, opening.height)
        view.rectangle(Line.TONE, *where)
        view.rectangle(Line.FRONT, *where)
    for drawer in unit.drawers:
        opening = drawer.sizes.opening
        for centre in drawer.pulls:
            view.circle(
                Line.FRONT, (centre, base + opening.bottom + opening.height / 2), _knob(opening.height)
            )


def _knob(height: Inches) -> Inches:
    return min(KNOB, height / 5)
