"""Templates in full size as PDF: every line where it is on the wood, to be checked against two bars."""

import io
from collections.abc import Iterable
from typing import Any

from casewright.joinery.solid import Flat, Marked, Stroke
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.measure.units import Inches
from casewright.papers.cleaning import name, words
from casewright.papers.full_size import NamedStrip, Tile, sheets
from casewright.papers.head import PaperHead, head_data, loose_head
from casewright.papers.pdf import Paper, render
from casewright.papers.writing import Writing

APART = 0.11
"""Two figures nearer than this would run into each other; the second is set further out [in]."""


def full_size_pdf(head: PaperHead, strips: Iterable[NamedStrip], paper: Paper = Paper.LETTER) -> bytes:
    """Templates to be cut out.

    Args:
        head: who, what and when
        strips: what is marked, and on which parts
        paper: the sheet

    Returns:
        A PDF in which an inch is an inch, if it is printed as it is.
    """
    return _as_it_is(render("full_size", full_size_data(head, strips), paper))


def loose_template_pdf(
    title: str, strips: Iterable[NamedStrip], unit: LengthUnit, paper: Paper = Paper.LETTER
) -> bytes:
    """Templates of one joint that belongs to no job.

    Args:
        title: what the joint is
        strips: what is marked, and on which parts
        unit: in which sizes are written
        paper: the sheet

    Returns:
        A PDF in which an inch is an inch, if it is printed as it is.
    """
    heading = "Template in full size"
    return _as_it_is(render("full_size", loose_head(heading, title, unit) | _sheets(strips, unit), paper))


def full_size_data(head: PaperHead, strips: Iterable[NamedStrip]) -> dict[str, Any]:
    """The templates as they are printed.

    Args:
        head: who, what and when
        strips: what is marked, and on which parts

    Returns:
        Sheets of tiles; places in inches, to the right and down from the upper left corner of a tile.
    """
    return head_data(head, "Templates in full size") | _sheets(strips, head.unit)


def _as_it_is(pdf: bytes) -> bytes:
    """Asks whoever prints it not to fit it to the paper.

    Source: ISO 32000-1, 12.2, PrintScaling.
    """
    from pypdf import PdfWriter  # noqa: PLC0415 - for those who ask alone
    from pypdf.generic import DictionaryObject, NameObject  # noqa: PLC0415

    writer = PdfWriter(clone_from=io.BytesIO(pdf))
    held = DictionaryObject(writer.root_object.get("/ViewerPreferences", {}))
    held[NameObject("/PrintScaling")] = NameObject("/None")
    writer.root_object[NameObject("/ViewerPreferences")] = held
    written = io.BytesIO()
    writer.write(written)
    return written.getvalue()


def _sheets(strips: Iterable[NamedStrip], unit: LengthUnit) -> dict[str, Any]:
    writing = Writing(unit=unit)
    return {"sheets": [[_tile(tile, writing) for tile in sheet] for sheet in sheets(strips)]}


def _tile(tile: Tile, writing: Writing) -> dict[str, Any]:
    strip = tile.of.strip
    whole = tile.count == 1
    return {
        "title": name(tile.of.title),
        "serves": words(tile.of.serves),
        "face": name(f"{strip.board}, {strip.face}"),
        "part": "" if whole else f"part {tile.number} of {tile.count}",
        "width": strip.length,
        "room": tile.width,
        "height": tile.high - tile.low,
        "is_first": tile.number == 1,
        "is_last": tile.number == tile.count,
        "joins_below": "" if tile.number == 1 else writing.size(tile.low),
        "joins_above": "" if tile.number == tile.count else writing.size(tile.high),
        "waste": [[_place(point, tile) for point in outline] for outline in tile.waste],
        "lines": [_line(line, tile, writing) for line in tile.lines],
        "figures": _figures(tile, writing),
        "alt": _alt(tile, writing),
    }


def _place(point: Flat, tile: Tile) -> list[Inches]:
    return [point[0], tile.high - point[1]]


def _line(line: Marked, tile: Tile, writing: Writing) -> dict[str, Any]:
    return {
        "start": _place(line.start, tile),
        "end": _place(line.end, tile),
        "is_gauge": line.stroke is Stroke.GAUGE,
        "label": in_unit(line.label, writing.unit),
    }


def _figures(tile: Tile, writing: Writing) -> list[dict[str, Any]]:
    """Heights of the saw lines at the end of the board, set in turn nearer and farther where they crowd."""
    found: list[dict[str, Any]] = []
    last, out = float("-inf"), 0
    for height in tile.heights:
        out = 1 - out if height - last < APART else 0
        last = height
        found.append({"at": tile.high - height, "said": writing.size(height), "out": out})
    return found


def _alt(tile: Tile, writing: Writing) -> str:
    said = ", ".join(writing.size(height) for height in tile.heights)
    return words(f"{tile.of.strip.board}, {tile.of.strip.face}: lines at {said or 'no height'} from the edge")
