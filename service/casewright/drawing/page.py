"""A finished drawing: fitted to the paper in a usual scale, titled, and written as SVG."""

import re
import textwrap
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

from casewright.drawing.canvas import Point, Sheet, plain, written
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Inches, Number

PAPER = (7.0, 9.5)
"""What a letter sheet has between margins of 3/4 in, and an A4 sheet between margins of 16 mm [in]."""
WIDE = 8.5
"""A drawing that is wider on paper scrolls in a page that is narrow [in]."""
KEPT = 256
"""Drawings that are kept: a page of many joints is looked at again and again while one of them is chosen."""
MARGIN = 1 / 8
LINE = 1.3
"""From one line of words to the next [letters]."""
LEAST_SIGNS = 16
SMALL_ENOUGH = 3.0
"""Work that is no larger than this on paper is not made smaller for the sake of its dimensions [in]."""
NOT_MUCH = 1.15
INK, GROUND = "#1a1a1a", "#ffffff"
SCALES = {
    LengthUnit.INCH: (1 / 4, 1 / 2, 1, 2, 3, 4, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48),
    LengthUnit.MILLIMETRE: (1 / 5, 1 / 2, 1, 2, 2.5, 5, 7.5, 10, 12.5, 20, 25, 50),
}
"""Scales that a foot rule, or the scales of a triangular metric rule, can be laid on (common practice)."""
NOT_IN_AN_ID = re.compile(r"[^A-Za-z0-9_-]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A drawing, ready to be written.

    Attributes:
        name: short name, from which the ids within a page are made
        title: what it shows
        description: what it shows in words, with the same figures
        scale: inches of the work for one inch of paper
        left: left edge [in of the work]
        top: upper edge, counted down as in SVG [in of the work]
        width: width [in of the work]
        height: height [in of the work]
        body: everything drawn, as SVG
        has_links: does a place in it lead elsewhere?
    """

    name: str
    title: str
    description: str
    scale: Number
    left: Inches
    top: Inches
    width: Inches
    height: Inches
    body: str
    has_links: bool = False

    def svg(self, *, standalone: bool = False, prefix: str = "") -> str:
        """The drawing as SVG: to stand inside a page in the page's own colours, or as a file of its own.

        Args:
            standalone: a whole file, dark on white; else the element alone, drawn in the colour of the text
            prefix: goes before the ids, so that several drawings can stand on one page

        Returns:
            The text; without styles or scripts, so that a strict content security policy lets it pass.

        Source: SVG 2, sections 5.8 (titles and descriptions) and 8.2 (viewBox); WAI-ARIA Graphics.
        """
        known = NOT_IN_AN_ID.sub("-", f"{prefix}-{self.name}" if prefix else self.name)
        size = f'width="{plain(self.width / self.scale)}in" height="{plain(self.height / self.scale)}in"'
        seen = " ".join(plain(value) for value in (self.left, self.top, self.width, self.height))
        role = "group" if self.has_links else "img"
        told = f'role="{role}" aria-labelledby="{known}-title {known}-desc"'
        scale = f'data-scale="{plain(self.scale)}"'
        colours = f' color="{INK}" font-family="Helvetica, Arial, sans-serif"' if standalone else ""
        lines = [
            f'<svg xmlns="http://www.w3.org/2000/svg" class="{self._kind}" {size} viewBox="{seen}" '
            f"{told} {scale}{colours}>",
            f'<title id="{known}-title">{escape(self.title)}</title>',
            f'<desc id="{known}-desc">{escape(self.description)}</desc>',
            *([self._ground()] if standalone else []),
            self.body,
            "</svg>",
        ]
        return "\n".join(['<?xml version="1.0" encoding="UTF-8"?>', *lines, ""] if standalone else lines)

    @property
    def _kind(self) -> str:
        """What it is to a page, which draws a wide one smaller only as far as it is still read."""
        return "drawing wide" if self.width / self.scale > WIDE else "drawing"

    def _ground(self) -> str:
        where = f'x="{plain(self.left)}" y="{plain(self.top)}"'
        return f'<rect {where} width="{plain(self.width)}" height="{plain(self.height)}" fill="{GROUND}"/>'


def fitted(
    draw: Callable[[Sheet], None],
    unit: LengthUnit,
    *,
    name: str,
    title: str,
    subject: str,
    work: tuple[Inches, Inches],
    lettered: bool = True,
) -> Drawing:
    """A drawing in the largest usual scale in which it fits the paper, dimensions and all.

    Args:
        draw: draws everything but the title on a sheet
        unit: the shop's unit
        name: short name of the drawing
        title: lettered above it, first line
        subject: what the drawing shows, second line
        work: width and height of what is drawn at the least, so that no scale is tried that cannot do [in]
        lettered: whether title, subject and scale stand above it; a page or paper may say them in its own way

    Returns:
        The drawing.

    Source: common practice of shop drawing.
    """
    sheet = _best([*_tried(draw, unit, (title, subject) if lettered else None, work)])
    left, bottom, right, top = _with_margin(sheet)
    return Drawing(
        name=name,
        title=written(f"{title}: {subject[:1].lower()}{subject[1:]}"),
        description=f"Drawn to {_scaled(sheet)}. {'; '.join(sheet.said)}.",
        scale=sheet.scale,
        left=left,
        top=-top,
        width=right - left,
        height=top - bottom,
        body=sheet.body(),
        has_links=sheet.has_links,
    )


def _tried(
    draw: Callable[[Sheet], None],
    unit: LengthUnit,
    title: tuple[str, str] | None,
    work: tuple[Inches, Inches],
) -> Iterator[Sheet]:
    """The drawing in one scale after the other, until it fits or the work itself has become small."""
    for scale in _scales(unit):
        if work[0] / scale >= PAPER[0] or work[1] / scale >= PAPER[1]:
            continue
        sheet = Sheet(scale, unit)
        draw(sheet)
        if title is not None:
            _letter_title(sheet, title[0], f"{title[1]}, {_scaled(sheet)}")
        yield sheet
        if _excess(sheet) <= 1 or max(work) / scale < SMALL_ENOUGH:
            return


def _best(tried: list[Sheet]) -> Sheet:
    """The last if it fits; if none does, the largest that is not much larger on paper than the smallest."""
    if _excess(tried[-1]) <= 1:
        return tried[-1]
    least = min(map(_excess, tried))
    return next(sheet for sheet in tried if _excess(sheet) <= NOT_MUCH * least)


def _excess(sheet: Sheet) -> Number:
    """How large a drawing is as a part of the paper, in the direction in which it is tighter."""
    left, bottom, right, top = _with_margin(sheet)
    return max((right - left) / sheet.scale / PAPER[0], (top - bottom) / sheet.scale / PAPER[1])


def _scaled(sheet: Sheet) -> str:
    return f"scale {_ratio(sheet.scale)}, {_unit_name(sheet.unit)}"


def _scales(unit: LengthUnit) -> Iterator[Number]:
    """The usual scales, and ever smaller ones for whatever is larger than furniture."""
    yield from SCALES[unit]
    scale = SCALES[unit][-1]
    while True:
        scale *= 2
        yield scale


def _ratio(scale: Number) -> str:
    """The scale as it is written: 1:8, or 2:1 for what is drawn larger than it is."""
    return f"1:{scale:g}" if scale >= 1 else f"{1 / scale:g}:1"


def _unit_name(unit: LengthUnit) -> str:
    return "millimetres" if unit is LengthUnit.MILLIMETRE else "inches"


def letter_lines(
    sheet: Sheet, words: str, corner: Point, width: Inches, *, upwards: bool = False, bold: bool = False
) -> Inches:
    """Letters words on as many lines as they take.

    Args:
        sheet: what they are lettered on
        words: the words
        corner: where the first line begins, or the last when the lines are stacked upwards [in]
        width: how wide a line may get [in]
        upwards: whether the last line stands at the corner and the others above it
        bold: whether to letter them bold

    Returns:
        The height at which the next line would stand [in]

    Source: common practice.
    """
    words = written(words)
    signs = int(width * len(words) / (sheet.width_of(words) or 1.0))
    lines = textwrap.wrap(words, max(LEAST_SIGNS, signs))
    while signs > LEAST_SIGNS and any(sheet.width_of(line) > width for line in lines):
        signs -= 1
        lines = textwrap.wrap(words, signs)
    left, height = corner
    for line in reversed(lines) if upwards else lines:
        sheet.letter((left, height), line, "start", bold=bold)
        height += (1 if upwards else -1) * LINE * sheet.letters
    return height


def letter_list(sheet: Sheet, heading: str, items: Sequence[str], corner: Point, width: Inches) -> None:
    """Letters a heading and what follows it on as many lines as they take, without parting one of them.

    Args:
        sheet: what they are lettered on
        heading: before the first
        items: what is told, a comma behind each but the last
        corner: where the first line begins [in]
        width: how wide a line may get [in]

    Source: common practice.
    """
    (left, height), line = corner, heading
    for told in (f" {each}," for each in items):
        if sheet.width_of(line + told) > width and line:
            sheet.letter((left, height), line.strip(), "start")
            height, line = height - LINE * sheet.letters, ""
        line += told
    sheet.letter((left, height), line.strip(" ,"), "start")
    sheet.say(f"{heading} {', '.join(items)}")


def _letter_title(sheet: Sheet, title: str, subject: str) -> None:
    left, _, right, top = sheet.reach
    height = top + 1.2 * sheet.letters
    height = letter_lines(sheet, subject, (left, height), right - left, upwards=True)
    letter_lines(sheet, title, (left, height), right - left, upwards=True, bold=True)


def _with_margin(sheet: Sheet) -> tuple[Inches, Inches, Inches, Inches]:
    left, bottom, right, top = sheet.reach
    margin = MARGIN * sheet.scale
    return left - margin, bottom - margin, right + margin, top + margin
