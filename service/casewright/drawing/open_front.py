"""A unit from the front with its doors open: the leaves edge on at their hinges, and what stands behind."""

from casewright.drawing.canvas import Line
from casewright.drawing.dimensions import Side, Span, widths
from casewright.drawing.door_swing import open_from_the_front, pin_of
from casewright.drawing.doors import LEAF_OF_HINGE
from casewright.drawing.face_parts import draw_case
from casewright.drawing.ground import ground_before
from casewright.drawing.spaces import draw_inside, letter_inside
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door


def draw_open_front(view: View, unit: Construction) -> None:
    """The front of a unit, its doors open by a right angle, its drawers as they are seen from before.

    Args:
        view: where it is drawn
        unit: the unit, worked out

    Source: common practice of shop drawing; geometry of leaves that turn about their pins.
    """
    draw_case(view, unit, doors_open=True, coded=False)
    fronts = {part.code: part.box for part in unit.parts if part.line.startswith("F")}
    for drawer in unit.drawers:
        front = fronts[f"{drawer.code}-F"]
        view.rectangle(Line.TONE, front.x, front.z, front.width, front.height)
        view.rectangle(Line.FRONT, front.x, front.z, front.width, front.height)
    for space in unit.face.spaces:
        draw_inside(view, unit, space)
        letter_inside(view, unit, space)
    for door in unit.doors:
        _leaves(view, unit, door)
    ground_before(view, unit)
    _sizes(view, unit)
    left, _, _, top = view.sheet.reach
    words = "From the front, the doors open"
    view.sheet.letter((left, top + 0.9 * view.sheet.letters), words, "start")


def _leaves(view: View, unit: Construction, door: Door) -> None:
    """Each leaf edge on, with its hinges."""
    length, plan = unit.spec.doors.hinge_length, door.plan
    for leaf in plan.leaves:
        where = open_from_the_front(door, leaf)
        view.rectangle(Line.TONE, *where)
        view.rectangle(Line.FRONT, *where, f"{leaf.code}-open")
        pin = pin_of(door, leaf)
        for place in door.hinges:
            start = pin - LEAF_OF_HINGE / 2
            view.rectangle(Line.SEEN, start, plan.z + place - length / 2, LEAF_OF_HINGE, length)
        side = f"at the {leaf.hinged}"
        view.sheet.say(f"{leaf.code} stands open {side}")


def _sizes(view: View, unit: Construction) -> None:
    """What is left clear between open leaves: a chain for the doors of each height."""
    letters = view.sheet.letters
    line = view.at(0, 0)[1] - 2.2 * letters
    chains: dict[Inches, list[Span]] = {}
    for door in unit.doors:
        left, right = clear_between(door)
        name = f"clear width of {door.plan.opening.code}, open"
        chains.setdefault(round(door.plan.z, 6), []).append(Span(left, right, name, words="clear"))
    for _, spans in sorted(chains.items()):
        reach = widths(view, sorted(spans, key=lambda span: span.start), line, Side.BEFORE, 0.0)
        line = reach - 1.9 * letters


def clear_between(door: Door) -> tuple[Inches, Inches]:
    """From where to where an opening is clear between its open leaves.

    Args:
        door: the doors of an opening

    Returns:
        Its left and right end, from the outside of the left case side [in]

    Source: geometry: an inset leaf stands within its opening when it is open, one over the case outside.
    """
    opening, plan = door.plan.opening, door.plan
    left, right = opening.left, opening.left + opening.width
    for leaf in plan.leaves:
        start, _, thick, _ = open_from_the_front(door, leaf)
        if leaf.hinged == "left":
            left = max(left, start + thick)
        else:
            right = min(right, start)
    return left, right
