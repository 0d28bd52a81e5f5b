"""A joint cut open: what the cut shows of each board, with its dimensions, positions and steps."""

import math
import textwrap
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from casewright.drawing.canvas import Bounds, Line, Sheet
from casewright.drawing.dimensions import TICK, Side, Span, heights, levels, widths
from casewright.drawing.outlines import Stretch, broken_ends, outside_edges, reach_of, within
from casewright.drawing.page import LINE
from casewright.drawing.view import View
from casewright.joinery.solid import Axis, Board, Cut, Dimension, Flat, Outline, Steps
from casewright.measure.saying import in_unit
from casewright.measure.units import Inches

FIRST_ROW = 1.7
"""From the work to the nearest chain of dimensions [letters]."""
COLUMN = 0.9
"""From the work to a column of positions, and from a chain to the steps of the dividers [letters]."""
HATCHED = 1.8
"""How far apart hatching stands against that of a case: a card prints it smaller than it is drawn."""
LEAST_SIGNS = 24
"""A caption is not broken into shorter lines than this."""
CAPTION = 0.9
"""Size of what is lettered below a view [of the usual]."""


@dataclass(frozen=True, slots=True)
class CutBoard:
    """What a cut shows of one board.

    Attributes:
        pieces: the name of each piece, where one sees its own outline, and its corners [in]
        edges: its edges [in]
        ends: where it goes on beyond what is shown [in]
        behind: the edges of what is seen of it behind the cut [in]
        rising: which way it is hatched
    """

    pieces: tuple[tuple[str, Outline], ...]
    edges: tuple[Stretch, ...]
    ends: tuple[Stretch, ...]
    behind: tuple[Stretch, ...]
    rising: bool


@dataclass(frozen=True, slots=True)
class CutOpen:
    """A cut with all that it shows, in the view's own plane; worked out once for every scale that is tried.

    Attributes:
        cut: the cut
        boards: what it shows of each board
        reach: left, bottom, right and top of the work [in]
    """

    cut: Cut
    boards: tuple[CutBoard, ...]
    reach: Bounds


def cut_open(boards: Sequence[Board], cut: Cut) -> CutOpen:
    """What a cut shows of the boards of a joint.

    Args:
        boards: the boards
        cut: the cut

    Returns:
        Pieces, edges and reach.

    Source: geometry.
    """
    found = tuple(
        _cut_board(board, cut, rising=number % 2 == 0)
        for number, board in enumerate(boards)
        if not cut.boards or board.name in cut.boards
    )
    points = [corner for board in found for _, piece in board.pieces for corner in piece]
    points += [point for board in found for stretch in board.behind for point in stretch]
    return CutOpen(cut, found, reach_of([tuple(points)]))


def _cut_board(board: Board, cut: Cut, *, rising: bool) -> CutBoard:
    window = _window(cut)
    pieces = _pieces(board, cut, cut.at)
    edges, ends = list(outside_edges([piece for _, piece in pieces])), list[Stretch]()
    if window and pieces:
        whole = reach_of([_turned(cut.axis, piece) for piece in board.section(cut.axis, cut.at)])
        edges, ends = broken_ends(edges, window, whole)
    seen = [] if cut.behind is None else [piece for _, piece in _pieces(board, cut, cut.behind)]
    return CutBoard(tuple(pieces), tuple(edges), tuple(ends), tuple(outside_edges(seen)), rising)


def draw_cut(view: View, opened: CutOpen, scale: str = "") -> None:
    """One view with all that is measured on it.

    Args:
        view: where it is drawn, on a sheet with nothing else; its zero is that of the joint's room
        opened: the cut
        scale: how large it is drawn, if that is not said elsewhere

    Source: common practice of technical drawing.
    """
    sheet, cut = view.sheet, opened.cut
    for board in opened.boards:
        _draw_board(view, board, hatched=cut.hatched)
    for line, drawn in ((Line.WITNESS, cut.scribed), (Line.HIDDEN, cut.hidden)):
        for points in drawn:
            view.polyline(line, *_turned(cut.axis, points))
    title = in_unit(cut.title, sheet.unit)
    words = f"{title}, {scale}" if scale else title
    sheet.say(words)
    _measure(view, opened)
    _letter_caption(view, view.at((opened.reach[0] + opened.reach[2]) / 2, 0)[0], words)


def _draw_board(view: View, board: CutBoard, *, hatched: bool) -> None:
    for name, piece in board.pieces:
        if hatched:
            view.hatch(piece, rising=board.rising, apart=HATCHED)
        if name:
            view.polygon(Line.TONE, piece, name)
    for line, edges in ((Line.SEEN, board.behind), (Line.CUT if hatched else Line.OBJECT, board.edges)):
        view.sheet.strokes(line, [(view.at(*one), view.at(*two)) for one, two in edges])
    for one, two in board.ends:
        view.broken(one, two)


