"""The cleats that a piece hangs on, as a section shows them."""

from casewright.drawing.canvas import Point
from casewright.pieces.layout.parts import Part

ON_CASE, ON_WALL = "Q1", "Q2"


def cleat_outline(part: Part) -> tuple[Point, ...] | None:
    """The outline of a cleat cut across, the front at the left: a bevel of 45 degrees hooks over the other.

    Args:
        part: any part of a case

    Returns:
        Its corners, from the lower left one [in]; None for a part that is no cleat.

    Source: geometry.
    """
    box = part.box
    near, far, low, high = box.y, box.y + box.depth, box.z, box.z + box.height
    if part.line == ON_CASE:
        return (near, low + box.depth), (far, low), (far, high), (near, high)
    if part.line == ON_WALL:
        return (near, low), (far, low), (far, high - box.depth), (near, high)
    return None
