"""One view on a sheet: where it stands, and how much it is enlarged against the rest of the sheet."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.drawing.canvas import Line, Point, Sheet
from casewright.measure.units import Inches, Number

HATCH_APART = 0.05
"""Between two lines of hatching, on paper [in]."""


@dataclass(frozen=True, slots=True)
class View:
    """One view: it takes sizes of the work and draws them, both ways in the same scale.

    Attributes:
        sheet: what it is drawn on
        x: where its own zero stands on the sheet, to the right [in of the work]
        y: likewise, up [in of the work]
        factor: how much larger than the rest of the sheet it is drawn
    """

    sheet: Sheet
    x: Inches = 0.0
    y: Inches = 0.0
    factor: Number = 1.0

    def at(self, x: Inches, y: Inches) -> Point:
        """Where a point of the work stands on the sheet."""
        return self.x + x * self.factor, self.y + y * self.factor

    def rectangle(
        self, line: Line, x: Inches, y: Inches, width: Inches, height: Inches, code: str = ""
    ) -> None:
        """A rectangle by its lower left corner."""
        self.sheet.rectangle(line, self.at(x, y), width * self.factor, height * self.factor, code)

    def polygon(self, line: Line, corners: Sequence[Point], code: str = "") -> None:
        """A closed outline."""
        self.sheet.polygon(line, [self.at(*corner) for corner in corners], code)

    def polyline(self, line: Line, *points: Point) -> None:
        """A line through points."""
        self.sheet.polyline(line, [self.at(*point) for point in points])

    def circle(self, line: Line, centre: Point, radius: Inches) -> None:
        """A circle."""
        self.sheet.circle(line, self.at(*centre), radius * self.factor)

    def cut(
        self, corners: Sequence[Point], code: str = "", *, rising: bool = True, apart: Number = 1.0
    ) -> None:
        """What the section cuts: outlined and hatched, the lines of neighbours running against each other."""
        self.polygon(Line.CUT, corners, code)
        self.hatch(corners, rising=rising, apart=apart)

    def hatch(self, corners: Sequence[Point], *, rising: bool = True, apart: Number = 1.0) -> None:
        """Hatching inside an outline of any shape, at 45 degrees."""
        placed = [self.at(*corner) for corner in corners]
        step = HATCH_APART * self.sheet.scale * math.sqrt(2) * apart
        self.sheet.fill(Line.HATCH, placed, lambda: _hatching(placed, 1 if rising else -1, step))

    def broken(self, start: Point, end: Point) -> None:
        """A break line: the part goes on beyond it."""
        (x0, y0), (x1, y1) = self.at(*start), self.at(*end)
        long = math.hypot(x1 - x0, y1 - y0)
        notch = min(0.4 * self.sheet.letters, long / 4)
        along = ((x1 - x0) / long, (y1 - y0) / long)
        bends = ((-0.5, 0.0), (-0.2, 0.7), (0.2, -0.7), (0.5, 0.0))
        middle = ((x0 + x1) / 2, (y0 + y1) / 2)
        zigzag = [
            (
                middle[0] + notch * (far * along[0] - off * along[1]),
                middle[1] + notch * (far * along[1] + off * along[0]),
            )
            for far, off in bends
        ]
        self.sheet.polyline(Line.BREAK, [(x0, y0), *zigzag, (x1, y1)])


@dataclass(frozen=True, slots=True)
class Uncoded(View):
    """A second view of what another one shows: its parts are not named, so that each name is there once."""

    def rectangle(
        self, line: Line, x: Inches, y: Inches, width: Inches, height: Inches, code: str = ""
    ) -> None:
        """A rectangle by its lower left corner, without its code."""
        self.sheet.rectangle(line, self.at(x, y), width * self.factor, height * self.factor)

    def polygon(self, line: Line, corners: Sequence[Point], code: str = "") -> None:
        """A closed outline, without its code."""
        self.sheet.polygon(line, [self.at(*corner) for corner in corners])


def box(x: Inches, y: Inches, width: Inches, height: Inches) -> tuple[Point, Point, Point, Point]:
    """The corners of a rectangle by its lower left corner, counter-clockwise.

    Args:
        x: its left edge [in]
        y: its lower edge [in]
        width: its width [in]
        height: its height [in]

    Returns:
        Four corners.

    Source: geometry.
    """
    return (x, y), (x + width, y), (x + width, y + height), (x, y + height)


def _hatching(corners: Sequence[Point], slope: int, step: float) -> Iterator[tuple[Point, Point]]:
    """Strokes at 45 degrees inside an outline: where each line enters it and leaves it again."""
    # Along one line of hatching y - slope·x stays the same: that number tells which lines an edge crosses.
    numbered = [(y - slope * x, x, y) for x, y in corners]
    low, high = min(numbered)[0], max(numbered)[0]
    edges = list(zip(numbered, [*numbered[1:], numbered[0]], strict=True))
    for number in range(math.floor(low / step) + 1, math.ceil(high / step)):
        level = number * step
        crossings = sorted(
            (
                start[1] + (end[1] - start[1]) * (level - start[0]) / (end[0] - start[0]),
                start[2] + (end[2] - start[2]) * (level - start[0]) / (end[0] - start[0]),
            )
            for start, end in edges
            if (start[0] <= level) != (end[0] <= level)
        )
        yield from zip(crossings[::2], crossings[1::2], strict=True)
