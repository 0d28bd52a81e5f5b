"""How a piece stands, from its side: what is open, what pulls and pushes, about which edge it turns."""

from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.legs import leg_outlines
from casewright.drawing.page import Drawing
from casewright.drawing.view import View
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit, say
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.stability.limits import house_limits
from casewright.stability.masses import Drawer, Leaf, Mass, together
from casewright.stability.tip_checks import factor_shown, what_is_done
from casewright.stability.tipping import Kind, TipCase

LARGEST = 2.1
"""The longer side of the work on paper [in]."""
ARROW, HEAD, ROUND, FOOT = 0.3, 0.07, 0.055, 0.14
"""Length and head of an arrow, radius of a centre of mass, height of the pivot's mark, on paper [in]."""
MARGIN = 0.05
LABEL = 0.85
"""Weights are lettered a little smaller than sizes are."""


def standing_view(unit: Construction, case: TipCase, shown: LengthUnit) -> Drawing:
    """The side view of a unit in one situation of the stability screen, its front at the left.

    Args:
        unit: the unit, worked out
        case: the situation, worked out
        shown: the unit of its sizes

    Returns:
        The drawing; its description has what is done, the moments and the factor.

    Source: common practice of a diagram of forces: centres of mass, pivot and loads.
    """
    travel = max((one.travel for one in case.situation.moving), default=0.0)
    reach = unit.spec.overall_depth + max(travel, _leaf_reach(unit, case))
    sheet = Sheet(max(reach, unit.face.overall_height) / LARGEST, shown)
    view = View(sheet)
    _case(view, unit)
    _drawers(view, unit, case)
    _leaves(view, unit, case)
    _ground(view, unit, case, travel)
    _centres(view, unit, case)
    _loads(view, unit, case)
    _tell(sheet, unit, case)
    left, bottom, right, top = sheet.reach
    margin = MARGIN * sheet.scale
    kind = str(case.situation.kind).replace(", ", "-").replace(" ", "-")
    about = f" {case.situation.about}" if case.situation.about else ""
    return Drawing(
        name=f"{unit.spec.code}-{kind}",
        title=f"Side view: {case.situation.kind}{about}, factor {factor_shown(case.factor)}",
        description=f"{'. '.join(sheet.said)}.",
        scale=sheet.scale,
        left=left - margin,
        top=-top - margin,
        width=right - left + 2 * margin,
        height=top - bottom + 2 * margin,
        body=sheet.body(),
    )


def _front(unit: Construction) -> Inches:
    """The pivot behind the front of the case: the screen counts from it, a drawing from the case."""
    drawers, leaves = unit.stand.piece.drawers, unit.stand.piece.leaves
    shut: tuple[Drawer | Leaf, ...] = (*drawers, *leaves)
    return -shut[0].front if shut else 0.0


def _case(view: View, unit: Construction) -> None:
    spec, face = unit.spec, unit.face
    depth, base = spec.body.depth, face.base_height
    view.rectangle(Line.OBJECT, 0.0, base, depth, face.body_height)
    under = base + face.body_height
    if face.overall_height > under:
        over = spec.overall_depth
        view.rectangle(Line.OBJECT, -spec.top.overhang_front, under, over, face.overall_height - under)
    if spec.legs:
        for outline in leg_outlines(unit, depth):
            view.polygon(Line.OBJECT, outline)
    elif base:
        front, rear = _front(unit), _front(unit) + unit.stand.piece.support_depth
        view.rectangle(Line.OBJECT, front, 0.0, rear - front, base)


def _open_now(case: TipCase) -> dict[str, Inches]:
    """The travel of every drawer that is open, by its code."""
    return {one.mass.label: one.travel for one in case.situation.moving}


def _drawers(view: View, unit: Construction, case: TipCase) -> None:
    """Each row once, as far out as its drawer furthest out; what is filled is toned."""
    out = _open_now(case)
    rows: dict[tuple[Inches, Inches], tuple[Inches, Inches, bool]] = {}
    for drawer in unit.drawers:
        place = (unit.face.base_height + drawer.sizes.opening.bottom, drawer.sizes.height)
        found = (out.get(drawer.code, 0.0), drawer.sizes.length, f"{drawer.code} contents" in out)
        rows[place] = max(rows.get(place, found), found)
    for (bottom, height), (travel, length, is_filled) in rows.items():
        view.rectangle(Line.FRONT if travel else Line.SEEN, -travel, bottom, length, height)
        if is_filled:
            view.rectangle(Line.TONE, -travel, bottom, length, height)


def _open_leaves(unit: Construction, case: TipCase) -> list[Leaf]:
    """The doors that are open: those that stand before the face."""
    front = {mass.label: mass.x for mass in case.situation.standing}
    return [leaf for leaf in unit.stand.piece.leaves if front.get(leaf.label, leaf.front) < leaf.front]


def _leaf_reach(unit: Construction, case: TipCase) -> Inches:
    return max((leaf.width for leaf in _open_leaves(unit, case)), default=0.0)


def _leaves(view: View, unit: Construction, case: TipCase) -> None:
    for leaf in _open_leaves(unit, case):
        half = leaf.load_height - leaf.height
        view.rectangle(Line.HIDDEN, -leaf.width, leaf.height - half, leaf.width, 2 * half)


