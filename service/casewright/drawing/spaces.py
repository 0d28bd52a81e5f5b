"""What the front of a unit shows beside its drawers: doors with their hinge marks, and open spaces."""

from collections.abc import Iterator

from casewright.drawing.canvas import Line
from casewright.drawing.doors import draw_door, seen_of
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door
from casewright.pieces.layout.openings import Space


def draw_spaces(view: View, unit: Construction) -> None:
    """Draws doors and open spaces, each with its code.

    Args:
        view: the front of the unit
        unit: the unit, worked out

    Source: common practice of shop drawing; the dashed lines of a door meet at the side of its hinges.
    """
    hung = {door.plan.opening.code: door for door in unit.doors}
    for space in unit.face.spaces:
        if space.holds == "doors":
            draw_door(view, unit, hung[space.code])
            _say_doors(view, space)
        else:
            _shelves(view, unit, space)
        _letter_code(view, unit, space, hung.get(space.code))
        if space.measured:
            view.sheet.say(f"{space.code} measured: {', '.join(space.measured)}")


def _say_doors(view: View, space: Space) -> None:
    count = "one door, hinged" if space.leaves == 1 else "two doors, hinged"
    where = f"at the {space.hinged}" if space.leaves == 1 else "at their outer edges"
    view.sheet.say(f"{space.code}: {count} {where}")


def _shelves(view: View, unit: Construction, space: Space) -> None:
    """The shelves that are seen in an open space."""
    start = f"{unit.spec.code}-{space.code}-SH"
    for part in unit.case.parts:
        if part.code.startswith(start):
            box = part.box
            view.rectangle(Line.SEEN, box.x, box.z, box.width, box.height, part.code)
    what = "a knee space" if space.knee else "open"
    view.sheet.say(f"{space.code}: {what}")


def _letter_code(view: View, unit: Construction, space: Space, door: Door | None) -> None:
    """The code in the lower corner at a door's hinges, which no dashed line crosses; else at the left.

    On a door with a frame it stands in the panel, where no edge runs through it, if there is room."""
    sheet = view.sheet
    words = f"{space.code} measured" if space.measured else space.code
    at_right = space.leaves == 1 and space.hinged == "right"
    for left, width, bottom, height in _places_for_code(unit, space, door, at_right=at_right):
        for size in (1.0, 0.85, 0.7, 0.6):
            high, long, inset = size * sheet.letters, sheet.width_of(words, size), 0.3 * sheet.letters
            if long + 2 * inset < width and high + inset < height:
                across = left + width - inset if at_right else left + inset
                sheet.letter(
                    (across, bottom + inset + 0.5 * high), words, "end" if at_right else "start", size=size
                )
                return


def _places_for_code(
    unit: Construction, space: Space, door: Door | None, *, at_right: bool
) -> Iterator[tuple[Inches, Inches, Inches, Inches]]:
    """Left edge, width, lower edge and height of where a code may stand, the best first."""
    if door is not None and door.plan.frame is not None:
        leaf = door.plan.leaves[0]
        parts = [part for part in unit.parts if part.code.startswith(f"{leaf.code}-P")]
        panels = [seen for _, seen in seen_of(door, leaf, parts)]
        if panels:
            panel = min(panels, key=lambda box: (box.z, -box.x if at_right else box.x))
            yield panel.x, panel.width, panel.z, panel.height
    bottom = unit.face.base_height + max(space.bottom, -unit.face.base_height)
    yield space.left, space.width, bottom, _lowest_room(unit, space)


def _lowest_room(unit: Construction, space: Space) -> Inches:
    """The height from the floor of an opening to its lowest shelf, or to its upper edge [in]."""
    if not space.shelves or space.holds == "doors":
        return space.height
    return (space.height - space.shelves * unit.spec.shelving.thickness) / (space.shelves + 1)
