"""A door on butt hinges in space, at its lowest hinge: door, case, and the closed hinge in its gains.

The lower end of the door is the reference: x runs from the case across the gap into the door, y up, z from
the edge at which the pin lies along both.
"""

from collections.abc import Iterator, Sequence

from casewright.joinery.families.hinge.asked import Hinged
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Heights,
    Marked,
    Outline,
    Prism,
    Shape,
    Strip,
    Stroke,
    block,
    box,
)
from casewright.measure.units import Inches

DRAWN = 0.75
"""How much of door and case is drawn beside the hinge at the least [in]."""
BEYOND = 1.0
"""How far above the hinge they are drawn [in]."""
DOOR, HINGE = "door", "hinge"


def hinge_shape(joint: Hinged, on_door: Sequence[Inches], on_case: Sequence[Inches], depth: Inches) -> Shape:
    """The joint in space.

    Args:
        joint: what was asked for
        on_door: the lower end of each hinge above the lower end of the door [in]
        on_case: the same above the lower edge of the opening [in]
        depth: of a gain [in]

    Returns:
        Case, hinge and door at the lowest hinge, their views, and what is marked on door and case from end to
        end.

    Source: geometry of a closed door.
    """
    low, high = on_door[0], on_door[0] + joint.length
    top = min(joint.height, high + BEYOND)
    start, end = -(joint.closed - joint.gap - depth), joint.gap + depth
    drawn = max(DRAWN, 4 * joint.closed)
    left, right, deep = start - drawn, end + drawn, joint.under
    foot = min(0.0, -joint.foot)
    boards = (
        Board(
            name=joint.hung_on,
            prisms=tuple(_gained((left, 0.0), (foot, top), deep, joint, low, start)),
            apart=(-1.0, 0.0, 0.0),
        ),
        Board(
            name=HINGE,
            prisms=(block((start, end), (low, high), (0.0, joint.leaf)),),
            apart=(0.0, 0.0, -1.0),
        ),
        Board(
            name=DOOR,
            prisms=tuple(_gained((joint.gap, right), (0.0, top), deep, joint, low, end)),
            apart=(1.0, 0.0, 0.0),
        ),
    )
    return Shape(
        boards=boards,
        cuts=tuple(_cuts(joint, low, start, end)),
        engaged=joint.leaf,
        filled=((left, right), (low, high), (0.0, joint.leaf)),
        strips=tuple(_strips(joint, on_door, on_case)),
    )


def _gained(
    across: tuple[Inches, Inches],
    up: tuple[Inches, Inches],
    deep: Inches,
    joint: Hinged,
    low: Inches,
    floor: Inches,
) -> Iterator[Prism]:
    """A board with the gain of one hinge: below it, above it, behind its leaf, and under its floor."""
    high = low + joint.length
    for lower, upper in ((up[0], low), (high, up[1])):
        if upper > lower:
            yield block(across, (lower, upper), (0.0, deep))
    yield block(across, (low, high), (joint.leaf, deep))
    solid = (across[0], min(across[1], floor)) if floor <= 0 else (max(across[0], floor), across[1])
    yield block(solid, (low, high), (0.0, joint.leaf))


def _cuts(joint: Hinged, low: Inches, start: Inches, end: Inches) -> Iterator[Cut]:
    leaf = Dimension(name="leaf", start=0.0, end=joint.leaf, level=False)
    name = "reaches over" if joint.over else DOOR
    thick = Dimension(name=name, start=0.0, end=joint.under, level=False, after=False)
    into_door = Dimension(name="in the door", start=joint.gap, end=end, level=True)
    into_case = Dimension(name=f"in the {joint.hung_on}", start=start, end=0.0, level=True)
    closed = Dimension(name="closed hinge", start=start, end=end, level=True, after=False)
    yield Cut(
        axis=Axis.Y,
        at=low + joint.length / 2,
        title="plan, through a hinge",
        dimensions=(thick, leaf, closed, into_door, *(() if joint.all_in_door else (into_case,))),
        enlarged=True,
    )
    yield Cut(
        axis=Axis.X,
        at=(joint.gap + end) / 2,
        title="the gain in the door, from its edge",
        boards=(DOOR,),
        dimensions=(Dimension(name="leaf", start=0.0, end=joint.leaf, level=True),),
        columns=(
            Heights(
                heading=("from the lower", "end of the door"),
                marks=((0.0, "lower end"), (low, "hinge"), (low + joint.length, "its upper end")),
                edge=joint.under,
                after=True,
            ),
        ),
    )


def _strips(joint: Hinged, on_door: Sequence[Inches], on_case: Sequence[Inches]) -> Iterator[Strip]:
    yield Strip(
        board=DOOR,
        face="back" if joint.over else "hinged edge",
        left="hinged edge" if joint.over else "outer face",
        foot="lower end",
        length=joint.under,
        height=joint.height,
        lines=tuple(_marked(joint, on_door)),
        waste=tuple(_wastes(joint, on_door)),
    )
    if joint.all_in_door:
        return
    yield Strip(
        board=joint.hung_on,
        face="front edge" if joint.over else "inside face",
        left="line of the door’s edge" if joint.over else "front edge",
        foot="lower edge of the opening",
        length=joint.under,
        height=on_case[-1] + joint.length + joint.offset,
        lines=tuple(_marked(joint, on_case)),
        waste=tuple(_wastes(joint, on_case)),
    )


def _marked(joint: Hinged, places: Sequence[Inches]) -> Iterator[Marked]:
    for low in places:
        high = low + joint.length
        yield Marked(stroke=Stroke.GAUGE, start=(joint.leaf, low), end=(joint.leaf, high), label="leaf")
        for at in (low, high):
            yield Marked(stroke=Stroke.STOP, start=(0.0, at), end=(joint.leaf, at))


def _wastes(joint: Hinged, places: Sequence[Inches]) -> Iterator[Outline]:
    for low in places:
        yield box((0.0, joint.leaf), (low, low + joint.length))
