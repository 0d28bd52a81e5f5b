"""Templates of a joint of no job: bars on each sheet, an edge named on each strip, nothing crowded."""

import io
from itertools import permutations

import pytest
from pypdf import PdfReader

from casewright.joinery.kinds import kinds
from casewright.measure.lengths import LengthUnit
from casewright.papers.full_size import NamedStrip, sheets
from casewright.papers.full_size_pdf import loose_template_pdf
from casewright.papers.pdf import Paper
from joints import example
from pdf_lines import POINTS, lines_in
from printed import pages_of, plain

KINDS = sorted(kinds())
SHEETS = [(LengthUnit.INCH, Paper.LETTER), (LengthUnit.MILLIMETRE, Paper.A4)]
WITHIN = 0.05 / 25.4 * POINTS
"""Five hundredths of a millimetre [pt]."""
NARROW = 2.8
"""Small letters are at least so wide, one with another [pt]."""
FEET = {
    "batten": ["outer edge", "end of the tongue"],
    "bottom-groove": ["bottom edge", "bottom edge"],
    "box": ["bottom edge", "bottom edge"],
    "carcase": ["front edge", "front edge"],
    "cross-lap": ["front edge", "front edge"],
    "dowels": ["front edge", "front edge"],
    "edge-joint": ["end of the board", "end of the board", "end of the board"],
    "frame-tenon": ["face", "inner edge", "face"],
    "half-blind": ["bottom edge", "bottom edge"],
    "hinge": ["lower end", "lower edge of the opening"],
    "housing": ["lower wall of the housing", "front edge"],
    "leg-tenon": ["outside face", "lower edge", "outside face"],
    "lock-rabbet": ["bottom edge", "bottom edge"],
    "loose-tenon": ["front edge", "front edge"],
    "pinned-rabbet": ["bottom edge", "bottom edge"],
    "sliding": ["lower face", "lower face of the divider"],
    "through": ["bottom edge", "bottom edge"],
}


def strips(kind):
    return [NamedStrip(strip=each, title="", serves="") for each in example(kind).joint.shape.strips]


def template(kind, unit=LengthUnit.INCH, paper=Paper.LETTER):
    return loose_template_pdf(kinds()[kind].title, strips(kind), unit, paper)


@pytest.mark.parametrize(("unit", "paper"), SHEETS)
@pytest.mark.parametrize("kind", KINDS)
def test_each_sheet_bears_both_bars_and_a_strip(kind, unit, paper):
    pages = PdfReader(io.BytesIO(template(kind, unit, paper))).pages
    laid_out = sheets(strips(kind))

    assert len(pages) == len(laid_out)
    for page, sheet in zip(pages, laid_out, strict=True):
        long = [length(line) for line in lines_in(page)]
        assert min(abs(each - 4 * POINTS) for each in long) < WITHIN
        assert min(abs(each - 100 / 25.4 * POINTS) for each in long) < WITHIN
        assert len(outlines(page, sheet)) == sum(map(len, sheet)) > 0


@pytest.mark.parametrize(("unit", "paper"), SHEETS)
@pytest.mark.parametrize("kind", KINDS)
def test_no_letter_stands_in_a_strip_or_off_the_sheet(kind, unit, paper):
    pages = PdfReader(io.BytesIO(template(kind, unit, paper))).pages

    for page, sheet in zip(pages, sheets(strips(kind)), strict=True):
        boxes, letters = outlines(page, sheet), places_of(page)
        for text, x, y in letters:
            assert 0 < y < float(page.mediabox.height) - 0.3 * POINTS, text
            assert not any(
                left - 1 < x < right - 1 and low < y + 2.5 and y < high for left, right, low, high in boxes
            ), text
        for (text, x, y), (other, begins, on) in permutations(letters, 2):
            if x <= begins and abs(y - on) < 4:
                assert x + len(text) * NARROW < begins, (text, other)


@pytest.mark.parametrize("kind", KINDS)
def test_each_strip_names_its_own_reference_edge(kind):
    assert [each.strip.foot for each in strips(kind)] == FEET[kind]
    said = " ".join(pages_of(template(kind)))
    for each in strips(kind):
        assert each.strip.foot in said
        assert f"{each.strip.board}, {each.strip.face}, its {each.strip.left} at the left" in said
    if "bottom edge" not in FEET[kind]:
        assert "bottom edge" not in said


@pytest.mark.parametrize("kind", KINDS)
def test_a_strip_has_lines_for_its_part_and_says_how_it_serves_the_other_hand(kind):
    said = " ".join(pages_of(template(kind)))
    tiles = [tile for sheet in sheets(strips(kind)) for column in sheet for tile in column]

    assert said.count("Part ") == len(tiles)
    handed = [tile.of.strip for tile in tiles if tile.of.strip.is_handed]
    assert said.count("left / right") == len(handed)
    for strip in handed:
        turned = f"turn it over, print to the wood; {strip.face}, its {strip.left} at the right."
        assert turned in said


def test_back_boards_have_no_other_hand():
    assert "Other hand" not in " ".join(pages_of(template("edge-joint")))


def test_a_drawers_joint_goes_on_one_sheet():
    assert len(pages_of(template("half-blind"))) == 1


def length(line):
    (x0, y0), (x1, y1) = line
    return ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5


def outlines(page, sheet):
    """Where each strip of a sheet stands: from where to where to the right and up [pt]."""
    lines, found = lines_in(page), []
    for tile in (tile for column in sheet for tile in column):
        wide, high = (tile.right - tile.left) * POINTS, (tile.high - tile.low) * POINTS
        feet = [line for line in lines if is_level(line) and abs(length(line) - wide) < WITHIN]
        edges = [line for line in lines if is_upright(line) and abs(length(line) - high) < WITHIN]
        for foot in feet:
            left, low = min(x for x, _ in foot), foot[0][1]
            box = (left, left + wide, low, low + high)
            stands = any(
                abs(edge[0][0] - left) < WITHIN and abs(min(y for _, y in edge) - low) < WITHIN
                for edge in edges
            )
            if stands and all(abs(left - each[0]) + abs(low - each[2]) > 1 for each in found):
                found.append(box)
                break
    return found


def is_level(line):
    return abs(line[0][1] - line[1][1]) < WITHIN


def is_upright(line):
    return abs(line[0][0] - line[1][0]) < WITHIN


def places_of(page):
    """Each run of letters with its place from the lower left [pt]."""
    found = []

    def visit(text, user, line, _font, _size):
        if text.strip():
            x = user[0] * line[4] + user[2] * line[5] + user[4]
            y = user[1] * line[4] + user[3] * line[5] + user[5]
            found.append((plain(text).strip(), x, y))

    page.extract_text(visitor_text=visit)
    return found
