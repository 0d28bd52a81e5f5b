"""A joint as one sees it standing before it: the edges of its boards that nothing hides.

Lines alone are drawn, so that a drawing needs to know nothing of the ground that it stands on. An edge is
drawn where the surface of its board turns there, and as far as no face lies before it.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from casewright.joinery.solid import PLACE, Board, Flat, Prism, Vector
from casewright.measure.units import Inches, Number

EPSILON = 1e-7
"""Sizes of the work are told apart down to this [in]."""
TOO_SHORT = 1e-4
"""What is left of an edge over such a stretch is a rounding, not an edge [in]."""
TOWARDS: Vector = (-0.58, 0.5, -0.64)
"""From the joint to the eye: from the left, from above, and from before the board across."""
AROUND = 16
"""Places around an edge at which the board is looked for."""
NEAR = 1e-4
"""How far from the edge they lie [in]."""

Span = tuple[float, float]
Stretch = tuple[Flat, Flat]
_Bounds = tuple[Vector, Vector]


@dataclass(frozen=True, slots=True)
class Eye:
    """Where one looks from: the directions of the sheet, and the one to the eye."""

    right: Vector
    up: Vector
    towards: Vector

    def seen(self, point: Vector) -> Flat:
        """Where a point stands on the sheet."""
        return _dot(point, self.right), _dot(point, self.up)


def eye(towards: Vector = TOWARDS) -> Eye:
    """An eye far away, so that parallels stay parallel.

    Args:
        towards: the direction from the work to the eye, not straight up

    Returns:
        The eye.

    Source: geometry of parallel projection.
    """
    near = _unit(towards)
    right = _unit((-near[2], 0.0, near[0]))
    upright = (0.0, 1.0, 0.0)
    lean = _dot(upright, near)
    up = _unit((-lean * near[0], 1.0 - lean * near[1], -lean * near[2]))
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


def visible_edges(boards: Sequence[Board], seen_by: Eye) -> list[Stretch]:
    """The edges that an eye sees, on the sheet.

    Args:
        boards: the boards as they stand
        seen_by: the eye

    Returns:
        Straight stretches, each from point to point [in]

    Source: geometry: an edge is hidden where a face lies nearer to the eye.
    """
    screens = [screen for board in boards for screen in _screens(board, seen_by)]
    found: dict[tuple[Flat, Flat], Stretch] = {}
    for board in boards:
        for start, end in board_edges(board):
            for stretch in _not_hidden(start, end, screens, seen_by):
                found.setdefault(_named(stretch), stretch)
    return list(found.values())


def board_edges(board: Board) -> Iterator[tuple[Vector, Vector]]:
    """The edges of a board as a whole: where its surface turns.

    Args:
        board: the board

    Yields:
        Each straight piece of an edge, from point to point [in]

    Source: geometry.
    """
    corners = {corner for prism in board.prisms for face in prism.faces[:2] for corner in face}
    bounds = [(_bounds(prism), prism) for prism in board.prisms]
    done: set[tuple[Vector, ...]] = set()
    for prism in board.prisms:
        for start, end in _edges(prism):
            for piece in _divided(start, end, corners):
                name = tuple(sorted(_rounded(point) for point in piece))
                if name not in done and _turns(bounds, *piece):
                    done.add(name)
                    yield piece


def _edges(prism: Prism) -> Iterator[tuple[Vector, Vector]]:
    near, far = prism.faces[0], prism.faces[1]
    for n, corner in enumerate(near):
        following = (n + 1) % len(near)
        yield corner, near[following]
        yield far[n], far[following]
        yield corner, far[n]


def _divided(start: Vector, end: Vector, corners: Iterable[Vector]) -> Iterator[tuple[Vector, Vector]]:
    """An edge divided at every corner of the board that lies on it."""
    along = _minus(end, start)
    square = _dot(along, along)
    shares = {0.0, 1.0}
    for corner in corners:
        way = _minus(corner, start)
        share = _dot(way, along) / square
        if EPSILON < share < 1 - EPSILON:
            off = _minus(way, _times(along, share))
            if _dot(off, off) < EPSILON * EPSILON:
                shares.add(share)
    places = sorted(shares)
    for before, after in pairwise(places):
        yield _plus(start, _times(along, before)), _plus(start, _times(along, after))


def _turns(bounds: Sequence[tuple[_Bounds, Prism]], start: Vector, end: Vector) -> bool:
    """Whether the board's surface turns along a piece of an edge: not within it, and not on a flat face."""
    middle = _times(_plus(start, end), 0.5)
    along = _unit(_minus(end, start))
    least = min(range(3), key=lambda n: abs(along[n]))
    helper: Vector = tuple(float(n == least) for n in range(3))  # type: ignore[assignment]
    one = _unit(_cross(along, helper))
    other = _cross(along, one)
    near = [prism for (low, high), prism in bounds if all(map(_is_between, low, middle, high))]
    inside = []
    for n in range(AROUND):
        angle = 2 * math.pi * (n + 0.37) / AROUND
        off = _plus(_times(one, NEAR * math.cos(angle)), _times(other, NEAR * math.sin(angle)))
        spot = _plus(middle, off)
        inside.append(any(_within(prism, spot) for prism in near))
    count = sum(inside)
    if count in {0, AROUND}:
        return False
    changes = sum(inside[n] != inside[n - 1] for n in range(AROUND))
    return not (count == AROUND // 2 and changes == 2)


def _bounds(prism: Prism) -> _Bounds:
    """The block that just holds a prism, and what lies around its edges."""
    corners = [corner for face in prism.faces[:2] for corner in face]
    low, high = (tuple(side(values) for values in zip(*corners, strict=True)) for side in (min, max))
    more = (2 * NEAR, 2 * NEAR, 2 * NEAR)
    return _minus((low[0], low[1], low[2]), more), _plus((high[0], high[1], high[2]), more)


def _is_between(low: float, value: float, high: float) -> bool:
    return low < value < high


def _within(prism: Prism, point: Vector) -> bool:
    along = point[PLACE[prism.along]]
    if not prism.start < along < prism.end:
        return False
    left, up = (point[PLACE[axis]] for axis in prism.along.plane)
    sides = [
        (two[0] - one[0]) * (up - one[1]) - (two[1] - one[1]) * (left - one[0])
        for one, two in zip(prism.outline, (*prism.outline[1:], prism.outline[0]), strict=True)
    ]
    return all(side > 0 for side in sides) or all(side < 0 for side in sides)


@dataclass(frozen=True, slots=True)
class _Screen:
    """A face that is turned to the eye: its outline on the sheet, and how near it is.

    Attributes:
        lines: for each side of the outline, a·x + b·y + c is above zero inside
        near: how near to the eye the face is at x, y: a·x + b·y + c
    """

    lines: tuple[tuple[float, float, float], ...]
    near: tuple[float, float, float]


def _screens(board: Board, seen_by: Eye) -> Iterator[_Screen]:
    for prism in board.prisms:
        middle = _times(
            _plus(_middle(prism.faces[0]), _middle(prism.faces[1])),
            0.5,
        )
        for face in prism.faces:
            normal = _cross(_minus(face[1], face[0]), _minus(face[2], face[1]))
            if _dot(normal, _minus(face[0], middle)) < 0:
                normal = _times(normal, -1.0)
            facing = _dot(_unit(normal), seen_by.towards)
            if facing > EPSILON:
                yield _screen(face, _unit(normal), facing, seen_by)


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
    right, up = -_dot(normal, seen_by.right) / facing, -_dot(normal, seen_by.up) / facing
    return _Screen(tuple(lines), (right, up, _dot(normal, face[0]) / facing))


def _not_hidden(start: Vector, end: Vector, screens: Sequence[_Screen], seen_by: Eye) -> Iterator[Stretch]:
    one, two = seen_by.seen(start), seen_by.seen(end)
    if math.dist(one, two) < TOO_SHORT:
        return
    near = _dot(start, seen_by.towards), _dot(end, seen_by.towards)
    left: list[Span] = [(0.0, 1.0)]
    for screen in screens:
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


def _named(stretch: Stretch) -> tuple[Flat, Flat]:
    first, last = sorted((round(x, 5), round(y, 5)) for x, y in stretch)
    return first, last


def _moved(prism: Prism, by: Sequence[Inches]) -> Prism:
    level, upright = prism.along.plane
    along = by[PLACE[prism.along]]
    outline = tuple((u + by[PLACE[level]], v + by[PLACE[upright]]) for u, v in prism.outline)
    return Prism(along=prism.along, outline=outline, start=prism.start + along, end=prism.end + along)


def _middle(points: Sequence[Vector]) -> Vector:
    count = len(points)
    x, y, z = (sum(point[n] for point in points) / count for n in range(3))
    return x, y, z


def _rounded(point: Vector) -> Vector:
    return round(point[0], 6), round(point[1], 6), round(point[2], 6)


def _dot(one: Vector, other: Vector) -> float:
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


def _cross(one: Vector, other: Vector) -> Vector:
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )


def _plus(one: Vector, other: Vector) -> Vector:
    return one[0] + other[0], one[1] + other[1], one[2] + other[2]


def _minus(one: Vector, other: Vector) -> Vector:
    return one[0] - other[0], one[1] - other[1], one[2] - other[2]


def _times(vector: Vector, by: Number) -> Vector:
    return vector[0] * by, vector[1] * by, vector[2] * by


def _unit(vector: Vector) -> Vector:
    long = math.sqrt(_dot(vector, vector))
    return _times(vector, 1 / long)
