"""Dimensions: chains beside and along a view, and columns of heights, lettered in the shop's unit.

Each dimension also says itself in words, so that the text alternative of a drawing has the figures that are
drawn, and those that had no room.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import IntEnum

from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.spread import spread
from casewright.drawing.view import View
from casewright.measure.units import Inches

TICK = 0.3
"""Half the height of the stroke across the end of a dimension, and how far a line runs past it [letters]."""
CLEAR = 0.35
"""Between a line and what is lettered beside it [letters]."""
ABOVE = 0.8
"""From a line to the middle of what is lettered along it [letters]."""
LEADER = 1.1
"""Room for the slanted lines that lead to lettering that was moved [letters]."""
ROW = 1.15
"""From one line of lettering to the next [letters]."""
FITS = 0.92
"""Lettering is reckoned a little wide; so much of it has to fit between two ticks."""
MOVED = 0.3
"""Lettering that was moved farther than this needs a line that leads to it [letters]."""


class Side(IntEnum):
    """To which side of a view dimensions stand; below and left count down."""

    BEFORE = -1
    AFTER = 1


@dataclass(frozen=True, slots=True)
class Span:
    """One dimension: from where to where on the work, and what it is.

    Attributes:
        start: the lesser end [in]
        end: the greater end [in]
        name: what it is, for the drawing in words; empty to leave it out there
        words: lettered before the size
        after: lettered after the size
    """

    start: Inches
    end: Inches
    name: str = ""
    words: str = ""
    after: str = ""

    @property
    def size(self) -> Inches:
        """How long it is [in]."""
        return self.end - self.start

    @property
    def middle(self) -> Inches:
        """Its middle [in]."""
        return (self.start + self.end) / 2

    def text(self, sheet: Sheet) -> str:
        """What is lettered at it."""
        return f"{self.words} {sheet.size(self.size)}{self.after}".strip()


def heights(
    view: View, spans: Sequence[Span], edge: Inches, line: Inches, side: Side, *, upright: bool = False
) -> Inches:
    """A chain of dimensions beside a view.

    Args:
        view: the view
        spans: the dimensions, from the bottom up
        edge: the edge of the work that the witness lines start at, across [in]
        line: where the dimension line stands, across the sheet [in]
        side: which side of the view it is on
        upright: whether to letter along the line, for long sizes

    Returns:
        How far across the sheet it reaches [in]

    Source: common practice of technical drawing.
    """
    sheet, letters = view.sheet, view.sheet.letters
    levels = sorted({level for span in spans for level in (span.start, span.end)})
    _upright_line(view, levels, edge, line, side)
    _say(sheet, spans)
    if upright:
        return _letter_upright(view, spans, line, side)
    if _are_alike(spans, sheet) and min(_rooms(view, spans)) < ROW * letters:
        words = f"{len(spans)} × {spans[0].text(sheet)}"
        middle = view.at(0, (spans[0].start + spans[-1].end) / 2)[1]
        return _letter_beside(sheet, [(middle, words, spans[0].size)], [middle], line, side)
    return _letter_spread(view, spans, line, side)


def levels(
    view: View, marks: Sequence[tuple[Inches, str]], edge: Inches, line: Inches, side: Side, heading: str
) -> Inches:
    """A column of heights, each from the view's own zero.

    Args:
        view: the view
        marks: each height and what it is, from the bottom up [in]
        edge: the edge of the work that the witness lines start at, across [in]
        line: where the column begins, across the sheet [in]
        side: which side of the view it is on
        heading: what they are measured from

    Returns:
        How far across the sheet it reaches [in]

    Source: common practice of technical drawing.
    """
    sheet, letters = view.sheet, view.sheet.letters
    heights_up = [height for height, _ in marks]
    _witness(view, heights_up, edge, line, side)
    sheet.strokes(
        Line.DIMENSION, [((line, view.at(0, heights_up[0])[1]), (line, view.at(0, heights_up[-1])[1]))]
    )
    wanted = [view.at(0, height)[1] for height in heights_up]
    places = spread(wanted, ROW * letters)
    lettered = [(place, sheet.size(height), height) for place, height in zip(wanted, heights_up, strict=True)]
    reach = _letter_beside(sheet, lettered, places, line, side)
    words = heading.split("\n")
    for number, word in enumerate(reversed(words), start=1):
        at = (line + side * CLEAR * letters, max(places[-1], wanted[-1]) + (0.3 + number) * ROW * letters)
        sheet.letter(at, word, "start" if side is Side.AFTER else "end", size=0.9)
        reach = _farther(reach, at[0] + side * sheet.width_of(word, 0.9), side)
    named = ", ".join(f"{name} {sheet.size(height)}".strip() for height, name in marks)
    sheet.say(f"{' '.join(words)}: {named}")
    return reach


def widths(
    view: View,
    spans: Sequence[Span],
    line: Inches,
    side: Side,
    edge: Inches | None = None,
    *,
    label: str = "",
) -> Inches:
    """A chain of dimensions above or below a view; spans that do not touch get lines of their own.

    Args:
        view: the view
        spans: the dimensions, from the left
        line: where the dimension line stands, up the sheet [in]
        side: above or below
        edge: the edge of the work that the witness lines start at, up; None for none [in]
        label: lettered before the chain

    Returns:
        How far up or down the sheet it reaches [in]

    Source: common practice of technical drawing.
    """
    sheet, letters = view.sheet, view.sheet.letters
    over = TICK * letters
    while label and not sheet.is_free(sheet.patch(_place_of_label(view, spans, line), label, "end")):
        line += side * letters / 2
    for span in spans:
        ends = [view.at(place, 0)[0] for place in (span.start, span.end)]
        sheet.strokes(Line.DIMENSION, [((ends[0], line), (ends[1], line))])
        sheet.strokes(
            Line.DIMENSION, [((end - over, line - over), (end + over, line + over)) for end in ends]
        )
    _say(sheet, spans)
    top = line + _letter_along(view, spans, line, bool(label))
    if label:
        sheet.letter(_place_of_label(view, spans, line), label, "end")
    if edge is not None:
        start, until = view.at(0, edge)[1] + side * CLEAR * letters, line + side * over
        for place in (place for span in spans for place in (span.start, span.end)):
            strokes = sheet.between_letters(start, until, view.at(place, 0)[0], upright=True)
            sheet.strokes(Line.WITNESS, strokes)
    return top if side is Side.AFTER else line - over


def room_for_upright(view: View, spans: Sequence[Span]) -> Inches:
    """How far above its line a level chain reaches, where some of its sizes are lettered upright.

    Args:
        view: the view
        spans: the dimensions

    Returns:
        How far; nothing where all are lettered level, or all at once [in]

    Source: geometry of the lettering.
    """
    sheet = view.sheet
    if _are_alike(spans, sheet):
        return 0.0
    long = [
        sheet.width_of(span.text(sheet))
        for span, room in zip(spans, _rooms(view, spans), strict=True)
        if FITS * sheet.width_of(span.text(sheet)) > room
    ]
    return max(long) + sheet.letters if long else 0.0


def _place_of_label(view: View, spans: Sequence[Span], line: Inches) -> Point:
    return view.at(spans[0].start, 0)[0] - (CLEAR + TICK) * view.sheet.letters, line


def _letter_along(view: View, spans: Sequence[Span], line: Inches, labelled: bool) -> Inches:
    """Letters a level chain above its line: level, all sizes at once, or upright; how high it gets [in]."""
    sheet, letters = view.sheet, view.sheet.letters
    texts = [span.text(sheet) for span in spans]
    rooms = _rooms(view, spans)
    level = line + ABOVE * letters
    narrow = [number for number, room in enumerate(rooms) if FITS * sheet.width_of(texts[number]) > room]
    inner = [number for number in narrow if 0 < number < len(spans) - 1]
    if narrow and _are_alike(spans, sheet) and len(spans) > 1:
        middle = view.at((spans[0].start + spans[-1].end) / 2, 0)[0]
        words = f"{len(spans)} × {texts[0]}"
        sheet.letter((middle, level), words, inches=spans[0].size)
        return 1.3 * letters
    if inner or (labelled and narrow and len(spans) > 1):
        return _letter_narrow(view, spans, line)
    for number, (span, words) in enumerate(zip(spans, texts, strict=True)):
        if number not in narrow:
            sheet.letter((view.at(span.middle, 0)[0], level), words, inches=span.size)
        else:
            before, after = _places_at_ends(view, span, line)
            is_before = number == 0 and (
                len(spans) > 1 or not sheet.is_free(sheet.patch(after, words, "start"))
            )
            at, anchor = (before, "end") if is_before else (after, "start")
            sheet.letter(at, words, anchor, inches=span.size)
    return 1.3 * letters


def _places_at_ends(view: View, span: Span, line: Inches) -> tuple[Point, Point]:
    """Where a size is lettered that has no room between its ticks: before it, and after it."""
    letters = view.sheet.letters
    start, end = (view.at(place, 0)[0] for place in (span.start, span.end))
    return (start - 1.2 * TICK * letters, line), (end + 1.6 * TICK * letters, line)


def _letter_narrow(view: View, spans: Sequence[Span], line: Inches) -> Inches:
    """Letters narrow spans upright and the others level, leaving out those with no room for either."""
    sheet, letters = view.sheet, view.sheet.letters
    top = 1.3 * letters
    for span, room in zip(spans, _rooms(view, spans), strict=True):
        words = span.text(sheet)
        middle, long = view.at(span.middle, 0)[0], sheet.width_of(words)
        if FITS * long <= room:
            sheet.letter((middle, line + ABOVE * letters), words, inches=span.size)
        elif room >= ROW * letters:
            high = line + 0.5 * letters + long / 2
            sheet.letter((middle, high), words, upright=True, inches=span.size)
            top = max(top, 0.5 * letters + long)
    return top


def _letter_upright(view: View, spans: Sequence[Span], line: Inches, side: Side) -> Inches:
    """Letters an upright chain along its line; a span at the end that is too short is lettered beyond it."""
    sheet, letters = view.sheet, view.sheet.letters
    texts = [span.text(sheet) for span in spans]
    fits = [sheet.width_of(words) <= room for words, room in zip(texts, _rooms(view, spans), strict=True)]
    if len(spans) > 1 and not (any(fits) and all(fits[1:-1])):
        return _letter_spread(view, spans, line, side)
    for number, (span, words) in enumerate(zip(spans, texts, strict=True)):
        low, middle, high = (view.at(0, level)[1] for level in (span.start, span.middle, span.end))
        if fits[number] or len(spans) == 1:
            sheet.letter((line - ABOVE * letters, middle), words, upright=True, inches=span.size)
        elif number == 0:
            sheet.letter((line, low - ABOVE * letters), words, inches=span.size)
        else:
            sheet.letter((line, high + ABOVE * letters), words, inches=span.size)
    return line - 1.3 * letters if side is Side.BEFORE else line + TICK * letters


def _letter_spread(view: View, spans: Sequence[Span], line: Inches, side: Side) -> Inches:
    """Letters an upright chain level beside its line, moved apart where it is narrow."""
    sheet = view.sheet
    wanted = [view.at(0, span.middle)[1] for span in spans]
    lettered = [(height, span.text(sheet), span.size) for height, span in zip(wanted, spans, strict=True)]
    return _letter_beside(sheet, lettered, spread(wanted, ROW * sheet.letters), line, side)


def _letter_beside(
    sheet: Sheet,
    lettered: Sequence[tuple[Inches, str, Inches]],
    places: Sequence[Inches],
    line: Inches,
    side: Side,
) -> Inches:
    """Letters level beside an upright line, led to where it was moved; how far across that reaches [in]."""
    letters = sheet.letters
    moved = any(
        abs(height - place) > MOVED * letters for (height, _, _), place in zip(lettered, places, strict=True)
    )
    start = line + side * (CLEAR + TICK + (LEADER if moved else 0.0)) * letters
    reach = start
    for (height, words, size), place in zip(lettered, places, strict=True):
        if moved:
            tip = (line + side * TICK * letters, height)
            bend = (line + side * (TICK + LEADER) * letters, place)
            sheet.strokes(Line.WITNESS, [((line, height), tip), (tip, bend)])
        sheet.letter((start, place), words, "start" if side is Side.AFTER else "end", inches=size)
        reach = _farther(reach, start + side * sheet.width_of(words), side)
    return reach


def _upright_line(view: View, levels_up: Sequence[Inches], edge: Inches, line: Inches, side: Side) -> None:
    """The line of an upright chain, its ticks and its witness lines."""
    sheet = view.sheet
    over = TICK * sheet.letters
    heights_up = [view.at(0, level)[1] for level in levels_up]
    sheet.strokes(Line.DIMENSION, [((line, heights_up[0]), (line, heights_up[-1]))])
    sheet.strokes(
        Line.DIMENSION,
        [((line - over, height - over), (line + over, height + over)) for height in heights_up],
    )
    _witness(view, levels_up, edge, line, side)


def _witness(view: View, levels_up: Sequence[Inches], edge: Inches, line: Inches, side: Side) -> None:
    sheet = view.sheet
    start = view.at(edge, 0)[0] + side * CLEAR * sheet.letters
    if side * (line - start) > 0:
        end = line + side * TICK * sheet.letters
        for level in levels_up:
            sheet.strokes(Line.WITNESS, sheet.between_letters(start, end, view.at(0, level)[1]))


def _rooms(view: View, spans: Sequence[Span]) -> list[Inches]:
    return [span.size * view.factor for span in spans]


def _are_alike(spans: Sequence[Span], sheet: Sheet) -> bool:
    """Do several spans all read the same?"""
    return len(spans) > 1 and len({span.text(sheet) for span in spans}) == 1


def _farther(one: Inches, other: Inches, side: Side) -> Inches:
    return max(one, other) if side is Side.AFTER else min(one, other)


def _say(sheet: Sheet, spans: Sequence[Span]) -> None:
    for span in spans:
        if span.name:
            sheet.say(f"{span.name} {sheet.size(span.size)}{span.after}")
