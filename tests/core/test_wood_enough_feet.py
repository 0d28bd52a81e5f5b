"""How many feet are enough: plain rules that any honest answer keeps."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.enough_feet import board_habit, enough_feet
from casewright.wood.grades import GradeName, grade
from casewright.wood.strips import Blank, longest_first, parts_out_of

SIDES = (Blank(width=6.25, length=19, count=12, mark="e"), Blank(width=2.5, length=40, count=8, mark="g"))


def area(blanks):
    return sum(each.width * each.length * each.count for each in blanks) / 144


def test_the_same_seed_gives_the_same_feet():
    first = enough_feet(SIDES, GradeName.FAS, 1.0, seed=3, loads=40)

    assert first == enough_feet(SIDES, GradeName.FAS, 1.0, seed=3, loads=40)


def test_enough_for_nine_of_ten_is_more_than_for_five_and_more_than_the_parts_themselves():
    found = enough_feet(SIDES, GradeName.FAS, 1.0, seed=1, loads=100)

    assert area(SIDES) < found.usual <= found.feet < 3 * area(SIDES)


def test_being_surer_takes_more_feet():
    feet = [
        enough_feet(SIDES, GradeName.COMMON_1, 1.0, seed=5, loads=100, sure=sure).feet
        for sure in (0.1, 0.5, 0.9, 0.99)
    ]

    assert all(one <= other for one, other in pairwise(feet))
    assert feet[0] < feet[-1]


def test_a_lower_grade_takes_more_feet():
    best, lower = (
        enough_feet(SIDES, name, 1.0, seed=2, loads=60).feet for name in (GradeName.FAS, GradeName.COMMON_1)
    )

    assert best < lower


def test_thicker_stock_takes_as_many_feet_more_as_it_is_thicker():
    thin, thick = (enough_feet(SIDES, GradeName.FAS, each, seed=2, loads=60).usual for each in (1.0, 2.0))

    assert thick == pytest.approx(2 * thin, abs=1)  # each is rounded up to a whole foot


def test_a_part_that_no_board_of_the_grade_holds_is_named():
    found = enough_feet(
        (*SIDES, Blank(width=20, length=40, count=1, mark="top")), GradeName.FAS, 1.0, seed=2, loads=5
    )

    assert (found.feet, found.usual, found.never) == (None, None, ("top",))


@pytest.mark.parametrize("name", list(GradeName))
def test_usual_boards_are_no_smaller_than_the_grading_rules_let_them_be(name):
    """Least boards: NHLA Rules Book (facts only), as the table of grades has them."""
    habit = board_habit(name)

    assert habit.widths[0] >= grade(name).min_width
    assert habit.lengths[0] * 12 >= grade(name).min_length
    assert list(habit.widths) == sorted(habit.widths)
    assert list(habit.lengths) == sorted(habit.lengths)


def test_no_loads_or_no_share_are_refused():
    with pytest.raises(ValueError, match="between 0 and 1"):
        enough_feet(SIDES, GradeName.FAS, 1.0, seed=1, sure=1.0)


sizes = st.integers(8, 400).map(lambda quarters: quarters / 4)
parts = st.lists(
    st.builds(
        Blank,
        width=sizes,
        length=sizes,
        count=st.integers(0, 5),
        mark=st.just("x"),
        is_glued=st.booleans(),
    ),
    max_size=6,
)


@given(width=sizes, length=sizes, blanks=parts)
def test_what_comes_out_of_a_board_fits_it_and_was_wanted(width, length, blanks):
    order = longest_first(blanks)
    wanted = [each.wanted for each in order]

    out = parts_out_of(width, length, order, wanted, 0.125)

    got = [(amount, each) for amount, each in zip(out, order, strict=True) if amount]
    assert all(0 <= amount <= want + 1e-9 for amount, want in zip(out, wanted, strict=True))
    assert sum(
        amount * (1 if each.is_glued else each.width) * each.length for amount, each in got
    ) <= width * length * (1 + 1e-9)
    assert all(each.length <= length and (each.is_glued or each.width <= width) for _, each in got)


def test_a_panel_takes_strips_of_the_widths_that_boards_have():
    """Worked by hand: 13 in of clear width are two strips, none over 7 in, and one kerf."""
    panel = (Blank(width=20, length=40, count=1, is_glued=True),)

    (got,) = parts_out_of(13, 41, panel, (20.0,), 0.125)

    assert 12.5 < got <= 13 - 0.125


def test_a_board_is_ripped_into_strips_and_each_is_crosscut():
    """Worked by hand: two strips of 3 in from 6-1/8 in, three parts of 10 in from 30-1/4 in of each."""
    part = (Blank(width=3, length=10, count=9),)

    assert parts_out_of(6.125, 30.25, part, (9,), 0.125) == (6,)
    assert parts_out_of(6.0, 30.25, part, (9,), 0.125) == (3,)
    assert parts_out_of(6.125, 30.0, part, (9,), 0.125) == (4,)


def test_a_part_without_size_is_refused():
    with pytest.raises(ValueError, match="cannot be cut"):
        Blank(width=0, length=10, count=1)
