"""Stock that is only cut to length, drawn bar by bar; and lettering within what is cut out of wood.

The first end is at the left. A bar is drawn to scale along its length alone, for only that is cut.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from textwrap import wrap

from casewright.cutting.plans.values import LengthLayout
from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.view import View
from casewright.measure.lengths import LengthUnit, from_ticks
from casewright.measure.units import Inches, Number

SIZES = (1.0, 0.85, 0.7, 0.6, 0.5)
"""Sizes of lettering within a part, the first that fits being taken [of the usual]."""
SMALL = (0.42, 0.35)
"""The same for a mark that has no room otherwise: a small one is better than none."""
AIR = 0.3
"""Between lettering and what is around it [letters]."""
LINES = 1.15
"""From one line of lettering in a part to the next [letters]."""
BOLD = 1.12
"""How much wider bold lettering runs."""
HIGH = 3.2
"""How high a bar is drawn: two lines of lettering have room [letters]."""


def alike(bars: Iterable[LengthLayout]) -> tuple[tuple[LengthLayout, ...], ...]:
    """Bars that are cut alike, together.

    Args:
        bars: every bar of a kind

    Returns:
        The bars, those together that are of one stock and give the same parts in the same order.

    Source: common practice: what is cut alike is drawn once.
    """
    found: dict[tuple[object, ...], list[LengthLayout]] = {}
    for bar in bars:
        cut = tuple((part.mark.code, part.start, part.length) for part in bar.laid)
        found.setdefault((bar.code, bar.length, cut), []).append(bar)
    return tuple(map(tuple, found.values()))


def numbers_of(bars: Sequence[LengthLayout]) -> str:
    """The name of bars that are cut alike.

    Args:
        bars: bars of one stock

    Returns:
        Such as `L1 no. 2`, or `L1 no. 2, 3, 5`.

    Source: common practice.
    """
    return f"{bars[0].code} no. {', '.join(str(bar.number) for bar in bars)}"


def bar_drawing(bars: Sequence[LengthLayout], wood: str, unit: LengthUnit) -> Drawing:
    """Bars that are cut alike, drawn once.

    Args:
        bars: the bars
        wood: what they are of
        unit: the shop's unit

    Returns:
        The drawing; its description has every part with its place.

    Source: common practice.
    """
    bar = bars[0]
    long = from_ticks(bar.length)
    times = f", {len(bars)} times" if len(bars) > 1 else ""

    def draw(sheet: Sheet) -> None:
        view, high = View(sheet), HIGH * sheet.letters
        view.rectangle(Line.FRONT, 0, 0, long, high)
        place = 0.0
        for laid in bar.laid:
            start, size = from_ticks(laid.start), from_ticks(laid.length)
            view.rectangle(Line.TONE, start, 0, size, high)
            view.rectangle(Line.OBJECT, start, 0, size, high, laid.mark.code)
            letter_in(sheet, (start, 0, size, high), (laid.mark.code, sheet.size(size)))
            sheet.say(f"{laid.mark.code}: {sheet.size(size)} long, {sheet.size(start)} from the first end")
            place = start + size
        if bar.left:
            left = from_ticks(bar.left)
            letter_in(sheet, (place, 0, long - place, high), ("left", sheet.size(left)))
            sheet.say(f"left over {sheet.size(left)}")

    return fitted(
        draw,
        unit,
        name=f"length-{bar.code}-{bar.number}".replace(" ", "-"),
        title=numbers_of(bars),
        subject=f"{wood}, {Sheet(1, unit).size(long)} long{times}",
        work=(long, 0.0),
    )


def letter_in(sheet: Sheet, place: tuple[Inches, Inches, Inches, Inches], lines: tuple[str, ...]) -> None:
    """Lettering in the middle of a rectangle: all lines, or the first, as large as has room.

    Args:
        sheet: what is drawn on
        place: the rectangle: from the first end, from the near edge, length and width [in]
        lines: the lines; the first is bold

    Source: common practice of shop drawing.
    """
    x, y, length, width = place
    for held, sizes in _ways_to_letter(lines):
        for upright in (False, True):
            along, across = (width, length) if upright else (length, width)
            for size in sizes:
                if _has_room(sheet, held, along, across, size):
                    _letter_lines(sheet, (x + length / 2, y + width / 2), held, size, upright)
                    return


def _ways_to_letter(lines: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], tuple[Number, ...]]]:
    """All lines, then fewer, then the first broken, at last small: what has no mark cannot be chalked."""
    for count in range(len(lines), 0, -1):
        yield lines[:count], SIZES if count == 1 else SIZES[:-1]
    pieces = lines[0].replace("-", "- ").split()
    if len(pieces) > 1:
        for count in (2, 3):
            width = max(*map(len, pieces), math.ceil(len(lines[0]) / count))
            yield tuple(wrap(lines[0], width, break_long_words=False)), (*SIZES, *SMALL)
    yield lines[:1], SMALL


def _has_room(sheet: Sheet, lines: tuple[str, ...], along: Inches, across: Inches, size: Number) -> bool:
    letters = sheet.letters * size
    # The first line is bold, which runs wider than lettering is reckoned.
    wide = max(
        sheet.width_of(words, size) * (BOLD if number == 0 else 1) for number, words in enumerate(lines)
    )
    wide += AIR * letters
    high = (1 + LINES * (len(lines) - 1)) * letters
    return wide <= along and high <= across


def _letter_lines(sheet: Sheet, middle: Point, lines: tuple[str, ...], size: Number, upright: bool) -> None:
    step = LINES * size * sheet.letters
    for number, words in enumerate(lines):
        off = ((len(lines) - 1) / 2 - number) * step
        at = (middle[0] - off, middle[1]) if upright else (middle[0], middle[1] + off)
        sheet.letter(at, words, size=size, upright=upright, bold=number == 0 and words != "left")
