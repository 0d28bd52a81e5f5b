"""A row of dowels or loose tenons that holds a board against the face of another: where they stand, in space.

Positions are reckoned from the reference edge and never from one to the next, so that no rounding adds up.
x runs from the outside of the case side, y from the front edge along the joint, z from the board's face.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
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
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to
from casewright.measure.saying import Words
from casewright.measure.units import Count, Inches

BEYOND = 2.0
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""
HALF_OF_A_SIDE = math.tan(math.pi / 8)
"""Half of one of a dowel's eight drawn sides, in halves of its thickness."""


def row_count(width: Inches, margin: Inches, spacing: Inches) -> Count:
    """How many stand in a row: as many as are no farther apart than they may be, and two at least.

    Rule: (width - 2 * margin) / spacing, rounded up, and one; at least two

    Args:
        width: length of the joint, from edge to edge [in]
        margin: from each edge to the middle of the first [in]
        spacing: the most from middle to middle [in]

    Returns:
        The number [dimensionless]

    Source: common practice.
    """
    return max(2, math.ceil((width - 2 * margin) / spacing - TOLERANCE) + 1)


def row_spacing(width: Inches, margin: Inches, count: Count) -> Inches:
    """From the middle of one to the middle of the next.

    Rule: (width - 2 * margin) / (count - 1); 0 for one alone

    Args:
        width: length of the joint, from edge to edge [in]
        margin: from each edge to the middle of the first [in]
        count: how many stand in the row [dimensionless]

    Returns:
        The distance, unrounded [in]

    Source: geometry of the joint.
    """
    return (width - 2 * margin) / (count - 1) if count > 1 else 0.0


def row_places(width: Inches, margin: Inches, count: Count) -> tuple[Inches, ...]:
    """The middle of each, from the reference edge.

    Rule: margin + number * (width - 2 * margin) / (count - 1), number from 0; one alone in the middle

    Args:
        width: length of the joint, from edge to edge [in]
        margin: from each edge to the middle of the first [in]
        count: how many stand in the row [dimensionless]

    Returns:
        The places from the reference edge, unrounded [in]

    Source: geometry of the joint: each is reckoned from the edge, so that rounding does not add up.
    """
    if count < 2:
        return (width / 2,)
    return tuple(margin + number * (width - 2 * margin) / (count - 1) for number in range(count))


def usual_row_margin(width: Inches, usual: Inches, step: Inches) -> Inches:
    """From each edge to the middle of the first: the usual distance, or a quarter of a narrow board.

    Rule: the lesser of usual and width / 4 down to step

    Args:
        width: length of the joint, from edge to edge [in]
        usual: the distance on a wide board [in]
        step: a narrow board's is a multiple of this [in]

    Returns:
        The distance [in]

    Source: common practice.
    """
    return min(usual, down_to(width / 4, step) or width / 4)


def rest_of_length(length: Inches, clearance: Inches, side_depth: Inches) -> Inches:
    """How deep the hole in the other board is: both together are deeper than the piece in them is long.

    Rule: length + clearance - side_depth

    Args:
        length: length of the dowel or loose tenon [in]
        clearance: room for glue, both ends together [in]
        side_depth: depth of the hole in the case side [in]

    Returns:
        The depth in the other board [in]

    Source: common practice: a hole as deep as the dowel is long holds the joint open on its glue.
    """
    return length + clearance - side_depth


def left_of_side(case_side: Inches, side_depth: Inches) -> Inches:
    """What is left of the case side behind a hole.

    Rule: case_side - side_depth

    Args:
        case_side: thickness of the case side [in]
        side_depth: depth of the hole in it [in]

    Returns:
        The wood that is left [in]

    Source: geometry of the joint.
    """
    return case_side - side_depth


@dataclass(frozen=True, slots=True, kw_only=True)
class Butted:
    """What such a joint looks like.

    Attributes:
        width: length of the joint [in]
        board: thickness of the board that butts [in]
        case_side: thickness of the other [in]
        into_side: how far each piece lies in the case side [in]
        into_board: how far it lies in the board [in]
        places: the middle of each from the front edge [in]
        along: size of a piece along the joint [in]
        thick: its thickness [in]
        is_round: whether it is round
        piece: what the pieces are called
        note: what is not drawn
    """

    width: Inches
    board: Inches
    case_side: Inches
    into_side: Inches
    into_board: Inches
    places: tuple[Inches, ...]
    along: Inches
    thick: Inches
    is_round: bool
    piece: str
    note: Words


