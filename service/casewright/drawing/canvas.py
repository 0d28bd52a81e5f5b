"""The sheet that every drawing is made on: inches of the work, y up, few kinds of line, one lettering.

One unit of the sheet is one inch of the work. Lettering and line weights are set in inches of the paper that
it is printed on, so that a large case and a small joint come out equally legible.
"""

import unicodedata
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from xml.sax.saxutils import escape, quoteattr

from casewright.measure.lengths import LengthUnit, show, show_mm
from casewright.measure.units import Inches, Number

Point = tuple[Inches, Inches]
"""To the right and up [in]."""

Bounds = tuple[Inches, Inches, Inches, Inches]
"""Left, bottom, right and top of a patch of the sheet [in of the work]."""

LETTERS = 1 / 6
"""Height of the lettering on paper: 12 point [in]."""
NARROW_SIGNS = frozenset(" .,:;'-/|()°ijlft")
NARROW, USUAL, CAPITAL = 0.4, 0.64, 0.8
"""Widths of signs by the widest usual sans serif (DejaVu Sans: a digit 0.636, a dash 0.361); Helvetica and
Arial run narrower [letters]."""
FORBIDDEN = frozenset(
    map(chr, (0x061C, 0x200E, 0x200F, *range(0x202A, 0x202F), *range(0x2066, 0x206A), 0xFFFE, 0xFFFF))
)
"""Marks that turn the direction of what follows them, so that a size could be read backwards, and two that
are no characters."""


class Line(StrEnum):
    """What a line stands for, which decides how heavy it is drawn; later ones are drawn over earlier ones."""

    TONE = "tone"
    HATCH = "hatch"
    WITNESS = "witness"
    SEEN = "seen"
    HIDDEN = "hidden"
    BREAK = "break"
    DIMENSION = "dimension"
    FRONT = "front"
    OBJECT = "object"
    CUT = "cut"
    FLOOR = "floor"


WEIGHTS = {
    Line.TONE: 0.0,
    Line.HATCH: 0.005,
    Line.WITNESS: 0.006,
    Line.SEEN: 0.008,
    Line.HIDDEN: 0.008,
    Line.BREAK: 0.008,
    Line.DIMENSION: 0.009,
    Line.FRONT: 0.012,
    Line.OBJECT: 0.015,
    Line.CUT: 0.017,
    Line.FLOOR: 0.035,
}
"""Weight on paper: from 0.13 mm for hatching to 0.43 mm for what is cut, about as in technical drawing (from
memory, ISO 128), the floor heavier [in]."""
TONE_SHADE = 0.07
DASH, DASH_GAP = 0.06, 0.04


def written(words: str) -> str:
    """Words as they may stand in a drawing: on one line, without signs that XML forbids or that turn text.

    Args:
        words: anything that was typed

    Returns:
        The words, not yet escaped.

    Source: XML 1.0 (fifth edition), section 2.2; Unicode Standard Annex 9 for the marks of direction.
    """
    spaced = " ".join(words.split())
    if spaced.isascii() and spaced.isprintable():
        return spaced
    return "".join(sign for sign in spaced if not _is_forbidden(sign))


def _is_forbidden(sign: str) -> bool:
    return unicodedata.category(sign) in ("Cc", "Cs") or sign in FORBIDDEN


def plain(value: Number, digits: int = 5) -> str:
    """A coordinate as text, to a hundred-thousandth, without idle zeros.

    Args:
        value: the coordinate [in its own unit]
        digits: how many are kept after the point

    Returns:
        Text such as `18.5625`.

    Source: common practice.
    """
    text = f"{value:.{digits}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


@dataclass(frozen=True, slots=True)
class Link:
    """Where a place in a drawing leads.

    Attributes:
        code: what stands there: the code of an opening or row, or the name of a part
        address: where it leads
        words: what it is called for those who cannot see it
    """

    code: str
    address: str
    words: str


