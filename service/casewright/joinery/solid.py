"""The boards of a joint as solids where they meet: what drawings, templates and tests read of any joint.

Every joint stands in the same room, as one sees it from the front of a case. x runs to the right from the
outside of the joint along the board across (a front, a back, a rail); y runs up from the reference edge; z
runs away from the outside face of the board across, along the other board (a side, an apron). Sizes are
inches of the work, unrounded.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import Words
from casewright.measure.units import Count, Inches

Flat = tuple[Inches, Inches]
"""A point of a flat view [in]."""

Outline = tuple[Flat, ...]
"""The corners of a flat shape, in turn [in]."""

Vector = tuple[float, float, float]
"""Along x, y and z [in, or a direction]."""


class Axis(StrEnum):
    """A direction of the joint's room."""

    X = "x"
    Y = "y"
    Z = "z"

    @property
    def plane(self) -> tuple["Axis", "Axis"]:
        """The two directions that one sees when looking along this one: to the right, and up or away.

        Along x one sees the other board with its end at the left; along y the plan, from above; along z the
        board across from its outside.
        """
        return {
            Axis.X: (Axis.Z, Axis.Y),
            Axis.Y: (Axis.X, Axis.Z),
            Axis.Z: (Axis.X, Axis.Y),
        }[self]


PLACE = {Axis.X: 0, Axis.Y: 1, Axis.Z: 2}


@dataclass(frozen=True, kw_only=True)
class Prism:
    """A convex outline that keeps its shape along one direction; boards at a joint are made of such.

    Attributes:
        along: the direction in which the outline does not change
        outline: its corners in `along.plane`, convex, either way round [in]
        start: where it begins along that direction [in]
        end: where it ends [in]
        name: what it is called where its outline is seen, such as `tail-1`; empty for no name
    """

    along: Axis
    outline: Outline
    start: Inches
    end: Inches
    name: str = ""

    def __post_init__(self) -> None:
        if not self.end > self.start:
            raise ValueError("A prism ends beyond its start; leave out what has no length.")
        if not _is_convex(self.outline):
            raise ValueError("The outline of a prism is convex; divide what is not into several.")

    def section(self, axis: Axis, at: Inches) -> Outline:
        """What a cut square to a direction shows of it.

        Args:
            axis: the direction that the cut is square to
            at: where along it; not in the plane of a face [in]

        Returns:
            The corners in `axis.plane`; none where the cut passes it by [in]

        Source: geometry.
        """
        if axis is self.along:
            return self.outline if self.start < at < self.end else ()
        across = self.along.plane
        place = across.index(axis)
        found = _between(self.outline, place, at)
        if found is None:
            return ()
        spans = {across[1 - place]: found, self.along: (self.start, self.end)}
        (left, right), (low, high) = (spans[each] for each in axis.plane)
        return (left, low), (right, low), (right, high), (left, high)

    @cached_property
    def faces(self) -> tuple[tuple[Vector, ...], ...]:
        """Its faces, each by its corners in turn."""
        near = [self._solid(corner, self.start) for corner in self.outline]
        far = [self._solid(corner, self.end) for corner in self.outline]
        count = len(near)
        sides = ((near[n], near[(n + 1) % count], far[(n + 1) % count], far[n]) for n in range(count))
        return (tuple(near), tuple(far), *sides)

    def _solid(self, corner: Flat, along: Inches) -> Vector:
        spot = {self.along: along, **dict(zip(self.along.plane, corner, strict=True))}
        return spot[Axis.X], spot[Axis.Y], spot[Axis.Z]


@dataclass(frozen=True, kw_only=True)
class Board:
    """One board where it meets the others, cut off at some distance.

    Attributes:
        name: what it is, such as `front` or `side`
        prisms: what it is made of; they touch and do not overlap
        apart: the direction in which it leaves the joint, of length 1 along an axis
    """

    name: str
    prisms: tuple[Prism, ...]
    apart: Vector = (0.0, 0.0, 0.0)

    def section(self, axis: Axis, at: Inches) -> tuple[Outline, ...]:
        """What a cut square to a direction shows of it.

        Args:
            axis: the direction that the cut is square to
            at: where along it; not in the plane of a face [in]

        Returns:
            The corners of each piece in `axis.plane` [in]

        Source: geometry.
        """
        return tuple(found for prism in self.prisms if (found := prism.section(axis, at)))


