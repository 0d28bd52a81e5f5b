"""A unit with its drawers and doors open: from the side, and where it has doors from the front, too."""

from collections.abc import Iterator, Sequence

from casewright.drawing.bases import feet_from_the_side
from casewright.drawing.canvas import Line, Sheet
from casewright.drawing.dimensions import Side, Span, levels, widths
from casewright.drawing.door_swing import one_for_each_height
from casewright.drawing.framed_sides import draw_framed_side
from casewright.drawing.ground import ground_beside, heights_from
from casewright.drawing.legs import leg_outlines
from casewright.drawing.open_front import draw_open_front
from casewright.drawing.page import Drawing, fitted, letter_list
from casewright.drawing.picks import Where, draw_drawer_picks
from casewright.drawing.view import View
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit, say
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.parts import Box

SIZES = (1.0, 0.85, 0.7)
"""Of what is lettered on a drawer, the largest first, as parts of the lettering."""
CLEAR = 0.92
"""So much of the room between two lines may be lettered."""
LEGEND = 28.0
"""A line of words below the view is at least so long [letters]."""
BETWEEN = 1.5
"""Room between the view from the side and the words over that from the front [letters]."""


def opened_view(unit: Construction, shown: LengthUnit | None = None, where: Where | None = None) -> Drawing:
    """The side of a unit, all that opens open, the front at the left; under it its front, the doors open.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes; None for that in which the piece was drawn
        where: the address to which a drawer in it leads; None for a drawing without links

    Returns:
        The drawing; one drawer stands for all of a row that come out alike, one door for all at its height.

    Source: common practice of shop drawing.
    """
    spec, high = unit.spec, unit.face.overall_height
    reach = max((drawer.travel for drawer in unit.drawers), default=0.0)
    reach = max((reach, *(door.plan.width for door in unit.doors)))
    wide, subject = spec.overall_depth + reach, "From the side, every drawer open to its stop"
    if unit.doors:
        wide, high = max(wide, spec.overall_width), 2 * high
        subject = "From the side and from the front, drawers open to their stops, doors square"
    return fitted(
        lambda sheet: _draw(sheet, unit, where),
        shown or spec.unit,
        name=f"{spec.code}-opened",
        title=f"{spec.code}: {spec.name}",
        subject=subject,
        work=(wide, high),
    )


def rows_open(unit: Construction) -> tuple[Drawer, ...]:
    """The drawers that are seen from the side: of those at one height the one that comes out farthest.

    Of drawers that overlap in height the one nearest to the eye is seen, which stands at the right.

    Args:
        unit: the unit, worked out

    Returns:
        The drawers, from the top.

    Source: geometry of the face.
    """
    found: dict[tuple[Inches, Inches], Drawer] = {}
    for drawer in unit.drawers:
        place = _place(drawer)
        if place not in found or drawer.travel > found[place].travel:
            found[place] = drawer
    seen: list[Drawer] = []
    for drawer in sorted(found.values(), key=lambda each: (-each.sizes.opening.left, -each.travel)):
        if not any(_overlap(drawer, other) for other in seen):
            seen.append(drawer)
    return tuple(sorted(seen, key=lambda each: -each.sizes.opening.bottom))


def _place(drawer: Drawer) -> tuple[Inches, Inches]:
    """Where its opening begins, and how high it is [in]."""
    opening = drawer.sizes.opening
    return round(opening.bottom, 6), round(opening.height, 6)


def _overlap(one: Drawer, other: Drawer) -> bool:
    first, second = one.sizes.opening, other.sizes.opening
    low = max(first.bottom, second.bottom)
    return low + 1e-6 < min(first.bottom + first.height, second.bottom + second.height)


def _draw(sheet: Sheet, unit: Construction, where: Where | None) -> None:
    side = sheet.fresh()
    _side(View(side), unit)
    if where:
        draw_drawer_picks(View(side), unit, rows_open(unit), where, are_open=True)
    sheet.add(side)
    if not unit.doors:
        return
    tried = sheet.fresh()
    draw_open_front(View(tried), unit)
    left, bottom, _, _ = sheet.reach
    shift = bottom - BETWEEN * sheet.letters - tried.reach[3]
    front = sheet.fresh()
    draw_open_front(View(front, left - tried.reach[0], shift), unit)
    sheet.add(front)


def _side(view: View, unit: Construction) -> None:
    spec, face, letters = unit.spec, unit.face, view.sheet.letters
    base, body = face.base_height, face.body_height
    _case(view, unit)
    if spec.top.over:
        view.rectangle(Line.OBJECT, -spec.top.overhang_front, base + body, spec.top_depth, spec.top.over)
    drawers = rows_open(unit)
    fronts = {part.code: part.box for part in unit.parts if part.line.startswith("F")}
    doors = tuple(one_for_each_height(unit.doors))
    out = max((drawer.travel for drawer in drawers), default=0.0)
    before = min((fronts[f"{drawer.code}-F"].y for drawer in drawers), default=0.0)
    far = max((out - before, *(door.plan.width for door in doors)))
    for drawer in drawers:
        _drawer(view, unit, drawer, fronts[f"{drawer.code}-F"], -far)
    for door in doors:
        _door(view, unit, door, drawers)
    _shelves(view, unit)
    ground_beside(view, unit, -far)
    lowest, heading = heights_from(unit)
    marks = [
        (0.0, lowest),
        *_heights(unit, drawers),
        *_feet(doors, drawers, unit),
        (face.overall_height, "top"),
    ]
    edge = spec.body.depth + spec.top.overhang_back
    levels(view, sorted(marks), edge, edge + 1.3 * letters, Side.AFTER, heading)
    line = -2.2 * letters
    if doors:
        widest = max(doors, key=lambda door: door.plan.width).plan
        swung = Span(-widest.width, 0.0, f"door {widest.opening.code}, open", words="door")
        line = widths(view, [swung], line, Side.BEFORE, 0.0) - 1.9 * letters
    spans = [Span(0.0, spec.body.depth, "body depth", words="body")]
    if drawers:
        spans.insert(0, Span(before - out, before, "greatest travel", words="travel"))
    widths(view, spans, line, Side.BEFORE, 0.0)
    _hidden_drawers(view, unit, drawers)
    safe = unit.stand.safe_travel
    most = in_unit(say("{:down bare}", safe), view.sheet.unit)
    view.sheet.say(f"All open and filled, it is safe to {most} of travel by the screen")


