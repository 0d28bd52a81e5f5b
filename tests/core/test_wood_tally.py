"""Counting board feet, exactly and as a yard does."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.tally import (
    YardBoard,
    billed_thickness,
    board_feet,
    green_feet,
    net_feet,
    surface_measure,
    tallied_feet,
    tally,
    usual_green_loss,
    whole_feet,
)

boards = st.builds(YardBoard, width=st.floats(3, 20), length=st.floats(48, 192))


def test_exact_halves_go_up_and_down_by_turns_and_the_first_goes_up() -> None:
    nine_by_ten = YardBoard(width=9, length=120)
    eight_by_twelve = YardBoard(width=8, length=144)

    counted = tally(1, [nine_by_ten, eight_by_twelve, nine_by_ten, nine_by_ten, nine_by_ten])

    assert [line.counted for line in counted.lines] == [8, 8, 7, 8, 7]


@pytest.mark.parametrize(("half_up", "expected"), [(True, 8), (False, 7)])
def test_one_board_of_an_exact_half_is_counted_as_it_is_told(half_up: bool, expected: int) -> None:
    assert surface_measure(9, 120, half_up) == expected


def test_the_direction_of_halves_is_nothing_to_other_boards() -> None:
    assert surface_measure(10, 156, half_up=False) == 11


@pytest.mark.parametrize(("length", "feet"), [(96, 8), (95.9, 7), (129, 10), (0.1 * 120, 1)])
def test_length_drops_to_whole_feet(length: float, feet: int) -> None:
    assert whole_feet(length) == feet


@given(st.lists(boards, min_size=1, max_size=20))
def test_a_tally_is_within_half_a_foot_for_each_board(bundle: list[YardBoard]) -> None:
    counted = tally(1, bundle)

    # 1e-6 ft is far above the error of a sum of twenty floats
    assert abs(counted.counted - counted.surface) <= 0.5 * len(bundle) + 1e-6


@given(st.lists(boards, min_size=1, max_size=20))
def test_the_exact_feet_are_never_under_the_surface_that_is_counted(bundle: list[YardBoard]) -> None:
    counted = tally(1, bundle)

    assert counted.exact_feet >= counted.surface - 1e-6


@given(st.integers(0, 4000))
def test_thickness_multiplies_the_tally(counted: int) -> None:
    assert tallied_feet(counted, 2) == 2 * counted


@pytest.mark.parametrize(
    ("counted", "thickness", "feet"), [(42, 1, 42), (42, 1.25, 53), (41, 1.25, 51), (7, 1.5, 11), (9, 0.5, 9)]
)
def test_a_bundle_is_rounded_once_to_a_whole_foot(counted: int, thickness: float, feet: int) -> None:
    assert tallied_feet(counted, thickness) == feet


def test_thin_stock_is_billed_as_an_inch_but_measures_what_it_is() -> None:
    thin = tally(0.5, [YardBoard(width=6, length=96)])

    assert billed_thickness(0.5) == 1
    assert (thin.feet, thin.exact_feet) == (4, 4.0)
    assert board_feet(0.5, 6, 96) == 2.0


@given(st.floats(1, 1000), st.floats(0, 0.5))
def test_green_and_net_tally_lead_back_to_each_other(feet: float, loss: float) -> None:
    # one division and one multiplication each lose at most one unit in the sixteenth digit
    assert net_feet(green_feet(feet, loss), loss) == pytest.approx(feet, rel=1e-12)


def test_a_green_tally_of_a_hundred_feet_is_ninety_three_dry() -> None:
    loss, evidence = usual_green_loss()

    assert math.isclose(net_feet(100, loss), 93)
    assert "kiln" in evidence.source


@pytest.mark.parametrize("loss", [-0.1, 1, 7])
def test_a_loss_that_is_not_a_part_is_refused(loss: float) -> None:
    with pytest.raises(ValueError, match=r"such as 0\.07"):
        green_feet(100, loss)


@pytest.mark.parametrize(("width", "length"), [(0, 96), (6, 0), (-6, 96)])
def test_a_board_without_size_is_refused(width: float, length: float) -> None:
    with pytest.raises(ValueError, match="has a width and a length"):
        YardBoard(width=width, length=length)
