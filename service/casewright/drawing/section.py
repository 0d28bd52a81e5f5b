"""A unit cut from front to back: what lies behind the front, and how the drawers run in their frames."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from casewright.drawing.bases import feet_from_the_side
from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.cleats import cleat_outline
from casewright.drawing.dimensions import Side, Span, heights, levels, widths
from casewright.drawing.door_cuts import cut_from_the_side, is_through
from casewright.drawing.drawer_section import groove_detail, is_grooved_behind
from casewright.drawing.framed_sides import draw_framed_side
from casewright.drawing.front_section import bottom_section, front_sections
from casewright.drawing.ground import ground_beside
from casewright.drawing.legs import leg_outlines
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.picks import Where, draw_drawer_picks
from casewright.drawing.run_lines import draw_running
from casewright.drawing.view import Uncoded, View, box
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Inches, Number
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import INNER_BACK, INNER_SIDES, SHORT_BACKS
from casewright.pieces.layout.openings import FaceRow, Opening, Stack
from casewright.pieces.layout.parts import Grain, Part

DETAIL_ROOM = 4.0
"""Beside the lettering left of the detail: its dimension line, and what keeps it clear [letters]."""
BACK_BOARD, RUNNERS, KICKERS = "P1", ("W2", "W3", "W8"), ("W4", "W5", "W9")
BARS = ("C4", "C8", "C10", "G2", "R4", "M1")
"""What a section does not run along: uprights, partitions and muntins."""
BARS_OF_DOORS = ("DS", "DM")
"""Nor along stiles and muntins of doors, which have a line for each size."""
ALONG_A_NOTCH = tuple(f"-{mark}" for mark in INNER_SIDES)
FRONT_RAIL, ON_LEGS = "R1", ("W1", "W2")
"""The upper rail, and the runners and kickers, of a piece on legs."""


def section(unit: Construction, shown: LengthUnit | None = None, where: Where | None = None) -> Drawing:
    """The vertical section of a unit, front to back through the middle of a column of drawers.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes; None for that in which the piece was drawn
        where: the address to which a drawer in it leads; None for a drawing without links

    Returns:
        The drawing, the front at its left, with a full-size detail of a drawer's lower front corner.

    Source: common practice of shop drawing.
    """
    spec = unit.spec
    plane = section_plane(unit)
    return fitted(
        lambda sheet: _draw(View(sheet), unit, plane, where),
        shown or spec.unit,
        name=f"{spec.code}-section",
        title=f"{spec.code}: {spec.name}",
        subject="Section from front to back",
        work=(spec.body.depth + spec.top.overhang_front, unit.face.overall_height),
    )


def section_plane(unit: Construction) -> Inches:
    """Where the unit is cut: in the middle of a column, or beside it where an upright or muntin stands there.

    Args:
        unit: the unit, worked out

    Returns:
        How far from the outside of the left case side [in]

    Source: common practice: a section does not run along the middle of a bar.
    """
    face = unit.face
    bars = list(_bars(unit))

    def bars_cut(plane: Inches) -> int:
        return sum(left <= plane <= right for left, right in bars)

    if not (face.is_nested or face.spaces):
        row = max(face.rows, key=lambda row: len(row.openings))
        return min(_places(row.openings), key=bars_cut)
    # Where columns have rows of their own, it is cut where most drawers are.
    return min(
        _places(face.openings),
        key=lambda plane: (bars_cut(plane), -sum(_is_cut(drawer, plane) for drawer in unit.drawers)),
    )


def _bars(unit: Construction) -> Iterator[tuple[Inches, Inches]]:
    """From where to where a section would run along a bar, or between two leaves, where it shows no door."""
    for part in unit.parts:
        if part.line in BARS or part.line.startswith(BARS_OF_DOORS) or part.code.endswith(ALONG_A_NOTCH):
            yield part.box.x, part.box.x + part.box.width
    for door in unit.doors:
        for one, other in pairwise(door.plan.leaves):
            yield one.x + door.plan.width, other.x


def _places(openings: Sequence[Opening]) -> list[Inches]:
    """The middle of each opening, then a quarter of its width [in]."""
    return [opening.left + opening.width * share for share in (0.5, 0.25) for opening in openings]


def _draw(view: View, unit: Construction, plane: Inches, where: Where | None) -> None:
    drawers = _cut_open(view, unit, plane)
    if where:
        draw_drawer_picks(view, unit, drawers, where)
    reach = _story_stick(view, unit, plane)
    draw_running(view, unit, plane)
    _depths_below(view, unit, drawers[-1])
    _depths_above(view, unit)
    _detail(view, unit, drawers[-1], reach)
    beside = doors_plane(unit, plane)
    if beside is not None:
        _through_doors(view.sheet, unit, beside)


def _cut_open(view: View, unit: Construction, plane: Inches) -> list[Drawer]:
    """All that the plane cuts, and what is seen beyond it; the drawers that it cuts, from the top."""
    drawers = [drawer for drawer in unit.drawers if _is_cut(drawer, plane)]
    _seen_behind(view, unit, plane)
    for part in _cut_by(unit, plane):
        corners = cleat_outline(part) or box(part.box.y, part.box.z, part.box.depth, part.box.height)
        view.cut(corners, part.code, rising=_is_rising(part), apart=_hatch_apart(part))
    for part, outline in cut_from_the_side(unit, plane):
        view.cut(outline, part.code, rising=_is_rising(part), apart=_hatch_apart(part))
    for drawer in drawers:
        _drawer(view, unit, drawer, plane)
    _spaces(view, unit, plane)
    ground_beside(view, unit, min(-unit.spec.top.overhang_front, unit.spec.support_front))
    return drawers


def _through_doors(sheet: Sheet, unit: Construction, plane: Inches) -> None:
    """A second section, to the right of all else, where the first one passes by the doors."""
    tried = sheet.fresh()
    _cut_open(Uncoded(tried), unit, plane)
    drawn = sheet.fresh()
    _cut_open(Uncoded(drawn, sheet.reach[2] + 2 * sheet.letters - tried.reach[0]), unit, plane)
    cut = [door for door in unit.doors if is_through(door, plane)]
    codes = ", ".join(door.plan.opening.code for door in cut)
    left, _, _, top = drawn.reach
    words = f"Through {codes}"
    drawn.letter((left, top + 0.9 * sheet.letters), words, "start")
    drawn.say(words)
    for door in cut:
        plan = door.plan
        span = Span(plan.z, plan.z + plan.height, f"height of the leaves of {plan.opening.code}")
        edge = drawn.reach[2]
        heights(Uncoded(drawn), [span], edge, edge + 0.9 * sheet.letters, Side.AFTER)
    sheet.add(drawn)


def doors_plane(unit: Construction, plane: Inches) -> Inches | None:
    """Where a unit is cut a second time, through its doors.

    Args:
        unit: the unit, worked out
        plane: where it is cut first, from the outside of the left case side [in]

    Returns:
        How far from the same [in]; None where there are no doors, or the first cut passes through some

    Source: common practice: a section is laid where it shows what is made.
    """
    if not unit.doors or any(is_through(door, plane) for door in unit.doors):
        return None
    leaves = [(door, leaf) for door in unit.doors for leaf in door.plan.leaves]
    places = [leaf.x + share * door.plan.width for door, leaf in leaves for share in (0.5, 0.3)]
    bars = list(_bars(unit))
    return max(
        places,
        key=lambda place: (
            -sum(left <= place <= right for left, right in bars),
            sum(is_through(door, place) for door in unit.doors),
        ),
    )


def _is_cut(drawer: Drawer, plane: Inches) -> bool:
    opening = drawer.sizes.opening
    return opening.left < plane < opening.left + opening.width


def _cut_by(unit: Construction, plane: Inches) -> Iterator[Part]:
    """The parts of the case that the plane cuts; of lapped back boards the first."""
    back = 0
    for part in unit.case.parts:
        if not part.box.x < plane < part.box.x + part.box.width:
            continue
        back += part.line == BACK_BOARD
        if part.line != BACK_BOARD or back == 1:
            yield part


def _is_rising(part: Part) -> bool:
    """Neighbours are hatched against each other: what lies level one way, what stands the other."""
    return part.box.depth >= part.box.height


def _hatch_apart(part: Part) -> Number:
    """End grain is hatched close, what is cut along its grain wide."""
    return 1.0 if part.grain is Grain.ACROSS else 2.0


def _seen_behind(view: View, unit: Construction, plane: Inches) -> None:
    """What is seen beyond the plane: the case side, the runners and kickers between the rails."""
    spec, face, legs = unit.spec, unit.face, unit.spec.legs
    if legs:
        for outline in leg_outlines(unit, spec.body.depth):
            view.polygon(Line.SEEN, outline)
        between = spec.body.depth - 2 * legs.leg
        view.rectangle(Line.SEEN, legs.leg, face.base_height, between, face.body_height)
    else:
        view.rectangle(Line.SEEN, 0.0, face.base_height, spec.body.depth, face.body_height)
        draw_framed_side(view, unit)
        for outline in feet_from_the_side(unit):
            view.polygon(Line.SEEN, outline)
    lines = ON_LEGS if legs else (*RUNNERS, *KICKERS)
    cut = set() if legs else {part.code.rpartition("-")[0] for part in _cut_by(unit, plane)}
    bars = {
        part.box.z: part
        for part in unit.case.parts
        if part.line in lines
        and part.box.x + part.box.width <= plane
        and (legs or part.code.rpartition("-")[0] in cut)
    }
    for bar in bars.values():
        start, end = _bare(unit, bar)
        for height in (bar.box.z, bar.box.z + bar.box.height):
            view.polyline(Line.SEEN, (start, height), (end, height))


def _bare(unit: Construction, bar: Part) -> tuple[Inches, Inches]:
    """From where to where a runner or kicker is seen between the rails."""
    spec, depth = unit.spec, unit.face.opening_depth
    if spec.legs:
        return next(part.box.depth for part in unit.case.parts if part.line == FRONT_RAIL), depth
    is_kicker = bar.line in ("W4", "W9")
    end = depth - (spec.case.rail_width if is_kicker else spec.frames.back_rail_width)
    return bar.box.y + spec.frames.tenon, end


def _drawer(view: View, unit: Construction, drawer: Drawer, plane: Inches) -> None:
    """One drawer: front, back and bottom cut, the side seen beyond, its code inside."""
    spec, sizes = unit.spec, drawer.sizes
    mark, end_cut, thick = _back_cut(drawer, plane)
    lowest = unit.face.base_height + sizes.opening.bottom + drawer.run.foot + sizes.foot
    start = sizes.box_start + spec.drawers.stops.inset
    across, up = view.at(start, lowest)
    within = replace(view, x=across, y=up)
    end, height = sizes.box_length, sizes.side_height
    within.polyline(Line.SEEN, (sizes.front, height), (end, height), (end, 0.0), (sizes.front, 0.0))
    for board, outline in front_sections(spec, drawer):
        within.cut(outline, f"{drawer.code}-{board}", rising=False)
    cut = drawer.bottom.cut_out if mark == INNER_BACK else None
    shorter = replace(drawer.bottom, deep=drawer.bottom.deep - cut.depth) if cut else drawer.bottom
    within.cut(bottom_section(spec, replace(drawer, bottom=shorter)), f"{drawer.code}-N", apart=2.0)
    within.cut(_back_outline(unit, drawer, end_cut, thick), f"{drawer.code}-{mark}", rising=False)
    if cut:
        low, high = sizes.back_foot, sizes.back_foot + sizes.back_height
        rear = sizes.to_the_back
        within.polyline(Line.SEEN, (end_cut, high), (rear, high), (rear, low), (end_cut, low))
    floor = (
        sizes.foot if spec.drawers.screwed_under else spec.drawers.groove.height + spec.drawers.groove.width
    )
    _letter_code(within, drawer, end_cut - thick, floor)


def _back_cut(drawer: Drawer, plane: Inches) -> tuple[str, Inches, Inches]:
    """Which back the plane cuts: the mark, its rear face behind the board in front, and its thickness."""
    sizes, notch = drawer.sizes, drawer.sizes.notch
    opening = sizes.opening
    across = plane - (opening.left + (opening.width - sizes.width) / 2)
    if notch is None:
        return "B", sizes.to_the_back, sizes.back
    if notch.around_left < across < notch.around_left + notch.around:
        return INNER_BACK, notch.start + notch.head, notch.head
    return SHORT_BACKS[across > notch.left], sizes.to_the_back, sizes.back


def _back_outline(unit: Construction, drawer: Drawer, end: Inches, thick: Inches) -> Sequence[Point]:
    sizes, groove = drawer.sizes, unit.spec.drawers.groove
    start, low, high = end - thick, sizes.back_foot, sizes.back_foot + sizes.back_height
    if not is_grooved_behind(unit):
        return box(start, low, thick, sizes.back_height)
    notch = [(start, groove.height + groove.width), (start + groove.depth, groove.height + groove.width)]
    notch += [(start + groove.depth, groove.height), (start, groove.height)]
    return [(start, low), (end, low), (end, high), (start, high), *notch]


def _spaces(view: View, unit: Construction, plane: Inches) -> None:
    """The codes of open spaces and of those behind doors, each over the floor of its opening."""
    sheet = view.sheet
    for space in unit.face.spaces:
        if not space.left < plane < space.left + space.width:
            continue
        shelves = unit.spec.shelving.thickness * space.shelves
        room = (space.height - shelves) / (space.shelves + 1)
        up = unit.face.base_height + max(space.bottom, -unit.face.base_height) + room / 2
        if sheet.letters < room and sheet.width_of(space.code) < space.depth:
            sheet.letter(view.at(space.depth / 2, up), space.code)
        held = "doors" if space.holds == "doors" else "a knee space" if space.knee else "an open space"
        sheet.say(f"{space.code}: {held}")


def _letter_code(within: View, drawer: Drawer, until: Inches, floor: Inches) -> None:
    """The code in the middle between front and back, over the bottom."""
    sheet, sizes = within.sheet, drawer.sizes
    inside = until - sizes.front
    high = sizes.side_height - floor
    for size in (1.0, 0.85, 0.7):
        if size * sheet.letters < high and sheet.width_of(sizes.code, size) < inside:
            sheet.letter(within.at(sizes.front + inside / 2, floor + high / 2), sizes.code, size=size)
            return


def _depths_below(view: View, unit: Construction, drawer: Drawer) -> None:
    """Drawer and what is left behind it, then the opening, then the body."""
    sizes, letters = drawer.sizes, view.sheet.letters
    depth, line = sizes.opening.depth, -2.2 * letters
    drawers = [
        Span(0.0, sizes.length, f"length of drawer {sizes.code}", words="drawer"),
        Span(sizes.length, depth, "clearance behind it"),
    ]
    if sizes.stand:
        drawers.insert(0, Span(-sizes.stand, 0.0, "front before the case"))
    step = 1.9 * letters
    widths(view, drawers, line, Side.BEFORE, 0.0)
    widths(view, [Span(0.0, depth, "opening depth", words="opening")], line - step, Side.BEFORE, 0.0)
    body = [Span(0.0, unit.spec.body.depth, "body depth", words="body")]
    widths(view, body, line - 2 * step, Side.BEFORE, 0.0)


def _depths_above(view: View, unit: Construction) -> None:
    """The top and how far it overhangs at front and back."""
    top, depth, letters = unit.spec.top, unit.spec.body.depth, view.sheet.letters
    height = unit.face.overall_height
    line = height + 1.2 * letters
    front, back = -top.overhang_front, depth + top.overhang_back
    if top.overhang_front or top.overhang_back:
        overhangs = [Span(0.0, depth)]
        if top.overhang_front:
            overhangs.insert(0, Span(front, 0.0, "overhang of the top at the front"))
        if top.overhang_back:
            overhangs.append(Span(depth, back, "overhang of the top at the back"))
        line = widths(view, overhangs, line, Side.AFTER, height) + 0.8 * letters
    if top.fixing != "none":
        widths(view, [Span(front, back, "depth of the top", words="top")], line, Side.AFTER, height)


def _rows_cut(stack: Stack, plane: Inches) -> Iterator[FaceRow]:
    """The rows of a stack, and those of the stacks within it that the plane cuts."""
    for row in stack.rows:
        yield row
        for cell in row.cells:
            if cell.stack is not None and cell.left < plane < cell.left + cell.width:
                yield from _rows_cut(cell.stack, plane)


def _story_stick(view: View, unit: Construction, plane: Inches) -> Inches:
    """Marks for the story stick: every divider's upper edge from the underside of the case."""
    spec, face = unit.spec, unit.face
    marks = [(0.0, "underside")]
    rows = {round(row.bottom, 6): row for row in _rows_cut(face.stacks[0], plane)}
    marks += [(row.bottom, f"below row {row.mark}") for _, row in sorted(rows.items())]
    marks.append((face.body_height, "top of the body"))
    body = View(view.sheet, view.x, view.y + face.base_height * view.factor, view.factor)
    sheet, overhang = view.sheet, spec.top.overhang_back
    # The overhang at the back is lettered beyond its end, where the column would be.
    clear = overhang + sheet.width_of(sheet.size(overhang)) if overhang else sheet.letters
    line = spec.body.depth + clear + 1.3 * sheet.letters
    return levels(
        body,
        marks,
        spec.body.depth,
        line,
        Side.AFTER,
        f"story stick,\nfrom under\nthe {'apron' if spec.legs else 'case'}",
    )


def _detail(view: View, unit: Construction, drawer: Drawer, left: Inches) -> None:
    """The groove of the lowest drawer at full size, to the right of everything else."""
    sheet, groove = view.sheet, unit.spec.drawers.groove
    if unit.spec.drawers.screwed_under:
        return
    lettered = max(sheet.width_of(sheet.size(size)) for size in (groove.height, groove.width))
    x = left + lettered + DETAIL_ROOM * sheet.letters
    detail = View(sheet, x, unit.face.overall_height / 2, max(1.0, sheet.scale))
    groove_detail(detail, unit, drawer)
