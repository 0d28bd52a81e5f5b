"""What is marked on a board, in full size: strips to be cut out, laid on the wood and pricked through.

A strip that is longer or wider than the sheet is divided into tiles that meet at a line; one whose marks lie
far from its edge begins shortly before them. Short ones are put below each other, where there is room. On
each sheet stand two bars to be measured, for a printer that fits a page to its paper spoils every line of it.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from casewright.joinery.solid import Flat, Marked, Outline, Strip
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.units import Inches

TILE = 7.25
"""How much of a strip one sheet holds, Letter or A4 [in]."""
ACROSS = 7.0
"""How wide the strips of one sheet may be together [in]."""
BESIDE = 1.55
"""Room beside a strip for what is written at its lines [in]."""
ALONG = ACROSS - BESIDE
"""How much of a strip's length one sheet holds, beside what is written [in]."""
STEP = 5.0
"""How far apart tiles that lie side by side are joined at the most; at half inches, to be measured [in]."""
LEAD = 0.5
"""How much of a board is shown before its first mark or behind its last, where not all of it is [in]."""
FAR = 2.0
"""From where on it begins there: a mark nearer than this is measured from the edge itself [in]."""
NARROWEST = 2.0
"""How much of the board such a strip shows at the least, for what is written above and below it [in]."""
ABOVE = 0.9
"""Room above it for what it is and which parts it is laid on [in]."""
BELOW = 0.5
"""Room below it for its reference edge and where it joins another, and to the next strip [in]."""
DOWN = ABOVE + TILE + BELOW
"""How high a column of one sheet may be, Letter or A4 [in]."""

Column = tuple["Tile", ...]
"""Tiles one below the other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedStrip:
    """A strip with the parts that it is for.

    Attributes:
        strip: what is marked
        title: the joint, such as `Half-blind dovetail, front`
        serves: marks of the parts that it is laid on
    """

    strip: Strip
    title: str
    serves: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tile:
    """A part of a strip that one sheet holds.

    Attributes:
        of: the strip
        number: which tile of it, from 1
        count: how many it has
        low: where it begins, from the reference edge [in]
        high: where it ends [in]
        left: where it begins along the strip, from the edge at the strip's left [in]
        right: where it ends, likewise [in]
        lines: what is marked, as far as it lies within
        waste: what is cut away, likewise
    """

    of: NamedStrip
    number: int
    count: int
    low: Inches
    high: Inches
    left: Inches
    right: Inches
    lines: tuple[Marked, ...]
    waste: tuple[Outline, ...]

    @property
    def begins_at_edge(self) -> bool:
        """Whether its left is the end or edge of the board."""
        return self.left < TOLERANCE

    @property
    def follows(self) -> bool:
        """Whether another tile of the strip is joined to its left."""
        return self.left > _spans_along(self.of.strip)[0][0] + TOLERANCE

    @property
    def goes_on_right(self) -> bool:
        """Whether another tile of the strip is joined to its right."""
        return self.right < _spans_along(self.of.strip)[-1][1] - TOLERANCE

    @property
    def _reaching_in(self) -> tuple[Marked, ...]:
        """The strip's lines that come to stand between its left and its right, of whatever height."""
        return tuple(
            line
            for line in self.of.strip.lines
            if min(line.start[0], line.end[0]) < self.right + TOLERANCE
            and max(line.start[0], line.end[0]) > self.left - TOLERANCE
        )

    @property
    def heights(self) -> tuple[Inches, ...]:
        """Where a line across the strip begins, from the reference edge, within the tile [in]."""
        found = {line.start[1] for line in self._reaching_in if not _is_upright(line)} - {0.0}
        return tuple(sorted(height for height in found if self.low <= height <= self.high))

    @property
    def uprights(self) -> tuple[Marked, ...]:
        """The lines that run up the strip, from its left on, each place once."""
        found: dict[Inches, Marked] = {}
        for line in sorted(self._reaching_in, key=lambda line: (line.start[0], not line.label)):
            if _is_upright(line) and line.start[0] > TOLERANCE:
                found.setdefault(line.start[0], line)
        return tuple(found.values())

    @property
    def width(self) -> Inches:
        """How much of a sheet's width it takes, with what is written beside it [in]."""
        return self.right - self.left + BESIDE

    @property
    def height(self) -> Inches:
        """How much of a sheet's height it takes, with what is written above and below it [in]."""
        return ABOVE + self.high - self.low + BELOW


def tiled(strip: NamedStrip, most: Inches = TILE) -> tuple[Tile, ...]:
    """A strip, divided into tiles.

    Args:
        strip: the strip
        most: how much of its height a tile holds [in]

    Returns:
        The tiles, from the reference edge up, and then from the left on.
    """
    marked = strip.strip
    spans = [(along, up) for along in _spans_along(marked) for up in _divided(0.0, marked.height, most)]
    return tuple(
        Tile(
            of=strip,
            number=number,
            count=len(spans),
            low=low,
            high=high,
            left=left,
            right=right,
            lines=tuple(_within(_beside(marked.lines, left, right), low, high)),
            waste=tuple(
                shape
                for outline in marked.waste
                if (shape := clipped(_swapped(clipped(_swapped(outline), left, right)), low, high))
            ),
        )
        for number, ((left, right), (low, high)) in enumerate(spans, start=1)
    )


