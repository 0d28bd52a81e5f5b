"""Layouts side by side to one scale: one side as it could be cut, or the sides of all rows of a piece."""

from collections.abc import Sequence
from dataclasses import dataclass

from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.page import LINE, PAPER, Drawing, fitted
from casewright.drawing.view import View
from casewright.joinery.layout import Tail, TailLayout
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Inches, Number

APART = 0.7
"""Between one layout and the next [letters]."""
STUB = 0.8
"""How far the side is drawn behind the baseline, in lengths of a tail."""
STEPS = 1.3
"""Room at the left of a layout for the steps of its dividers [letters]."""
TICK = 0.3
MARGINS = 0.25
FIGURES = 0.8
"""Size of the lettering below a layout [of the usual]."""
WHOLE = 2.0
"""A board is drawn no higher than the paper divided by this, so that a page shows the row of them whole."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutShown:
    """One layout as it is drawn beside others.

    Attributes:
        heading: what it is called, such as `1`, `yours` or `row 3`
        layout: where its tails stand
        score: how well it looks, of 100; None where it does not pass
    """

    heading: str
    layout: TailLayout
    score: Number | None

    def lines(self, sheet: Sheet) -> tuple[str, ...]:
        """What is lettered below it, line by line, under its heading."""
        layout = self.layout
        tails = "1 tail" if layout.count == 1 else f"{layout.count} tails"
        looks = "does not pass" if self.score is None else f"{self.score:.1f} of 100"
        return tails, f"pin {sheet.size(layout.pin)}", f"pitch {sheet.size(layout.pitch)}", looks


def layouts_drawing(
    shown: Sequence[LayoutShown],
    title: str,
    unit: LengthUnit = LengthUnit.INCH,
    name: str = "layouts",
) -> Drawing:
    """The end of a side as it looks with each of several layouts, its end to the left, all in one scale.

    Args:
        shown: the layouts, at least one, in the order in which they are drawn
        title: what they are of
        unit: the shop's unit
        name: short name of the drawing

    Returns:
        The drawing: tails, the steps of the dividers, and below each its count, pin, pitch and score.

    Raises:
        ValueError: there is nothing to draw.

    Source: common practice of technical drawing.
    """
    if not shown:
        raise ValueError("There is no layout to draw.")
    tallest = max(each.layout.height for each in shown)
    return fitted(
        lambda sheet: _draw(sheet, shown),
        unit,
        name=name,
        title=title,
        subject="Sides with their tails, the steps of the dividers at the left",
        work=(0.0, WHOLE * tallest),
    )


def _draw(sheet: Sheet, shown: Sequence[LayoutShown]) -> None:
    """Draws as many beside each other as the paper is wide, and the rest below, in columns."""
    room = max(_room(sheet, each) for each in shown)
    beside = max(1, int((PAPER[0] - MARGINS) * sheet.scale / room))
    foot = 0.0
    for first in range(0, len(shown), beside):
        those = shown[first : first + beside]
        if first:
            foot -= max(each.layout.height for each in those) + 2.0 * sheet.letters
        for number, each in enumerate(those):
            view = View(sheet, number * room + STEPS * sheet.letters, foot)
            _draw_one(view, each, first + number + 1)
        foot -= (len(those[0].lines(sheet)) + 2) * FIGURES * LINE * sheet.letters


def _room(sheet: Sheet, shown: LayoutShown) -> Inches:
    """How much of the sheet one layout takes, across, with what stands between it and the next."""
    lettering = max(sheet.width_of(words, FIGURES) for words in (shown.heading, *shown.lines(sheet)))
    strip = STEPS * sheet.letters + _long(shown.layout)
    return max(lettering, strip) + APART * sheet.letters


def _long(layout: TailLayout) -> Inches:
    """How much of the side is drawn from its end back."""
    return layout.tail_length * (1 + STUB)


def _draw_one(view: View, shown: LayoutShown, number: int) -> None:
    layout, sheet = shown.layout, view.sheet
    base, long, height = layout.tail_length, _long(layout), layout.height
    corners = [corner for tail in layout.tails for corner in _tail_outline(tail, 0.0, base)]
    view.polyline(Line.OBJECT, (long, 0.0), (base, 0.0), *corners, (base, height), (long, height))
    for place, tail in enumerate(layout.tails, start=1):
        view.polygon(Line.TONE, _tail_outline(tail, 0.0, base), f"{number}-tail-{place}")
    view.polyline(Line.WITNESS, (base, 0.0), (base, height))
    view.broken((long, 0.0), (long, height))
    _draw_steps(view, layout)
    left, line = view.x - STEPS * sheet.letters, view.y - LINE * sheet.letters
    sheet.letter((left, line), shown.heading, "start", size=FIGURES, bold=True)
    for words in shown.lines(sheet):
        line -= FIGURES * LINE * sheet.letters
        size = {"pin": layout.pin, "pitch": layout.pitch}.get(words.partition(" ")[0])
        sheet.letter((left, line), words, "start", size=FIGURES, inches=size)
    wide = f"tail {sheet.size(layout.tail_width)} at the end and {sheet.size(layout.neck)} at the baseline"
    sheet.say(f"{shown.heading}: {', '.join(shown.lines(sheet))}, {wide}, board {sheet.size(height)} high")


def _tail_outline(tail: Tail, end: Inches, base: Inches) -> tuple[Point, Point, Point, Point]:
    """A tail by its four corners, from the lower one at the neck round by the wide end."""
    return (base, tail.lower_base), (end, tail.lower_end), (end, tail.upper_end), (base, tail.upper_base)


def _draw_steps(view: View, layout: TailLayout) -> None:
    """The steps of the dividers from the lower half pin: the last lands one pin past the upper."""
    sheet, first = view.sheet, layout.half_pin
    marks = [view.at(0, first + number * layout.pitch)[1] for number in range(layout.count + 1)]
    line, tick = view.x - 0.6 * sheet.letters, TICK * sheet.letters
    sheet.strokes(Line.DIMENSION, [((line, marks[0]), (line, marks[-1]))])
    sheet.strokes(Line.DIMENSION, [((line - tick, mark), (line + tick, mark)) for mark in marks])
