"""Templates of whole units: every mark lies on a sheet, and nothing lies outside it."""

import io
from dataclasses import replace

import pytest
from pypdf import PdfReader

from casewright.joinery.solid import Marked, Strip, Stroke, box
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.lengths import LengthUnit
from casewright.papers.full_size import ACROSS, DOWN, NamedStrip, sheets, tiled
from casewright.papers.full_size_pdf import full_size_data
from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_templates_pdf
from casewright.papers.pdf import Paper
from pdf_lines import POINTS, lines_in
from printed import head, pages_of
from units import built, chest, dresser

UNITS = {
    "dresser": dresser(),
    "wide dresser": dresser({"body.width": "60"}),
    "narrow dresser": dresser({"body.width": "30"}),
    "chest": chest(),
}
MARGIN = 0.6
"""What a printer leaves free at the left and right of these sheets [in]."""


def paper_of(name):
    return joint_cards_paper(head(), [built(UNITS[name])])


def far_mortise(length=21.0, first=17.5):
    """The inner edge of a stile whose mortise is far from its end."""
    lines = (
        Marked(stroke=Stroke.STOP, start=(first, 0.0), end=(first, 0.75), label="mortise"),
        Marked(stroke=Stroke.STOP, start=(length, 0.0), end=(length, 0.75)),
        Marked(stroke=Stroke.GAUGE, start=(first, 0.25), end=(length, 0.25)),
    )
    waste = (box((first, length), (0.25, 0.5)),)
    strip = Strip(
        board="stile", face="inner edge", foot="face", length=length, height=0.75, lines=lines, waste=waste
    )
    return NamedStrip(strip=strip, title="Runners", serves="A-D1-RF")


def marked_all_along(length=20.0, height=0.75):
    lines = (
        Marked(stroke=Stroke.GAUGE, start=(0.0, 0.25), end=(length, 0.25)),
        Marked(stroke=Stroke.SAW, start=(0.0, 0.0), end=(length, height)),
    )
    waste = (box((0.0, length), (0.25, 0.5)),)
    strip = Strip(board="rail", face="edge", length=length, height=height, lines=lines, waste=waste)
    return NamedStrip(strip=strip, title="Groove", serves="A-1")


def said(strip, unit=LengthUnit.INCH):
    data = full_size_data(head().model_copy(update={"unit": unit}), [strip])
    return [tile["begins"] for sheet in data["sheets"] for column in sheet for tile in column]


@pytest.mark.parametrize("name", sorted(UNITS))
def test_every_strip_of_every_joint_lies_wholly_on_its_sheets(name):
    named = [strip.named() for strip in paper_of(name).strips]

    laid_out = sheets(named)

    for sheet in laid_out:
        assert sum(max(tile.width for tile in column) for column in sheet) <= ACROSS + TOLERANCE
        assert all(sum(tile.height for tile in column) <= DOWN + TOLERANCE for column in sheet)
    on_sheets = [tile for sheet in laid_out for column in sheet for tile in column]
    assert len(on_sheets) == sum(len(tiled(strip)) for strip in named) > len(named) / 2
    for tile in on_sheets:
        places = [point for line in tile.lines for point in (line.start, line.end)]
        places += [point for outline in tile.waste for point in outline]
        assert all(tile.left - TOLERANCE <= x <= tile.right + TOLERANCE for x, _ in places)
        assert all(tile.low - TOLERANCE <= y <= tile.high + TOLERANCE for _, y in places)


@pytest.mark.parametrize("name", sorted(UNITS))
def test_every_mark_of_every_joint_is_on_some_sheet(name):
    for strip in (kept.named() for kept in paper_of(name).strips):
        for line in strip.strip.lines:
            assert any(covers(tile, point) for tile in tiled(strip) for point in [line.start])
            assert any(covers(tile, point) for tile in tiled(strip) for point in [line.end])


def covers(tile, point):
    x, y = point
    return (
        tile.left - TOLERANCE <= x <= tile.right + TOLERANCE
        and tile.low - TOLERANCE <= y <= tile.high + TOLERANCE
    )


