"""A unit from above, cut through a row of drawers: case, fronts and boxes, and how deep they are."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from casewright.drawing.canvas import Line
from casewright.drawing.dimensions import Side, Span, levels, widths
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.view import View, box
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.parts import Box, Part


def plan_view(unit: Construction, shown: LengthUnit | None = None) -> Drawing:
    """The plan of a unit: cut level through the row with the most drawers, the front below.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes; None for that in which the piece was drawn

    Returns:
        The drawing.

    Source: common practice of shop drawing: a plan stands under the elevation, its front towards the reader.
    """
    spec = unit.spec
    level = plan_level(unit)
    return fitted(
        lambda sheet: _draw(View(sheet), unit, level),
        shown or spec.unit,
        name=f"{spec.code}-plan",
        title=f"{spec.code}: {spec.name}",
        subject="Plan, cut through a row of drawers",
        work=(spec.overall_width, spec.overall_depth),
    )


def plan_level(unit: Construction) -> Inches:
    """How high above the floor the plan is cut: halfway up notched drawers, else those of the fullest row.

    Args:
        unit: the unit, worked out

    Returns:
        The height [in]

    Source: common practice: a plan is cut where most is seen.
    """
    notched = [drawer for drawer in unit.drawers if drawer.sizes.notch]
    places = [_middle(unit, drawer) for drawer in notched or unit.drawers]
    return max(places, key=lambda level: sum(_is_cut(part, level) for part in _fronts(unit)))


def _middle(unit: Construction, drawer: Drawer) -> Inches:
    opening = drawer.sizes.opening
    return unit.face.base_height + opening.bottom + opening.height / 2


def _fronts(unit: Construction) -> list[Part]:
    codes = {f"{drawer.code}-F" for drawer in unit.drawers}
    return [part for part in unit.parts if part.code in codes]


def _is_cut(part: Part, level: Inches) -> bool:
    return part.box.z < level < part.box.z + part.box.height


def _draw(view: View, unit: Construction, level: Inches) -> None:
    spec = unit.spec
    top = spec.top
    # What lies above the cut is shown by its outline only; depth runs away from the reader.
    outline = (-top.overhang_sides, -top.overhang_front, spec.overall_width, spec.overall_depth)
    view.rectangle(Line.HIDDEN, *outline)
    for part in unit.parts:
        if _is_cut(part, level):
            _part(view, part.box, part.code)
    cut = [drawer for drawer in unit.drawers if _is_cut_drawer(unit, drawer, level)]
    letters = view.sheet.letters
    for drawer in cut:
        opening, notch = drawer.sizes.opening, drawer.sizes.notch
        deep = drawer.sizes.inner + notch.room / 2 if notch else drawer.sizes.length / 2
        view.sheet.letter((opening.left + opening.width / 2, deep), opening.code)
    openings = [drawer.sizes.opening for drawer in cut]
    spans = [Span(each.left, each.left + each.width, f"opening width of {each.code}") for each in openings]
    line = widths(view, spans, -top.overhang_front - 2.2 * letters, Side.BEFORE, -top.overhang_front)
    whole = [
        Span(-top.overhang_sides, spec.body.width + top.overhang_sides, "overall width", words="overall")
    ]
    widths(view, whole, line - 1.9 * letters, Side.BEFORE, -top.overhang_front)
    marks = [(0.0, "front of the case"), (spec.body.depth, "back of the case")]
    marks += [(cut[0].sizes.length, f"back end of drawer {cut[0].sizes.opening.code}")] if cut else []
    marks += [(head, f"front of the notch of {code}") for head, code in _notches(view, unit, cut)]
    edge = spec.body.width + top.overhang_sides
    levels(view, sorted(marks), spec.body.width, edge + 1.3 * letters, Side.AFTER, "from the\nfront")


def _notches(view: View, unit: Construction, cut: Sequence[Drawer]) -> Iterator[tuple[Inches, str]]:
    """The chain across the arms and the notch of each notched drawer; where its notch begins, its code."""
    inset, told = unit.spec.drawers.stops.inset, set()
    for drawer in cut:
        sizes, notch = drawer.sizes, drawer.sizes.notch
        if notch is None:
            continue
        code = sizes.opening.code
        left = sizes.opening.left + (sizes.opening.width - sizes.width) / 2
        places = (left, left + notch.left, left + notch.left + notch.width, left + sizes.width)
        names = ("left arm", "notch", "right arm")
        spans = [
            Span(start, end, f"{name} of {code}")
            for name, (start, end) in zip(names, pairwise(places), strict=True)
        ]
        edge = unit.spec.body.depth + unit.spec.top.overhang_back
        widths(view, spans, edge + 1.2 * view.sheet.letters, Side.AFTER, sizes.length)
        head = sizes.length + inset - notch.depth
        if round(head, 6) not in told:
            told.add(round(head, 6))
            yield head, code


def _is_cut_drawer(unit: Construction, drawer: Drawer, level: Inches) -> bool:
    opening = drawer.sizes.opening
    low = unit.face.base_height + opening.bottom
    return low < level < low + opening.height


def _part(view: View, place: Box, code: str) -> None:
    view.cut(
        box(place.x, place.y, place.width, place.depth),
        code,
        rising=place.width >= place.depth,
    )
