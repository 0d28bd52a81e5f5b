"""The edges of a board: where the surface of all its pieces together turns.

A joint is drawn while somebody waits, and a row of tails has hundreds of edges, so this module reckons with
bare coordinates.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from casewright.drawing.vectors import between, cross, dot, minus, rounded, unit
from casewright.joinery.solid import PLACE, Board, Flat, Prism, Vector
from casewright.measure.units import Inches

EPSILON = 1e-7
"""Sizes of the work are told apart down to this [in]."""
SPARE = 1e-6
"""How far a point may lie off a plane or a line and still be on it [in]."""
AROUND = 16
"""Directions around an edge in which the board is looked for."""
ALL_AROUND = (1 << AROUND) - 1

Edge = tuple[Vector, Vector]
Plane = tuple[Vector, Inches]


@dataclass(frozen=True, slots=True)
class _Solid:
    """One piece of a board, by the planes that it lies below, and the block that just holds it."""

    low: Vector
    high: Vector
    planes: tuple[Plane, ...]


def board_edges(board: Board) -> Iterator[Edge]:
    """The edges of a board as a whole: where its surface turns.

    Args:
        board: the board

    Yields:
        Each straight piece of an edge, from point to point [in]

    Source: geometry.
    """
    corners = {rounded(corner) for prism in board.prisms for face in prism.faces[:2] for corner in face}
    solids = [_solid(prism) for prism in board.prisms]
    done: set[tuple[Vector, ...]] = set()
    for prism in board.prisms:
        for start, end in _edges(prism):
            for piece in _divided(start, end, corners):
                name = tuple(sorted(rounded(point) for point in piece))
                if name not in done:
                    done.add(name)
                    if _turns(solids, *piece):
                        yield piece


def _edges(prism: Prism) -> Iterator[Edge]:
    near, far = prism.faces[0], prism.faces[1]
    for n, corner in enumerate(near):
        following = (n + 1) % len(near)
        yield corner, near[following]
        yield far[n], far[following]
        yield corner, far[n]


def _divided(start: Vector, end: Vector, corners: Iterable[Vector]) -> Iterator[Edge]:
    """An edge divided at every corner of the board that lies on it."""
    along = minus(end, start)
    square = dot(along, along)
    (left, right), (low, high), (front, rear) = (
        (min(ends) - SPARE, max(ends) + SPARE) for ends in zip(start, end, strict=True)
    )
    shares = {0.0, 1.0}
    for corner in corners:
        x, y, z = corner
        if left < x < right and low < y < high and front < z < rear:
            share = dot(minus(corner, start), along) / square
            is_within = EPSILON < share < 1 - EPSILON
            if is_within and math.dist(between(start, end, share), corner) < SPARE:
                shares.add(share)
    for before, after in pairwise(sorted(shares)):
        yield between(start, end, before), between(start, end, after)


def _turns(solids: Sequence[_Solid], start: Vector, end: Vector) -> bool:
    """Whether the board's surface turns along a piece of an edge: not within it, and not on a flat face."""
    x, y, z = middle = between(start, end, 0.5)
    along = rounded(unit(minus(end, start)), 9)
    filled = 0
    for solid in solids:
        (left, low, front), (right, high, rear) = solid.low, solid.high
        if left < x < right and low < y < high and front < z < rear:
            filled |= _filled(solid, middle, along)
    if filled in {0, ALL_AROUND}:
        return False
    changes = (filled ^ (filled >> 1 | (filled & 1) << (AROUND - 1))).bit_count()
    return not (filled.bit_count() == AROUND // 2 and changes == 2)


def _filled(solid: _Solid, point: Vector, along: Vector) -> int:
    """In which of the directions around an edge a piece lies, one bit for each."""
    found = ALL_AROUND
    for normal, far in solid.planes:
        above = dot(normal, point) - far
        if above > SPARE:
            return 0
        if above > -SPARE:
            found &= _below(normal, along)
    return found


@lru_cache(maxsize=1024)
def _below(normal: Vector, along: Vector) -> int:
    """Which directions around an edge lead below a plane, one bit for each."""
    least = min(range(3), key=lambda n: abs(along[n]))
    one = unit(cross(along, (float(least == 0), float(least == 1), float(least == 2))))
    level, upright = dot(one, normal), dot(cross(along, one), normal)
    # Turned a little, so that none of them lies in the plane of a board's face.
    turns = [2 * math.pi * (n + 0.37) / AROUND for n in range(AROUND)]
    return sum(
        1 << n for n, turn in enumerate(turns) if math.cos(turn) * level + math.sin(turn) * upright < 0
    )


def _solid(prism: Prism) -> _Solid:
    corners = [corner for face in prism.faces[:2] for corner in face]
    (left, low, front), (right, high, rear) = (
        tuple(side(values) for values in zip(*corners, strict=True)) for side in (min, max)
    )
    return _Solid(
        (left - SPARE, low - SPARE, front - SPARE),
        (right + SPARE, high + SPARE, rear + SPARE),
        planes(prism),
    )


def planes(prism: Prism) -> tuple[Plane, ...]:
    """The planes of a prism's faces, in the order of its faces.

    Args:
        prism: the prism

    Returns:
        Of each its normal outwards, and how far along that from zero the plane lies [in]

    Source: geometry.
    """
    return (*_ends(prism), *_sides(prism))


def _sides(prism: Prism) -> Iterator[Plane]:
    level, upright = (PLACE[axis] for axis in prism.along.plane)
    pairs = list(zip(prism.outline, (*prism.outline[1:], prism.outline[0]), strict=True))
    turned = 1.0 if sum(_turned(*pair) for pair in pairs) > 0 else -1.0
    for (u, v), (p, q) in pairs:
        normal = [0.0, 0.0, 0.0]
        long = math.hypot(p - u, q - v)
        normal[level], normal[upright] = turned * (q - v) / long, turned * (u - p) / long
        yield rounded((normal[0], normal[1], normal[2]), 9), normal[level] * u + normal[upright] * v


def _turned(one: Flat, other: Flat) -> float:
    return one[0] * other[1] - other[0] * one[1]


def _ends(prism: Prism) -> Iterator[Plane]:
    for sign, far in ((-1.0, prism.start), (1.0, prism.end)):
        normal = [0.0, 0.0, 0.0]
        normal[PLACE[prism.along]] = sign
        yield (normal[0], normal[1], normal[2]), sign * far
