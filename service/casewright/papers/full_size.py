"""What is marked on a board, in full size: strips to be cut out, laid on the wood and pricked through.

A strip that is longer than the sheet is divided into tiles that meet at a line. On each sheet stand two bars
to be measured, for a printer that fits a page to its paper spoils every line of it.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from casewright.joinery.solid import Flat, Marked, Outline, Strip, Stroke
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.units import Inches

TILE = 7.25
"""How much of a strip one sheet holds, Letter or A4 [in]."""
ACROSS = 7.0
"""How wide the strips of one sheet may be together [in]."""
BESIDE = 1.55
"""Room beside a strip for what is written at its lines [in]."""


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
        """Where a line begins that is sawn or stopped at, from the reference edge, within the tile [in]."""
        found = {line.start[1] for line in self.of.strip.lines if line.stroke is not Stroke.GAUGE}
        return tuple(sorted(height for height in found if self.low <= height <= self.high))

    @property
    def width(self) -> Inches:
        """How much of a sheet's width it takes, with what is written beside it [in]."""
        return self.of.strip.length + BESIDE


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


def sheets(strips: Iterable[NamedStrip]) -> tuple[tuple[Tile, ...], ...]:
    """Tiles side by side, sheet after sheet; a strip's tiles stay in their order.

    Args:
        strips: the strips

    Returns:
        The tiles of each sheet.
    """
    found: list[list[Tile]] = []
    room = 0.0
    for tile in (tile for strip in strips for tile in tiled(strip)):
        if not found or tile.width > room:
            found.append([])
            room = ACROSS
        found[-1].append(tile)
        room -= tile.width
    return tuple(map(tuple, found))


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
