"""Stages of payment, to the cent."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.pricing.stages import Stage, StagePlan, stage_amounts, stage_plan, stage_plans


@given(st.integers(0, 10**8), st.sampled_from(stage_plans()))
def test_the_stages_add_up_to_the_total(total, plan):
    amounts = stage_amounts(total, plan)

    assert sum(stage.amount for stage in amounts) == total
    assert len(amounts) == len(plan.stages)


@given(st.integers(100, 10**8), st.sampled_from(stage_plans()))
def test_no_stage_is_more_than_two_cents_off_its_share(total, plan):
    amounts = stage_amounts(total, plan)

    off = [stage.amount - total * planned.share for stage, planned in zip(amounts, plan.stages, strict=True)]
    assert max(map(abs, off)) <= 2  # half a cent for each of the others, taken by the last


def test_a_third_of_a_hundred_leaves_the_odd_cent_to_the_last():
    amounts = stage_amounts(10_000, stage_plan("thirds"))

    assert [stage.amount for stage in amounts] == [3333, 3333, 3334]


def test_a_fixed_deposit_comes_off_first():
    plan = StagePlan(
        name="deposit and halves",
        stages=(
            Stage(trigger="signing", amount=50_000),
            Stage(trigger="before finish", share=0.5),
            Stage(trigger="completion", share=0.5),
        ),
    )

    assert [stage.amount for stage in stage_amounts(150_001, plan)] == [50_000, 50_001, 50_000]


def test_a_fixed_last_payment_leaves_the_odd_cent_to_the_last_share():
    plan = StagePlan(
        name="held back",
        stages=(
            Stage(trigger="signing", share=0.5),
            Stage(trigger="completion", share=0.5),
            Stage(trigger="after a month", amount=10_000),
        ),
    )

    assert [stage.amount for stage in stage_amounts(20_001, plan)] == [5001, 5000, 10_000]


def test_a_deposit_above_the_price_is_refused():
    plan = StagePlan(
        name="deposit",
        stages=(Stage(trigger="signing", amount=50_000), Stage(trigger="completion", share=1.0)),
    )

    with pytest.raises(ValueError, match="more than the price"):
        stage_amounts(40_000, plan)


def test_shares_that_miss_a_part_are_refused():
    with pytest.raises(ValueError, match="add up to 90%"):
        StagePlan(name="short", stages=(Stage(trigger="signing", share=0.5), Stage(trigger="end", share=0.4)))


def test_a_plan_of_fixed_amounts_only_is_refused():
    with pytest.raises(ValueError, match="no share to take what is left"):
        StagePlan(name="fixed", stages=(Stage(trigger="signing", amount=100),))


@pytest.mark.parametrize("given_as", [{}, {"share": 0.5, "amount": 100}])
def test_a_stage_is_a_share_or_an_amount(given_as):
    with pytest.raises(ValueError, match="one of the two"):
        Stage(trigger="signing", **given_as)


def test_a_stage_below_zero_is_refused():
    with pytest.raises(ValueError, match="below zero"):
        Stage(trigger="signing", share=-0.1)


def test_an_unknown_plan_is_refused_with_the_names_that_there_are():
    with pytest.raises(ValueError, match="there are: four stages, halves"):
        stage_plan("tenths")