def _hidden_drawers(view: View, unit: Construction, seen: Sequence[Drawer]) -> None:
    """Lettered under the view: the drawers that others hide, each with how far it comes out."""
    places = set(map(_place, seen))
    hidden = [each for each in unit.drawers if _place(each) not in places]
    if not hidden:
        return
    sheet = view.sheet
    told = [f"{each.sizes.opening.code} {sheet.size(each.travel)}" for each in hidden]
    left, bottom, right, _ = sheet.reach
    wide = max(right - left, LEGEND * sheet.letters)
    letter_list(sheet, "Behind them, so far out:", told, (left, bottom - sheet.letters), wide)


def _door(view: View, unit: Construction, door: Door, drawers: Sequence[Drawer]) -> None:
    """A door that stands square to the case, face on: whole, or dashed where drawers come out beside it."""
    plan, base = door.plan, unit.face.base_height
    leaf = plan.leaves[-1]
    beside = any(
        base + each.sizes.opening.bottom < plan.z + plan.height
        and plan.z < base + each.sizes.opening.bottom + each.sizes.opening.height
        for each in drawers
    )
    view.sheet.say(f"door {plan.opening.code} open, {view.sheet.size(plan.width)} before the case")
    if beside:
        view.rectangle(Line.HIDDEN, -plan.width, plan.z, plan.width, plan.height)
        return
    view.rectangle(Line.TONE, -plan.width, plan.z, plan.width, plan.height)
    view.rectangle(Line.FRONT, -plan.width, plan.z, plan.width, plan.height, leaf.code)
    for place in door.hinges:
        length = unit.spec.doors.hinge_length
        view.rectangle(Line.SEEN, 0.0, plan.z + place - length / 2, min(0.25, plan.thickness), length)
    if plan.frame is not None:
        stile = plan.frame.asked.how.stile
        low = plan.z + plan.frame.rails[-1]
        high = plan.height - plan.frame.rails[0] - plan.frame.rails[-1]
        view.rectangle(Line.SEEN, stile - plan.width, low, plan.width - 2 * stile, high)
    clear = plan.width if plan.frame is None else plan.frame.clear_width
    start = -(plan.width + clear) / 2
    middle = plan.z + plan.height / 2
    _letter_within(view, (plan.opening.code, plan.width), (start, start + clear), middle, plan.height)


def _shelves(view: View, unit: Construction) -> None:
    """The shelves behind doors and in open spaces, hidden by the side."""
    boxes = {
        tuple(round(each, 6) for each in (part.box.y, part.box.z, part.box.depth, part.box.height)): part.box
        for part in unit.case.parts
        if "-SH" in part.code
    }
    for box in boxes.values():
        view.rectangle(Line.HIDDEN, box.y, box.z, box.depth, box.height)


def _feet(
    doors: Sequence[Door], drawers: Sequence[Drawer], unit: Construction
) -> Iterator[tuple[Inches, str]]:
    """How high the openings with doors begin, where no drawer's does."""
    known = {round(drawer.sizes.opening.bottom, 6) for drawer in drawers}
    for door in doors:
        opening = door.plan.opening
        if round(opening.bottom, 6) not in known:
            known.add(round(opening.bottom, 6))
            yield unit.face.base_height + opening.bottom, f"opening {opening.code}"


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


def _drawer(view: View, unit: Construction, drawer: Drawer, front: Box, beyond: Inches) -> None:
    """One drawer, out by its travel: what has left the case is drawn whole, the rest dashed.

    What has no room on it is lettered beyond all that is open.

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
    told, middle = (sizes.opening.code, drawer.travel), low + sizes.height / 2
    if not _letter_within(view, told, (front.y + front.depth - out, 0.0), middle, sizes.height):
        words = f"{told[0]}: {view.sheet.size(told[1])}"
        at = (beyond - 0.5 * view.sheet.letters, middle)
        view.sheet.letter(at, words, "end", size=SIZES[-1], inches=told[1])


def _letter_within(
    view: View, told: tuple[str, Inches], between: tuple[Inches, Inches], middle: Inches, height: Inches
) -> bool:
    """Letters a code and a size on one line or on two, as large as they fit; whether they do."""
    sheet, (code, inches), (start, end) = view.sheet, told, between
    said, room, across = sheet.size(inches), CLEAR * (end - start), (start + end) / 2
    for size in SIZES:
        high = size * sheet.letters
        if sheet.width_of(f"{code}: {said}", size) <= room and high < height:
            sheet.letter((across, middle), f"{code}: {said}", size=size, inches=inches)
            return True
        if max(sheet.width_of(code, size), sheet.width_of(said, size)) <= room and 2.3 * high < height:
            sheet.letter((across, middle + 0.6 * high), code, size=size)
            sheet.letter((across, middle - 0.6 * high), said, size=size, inches=inches)
            return True
    return False


def _heights(unit: Construction, drawers: tuple[Drawer, ...]) -> Iterator[tuple[Inches, str]]:
    for drawer in drawers:
        opening = drawer.sizes.opening
        yield unit.face.base_height + opening.bottom, f"opening {opening.code}"
