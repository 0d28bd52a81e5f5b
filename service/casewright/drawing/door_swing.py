"""Doors swung open by a right angle: where a leaf stands then, from above, from the front, from the side."""

import math
from collections.abc import Iterator, Sequence

from casewright.drawing.canvas import Point
from casewright.measure.units import Inches
from casewright.pieces.doors.hanging import Door
from casewright.pieces.doors.leaves import LeafPlan

STEPS = 24
"""Straight pieces of which the arc of a swinging edge is drawn."""
Rectangle = tuple[Inches, Inches, Inches, Inches]
"""Left, lower edge or front, width, and height or depth [in]."""


def pin_of(door: Door, leaf: LeafPlan) -> Inches:
    """Where a leaf turns: at its hinged edge, level with the front edge of the case.

    Args:
        door: the doors of the opening
        leaf: one of them

    Returns:
        From the outside of the left case side [in]

    Source: geometry: a leaf on butt hinges turns about the edge at which their pins lie.
    """
    return leaf.x if leaf.hinged == "left" else leaf.x + door.plan.width


def open_from_above(door: Door, leaf: LeafPlan) -> Rectangle:
    """A leaf open by 90 degrees, as a plan shows it.

    Args:
        door: the doors of the opening
        leaf: one of them

    Returns:
        Its rectangle, from the outside of the left case side and from the front edge of the case, which is
        above it: an inset leaf stands before its own opening, one over the case beside its hinged edge.

    Source: geometry of a leaf that turns about its pins.
    """
    plan, pin = door.plan, pin_of(door, leaf)
    inwards = (leaf.hinged == "left") is plan.is_inset
    return pin if inwards else pin - plan.thickness, -plan.width, plan.thickness, plan.width


def arc_from_above(door: Door, leaf: LeafPlan) -> Sequence[Point]:
    """The way of the free edge of a leaf, from shut to square.

    Args:
        door: the doors of the opening
        leaf: one of them

    Returns:
        Points from the outside of the left case side and from the front edge of the case [in]

    Source: geometry: a circle about the pins.
    """
    side, pin, wide = (1 if leaf.hinged == "left" else -1), pin_of(door, leaf), door.plan.width
    turns = (math.pi / 2 * step / STEPS for step in range(STEPS + 1))
    return [(pin + side * wide * math.cos(turn), -wide * math.sin(turn)) for turn in turns]


def open_from_the_front(door: Door, leaf: LeafPlan) -> Rectangle:
    """A leaf open by 90 degrees, edge on, as one sees it from the front.

    Args:
        door: the doors of the opening
        leaf: one of them

    Returns:
        Its rectangle, from the outside of the left case side and from the floor.

    Source: geometry of a leaf that turns about its pins.
    """
    left, _, thick, _ = open_from_above(door, leaf)
    return left, door.plan.z, thick, door.plan.height


def one_for_each_height(doors: Sequence[Door]) -> Iterator[Door]:
    """Of the doors that hang at one height, the widest: from the side it stands for all of them.

    Args:
        doors: the doors

    Yields:
        One for each height, from the top.

    Source: common practice of shop drawing.
    """
    found: dict[tuple[Inches, Inches], Door] = {}
    for door in doors:
        place = round(door.plan.z, 6), round(door.plan.height, 6)
        if place not in found or door.plan.width > found[place].plan.width:
            found[place] = door
    yield from (found[place] for place in sorted(found, reverse=True))
