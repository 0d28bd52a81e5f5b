"""What drawers run on, as a section shows it: battens and full-length runners seen, a centre guide cut."""

from casewright.drawing.canvas import Line
from casewright.drawing.view import View, box
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.parts import Part

BATTEN, GUIDE, FULL_RUNNER = "H1", "H3", "W6"


def draw_running(view: View, unit: Construction, plane: Inches) -> None:
    """Draws what carries the drawers that are cut, where no web frame does.

    Args:
        view: the section
        unit: the unit, worked out
        plane: where it is cut, from the outside of the left case side [in]
    """
    for drawer in unit.drawers:
        opening = drawer.sizes.opening
        if not opening.left < plane < opening.left + opening.width:
            continue
        for part in unit.parts:
            if part.line == BATTEN and part.code.endswith(f"-{drawer.sizes.code}-L"):
                _seen(view, part, drawer.sizes.length)
            elif part.line == GUIDE and part.code.endswith(f"-{drawer.sizes.code}-G"):
                _guide(view, part, plane)
    for part in unit.case.parts:
        if part.line == FULL_RUNNER and part.box.x + part.box.width <= plane:
            _seen(view, part, unit.spec.case.rail_width)


def _seen(view: View, part: Part, start: Inches) -> None:
    """A bar seen beyond the plane, from behind what hides its front."""
    for height in (part.box.z, part.box.z + part.box.height):
        view.polyline(Line.SEEN, (start, height), (part.box.y + part.box.depth, height))


def _guide(view: View, part: Part, plane: Inches) -> None:
    """A guide: cut where the plane goes through it, else seen."""
    held = part.box
    if held.x < plane < held.x + held.width:
        view.cut(box(held.y, held.z, held.depth, held.height), part.code, apart=2.0)
    elif held.x + held.width <= plane:
        _seen(view, part, held.y)
