"""Layouts side by side: one scale for all, tails where they are laid out, the same figures in words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_drawing_reader import Patch, Read

from casewright.drawing.divider_walk import walk_at_once_drawing, walk_drawing
from casewright.drawing.layout_choices import LayoutShown, layouts_drawing
from casewright.joinery.layout import lay_out
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import MILLIMETRES_PER_INCH

J1 = lay_out(8 + 13 / 32, 1 / 8, 1 / 8, 5, 5 / 8, 8)
SIX = lay_out(8 + 13 / 32, 1 / 8, 3 / 32, 6, 5 / 8, 8)
LOW = lay_out(3.0, 1 / 8, 1 / 8, 2, 5 / 8, 8)
SHOWN = [
    LayoutShown(heading="1", layout=J1, score=99.256),
    LayoutShown(heading="2", layout=SIX, score=91.6),
    LayoutShown(heading="yours", layout=LOW, score=None),
]

layouts = st.builds(
    lambda height, pin, count: lay_out(height, 3 / 16, pin, count, 5 / 8, 8),
    st.floats(8, 16),
    st.floats(1 / 16, 1 / 4),
    st.integers(1, 8),
)


def read(shown=tuple(SHOWN), unit=LengthUnit.INCH):
    """Some layouts drawn, read back."""
    return Read(layouts_drawing(shown, "Row 5, front", unit).svg())


def span(outline, axis):
    """From where to where an outline reaches."""
    return min(point[axis] for point in outline), max(point[axis] for point in outline)


def test_each_layout_is_lettered_with_its_count_pin_pitch_and_score():
    words = read().words

    first, second, last = (words.index(heading) for heading in ("1", "2", "yours"))
    assert words[first + 1 : first + 5] == ["5 tails", "pin 1/8", "pitch 1-21/32", "99.3 of 100"]
    assert words[second + 1 : second + 5] == ["6 tails", "pin 3/32", "pitch 1-3/8", "91.6 of 100"]
    assert words[last + 4] == "does not pass"


def test_the_sizes_that_are_lettered_keep_their_numbers():
    assert ("pitch 1-21/32", 1.65625) in read().sizes
    assert ("pin 3/32", 0.09375) in read().sizes


def test_the_tails_of_all_layouts_stand_where_they_are_laid_out_in_one_scale():
    outlines = read().outlines

    # coordinates are written to a hundred-thousandth of an inch
    for number, layout in enumerate((J1, SIX, LOW), start=1):
        for place, tail in enumerate(layout.tails, start=1):
            low, high = span(outlines[f"{number}-tail-{place}"], 1)
            assert (low, high) == pytest.approx((tail.lower_end, tail.upper_end), abs=1e-5)
            left, right = span(outlines[f"{number}-tail-{place}"], 0)
            assert right - left == pytest.approx(5 / 8, abs=1e-5)


def test_the_drawing_says_in_words_what_it_letters():
    found = read()

    assert found.title == "Row 5, front: sides with their tails, the steps of the dividers at the left"
    said = (
        "1: 5 tails, pin 1/8, pitch 1-21/32, 99.3 of 100, tail 1-17/32 at the end and 1-3/8 at the baseline"
    )
    assert said in found.description


def test_a_metric_shop_reads_millimetres():
    words = read(unit=LengthUnit.MILLIMETRE).words

    assert "pin 3.2" in words
    assert f"pitch {J1.pitch * MILLIMETRES_PER_INCH:.1f}" in words


@given(st.lists(layouts, min_size=1, max_size=12))
def test_any_family_is_drawn_on_its_page_with_no_lettering_in_other_lettering(those):
    shown = [LayoutShown(heading=f"row {n}", layout=each, score=90.0) for n, each in enumerate(those, 1)]

    found = read(shown)

    assert found.clashes == []
    assert [point for point in found.points if not found.page.holds(Patch(*point, 0, 0))] == []
    tails = [span(outline, 0) for code, outline in found.outlines.items()]
    assert len(tails) == sum(each.count for each in those)


def test_twelve_rows_fit_a_sheet_of_paper():
    rows = [
        LayoutShown(heading=f"row {n}", layout=lay_out(3 + n / 2, 1 / 8, 1 / 8, 2, 5 / 8, 8), score=90.0)
        for n in range(1, 13)
    ]

    drawing = layouts_drawing(rows, "Family")

    assert (drawing.width / drawing.scale <= 7.0, drawing.height / drawing.scale <= 9.5) == (True, True)


def test_nothing_to_draw_is_refused():
    with pytest.raises(ValueError, match="no layout"):
        layouts_drawing([], "Nothing")


def test_a_walk_is_drawn_in_its_moves():
    said = walk_drawing(J1, "A-R5-1, front").description

    assert "Move 1: mark a half pin of 1/8 at both edges" in said
    assert (
        "Move 2: dividers at 1-21/32, 5 steps up, marking lower edges; the last lands 1/8 past the upper mark"
        in said
    )
    assert "Move 3: dividers at 1-21/32, 5 steps down, marking upper edges" in said
    assert "Then: 5 tails of 1-17/32, 4 pins of 1/8 between them" in said


def test_the_steps_stand_on_the_edges_of_the_tails_and_overshoot_by_the_pin():
    found = Read(walk_drawing(J1, "A-R5-1, front").svg())

    feet = {round(x, 4) for x, _ in found.points}
    edges = [edge for tail in J1.tails for edge in (tail.lower_end, tail.upper_end)]
    assert {round(edge, 4) for edge in edges} <= feet
    assert [size for words, size in found.sizes if words.startswith("past")] == pytest.approx([1 / 8, 1 / 8])


@pytest.mark.parametrize("drawing", [walk_drawing, walk_at_once_drawing])
@given(layout=layouts)
def test_any_walk_is_drawn_on_its_page_with_no_lettering_in_other_lettering(drawing, layout):
    found = Read(drawing(layout, "A-R1-1, front").svg())

    assert found.clashes == []
    assert [point for point in found.points if not found.page.holds(Patch(*point, 0, 0))] == []
    for number, tail in enumerate(layout.tails, start=1):
        # coordinates are written to a hundred-thousandth of an inch
        expected = (tail.lower_end, tail.upper_end)
        assert span(found.outlines[f"tail-{number}"], 0) == pytest.approx(expected, abs=1e-5)


def test_a_single_tail_is_walked_in_one_step():
    said = walk_drawing(lay_out(2, 1 / 8, 1 / 8, 1, 5 / 8, 8), "Low").description

    assert "1 step up; the last lands 1/8 past the upper mark" in said
    assert "between them" not in said


def test_the_walk_at_once_says_both_walks_and_steps_on_the_edges_of_the_tails():
    drawing = walk_at_once_drawing(J1, "The walk")
    found = Read(drawing.svg())

    assert "5 steps of 1-21/32 up, lower edges; the last 1/8 past" in drawing.description
    assert "5 steps of 1-21/32 down, upper edges; the last 1/8 past" in drawing.description
    above, below = ({round(x, 4) for x, y in found.points if side(y)} for side in (is_above, is_below))
    lower = {round(tail.lower_end, 4) for tail in J1.tails}
    upper = {round(tail.upper_end, 4) for tail in J1.tails}
    middles = {round(tail.lower_end + J1.pitch / 2, 4) for tail in J1.tails}
    assert middles <= above
    assert {round(tail.upper_end - J1.pitch / 2, 4) for tail in J1.tails} <= below
    assert lower | upper <= {round(x, 4) for x, _ in found.points}


def is_above(height):
    return height > 0


def is_below(height):
    return height < 0


def test_the_walk_at_once_takes_half_the_room_of_the_moves():
    at_once, moves = (drawing(J1, "The walk") for drawing in (walk_at_once_drawing, walk_drawing))

    assert at_once.height / at_once.scale < 0.5 * moves.height / moves.scale