def _pieces(board: Board, cut: Cut, at: Inches) -> list[tuple[str, Outline]]:
    """What is shown of a board, each piece with its name where one sees its own outline."""
    window, found = _window(cut), []
    for prism in board.prisms:
        piece = _turned(cut.axis, prism.section(cut.axis, at))
        if piece and window:
            piece = within(piece, window)
        if piece:
            found.append((prism.name if prism.along is cut.axis else "", piece))
    return found


def _window(cut: Cut) -> Bounds | None:
    if cut.window is None:
        return None
    (left, right), (low, high) = cut.window
    return (left, -high, right, -low) if cut.axis is Axis.Y else (left, low, right, high)


def _turned(axis: Axis, outline: Outline) -> Outline:
    return tuple(_flat(axis, corner) for corner in outline)


def _flat(axis: Axis, corner: Flat) -> Flat:
    """A plan has the outside of the board across at the top, and the other board running down."""
    return (corner[0], -corner[1]) if axis is Axis.Y else corner


def _measure(view: View, opened: CutOpen) -> None:
    """Chains of dimensions on all four sides, each beyond what is lettered of the one before it."""
    sheet, cut, (left, bottom, right, top) = view.sheet, opened.cut, opened.reach
    for side, edge, level_edge in ((Side.AFTER, right, top), (Side.BEFORE, left, bottom)):
        off, across = side * FIRST_ROW * sheet.letters, view.at(edge, 0)[0]
        for column in cut.columns:
            if column.after is (side is Side.AFTER):
                start = across + side * COLUMN * sheet.letters
                across = levels(view, column.marks, column.edge, start, side, "\n".join(column.heading))
        up = _beyond_letters(view.at(0, level_edge)[1], sheet, side)
        here = [each for each in cut.dimensions if each.after is (side is Side.AFTER)]
        for row in sorted({each.row for each in here}):
            of_row = [each for each in here if each.row == row]
            level = _spans(sheet, cut.axis, (each for each in of_row if each.level))
            if level:
                up = widths(view, level, up + off, side, level_edge)
            upright = _spans(sheet, cut.axis, (each for each in of_row if not each.level))
            if upright:
                across = heights(view, upright, edge, across + off, side)
        if cut.steps and side is Side.BEFORE:
            _draw_steps(view, cut.steps, across - COLUMN * sheet.letters)


def _beyond_letters(edge: Inches, sheet: Sheet, side: Side) -> Inches:
    """Where many positions stand beside a view their lettering reaches above and below it."""
    if side is Side.AFTER:
        return max(edge, *(patch[3] for patch in sheet.lettered), edge)
    return min(edge, *(patch[1] for patch in sheet.lettered), edge)


def _spans(sheet: Sheet, axis: Axis, dimensions: Iterable[Dimension]) -> list[Span]:
    found = []
    for each in dimensions:
        start, end = each.start, each.end
        if axis is Axis.Y and not each.level:
            start, end = -end, -start
        note = f", {in_unit(each.note, sheet.unit)}" if each.note else ""
        is_setting = each.name.startswith("gauge") or each.name[-1:].isdigit()
        words = f"{each.name}:" if is_setting else each.name
        found.append(Span(start, end, each.name, words=words, after=note))
    return sorted(found, key=lambda span: (span.start, span.end))


def _draw_steps(view: View, steps: Steps, line: Inches) -> None:
    """The dividers' steps from the lower mark, lettered once for all of them."""
    sheet = view.sheet
    marks = [view.at(0, steps.start + number * steps.pitch)[1] for number in range(steps.count + 1)]
    tick = TICK * sheet.letters
    sheet.strokes(Line.DIMENSION, [((line, marks[0]), (line, marks[-1]))])
    sheet.strokes(Line.DIMENSION, [((line - tick, mark), (line + tick, mark)) for mark in marks])
    counted = "1 step" if steps.count == 1 else f"{steps.count} steps"
    words = f"dividers {sheet.size(steps.pitch)}, {counted}"
    place = line - sheet.letters, (marks[0] + marks[-1]) / 2
    sheet.letter(place, words, upright=True, inches=steps.pitch)
    sheet.say(words)


def _letter_caption(view: View, middle: Inches, words: str) -> None:
    """What the view shows, below it and no farther to a side than its dimensions, if it has room there."""
    sheet = view.sheet
    left, bottom, right, _ = sheet.reach
    wide = sheet.width_of(words, CAPTION)
    signs = max(LEAST_SIGNS, math.ceil((right - left) * len(words) / wide))
    for number, line in enumerate(textwrap.wrap(words, signs)):
        half = sheet.width_of(line, CAPTION) / 2
        at = max(left + half, min(right - half, middle)) if right - left > 2 * half else middle
        sheet.letter((at, bottom - (0.9 + number * LINE) * sheet.letters), line, size=CAPTION)
