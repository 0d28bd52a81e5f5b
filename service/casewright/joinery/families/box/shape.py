"""The box joint in space."""

from collections.abc import Iterator

from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Marked,
    Shape,
    Strip,
    Stroke,
    block,
    box,
)
from casewright.measure.units import Inches

BEYOND = 2.5
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""


Fingers = tuple[tuple[Inches, Inches], ...]
"""From where to where each finger reaches, the lowest first [in]."""


def box_shape(
    height: Inches, side: Inches, front: Inches, side_fingers: Fingers, front_fingers: Fingers
) -> Shape:
    """A box joint in space; the play is left out.

    Args:
        height: height of the boards at the joint [in]
        side: thickness of the side [in]
        front: thickness of the board across [in]
        side_fingers: fingers of the side [in]
        front_fingers: fingers of the front [in]

    Returns:
        Boards, cuts and what is marked.

    Source: geometry of the joint.
    """
    beyond = BEYOND * max(side, front)
    ends_x, ends_z = (0.0, side), (0.0, front)
    boards = (
        Board(
            name="front",
            prisms=(
                block((side, side + beyond), (0.0, height), ends_z),
                *(block(ends_x, span, ends_z) for span in front_fingers),
            ),
            apart=(0.0, 0.0, -1.0),
        ),
        Board(
            name="side",
            prisms=(
                block(ends_x, (0.0, height), (front, front + beyond)),
                *(block(ends_x, span, ends_z) for span in side_fingers),
            ),
            apart=(0.0, 0.0, 1.0),
        ),
    )
    first = side_fingers[0]
    cuts = (
        Cut(
            axis=Axis.Y,
            at=(first[0] + first[1]) / 2,
            title="plan, through a finger of the side",
            dimensions=(
                Dimension(name="side", start=0.0, end=side, level=True),
                Dimension(name="front", start=0.0, end=front, level=False, after=False),
            ),
        ),
        Cut(
            axis=Axis.X,
            at=side / 2,
            title="side, cut along its middle",
            dimensions=(
                *(
                    Dimension(name="finger", start=low, end=high, level=False, after=False)
                    for low, high in sorted((*front_fingers, *side_fingers))
                ),
                Dimension(name="height", start=0.0, end=height, level=False),
            ),
        ),
    )
    return Shape(
        boards=boards,
        cuts=cuts,
        engaged=max(side, front),
        filled=(ends_x, (0.0, height), ends_z),
        strips=tuple(_strips(height, side, front, side_fingers, front_fingers)),
    )


def _strips(
    height: Inches, side: Inches, front: Inches, side_fingers: Fingers, front_fingers: Fingers
) -> Iterator[Strip]:
    for board, depth, fingers, spaces in (
        ("side", front, side_fingers, front_fingers),
        ("front", side, front_fingers, side_fingers),
    ):
        baseline = Marked(stroke=Stroke.GAUGE, start=(depth, 0.0), end=(depth, height), label="baseline")
        edges = sorted({edge for span in fingers for edge in span} - {0.0, height})
        yield Strip(
            board=board,
            face="outside face",
            length=depth,
            height=height,
            lines=(
                baseline,
                *(Marked(stroke=Stroke.SAW, start=(0.0, edge), end=(depth, edge)) for edge in edges),
            ),
            waste=tuple(box((0.0, depth), span) for span in spaces),
        )
