"""How far jobs run over their estimates, and the factor that makes a price hold in eight cases of ten.

The ratios are actual hours over estimated hours, both with the allowance, as in the estimate that the factor
is then put on. A ratio against bare minutes would bring the allowance in twice.
"""

import math
import statistics
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from statistics import NormalDist
from typing import Any

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.units import Count, Number
from casewright.pricing.bundled import bundled

FACTOR_DECIMALS = 4


class RiskLevel(StrEnum):
    """How sure the hours of a price are: P80 holds in eight jobs of ten."""

    PLANNED = "planned"
    P50 = "P50"
    P80 = "P80"
    P90 = "P90"


@dataclass(frozen=True, slots=True, kw_only=True)
class RiskFactors:
    """What the estimated hours are multiplied by, for each level of certainty.

    Attributes:
        p50: the median: half of the jobs take longer [dimensionless]
        p80: one job in five takes longer [dimensionless]
        p90: one job in ten takes longer [dimensionless]
        basis: learned from the shop's own jobs, or common practice
        jobs: how many jobs they were learned from [dimensionless]
    """

    p50: Number
    p80: Number
    p90: Number
    basis: str
    jobs: Count = 0

    def __post_init__(self) -> None:
        if not 0 < self.p50 <= self.p80 <= self.p90:
            raise ValueError("Risk factors are above 0, and a surer one is never below a less sure one.")


@dataclass(frozen=True, slots=True, kw_only=True)
class RiskHistory:
    """How the shop's past jobs ran.

    Attributes:
        ratios: actual over estimated hours of each job, allowance in both [dimensionless]
    """

    ratios: tuple[Number, ...] = ()

    def __post_init__(self) -> None:
        if any(not 0 < ratio < math.inf for ratio in self.ratios):
            raise ValueError("A ratio is actual hours over estimated hours, above 0, such as 1.10.")


def log_mean(ratios: tuple[Number, ...]) -> Number:
    """The middle of the ratios on a scale where half as long and twice as long lie equally far away.

    Rule: mean of log(ratio)

    Args:
        ratios: actual over estimated hours [dimensionless]

    Returns:
        The mean of their natural logarithms [dimensionless]

    Source: log-normal distribution, by the method of moments on the logarithms.
    """
    return statistics.fmean(math.log(ratio) for ratio in ratios)


def log_deviation(ratios: tuple[Number, ...]) -> Number:
    """How widely the ratios spread, on the same scale.

    Rule: sample standard deviation of log(ratio)

    Args:
        ratios: actual over estimated hours, at least two [dimensionless]

    Returns:
        The deviation of their natural logarithms [dimensionless]

    Source: log-normal distribution, by the method of moments on the logarithms.
    """
    return statistics.stdev(math.log(ratio) for ratio in ratios)


def risk_factor(mean: Number, deviation: Number, chance: Number) -> Number:
    """What the hours are multiplied by so that they suffice with a given chance.

    Rule: exp(mean + z * deviation), z being the normal quantile of the chance; to 4 decimals

    Args:
        mean: of the logarithms of the ratios [dimensionless]
        deviation: of the logarithms of the ratios [dimensionless]
        chance: how often the hours shall suffice, such as 0.8 [dimensionless]

    Returns:
        The factor, rounded to 4 decimals as it is printed [dimensionless]

    Raises:
        ValueError: the chance is not between 0 and 1.

    Source: log-normal distribution; z is 0.8416 for 80 % and 1.2816 for 90 %.
    """
    if not 0 < chance < 1:
        raise ValueError(f"A chance of {chance:g} is not one; give a number such as 0.8.")
    return round(math.exp(mean + NormalDist().inv_cdf(chance) * deviation), FACTOR_DECIMALS)


def risk_factors(history: RiskHistory, ledger: Ledger = UNKEPT) -> RiskFactors:
    """The risk factors of a shop, from its own jobs where there are enough of them.

    Args:
        history: how the past jobs ran
        ledger: where the working is kept

    Returns:
        Factors for P50, P80 and P90; the ones a shop starts with, and their basis, below three jobs.

    Source: log-normal distribution over the shop's own ratios; common practice without them.
    """
    held = risk_data()
    if len(history.ratios) < held["least_ratios"]:
        return starting_factors(history)
    mean = ledger.take("risk.log_mean", log_mean, ratios=history.ratios)
    deviation = ledger.take("risk.log_deviation", log_deviation, ratios=history.ratios)
    factors = {
        row["level"].lower(): ledger.take(
            f"risk.{row['level']}", risk_factor, mean=mean, deviation=deviation, chance=row["chance"]
        )
        for row in held["levels"]
    }
    return RiskFactors(**factors, basis="learned from the shop's own jobs", jobs=len(history.ratios))


def starting_factors(history: RiskHistory) -> RiskFactors:
    """The risk factors of a shop that has too few jobs behind it to learn from.

    Args:
        history: how the past jobs ran, for their number

    Returns:
        The factors that a shop starts with.

    Source: common practice: a contingency of 5 to 15 % on labour for new designs; P90 from memory.
    """
    factors = {row["level"].lower(): row["without_history"] for row in risk_data()["levels"]}
    return RiskFactors(
        **factors,
        basis=f"common practice: {len(history.ratios)} own jobs are too few to learn from",
        jobs=len(history.ratios),
    )


def factor_at(factors: RiskFactors, level: RiskLevel) -> Number:
    """The factor of one level of certainty.

    Args:
        factors: the shop's factors
        level: how sure the hours are to be; as planned leaves them alone

    Returns:
        What the hours are multiplied by [dimensionless]

    Source: common practice.
    """
    by_level = {RiskLevel.P50: factors.p50, RiskLevel.P80: factors.p80, RiskLevel.P90: factors.p90}
    return by_level.get(level, 1.0)


@cache
def risk_data() -> dict[str, Any]:
    """The levels of certainty, and the factors that a shop starts with.

    Source: common practice; each row names its own.
    """
    return bundled("risk.json")
