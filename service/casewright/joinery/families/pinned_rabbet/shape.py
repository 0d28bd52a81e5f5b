"""The pinned rabbet in space: front, side and pins, their views and what is marked on their faces.

A pin is drawn with eight sides, as it is shaved before it is driven; the groove for the bottom is not drawn.
"""

import math
from collections.abc import Iterator
from itertools import pairwise

from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
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

BEYOND = 2.0
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""
HALF_OF_A_SIDE = math.tan(math.pi / 8)
"""Half of one of a pin's eight sides, in halves of its thickness."""


def pinned_rabbet_shape(
    height: Inches,
    front: Inches,
    side: Inches,
    lip: Inches,
    pin: Inches,
    pin_length: Inches,
    places: tuple[Inches, ...],
) -> Shape:
    """The joint in space, without any gap: the holes are as deep as the pins are long.

    Args:
        height: height of the boards [in]
        front: thickness of the front [in]
        side: thickness of the side [in]
        lip: what of the front is left before the end of the side [in]
        pin: thickness of a pin [in]
        pin_length: length of a pin, from the outside face of the side [in]
        places: the middle of each pin above the bottom edge, the lowest first [in]

    Returns:
        Front, side and pins, their views, and the strips of both boards.

    Source: geometry of the joint.
    """
    beyond = BEYOND * max(front, side)
    up = (0.0, height)
    line = (front + lip) / 2
    behind = front + beyond
    half = pin / 2
    boards = (
        Board(
            name="front",
            prisms=(
                block((0.0, side), up, (0.0, lip)),
                *_drilled((side, pin_length), (0.0, front), height, line, places, half),
                block((pin_length, pin_length + beyond), up, (0.0, front)),
            ),
            apart=(0.0, 0.0, -1.0),
        ),
        Board(
            name="side",
            prisms=tuple(_drilled((0.0, side), (lip, behind), height, line, places, half)),
        ),
        Board(
            name="pins",
            prisms=tuple(
                Prism(along=Axis.X, outline=_round(line, place, half), start=0.0, end=pin_length)
                for place in places
            ),
            apart=(-1.0, 0.0, 0.0),
        ),
    )
    return Shape(
        boards=boards,
        cuts=tuple(_cuts(height, front, side, lip, pin_length, places)),
        engaged=pin_length,
        filled=((0.0, pin_length), up, (0.0, front)),
        strips=tuple(_strips(height, front - lip, side, half, places)),
    )


def _drilled(
    x: tuple[Inches, Inches],
    z: tuple[Inches, Inches],
    height: Inches,
    line: Inches,
    places: tuple[Inches, ...],
    half: Inches,
) -> Iterator[Prism]:
    """A board's part with a row of holes through it: whole wood between them, and pieces around each."""
    near, far = z
    levels = [0.0, *(level for place in places for level in (place - half, place + half)), height]
    for number, (low, high) in enumerate(pairwise(levels)):
        if number % 2 == 0:
            yield Prism(along=Axis.X, outline=box(z, (low, high)), start=x[0], end=x[1])
            continue
        for outline in (
            box((near, line - half), (low, high)),
            box((line + half, far), (low, high)),
            *_corners(line, (low + high) / 2, half),
        ):
            yield Prism(along=Axis.X, outline=outline, start=x[0], end=x[1])


def _round(line: Inches, place: Inches, half: Inches) -> Outline:
    short = half * HALF_OF_A_SIDE
    corners = (
        (short, half),
        (-short, half),
        (-half, short),
        (-half, -short),
        (-short, -half),
        (short, -half),
        (half, -short),
        (half, short),
    )
    return tuple((line + z, place + y) for z, y in corners)


def _corners(line: Inches, place: Inches, half: Inches) -> Iterator[Outline]:
    """What a square has beside the eight sides of a pin that fills it."""
    short = half * HALF_OF_A_SIDE
    for right in (-1, 1):
        for up in (-1, 1):
            yield tuple(
                (line + right * z, place + up * y) for z, y in ((half, half), (short, half), (half, short))
            )


def _cuts(
    height: Inches,
    front: Inches,
    side: Inches,
    lip: Inches,
    pin_length: Inches,
    places: tuple[Inches, ...],
) -> Iterator[Cut]:
    line = (front + lip) / 2
    yield Cut(
        axis=Axis.Y,
        at=places[0],
        title="plan, through the lowest pin",
        dimensions=(
            Dimension(name="side", start=0.0, end=side, level=True, after=False),
            Dimension(name="pin", start=0.0, end=pin_length, level=True),
            Dimension(name="lip", start=0.0, end=lip, level=False, after=False),
            Dimension(name="rabbet", start=lip, end=front, level=False, after=False),
            Dimension(name="front", start=0.0, end=front, level=False),
        ),
    )
    ends = (0.0, *places, height)
    names = ("margin", *("spacing" for _ in places[1:]), "margin")
    yield Cut(
        axis=Axis.X,
        at=side / 2,
        title="side, cut along its middle",
        dimensions=(
            Dimension(name="lip", start=0.0, end=lip, level=True),
            Dimension(name="pin line", start=lip, end=line, level=True),
            *(
                Dimension(name=name, start=low, end=high, level=False, after=False)
                for name, (low, high) in zip(names, pairwise(ends), strict=True)
            ),
            Dimension(name="height", start=0.0, end=height, level=False),
        ),
    )


def _strips(
    height: Inches, rabbet: Inches, side: Inches, half: Inches, places: tuple[Inches, ...]
) -> Iterator[Strip]:
    line = rabbet / 2
    yield Strip(
        board="side",
        face="outside face",
        length=rabbet,
        height=height,
        lines=(
            Marked(stroke=Stroke.GAUGE, start=(line, 0.0), end=(line, height), label="pin line"),
            *(
                Marked(stroke=Stroke.GAUGE, start=(line - half, place), end=(line + half, place))
                for place in places
            ),
        ),
    )
    yield Strip(
        board="front",
        face="inside face",
        length=side,
        height=height,
        lines=(Marked(stroke=Stroke.GAUGE, start=(side, 0.0), end=(side, height), label="shoulder"),),
        waste=(box((0.0, side), (0.0, height)),),
    )
