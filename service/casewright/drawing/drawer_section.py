"""A drawer cut from front to back: the bottom in its groove, and the corner where they meet at full size."""

from collections.abc import Sequence

from casewright.drawing.canvas import Line, Point
from casewright.drawing.dimensions import Side, Span, heights, widths
from casewright.drawing.view import View, box
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_spec import BottomGroove, PlyBottom
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer

BEVEL = 4.0
"""A raised bottom thins to its groove over about four times what it loses (common practice)."""


def is_grooved_behind(unit: Construction) -> bool:
    """Does the bottom sit in a groove of the back too, instead of passing under it?

    Args:
        unit: the unit

    Returns:
        Whether it does.

    Source: common practice: a plywood bottom may be held all round, a solid one has to move.
    """
    bottom = unit.spec.drawers.bottom
    return isinstance(bottom, PlyBottom) and bottom.hold == "four grooves"


def front_outline(front: Inches, height: Inches, groove: BottomGroove) -> Sequence[Point]:
    """The section of a drawer's front, with the groove in its inside face.

    Args:
        front: thickness of the front [in]
        height: height of the front [in]
        groove: the groove

    Returns:
        Its corners, from the lower outside edge [in]

    Source: geometry.
    """
    top = groove.height + groove.width
    floor = front - groove.depth
    return (
        (0.0, 0.0),
        (front, 0.0),
        (front, groove.height),
        (floor, groove.height),
        (floor, top),
        (front, top),
        (front, height),
        (0.0, height),
    )


def bottom_outline(drawer: Drawer, groove: BottomGroove, until: Inches | None = None) -> Sequence[Point]:
    """The section of a drawer's bottom: its upper face fills the groove, its underside is raised to fit.

    Args:
        drawer: the drawer
        groove: the groove
        until: where to break it off, from the outside of the front; None for all of it [in]

    Returns:
        Its corners, from the one in the groove [in]

    Source: common practice: a bottom thicker than its groove is raised below.
    """
    front = drawer.sizes.front
    start, top = front - groove.depth, groove.height + groove.width
    end = min(start + drawer.bottom.deep, until or start + drawer.bottom.deep)
    under = top - drawer.bottom.thickness
    lost = groove.height - under
    if lost <= 0:
        return box(start, max(groove.height, under), end - start, top - max(groove.height, under))
    foot = min(front + BEVEL * lost, end)
    return (
        (start, groove.height),
        (front, groove.height),
        (foot, under),
        (end, under),
        (end, top),
        (start, top),
    )


def groove_detail(view: View, unit: Construction, drawer: Drawer) -> None:
    """The lower front corner of a drawer with its groove, dimensioned.

    Args:
        view: where it is drawn
        unit: the unit
        drawer: the drawer

    Source: common practice of shop drawing.
    """
    groove, sheet, letters = unit.spec.drawers.groove, view.sheet, view.sheet.letters
    front, side_end = drawer.sizes.front, drawer.sizes.front * 2.2
    top = min(drawer.sizes.height, groove.height + groove.width + front * 0.8)
    outline = front_outline(front, top, groove)
    view.hatch(outline, rising=False)
    view.polyline(Line.CUT, outline[-1], *outline[:-1])
    view.broken(outline[-2], outline[-1])
    bottom = bottom_outline(drawer, groove, side_end)
    view.hatch(bottom, apart=2.0)
    view.polyline(Line.CUT, *bottom[-1:], *bottom[:-2])
    view.polyline(Line.CUT, bottom[-1], bottom[-2])
    view.broken(bottom[-3], bottom[-2])
    view.polyline(Line.SEEN, (front, 0.0), (side_end, 0.0))
    lettered = [
        Span(0.0, groove.height, "groove above the bottom edge"),
        Span(groove.height, groove.height + groove.width, "groove width"),
    ]
    heights(view, lettered, 0.0, view.x - 1.2 * letters, Side.BEFORE)
    below = view.y - 1.8 * letters
    widths(view, [Span(0.0, front, "drawer front", words="front")], below, Side.BEFORE, 0.0)
    above = view.at(0, top)[1] + letters
    depth = [Span(front - groove.depth, front, "groove depth", words="groove")]
    widths(view, depth, above, Side.AFTER, groove.height + groove.width)
    title = view.at(0, top)[1] + 3.4 * letters
    ratio = "full size" if view.factor == sheet.scale else f"enlarged {view.factor:g} times"
    sheet.letter((view.x - 2 * letters, title), f"{drawer.sizes.code}, {ratio}", "start")
