"""Pulls, hardware, and the small parts that come from offcuts."""

from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.base_fittings import base_blocks, base_hardware
from casewright.pieces.layout.fitted import HardwareItem, SmallPart
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.pulls import spare_pulls
from casewright.pieces.layout.top_fittings import top_buttons, top_hardware
from casewright.pieces.layout.wall_fittings import wall_hardware

PINS_PER_SHELF = 4


def hardware(spec: UnitSpec, face: Face, pulls: int) -> tuple[HardwareItem, ...]:
    """What has to be bought by the piece for one unit.

    Args:
        spec: what the maker chose
        face: what of the case stands on the floor
        pulls: how many pulls are fitted

    Returns:
        The items.

    Source: common practice; the wall restraint by 16 CFR 1261, and wanted on every free-standing piece.
    """
    return (
        HardwareItem(
            item=spec.pulls.item,
            quantity=pulls,
            spare=spare_pulls(pulls=pulls, per=spec.pulls.spare_per),
            note="drawer fronts",
        ),
        wall_hardware(spec, face),
        *top_hardware(spec, face),
        *base_hardware(spec, face),
        HardwareItem(
            item="screws and buttons",
            quantity=1,
            note="one lot: top, plinth, stops, muntins"
            + (", show fronts" if spec.drawers.has_box_front else ""),
        ),
    )


def shelf_pins(spec: UnitSpec, face: Face) -> tuple[HardwareItem, ...]:
    """The pins of the shelves that lie loose.

    Args:
        spec: what the maker chose
        face: the openings

    Returns:
        One item; none without such shelves.

    Source: common practice: four pins to a shelf.
    """
    shelves = sum(space.shelves for space in face.spaces)
    if not shelves or spec.shelving.fixing != "pins":
        return ()
    quantity = PINS_PER_SHELF * shelves
    spare = spare_pulls(pulls=quantity, per=spec.pulls.spare_per)
    return (HardwareItem(item="shelf pin", quantity=quantity, spare=spare, note="under the shelves"),)


def small_parts(spec: UnitSpec, face: Face) -> tuple[SmallPart, ...]:
    """What is cut from offcuts for the case: plinth blocks, buttons, and guides between drawers.

    Args:
        spec: what the maker chose
        face: the openings

    Returns:
        The small parts of one unit.

    Source: common practice.
    """
    parts: list[SmallPart] = []
    parts.extend(top_buttons(spec, face))
    parts.extend(base_blocks(spec, face))
    guides = sum(len(row.uprights) for row in face.all_rows) if spec.on_frames else 0
    if guides:
        rails = spec.case.rail_width + spec.frames.back_rail_width
        if spec.legs:
            rails = spec.legs.rail_width or spec.legs.leg
        length = face.opening_depth - rails
        parts.append(
            SmallPart(
                name="Drawer guide",
                quantity=guides,
                size=_size(spec.frame.upright, 3 / 4, length),
                note="on the runner behind each upright, flush with its faces",
            )
        )
    doors = sum(1 for space in face.spaces if space.holds == "doors")
    # A leaf that lies on the case is stopped by it.
    if doors and spec.doors.style == "inset":
        parts.append(
            SmallPart(
                name="Door stop",
                quantity=2 * doors,
                size=_size(1 / 4, 3 / 4, 1.5),
                note="under the rail over each opening with doors, behind the leaves",
            )
        )
    return tuple(parts)


def _size(thickness: Inches, width: Inches, length: Inches) -> Words:
    return say("{:bare} × {:bare} × {:fraction}", thickness, width, length)
