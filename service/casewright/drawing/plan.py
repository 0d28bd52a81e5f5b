"""A unit from above, cut through a row of drawers, and through its doors where those hang elsewhere."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from casewright.drawing.canvas import Line, Sheet
from casewright.drawing.dimensions import Side, Span, heights, levels, room_for_upright, widths
from casewright.drawing.door_cuts import cut_from_above
from casewright.drawing.door_swing import arc_from_above, open_from_above
from casewright.drawing.ground import is_hung
from casewright.drawing.hidden import Seen, in_sight
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.picks import Where, draw_picks_from_above
from casewright.drawing.view import View, box
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Inches, Number
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import Opening, Space
from casewright.pieces.layout.parts import Box, Part

BETWEEN = 1.5
"""Room between one plan and the words over the next [letters]."""
SIZES = (1.0, 0.85, 0.7)
"""Of a code, the largest first, as parts of the lettering."""
OFF_THE_MIDDLE = (0.5, 0.4, 0.3, 0.6, 0.7)
"""Where doors are cut, as parts of their height: not through a shelf or a rail, if it can be helped."""


def plan_view(unit: Construction, shown: LengthUnit | None = None, where: Where | None = None) -> Drawing:
    """The plan of a unit: cut level through the row with the most drawers, the front below.

    Doors that this cut passes by are cut in a second plan under the first.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes; None for that in which the piece was drawn
        where: the address to which a drawer in it leads; None for a drawing without links

    Returns:
        The drawing.

    Source: common practice of shop drawing: a plan stands under the elevation, its front towards the reader.
    """
    spec = unit.spec
    cuts = plan_levels(unit)
    deep = spec.overall_depth * len(cuts) + max((door.plan.width for door in unit.doors), default=0.0)
    through = "a row of drawers"
    if unit.doors:
        through += ", and through the doors" if len(cuts) > 1 else " and the doors"
    return fitted(
        lambda sheet: _draw(sheet, unit, cuts, where),
        shown or spec.unit,
        name=f"{spec.code}-plan",
        title=f"{spec.code}: {spec.name}",
        subject=f"Plan, cut through {through}",
        work=(spec.overall_width, deep),
    )


def plan_levels(unit: Construction) -> tuple[Inches, ...]:
    """The heights at which a unit is cut: through drawers, and through doors that this passes by.

    Args:
        unit: the unit, worked out

    Returns:
        One height or two, above the floor [in]

    Source: common practice: a plan is cut where most is seen.
    """
    level = plan_level(unit)
    missed = [door for door in unit.doors if not _is_at(door, level)]
    if not missed:
        return (level,)
    most = max(missed, key=lambda door: sum(_is_at(other, _level_of(unit, door)) for other in missed))
    return level, _level_of(unit, most)


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


def _level_of(unit: Construction, door: Door) -> Inches:
    """Where a door is cut, clear of its rails and of whatever lies level: shelves, dividers, bottoms."""
    rails = tuple(f"{leaf.code}-R" for leaf in door.plan.leaves)
    lying = [part for part in unit.parts if part.box.height < part.box.depth or part.code.startswith(rails)]
    tried = [round(8 * (door.plan.z + share * door.plan.height)) / 8 for share in OFF_THE_MIDDLE]
    return min(tried, key=lambda level: sum(_is_cut(part, level) for part in lying))


def _is_at(door: Door, level: Inches) -> bool:
    return door.plan.z < level < door.plan.z + door.plan.height


def _middle(unit: Construction, drawer: Drawer) -> Inches:
    opening = drawer.sizes.opening
    return unit.face.base_height + opening.bottom + opening.height / 2


def _fronts(unit: Construction) -> list[Part]:
    codes = {f"{drawer.code}-F" for drawer in unit.drawers}
    return [part for part in unit.parts if part.code in codes]


def _is_cut(part: Part, level: Inches) -> bool:
    return part.box.z < level < part.box.z + part.box.height


def _draw(sheet: Sheet, unit: Construction, cuts: Sequence[Inches], where: Where | None) -> None:
    """One plan under the other; where there are two, each says how high it is cut."""
    for number, level in enumerate(cuts):
        drawn = sheet.fresh()
        _plan(View(drawn), unit, level)
        if len(cuts) > 1:
            _caption(drawn, unit, level)
        shift = 0.0
        if number:
            shift = sheet.reach[1] - BETWEEN * sheet.letters - drawn.reach[3]
            drawn = sheet.fresh()
            _plan(View(drawn, 0.0, shift), unit, level)
            _caption(drawn, unit, level)
        if where:
            cut = [drawer for drawer in unit.drawers if _is_cut_drawer(unit, drawer, level)]
            draw_picks_from_above(View(drawn, 0.0, shift), cut, where)
        sheet.add(drawn)


def _caption(sheet: Sheet, unit: Construction, level: Inches) -> None:
    """Over a plan: what it cuts, and how high above the floor."""
    cut = [drawer.sizes.opening.row_code for drawer in unit.drawers if _is_cut_drawer(unit, drawer, level)]
    cut += [door.plan.opening.row_code for door in unit.doors if _is_at(door, level)]
    codes = ", ".join(dict.fromkeys(cut))
    above = "underside" if is_hung(unit) else "floor"
    left, _, _, top = sheet.reach
    words = f"Cut through {codes}, {sheet.size(level)} above the {above}"
    sheet.letter((left, top + 0.9 * sheet.letters), words, "start")
    sheet.say(words)


def _plan(view: View, unit: Construction, level: Inches) -> None:
    spec = unit.spec
    top = spec.top
    # What lies above the cut is shown by its outline only; depth runs away from the reader.
    outline = (-top.overhang_sides, -top.overhang_front, spec.overall_width, spec.overall_depth)
    view.rectangle(Line.HIDDEN, *outline)
    doors = [door for door in unit.doors if _is_at(door, level)]
    hung = tuple(f"{leaf.code}-" for door in unit.doors for leaf in door.plan.leaves)
    front = -top.overhang_front
    right = spec.body.width + top.overhang_sides
    cut = [part for part in unit.parts if _is_cut(part, level) and not part.code.startswith(hung)]
    for part in cut:
        _cut_part(view, part.box, part.code, [other.box for other in cut if other is not part])
        front = min(front, part.box.y)
        right = max(right, part.box.x + part.box.width)
    for part, outline_of in cut_from_above(unit, level):
        turned = [(across, back) for back, across in outline_of]
        view.cut(turned, part.code, rising=part.box.width >= part.box.depth)
        front = min(front, part.box.y)
    front = min((front, *(_open(view, door) for door in doors)))
    _shelves_below(view, unit, doors, level)
    _letter(view, unit, doors, level)
    _sizes(view, unit, level, (right, front))


def _cut_part(view: View, place: Box, code: str, others: Sequence[Box]) -> None:
    """A part that is cut: hatched but for what reaches into it, such as a tenon, which has its own."""
    view.polygon(Line.CUT, box(place.x, place.y, place.width, place.depth), code)
    into = [_seen(other) for other in others if _slender(other) > _slender(place)]
    for x, y, wide, deep in in_sight(_seen(place), into):
        view.hatch(box(x, y, wide, deep), rising=place.width >= place.depth)


def _seen(place: Box) -> Seen:
    return place.x, place.y, place.width, place.depth


def _slender(place: Box) -> Number:
    """How much longer than thick a part is: of two that meet, the more slender one ends in the other."""
    return max(place.width, place.depth) / min(place.width, place.depth)


def _open(view: View, door: Door) -> Inches:
    """The leaves of an opening swung open, dashed, with the way of their free edges; how far they reach."""
    for leaf in door.plan.leaves:
        view.rectangle(Line.HIDDEN, *open_from_above(door, leaf))
        view.polyline(Line.HIDDEN, *arc_from_above(door, leaf))
        view.sheet.say(f"{leaf.code} swings open to the {leaf.hinged}")
    return -door.plan.width


def _shelves_below(view: View, unit: Construction, doors: Sequence[Door], level: Inches) -> None:
    """Of the shelves behind the doors that are cut, the first below the cut, as it is seen from above."""
    for door in doors:
        start = f"{unit.spec.code}-{door.plan.opening.code}-SH"
        below = [part for part in unit.case.parts if part.code.startswith(start) and part.box.z < level]
        top = max((part.box.z + part.box.height for part in below), default=0.0)
        for part in below:
            if abs(part.box.z + part.box.height - top) < 1e-6 and not _is_cut(part, level):
                view.rectangle(Line.SEEN, part.box.x, part.box.y, part.box.width, part.box.depth)


def _letter(view: View, unit: Construction, doors: Sequence[Door], level: Inches) -> None:
    """The codes of what is cut, each within its opening."""
    for drawer in unit.drawers:
        if _is_cut_drawer(unit, drawer, level):
            opening, notch = drawer.sizes.opening, drawer.sizes.notch
            deep = drawer.sizes.inner + notch.room / 2 if notch else drawer.sizes.length / 2
            _code(view, opening, deep)
    for door in doors:
        _code(view, door.plan.opening, door.plan.opening.depth / 2)


def _code(view: View, opening: Opening | Space, deep: Inches) -> None:
    """The code of an opening in its middle, as large as it fits between the drawer's sides; else upright."""
    sheet, room = view.sheet, 0.85 * opening.width
    at = view.at(opening.left + opening.width / 2, deep)
    size = next((each for each in SIZES if sheet.width_of(opening.code, each) < room), None)
    if size is not None:
        sheet.letter(at, opening.code, size=size)
    else:
        sheet.letter(at, opening.code, size=SIZES[-1], upright=True)


