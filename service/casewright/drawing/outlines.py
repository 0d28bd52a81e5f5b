"""Flat pieces of a board, as a cut shows them: clipped to what is shown, and outlined together."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from casewright.drawing.canvas import Bounds, Point
from casewright.drawing.edges import EPSILON
from casewright.drawing.pictorial import on, without
from casewright.joinery.solid import Outline
from casewright.measure.units import Inches

Stretch = tuple[Point, Point]


def reach_of(outlines: Sequence[Outline]) -> Bounds:
    """How far flat pieces reach.

    Args:
        outlines: at least one [in]

    Returns:
        Left, bottom, right and top [in]

    Source: geometry.
    """
    xs = [x for outline in outlines for x, _ in outline]
    ys = [y for outline in outlines for _, y in outline]
    return min(xs), min(ys), max(xs), max(ys)


def within(outline: Outline, window: Bounds) -> Outline:
    """What a window shows of a convex piece.

    Args:
        outline: its corners in turn [in]
        window: left, bottom, right and top of the window [in]

    Returns:
        The corners that are left; none where it lies outside [in]

    Source: geometry: Sutherland and Hodgman's clipping of a polygon by half-planes.
    """
    left, bottom, right, top = window
    for place, sign, limit in ((0, -1.0, left), (1, -1.0, bottom), (0, 1.0, right), (1, 1.0, top)):
        outline = tuple(_below(outline, place, sign, limit))
        if len(outline) < 3:
            return ()
    low, high = reach_of([outline])[:2], reach_of([outline])[2:]
    return outline if min(high[0] - low[0], high[1] - low[1]) > EPSILON else ()


def _below(outline: Outline, place: int, sign: float, limit: Inches) -> Iterator[Point]:
    if not outline:
        return
    for start, end in pairwise((*outline, outline[0])):
        first, last = sign * (start[place] - limit), sign * (end[place] - limit)
        if first <= 0:
            yield start
        if first * last < 0:
            yield on(start, end, first / (first - last))


def outside_edges(pieces: Sequence[Outline]) -> Iterator[Stretch]:
    """The edges of flat pieces that touch, without those along which they touch.

    Args:
        pieces: outlines that do not overlap [in]

    Yields:
        Each straight stretch, from point to point [in]

    Source: geometry.
    """
    edges = [edge for piece in pieces for edge in zip(piece, (*piece[1:], piece[0]), strict=True)]
    for number, edge in enumerate(edges):
        left = [(0.0, 1.0)]
        for other in (*edges[:number], *edges[number + 1 :]):
            shared = _shared(edge, other)
            if shared is not None:
                left = [part for span in left for part in without(span, shared)]
        for before, after in left:
            yield on(*edge, before), on(*edge, after)


def _shared(edge: Stretch, other: Stretch) -> tuple[float, float] | None:
    """From which share to which share of an edge another one lies on it."""
    (x, y), end = edge
    along = end[0] - x, end[1] - y
    long = math.hypot(*along)
    if long < EPSILON:
        return None
    off = [abs(along[0] * (py - y) - along[1] * (px - x)) / long for px, py in other]
    if max(off) > EPSILON:
        return None
    shares = sorted((along[0] * (px - x) + along[1] * (py - y)) / long**2 for px, py in other)
    low, high = max(0.0, shares[0]), min(1.0, shares[1])
    return (low, high) if (high - low) * long > EPSILON else None


def broken_ends(
    edges: Sequence[Stretch], window: Bounds, whole: Bounds
) -> tuple[list[Stretch], list[Stretch]]:
    """Which edges of a board are its own, and where it goes on beyond the window.

    Args:
        edges: the edges of what is shown of it [in]
        window: left, bottom, right and top of the window [in]
        whole: how far the board itself reaches [in]

    Returns:
        The edges, and one stretch for each side of the window that the board goes on beyond [in]

    Source: common practice of technical drawing: a break line for what goes on.
    """
    own, ends = list(edges), []
    for side in range(4):
        beyond = whole[side] - window[side] if side > 1 else window[side] - whole[side]
        if beyond <= EPSILON:
            continue
        met = [edge for edge in own if all(abs(point[side % 2] - window[side]) < EPSILON for point in edge)]
        if met:
            own = [edge for edge in own if edge not in met]
            points = sorted(point for edge in met for point in edge)
            ends.append((points[0], points[-1]))
    return own, ends
