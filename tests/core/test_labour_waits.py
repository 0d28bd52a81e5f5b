"""Waits and the promise date."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.labour.waits import (
    bench_hours,
    promise_date,
    promise_weeks,
    usual_job_waits,
    waiting_weeks,
    waits,
)

STARTS = st.dates(date(2000, 1, 1), date(2060, 1, 1))


@given(STARTS, st.floats(0, 200))
def test_a_promise_is_never_before_its_start_nor_on_a_weekend(start, weeks):
    day = promise_date(start, weeks)

    assert day >= start + timedelta(days=weeks * 7 - 1e-6)
    assert day.weekday() < 5


@given(STARTS, st.floats(0, 200))
def test_a_promise_is_at_most_the_weekend_later_than_the_weeks_say(start, weeks):
    assert (promise_date(start, weeks) - start).days < weeks * 7 + 3 + 1e-6


def test_whole_weeks_end_on_the_same_day_of_the_week():
    assert promise_date(date(2026, 3, 4), 3) == date(2026, 3, 25)


def test_a_day_begun_counts_as_a_whole_one():
    # 14.88 weeks are 104.2 days: 105 days after Monday 5 January 2026 is Monday 20 April
    assert promise_date(date(2026, 1, 5), 14.88) == date(2026, 4, 20)


def test_a_saturday_becomes_the_monday_after():
    assert promise_date(date(2026, 1, 2), 1 / 7) == date(2026, 1, 5)


def test_a_holiday_is_no_day_to_promise():
    new_year = date(2026, 1, 1)

    assert promise_date(date(2025, 12, 25), 1, closed={new_year}) == date(2026, 1, 2)


def test_a_date_before_the_start_is_refused():
    with pytest.raises(ValueError, match="before the start"):
        promise_date(date(2026, 1, 5), -1)


def test_a_week_without_bench_hours_can_promise_nothing():
    with pytest.raises(ValueError, match="No hours reach the bench"):
        promise_weeks(100, 1.0, 0, 4, 6)


def test_a_longer_queue_moves_the_promise_by_just_as_much():
    sooner = promise_weeks(80, 1.1, 25, 4, 2)
    later = promise_weeks(80, 1.1, 25, 4, 5)

    assert later - sooner == pytest.approx(3, abs=1e-12)


def test_waits_that_work_overlaps_do_not_move_the_date():
    overlapped = [wait for wait in waits() if wait.overlapped]

    assert overlapped
    assert waiting_weeks(overlapped) == 0


def test_an_ordinary_job_waits_for_lumber_its_rest_and_the_cure():
    assert {wait.key for wait in usual_job_waits()} == {"lumber_supply", "acclimatise", "varnish_cure"}


def test_a_wait_shorter_than_its_shortest_is_refused():
    with pytest.raises(ValueError, match="between the shortest and the longest"):
        replace(waits()[0], usual=0.0)


def test_twenty_five_of_forty_paid_hours_reach_the_bench():
    assert bench_hours(40, 0.625) == 25


def test_a_bare_bench_and_no_waits_promise_the_work_alone():
    assert promise_weeks(50, 1.0, 25, 0, 0) == 2


def test_a_queue_below_zero_is_refused():
    with pytest.raises(ValueError, match="zero or more"):
        promise_weeks(50, 1.0, 25, 0, -1)


def test_a_wait_may_be_over_at_once():
    assert replace(waits()[0], least=0.0).least == 0
