"""The sheet, its views and its lettering."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_drawing_reader import SVG, Read

from casewright.drawing.canvas import Line, Sheet, plain, written
from casewright.drawing.spread import spread
from casewright.drawing.view import View, box
from casewright.measure.lengths import LengthUnit


def sheet(unit=LengthUnit.INCH):
    """A sheet at half size, on which lettering is 1/3 in of the work high."""
    return Sheet(2, unit)


def read(made):
    """A sheet read back."""
    return Read(f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 -10 10 10">{made.body()}</svg>')


@pytest.mark.parametrize(
    ("value", "expected"),
    [(18.5625, "18.5625"), (1 / 3, "0.33333"), (-0.000001, "0"), (4.0, "4"), (-2.50, "-2.5"), (0, "0")],
)
def test_coordinates_are_written_plainly(value, expected):
    assert plain(value) == expected


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("  two\n\twords ", "two words"),
        ("bell\x07 and nought\x00", "bell and nought"),
        ("turned \u202e7-13/32\u202c", "turned 7-13/32"),
        ("half \ud800 a pair", "half  a pair"),
        ("no character \ufffe", "no character "),
        ("<b>&amp;", "<b>&amp;"),
    ],
)
def test_words_are_cleaned_of_what_a_drawing_cannot_hold(typed, expected):
    assert written(typed) == expected


@pytest.mark.parametrize(
    ("inches", "unit", "expected"),
    [
        (7.40625, LengthUnit.INCH, "7-13/32"),
        (1.48125, LengthUnit.INCH, "≈1-31/64"),
        (7.40625, LengthUnit.MILLIMETRE, "188.1"),
        (100 / 25.4, LengthUnit.MILLIMETRE, "100"),
    ],
)
def test_sizes_are_lettered_in_the_unit_of_the_shop(inches, unit, expected):
    assert sheet(unit).size(inches) == expected


def test_a_view_draws_both_ways_in_one_scale():
    made = sheet()
    View(made, 1, 2, 3).rectangle(Line.OBJECT, 0.5, 0.25, 1, 2, "A")

    found = read(made).rectangles["A"]

    assert (found.x, found.y, found.width, found.height) == (2.5, 2.75, 3, 6)


@pytest.mark.parametrize("rising", [True, False])
def test_hatching_fills_an_outline_and_stays_inside(rising):
    made = sheet()
    # A board with a groove: two strips of 1 by 3, joined by one of 1 by 1.
    outline = [(0, 0), (3, 0), (3, 1), (2, 1), (2, 2), (3, 2), (3, 3), (0, 3)]
    View(made).hatch(outline, rising=rising)

    points = read(made).points

    assert len(points) > 40
    assert all(
        0 <= x <= 3 and 0 <= y <= 3 and not (x > 2 + 1e-5 and 1 + 1e-5 < y < 2 - 1e-5) for x, y in points
    )


@pytest.mark.parametrize(("rising", "slope"), [(True, 1), (False, -1)])
def test_hatching_rises_or_falls_to_the_right(rising, slope):
    made = sheet()
    View(made).hatch(box(0, 0, 3, 3), rising=rising)

    points = read(made).points
    slopes = [
        (end[1] - start[1]) / (end[0] - start[0])
        for start, end in zip(points[::2], points[1::2], strict=True)
    ]

    # Coordinates are written to a hundred-thousandth of an inch, and the shortest stroke is 0.1 in long.
    assert slopes == pytest.approx([slope] * len(slopes), abs=1e-3)


def test_hatching_of_the_groove_is_left_out():
    whole, grooved = sheet(), sheet()
    View(whole).hatch(box(0, 0, 3, 3))
    View(grooved).hatch([(0, 0), (3, 0), (3, 1), (2, 1), (2, 2), (3, 2), (3, 3), (0, 3)])

    # The groove is a ninth of the square, and so of all even hatching; 3 % for where it starts.
    assert hatched(grooved) / hatched(whole) == pytest.approx(8 / 9, abs=0.03)


def hatched(made):
    """How much hatching there is, level."""
    points = read(made).points
    return sum(abs(end[0] - start[0]) for start, end in zip(points[::2], points[1::2], strict=True))


def test_the_sheet_reaches_as_far_as_what_is_drawn():
    made = sheet()
    made.polyline(Line.OBJECT, [(-1, 2), (3, 4)])
    made.circle(Line.OBJECT, (0, 0), 2)

    assert made.reach == (-2, -2, 3, 4)


@pytest.mark.parametrize(
    ("anchor", "upright", "expected"),
    [
        ("start", False, (1, 2 - 1 / 6, 1 + 4 * 0.64 / 3, 2 + 1 / 6)),
        ("end", False, (1 - 4 * 0.64 / 3, 2 - 1 / 6, 1, 2 + 1 / 6)),
        ("middle", True, (1 - 1 / 6, 2 - 2 * 0.64 / 3, 1 + 1 / 6, 2 + 2 * 0.64 / 3)),
    ],
)
def test_lettering_takes_room(anchor, upright, expected):
    made = sheet()
    made.letter((1, 2), "1234", anchor, upright=upright)

    assert made.lettered[0] == pytest.approx(expected)
    assert made.reach == pytest.approx(expected)


def test_a_line_is_left_open_where_it_would_run_through_lettering():
    made = sheet()
    made.letter((5, 2), "12")

    strokes = made.between_letters(0, 10, 2.1)

    half = 0.64 / 3 + 0.15 / 3
    assert [(start[0], end[0]) for start, end in strokes] == [
        (0, pytest.approx(5 - half)),
        (pytest.approx(5 + half), 10),
    ]


@pytest.mark.parametrize("height", [1.5, 2.5])
def test_a_line_beside_lettering_is_drawn_through(height):
    made = sheet()
    made.letter((5, 2), "12")

    assert made.between_letters(10, 0, height) == [((0, height), (10, height))]


def test_a_line_is_not_drawn_under_lettering_that_covers_it():
    made = sheet()
    made.letter((5, 2), "12345678")

    assert made.between_letters(4.8, 5.2, 2) == []


def test_lettering_lies_over_lines_and_cut_edges_over_hatching():
    made = sheet()
    made.letter((1, 1), "1")
    View(made).cut(box(0, 0, 1, 1))

    groups = [group.get("class") for group in read(made).root.findall(f"{SVG}g")]

    assert groups == ["hatch", "cut", "lettering"]


@pytest.mark.parametrize(
    ("wanted", "expected"),
    [
        ([0, 5, 10], [0, 5, 10]),
        ([0, 0], [-0.5, 0.5]),
        ([0, 0.5, 10], [-0.25, 0.75, 10]),
        ([0, 0, 0.5, 1.5], [-1, 0, 1, 2]),
        ([], []),
    ],
)
def test_lettering_is_moved_apart_evenly(wanted, expected):
    assert spread(wanted, 1) == pytest.approx(expected)


@given(st.lists(st.floats(-100, 100), max_size=40).map(sorted), st.floats(0.1, 5))
def test_lettering_that_was_moved_apart_stands_apart_and_stays_centred(wanted, apart):
    found = spread(wanted, apart)

    # Sums of up to forty floats of this size are good to a billionth.
    assert all(after - before >= apart - 1e-9 for before, after in pairwise(found))
    assert sum(found) == pytest.approx(sum(wanted), abs=1e-6)
