"""Templates in full size: measured in the PDF by pypdf, tiled without losing a line."""

import io
from dataclasses import replace
from datetime import date

import pytest
from pypdf import PdfReader

from casewright.joinery.families.box.joint import Box, box_joint
from casewright.joinery.solid import Marked, Strip, Stroke
from casewright.measure.lengths import LengthUnit
from casewright.papers.full_size import ACROSS, DOWN, TILE, NamedStrip, clipped, sheets, tiled
from casewright.papers.full_size_pdf import full_size_data, full_size_pdf
from casewright.papers.head import PaperHead
from casewright.papers.pdf import Paper
from pdf_lines import POINTS, lines_in

HEAD = PaperHead(shop="Marrow Street", job_number="12", job_name="Chest", issued_on=date(2027, 3, 1))
WITHIN = 0.05 / 25.4 * POINTS
"""Five hundredths of a millimetre [pt]."""


def strip(height=4.0, saw=(1.0, 2.5)):
    return NamedStrip(
        strip=Strip(
            board="side",
            face="outside face",
            length=0.5,
            height=height,
            lines=(
                Marked(stroke=Stroke.GAUGE, start=(0.5, 0.0), end=(0.5, height)),
                *(Marked(stroke=Stroke.SAW, start=(0.0, y), end=(0.5, y + 0.1)) for y in saw),
            ),
            waste=(((0.0, 1.0), (0.5, 1.1), (0.5, 2.6), (0.0, 2.5)),),
        ),
        title="Box joint",
        serves="A-R1-1-SL",
    )


def lengths(page):
    return [((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 for (x0, y0), (x1, y1) in lines_in(page)]


@pytest.mark.parametrize("paper", list(Paper))
def test_both_bars_are_as_long_as_they_say(paper):
    page = PdfReader(io.BytesIO(full_size_pdf(HEAD, [strip()], paper))).pages[0]

    found = lengths(page)
    assert min(abs(each - 4 * POINTS) for each in found) < WITHIN
    assert min(abs(each - 100 / 25.4 * POINTS) for each in found) < WITHIN


def test_a_line_stands_where_it_is_on_the_wood():
    page = PdfReader(io.BytesIO(full_size_pdf(HEAD, [strip()]))).pages[0]

    found = lines_in(page)
    wide = (0.5**2 + 0.1**2) ** 0.5 * POINTS
    saw = [pair for pair in found if abs(length_of(pair) - wide) < WITHIN]
    heights = sorted(pair[0][1] for pair in saw)
    assert len(saw) == 2
    assert heights[1] - heights[0] == pytest.approx(1.5 * POINTS, abs=WITHIN)


def length_of(pair):
    (x0, y0), (x1, y1) = pair
    return ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5


def test_whoever_prints_it_is_asked_not_to_fit_it_to_the_paper():
    pdf = full_size_pdf(HEAD, [strip()])

    catalog = PdfReader(io.BytesIO(pdf)).trailer["/Root"]
    assert catalog["/ViewerPreferences"]["/PrintScaling"] == "/None"
    assert catalog["/ViewerPreferences"]["/DisplayDocTitle"]
    assert catalog["/MarkInfo"]["/Marked"]
    assert "/StructTreeRoot" in catalog
    assert "/Metadata" in catalog
    assert full_size_pdf(HEAD, [strip()]) == pdf


def test_a_long_strip_is_tiled_and_no_height_is_lost():
    long = strip(height=20.0, saw=(1.0, 7.2, 7.3, 14.4, 19.0))

    tiles = tiled(long)

    assert [tile.count for tile in tiles] == [3, 3, 3]
    assert [tile.low for tile in tiles] == [0.0, TILE, 2 * TILE]
    assert sorted(height for tile in tiles for height in tile.heights) == [1.0, 7.2, 7.3, 14.4, 19.0]
    assert tiles[-1].high == 20.0


def test_a_line_over_the_joint_of_two_tiles_is_drawn_on_both():
    tiles = tiled(strip(height=10.0, saw=(TILE - 0.05,)))

    assert [sum(line.stroke is Stroke.SAW for line in tile.lines) for tile in tiles] == [1, 1]


def test_an_outline_is_cut_where_the_tile_ends():
    square = ((0.0, 0.0), (1.0, 0.0), (1.0, 2.0), (0.0, 2.0))

    assert set(clipped(square, 1.0, 5.0)) == {(0.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)}
    assert clipped(square, 3.0, 5.0) == ()


def named(*strips, serves="A"):
    return [NamedStrip(strip=each, title="Box", serves=serves) for each in strips]


def small(height, length=0.5):
    return replace(strip().strip, height=height, length=length, lines=(), waste=())


def test_no_sheet_holds_more_than_it_is_wide_or_high():
    joint = box_joint(Box(height=6.0, side=0.5, front=0.5, fingers=12))

    found = sheets(named(*joint.shape.strips * 4))

    assert all(sum(max(tile.width for tile in column) for column in sheet) <= ACROSS for sheet in found)
    assert all(sum(tile.height for tile in column) <= DOWN for sheet in found for column in sheet)
    assert sum(len(column) for sheet in found for column in sheet) == 8


def test_short_strips_are_put_below_each_other_so_that_paper_is_saved():
    found = sheets(named(*[small(0.75)] * 9))

    assert [[len(column) for column in sheet] for sheet in found] == [[4, 4, 1]]


def test_what_is_left_of_a_long_strip_goes_below_what_is_left_of_another():
    found = sheets(named(small(8.4), small(8.4)))

    assert [[[tile.number for tile in column] for column in sheet] for sheet in found] == [[[1], [2, 2], [1]]]


def test_a_strip_that_is_wider_than_all_others_has_a_sheet_of_its_own():
    found = sheets(named(small(1.0, length=5.4), small(7.0)))

    assert [len(sheet) for sheet in found] == [1, 1]


def test_the_edge_and_the_face_stand_on_each_strip():
    text = PdfReader(io.BytesIO(full_size_pdf(HEAD, [strip()]))).pages[0].extract_text()

    for words in ("bottom edge", "side, outside face, its end at the left", "A-R1-1-SL", "4 in", "100 mm"):
        assert words in text
    assert "measure both bars" in " ".join(text.split())


def test_a_metric_shop_reads_millimetres():
    data = full_size_data(HEAD.model_copy(update={"unit": LengthUnit.MILLIMETRE}), [strip()])

    assert [each["said"] for each in data["sheets"][0][0][0]["figures"]] == ["25.4", "63.5"]


def test_of_very_many_parts_a_strip_says_how_many():
    marks = [f"A-R{row}-1-{side}" for row in range(1, 9) for side in ("SL", "SR")]
    data = full_size_data(HEAD, named(strip().strip, serves=", ".join(marks)))

    said = data["sheets"][0][0][0]["serves"]
    kept, _, more = said.partition(" and ")
    assert kept.split(", ") == marks[: len(kept.split(", "))]
    assert more == f"{16 - len(kept.split(', '))} more"


def test_lines_that_run_up_a_strip_are_told_by_how_far_they_are_from_its_left():
    data = full_size_data(HEAD, [strip()])

    assert data["sheets"][0][0][0]["uprights"] == "From the end: 1/2"
