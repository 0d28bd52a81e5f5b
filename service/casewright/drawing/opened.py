"""A unit from the side with its drawers open: how far each comes out to its stop."""

from collections.abc import Iterator

from casewright.drawing.bases import feet_from_the_side
from casewright.drawing.canvas import Line
from casewright.drawing.dimensions import Side, Span, levels, widths
from casewright.drawing.framed_sides import draw_framed_side
from casewright.drawing.ground import ground_beside, heights_from
from casewright.drawing.legs import leg_outlines
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.view import View
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit, say
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.parts import Box


def opened_view(unit: Construction, shown: LengthUnit | None = None) -> Drawing:
    """The side of a unit, every drawer out as far as its travel lets it, the front at the left.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes; None for that in which the piece was drawn

    Returns:
        The drawing; one drawer stands for all of a row that come out alike.

    Source: common practice of shop drawing.
    """
    spec = unit.spec
    reach = max((drawer.travel for drawer in unit.drawers), default=0.0)
    return fitted(
        lambda sheet: _draw(View(sheet), unit),
        shown or spec.unit,
        name=f"{spec.code}-opened",
        title=f"{spec.code}: {spec.name}",
        subject="From the side, every drawer open to its stop",
        work=(spec.overall_depth + reach, unit.face.overall_height),
    )


def rows_open(unit: Construction) -> tuple[Drawer, ...]:
    """One drawer for each height at which drawers open: the one that comes out farthest, from the top.

    Args:
        unit: the unit, worked out

    Returns:
        The drawers.

    Source: geometry of the face.
    """
    found: dict[Inches, Drawer] = {}
    for drawer in unit.drawers:
        place = round(drawer.sizes.opening.bottom, 6)
        if place not in found or drawer.travel > found[place].travel:
            found[place] = drawer
    return tuple(found[place] for place in sorted(found, reverse=True))


def _draw(view: View, unit: Construction) -> None:
    spec, face, letters = unit.spec, unit.face, view.sheet.letters
    base, body = face.base_height, face.body_height
    _case(view, unit)
    if spec.top.over:
        view.rectangle(Line.OBJECT, -spec.top.overhang_front, base + body, spec.top_depth, spec.top.over)
    drawers = rows_open(unit)
    fronts = {part.code: part.box for part in unit.parts if part.line.startswith("F")}
    for drawer in drawers:
        _drawer(view, unit, drawer, fronts[f"{drawer.code}-F"])
    out = max(drawer.travel for drawer in drawers)
    before = min(fronts[f"{drawer.code}-F"].y for drawer in drawers)
    ground_beside(view, unit, before - out)
    lowest, heading = heights_from(unit)
    marks = [(0.0, lowest), *_heights(unit, drawers), (face.overall_height, "top")]
    edge = spec.body.depth
    levels(view, sorted(marks), edge, edge + 1.3 * letters, Side.AFTER, heading)
    line = -2.2 * letters
    spans = [
        Span(before - out, before, "greatest travel", words="travel"),
        Span(0.0, spec.body.depth, "body depth", words="body"),
    ]
    widths(view, spans, line, Side.BEFORE, 0.0)
    safe = unit.stand.safe_travel
    most = in_unit(say("{:down bare}", safe), view.sheet.unit)
    view.sheet.say(f"All open and filled, it is safe to {most} of travel by the screen")


def _case(view: View, unit: Construction) -> None:
    """The side of the case and what it stands on: legs, feet, or a base as far as it reaches."""
    spec, base, body = unit.spec, unit.face.base_height, unit.face.body_height
    if spec.legs:
        for outline in leg_outlines(unit, spec.body.depth):
            view.polygon(Line.OBJECT, outline)
        view.rectangle(Line.OBJECT, spec.legs.leg, base, spec.body.depth - 2 * spec.legs.leg, body)
        return
    view.rectangle(Line.OBJECT, 0.0, base, spec.body.depth, body)
    draw_framed_side(view, unit)
    feet = list(feet_from_the_side(unit))
    for outline in feet:
        view.polygon(Line.OBJECT, outline)
    if base and not feet:
        start = spec.support_front
        view.rectangle(Line.OBJECT, start, 0.0, spec.support_rear - start, base)


def _drawer(view: View, unit: Construction, drawer: Drawer, front: Box) -> None:
    """One drawer, out by its travel: what has left the case is drawn whole, the rest dashed.

    The front stands where it is: in its opening flush, or before the case and over its edges.
    """
    sizes, low = drawer.sizes, unit.face.base_height + drawer.sizes.opening.bottom
    low += unit.spec.drawers.clearances.bottom
    out, inside = drawer.travel, sizes.length - drawer.travel
    view.rectangle(Line.TONE, -out, low, out, sizes.height)
    view.rectangle(Line.SEEN, -out, low, out, sizes.height, f"{drawer.code}-SL")
    view.rectangle(Line.TONE, front.y - out, front.z, front.depth, front.height)
    view.rectangle(Line.FRONT, front.y - out, front.z, front.depth, front.height, f"{drawer.code}-F")
    if inside > 0:
        view.rectangle(Line.HIDDEN, 0.0, low, inside, sizes.height)
    words = f"{sizes.opening.code}: {view.sheet.size(drawer.travel)}"
    room = 0.92 * out / view.sheet.width_of(words)
    size = min(1.0, 0.8 * sizes.height / view.sheet.letters, room)
    view.sheet.letter((-out / 2, low + sizes.height / 2), words, size=max(size, 0.5), inches=drawer.travel)


def _heights(unit: Construction, drawers: tuple[Drawer, ...]) -> Iterator[tuple[Inches, str]]:
    for drawer in drawers:
        opening = drawer.sizes.opening
        yield unit.face.base_height + opening.bottom, f"opening {opening.code}"
