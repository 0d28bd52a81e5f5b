"""Any joint that has a shape, drawn from it: cut open with its dimensions, put together, and drawn apart."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence

from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.dimensions import Side, Span, heights, widths
from casewright.drawing.edges import EPSILON
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.pictorial import drawn_apart, eye, on, visible_edges, without
from casewright.drawing.view import View
from casewright.joinery.solid import Axis, Board, Cut, Dimension, Outline, Shape
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.measure.units import Inches

FIRST_ROW = 1.7
"""From the work to the nearest chain of dimensions [letters]."""
NEXT_ROW = 2.6
"""From one chain to the next [letters]."""
BETWEEN = 2.0
"""Room between two views [letters]."""
APART = 1.3
"""How far each board is moved to draw them apart, as a part of how far one reaches into the other."""
Pictorials = Mapping[str, Sequence[tuple[Point, Point]]]
"""What each pictorial view shows, and the edges that it has [in]."""
PICTORIAL = 0.75
"""How large the pictorial views are beside the others."""


def shape_drawing(
    shape: Shape, title: str, unit: LengthUnit = LengthUnit.INCH, name: str = "joint"
) -> Drawing:
    """A joint, cut open and as one sees it.

    Args:
        shape: the joint in space
        title: lettered above it
        unit: the shop's unit
        name: short name of the drawing

    Returns:
        The drawing.

    Source: common practice of technical drawing; parallel projection for the pictorial views.
    """
    seen = _pictorials(shape)  # once: the sheet is drawn anew in one scale after the other
    return fitted(
        lambda sheet: _draw(sheet, shape, seen),
        unit,
        name=name,
        title=title,
        subject="Cut open, put together and drawn apart",
        work=_work(shape),
    )


def _work(shape: Shape) -> tuple[Inches, Inches]:
    """How wide and how high the largest view is."""
    extents = [_extent(_outlines(shape.boards, cut)) for cut in shape.cuts]
    return max(wide for wide, _ in extents), max(high for _, high in extents)


def _draw(sheet: Sheet, shape: Shape, seen: Pictorials) -> None:
    low: Inches = 0.0
    for cut in shape.cuts:
        outlines = _outlines(shape.boards, cut)
        if sheet.said:
            low = sheet.reach[1] - BETWEEN * sheet.letters - _room_above(cut, sheet) - _extent(outlines)[1]
        _draw_cut(View(sheet, 0.0, low), shape.boards, cut)
    _draw_pictorials(sheet, seen)


def _room_above(cut: Cut, sheet: Sheet) -> Inches:
    rows = [each.row for each in cut.dimensions if each.level and each.after]
    return (FIRST_ROW + NEXT_ROW * (max(rows) + 1 if rows else 0) + 1.0) * sheet.letters


def _draw_cut(view: View, boards: Sequence[Board], cut: Cut) -> None:
    """One view: its zero is put where the lowest corner of the work at the left is."""
    sheet = view.sheet
    outlines = _outlines(boards, cut)
    left, bottom = _least(outlines)
    placed = View(sheet, view.x - left, view.y - bottom)
    for number, board in enumerate(boards):
        pieces = _outlines((board,), cut)
        for outline in pieces:
            placed.hatch(outline, rising=number % 2 == 0)
        sheet.strokes(Line.CUT, [(placed.at(*one), placed.at(*two)) for one, two in outside_edges(pieces)])
    _dimension(placed, cut, outlines)
    start, end, _, _ = _spread(outlines)
    title = placed.at((start + end) / 2, 0)[0], sheet.reach[1] - 0.9 * sheet.letters
    sheet.letter(title, cut.title, size=0.9)
    sheet.say(cut.title)


def outside_edges(pieces: Sequence[Outline]) -> Iterator[tuple[Point, Point]]:
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


def _shared(edge: tuple[Point, Point], other: tuple[Point, Point]) -> tuple[float, float] | None:
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


def _dimension(view: View, cut: Cut, outlines: Sequence[Outline]) -> None:
    left, right, bottom, top = _spread(outlines)
    off = FIRST_ROW * view.sheet.letters
    for side in (Side.AFTER, Side.BEFORE):
        is_after = side is Side.AFTER
        level_edge, upright_edge = (top, right) if is_after else (bottom, left)
        up, across = view.at(0, level_edge)[1], view.at(upright_edge, 0)[0]
        here = [each for each in cut.dimensions if each.after is is_after]
        # A chain begins beyond what is lettered of the one before it.
        for row in sorted({each.row for each in here}):
            level = _spans(view.sheet, cut.axis, (each for each in here if each.row == row and each.level))
            if level:
                up = widths(view, level, up + side * off, side, level_edge)
            upright = _spans(
                view.sheet, cut.axis, (each for each in here if each.row == row and not each.level)
            )
            if upright:
                across = heights(view, upright, upright_edge, across + side * off, side)


def _spans(sheet: Sheet, axis: Axis, dimensions: Iterable[Dimension]) -> list[Span]:
    found = []
    for each in dimensions:
        start, end = each.start, each.end
        if axis is Axis.Y and not each.level:
            start, end = -end, -start
        note = f", {in_unit(each.note, sheet.unit)}" if each.note else ""
        words = f"{each.name}:" if each.name[-1:].isdigit() else each.name
        found.append(Span(start, end, each.name, words=words, after=note))
    return sorted(found, key=lambda span: (span.start, span.end))


def _pictorials(shape: Shape) -> Pictorials:
    """What one sees of the boards put together, and of the boards drawn apart."""
    seen_by = eye()
    apart = drawn_apart(shape.boards, APART * shape.engaged)
    return {
        "put together": visible_edges(shape.boards, seen_by),
        "drawn apart": visible_edges(apart, seen_by),
    }


def _draw_pictorials(sheet: Sheet, seen: Pictorials) -> None:
    """The pictorial views, beside those that are cut open."""
    _, _, right, top = sheet.reach
    left = right + BETWEEN * sheet.letters
    for words, edges in seen.items():
        points = [point for edge in edges for point in edge]
        start, end = min(x for x, _ in points), max(x for x, _ in points)
        low, high = min(y for _, y in points), max(y for _, y in points)
        view = View(sheet, left - start * PICTORIAL, top - high * PICTORIAL, PICTORIAL)
        sheet.strokes(Line.OBJECT, [(view.at(*one), view.at(*two)) for one, two in edges])
        middle, bottom = view.at((start + end) / 2, low)
        sheet.letter((middle, bottom - 1.2 * sheet.letters), words, size=0.9)
        top = bottom - (1.2 + BETWEEN) * sheet.letters


def _outlines(boards: Sequence[Board], cut: Cut) -> list[Outline]:
    return [
        tuple(_flat(cut.axis, corner) for corner in outline)
        for board in boards
        for outline in board.section(cut.axis, cut.at)
    ]


def _flat(axis: Axis, corner: Point) -> Point:
    """A plan has the outside of the board across at the top, and the other board running down."""
    return (corner[0], -corner[1]) if axis is Axis.Y else corner


def _spread(outlines: Sequence[Outline]) -> tuple[Inches, Inches, Inches, Inches]:
    xs = [x for outline in outlines for x, _ in outline]
    ys = [y for outline in outlines for _, y in outline]
    return min(xs), max(xs), min(ys), max(ys)


def _least(outlines: Sequence[Outline]) -> Point:
    left, _, bottom, _ = _spread(outlines)
    return left, bottom


def _extent(outlines: Sequence[Outline]) -> tuple[Inches, Inches]:
    left, right, bottom, top = _spread(outlines)
    return right - left, top - bottom