def _ground(view: View, unit: Construction, case: TipCase, travel: Inches) -> None:
    """The floor, the block that stands for carpet, and the edge about which it would turn."""
    sheet, depth = view.sheet, unit.spec.body.depth
    over = 0.5 * sheet.letters
    left = min(-unit.spec.top.overhang_front, -travel, -_leaf_reach(unit, case)) - over
    view.polyline(Line.FLOOR, (left, 0.0), (depth + over, 0.0))
    front, size = _front(unit), FOOT * sheet.scale
    view.polygon(Line.OBJECT, ((front, 0.0), (front - size / 2, -size), (front + size / 2, -size)))
    if case.situation.tilt:
        rear = front + unit.stand.piece.support_depth
        block = max(house_limits().block_thickness, 0.04 * sheet.scale)
        view.rectangle(Line.CUT, rear - 1.0, -block, 1.0, block)


def _centres(view: View, unit: Construction, case: TipCase) -> None:
    """The centre of what stands, and of what has moved out."""
    front = _front(unit)
    load = f"on {case.situation.about}"
    standing = [mass for mass in case.situation.standing if mass.label != load]
    moved = [
        Mass(label="", weight=one.mass.weight, x=one.mass.x - one.travel, z=one.mass.z)
        for one in case.situation.moving
        if one.mass.label != load
    ]
    for masses in (standing, moved):
        if masses and sum(mass.weight for mass in masses):
            _centre(view, together("", masses), front)


def _centre(view: View, mass: Mass, front: Inches) -> None:
    sheet, at = view.sheet, (mass.x + front, mass.z)
    radius = ROUND * sheet.scale
    view.circle(Line.CUT, at, radius)
    view.polyline(Line.CUT, (at[0] - radius, at[1]), (at[0] + radius, at[1]))
    view.polyline(Line.CUT, (at[0], at[1] + radius), (at[0], at[1] - radius))
    _arrow(view, (at[0], at[1] - radius), (0.0, -1.0))
    words, row = f"{mass.weight:.0f} lb", -(FOOT * sheet.scale + 0.7 * sheet.letters)
    while not sheet.is_free(sheet.patch(view.at(at[0], row), words, size=LABEL)):
        row -= 1.1 * sheet.letters
    end = min(at[1] - radius - ARROW * sheet.scale, 0.0)
    view.polyline(Line.WITNESS, (at[0], at[1] - radius), (at[0], min(end, row + 0.6 * sheet.letters)))
    sheet.letter(view.at(at[0], row), words, size=LABEL)


def _loads(view: View, unit: Construction, case: TipCase) -> None:
    """The weight of a child, and the push."""
    sheet, front, situation = view.sheet, _front(unit), case.situation
    hung = [one for one in situation.moving if one.mass.label == f"on {situation.about}"]
    on_door = [mass for mass in situation.standing if mass.label == f"on {situation.about}"]
    places = [(one.mass.x - one.travel, one.mass.z, one.mass.weight) for one in hung]
    places += [(mass.x, mass.z, mass.weight) for mass in on_door]
    for x, z, weight in places:
        start = (x + front, z + ARROW * sheet.scale)
        _arrow(view, start, (0.0, -1.0))
        words = f"{weight:g} lb"
        sheet.letter(view.at(start[0], start[1] + 0.6 * sheet.letters), words, size=LABEL)
    if situation.kind is Kind.PUSH:
        limits = house_limits()
        height = min(unit.face.overall_height, limits.push_height)
        start = (-unit.spec.top.overhang_front, height)
        _arrow(view, start, (-1.0, 0.0))
        at = view.at(start[0] - 1.25 * ARROW * sheet.scale, height)
        sheet.letter(at, f"{limits.push_force:g} lb", "end", size=LABEL)


def _arrow(view: View, start: Point, way: Point) -> None:
    """An arrow from a point, so long on paper wherever it stands."""
    long, head = ARROW * view.sheet.scale, HEAD * view.sheet.scale
    end = (start[0] + way[0] * long, start[1] + way[1] * long)
    neck = (end[0] - way[0] * head, end[1] - way[1] * head)
    aside = (way[1] * head / 2, way[0] * head / 2)
    view.polyline(Line.CUT, start, end)
    view.polyline(
        Line.CUT,
        (neck[0] + aside[0], neck[1] + aside[1]),
        end,
        (neck[0] - aside[0], neck[1] - aside[1]),
    )


def _tell(sheet: Sheet, unit: Construction, case: TipCase) -> None:
    limits = house_limits()
    sheet.say(in_unit(what_is_done(case, unit.stand.piece, limits), sheet.unit))
    held = say("{:moment} hold against {:moment bare} that tip", case.holding, case.tipping)
    sheet.say(in_unit(held, sheet.unit))
    sheet.say(f"Factor {factor_shown(case.factor)}; {limits.target_factor:g} is wanted")
    lever = say("It would turn about its front feet, {} behind the front of the case", _front(unit))
    sheet.say(in_unit(lever, sheet.unit))
