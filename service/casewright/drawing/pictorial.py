"""A joint as one sees it standing before it: the edges of its boards that nothing hides.

Lines alone are drawn, so that a drawing needs to know nothing of the ground that it stands on. An edge is
drawn where the surface of its board turns there, and as far as no face lies before it.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from casewright.drawing.edges import EPSILON, Edge, board_edges, planes
from casewright.drawing.vectors import dot, rounded, unit
from casewright.joinery.solid import PLACE, Board, Flat, Prism, Vector
from casewright.measure.units import Inches, Number

TOO_SHORT = 1e-4
"""What is left of an edge over such a stretch is a rounding, not an edge [in]."""
TOWARDS: Vector = (-0.58, 0.5, -0.64)
"""From the joint to the eye: from the left, from above, and from before the board across."""

Span = tuple[float, float]
Stretch = tuple[Flat, Flat]


@dataclass(frozen=True, slots=True)
class Eye:
    """Where one looks from: the directions of the sheet, and the one to the eye."""

    right: Vector
    up: Vector
    towards: Vector

    def seen(self, point: Vector) -> Flat:
        """Where a point stands on the sheet."""
        return dot(point, self.right), dot(point, self.up)


def eye(towards: Vector = TOWARDS) -> Eye:
    """An eye far away, so that parallels stay parallel.

    Args:
        towards: the direction from the work to the eye, not straight up

    Returns:
        The eye.

    Source: geometry of parallel projection.
    """
    near = unit(towards)
    right = unit((-near[2], 0.0, near[0]))
    upright = (0.0, 1.0, 0.0)
    lean = dot(upright, near)
    up = unit((-lean * near[0], 1.0 - lean * near[1], -lean * near[2]))
    return Eye(right, up, near)


def drawn_apart(boards: Iterable[Board], by: Inches) -> tuple[Board, ...]:
    """The boards moved out of the joint, each in its own direction.

    Args:
        boards: the boards, put together
        by: how far [in]

    Returns:
        The boards, moved.

    Source: geometry.
    """
    return tuple(
        Board(
            name=board.name,
            prisms=tuple(_moved(prism, tuple(by * part for part in board.apart)) for prism in board.prisms),
            apart=board.apart,
        )
        for board in boards
    )


def visible_edges(boards: Sequence[Board], seen_by: Eye, by: Inches = 0.0) -> list[Stretch]:
    """The edges that an eye sees, on the sheet.

    Args:
        boards: the boards, put together
        seen_by: the eye
        by: how far each is drawn out of the joint in its own direction [in]

    Returns:
        Straight stretches, each from point to point, one after the other where they meet [in]

    Source: geometry: an edge is hidden where a face lies nearer to the eye.
    """
    screens = [screen for board in drawn_apart(boards, by) for screen in _screens(board, seen_by)]
    stretches = [
        stretch
        for board in boards
        for start, end in _edges_of(board)
        for stretch in _not_hidden(_shifted(start, board, by), _shifted(end, board, by), screens, seen_by)
    ]
    return list(_chained(_joined(stretches)))


@lru_cache(maxsize=16)
def _edges_of(board: Board) -> tuple[Edge, ...]:
    """A board's edges, kept while it is drawn in one place after the other."""
    return tuple(board_edges(board))


def _shifted(point: Vector, board: Board, by: Inches) -> Vector:
    x, y, z = board.apart
    return point[0] + by * x, point[1] + by * y, point[2] + by * z


def _joined(stretches: Iterable[Stretch]) -> Iterator[Stretch]:
    """Stretches on one line that touch, or that two boards share, as one."""
    lines: dict[Vector, tuple[Vector, list[Span]]] = {}
    for (x, y), (far_x, far_y) in stretches:
        long = math.dist((x, y), (far_x, far_y))
        right, up = (far_x - x) / long, (far_y - y) / long
        if (round(right, 4), up) < (0.0, 0.0):
            right, up = -right, -up
        line = right, up, right * y - up * x
        low, high = sorted((right * x + up * y, right * far_x + up * far_y))
        lines.setdefault(rounded(line, 4), (line, []))[1].append((low, high))
    for (right, up, off), spans in lines.values():
        for span in _united(spans):
            start, end = ((right * along - up * off, up * along + right * off) for along in span)
            yield start, end


def _chained(stretches: Iterable[Stretch]) -> Iterator[Stretch]:
    """The same stretches, each from where the one before it ends, as far as that can be had."""
    at: dict[Flat, list[Stretch]] = {}
    left = dict.fromkeys(stretches)
    for stretch in left:
        for end in stretch:
            at.setdefault(_spot(end), []).append(stretch)
    while left:
        stretch = next(iter(left))
        start, end = stretch
        while stretch in left:
            del left[stretch]
            yield start, end
            stretch = next((each for each in at[_spot(end)] if each in left), stretch)
            if stretch in left:
                ahead = _spot(stretch[0]) == _spot(end)
                start, end = stretch if ahead else (stretch[1], stretch[0])


def _spot(point: Flat) -> Flat:
    return round(point[0], 4), round(point[1], 4)


