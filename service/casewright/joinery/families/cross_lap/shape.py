"""Crossing strips in space: the level one notched from the rear, the upright one from the front.

The lower face of the level strip and the left face of the upright one are the reference: x runs from the one
to the right, y from the other up, z from the front edges of both to the rear.
"""

from collections.abc import Iterator

from casewright.joinery.families.cross_lap.asked import CrossLap
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Marked,
    Prism,
    Shape,
    Strip,
    Stroke,
    block,
    box,
)
from casewright.measure.units import Inches

BEYOND = 2.0
"""How far past the joint a strip is drawn, in thicknesses of the thicker one."""
LEVEL, UPRIGHT = "level strip", "upright strip"


def cross_lap_shape(joint: CrossLap) -> Shape:
    """The joint in space, at one crossing.

    Args:
        joint: what was asked for

    Returns:
        Both strips, their views, and what is marked on each from end to end.

    Source: geometry of the joint.
    """
    beyond = BEYOND * max(joint.level, joint.upright)
    high, wide = joint.level + joint.play, joint.upright + joint.play
    front = joint.depth - joint.notch
    boards = (
        Board(
            name=LEVEL,
            prisms=(
                block((-beyond, wide + beyond), (0.0, joint.level), (0.0, front)),
                block((-beyond, 0.0), (0.0, joint.level), (front, joint.depth)),
                block((wide, wide + beyond), (0.0, joint.level), (front, joint.depth)),
            ),
            apart=(0.0, 0.0, -1.0),
        ),
        Board(
            name=UPRIGHT,
            prisms=tuple(_upright(joint, front, high, beyond)),
            apart=(0.0, 0.0, 1.0),
        ),
    )
    return Shape(
        boards=boards,
        cuts=tuple(_cuts(joint, front)),
        engaged=max(front, joint.notch),
        filled=((0.0, joint.upright), (0.0, joint.level), (0.0, joint.depth)),
        strips=tuple(_strips(joint, front)),
    )


def _upright(joint: CrossLap, front: Inches, high: Inches, beyond: Inches) -> Iterator[Prism]:
    across = (0.0, joint.upright)
    yield block(across, (-beyond, high + beyond), (front, joint.depth))
    yield block(across, (-beyond, 0.0), (0.0, front))
    yield block(across, (high, high + beyond), (0.0, front))


def _cuts(joint: CrossLap, front: Inches) -> Iterator[Cut]:
    level = Dimension(name=LEVEL, start=0.0, end=joint.level, level=False, after=False)
    upright = Dimension(name=UPRIGHT, start=0.0, end=joint.upright, level=True, after=False)
    yield Cut(
        axis=Axis.Y,
        at=joint.level / 2,
        title=f"plan, through the {LEVEL}",
        dimensions=(
            upright,
            Dimension(name="notch of the level strip", start=front, end=joint.depth, level=False),
        ),
    )
    yield Cut(
        axis=Axis.X,
        at=joint.upright / 2,
        title=f"from the side, through the {UPRIGHT}",
        dimensions=(level, Dimension(name="notch of the upright strip", start=0.0, end=front, level=True)),
    )
    yield Cut(
        axis=Axis.Z,
        at=front / 2,
        title="from the front, cut open before the notch of the level strip",
        dimensions=(level, upright),
    )


def _strips(joint: CrossLap, front: Inches) -> Iterator[Strip]:
    for board, face, left, marks, width, span in (
        (LEVEL, "upper face", "left end", joint.level_marks, joint.upright, (front, joint.depth)),
        (UPRIGHT, "left face", "lower end", joint.upright_marks, joint.level, (0.0, front)),
    ):
        wide = width + joint.play
        floor = span[0] if board == LEVEL else span[1]
        yield Strip(
            board=board,
            face=face,
            left=left,
            foot="front edge",
            length=marks[-1] + wide + BEYOND * wide,
            height=joint.depth,
            lines=tuple(_marked(marks, wide, span, floor)),
            waste=tuple(box((at, at + wide), span) for at in marks),
            is_handed=False,
        )


def _marked(
    marks: tuple[Inches, ...], wide: Inches, span: tuple[Inches, Inches], floor: Inches
) -> Iterator[Marked]:
    for number, at in enumerate(marks, start=1):
        yield Marked(stroke=Stroke.SAW, start=(at, span[0]), end=(at, span[1]), label=f"notch {number}")
        yield Marked(stroke=Stroke.SAW, start=(at + wide, span[0]), end=(at + wide, span[1]))
        yield Marked(stroke=Stroke.STOP, start=(at, floor), end=(at + wide, floor))
