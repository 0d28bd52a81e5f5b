"""A walk with the dividers, drawn move by move along the end of a board, its bottom edge to the left."""

import math
from functools import lru_cache
from itertools import pairwise

from casewright.drawing.canvas import Line, Sheet
from casewright.drawing.dimensions import Side, Span, widths
from casewright.drawing.page import KEPT, Drawing, fitted, letter_lines
from casewright.drawing.view import View, box
from casewright.joinery.layout import TailLayout
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Inches

LEGS = 1.6
"""How high the dividers stand above the board [letters]."""
LOW_LEGS = 1.1
"""And where both walks are drawn in one figure [letters]."""
NUMBER = 0.7
BOARD = 1.2
"""How thick the end of the board is drawn [letters]."""
BELOW = 1.9
"""From the board down to a dimension [letters]."""
WORDS = 5.2
"""What is said of a move may be so long on paper before it goes on in a second line [in]."""
NEXT = 5.6
"""From a dimension down to what is drawn of the next move, with two lines of words between [letters]."""


@lru_cache(maxsize=KEPT)
def walk_drawing(
    layout: TailLayout, title: str, unit: LengthUnit = LengthUnit.INCH, name: str = "walk"
) -> Drawing:
    """The four moves that lay a row of tails out: half pins, steps up, steps down, tails.

    Args:
        layout: where the tails stand
        title: what they are of
        unit: the shop's unit
        name: short name of the drawing

    Returns:
        The drawing, the board along it in true length, its thickness not to scale.

    Source: common practice of laying out dovetails with dividers.
    """
    return fitted(
        lambda sheet: _draw(sheet, layout),
        unit,
        name=name,
        title=title,
        subject="The walk with the dividers, the bottom edge at the left",
        work=(layout.height, 0.0),
    )


@lru_cache(maxsize=KEPT)
def walk_at_once_drawing(
    layout: TailLayout, title: str, unit: LengthUnit = LengthUnit.INCH, name: str = "walk"
) -> Drawing:
    """The walk as one figure, for a card that has no room for every move: steps up above, steps down below.

    Args:
        layout: where the tails stand
        title: what they are of
        unit: the shop's unit
        name: short name of the drawing

    Returns:
        The drawing, the board along it in true length, its thickness not to scale.

    Source: common practice of laying out dovetails with dividers.
    """
    return fitted(
        lambda sheet: _draw_at_once(sheet, layout),
        unit,
        name=name,
        title=title,
        subject="Bottom edge at the left",
        work=(layout.height, 0.0),
    )


def _draw_at_once(sheet: Sheet, layout: TailLayout) -> None:
    view = View(sheet, 0.0, 0.0)
    half, high, foot = layout.half_pin, layout.height, _foot(view)
    _tone(view, layout)
    _board(view, layout)
    _marks(view, [half, high - half])
    room = (LOW_LEGS + 2 * NUMBER + 0.6) * sheet.letters
    wide = max(high, WORDS * sheet.scale)
    for up, start, level, way in ((True, half, 0.0, 1), (False, high - half, foot, -1)):
        landings = [start + way * number * layout.pitch for number in range(layout.count + 1)]
        _marks(view, landings)
        _legs(view, landings, level, way * LOW_LEGS)
        words = _walked_briefly(sheet, layout, up=up)
        letter_lines(sheet, words, (view.x, view.y + level + way * room), wide, upwards=up)
        sheet.say(words)


def _draw(sheet: Sheet, layout: TailLayout) -> None:
    foot = 0.0
    for move in (_half_pins, _steps_up, _steps_down, _tails):
        foot = move(sheet, layout, foot) - NEXT * sheet.letters


def _half_pins(sheet: Sheet, layout: TailLayout, top: Inches) -> Inches:
    view = View(sheet, 0.0, top)
    high, lower, upper = layout.height, layout.half_pin, layout.height - layout.half_pin
    _caption(view, layout, f"Move 1: mark a half pin of {sheet.size(lower)} at both edges", 0.0)
    _board(view, layout)
    _marks(view, [lower, upper])
    line = view.y - (BOARD + BELOW) * sheet.letters
    for span in (Span(0.0, lower), Span(upper, high)):
        widths(view, [span], line, Side.BEFORE, edge=_foot(view))
    return line


def _steps_up(sheet: Sheet, layout: TailLayout, top: Inches) -> Inches:
    return _steps(sheet, layout, top, up=True)


def _steps_down(sheet: Sheet, layout: TailLayout, top: Inches) -> Inches:
    return _steps(sheet, layout, top, up=False)


