"""Batches: the learning curve, the flat rule, and what splitting costs."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.labour.batch import (
    batch_factor,
    batch_minutes,
    curve_starts_again,
    repeat_minutes,
    splitting_cost,
    steady_saving_minutes,
)
from casewright.labour.figures import house_figures

RATES = st.floats(0.8, 1.0)


def test_doubling_the_count_leaves_the_learning_rate_of_the_time():
    fourth, eighth = repeat_minutes(30, 4, 0.9), repeat_minutes(30, 8, 0.9)

    assert eighth / fourth == pytest.approx(0.9, rel=1e-12)


def test_a_batch_of_two_at_ninety_per_cent_averages_ninety_five():
    assert batch_factor(2, 0.9) == pytest.approx(0.95, rel=1e-12)  # (1 + 0.9) / 2


def test_the_flat_rule_stops_saving_at_thirty_per_cent():
    minutes = steady_saving_minutes(100, 9, 0.05, 0.30)

    # 100 95 90 85 80 75 70 70 70
    assert minutes == pytest.approx(735, abs=1e-9)


@given(st.integers(1, 60), RATES)
def test_a_batch_never_takes_longer_than_its_pieces_one_by_one(count, rate):
    assert batch_factor(count, rate) <= 1 + 1e-12


@given(st.integers(1, 60), RATES)
def test_a_larger_batch_never_has_a_slower_average(count, rate):
    assert batch_factor(count + 1, rate) <= batch_factor(count, rate) + 1e-12


def test_planing_learns_nothing_from_repeating():
    assert batch_minutes(6, 108, 1.0) == 648


@given(st.integers(2, 40), RATES, st.floats(0, 60))
def test_splitting_a_batch_costs_at_least_the_further_set_ups(count, rate, setup):
    added = splitting_cost(30, count, batches=2, learning_rate=rate, setup=setup)

    assert added >= setup - 1e-9


def test_without_a_pause_splitting_costs_the_set_ups_only():
    added = splitting_cost(30, 24, batches=3, learning_rate=0.95, setup=40, resets=False)

    assert added == 80


def test_splitting_seven_into_two_makes_four_and_three():
    added = splitting_cost(10, 7, batches=2, learning_rate=0.9, setup=0)

    # b = log2 0.9; repeats of 10 min: 10, 9, 8.462, 8.1, 7.830, 7.616, 7.440 by hand
    assert added == pytest.approx((10 + 9 + 8.462) - (7.830 + 7.616 + 7.440), abs=0.003)


def test_more_batches_than_pieces_are_refused():
    with pytest.raises(ValueError, match="3 pieces cannot be made in 4 batches"):
        splitting_cost(10, 3, batches=4, learning_rate=0.9, setup=0)


@pytest.mark.parametrize("rate", [0.4, 1.1])
def test_a_learning_rate_out_of_reason_is_refused(rate):
    with pytest.raises(ValueError, match="learning rate"):
        batch_factor(6, rate)


def test_an_empty_batch_is_refused():
    with pytest.raises(ValueError, match="at least one piece"):
        batch_factor(0, 0.95)


def test_the_curve_starts_again_after_a_long_pause():
    reset = house_figures().reset

    assert curve_starts_again(reset + 1, reset)
    assert not curve_starts_again(reset, reset)


def test_every_piece_may_be_a_batch_of_its_own():
    # 10 and 0.9 x 10 in one batch of two, 10 and 10 in two, and one set-up more
    assert splitting_cost(10, 2, batches=2, learning_rate=0.9, setup=5) == pytest.approx(6, abs=1e-9)


def test_one_batch_is_not_split_at_all():
    assert splitting_cost(10, 7, batches=1, learning_rate=0.9, setup=5) == 0


def test_a_batch_of_one_takes_the_full_time_by_the_flat_rule():
    assert steady_saving_minutes(120, 1, 0.05, 0.30) == 120


def test_the_fastest_learner_halves_the_time_at_each_doubling():
    assert repeat_minutes(32, 8, 0.5) == 4
