"""The cut list: every part with its size in fractions and millimetres, in the order of the work."""

import re

import pytest

from casewright.measure.lengths import show, show_mm
from casewright.papers.cut_list import CutListPaper, cut_list_paper
from casewright.papers.cut_list_pdf import cut_list_pdf
from casewright.papers.pdf import Paper
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.takeoff.rough import take_off
from printed import METRIC, cuts, dresser_job, head, long_job, pages_of, tags_of, text_of
from units import built, dresser

BEGINS = re.compile(
    r"^(Hollow Elm|Finished sizes|Line Part|Mark Part|Drawer |From offcuts|Part Pieces|[\w ]+ \d/4|1/4 in )"
)


@pytest.mark.parametrize(
    ("mark", "size", "millimetres"),
    [
        ("A-T Top cherry", "7/8 × 20-1/2 × 41", "22.2 × 520.7 × 1041.4"),
        ("A-R1-1-F Drawer front, row 1 cherry", "13/16 × 5-27/64 × 18-9/16", "20.6 × 137.7 × 471.5"),
        ("A-R5-1-F Drawer front, row 5 cherry", "13/16 × 8-13/32 × 37-15/16", "20.6 × 213.5 × 963.6"),
        ("A-R4-1-B Drawer back, row 4 soft maple", "1/2 × 6-29/32 × 37-15/16", "12.7 × 175.4 × 963.6"),
        ("A-R2-1-M Drawer muntin soft maple", "5/8 × 2 × 18-3/16", "15.9 × 50.8 × 462.0"),
        ("A-D1-RC1 Centre runner poplar", "3/4 × 3-1/2 × 14-5/8", "19.1 × 88.9 × 371.5"),
    ],
)
def test_a_part_of_worked_dresser_a_stands_with_both_its_sizes(mark, size, millimetres):
    assert f"{mark} {size} {millimetres}" in text_of(cut_list_pdf(cuts()))


@pytest.mark.parametrize(
    "row",
    [
        "A-C1 Case side panel of 4 boards 2 21-1/4 × 40-1/2 539.8 × 1028.7 3/4 × 19-3/4 × 39-1/2",
        "A-F5 Drawer front, row 5 1 8-21/32 × 38-15/16 219.9 × 989.0 13/16 × 8-13/32 × 37-15/16",
        "A-W2 Runner 8 2-3/4 × 15-5/8 69.9 × 396.9 3/4 × 2-1/2 × 14-5/8",
    ],
)
def test_the_rough_list_gives_pieces_rough_size_and_what_they_finish_to(row):
    assert row in text_of(cut_list_pdf(cuts()))


def test_the_rough_list_runs_from_the_longest_piece_to_the_shortest_within_a_class():
    groups = cuts(long_job()).breakdowns

    lengths = [[row.length_in for row in group.rows] for group in groups]

    assert len(groups) > 4
    assert lengths == [sorted(group, reverse=True) for group in lengths]


def test_every_part_of_a_job_stands_once_in_the_finished_list():
    job, paper = long_job(), cuts(long_job())

    codes = [
        code for unit in paper.units for group in unit.groups for row in group.rows for code in row.codes
    ]

    assert sorted(codes) == sorted(part.code for held in job.units for part in held.unit.parts)


def test_every_size_of_a_long_job_is_printed_in_both_units():
    job, printed = long_job(), text_of(cut_list_pdf(cuts(long_job())))
    sizes = {(part.thickness, part.width, part.length) for held in job.units for part in held.unit.parts}

    missing = [
        size
        for size in sizes
        if " × ".join(map(show, size)) not in printed or " × ".join(map(show_mm, size)) not in printed
    ]

    assert missing == []


def test_a_metric_shop_reads_millimetres_first():
    printed = text_of(cut_list_pdf(cuts(**METRIC), Paper.A4))

    assert "22.2 × 520.7 × 1041.4 7/8 × 20-1/2 × 41" in printed
    assert "Size, mm and in" in printed


def test_sheet_parts_are_listed_under_their_sheet_and_cut_to_finished_size():
    printed = text_of(cut_list_pdf(cuts(long_job())))

    assert "1/4 in birch plywood 6 pieces, cut to finished size" in printed


def test_a_unit_made_twice_says_so_and_its_rough_pieces_are_counted_for_both():
    paper = cuts(long_job())

    rough = {row.mark: row.quantity for group in paper.breakdowns for row in group.rows}

    assert rough["B-C1"] == 4
    assert "Make 2 of each part: 2 units alike." in text_of(cut_list_pdf(paper))


def test_a_measured_part_says_which_of_its_sizes_was_measured():
    measured = built(dresser({"measured.parts": {"R5-1-F": {"thickness": "0.8"}}}))
    paper = cut_list_paper(head(), [(measured, take_off(measured, example_shop()))])

    assert "Drawer front, row 5 measured: thickness" in text_of(cut_list_pdf(paper))


def test_both_ends_are_named_where_their_joints_differ():
    printed = text_of(cut_list_pdf(cuts()))

    assert "half-blind dovetail, tails, rabbet 1/16; other end: through dovetail, tails" in printed


def test_each_page_begins_with_the_head_of_its_table_or_a_heading():
    pages = pages_of(cut_list_pdf(cuts(long_job())))

    assert [page[:40] for page in pages if not BEGINS.match(page)] == []


def test_heads_are_marked_as_heads_for_a_screen_reader():
    tags = tags_of(cut_list_pdf(cuts()))

    assert tags.count("H1") == 1
    assert tags.count("Table") == tags.count("THead") > 8
    assert tags.count("TH") >= 8 * tags.count("Table") // 2


def test_a_list_of_three_hundred_parts_is_printed_whole():
    job = dresser_job().units[0]
    pairs = [(job.unit, job.takeoff)] * 4
    paper = cut_list_paper(head(), pairs)

    pages = pages_of(cut_list_pdf(paper))

    assert paper.parts > 300
    assert len(pages) > 20
    assert f"Page {len(pages)} of {len(pages)}" in pages[-1]


def test_a_kept_cut_list_prints_the_same_bytes_years_later():
    paper = cuts(long_job())

    again = CutListPaper.model_validate_json(paper.model_dump_json())

    assert cut_list_pdf(again) == cut_list_pdf(paper)


@pytest.mark.parametrize(
    "said", ["Job", "2026-014", "revision 1", "25 November 2026", "inches", "Dresser for Ada"]
)
def test_a_cut_list_says_for_which_job_and_revision_it_is(said):
    assert said in pages_of(cut_list_pdf(cuts()))[0]


def test_parts_that_match_are_broken_out_as_blanks_and_the_saw_is_cautioned():
    unit = built(dresser({"grain": {"sides": "book-matched"}}))
    paper = cut_list_paper(head(), [(unit, take_off(unit, example_shop()))])

    [sides] = [row for each in paper.breakdowns for row in each.rows if row.mark == "A-C1"]
    assert (sides.quantity, sides.sawn_from, sides.two_from) == (2, 1, "")
    assert "sawn in two from 1 blank; this is the blank's size" in text_of(cut_list_pdf(paper))
    assert any("Resawing at the band saw" in line for line in paper.cautions)
