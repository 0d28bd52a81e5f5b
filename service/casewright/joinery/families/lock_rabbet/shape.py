"""The lock rabbet in space: its boards, its views and what is marked on their faces."""

from collections.abc import Iterator

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
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.units import Inches

BEYOND = 2.0
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""


def lock_rabbet_shape(
    height: Inches,
    front: Inches,
    side: Inches,
    lip: Inches,
    tongue: Inches,
    reach: Inches,
    from_end: Inches,
) -> Shape:
    """The joint in space, without any gap: the play of the tongue is not drawn.

    Args:
        height: height of the boards [in]
        front: thickness of the front [in]
        side: thickness of the side [in]
        lip: what of the front covers the end of the side; 0 for none [in]
        tongue: thickness of the tongue [in]
        reach: how long the tongue is [in]
        from_end: from the end of the side to its groove [in]

    Returns:
        Front and side, their views, and the strips of both.

    Source: geometry of the joint.
    """
    beyond = BEYOND * max(front, side)
    up = (0.0, height)
    near, far = lip + from_end, lip + from_end + tongue
    tip = side - reach
    boards = (
        Board(
            name="front",
            prisms=(
                block((side, side + beyond), up, (0.0, front)),
                block((tip, side), up, (near, far)),
                *_lip(side, height, lip),
            ),
            apart=(1.0, 0.0, 0.0),
        ),
        Board(
            name="side",
            prisms=(
                block((0.0, side), up, (lip, near)),
                block((0.0, tip), up, (near, far)),
                block((0.0, side), up, (far, front + beyond)),
            ),
            apart=(-1.0, 0.0, 0.0),
        ),
    )
    return Shape(
        boards=boards,
        cuts=(
            Cut(
                axis=Axis.Y,
                at=height / 2,
                title="plan, cut open",
                dimensions=tuple(_plan_dimensions(front, side, lip, tongue, reach, from_end)),
            ),
            Cut(
                axis=Axis.X,
                at=side - reach / 2,
                title="side, cut open where it holds the tongue",
                dimensions=(
                    Dimension(name="height", start=0.0, end=height, level=False, after=False),
                    Dimension(name="end", start=lip, end=near, level=True),
                    Dimension(name="groove", start=near, end=far, level=True),
                ),
            ),
        ),
        engaged=reach if lip < TOLERANCE else side,
        filled=((0.0, side), up, (0.0, front)),
        strips=tuple(_strips(height, front, side, lip, tongue, reach, from_end)),
    )


def _lip(side: Inches, height: Inches, lip: Inches) -> tuple[Prism, ...]:
    return (block((0.0, side), (0.0, height), (0.0, lip)),) if lip > TOLERANCE else ()


def _plan_dimensions(
    front: Inches, side: Inches, lip: Inches, tongue: Inches, reach: Inches, from_end: Inches
) -> Iterator[Dimension]:
    near, far = lip + from_end, lip + from_end + tongue
    yield Dimension(name="tongue length", start=side - reach, end=side, level=True)
    yield Dimension(name="side", start=0.0, end=side, level=True, row=1)
    across = (("lip", 0.0, lip), ("end", lip, near), ("tongue", near, far), ("shoulder", far, front))
    for name, start, end in across:
        if end - start > TOLERANCE:
            yield Dimension(name=name, start=start, end=end, level=False, after=False)
    yield Dimension(name="front", start=0.0, end=front, level=False)


def _strips(
    height: Inches,
    front: Inches,
    side: Inches,
    lip: Inches,
    tongue: Inches,
    reach: Inches,
    from_end: Inches,
) -> Iterator[Strip]:
    up = (0.0, height)
    far = from_end + tongue
    yield Strip(
        board="side",
        face="inside face",
        length=far,
        height=height,
        lines=(
            _upright(from_end, height, "groove, near wall"),
            _upright(far, height, "groove, far wall"),
        ),
        waste=(box((from_end, far), up),),
    )
    has_shoulder = front - lip - far > TOLERANCE
    if lip < TOLERANCE:
        for face in ("outside face", "inside face")[: 1 + has_shoulder]:
            yield _end_of_front(face, height, (_upright(reach, height, "shoulder"),), reach)
        return
    # The slot is seen on the end only: what the inside face shows is how far the tongue is cut back.
    shoulder = _upright(side, height, "shoulder")
    tip = _upright(side - reach, height, "tip of the tongue")
    if has_shoulder:
        yield _end_of_front("inside face", height, (shoulder,), side)
    else:
        yield _end_of_front("inside face", height, (tip, shoulder), side - reach)


def _end_of_front(face: str, height: Inches, lines: tuple[Marked, ...], cut_away: Inches) -> Strip:
    long = max(line.start[0] for line in lines)
    waste = (box((0.0, cut_away), (0.0, height)),)
    return Strip(board="front", face=face, length=long, height=height, lines=lines, waste=waste)


def _upright(across: Inches, height: Inches, label: str) -> Marked:
    return Marked(stroke=Stroke.GAUGE, start=(across, 0.0), end=(across, height), label=label)
