"""Measured sizes as they are typed: which are of an opening, which of a part, and where one ends."""

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.web.units.measured_text import entries, folded, least_of, measured_lines, measured_of, spread


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("R5-1 height 8-15/32", "openings"),
        ("R2-1-3-1 width 14-7/8", "openings"),
        ("R2-1-2-2-1-1 depth 17", "openings"),
        ("R5-x height 8", "openings"),  # a slip: the core says which openings there are
        ("R5-1-SL thickness 31/64", "parts"),
        ("R2-1-3-1-SL thickness 31/64", "parts"),
        ("R1-U1 width 3", "parts"),
        ("C-SL thickness 3/4", "parts"),
        ("T width 20", "parts"),
    ],
)
def test_a_line_is_of_an_opening_or_of_a_part(line, kind):
    code, name, size = line.split(None, 2)

    assert measured_of(line) == {"measured": {kind: {code: {name: size}}}}
    assert measured_lines(measured_of(line)) == line


SEVERAL = ["R5-1 height 8 1/2", "R5-1 width 37-3/4", "R5-2 height 8.5", "R5-1-SL thickness 31/64"]


@pytest.mark.parametrize(
    "text",
    [
        "R5-1 height 8 1/2, width 37-3/4, R5-2 height 8.5, R5-1-SL thickness 31/64",
        "R5-1 height 8 1/2; width 37-3/4; R5-2 height 8.5; R5-1-SL thickness 31/64;",
        "R5-1 height 8 1/2 width 37-3/4 R5-2 height 8.5 R5-1-SL thickness 31/64",
        "r5-1 Height 8 1/2,width 37-3/4\n5-2 height 8.5,R5-1-SL thickness 31/64",
        "R5-1 height 8 1/2\nR5-1 width 37-3/4\n\nR5-2 height 8.5\nR5-1-SL thickness 31/64",
    ],
)
def test_several_sizes_may_stand_in_one_line(text):
    assert list(map(str, entries(text))) == SEVERAL


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("R1-1 height 215,5 mm, width 300 mm", ["R1-1 height 215,5 mm", "R1-1 width 300 mm"]),
        ("R1-1 height 1' 3-5/8\", 15-1/2 in", ["R1-1 height 1' 3-5/8\"", "R1-1 height 15-1/2 in"]),
        ("T width 20 in C-SL thickness 3/4", ["T width 20 in", "C-SL thickness 3/4"]),
        ("R1-1 height tall width 3", ["R1-1 height tall width 3"]),
        ("junk", ["junk"]),
    ],
)
def test_a_comma_within_a_number_and_a_unit_behind_it_part_nothing(text, found):
    assert list(map(str, entries(text))) == found


@pytest.mark.parametrize(
    ("text", "unit", "least"),
    [
        ("8-15/32, 8-1/2", "in", "8-15/32"),
        ("8-1/2;8-15/32", "in", "8-15/32"),
        ("8-1/2,8-15/32", "in", "8-15/32"),  # no inch has a decimal comma
        ("215,5; 214,5", "mm", "214,5"),
        ("215 mm, 8-1/2", "in", "215 mm"),  # 215 / 25.4 = 8.465 in, under 8.5 in
        ("8-1/2, tall", "in", "tall"),  # the core refuses it by its words
        ("8 1/2", "in", "8 1/2"),
    ],
)
def test_of_several_places_the_least_counts(text, unit, least):
    assert least_of(text, LengthUnit(unit)) == least


def test_what_stands_in_the_fields_of_openings_is_kept_with_the_lines_and_comes_back():
    typed = {
        "name": "Chest",
        "measured": "R1-1-SL thickness 31/64, R9-1 height 3",
        "measured.R1-1.height": "8-1/2, 8-15/32",
        "measured.R2-1.width": "",
    }

    kept = folded(typed)

    assert kept["measured"].splitlines() == [
        "R1-1-SL thickness 31/64",
        "R9-1 height 3",
        "R1-1 height 8-1/2",
        "R1-1 height 8-15/32",
    ]
    assert set(kept) == {"name", "measured"}
    assert spread(kept, ("R1-1", "R2-1")) == {
        "name": "Chest",
        "measured": "R1-1-SL thickness 31/64\nR9-1 height 3",
        "measured.R1-1.height": "8-1/2; 8-15/32",
    }
    assert folded(kept) == kept
