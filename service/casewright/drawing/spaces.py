"""What the front of a unit shows beside its drawers: doors with their hinge marks, and open spaces."""

from casewright.drawing.canvas import Line
from casewright.drawing.codes import SIZES, Codes, Place
from casewright.drawing.doors import draw_door, is_clear_of_swing, seen_of
from casewright.drawing.view import View
from casewright.measure.units import Inches, Number
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door
from casewright.pieces.layout.openings import Space


def draw_spaces(view: View, unit: Construction, codes: Codes) -> None:
    """Draws doors and open spaces, each with its code.

    Args:
        view: the front of the unit
        unit: the unit, worked out
        codes: what is lettered in the openings

    Source: common practice of shop drawing; the dashed lines of a door meet at the side of its hinges.
    """
    hung = {door.plan.opening.code: door for door in unit.doors}
    for space in unit.face.spaces:
        if space.holds == "doors":
            draw_door(view, unit, hung[space.code])
            _say_doors(view, hung[space.code])
        else:
            _shelves(view, unit, space)
        _put_code(view, unit, space, hung.get(space.code), codes)
        if space.measured:
            view.sheet.say(f"{space.code} measured: {', '.join(space.measured)}")


def _say_doors(view: View, door: Door) -> None:
    space, size = door.plan.opening, view.sheet.size
    count = "one door, hinged" if space.leaves == 1 else "two doors, hinged"
    where = f"at the {space.hinged}" if space.leaves == 1 else "at their outer edges"
    places = ", ".join(size(place) for place in door.hinges)
    view.sheet.say(f"{space.code}: {count} {where}, middles of the hinges {places} from the lower end")


def _shelves(view: View, unit: Construction, space: Space) -> None:
    """The shelves that are seen in an open space."""
    draw_inside(view, unit, space, coded=True)
    what = "a knee space" if space.knee else "open"
    view.sheet.say(f"{space.code}: {what}")


def draw_inside(view: View, unit: Construction, space: Space, *, coded: bool = False) -> None:
    """The shelves of an opening, seen from the front.

    Args:
        view: the front of the unit
        unit: the unit, worked out
        space: an open space, or one whose doors are open
        coded: whether each shelf keeps its code, by which a page finds it again

    Source: common practice of shop drawing.
    """
    start = f"{unit.spec.code}-{space.code}-SH"
    for part in unit.case.parts:
        if part.code.startswith(start):
            box = part.box
            view.rectangle(Line.SEEN, box.x, box.z, box.width, box.height, part.code if coded else "")


def _put_code(view: View, unit: Construction, space: Space, door: Door | None, codes: Codes) -> None:
    """The code in the lower corner at a door's hinges, or between its dashed lines; else at the left.

    On a door with a frame it stands in the panel, where no edge runs through it."""
    sheet = view.sheet
    at_right = space.leaves == 1 and space.hinged == "right"
    left, width, bottom, height = _place_for_code(unit, space, door, at_right=at_right)

    def room(words: str, size: Number) -> Place | None:
        high, long, inset = size * sheet.letters, sheet.width_of(words, size), 0.3 * sheet.letters
        if not (long + 2 * inset < width and high + inset < height):
            return None
        across = left + width - inset if at_right else left + inset
        start = across - long if at_right else across
        if door is None or is_clear_of_swing(door, (start, bottom + inset, long, high)):
            return (across, bottom + inset + 0.5 * high), "end" if at_right else "start"
        middle = left + width / 2, bottom + height / 2
        if is_clear_of_swing(door, (middle[0] - long / 2, middle[1] - high / 2, long, high)):
            return middle, "middle"
        return None

    codes.put(space.code, f"{space.code} measured" if space.measured else space.code, room)


def letter_inside(view: View, unit: Construction, space: Space) -> None:
    """The code of an opening in the middle of its lowest room, if it has any for it.

    Args:
        view: the front of the unit
        unit: the unit, worked out
        space: an open space, or one whose doors are open

    Source: common practice of shop drawing.
    """
    sheet = view.sheet
    low = unit.face.base_height + max(space.bottom, -unit.face.base_height)
    room = _lowest_room(unit, space)
    for size in SIZES:
        if size * sheet.letters < room and 1.1 * sheet.width_of(space.code, size) < space.width:
            sheet.letter(view.at(space.left + space.width / 2, low + room / 2), space.code, size=size)
            return


def _place_for_code(
    unit: Construction, space: Space, door: Door | None, *, at_right: bool
) -> tuple[Inches, Inches, Inches, Inches]:
    """Left edge, width, lower edge and height of where a code may stand."""
    if door is not None:
        leaf = door.plan.leaves[0]
        if door.plan.frame is None:
            caps = [part.box.height for part in unit.parts if part.code == f"{leaf.code}-E1"]
            low = max(caps, default=0.0)
            return leaf.x, door.plan.width, door.plan.z + low, door.plan.height / 2 - low
        parts = [part for part in unit.parts if part.code.startswith(f"{leaf.code}-P")]
        panels = [seen for _, seen in seen_of(door, leaf, parts)]
        panel = min(panels, key=lambda box: (box.z, -box.x if at_right else box.x))
        return panel.x, panel.width, panel.z, panel.height
    bottom = unit.face.base_height + max(space.bottom, -unit.face.base_height)
    return space.left, space.width, bottom, _lowest_room(unit, space)


def _lowest_room(unit: Construction, space: Space) -> Inches:
    """The height from the floor of an opening to its lowest shelf, or to its upper edge [in]."""
    if not space.shelves:
        return space.height
    return (space.height - space.shelves * unit.spec.shelving.thickness) / (space.shelves + 1)
