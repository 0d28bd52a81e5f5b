"""Templates in full size as PDF: every line where it is on the wood, to be checked against two bars."""

import re
from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from casewright.joinery.solid import Flat, Marked, Strip, Stroke
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.measure.units import Inches
from casewright.papers.cleaning import name, words
from casewright.papers.full_size import ABOVE, NamedStrip, Tile, sheets
from casewright.papers.head import PaperHead, head_data, loose_head
from casewright.papers.pdf import Paper, render
from casewright.papers.writing import Writing

APART = 0.11
"""Two figures nearer than this would run into each other; the second is set further out [in]."""
BETWEEN = 0.12
"""Room between what is said of one strip and of the next [in]."""
SIGNS = 18.0
"""Small signs in an inch, at the least."""
LINES = 2
"""Lines for the marks of the parts that a strip is laid on."""
CATALOGUE = re.compile(
    rb"\n(\d+) 0 obj\n(<</Type/Catalog(?:(?!endobj).)*/ViewerPreferences<<)(.*?)\nendobj", re.DOTALL
)
TRAILER = re.compile(rb"trailer\n<<(.*)>>\nstartxref\n(\d+)\n%%EOF\s*\Z", re.DOTALL)
"""The catalogue and the end of a PDF as they are set here: a plain table of parts, no streams of objects."""


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
    title: str,
    strips: Iterable[NamedStrip],
    unit: LengthUnit,
    paper: Paper = Paper.LETTER,
    what: str = "Joint",
) -> bytes:
    """Templates that belong to no job: of one joint, or of the pulls of a piece.

    Args:
        title: what they are of
        strips: what is marked, and on which parts
        unit: in which sizes are written
        paper: the sheet
        what: what kind of thing that is

    Returns:
        A PDF in which an inch is an inch, if it is printed as it is.
    """
    head = loose_head("Template in full size", title, unit, what)
    by_board = (replace(strip, title="") for strip in strips)
    return _as_it_is(render("full_size", head | _sheets(by_board, unit), paper))


def full_size_data(head: PaperHead, strips: Iterable[NamedStrip]) -> dict[str, Any]:
    """The templates as they are printed.

    Args:
        head: who, what and when
        strips: what is marked, and on which parts

    Returns:
        Columns of tiles for each sheet; places in inches, to the right and down from the upper left corner of
        a tile.
    """
    return head_data(head, "Templates in full size") | _sheets(strips, head.unit)


def _as_it_is(pdf: bytes) -> bytes:
    """Asks whoever prints it not to fit it to the paper: the catalogue is written anew behind the file.

    Source: ISO 32000-1, 7.5.6, incremental updates, and 12.2, PrintScaling.
    """
    catalogue, trailer = CATALOGUE.search(pdf), TRAILER.search(pdf)
    if catalogue is None or trailer is None:
        raise ValueError("This PDF has no catalogue or no plain table of its parts.")
    (number, before, after), (held, table) = catalogue.groups(), trailer.groups()
    body = pdf if pdf.endswith(b"\n") else pdf + b"\n"
    anew = b"%b 0 obj\n%b/PrintScaling/None%b\nendobj\n" % (number, before, after)
    changed = b"xref\n%b 1\n%010d 00000 n\r\ntrailer\n<<%b/Prev %b>>\n" % (number, len(body), held, table)
    return b"%b%b%bstartxref\n%d\n%%%%EOF\n" % (body, anew, changed, len(body) + len(anew))


def _sheets(strips: Iterable[NamedStrip], unit: LengthUnit) -> dict[str, Any]:
    writing = Writing(unit=unit)
    found = [[[_tile(tile, writing) for tile in column] for column in sheet] for sheet in sheets(strips)]
    return {"sheets": found, "above": ABOVE}


def _tile(tile: Tile, writing: Writing) -> dict[str, Any]:
    strip = tile.of.strip
    room = tile.width - BETWEEN
    is_first, is_last = tile.low < TOLERANCE, tile.high > strip.height - TOLERANCE
    return {
        "title": name(tile.of.title or strip.board.capitalize()),
        "part": "" if tile.count == 1 else f"part {tile.number} of {tile.count}",
        "serves": words(_serves(tile.of.serves, room)),
        "blanks": "" if tile.of.serves else "hand" if strip.is_handed else "part",
        "face": name(f"{strip.board}, {strip.placed}"),
        "turned": _turned(strip) if strip.is_handed else "",
        "width": tile.right - tile.left,
        "room": tile.width,
        "down": tile.height,
        "said_room": room,
        "height": tile.high - tile.low,
        "is_first": is_first,
        "is_last": is_last,
        "goes_on_right": tile.goes_on_right,
        "at_edge": tile.begins_at_edge,
        "foot": name(
            strip.foot if is_first else f"join here to the part before, at {writing.size(tile.low)}"
        ),
        "goes_on": "" if is_last else f"goes on above at {writing.size(tile.high)}",
        "begins": words(_begins(tile, writing)),
        "uprights": name(_uprights(tile, writing)),
        "waste": [[_place(point, tile) for point in outline] for outline in tile.waste],
        "gauged": [_line(line, tile) for line in tile.lines if line.stroke is Stroke.GAUGE],
        "sawn": [_line(line, tile) for line in tile.lines if line.stroke is not Stroke.GAUGE],
        "figures": _figures(tile, writing),
        "alt": _alt(tile, writing),
    }


def _serves(serves: str, room: Inches) -> str:
    """Marks of the parts, as many as go into some lines; of more it says how many."""
    marks, most = serves.split(", "), int(LINES * room * SIGNS)
    if len(serves) <= most:
        return serves
    kept: list[str] = []
    while len(", ".join([*kept, marks[len(kept)]])) + len(" and 99 more") <= most:
        kept.append(marks[len(kept)])
    return f"{', '.join(kept)} and {len(marks) - len(kept)} more"


def _turned(strip: Strip) -> str:
    """How the strip is laid on the part of the other hand."""
    left = f", its {strip.left} at the right" if strip.left else ""
    return f"Other hand: turn it over, print to the wood; {strip.face}{left}."


def _begins(tile: Tile, writing: Writing) -> str:
    """How far from the edge of the board a tile begins, and where one is joined to its side."""
    unit, found = writing.unit.value, []
    if not tile.begins_at_edge:
        strip = tile.of.strip
        where = f"the {strip.left} of the {strip.board}" if strip.left else "the strip's left edge"
        how = "joins the part at its left" if tile.follows else "begins"
        found.append(f"{how} {writing.size(tile.left)} {unit} from {where}")
    if tile.goes_on_right:
        found.append(f"goes on at the right at {writing.size(tile.right)} {unit}")
    said = "; ".join(found)
    return f"{said[0].upper()}{said[1:]}." if said else ""


def _uprights(tile: Tile, writing: Writing) -> str:
    """What stands how far from the left, for the lines that run up the strip."""
    places = []
    for line in tile.uprights:
        label, size = in_unit(line.label, writing.unit), writing.size(line.start[0])
        places.append(f"{label}: {size}" if label else size)
    said = ", ".join(places)
    return f"From the {tile.of.strip.left or 'left'}: {said}" if said else ""


def _place(point: Flat, tile: Tile) -> list[Inches]:
    return [point[0] - tile.left, tile.high - point[1]]


def _line(line: Marked, tile: Tile) -> list[list[Inches]]:
    return [_place(line.start, tile), _place(line.end, tile)]


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
    strip = tile.of.strip
    return words(f"{strip.board}, {strip.placed}: lines at {said or 'no height'} from the {strip.foot}")