@dataclass(frozen=True, kw_only=True)
class Dimension:
    """One dimension of a view.

    Attributes:
        name: what it is, for the drawing and for its words
        start: the lesser end, in the view's own plane [in]
        end: the greater end [in]
        level: whether it runs to the right; else it runs up
        after: whether it stands at the right of, or above, the view; else at its left or below
        row: which chain from the view outwards it belongs to, from 0
        note: lettered after the size, such as `not 1/2`
    """

    name: str
    start: Inches
    end: Inches
    level: bool
    after: bool = True
    row: int = 0
    note: Words = ""


@dataclass(frozen=True, kw_only=True)
class Heights:
    """A column of positions, each measured up from the reference edge.

    Attributes:
        heading: what they are measured at, on two lines
        marks: each height and what it is, the lowest first [in]
        edge: the upright edge of the work that they belong to [in]
        after: whether the column stands at the right of the view; else at its left
    """

    heading: tuple[str, str]
    marks: tuple[tuple[Inches, str], ...]
    edge: Inches
    after: bool


@dataclass(frozen=True, kw_only=True)
class Steps:
    """A walk with the dividers up the left of a view.

    Attributes:
        start: the mark that it begins at [in]
        pitch: the setting of the dividers [in]
        count: how many steps
    """

    start: Inches
    pitch: Inches
    count: Count


@dataclass(frozen=True, kw_only=True)
class Cut:
    """A view of the joint, cut open.

    Attributes:
        axis: the direction that one looks along
        at: where it is cut open [in]
        title: what it shows
        dimensions: what is measured on it
        boards: names of the boards that it shows; empty for all
        hatched: whether what is cut is hatched; else the view stands for what one sees of the board there
        window: how much of it is shown, in the view's own plane: from where to where to the right, and up or
            away; boards that reach farther end there in a break line [in]
        enlarged: whether it may be drawn larger than the views beside it
        beside: whether it stands at the right of the view before it, on the same height
        behind: where a second cut lies whose outline is seen behind this one; None for none [in]
        scribed: lines that are marked on what is seen [in]
        hidden: lines that one cannot see [in]
        columns: positions beside it
        steps: the walk of the dividers beside it
    """

    axis: Axis
    at: Inches
    title: Words
    dimensions: tuple[Dimension, ...] = ()
    boards: tuple[str, ...] = ()
    hatched: bool = True
    window: tuple[Flat, Flat] | None = None
    enlarged: bool = False
    beside: bool = False
    behind: Inches | None = None
    scribed: tuple[Outline, ...] = ()
    hidden: tuple[Outline, ...] = ()
    columns: tuple[Heights, ...] = ()
    steps: Steps | None = None


class Stroke(StrEnum):
    """What a line on a board's face is for."""

    GAUGE = "gauge"
    SAW = "saw"
    STOP = "stop"


@dataclass(frozen=True, kw_only=True)
class Marked:
    """One line to be marked on a face.

    Attributes:
        stroke: what it is for
        start: where it begins: from the end of the board, and up from the reference edge [in]
        end: where it ends [in]
        label: what stands beside it on a template; empty for none
    """

    stroke: Stroke
    start: Flat
    end: Flat
    label: Words = ""


CORNERS = 16
"""A hole is drawn with so many corners."""


def round_outline(middle: Flat, across: Inches) -> Outline:
    """A round hole on a face, as an outline of corners.

    Args:
        middle: where it is bored, along and up [in]
        across: its diameter [in]

    Returns:
        The corners [in]

    Source: geometry.
    """

    def corner(number: int) -> Flat:
        turn = 2 * math.pi * number / CORNERS
        return middle[0] + across / 2 * math.cos(turn), middle[1] + across / 2 * math.sin(turn)

    return tuple(corner(number) for number in range(CORNERS))


