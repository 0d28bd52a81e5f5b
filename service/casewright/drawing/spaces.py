"""What the front of a unit shows beside its drawers: doors with their hinge marks, and open spaces."""

from collections.abc import Iterator

from casewright.drawing.canvas import Line
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.openings import Space

BESIDE = 1 / 16
"""Drawn around a leaf, whatever its fit will be (common practice) [in]."""


def draw_spaces(view: View, unit: Construction) -> None:
    """Draws doors and open spaces, each with its code.

    Args:
        view: the front of the unit
        unit: the unit, worked out

    Source: common practice of shop drawing; the dashed lines of a door meet at the side of its hinges.
    """
    for space in unit.face.spaces:
        if space.holds == "doors":
            _doors(view, unit, space)
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


def _doors(view: View, unit: Construction, space: Space) -> None:
    """Each leaf in outline, with two dashed lines from the corners of its free edge to its hinges."""
    z, wide = unit.face.base_height + space.bottom, space.width / space.leaves
    for number, side in enumerate(hinged_at(space)):
        left, low = space.left + number * wide + BESIDE, z + BESIDE
        width, height = wide - 2 * BESIDE, space.height - 2 * BESIDE
        view.rectangle(Line.TONE, left, low, width, height)
        view.rectangle(Line.FRONT, left, low, width, height, f"{unit.spec.code}-{space.code}")
        hinges, free = (left, left + width) if side == "left" else (left + width, left)
        view.polyline(Line.HIDDEN, (free, low), (hinges, low + height / 2), (free, low + height))
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
