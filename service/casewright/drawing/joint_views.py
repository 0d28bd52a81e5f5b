"""Any joint that has a shape, drawn from it: cut open with its dimensions, put together, and drawn apart.

Views stand below one another, or side by side where they belong together; the pictorial views take what is
left at the right of them.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from casewright.drawing.canvas import Bounds, Line, Point, Sheet
from casewright.drawing.cut_view import CAPTION, CutOpen, cut_open, draw_cut
from casewright.drawing.outlines import reach_of
from casewright.drawing.page import KEPT, MARGIN, PAPER, Drawing, fitted, letter_lines
from casewright.drawing.pictorial import eye, visible_edges
from casewright.drawing.view import View
from casewright.joinery.solid import Board, Shape
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import Words, in_unit
from casewright.measure.units import Inches, Number

BETWEEN = 1.6
"""Room between two views that stand below each other [letters]."""
BESIDE = 1.2
"""Room between two views that stand side by side [letters]."""
APART = 1.3
"""How far each board is moved to draw them apart, as a part of how far one reaches into the other."""
ENLARGED = (4, 3, 2, 1.5, 1, 1 / 2, 1 / 4)
"""How large a view may be drawn on paper that need not be in the scale of the others."""
PATCH = (2.4, 1.8)
"""Width and height that the work may take up in such a view on paper [in]."""
LEAST_HIGH = 1.4
"""So high it may be even where the other views leave it less [in]."""
HEAD = 1.5
"""Height on paper of title and notes [in]."""
PICTORIAL = tuple(share / 20 for share in range(20, 4, -1))
"""How large the pictorial views may be drawn beside the others."""
LEAST_PICTURE = 1.0
"""The longer side of a pictorial view on paper at the least [in]."""
LARGE_PICTURE = 1.8
"""Where it is shorter than this, the pictorial views may stand below the others [in]."""
GAIN = 1.75
"""If they are larger there by this at the least."""
UNDER = 2.4
"""Room below a pictorial view for what it shows [letters]."""

Edges = Sequence[tuple[Point, Point]]


@dataclass(frozen=True, slots=True)
class _Placed:
    """A view with its place on the sheet."""

    opened: CutOpen
    view: View
    scale: str = ""


@dataclass(frozen=True, slots=True)
class _Pictures:
    """The pictorial views, how large they are drawn, and the upper middle of each on the sheet."""

    factor: Number
    places: tuple[Point, ...]


@lru_cache(maxsize=KEPT)
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
    # Once: the sheet is tried in one scale after the other.
    cuts = [cut_open(shape.boards, cut) for cut in shape.cuts]
    seen = _pictorials(shape.boards, shape.engaged)
    return fitted(
        lambda sheet: _draw(sheet, cuts, seen, shape.notes),
        unit,
        name=name,
        title=title,
        subject="Cut open, put together and drawn apart",
        work=_work(cuts),
    )


def _work(cuts: Sequence[CutOpen]) -> tuple[Inches, Inches]:
    """How wide and how high the largest view is that stands in the scale of the drawing."""
    extents = [_extent(each.reach) for each in cuts if not each.cut.enlarged]
    return max(wide for wide, _ in extents), max(high for _, high in extents)


def _extent(reach: Bounds) -> tuple[Inches, Inches]:
    return reach[2] - reach[0], reach[3] - reach[1]


def _draw(sheet: Sheet, cuts: Sequence[CutOpen], seen: Mapping[str, Edges], notes: Sequence[Words]) -> None:
    taken = []
    for placed in _placed(sheet, cuts):
        drawn = sheet.fresh()
        draw_cut(replace(placed.view, sheet=drawn), placed.opened, placed.scale)
        taken.append(drawn.reach)
        sheet.add(drawn)
    _draw_pictorials(sheet, seen, taken)
    if notes:
        words = " ".join(in_unit(note, sheet.unit) for note in notes)
        left, bottom, right, _ = sheet.reach
        letter_lines(sheet, words, (left, bottom - 1.3 * sheet.letters), right - left)
        sheet.say(words.rstrip("."))


def _placed(sheet: Sheet, cuts: Iterable[CutOpen]) -> Iterator[_Placed]:
    """Every view where it stands, row below row; work that stands below other work begins with it."""
    rows = [(row, [] if row[0].cut.enlarged else _room(sheet, row)) for row in _rows(cuts)]
    left = min((reaches[0][0] for _, reaches in rows if reaches), default=0.0)
    others = sum(_high(reaches) + BETWEEN * sheet.letters for _, reaches in rows if reaches)
    top: Inches = 0.0
    for row, usual in rows:
        factor, scale, reaches = 1.0, "", usual
        if row[0].cut.enlarged:
            on_paper = _enlarged(sheet, row[0], others)
            factor, scale = on_paper * sheet.scale, _named(on_paper)
            reaches = _room(sheet, row, factor)
        zero = top - max(reach[3] for reach in reaches)
        start = left if scale else reaches[0][0]
        for opened, reach in zip(row, reaches, strict=True):
            work = factor * opened.reach[0] if opened is row[0] else 0.0
            yield _Placed(opened, View(sheet, start - reach[0] - work, zero, factor), scale)
            start += reach[2] - reach[0] + BESIDE * sheet.letters
        top = zero + min(reach[1] for reach in reaches) - BETWEEN * sheet.letters


def _rows(cuts: Iterable[CutOpen]) -> Iterator[list[CutOpen]]:
    row: list[CutOpen] = []
    for opened in cuts:
        if row and not opened.cut.beside:
            yield row
            row = []
        row.append(opened)
    yield row


def _room(sheet: Sheet, row: Sequence[CutOpen], factor: Number = 1.0) -> list[Bounds]:
    """How much of the sheet each view of a row takes, the work of the first beginning at zero."""
    reaches = []
    for opened in row:
        tried = sheet.fresh()
        work = factor * opened.reach[0] if opened is row[0] else 0.0
        draw_cut(View(tried, -work, 0.0, factor), opened)
        reaches.append(tried.reach)
    return reaches


def _high(reaches: Sequence[Bounds]) -> Inches:
    return max(reach[3] for reach in reaches) - min(reach[1] for reach in reaches)


def _enlarged(sheet: Sheet, opened: CutOpen, others: Inches) -> Number:
    """How large a view may be drawn on paper: as large as its patch and the other views let it."""
    work = _extent(opened.reach)
    # What is lettered around it is as high in every scale.
    around = _high(_room(sheet, [opened], sheet.scale)) / sheet.scale - work[1]
    high = min(PATCH[1], max(LEAST_HIGH, PAPER[1] - HEAD - others / sheet.scale - around))
    fits = (scale for scale in ENLARGED if work[0] * scale <= PATCH[0] and work[1] * scale <= high)
    return next(fits, ENLARGED[-1])


def _named(scale: Number) -> str:
    return {1: "full size", 1 / 2: "half size", 1 / 4: "a quarter of full size"}.get(
        scale, f"{scale:g} times full size"
    )


@lru_cache(maxsize=KEPT)
def _pictorials(boards: tuple[Board, ...], engaged: Inches) -> Mapping[str, Edges]:
    """What one sees of the boards put together, and of the boards drawn apart."""
    seen_by = eye()
    return {
        "put together": visible_edges(boards, seen_by),
        "drawn apart": visible_edges(boards, seen_by, APART * engaged),
    }


def _draw_pictorials(sheet: Sheet, seen: Mapping[str, Edges], taken: Sequence[Bounds]) -> None:
    """The pictorial views, in what is left at the right of those that are cut open."""
    reaches = [reach_of(edges) for edges in seen.values()]
    pictures = _fitted_pictures(sheet, reaches, list(seen), taken)
    for (words, edges), reach, (middle, top) in zip(seen.items(), reaches, pictures.places, strict=True):
        factor = pictures.factor
        view = View(sheet, middle - factor * (reach[0] + reach[2]) / 2, top - factor * reach[3], factor)
        sheet.strokes(Line.OBJECT, [(view.at(*one), view.at(*two)) for one, two in edges])
        sheet.letter((middle, view.at(0, reach[1])[1] - 1.2 * sheet.letters), words, size=CAPTION)
        sheet.say(words)


def _fitted_pictures(
    sheet: Sheet, reaches: Sequence[Bounds], words: Sequence[str], taken: Sequence[Bounds]
) -> _Pictures:
    """The largest pictorial views for which there is room."""
    longest = min(max(_extent(reach)) for reach in reaches) / sheet.scale
    factors = [each for each in PICTORIAL if each * longest >= LEAST_PICTURE] or [LEAST_PICTURE / longest]
    sizes = [(factor, list(_sizes(sheet, reaches, words, factor))) for factor in factors]
    fits = (
        _Pictures(factor, places)
        for factor, room in sizes
        for places in (_below(sheet, room, taken), _beside(sheet, room, taken))
        if _is_beside(sheet, places, room, taken)
    )
    smallest, room = sizes[-1]
    found = next(fits, None)
    if found is None or found.factor * longest < LARGE_PICTURE:
        under = (
            _Pictures(factor, places)
            for factor, room in sizes
            if (places := _under(sheet, room, taken)) and (found is None or factor >= GAIN * found.factor)
        )
        found = next(under, found)
    return found or _Pictures(smallest, _below(sheet, room, taken))


def _sizes(
    sheet: Sheet, reaches: Sequence[Bounds], words: Sequence[str], factor: Number
) -> Iterator[tuple[Inches, Inches]]:
    """Width and height of each pictorial view with what is lettered below it."""
    for (wide, high), said in zip(map(_extent, reaches), words, strict=True):
        yield max(factor * wide, sheet.width_of(said, CAPTION)), factor * high + UNDER * sheet.letters


def _limit(sheet: Sheet, taken: Sequence[Bounds]) -> Inches:
    """How far to the right the paper reaches."""
    return min(reach[0] for reach in taken) + (PAPER[0] - 2 * MARGIN) * sheet.scale


def _is_beside(
    sheet: Sheet,
    places: Sequence[Point],
    sizes: Sequence[tuple[Inches, Inches]],
    taken: Sequence[Bounds],
) -> bool:
    """Whether pictorial views reach no farther than the paper, nor lower than the others."""
    ends = [(x + wide / 2, y - high) for (x, y), (wide, high) in zip(places, sizes, strict=True)]
    low = min(reach[1] for reach in taken) - sheet.letters
    return all(right <= _limit(sheet, taken) and foot >= low for right, foot in ends)


def _below(
    sheet: Sheet, sizes: Sequence[tuple[Inches, Inches]], taken: Sequence[Bounds]
) -> tuple[Point, ...]:
    """At the right of the others below one another, on one axis."""
    top = max(reach[3] for reach in taken)
    tops, axes = [], []
    for wide, high in sizes:
        axes.append(_free_from(sheet, taken, top - high, top) + wide / 2)
        tops.append(top)
        top -= high
    return tuple((max(axes), each) for each in tops)


def _beside(
    sheet: Sheet, sizes: Sequence[tuple[Inches, Inches]], taken: Sequence[Bounds]
) -> tuple[Point, ...]:
    """At the right of the others side by side, on one foot."""
    top, tallest = max(reach[3] for reach in taken), max(high for _, high in sizes)
    start = _free_from(sheet, taken, top - tallest, top)
    return _in_line(sheet, sizes, start, top - tallest)


def _under(
    sheet: Sheet, sizes: Sequence[tuple[Inches, Inches]], taken: Sequence[Bounds]
) -> tuple[Point, ...]:
    """Below the others side by side, on one foot; nowhere if the paper ends before that."""
    top, low = max(reach[3] for reach in taken), min(reach[1] for reach in taken)
    foot = low - BETWEEN * sheet.letters - max(high for _, high in sizes)
    wide = sum(wide for wide, _ in sizes) + BESIDE * sheet.letters * (len(sizes) - 1)
    left, right = min(reach[0] for reach in taken), max(reach[2] for reach in taken)
    if top - foot > (PAPER[1] - HEAD) * sheet.scale or left + wide > _limit(sheet, taken):
        return ()
    return _in_line(sheet, sizes, max(left, (left + right - wide) / 2), foot)


def _in_line(
    sheet: Sheet, sizes: Sequence[tuple[Inches, Inches]], start: Inches, foot: Inches
) -> tuple[Point, ...]:
    places = []
    for wide, high in sizes:
        places.append((start + wide / 2, foot + high))
        start += wide + BESIDE * sheet.letters
    return tuple(places)


def _free_from(sheet: Sheet, taken: Sequence[Bounds], low: Inches, high: Inches) -> Inches:
    """From where to the right nothing stands between two heights."""
    rights = [right for _, bottom, right, top in taken if bottom < high and low < top]
    return max(rights, default=min(reach[0] for reach in taken)) + BETWEEN * sheet.letters
