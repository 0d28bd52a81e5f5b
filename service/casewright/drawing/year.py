"""The gap above a drawer as a line over the year: enlarged to a whole ratio, so that a rule reads it."""

from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.page import Drawing
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import say
from casewright.measure.units import Inches, Number
from casewright.pieces.drawers.year import DrawerYear
from casewright.pieces.layout.year import Through, Year
from casewright.wood.year import MONTHS, Month

STEP = 0.235
"""From one month to the next, on paper [in]."""
TALLEST = 1.6
"""The tallest gap on paper, at the most [in]."""
RATIOS = (50, 40, 30, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2, 1)
"""How often a gap is enlarged."""
DOT = 0.05
"""Radius of the dot at the month of fitting, on paper [in]."""
BESIDE = 0.1
"""From the stroke of that month to a label beside it, on paper [in]."""
LABEL = 0.85
"""Months are lettered a little smaller."""


def ratio_for(drawers: tuple[DrawerYear, ...]) -> Number:
    """How often the gaps of a unit are enlarged, so that all its lines can be held side by side.

    Args:
        drawers: every drawer that is drawn

    Returns:
        A whole ratio, or less than 1 for gaps that are larger than the paper.

    Source: common practice.
    """
    tall = max(max(each.greatest[1], each.limit) - min(0.0, each.least[1]) for each in drawers)
    return next((ratio for ratio in RATIOS if tall * ratio <= TALLEST), TALLEST / tall)


def year_line(each: DrawerYear, year: Year, unit: LengthUnit, ratio: Number) -> Drawing:
    """The gap above drawers alike, month by month.

    Args:
        each: the drawers
        year: the year at home
        unit: the shop's unit
        ratio: how often the gap is enlarged

    Returns:
        The drawing; its description has every figure.

    Source: common practice of charts: one line for the front, a broken one for the sides.
    """
    sheet = Sheet(1.0, unit)
    _ground(sheet, each, ratio)
    _curve(sheet, Line.CUT, each.front, ratio)
    if not each.is_one:
        _curve(sheet, Line.HIDDEN, each.side, ratio)
    _ends(sheet, each, year.fitted, ratio)
    if year.fitted:
        _fitted(sheet, each, year.fitted, ratio)
    _quarters(sheet, each, ratio)
    _tell(sheet, each, year)
    left, bottom, right, top = sheet.reach
    margin = 0.05
    codes = ", ".join(each.codes)
    return Drawing(
        name=f"{each.codes[0]}-year",
        title=f"Gap above {codes} over the year",
        description=f"The gap drawn {ratio:g} times its size. {'. '.join(sheet.said)}.",
        scale=1.0,
        left=left - margin,
        top=-top - margin,
        width=right - left + 2 * margin,
        height=top - bottom + 2 * margin,
        body=sheet.body(),
    )


def _across(month: Month) -> Inches:
    return month.place * STEP


END = (len(MONTHS) - 1) * STEP


def _ground(sheet: Sheet, each: DrawerYear, ratio: Number) -> None:
    """The opening's edge, the gap that is wanted, the months; below the edge the drawer binds."""
    floor = min(0.0, each.least[1]) * ratio
    if floor < 0:
        sheet.rectangle(Line.TONE, (0.0, floor), END, -floor)
        sheet.letter((END / 2, floor / 2), "binds", size=LABEL)
    sheet.strokes(Line.OBJECT, [((0.0, 0.0), (END, 0.0))])
    sheet.strokes(Line.SEEN, [((0.0, each.limit * ratio), (END, each.limit * ratio))])
    sheet.letter((-0.08, 0.0), "0", "end")
    if each.limit * ratio > sheet.letters:
        sheet.letter((-0.08, each.limit * ratio), sheet.size(each.limit), "end")
    for month in MONTHS:
        sheet.letter((_across(month), floor - 0.9 * sheet.letters), month.value[0], size=LABEL)


def _curve(sheet: Sheet, line: Line, through: Through, ratio: Number) -> None:
    sheet.polyline(
        line, [_point(month, gap, ratio) for month, gap in zip(MONTHS, through.months, strict=True)]
    )


