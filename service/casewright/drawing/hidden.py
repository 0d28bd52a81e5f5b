"""What stays in sight of a case whose drawer fronts or doors stand before it."""

from collections.abc import Iterable

from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction

Seen = tuple[Inches, Inches, Inches, Inches]
"""Left and lower edge, width and height [in]."""
THIN = 1e-6
"""A narrower strip is none [in]."""


def fronts_before(unit: Construction, *, doors_open: bool = False) -> tuple[Seen, ...]:
    """The rectangles that fronts and doors before the case cover; none where they sit in their openings.

    Args:
        unit: the unit
        doors_open: whether its doors stand open and cover nothing

    Returns:
        Each front and each leaf, measured from the floor up.

    Source: geometry.
    """
    base = unit.face.base_height
    drawers = (
        (face.left, base + face.bottom, face.width, face.height)
        for drawer in unit.drawers
        if drawer.sizes.stand > 0
        for face in (drawer.sizes.face,)
    )
    doors = (
        (leaf.x, door.plan.z, door.plan.width, door.plan.height)
        for door in (() if doors_open else unit.doors)
        if not door.plan.is_inset
        for leaf in door.plan.leaves
    )
    return (*drawers, *doors)


def in_sight(part: Seen, fronts: Iterable[Seen]) -> list[Seen]:
    """What of a rectangle no front covers.

    Args:
        part: the rectangle
        fronts: what lies before it

    Returns:
        Rectangles that together are what is seen; none where all of it is covered.

    Source: geometry.
    """
    left = [part]
    for front in fronts:
        left = [piece for each in left for piece in _beside(each, front)]
    return left


def _beside(part: Seen, front: Seen) -> tuple[Seen, ...]:
    x, z, width, height = part
    low, high = max(z, front[1]), min(z + height, front[1] + front[3])
    start, end = max(x, front[0]), min(x + width, front[0] + front[2])
    if high - low < THIN or end - start < THIN:
        return (part,)
    pieces = (
        (x, z, width, low - z),
        (x, high, width, z + height - high),
        (x, low, start - x, high - low),
        (end, low, x + width - end, high - low),
    )
    return tuple(piece for piece in pieces if piece[2] > THIN and piece[3] > THIN)