class Sheet:
    """A drawing while it is being made: lines by kind, lettering, how far they reach, and what they say.

    Attributes:
        scale: inches of the work for one inch of paper
        unit: the shop's unit, in which sizes are lettered
        letters: height of the lettering [in of the work]
    """

    def __init__(self, scale: Number, unit: LengthUnit) -> None:
        self.scale = scale
        self.unit = unit
        self.letters = LETTERS * scale
        # Strokes and lettering are many, and no size is read off them: 1/400 in of paper is fine enough.
        self._digits = 2 if scale >= 2 else 3
        # Written out at the end: most drawings are tried in several scales before one fits.
        self._lines: dict[Line, list[Callable[[], str]]] = {line: [] for line in Line}
        self._words: list[str] = []
        self._links: list[str] = []
        self._said: list[str] = []
        self._lettered: list[Bounds] = []
        self._left = self._bottom = float("inf")
        self._right = self._top = float("-inf")

    @property
    def reach(self) -> Bounds:
        """How far everything drawn so far reaches."""
        return self._left, self._bottom, self._right, self._top

    @property
    def lettered(self) -> tuple[Bounds, ...]:
        """The patches that lettering takes up, in the order in which it was lettered."""
        return tuple(self._lettered)

    @property
    def said(self) -> tuple[str, ...]:
        """What the drawing tells in words, for those who cannot see it."""
        return tuple(self._said)

    def fresh(self) -> "Sheet":
        """An empty sheet in the same scale and unit: to see how much room something takes."""
        return Sheet(self.scale, self.unit)

    def add(self, other: "Sheet") -> None:
        """Adds everything that another sheet in the same scale holds, where it stands there."""
        for line, drawn in other._lines.items():
            self._lines[line] += drawn
        self._words += other._words
        self._said += other._said
        self._lettered += other._lettered
        self._links += other._links
        left, bottom, right, top = other.reach
        if left <= right:
            self._reach((left, bottom))
            self._reach((right, top))

    def size(self, inches: Inches) -> str:
        """A size as this shop reads it: fractions of an inch, or millimetres."""
        if self.unit is LengthUnit.MILLIMETRE:
            return show_mm(inches).removesuffix(".0")
        return show(inches)

    def say(self, words: str) -> None:
        """Adds a sentence, or a part of one, to what the drawing tells in words."""
        self._said.append(written(words))

    def width_of(self, words: str, size: Number = 1.0) -> Inches:
        """How wide lettering comes out, with a little to spare [in of the work]."""
        return sum(map(_width, words)) * size * self.letters

    def patch(self, at: Point, words: str, anchor: str = "middle", size: Number = 1.0) -> Bounds:
        """The patch that level lettering takes up."""
        long, half = self.width_of(words, size), 0.5 * size * self.letters
        left = at[0] - {"start": 0.0, "middle": long / 2, "end": long}[anchor]
        return left, at[1] - half, left + long, at[1] + half

    def is_free(self, patch: Bounds) -> bool:
        """Has nothing been lettered there yet?"""
        left, bottom, right, top = patch
        return not any(
            left < there[2] and there[0] < right and bottom < there[3] and there[1] < top
            for there in self._lettered
        )

    def between_letters(
        self, start: Inches, end: Inches, at: Inches, *, upright: bool = False
    ) -> list[tuple[Point, Point]]:
        """A level stroke at a height, or an upright one so far across, left open where it meets lettering."""
        along, across = (1, 0) if upright else (0, 1)
        low, high = min(start, end), max(start, end)
        spare, strokes = 0.15 * self.letters, list[tuple[Inches, Inches]]()
        for patch in sorted(self._lettered, key=lambda patch: patch[along]):
            first, last = patch[along] - spare, patch[along + 2] + spare
            if patch[across] - spare < at < patch[across + 2] + spare and first < high and last > low:
                if first > low:
                    strokes.append((low, first))
                low = last
        strokes += [(low, high)] if low < high else []
        return [((at, one), (at, two)) if upright else ((one, at), (two, at)) for one, two in strokes]

    def polygon(self, line: Line, corners: Iterable[Point], code: str = "") -> None:
        """A closed outline; a code lets a page find the part again."""
        held = self._reached(corners)
        self._put(line, lambda: f'<polygon{_coded(code)} points="{_points(held)}"/>')

    def polyline(self, line: Line, points: Iterable[Point]) -> None:
        """A line through points."""
        held = self._reached(points)
        self._put(line, lambda: f'<polyline points="{_points(held)}"/>')

    def strokes(self, line: Line, strokes: Iterable[tuple[Point, Point]]) -> None:
        """Many straight strokes that belong together."""
        held = list(strokes)
        if held:
            self._reached(point for stroke in held for point in stroke)
            self._put(line, lambda: f'<path d="{_path(held, self._digits)}"/>')

    def fill(
        self, line: Line, corners: Iterable[Point], strokes: Callable[[], Iterable[tuple[Point, Point]]]
    ) -> None:
        """Strokes within an outline, reckoned once the drawing is written out."""
        self._reached(corners)

        def path() -> str:
            held = list(strokes())
            return f'<path d="{_path(held, self._digits)}"/>' if held else ""

        self._put(line, path)

    def rectangle(self, line: Line, corner: Point, width: Inches, height: Inches, code: str = "") -> None:
        """A rectangle by its lower left corner."""
        self._reach(corner)
        self._reach((corner[0] + width, corner[1] + height))

        def rect() -> str:
            where = f'x="{plain(corner[0])}" y="{plain(-corner[1] - height)}"'
            return f'<rect{_coded(code)} {where} width="{plain(width)}" height="{plain(height)}"/>'

        self._put(line, rect)

    def link(self, corner: Point, width: Inches, height: Inches, link: "Link") -> None:
        """A place over everything drawn that leads elsewhere; the drawing does not reach farther for it."""
        where = f'x="{plain(corner[0])}" y="{plain(-corner[1] - height)}"'
        named = f"data-pick={quoteattr(link.code)} aria-label={quoteattr(written(link.words))}"
        size = f'width="{plain(width)}" height="{plain(height)}"'
        self._links.append(f"<a href={quoteattr(link.address)} {named}><rect {where} {size}/></a>")

    @property
    def has_links(self) -> bool:
        """Does a place in it lead elsewhere?"""
        return bool(self._links)

    def circle(self, line: Line, centre: Point, radius: Inches) -> None:
        """A circle."""
        self._reach((centre[0] - radius, centre[1] - radius))
        self._reach((centre[0] + radius, centre[1] + radius))
        self._put(
            line, lambda: f'<circle cx="{plain(centre[0])}" cy="{plain(-centre[1])}" r="{plain(radius)}"/>'
        )

    def letter(
        self,
        at: Point,
        words: str,
        anchor: str = "middle",
        *,
        size: Number = 1.0,
        upright: bool = False,
        inches: Inches | None = None,
        bold: bool = False,
    ) -> None:
        """Words with their middle at a height, level or turned to read upwards; a size keeps its number."""
        words = written(words)
        patch = self.patch(at, words, anchor, size)
        if upright:
            left, bottom, right, top = (side - at[axis % 2] for axis, side in enumerate(patch))
            patch = (at[0] + bottom, at[1] + left, at[0] + top, at[1] + right)
        self._lettered.append(patch)
        self._reach(patch[:2])
        self._reach(patch[2:])
        # A digit is about 0.72 of the lettering's size high; half of that below the middle is the baseline.
        drop = 0.36 * size * self.letters
        x, y = (at[0] + drop, at[1]) if upright else (at[0], at[1] - drop)
        across, down = plain(x, self._digits), plain(-y, self._digits)
        marks = [f'x="{across}" y="{down}"']
        if anchor != "middle":
            marks.append(f'text-anchor="{anchor}"')
        if size != 1:
            marks.append(f'font-size="{plain(size * self.letters)}"')
        if upright:
            marks.append(f'transform="rotate(-90 {across} {down})"')
        if bold:
            marks.append('font-weight="bold"')
        if inches is not None:
            marks.append(f'data-inches="{plain(inches)}"')
        self._words.append(f"<text {' '.join(marks)}>{escape(words)}</text>")

    def body(self) -> str:
        """Everything drawn, one group for each kind of line, lettering on top."""
        groups = [self._group(line, drawn) for line, drawn in self._lines.items() if drawn]
        letters = f'font-size="{plain(self.letters)}" text-anchor="middle" fill="currentColor"'
        links = (
            ['<g class="picks" fill="none" pointer-events="all">', *self._links, "</g>"]
            if self._links
            else []
        )
        return "\n".join([*groups, f'<g class="lettering" {letters}>', *self._words, "</g>", *links])

    def _group(self, line: Line, drawn: list[Callable[[], str]]) -> str:
        look = f'fill="none" stroke="currentColor" stroke-width="{plain(WEIGHTS[line] * self.scale)}"'
        if line is Line.TONE:
            look = f'fill="currentColor" fill-opacity="{TONE_SHADE}"'
        if line is Line.HIDDEN:
            look += f' stroke-dasharray="{plain(DASH * self.scale)} {plain(DASH_GAP * self.scale)}"'
        return "\n".join(
            [
                f'<g class="{line}" {look} stroke-linejoin="round">',
                *filter(None, (each() for each in drawn)),
                "</g>",
            ]
        )

    def _put(self, line: Line, element: Callable[[], str]) -> None:
        self._lines[line].append(element)

    def _reached(self, points: Iterable[Point]) -> list[Point]:
        """Points, once the drawing is known to reach them."""
        held = list(points)
        if held:
            xs, ys = [x for x, _ in held], [y for _, y in held]
            self._reach((min(xs), min(ys)))
            self._reach((max(xs), max(ys)))
        return held

    def _reach(self, point: Point) -> None:
        x, y = point
        self._left, self._right = min(self._left, x), max(self._right, x)
        self._bottom, self._top = min(self._bottom, y), max(self._top, y)


def _points(points: Iterable[Point]) -> str:
    return " ".join(map(_point, points))


def _path(strokes: Iterable[tuple[Point, Point]], digits: int) -> str:
    parts, last = [], ""
    for start, end in strokes:
        first, far = _point(start, digits), _point(end, digits)
        parts.append(f"L{far}" if first == last else f"M{first}L{far}")
        last = far
    return "".join(parts)


def _point(point: Point, digits: int = 5) -> str:
    return f"{plain(point[0], digits)},{plain(-point[1], digits)}"


@cache
def _width(sign: str) -> Number:
    if sign in NARROW_SIGNS:
        return NARROW
    # Letters of the east stand in a square of their own.
    return CAPITAL if sign.isupper() else USUAL if ord(sign) < 0x1100 or 0x2000 <= ord(sign) < 0x2E80 else 1.1


def _coded(code: str) -> str:
    return f" data-code={quoteattr(written(code))}" if code else ""