def _point(month: Month, gap: Inches, ratio: Number) -> Point:
    return _across(month), gap * ratio


def _ends(sheet: Sheet, each: DrawerYear, fitted: Month | None, ratio: Number) -> None:
    """The least and the greatest gap, lettered where they are, above the lines."""
    for month, gap in (each.greatest, each.least):
        x, anchor = _across(month), _anchor(month)
        if fitted and gap == each.least[1] and abs(fitted.place - month.place) <= 1:
            # The stroke of the month of fitting stands there; the label stands beside it.
            anchor = "start" if fitted.place <= month.place else "end"
            x = _across(fitted) + (BESIDE if anchor == "start" else -BESIDE)
        words = _fine(gap, sheet.unit)
        left, _, right, _ = sheet.patch((x, 0.0), words, anchor)
        high = max(gap, _highest(each, left, right)) * ratio + 0.75 * sheet.letters
        sheet.letter((x, high), words, anchor, inches=gap)


def _highest(each: DrawerYear, left: Inches, right: Inches) -> Inches:
    """The greatest gap between two places along the months."""
    found = [
        gap
        for through in (each.front.months, each.side.months)
        for place in (left, right, *(_across(month) for month in MONTHS if left < _across(month) < right))
        for gap in (_between(through, place / STEP),)
    ]
    return max(found)


def _between(gaps: tuple[Inches, ...], place: Number) -> Inches:
    """The gap at a place between two months."""
    first = min(max(int(place), 0), len(gaps) - 2)
    share = min(max(place - first, 0.0), 1.0)
    return gaps[first] + share * (gaps[first + 1] - gaps[first])


def _quarters(sheet: Sheet, each: DrawerYear, ratio: Number) -> None:
    """Thin uprights at every third month, left open where something is lettered."""
    low = min(0.0, each.least[1]) * ratio
    high = max(each.greatest[1], each.limit) * ratio
    for month in MONTHS[::3]:
        x, start = _across(month), low
        strokes = []
        for left, bottom, right, top in sorted(sheet.lettered, key=lambda patch: patch[1]):
            if left < x < right and top > start and bottom < high:
                strokes += _upright(x, start, bottom)
                start = max(start, top)
        sheet.strokes(Line.WITNESS, [*strokes, *_upright(x, start, high)])


def _anchor(month: Month) -> str:
    """To which side lettering goes at a month, so that it stays over the months."""
    return "start" if month.place < 3 else "end" if month.place > len(MONTHS) - 4 else "middle"


def _fitted(sheet: Sheet, each: DrawerYear, month: Month, ratio: Number) -> None:
    """The month of fitting: what is left above the drawer then, by the wood as it is worked."""
    top = max(each.greatest[1], each.limit) * ratio
    x, now = _across(month), each.front.now * ratio
    high = top + 1.7 * sheet.letters
    sheet.circle(Line.OBJECT, (x, now), DOT)
    sheet.strokes(Line.DIMENSION, _upright(x, now + DOT, high - 0.6 * sheet.letters))
    words = f"fitted, {sheet.size(each.front.now)}"
    sheet.letter((x, high), words, _anchor(month), inches=each.front.now)


def _upright(x: Inches, low: Inches, high: Inches) -> list[tuple[Point, Point]]:
    """One upright stroke, where there is room for one."""
    return [((x, low), (x, high))] if low < high else []


def _tell(sheet: Sheet, each: DrawerYear, year: Year) -> None:
    size = sheet.unit
    if year.fitted:
        sheet.say(f"Fitted in {year.fitted.value} with {sheet.size(each.front.now)} above")
    sheet.say(f"{sheet.size(each.limit)} is wanted when it is wettest")
    for month, front, side in zip(MONTHS, each.front.months, each.side.months, strict=True):
        sides = "" if each.is_one else f", sides {_fine(side, size)}"
        sheet.say(f"{month.value}: front {_fine(front, size)}{sides}")


def _fine(gap: Inches, unit: LengthUnit) -> str:
    return say("{:.3 bare}", gap).in_unit(unit)