@dataclass(frozen=True, kw_only=True)
class Strip:
    """What is marked on one face of one board, for a template in full size.

    Attributes:
        board: which board
        face: which face of it, in words
        length: how far the strip reaches from the end of the board [in]
        height: from the reference edge to the other [in]
        lines: what is marked
        waste: outlines that are cut away
        left: what of the board lies at the left of the strip, from where lengths are measured
        foot: the reference edge, which lies at the foot of the strip, from where heights are measured
        is_handed: whether boards come in a left and a right one, for which the strip is turned over
    """

    board: str
    face: str
    length: Inches
    height: Inches
    lines: tuple[Marked, ...]
    waste: tuple[Outline, ...] = ()
    left: str = "end"
    foot: str = "bottom edge"
    is_handed: bool = True

    @property
    def placed(self) -> str:
        """The face, and what of the board lies at its left."""
        return f"{self.face}, its {self.left} at the left" if self.left else self.face


@dataclass(frozen=True, kw_only=True)
class Shape:
    """A joint in space.

    Attributes:
        boards: the boards, put together
        cuts: how it is drawn: the plan first, then the elevations
        engaged: how far one board reaches into the other [in]
        filled: the block that the boards fill without a gap, from where to where along x, y and z [in]
        strips: what is marked on which face
        notes: what cannot be measured off the drawing, one sentence each
    """

    boards: tuple[Board, ...]
    cuts: tuple[Cut, ...]
    engaged: Inches
    filled: tuple[Flat, Flat, Flat]
    strips: tuple[Strip, ...] = ()
    notes: tuple[Words, ...] = ()


def block(x: tuple[Inches, Inches], y: tuple[Inches, Inches], z: tuple[Inches, Inches]) -> Prism:
    """A board's plain part, square on all sides.

    Args:
        x: from where to where to the right [in]
        y: from where to where up [in]
        z: from where to where away [in]

    Returns:
        The prism, its outline in plan.

    Raises:
        ValueError: it has no extent in one direction.

    Source: geometry.
    """
    return Prism(along=Axis.Y, outline=box(x, z), start=y[0], end=y[1])


def box(level: tuple[Inches, Inches], upright: tuple[Inches, Inches]) -> Outline:
    """The corners of a rectangle.

    Args:
        level: from where to where to the right [in]
        upright: from where to where up [in]

    Returns:
        Its four corners in turn [in]

    Source: geometry.
    """
    (left, right), (low, high) = level, upright
    return (left, low), (right, low), (right, high), (left, high)


def _is_convex(outline: Outline) -> bool:
    turns = [_turn(*three) for three in _threes(outline)]
    return len(outline) > 2 and (
        all(turn >= -TOLERANCE for turn in turns) or all(turn <= TOLERANCE for turn in turns)
    )


def _threes(outline: Outline) -> Iterator[tuple[Flat, Flat, Flat]]:
    count = len(outline)
    for n in range(count):
        yield outline[n], outline[(n + 1) % count], outline[(n + 2) % count]


def _turn(first: Flat, second: Flat, third: Flat) -> float:
    return (second[0] - first[0]) * (third[1] - second[1]) - (second[1] - first[1]) * (third[0] - second[0])


def _between(outline: Outline, place: int, at: Inches) -> Flat | None:
    """From where to where a convex outline reaches along the line on which one coordinate has a value."""
    met = []
    for start, end in zip(outline, (*outline[1:], outline[0]), strict=True):
        if (start[place] < at) != (end[place] < at):
            share = (at - start[place]) / (end[place] - start[place])
            met.append(start[1 - place] + share * (end[1 - place] - start[1 - place]))
    if not met or max(met) - min(met) <= TOLERANCE:
        return None
    return min(met), max(met)
