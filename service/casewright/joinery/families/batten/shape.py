"""A breadboard end or a batten in space.

The lower edge of the slab is the reference: x runs from the outer edge of the end, or of the batten, along
the grain of the slab, y across it, z through its thickness from the face.
"""

from collections.abc import Iterator, Sequence

from casewright.joinery.families.batten.asked import Batten
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Flat,
    Marked,
    Shape,
    Strip,
    Stroke,
    block,
    box,
    round_outline,
)
from casewright.measure.saying import say
from casewright.measure.units import Inches

BEYOND = 2.0
"""How far past the joint the slab is drawn, in widths of the end."""
SLAB = "slab"
Slots = Sequence[tuple[Inches, Inches]]
"""Distance of each pair of slots from the middle, and their length [in]."""


def batten_shape(joint: Batten, groove: Inches, slots: Slots) -> Shape:
    """The joint in space.

    Args:
        joint: what was asked for
        groove: width of the groove; 0 for a batten [in]
        slots: distance from the middle and length of each pair of slots [in]

    Returns:
        Slab and end, or slab and batten, their views, and what is marked on each.

    Source: geometry of the joint.
    """
    boards = _on_the_end(joint, groove) if joint.is_breadboard else _behind(joint)
    thick = joint.thickness if joint.is_breadboard else joint.thickness + joint.batten
    first = joint.end - joint.tongue if joint.is_breadboard else 0.0
    return Shape(
        boards=boards,
        cuts=tuple(_cuts(joint, groove)),
        engaged=joint.tongue or joint.batten,
        filled=((first, joint.end), (joint.short, joint.width - joint.short), (0.0, thick)),
        strips=tuple(_strips(joint, slots)),
    )


def _on_the_end(joint: Batten, groove: Inches) -> tuple[Board, ...]:
    end, thick, across = joint.end, joint.thickness, (0.0, joint.width)
    cheek, floor = (thick - groove) / 2, end - joint.tongue - joint.limits.room.value
    beyond = end + BEYOND * end
    return (
        Board(
            name=joint.name,
            prisms=(
                block((0.0, floor), across, (0.0, thick)),
                block((floor, end), across, (0.0, cheek)),
                block((floor, end), across, (cheek + groove, thick)),
            ),
            apart=(-1.0, 0.0, 0.0),
        ),
        Board(
            name=SLAB,
            prisms=(
                block((end - joint.tongue, end), across, (cheek, cheek + groove)),
                block((end, beyond), across, (0.0, thick)),
            ),
            apart=(1.0, 0.0, 0.0),
        ),
    )


def _behind(joint: Batten) -> tuple[Board, ...]:
    end, thick = joint.end, joint.thickness
    return (
        Board(
            name=SLAB,
            prisms=(block((-end, end + BEYOND * end), (0.0, joint.width), (0.0, thick)),),
            apart=(0.0, 0.0, -1.0),
        ),
        Board(
            name=joint.name,
            prisms=(
                block((0.0, end), (joint.short, joint.width - joint.short), (thick, thick + joint.batten)),
            ),
            apart=(0.0, 0.0, 1.0),
        ),
    )


def _cuts(joint: Batten, groove: Inches) -> Iterator[Cut]:
    thick = Dimension(name=SLAB, start=0.0, end=joint.thickness, level=False, after=False)
    wide = Dimension(name=joint.name, start=0.0, end=joint.end, level=True, after=False)
    more: tuple[Dimension, ...]
    if joint.is_breadboard:
        cheek = (joint.thickness - groove) / 2
        more = (
            Dimension(name="tongue", start=joint.end - joint.tongue, end=joint.end, level=True),
            Dimension(name="its thickness", start=cheek, end=cheek + groove, level=False),
        )
    else:
        more = (
            Dimension(
                name=joint.name, start=joint.thickness, end=joint.thickness + joint.batten, level=False
            ),
        )
    yield Cut(
        axis=Axis.Y,
        at=joint.width / 2,
        title=f"from the edge, cut along the slab through the {joint.name}",
        dimensions=(thick, wide, *more),
    )


def _strips(joint: Batten, slots: Slots) -> Iterator[Strip]:
    """Where the holes are in the one, and the slots in the other; both laid on from the left end."""
    middle, high = joint.length / 2, joint.end / 2
    up = joint.tongue / 2 if joint.is_breadboard else high
    holes = [middle, *(middle + side * distance for distance, _ in slots for side in (-1, 1))]
    slotted = [(middle + side * distance, length) for distance, length in slots for side in (-1, 1)]
    hole_up = joint.end - up if joint.is_breadboard else up
    yield Strip(
        board=joint.name if joint.is_breadboard else SLAB,
        face="face" if joint.is_breadboard else "back, under the batten",
        length=joint.length,
        height=joint.end,
        left="left end" if joint.is_breadboard else "left end of the batten",
        foot="outer edge" if joint.is_breadboard else "line of the batten",
        lines=tuple(_crossed((at, hole_up)) for at in holes),
        waste=tuple(round_outline((at, hole_up), joint.hole) for at in holes),
        is_handed=False,
    )
    yield Strip(
        board=SLAB if joint.is_breadboard else joint.name,
        face="tongue" if joint.is_breadboard else "back",
        length=joint.length,
        height=joint.tongue if joint.is_breadboard else joint.end,
        left="left edge" if joint.is_breadboard else "left end",
        foot="end of the tongue" if joint.is_breadboard else "lower edge",
        lines=tuple(_crossed((at, up)) for at in holes),
        waste=(
            round_outline((middle, up), joint.hole),
            *(
                box((at - length / 2, at + length / 2), (up - joint.hole / 2, up + joint.hole / 2))
                for at, length in slotted
            ),
        ),
        is_handed=False,
    )


def _crossed(at: Flat) -> Marked:
    along, up = at
    return Marked(
        stroke=Stroke.SAW, start=(along, up - 1 / 8), end=(along, up + 1 / 8), label=say("{:bare}", along)
    )