def _united(spans: Iterable[Span]) -> Iterator[Span]:
    """Spans that touch or overlap as one."""
    first, *others = sorted(spans)
    low, high = first
    for start, end in others:
        if start > high + TOO_SHORT:
            yield low, high
            low, high = start, end
        high = max(high, end)
    yield low, high


@dataclass(frozen=True, slots=True)
class _Screen:
    """A face that is turned to the eye: its outline on the sheet, and how near it is.

    Attributes:
        lines: for each side of the outline, a·x + b·y + c is above zero inside
        near: how near to the eye the face is at x, y: a·x + b·y + c
        patch: the left, lower, right and upper end of the face on the sheet
        nearest: how near to the eye its nearest corner is
    """

    lines: tuple[Vector, ...]
    near: Vector
    patch: tuple[float, float, float, float]
    nearest: float


def _screens(board: Board, seen_by: Eye) -> Iterator[_Screen]:
    for prism in board.prisms:
        for face, (normal, _) in zip(prism.faces, planes(prism), strict=True):
            facing = dot(normal, seen_by.towards)
            if facing > EPSILON:
                yield _screen(face, normal, facing, seen_by)


def _screen(face: Sequence[Vector], normal: Vector, facing: Number, seen_by: Eye) -> _Screen:
    flat = [seen_by.seen(corner) for corner in face]
    across = sum(
        one[0] * two[1] - two[0] * one[1] for one, two in zip(flat, (*flat[1:], flat[0]), strict=True)
    )
    if across < 0:
        flat.reverse()
    lines = []
    for one, two in zip(flat, (*flat[1:], flat[0]), strict=True):
        long = math.hypot(two[0] - one[0], two[1] - one[1])
        a, b = -(two[1] - one[1]) / long, (two[0] - one[0]) / long
        lines.append((a, b, -(a * one[0] + b * one[1])))
    # On the face n·p stays the same, and p = x·right + y·up + near·towards.
    right, up = -dot(normal, seen_by.right) / facing, -dot(normal, seen_by.up) / facing
    xs, ys = [x for x, _ in flat], [y for _, y in flat]
    return _Screen(
        tuple(lines),
        (right, up, dot(normal, face[0]) / facing),
        (min(xs), min(ys), max(xs), max(ys)),
        max(dot(corner, seen_by.towards) for corner in face),
    )


def _not_hidden(start: Vector, end: Vector, screens: Sequence[_Screen], seen_by: Eye) -> Iterator[Stretch]:
    one, two = seen_by.seen(start), seen_by.seen(end)
    if math.dist(one, two) < TOO_SHORT:
        return
    near = dot(start, seen_by.towards), dot(end, seen_by.towards)
    (west, east), (south, north) = (sorted(ends) for ends in zip(one, two, strict=True))
    farther = min(near)
    left: list[Span] = [(0.0, 1.0)]
    for screen in screens:
        from_x, from_y, to_x, to_y = screen.patch
        if from_x < east and from_y < north and to_x > west and to_y > south and screen.nearest > farther:
            hidden = _hidden(one, two, near, screen)
            if hidden is not None:
                left = [piece for span in left for piece in without(span, hidden)]
                if not left:
                    return
    for before, after in left:
        stretch = on(one, two, before), on(one, two, after)
        if math.dist(*stretch) > TOO_SHORT:
            yield stretch


def _hidden(one: Flat, two: Flat, near: Span, screen: _Screen) -> Span | None:
    """Which part of an edge a face hides: within its outline, and behind it."""
    low, high = 0.0, 1.0
    a, b, c = screen.near
    before = a * one[0] + b * one[1] + c - near[0] - EPSILON
    after = a * two[0] + b * two[1] + c - near[1] - EPSILON
    ends = [(before, after)]
    for p, q, r in screen.lines:
        ends.append((p * one[0] + q * one[1] + r - EPSILON, p * two[0] + q * two[1] + r - EPSILON))
    for first, last in ends:
        if first <= 0 and last <= 0:
            return None
        if first < 0:
            low = max(low, first / (first - last))
        elif last < 0:
            high = min(high, first / (first - last))
    return (low, high) if high - low > EPSILON else None


def without(span: Span, hidden: Span) -> Iterator[Span]:
    """What is left of a stretch when another is taken out of it.

    Args:
        span: from which share of a whole to which share
        hidden: likewise, what is taken out

    Yields:
        What is left, none of it shorter than can be seen.

    Source: arithmetic.
    """
    if hidden[0] - span[0] > EPSILON:
        yield span[0], min(span[1], hidden[0])
    if span[1] - hidden[1] > EPSILON:
        yield max(span[0], hidden[1]), span[1]


def on(one: Flat, two: Flat, share: Number) -> Flat:
    """A point between two others.

    Args:
        one: the first [in]
        two: the second [in]
        share: how far from the first to the second [dimensionless]

    Returns:
        The point [in]

    Source: geometry.
    """
    return one[0] + share * (two[0] - one[0]), one[1] + share * (two[1] - one[1])


def _moved(prism: Prism, by: Sequence[Inches]) -> Prism:
    level, upright = prism.along.plane
    along = by[PLACE[prism.along]]
    outline = tuple((u + by[PLACE[level]], v + by[PLACE[upright]]) for u, v in prism.outline)
    return Prism(along=prism.along, outline=outline, start=prism.start + along, end=prism.end + along)
