"""The carcase dovetail in space: both boards, the back in its rabbet, the views and the templates.

The board with the pins stands across, its front edge at y = 0; the board with the tails runs away from it.
Together with the back that fills the rabbet they leave no gap where they meet.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from casewright.joinery.families.carcase.layout import CarcaseLayout
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Flat,
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
from casewright.measure.units import Count, Inches

BEYOND = 2.5
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """What the shape of a carcase corner is made from.

    Attributes:
        layout: the tails
        tail_board: thickness of the board with the tails [in]
        pin_board: thickness of the board with the pins [in]
        lap: left of that board outside the tails; 0 for through tails [in]
        rabbet_width: how far the rabbet for the back reaches in from the back edge; 0 for none [in]
        rabbet_depth: how far it reaches in from the inside faces; 0 for none [in]
    """

    layout: CarcaseLayout
    tail_board: Inches
    pin_board: Inches
    lap: Inches
    rabbet_width: Inches = 0.0
    rabbet_depth: Inches = 0.0

    @property
    def beyond(self) -> Inches:
        """How far a board is drawn past the joint [in]."""
        return BEYOND * max(self.tail_board, self.pin_board)

    @property
    def rabbet(self) -> tuple[Inches, Inches, Inches]:
        """Where the rabbet begins along x, y and z; it runs to the inside, the back edge and the inside."""
        return (
            self.tail_board - self.rabbet_depth,
            self.layout.width - self.rabbet_width,
            self.pin_board - self.rabbet_depth,
        )


def corner_shape(corner: Corner) -> Shape:
    """The joint in space.

    Args:
        corner: the joint's sizes

    Returns:
        Its boards, views and templates.

    Source: geometry of the joint.
    """
    boards = [
        Board(name="pin board", prisms=tuple(_pin_board(corner)), apart=(0.0, 0.0, -1.0)),
        Board(name="tail board", prisms=tuple(_tail_board(corner)), apart=(0.0, 0.0, 1.0)),
    ]
    wide, beyond = corner.layout.width, corner.beyond
    if corner.rabbet_width:
        x, y, z = corner.rabbet
        back = block((x, corner.tail_board + beyond), (y, wide), (z, corner.pin_board + beyond))
        boards.append(Board(name="back", prisms=(back,), apart=(0.0, 1.0, 0.0)))
    return Shape(
        boards=tuple(boards),
        cuts=tuple(_cuts(corner)),
        engaged=max(corner.tail_board, corner.pin_board),
        filled=((0.0, corner.tail_board), (0.0, wide), (0.0, corner.pin_board)),
        strips=tuple(_strips(corner)),
    )


def _pin_board(corner: Corner) -> Iterator[Prism]:
    wide, thick, lap, inner = corner.layout.width, corner.tail_board, corner.lap, corner.pin_board
    far = thick + corner.beyond
    for outline in _outside_the_rabbet(box((0.0, inner), (0.0, wide)), corner):
        yield Prism(along=Axis.X, outline=outline, start=thick, end=far)
    if lap > 0:
        yield block((0.0, thick), (0.0, wide), (0.0, lap))
    for outline in _pins(corner):
        yield from _through_the_tails(outline, corner)


def _tail_board(corner: Corner) -> Iterator[Prism]:
    wide, thick, lap, inner = corner.layout.width, corner.tail_board, corner.lap, corner.pin_board
    x, y, _ = corner.rabbet
    reach = (inner, inner + corner.beyond)
    if corner.rabbet_width:
        yield block((0.0, thick), (0.0, y), reach)
        yield block((0.0, x), (y, wide), reach)
    else:
        yield block((0.0, thick), (0.0, wide), reach)
    for tail in corner.layout.tails:
        outline: Outline = (
            (lap, tail.lower_end),
            (inner, tail.lower_base),
            (inner, tail.upper_base),
            (lap, tail.upper_end),
        )
        yield from _through_the_tails(outline, corner)


def _pins(corner: Corner) -> Iterator[Outline]:
    """The pins and both half pins, as one sees them along the board across."""
    lap, inner, tails = corner.lap, corner.pin_board, corner.layout.tails
    lower = [(0.0, 0.0), *((tail.upper_end, tail.upper_base) for tail in tails)]
    upper = [*((tail.lower_end, tail.lower_base) for tail in tails), (corner.layout.width,) * 2]
    for (low_end, low_base), (high_end, high_base) in zip(lower, upper, strict=True):
        yield (lap, low_end), (inner, low_base), (inner, high_base), (lap, high_end)


def _through_the_tails(outline: Outline, corner: Corner) -> Iterator[Prism]:
    """A tail or a pin through the thickness of the tail board, with the rabbet taken out of its inside."""
    x, thick = corner.rabbet[0], corner.tail_board
    left = list(_outside_the_rabbet(outline, corner))
    if left == [outline]:
        yield Prism(along=Axis.X, outline=outline, start=0.0, end=thick)
        return
    yield Prism(along=Axis.X, outline=outline, start=0.0, end=x)
    for piece in left:
        yield Prism(along=Axis.X, outline=piece, start=x, end=thick)


def _outside_the_rabbet(outline: Outline, corner: Corner) -> Iterator[Outline]:
    """What the rabbet leaves of an outline that is seen along the board across."""
    _, y, z = corner.rabbet
    reaches = max(at for at, _ in outline) > z + TOLERANCE and max(up for _, up in outline) > y + TOLERANCE
    if not corner.rabbet_width or not reaches:
        yield outline
        return
    before, beside = clipped(outline, 0, z, below=True), clipped(outline, 0, z, below=False)
    under = clipped(beside, 1, y, below=True) if beside else ()
    yield from (piece for piece in (before, under) if piece)


def clipped(outline: Outline, place: Count, at: Inches, *, below: bool) -> Outline:
    """What a straight cut along an axis leaves of a convex outline.

    Args:
        outline: its corners in turn [in]
        place: which coordinate is limited: 0 for the first, 1 for the second
        at: where the cut lies [in]
        below: whether what lies below is kept; else what lies above

    Returns:
        The corners that are left; none when nothing with an area is [in]

    Source: geometry: Sutherland and Hodgman's clipping of a polygon by a half-plane.
    """
    sign = 1.0 if below else -1.0
    kept: list[Flat] = []
    for start, end in pairwise((*outline, outline[0])):
        first, second = sign * (start[place] - at), sign * (end[place] - at)
        if first <= 0:
            kept.append(start)
        if first * second < 0:
            part = first / (first - second)
            kept.append((start[0] + part * (end[0] - start[0]), start[1] + part * (end[1] - start[1])))
    spreads = [max(values) - min(values) for values in zip(*kept, strict=True)] if len(kept) > 2 else [0.0]
    return tuple(kept) if min(spreads) > TOLERANCE else ()


def _cuts(corner: Corner) -> Iterator[Cut]:
    layout, lap, inner, thick = corner.layout, corner.lap, corner.pin_board, corner.tail_board
    tail = layout.tails[len(layout.tails) // 2]
    plan = [
        Dimension(name="tail board", start=0.0, end=thick, level=True),
        Dimension(name="pin board", start=0.0, end=inner, level=False),
        Dimension(name="tail", start=lap, end=inner, level=False, after=False),
    ]
    if lap > 0:
        plan.append(Dimension(name="lap", start=0.0, end=lap, level=False, after=False))
    yield Cut(
        axis=Axis.Y,
        at=(tail.lower_base + tail.upper_base) / 2,
        title="seen from the front, through a tail",
        dimensions=tuple(plan),
    )
    if corner.rabbet_width:
        x, y, _ = corner.rabbet
        yield Cut(
            axis=Axis.Y,
            at=(max(y, layout.width - layout.back_half_pin) + layout.width) / 2,
            title="the same, at the back edge",
            dimensions=(
                Dimension(name="to the rabbet's stop", start=0.0, end=x, level=True),
                Dimension(name="rabbet", start=inner - corner.rabbet_depth, end=inner, level=False),
            ),
        )
    yield _elevation(corner)


def _elevation(corner: Corner) -> Cut:
    layout = corner.layout
    edges = [edge for tail in layout.tails for edge in (tail.lower_end, tail.upper_end)]
    marks = [0.0, *edges, layout.width]
    last = len(marks) - 2
    edge = "tail" if layout.is_even else "edge tail"
    named = {0: "half pin", 1: edge, last - 1: edge, last: "half pin"}
    chain = [
        Dimension(
            name=named.get(place, "tail" if place % 2 else "pin"),
            start=low,
            end=high,
            level=False,
            after=False,
        )
        for place, (low, high) in enumerate(pairwise(marks))
    ]
    whole = [Dimension(name="width", start=0.0, end=layout.width, level=False)]
    if corner.rabbet_width:
        whole.append(Dimension(name="rabbet", start=corner.rabbet[1], end=layout.width, level=False, row=1))
    return Cut(
        axis=Axis.X,
        at=min(corner.tail_board, corner.rabbet[0]) / 2,
        title="end of the tail board, cut along its outside; the front edge is below",
        dimensions=(*chain, *whole),
    )


def _strips(corner: Corner) -> Iterator[Strip]:
    layout, wide = corner.layout, corner.layout.width
    depth, thick = corner.pin_board - corner.lap, corner.tail_board
    sides = [edge for tail in layout.tails for edge in _edges(tail.lower_end, tail.lower_base, depth)]
    sides += [edge for tail in layout.tails for edge in _edges(tail.upper_end, tail.upper_base, depth)]
    yield Strip(
        board="tail board",
        face="outside face",
        foot="front edge",
        length=depth,
        height=wide,
        lines=(_gauge(depth, wide, "baseline"), *sides),
        waste=tuple(tuple((at - corner.lap, up) for at, up in outline) for outline in _pins(corner)),
    )
    mouths = [(tail.lower_base, tail.upper_base) for tail in layout.tails]
    stop = corner.rabbet[0]
    lines = [
        _gauge(thick, wide, "inside of the tail board"),
        *(
            Marked(stroke=Stroke.SAW, start=(0.0, edge), end=(thick, edge))
            for mouth in mouths
            for edge in mouth
        ),
    ]
    if corner.rabbet_width:
        lines.append(
            Marked(
                stroke=Stroke.STOP,
                start=(stop, corner.rabbet[1]),
                end=(stop, wide),
                label="the rabbet stops",
            )
        )
    yield Strip(
        board="pin board",
        face="inside face",
        foot="front edge",
        length=thick,
        height=wide,
        lines=tuple(lines),
        waste=tuple(box((0.0, thick), mouth) for mouth in mouths),
    )


def _gauge(at: Inches, wide: Inches, label: str) -> Marked:
    return Marked(stroke=Stroke.GAUGE, start=(at, 0.0), end=(at, wide), label=label)


def _edges(end: Inches, base: Inches, depth: Inches) -> Iterator[Marked]:
    yield Marked(stroke=Stroke.SAW, start=(0.0, end), end=(depth, base))
