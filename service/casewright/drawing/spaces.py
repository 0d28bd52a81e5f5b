"""What the front of a unit shows beside its drawers: doors with their hinge marks, and open spaces."""

from collections.abc import Iterator

from casewright.drawing.canvas import Line
from casewright.drawing.doors import draw_door
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
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
        _letter_code(view, unit, space)
        if space.measured:
            view.sheet.say(f"{space.code} measured: {', '.join(space.measured)}")


def hinged_at(space: Space) -> Iterator[str]:
    """The side at which each leaf of an opening is hinged, from the left.

    Args:
        space: an opening with doors

    Yields:
        Left or right; of two leaves each at its outer side.

    Source: common practice.
    """
    if space.leaves == 1:
        yield space.hinged
    else:
        yield "left"
        yield "right"


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


def _letter_code(view: View, unit: Construction, space: Space) -> None:
    """The code in the lower corner at a door's hinges, which no dashed line crosses; else at the left."""
    sheet = view.sheet
    words = f"{space.code} measured" if space.measured else space.code
    corner = (space.left, unit.face.base_height + max(space.bottom, -unit.face.base_height))
    for size in (1.0, 0.85, 0.7, 0.6):
        high, long, inset = size * sheet.letters, sheet.width_of(words, size), 0.3 * sheet.letters
        if long + 2 * inset < space.width and high + inset < _lowest_room(unit, space):
            up = corner[1] + inset + 0.5 * high
            if space.leaves == 1 and space.hinged == "right":
                sheet.letter((corner[0] + space.width - inset, up), words, "end", size=size)
            else:
                sheet.letter((corner[0] + inset, up), words, "start", size=size)
            return


def _lowest_room(unit: Construction, space: Space) -> Inches:
    """The height from the floor of an opening to its lowest shelf, or to its upper edge [in]."""
    if not space.shelves or space.holds == "doors":
        return space.height
    return (space.height - space.shelves * unit.spec.shelving.thickness) / (space.shelves + 1)
