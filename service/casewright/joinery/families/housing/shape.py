"""The housing in space: its boards, its views and what is marked on their faces.

The lower wall of the housing, which carries the divider, is the reference edge; z runs from the front edges.
It is the right-hand case side, whose inside face one sees from the front: x runs from that face to the right,
and the divider comes from the left.
"""

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
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import say
from casewright.measure.units import Inches

BEYOND = 2.0
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""

UPRIGHT = "upright"
"""A housed board that stands: the views show it lying."""
LYING = "; a quarter turn clockwise, and the {board} is below"
"""How such a view is turned, to see it as it stands."""


def housing_shape(
    divider: Inches,
    case_side: Inches,
    depth: Inches,
    play: Inches,
    stop: Inches,
    length: Inches | None = None,
    *,
    into: str = "case side",
    housed: str = "divider",
) -> Shape:
    """The joint in space; its one gap is the play, above the divider.

    Args:
        divider: thickness of the divider [in]
        case_side: thickness of the case side [in]
        depth: how deep the housing is [in]
        play: how much wider it is than the divider [in]
        stop: how far back of the front edge it stops; 0 where it runs through [in]
        length: depth of the divider from front to back; None when it is not known [in]
        into: what the board with the housing is called
        housed: what the board in it is called

    Returns:
        Case side and divider from their front edges back, their views, and the strips of both.

    Source: geometry of the joint.
    """
    beyond = BEYOND * max(divider, case_side)
    back = stop + 2 * beyond
    if length is not None:
        back = min(back, length)
    width = divider + play
    low, high = -beyond, width + beyond
    stopped, names = stop > TOLERANCE, (into, housed)
    boards = (
        Board(
            name=housed,
            prisms=(
                block((-beyond, 0.0), (0.0, divider), (0.0, back)),
                block((0.0, depth), (0.0, divider), (stop if stopped else 0.0, back)),
            ),
            apart=(-1.0, 0.0, 0.0),
        ),
        Board(
            name=into,
            prisms=(
                block((depth, case_side), (low, high), (0.0, back)),
                block((0.0, depth), (low, 0.0), (0.0, back)),
                block((0.0, depth), (width, high), (0.0, back)),
                *((block((0.0, depth), (0.0, width), (0.0, stop)),) if stopped else ()),
            ),
            apart=(1.0, 0.0, 0.0),
        ),
    )
    return Shape(
        boards=boards,
        cuts=tuple(_cuts(divider, case_side, depth, play, stop, back, names)),
        # Drawn apart by the depth alone, the divider would stand before most of the housing.
        engaged=max(depth, divider / 2),
        filled=((0.0, case_side), (low, divider), (0.0, back)),
        strips=tuple(_strips(divider, depth, play, stop if stopped else 0.0, back, names)),
    )


def _cuts(
    divider: Inches,
    case_side: Inches,
    depth: Inches,
    play: Inches,
    stop: Inches,
    back: Inches,
    names: tuple[str, str],
) -> Iterator[Cut]:
    stopped, (board, housed) = stop > TOLERANCE, names
    into = Dimension(name="depth", start=0.0, end=depth, level=True)
    side = Dimension(name=board, start=0.0, end=case_side, level=True, after=False)
    thick = Dimension(
        name=housed, start=0.0, end=divider, level=False, after=False, note=say("+ {:.3}", play)
    )
    yield Cut(
        axis=Axis.Y,
        at=divider / 2,
        title=f"plan, through the {housed}",
        dimensions=(
            into,
            side,
            *((Dimension(name="stop", start=0.0, end=stop, level=False),) if stopped else ()),
        ),
    )
    yield Cut(
        axis=Axis.X,
        at=depth / 2,
        title=f"{board}, cut open along the housing",
        dimensions=(
            thick,
            *((Dimension(name="stop", start=0.0, end=stop, level=True),) if stopped else ()),
        ),
    )
    yield Cut(
        axis=Axis.Z,
        at=(stop + back) / 2,
        title="from the front, cut open" + (LYING.format(board=board) if housed == UPRIGHT else ""),
        dimensions=(into, side, thick),
    )


def _strips(
    divider: Inches, depth: Inches, play: Inches, stop: Inches, back: Inches, names: tuple[str, str]
) -> Iterator[Strip]:
    width, (board, housed) = divider + play, names
    walls = (
        Marked(stroke=Stroke.GAUGE, start=(stop, 0.0), end=(back, 0.0), label="lower wall"),
        Marked(stroke=Stroke.GAUGE, start=(stop, width), end=(back, width), label="upper wall"),
    )
    end = Marked(stroke=Stroke.STOP, start=(stop, 0.0), end=(stop, width), label="stop")
    yield Strip(
        board=board,
        face="inside face",
        left="front edge",
        foot="lower wall of the housing",
        length=back,
        height=width,
        lines=(*walls, end) if stop else walls,
        waste=(box((stop, back), (0.0, width)),),
    )
    into = Marked(stroke=Stroke.GAUGE, start=(depth, 0.0), end=(depth, back), label="goes in so far")
    notch = Marked(stroke=Stroke.SAW, start=(0.0, stop), end=(depth, stop), label="notch")
    yield Strip(
        board=housed,
        face="upper face",
        foot="front edge",
        length=depth,
        height=back,
        lines=(into, notch) if stop else (into,),
        waste=(box((0.0, depth), (0.0, stop)),) if stop else (),
    )
