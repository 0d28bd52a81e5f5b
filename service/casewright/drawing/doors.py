"""Doors in the front elevation: stiles, rails and panels, hinges, the way they open, and the knob."""

from collections.abc import Iterator

from casewright.drawing.canvas import Line, Point
from casewright.drawing.hidden import Seen
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door
from casewright.pieces.doors.leaves import LeafPlan
from casewright.pieces.layout.parts import Box, Part

KNOB = 0.625
"""Radius of the knob, which the unit knows only by name (common practice) [in]."""
LEAF_OF_HINGE = 0.25
"""How wide the knuckle of a hinge is drawn (common practice) [in]."""


def draw_door(view: View, unit: Construction, door: Door) -> None:
    """The leaves of an opening as they hang closed.

    Args:
        view: the front view
        unit: the unit, worked out
        door: the doors of one opening

    Source: common practice of shop drawing: dashes run from the free edge to the hinges.
    """
    plan = door.plan
    for leaf in plan.leaves:
        view.rectangle(Line.TONE, leaf.x, plan.z, plan.width, plan.height)
        parts = [part for part in unit.parts if part.code.startswith(f"{leaf.code}-")]
        for part, box in seen_of(door, leaf, parts):
            view.rectangle(Line.FRONT, box.x, box.z, box.width, box.height, part.code)
        _hardware(view, unit.spec.doors.hinge_length, door, leaf)


def seen_of(door: Door, leaf: LeafPlan, parts: list[Part]) -> Iterator[tuple[Part, Box]]:
    """What is seen of the parts of a leaf: rails between the stiles, panels between all of them.

    Args:
        door: the doors of the opening
        leaf: one of them
        parts: its parts

    Yields:
        Each part with the rectangle that is seen of it.

    Source: geometry of the leaf.
    """
    frame = door.plan.frame
    for part in parts:
        box, mark = part.box, part.code.rpartition("-")[2][:1]
        if mark == "B":
            continue  # a batten lies behind its slab
        if frame is None:
            caps = [other.box for other in parts if "-E" in other.code]
            if mark == "W" and caps:
                lower, upper = min(cap.z + cap.height for cap in caps), max(cap.z for cap in caps)
                box = Box(box.x, box.y, lower, box.width, box.depth, upper - lower)
            yield part, box
            continue
        if mark == "R":
            inner = leaf.x + frame.asked.how.stile
            yield (
                part,
                Box(inner, box.y, box.z, door.plan.width - 2 * frame.asked.how.stile, box.depth, box.height),
            )
        elif mark == "M":
            cut = frame.stub
            yield part, Box(box.x, box.y, box.z + cut, box.width, box.depth, box.height - 2 * cut)
        elif mark == "P":
            across = (frame.panel_width - frame.clear_width) / 2
            up = (frame.panel_height - frame.clear_height) / 2
            yield (
                part,
                Box(box.x + across, box.y, box.z + up, frame.clear_width, box.depth, frame.clear_height),
            )
        else:
            yield part, box


def is_clear_of_swing(door: Door, patch: Seen) -> bool:
    """Whether a patch of an opening's first leaf keeps clear of the dashed lines that show how it swings.

    Args:
        door: the doors of the opening
        patch: left and lower edge, width and height [in]

    Returns:
        True under the lower line, and between both, if it keeps clear of the knob, too.

    Source: geometry: the lines run from the free edge, above and below, to the middle of the hinged one.
    """
    plan, (left, low, wide, high) = door.plan, patch
    leaf, half, middle = plan.leaves[0], plan.height / 2, plan.z + plan.height / 2
    hinged = leaf.x if leaf.hinged == "left" else leaf.x + plan.width
    near, far = sorted(abs(edge - hinged) / plan.width for edge in (left, left + wide))
    under = low + high < middle - half * far
    between = max(abs(low - middle), abs(low + high - middle)) < half * near
    return under or (between and far * plan.width < plan.width - _stile(door))


def _stile(door: Door) -> Inches:
    """How wide the free stile is, in the middle of which the knob is; of a slab, as if it had one [in]."""
    plan = door.plan
    return plan.frame.asked.how.stile if plan.frame else min(2.25, plan.width / 4)


def knob_of(door: Door, leaf: LeafPlan) -> Point:
    """Where the knob of a leaf is: in the middle of its free stile.

    Args:
        door: the doors of the opening
        leaf: one of them

    Returns:
        From the left outside of the case, and above the floor [in].

    Source: common practice.
    """
    plan, half = door.plan, _stile(door) / 2
    at = leaf.x + plan.width - half if leaf.hinged == "left" else leaf.x + half
    return at, plan.z + door.knob_height


def _hardware(view: View, length: Inches, door: Door, leaf: LeafPlan) -> None:
    """Hinges at their places, dashes from the free edge to the middle of the hinged one, and the knob."""
    plan = door.plan
    is_left = leaf.hinged == "left"
    hinged, free = (leaf.x, leaf.x + plan.width) if is_left else (leaf.x + plan.width, leaf.x)
    for place in door.hinges:
        start = hinged if is_left else hinged - LEAF_OF_HINGE
        view.rectangle(Line.SEEN, start, plan.z + place - length / 2, LEAF_OF_HINGE, length)
    middle = (hinged, plan.z + plan.height / 2)
    view.polyline(Line.HIDDEN, (free, plan.z + plan.height), middle, (free, plan.z))
    radius = min(KNOB, _stile(door) / 3, plan.height / 5)
    view.circle(Line.FRONT, knob_of(door, leaf), radius)