def butted_shape(joint: Butted) -> Shape:
    """The joint in space, without a gap: the room for glue at the ends of the holes is not drawn.

    Args:
        joint: its sizes

    Returns:
        Case side, board and pieces, their views, and the strips of both boards.

    Source: geometry of the joint.
    """
    side, thick, up = joint.case_side, joint.board, (0.0, joint.width)
    beyond = BEYOND * max(side, thick)
    start, end = side - joint.into_side, side + joint.into_board
    deep = (0.0, thick + beyond)
    boards = (
        Board(
            name="board",
            prisms=(
                *_holed((side, end), (0.0, thick), joint),
                block((end, end + beyond), up, (0.0, thick)),
            ),
            apart=(1.0, 0.0, 0.0),
        ),
        Board(
            name="case side",
            prisms=(block((0.0, start), up, deep), *_holed((start, side), deep, joint)),
        ),
        Board(
            name=joint.piece,
            prisms=tuple(
                Prism(along=Axis.X, outline=_outline(joint, place), start=start, end=end)
                for place in joint.places
            ),
            apart=(1.0, 0.0, 0.0),
        ),
    )
    return Shape(
        boards=boards,
        cuts=tuple(_cuts(joint, start, end)),
        engaged=joint.into_side,
        filled=((0.0, end), up, (0.0, thick)),
        strips=tuple(_strips(joint)),
        notes=(joint.note,),
    )


def _outline(joint: Butted, place: Inches) -> Outline:
    middle, half, tall = joint.board / 2, joint.thick / 2, joint.along / 2
    if not joint.is_round:
        return box((middle - half, middle + half), (place - tall, place + tall))
    short = half * HALF_OF_A_SIDE
    turns = ((short, half), (-short, half), (-half, short), (-half, -short))
    return tuple((middle + z, place + y) for z, y in (*turns, *((-z, -y) for z, y in turns)))


def _holed(x: tuple[Inches, Inches], z: tuple[Inches, Inches], joint: Butted) -> Iterator[Prism]:
    """A board's part with a row of holes through it: whole wood between them, and pieces around each."""
    near, far = z
    middle, half, tall = joint.board / 2, joint.thick / 2, joint.along / 2
    levels = [0.0, *(level for place in joint.places for level in (place - tall, place + tall)), joint.width]
    for number, (low, high) in enumerate(pairwise(levels)):
        around = [box((near, far), (low, high))]
        if number % 2:
            around = [box((near, middle - half), (low, high)), box((middle + half, far), (low, high))]
            if joint.is_round:
                around.extend(_corners(middle, (low + high) / 2, half))
        for outline in around:
            yield Prism(along=Axis.X, outline=outline, start=x[0], end=x[1])


def _corners(middle: Inches, place: Inches, half: Inches) -> Iterator[Outline]:
    """What a square has beside the eight sides of the dowel that fills it."""
    short = half * HALF_OF_A_SIDE
    for right in (-1, 1):
        for up in (-1, 1):
            yield tuple(
                (middle + right * z, place + up * y) for z, y in ((half, half), (short, half), (half, short))
            )


def _cuts(joint: Butted, start: Inches, end: Inches) -> Iterator[Cut]:
    side, thick = joint.case_side, joint.board
    low, high = (thick - joint.thick) / 2, (thick + joint.thick) / 2
    yield Cut(
        axis=Axis.Y,
        at=joint.places[0],
        title=f"cut along the board, through the first of the {joint.piece}",
        dimensions=(
            Dimension(name="case side", start=0.0, end=side, level=True, after=False),
            Dimension(name="in the side", start=start, end=side, level=True),
            Dimension(name="in the board", start=side, end=end, level=True),
            Dimension(name="face to it", start=0.0, end=low, level=False, after=False),
            Dimension(name="thickness", start=low, end=high, level=False, after=False),
            Dimension(name="board", start=0.0, end=thick, level=False),
        ),
    )
    ends = (0.0, *joint.places, joint.width)
    names = ("margin", *("spacing" for _ in joint.places[1:]), "margin")
    yield Cut(
        axis=Axis.X,
        at=(start + side) / 2,
        title="case side, cut open along its inner face",
        boards=("case side", joint.piece),
        dimensions=(
            Dimension(name="middle", start=0.0, end=thick / 2, level=True),
            *(
                Dimension(name=name, start=first, end=last, level=False, after=False)
                for name, (first, last) in zip(names, pairwise(ends), strict=True)
            ),
            Dimension(name="width", start=0.0, end=joint.width, level=False),
        ),
    )


def _strips(joint: Butted) -> Iterator[Strip]:
    middle = joint.board / 2
    for board, face, left in (
        ("case side", "inside face", "end"),
        ("board", "end", "outer face"),
    ):
        yield Strip(
            board=board,
            face=face,
            left=left,
            foot="front edge",
            length=joint.board,
            height=joint.width,
            lines=(
                Marked(
                    stroke=Stroke.GAUGE, start=(middle, 0.0), end=(middle, joint.width), label="middle line"
                ),
                *(line for place in joint.places for line in _marks(joint, place)),
            ),
        )


def _marks(joint: Butted, place: Inches) -> Iterator[Marked]:
    near, far = (joint.board - joint.thick) / 2, (joint.board + joint.thick) / 2
    levels = (place,) if joint.is_round else (place - joint.along / 2, place + joint.along / 2)
    for level in levels:
        yield Marked(stroke=Stroke.GAUGE, start=(near, level), end=(far, level))
