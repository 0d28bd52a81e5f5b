"""Loads of boards drawn by chance: no board that its grade would not have."""

from itertools import islice
from statistics import mean

import pytest

from casewright.wood.grades import GradeName, grade
from casewright.wood.loads import NamedBoards, board_habit, drawn_load
from casewright.wood.tally import surface_measure


def boards(name=GradeName.FAS, count=200, named=(), **more):
    return list(islice(drawn_load(board_habit(name), named, seed=more.pop("seed", 1), **more), count))


@pytest.mark.parametrize("name", list(GradeName))
def test_usual_boards_are_no_smaller_than_the_grading_rules_let_them_be(name):
    """Least boards: NHLA Rules Book (facts only), as the table of grades has them."""
    habit = board_habit(name)

    assert habit.widths[0] >= grade(name).min_width
    assert habit.lengths[0] * 12 >= grade(name).min_length
    assert list(habit.widths) == sorted(habit.widths)
    assert list(habit.lengths) == sorted(habit.lengths)


@pytest.mark.parametrize("name", list(GradeName))
def test_every_board_lies_between_what_is_least_and_what_is_usual(name):
    habit = board_habit(name)

    for board in boards(name):
        usable = board.length - 2
        assert habit.widths[0] <= board.width <= habit.widths[2]
        assert habit.lengths[0] * 12 <= board.length <= habit.lengths[2] * 12
        assert habit.clear[0] - 1e-9 <= sum(board.clear) / usable <= habit.clear[1] + 1e-9


def test_a_yard_counts_them_in_whole_feet_and_halves_up_and_down_by_turns():
    """NHLA Rules Book: an exact half goes up and down by turns; all others to the nearest whole foot."""
    ups = 0
    for board in boards(count=400):
        exact = board.width * board.length / 144
        if exact % 1 == 0.5:
            assert board.surface - exact in {-0.5, 0.5}
            assert (board.surface > exact) == (ups % 2 == 0)
            ups += 1
        else:
            assert board.surface == surface_measure(board.width, board.length)

    assert ups > 10


def test_the_shops_average_board_is_the_average_of_what_comes():
    """A triangle's mean is a third of its corners; half an inch leaves room for chance over 400 boards."""
    drawn = boards(count=400, average=8.5)

    assert mean(board.width - 0.25 for board in drawn) == pytest.approx(8.5, abs=0.5)


def test_boards_that_the_order_names_come_first_and_hold_what_they_are_named_for():
    first, second, *_ = boards(named=(NamedBoards(width=11, length=40, count=3),), count=3)

    assert first.width >= 11
    assert max(first.clear) >= 40
    pieces = sum(int(clear // 40) for clear in first.clear)
    if pieces < 3:
        assert second.width >= 11


def test_a_board_that_the_grade_never_has_is_not_waited_for():
    assert len(boards(named=(NamedBoards(width=30, length=40, count=1),), count=5)) == 5


def test_the_same_seed_draws_the_same_load_and_another_one_another():
    assert boards(seed=3, count=20) == boards(seed=3, count=20)
    assert boards(seed=3, count=20) != boards(seed=4, count=20)