@pytest.mark.parametrize("sheet", list(Paper))
def test_no_line_and_no_word_is_printed_past_the_margins(sheet):
    pdf = PdfReader(io.BytesIO(joint_templates_pdf(paper_of("dresser"), sheet)))

    for page in pdf.pages:
        left, right = MARGIN * POINTS - 1, float(page.mediabox.width) - MARGIN * POINTS + 1
        assert all(left <= x <= right for line in lines_in(page) for x, _ in line)


def test_the_far_mortises_of_the_worked_dresser_are_on_their_sheets():
    text = " ".join(pages_of(joint_templates_pdf(paper_of("dresser"))))

    assert "Begins 17 in from the end of the stile." in text
    assert "Begins 17-1/2 in from the end of the stile." in text
    assert "mortise: 17-1/2" in text
    assert "mortise: 18-1/4" in text


def test_a_strip_whose_marks_lie_far_from_its_end_begins_shortly_before_them():
    (tile,) = tiled(far_mortise())

    assert (tile.left, tile.right) == (17.0, 21.0)
    assert len(tile.lines) == 3
    assert not tile.begins_at_edge
    assert said(far_mortise()) == ["Begins 17 in from the end of the stile."]
    assert said(far_mortise(), LengthUnit.MILLIMETRE) == ["Begins 431.8 mm from the end of the stile."]


def test_a_short_mark_far_from_the_end_leaves_room_for_the_words():
    (tile,) = tiled(far_mortise(length=20.25, first=20.0))

    assert (tile.left, tile.right) == (18.0, 20.25)


def test_a_strip_whose_marks_begin_near_its_end_begins_there():
    (tile,) = tiled(far_mortise(length=4.0, first=1.5))

    assert (tile.left, tile.right) == (0.0, 4.0)
    assert tile.begins_at_edge
    assert said(far_mortise(length=4.0, first=1.5)) == [""]


def test_a_strip_that_is_marked_all_along_is_tiled_across_and_no_mark_is_lost():
    strip = marked_all_along()

    tiles = tiled(strip)

    assert [(tile.number, tile.count) for tile in tiles] == [(1, 4), (2, 4), (3, 4), (4, 4)]
    assert [tile.left for tile in tiles] == [0.0, 5.0, 10.0, 15.0]
    assert tiles[-1].right == 20.0
    for stroke in (Stroke.GAUGE, Stroke.SAW):
        parts = [line for tile in tiles for line in tile.lines if line.stroke is stroke]
        assert sum(line.end[0] - line.start[0] for line in parts) == pytest.approx(20.0)
    shaded = [abs(area(outline)) for tile in tiles for outline in tile.waste]
    assert sum(shaded) == pytest.approx(20.0 * 0.25)


def area(outline):
    pairs = zip(outline, [*outline[1:], *outline[:1]], strict=True)
    return sum(one[0] * two[1] - two[0] * one[1] for one, two in pairs) / 2


def test_tiles_that_meet_say_where_they_are_joined():
    first, second, *_ = said(marked_all_along())

    assert first == "Goes on at the right at 5 in."
    assert (
        second == "Joins the part at its left 5 in from the end of the rail; goes on at the right at 10 in."
    )


def test_a_strip_little_longer_than_a_sheet_is_shown_as_far_as_it_is_marked():
    strip = far_mortise(length=4.0, first=1.5)
    longer = NamedStrip(strip=replace(strip.strip, length=5.5), title="", serves="")

    (tile,) = tiled(longer)

    assert (tile.left, tile.right) == (0.0, 4.5)
    assert not tile.goes_on_right


def test_tiles_side_by_side_are_about_as_wide():
    assert [(tile.left, tile.right) for tile in tiled(marked_all_along(5.6))] == [(0.0, 3.0), (3.0, 5.6)]


def test_a_strip_too_long_and_too_high_is_tiled_both_ways():
    tiles = tiled(marked_all_along(length=8.0, height=10.0))

    assert [(tile.left > 0, tile.low > 0) for tile in tiles] == [
        (False, False),
        (False, True),
        (True, False),
        (True, True),
    ]