def _spans_along(strip: Strip) -> list[Flat]:
    """From where to where the tiles of a strip reach along it.

    What lies far before its marks is left out; what lies behind them too, where a sheet could not hold it.
    """
    places = [point[0] for line in strip.lines for point in (line.start, line.end)]
    places += [point[0] for outline in strip.waste for point in outline]
    start, end = 0.0, strip.length
    if min(places, default=0.0) > FAR:
        start = max(0.0, min(math.floor(2 * (min(places) - LEAD)) / 2, math.floor(end - NARROWEST)))
    if end - start > ALONG and places:
        end = min(end, max(places) + LEAD)
    if end - start < ALONG + TOLERANCE:
        return [(start, end)]
    count = math.ceil((end - start - TOLERANCE) / STEP)
    return _divided(start, end, math.ceil(2 * (end - start) / count - TOLERANCE) / 2)


def _divided(start: Inches, end: Inches, most: Inches) -> list[Flat]:
    count = max(1, math.ceil((end - start - TOLERANCE) / most))
    return [(start + number * most, min(end, start + (number + 1) * most)) for number in range(count)]


def sheets(strips: Iterable[NamedStrip]) -> tuple[tuple[Column, ...], ...]:
    """Tiles in columns, sheet after sheet: side by side, and below each other where a column has room.

    Args:
        strips: the strips

    Returns:
        The columns of each sheet, none without a tile.
    """
    found: list[list[list[Tile]]] = []
    for tile in (tile for strip in strips for tile in tiled(strip)):
        if not found or not _put(tile, found[-1]):
            found.append([[tile]])
    return tuple(tuple(map(tuple, sheet)) for sheet in found)


def _put(tile: Tile, sheet: list[list[Tile]]) -> bool:
    """Puts a tile beside the others of a sheet, or below some of them; whether there was room."""
    widths = [max(each.width for each in column) for column in sheet]
    if sum(widths) + tile.width <= ACROSS:
        sheet.append([tile])
        return True
    for column, wide in zip(sheet, widths, strict=True):
        down = sum(each.height for each in column) + tile.height
        if down <= DOWN and sum(widths) + max(0.0, tile.width - wide) <= ACROSS:
            column.append(tile)
            return True
    return False


def _is_upright(line: Marked) -> bool:
    return abs(line.end[0] - line.start[0]) < TOLERANCE


def clipped(outline: Outline, low: Inches, high: Inches) -> Outline:
    """What of a convex outline lies between two heights.

    Args:
        outline: its corners in turn [in]
        low: the lower height [in]
        high: the upper height [in]

    Returns:
        The corners of what is left; none where nothing is [in]

    Source: Sutherland and Hodgman (1974), clipping against one line after the other.
    """
    above = _kept(outline, lambda point: point[1] - low)
    found = _kept(above, lambda point: high - point[1])
    return tuple(found) if len(found) > 2 and _area(found) > TOLERANCE else ()


def _kept(outline: Sequence[Flat], inside: Callable[[Flat], float]) -> list[Flat]:
    found: list[Flat] = []
    for one, two in zip(outline, [*outline[1:], *outline[:1]], strict=True):
        here, there = inside(one), inside(two)
        if here >= 0:
            found.append(one)
        if (here < 0) != (there < 0):
            share = here / (here - there)
            found.append((one[0] + share * (two[0] - one[0]), one[1] + share * (two[1] - one[1])))
    return found


def _area(outline: Sequence[Flat]) -> float:
    pairs = zip(outline, [*outline[1:], *outline[:1]], strict=True)
    return abs(sum(one[0] * two[1] - two[0] * one[1] for one, two in pairs)) / 2


def _swapped(outline: Outline) -> Outline:
    return tuple((up, along) for along, up in outline)


def _turned(line: Marked) -> Marked:
    (x0, y0), (x1, y1) = line.start, line.end
    return Marked(stroke=line.stroke, start=(y0, x0), end=(y1, x1), label=line.label)


def _beside(lines: Iterable[Marked], left: Inches, right: Inches) -> Iterator[Marked]:
    """What of the lines lies between a tile's left and its right."""
    return map(_turned, _within(map(_turned, lines), left, right))


def _within(lines: Iterable[Marked], low: Inches, high: Inches) -> Iterator[Marked]:
    """The lines of a tile; one that runs along the strip is cut at its ends."""
    for line in lines:
        (x0, y0), (x1, y1) = line.start, line.end
        if abs(y1 - y0) < TOLERANCE:
            if low - TOLERANCE <= y0 <= high + TOLERANCE:
                yield line
            continue
        shares = sorted(((low - y0) / (y1 - y0), (high - y0) / (y1 - y0)))
        start, end = max(0.0, shares[0]), min(1.0, shares[1])
        if end - start > TOLERANCE:
            first, last = ((x0 + share * (x1 - x0), y0 + share * (y1 - y0)) for share in (start, end))
            yield Marked(stroke=line.stroke, start=first, end=last, label=line.label)
