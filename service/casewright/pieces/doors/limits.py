"""What no door can be: its fields, each with the most that it may be."""

from collections.abc import Iterator

from casewright.measure.saying import Words
from casewright.measure.units import Inches
from casewright.pieces.asked.door_spec import FramedLeaf, SlabLeaf
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Face
from casewright.pieces.panels.frame import frame_limits

LEAST_LEFT = 1 / 16


def door_limits(spec: UnitSpec, face: Face) -> Iterator[tuple[str, Inches, Inches, Words]]:
    """What the fields of the doors cannot be more than; nothing where there are none.

    Args:
        spec: what the maker chose
        face: the openings

    Yields:
        The field, its value, the most that it may be, and why.

    Source: geometry of the doors.
    """
    doors, make = spec.doors, spec.doors.make
    spaces = tuple(space for space in face.spaces if space.holds == "doors")
    if not spaces:
        return
    low = min(space.height for space in spaces)
    narrow = min(space.width / space.leaves for space in spaces)
    yield "doors.gap", doors.gap, min(low, narrow) / 4, "there is a door between the gaps"
    yield "doors.meeting", doors.meeting, narrow / 4, "there is a door beside it"
    width, height = narrow - 2 * doors.gap - doors.meeting, low - 2 * doors.gap
    yield "doors.hinge_length", doors.hinge_length, height / 3, "two of them hang a door"
    if doors.hinge_offset is not None:
        most = height / 2 - doors.hinge_length
        yield "doors.hinge_offset", doors.hinge_offset, most, "two hinges must fit between the ends"
    yield (
        "doors.hinge_closed",
        doors.hinge_closed,
        doors.thickness / 2,
        "it is let into the door and the case",
    )
    if doors.hinge_leaf is not None and doors.style == "inset":
        yield "doors.hinge_leaf", doors.hinge_leaf, doors.thickness, "it lies on the edge of the door"
    if doors.style == "half overlay":
        frame = spec.frame
        least = min(frame.side, frame.upper, frame.lower)
        yield "doors.overlay", doors.overlay, least, "the case is no thicker there"
    if isinstance(make, FramedLeaf):
        yield from frame_limits("doors.make", make, width, height, doors.thickness)
    elif isinstance(make, SlabLeaf) and make.held in ("battens", "breadboard"):
        yield "doors.make.batten", make.batten, height / 4, "two of them stand one above the other"
        if make.held == "breadboard":
            yield "doors.make.tongue", make.tongue, make.batten - LEAST_LEFT, "the end must go on beyond it"
