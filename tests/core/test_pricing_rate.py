"""The shop's rate, and mark-up against margin."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.ledger import Ledger
from casewright.pricing.margins import margin_of, markup_from_margin, markup_of, price_from_margin
from casewright.pricing.rate import (
    YearlyCost,
    billable_share_so_far,
    example_year,
    hourly_rate,
    person_cost,
    shop_rate,
)

YEARLY = st.integers(1, 10**9)
HOURS = st.integers(1, 5000)


@given(YEARLY, st.integers(0, 10**8), HOURS, st.floats(0, 0.9))
def test_a_dearer_year_never_lowers_the_rate(yearly, more, hours, profit):
    assert hourly_rate(yearly + more, hours, profit) >= hourly_rate(yearly, hours, profit)


@given(YEARLY, HOURS, st.integers(1, 1000), st.floats(0, 0.9))
def test_more_billable_hours_never_raise_the_rate(yearly, hours, more, profit):
    assert hourly_rate(yearly, hours + more, profit) <= hourly_rate(yearly, hours, profit)


@given(YEARLY, HOURS, st.integers(0, 80), st.integers(1, 10))
def test_a_greater_profit_never_lowers_the_rate(yearly, hours, profit, more):
    assert hourly_rate(yearly, hours, (profit + more) / 100) >= hourly_rate(yearly, hours, profit / 100)


def test_profit_is_a_part_of_the_price_and_not_of_the_cost():
    rate = hourly_rate(11_700_000, 1200, 0.10)

    assert rate == 10833
    assert rate != 10725  # 97.50 x 1.10, the usual slip


@pytest.mark.parametrize("profit", [-0.1, 1.0, 10])
def test_a_profit_that_is_no_part_of_the_price_is_refused(profit):
    with pytest.raises(ValueError, match="of the price cannot be"):
        hourly_rate(11_700_000, 1200, profit)


def test_a_year_without_billable_hours_is_refused():
    with pytest.raises(ValueError, match="No hour of the year"):
        hourly_rate(11_700_000, 0, 0.10)


@pytest.mark.parametrize("share", [0, 1.2])
def test_a_billable_share_out_of_reason_is_refused(share):
    with pytest.raises(ValueError, match="billable share"):
        replace(example_year(), billable_share=share)


def test_a_year_without_weeks_is_refused():
    with pytest.raises(ValueError, match="without paid hours"):
        replace(example_year(), weeks=0)


def test_a_cost_below_nothing_is_refused():
    with pytest.raises(ValueError, match="Rent costs less than nothing"):
        YearlyCost(name="Rent", amount=-1)


def test_every_figure_of_the_rate_can_say_how_it_was_made():
    ledger = Ledger()

    rate = shop_rate(example_year(), ledger)

    assert ledger["hourly_rate"].value == rate.rate
    assert ledger["hourly_cost"].inputs["yearly"] == rate.yearly


def test_a_helper_bears_the_same_overhead_each_hour_as_the_maker():
    helper = person_cost(3_000_000, 1000, 4_220_000, 2000)

    assert helper == 3000 + 2110  # 30.00 of pay and 42,200 over 2,000 hours


def test_a_helper_without_hours_is_refused():
    with pytest.raises(ValueError, match="Without billable hours"):
        person_cost(3_000_000, 0, 4_220_000, 2000)


def test_this_years_billable_share_is_laid_beside_the_one_assumed():
    assert billable_share_so_far(230, 400) == 0.575


def test_there_is_no_billable_share_before_anything_was_paid():
    with pytest.raises(ValueError, match="no share yet"):
        billable_share_so_far(0, 0)


@given(st.integers(1, 10**7), st.floats(0, 0.9))
def test_the_price_from_a_margin_leaves_that_margin(cost, margin):
    price = price_from_margin(cost, margin)

    # the price is whole cents, so the margin is off by at most half a cent of the price
    assert margin_of(price, cost) == pytest.approx(margin, abs=0.51 / price)


@given(st.floats(0, 0.9))
def test_a_margin_is_never_above_its_mark_up(margin):
    assert markup_from_margin(margin) >= margin


@pytest.mark.parametrize(
    ("ask", "message"),
    [
        (lambda: markup_of(100, 0), "has no mark-up"),
        (lambda: margin_of(0, 100), "has no margin"),
        (lambda: markup_from_margin(1.0), "whole price"),
        (lambda: price_from_margin(100, 1.5), "whole price"),
    ],
)
def test_a_margin_that_cannot_be_is_refused(ask, message):
    with pytest.raises(ValueError, match=message):
        ask()


def test_a_cost_may_be_nothing_this_year():
    assert YearlyCost(name="Rent", amount=0).amount == 0
