"""What is marked on a board, in full size: strips to be cut out, laid on the wood and pricked through.

A strip that is longer than the sheet is divided into tiles that meet at a line; short ones are put below each
other, where there is room. On each sheet stand two bars to be measured, for a printer that fits a page to its
paper spoils every line of it.
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
        lines: what is marked, as far as it lies within
        waste: what is cut away, likewise
    """

    of: NamedStrip
    number: int
    count: int
    low: Inches
    high: Inches
    lines: tuple[Marked, ...]
    waste: tuple[Outline, ...]

    @property
    def heights(self) -> tuple[Inches, ...]:
        """Where a line across the strip begins, from the reference edge, within the tile [in]."""
        found = {line.start[1] for line in self.of.strip.lines if not _is_upright(line)} - {0.0}
        return tuple(sorted(height for height in found if self.low <= height <= self.high))

    @property
    def uprights(self) -> tuple[Marked, ...]:
        """The lines that run up the strip, from its left on, each place once."""
        found: dict[Inches, Marked] = {}
        for line in sorted(self.of.strip.lines, key=lambda line: (line.start[0], not line.label)):
            if _is_upright(line) and line.start[0] > TOLERANCE:
                found.setdefault(line.start[0], line)
        return tuple(found.values())

    @property
    def width(self) -> Inches:
        """How much of a sheet's width it takes, with what is written beside it [in]."""
        return self.of.strip.length + BESIDE

    @property
    def height(self) -> Inches:
        """How much of a sheet's height it takes, with what is written above and below it [in]."""
        return ABOVE + self.high - self.low + BELOW


def tiled(strip: NamedStrip, most: Inches = TILE) -> tuple[Tile, ...]:
    """A strip, divided into tiles.

    Args:
        strip: the strip
        most: how much of it a tile holds [in]

    Returns:
        The tiles, from the reference edge up.
    """
    height = strip.strip.height
    count = max(1, math.ceil((height - TOLERANCE) / most))
    spans = [(number * most, min(height, (number + 1) * most)) for number in range(count)]
    return tuple(
        Tile(
            of=strip,
            number=number,
            count=count,
            low=low,
            high=high,
            lines=tuple(_within(strip.strip.lines, low, high)),
            waste=tuple(shape for outline in strip.strip.waste if (shape := clipped(outline, low, high))),
        )
        for number, (low, high) in enumerate(spans, start=1)
    )


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
