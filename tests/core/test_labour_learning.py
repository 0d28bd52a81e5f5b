"""How logged hours teach the standards."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.labour.learning import Record, lesson, outlying, standard_to_use, taught

TIMES = st.lists(st.floats(1, 100), min_size=1, max_size=12)


def test_one_job_moves_a_standard_by_a_fifth_of_the_difference():
    assert taught(10, [15], trust=4) == 11  # (4 x 10 + 15) / 5


@given(st.floats(1, 100), TIMES)
def test_a_new_standard_lies_between_the_old_one_and_what_was_logged(old, actuals):
    new = taught(old, actuals, trust=4)

    assert min(old, *actuals) - 1e-9 <= new <= max(old, *actuals) + 1e-9


@given(st.floats(1, 100), st.integers(1, 12))
def test_logging_just_the_standard_changes_nothing(standard, jobs):
    assert taught(standard, [standard] * jobs, trust=4) == pytest.approx(standard, rel=1e-12)


def test_nothing_to_learn_from_and_no_trust_is_refused():
    with pytest.raises(ValueError, match="trust of at least 1"):
        taught(10, [], trust=0)


def test_a_wild_figure_is_set_aside_and_the_rest_teaches():
    result = lesson(6.0, (6.0, 6.5, 5.5, 6.0, 30.0))

    assert result.outliers == (30.0,)
    assert result.new == pytest.approx(6.0, abs=1e-9)  # (24 + 24) / 8


def test_three_times_are_too_few_to_call_one_of_them_wild():
    assert outlying((6.0, 6.5, 30.0)) == (False, False, False)


def test_times_that_all_agree_hold_no_outlier():
    assert outlying((6.0, 6.0, 6.0, 6.0)) == (False, False, False, False)


def test_a_time_apart_from_ones_that_agree_needs_a_reason():
    assert outlying((6.0, 6.0, 6.0, 9.0)) == (False, False, False, True)


@pytest.mark.parametrize(
    ("actual", "needs_a_reason"),
    # the others are 8, 10, 12: mean 10, sample deviation 2, so the limit lies at 5 either way
    [(14.9, False), (15.1, True), (5.1, False), (4.9, True)],
)
def test_the_limit_is_two_and_a_half_deviations(actual, needs_a_reason):
    assert outlying((8.0, 10.0, 12.0, actual))[-1] is needs_a_reason


def test_the_narrowest_standard_that_was_timed_often_enough_holds():
    mine = Record(label="hard maple, by hand, mine", standard=3.0, times=2)
    wood = Record(label="hard maple, by hand", standard=2.8, times=3)
    shop = Record(label="by hand", standard=2.5, times=40)

    assert standard_to_use((mine, wood, shop)) is wood


def test_the_widest_standard_holds_when_none_was_timed_often_enough():
    mine = Record(label="mine", standard=3.0, times=2)
    shop = Record(label="the shop's", standard=2.5, times=0)

    assert standard_to_use((mine, shop)) is shop


def test_no_standard_at_all_is_refused():
    with pytest.raises(ValueError, match="no standard to choose from"):
        standard_to_use(())


@pytest.mark.parametrize("actual", [15.0, 5.0])
def test_a_time_on_the_limit_itself_is_still_learned_from(actual):
    assert outlying((8.0, 10.0, 12.0, actual))[-1] is False


def test_without_trust_in_the_old_figure_the_new_ones_decide():
    assert taught(10, [12, 14], trust=0) == 13


def test_a_trust_below_nothing_is_refused():
    with pytest.raises(ValueError, match="trust of at least 1"):
        taught(10, [12, 14], trust=-1)