def _steps(sheet: Sheet, layout: TailLayout, top: Inches, *, up: bool) -> Inches:
    """The dividers walked over the board, the first foot on one half pin's mark, the last past the other."""
    above = (LEGS + 2 * NUMBER) * sheet.letters
    view = View(sheet, 0.0, top - above)
    start, target = layout.half_pin, layout.height - layout.half_pin
    if not up:
        start, target = target, start
    way = 1 if up else -1
    landings = [start + way * number * layout.pitch for number in range(layout.count + 1)]
    _caption(view, layout, _walked(sheet, layout, up=up), above)
    _board(view, layout)
    _marks(view, [start, target, *landings[1:]])
    _legs(view, landings, 0.0, LEGS)
    low, high = sorted((target, landings[-1]))
    line = view.y - (BOARD + BELOW) * sheet.letters
    widths(view, [Span(low, high, words="past")], line, Side.BEFORE, edge=_foot(view))
    return line


def _legs(view: View, landings: list[Inches], level: Inches, high: float) -> None:
    """The dividers on one side of the board, so many letters high, step by step, each with its number."""
    sheet = view.sheet
    beyond = math.copysign(NUMBER, high) * sheet.letters
    for number, (here, there) in enumerate(pairwise(landings), start=1):
        middle, foot = view.at((here + there) / 2, level)
        joint = (middle, foot + high * sheet.letters)
        sheet.polyline(Line.OBJECT, (view.at(here, level), joint, view.at(there, level)))
        sheet.letter((middle, joint[1] + beyond), str(number))


def _walked(sheet: Sheet, layout: TailLayout, *, up: bool) -> str:
    """One walk in words."""
    steps, size = layout.count, sheet.size
    side, edges, mark = ("up", "lower", "upper") if up else ("down", "upper", "lower")
    walk = f"Move {2 if up else 3}: dividers at {size(layout.pitch)}, {steps} {_plural('step', steps)} {side}"
    marking = f", marking {edges} edges" if steps > 1 else ""
    return f"{walk}{marking}; the last lands {size(layout.pin)} past the {mark} mark"


def _walked_briefly(sheet: Sheet, layout: TailLayout, *, up: bool) -> str:
    steps, size = layout.count, sheet.size
    side, edges = ("up", "lower") if up else ("down", "upper")
    of = f"{steps} {_plural('step', steps)} of {size(layout.pitch)} {side}"
    return f"{of}{f', {edges} edges' if steps > 1 else ''}; the last {size(layout.pin)} past"


def _tails(sheet: Sheet, layout: TailLayout, top: Inches) -> Inches:
    view = View(sheet, 0.0, top)
    size, tails, pins = sheet.size, layout.count, layout.count - 1
    between = f", {pins} {_plural('pin', pins)} of {size(layout.pin)} between them" if pins else ""
    words = f"Then: {tails} {_plural('tail', tails)} of {size(layout.tail_width)}{between}"
    _caption(view, layout, words, 0.0)
    _board(view, layout)
    foot = _foot(view)
    _tone(view, layout)
    _marks(view, [edge for tail in layout.tails for edge in (tail.lower_end, tail.upper_end)])
    return view.at(0, foot)[1]


def _tone(view: View, layout: TailLayout) -> None:
    """The tails as they come to stand."""
    foot = _foot(view)
    for number, tail in enumerate(layout.tails, start=1):
        patch = box(tail.lower_end, foot, tail.upper_end - tail.lower_end, -foot)
        view.polygon(Line.TONE, patch, f"tail-{number}")


def _board(view: View, layout: TailLayout) -> None:
    thick = BOARD * view.sheet.letters
    view.rectangle(Line.OBJECT, 0.0, -thick, layout.height, thick)


def _marks(view: View, places: list[Inches]) -> None:
    """Marks across the end of the board."""
    foot = -BOARD * view.sheet.letters
    for place in places:
        view.polyline(Line.DIMENSION, (place, 0.0), (place, foot))


def _foot(view: View) -> Inches:
    return -BOARD * view.sheet.letters


def _caption(view: View, layout: TailLayout, words: str, above: Inches) -> None:
    """Letters a move above what is drawn of it, and says it."""
    sheet = view.sheet
    corner = (view.x, view.y + above + 0.9 * sheet.letters)
    letter_lines(sheet, words, corner, max(layout.height, WORDS * sheet.scale), upwards=True)
    sheet.say(words)


def _plural(noun: str, count: int) -> str:
    return noun if count == 1 else f"{noun}s"
