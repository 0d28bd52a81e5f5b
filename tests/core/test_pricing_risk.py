"""Risk factors from the shop's own jobs."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.ledger import Ledger
from casewright.pricing.risk import (
    RiskFactors,
    RiskHistory,
    RiskLevel,
    factor_at,
    risk_factor,
    risk_factors,
)

RATIOS = st.lists(st.floats(0.5, 2.0), min_size=3, max_size=20).map(tuple)


@given(RATIOS)
def test_a_surer_factor_is_never_smaller(ratios):
    factors = risk_factors(RiskHistory(ratios=ratios))

    assert factors.p50 <= factors.p80 <= factors.p90


@given(RATIOS, st.floats(1.01, 1.5))
def test_a_shop_that_runs_over_further_has_higher_factors_in_proportion(ratios, further):
    before = risk_factors(RiskHistory(ratios=ratios))
    after = risk_factors(RiskHistory(ratios=tuple(ratio * further for ratio in ratios)))

    # both are printed to 4 decimals
    assert after.p80 == pytest.approx(before.p80 * further, abs=0.00015)


@given(st.floats(0.5, 2.0), st.integers(3, 10))
def test_jobs_that_all_run_alike_leave_no_doubt(ratio, jobs):
    factors = risk_factors(RiskHistory(ratios=(ratio,) * jobs))

    assert factors.p50 == factors.p80 == factors.p90 == pytest.approx(ratio, abs=0.00005)


def test_twice_as_long_and_half_as_long_cancel_out():
    factors = risk_factors(RiskHistory(ratios=(2.0, 0.5, 1.0)))

    assert factors.p50 == 1.0
    # sample deviation of log 2, -log 2, 0 is log 2, so P80 is 2 ** 0.8416 = 1.792
    assert factors.p80 == pytest.approx(1.792, abs=0.001)


@pytest.mark.parametrize("ratios", [(), (1.3,), (1.3, 1.1)])
def test_fewer_than_three_jobs_teach_nothing_and_the_factors_say_so(ratios):
    factors = risk_factors(RiskHistory(ratios=ratios))

    assert (factors.p50, factors.p80, factors.p90) == (1.0, 1.15, 1.25)
    assert factors.basis.startswith("common practice")
    assert factors.jobs == len(ratios)


def test_factors_learned_from_jobs_say_from_how_many():
    factors = risk_factors(RiskHistory(ratios=(1.0, 1.1, 1.2)))

    assert factors.basis == "learned from the shop's own jobs"
    assert factors.jobs == 3


def test_the_working_of_a_factor_is_kept():
    ledger = Ledger()

    risk_factors(RiskHistory(ratios=(1.0, 1.1, 1.2)), ledger)

    assert ledger["risk.P80"].inputs["chance"] == 0.8


@pytest.mark.parametrize(
    ("level", "factor"),
    [(RiskLevel.PLANNED, 1.0), (RiskLevel.P50, 1.1), (RiskLevel.P80, 1.2), (RiskLevel.P90, 1.3)],
)
def test_each_level_has_its_factor(level, factor):
    factors = RiskFactors(p50=1.1, p80=1.2, p90=1.3, basis="example")

    assert factor_at(factors, level) == factor


@pytest.mark.parametrize("ratio", [0, -1, math.inf, math.nan])
def test_a_ratio_that_is_none_is_refused(ratio):
    with pytest.raises(ValueError, match="actual hours over estimated"):
        RiskHistory(ratios=(1.0, 1.0, ratio))


@pytest.mark.parametrize("chance", [0, 1, 80])
def test_a_chance_that_is_none_is_refused(chance):
    with pytest.raises(ValueError, match=r"such as 0\.8"):
        risk_factor(0, 0.1, chance)


def test_factors_in_the_wrong_order_are_refused():
    with pytest.raises(ValueError, match="a surer one is never below"):
        RiskFactors(p50=1.2, p80=1.1, p90=1.3, basis="example")


def test_a_factor_of_nothing_is_refused():
    with pytest.raises(ValueError, match="above 0"):
        RiskFactors(p50=0, p80=1.1, p90=1.3, basis="example")