def _sizes(view: View, unit: Construction, level: Inches, edges: tuple[Inches, Inches]) -> None:
    """The widths below, and how far back things lie, at the right."""
    spec, letters = unit.spec, view.sheet.letters
    right, front = edges
    cut = [drawer for drawer in unit.drawers if _is_cut_drawer(unit, drawer, level)]
    openings = [
        *(drawer.sizes.opening for drawer in cut),
        *(door.plan.opening for door in unit.doors if _is_at(door, level)),
    ]
    spans = [
        Span(each.left, each.left + each.width, f"opening width of {each.code}")
        for each in sorted(openings, key=lambda each: each.left)
    ]
    line = view.at(0, front)[1] - max(2.2 * letters, room_for_upright(view, spans))
    line = widths(view, spans, line, Side.BEFORE, front)
    over = spec.top.overhang_sides
    whole = [Span(-over, spec.body.width + over, "overall width", words="overall")]
    widths(view, whole, line - 1.9 * letters, Side.BEFORE, front)
    marks = [(0.0, "front of the case"), (spec.body.depth, "back of the case")]
    marks += [(cut[0].sizes.length, f"back end of drawer {cut[0].sizes.opening.code}")] if cut else []
    marks += [(head, f"front of the notch of {code}") for head, code in _notches(view, unit, cut)]
    doors = [door for door in unit.doors if _is_at(door, level)]
    edge = max(right, *map(_reach_of, doors), right)
    line = edge + 1.3 * letters
    levels(view, sorted(marks), edge, line, Side.AFTER, "from the\nfront")
    if doors:
        widest = max(doors, key=lambda door: door.plan.width)
        swung = Span(-widest.plan.width, 0.0, f"door {widest.plan.opening.code}, open, before the case")
        heights(view, [swung], edge, line, Side.AFTER)


def _reach_of(door: Door) -> Inches:
    """How far to the right the open leaves of an opening stand [in]."""
    return max(left + wide for left, _, wide, _ in (open_from_above(door, leaf) for leaf in door.plan.leaves))


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
        line = view.at(0, edge)[1] + 1.2 * view.sheet.letters
        widths(view, spans, line, Side.AFTER, sizes.length)
        head = sizes.length + inset - notch.depth
        if round(head, 6) not in told:
            told.add(round(head, 6))
            yield head, code


def _is_cut_drawer(unit: Construction, drawer: Drawer, level: Inches) -> bool:
    opening = drawer.sizes.opening
    low = unit.face.base_height + opening.bottom
    return low < level < low + opening.height
