"""How the hours that were logged teach the standards, slowly enough that one job cannot swing them."""

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from casewright.labour.figures import Figures, house_figures
from casewright.measure.units import Count, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """What a set of logged figures did to a standard.

    Attributes:
        old: the standard before, in its own unit [dimensionless]
        new: the standard now, in the same unit [dimensionless]
        kept: what was learned from, in the same unit [dimensionless]
        outliers: what lies too far off: each needs a reason, and belongs to the risk history [dimensionless]
    """

    old: Number
    new: Number
    kept: tuple[Number, ...]
    outliers: tuple[Number, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """A standard with how often it was timed, for one wood, method or person, or for all of them.

    Attributes:
        label: whose it is, such as “hard maple, by hand”
        standard: the figure, in its own unit [dimensionless]
        times: how many jobs it was learned from [dimensionless]
    """

    label: str
    standard: Number
    times: Count


def taught(old: Number, actuals: Sequence[Number], trust: Number) -> Number:
    """The standard after new figures have come in: minutes each, a waste, a coverage, a lead time.

    Rule: (trust * old + sum(actuals)) / (trust + count of actuals)

    Args:
        old: the standard so far, in its own unit [dimensionless]
        actuals: what each job took, in the same unit [dimensionless]
        trust: how many jobs the old figure counts for [dimensionless]

    Returns:
        The new standard, in the same unit [dimensionless]

    Raises:
        ValueError: there is nothing to learn from and no trust in the old figure either.

    Source: common practice: a weighted mean of the old figure and the new ones.
    """
    if trust < 0 or trust + len(actuals) == 0:
        raise ValueError("Give the old figure a trust of at least 1 job, or some figures to learn from.")
    return (trust * old + math.fsum(actuals)) / (trust + len(actuals))


def deviations_away(actual: Number, others: Sequence[Number]) -> Number:
    """How far one figure lies from the others, in their own standard deviations.

    Rule: abs(actual - mean of others) / sample deviation of others

    Args:
        actual: the figure that is judged, in its own unit [dimensionless]
        others: at least two more, in the same unit, without the one that is judged [dimensionless]

    Returns:
        The distance; endless where the others agree to the last digit and this one does not [dimensionless]

    Source: common practice.
    """
    distance = abs(actual - statistics.fmean(others))
    spread = statistics.stdev(others)
    if distance <= 1e-9 * max(1.0, abs(actual)):
        return 0.0
    return distance / spread if spread > 0 else math.inf


def outlying(actuals: Sequence[Number], figures: Figures | None = None) -> tuple[bool, ...]:
    """Which figures lie so far from the others that they need a reason.

    Each is judged by the others alone, since a wild one hides itself in a spread that it made.

    Args:
        actuals: what each job took, in one unit [dimensionless]
        figures: the shop's limits; None for the ones it starts with

    Returns:
        For each figure whether it is an outlier; none is while there are too few others to judge by.

    Source: common practice: 2.5 deviations.
    """
    held = figures or house_figures()
    if len(actuals) <= held.least_jobs:
        return (False,) * len(actuals)
    return tuple(
        deviations_away(actual, [*actuals[:place], *actuals[place + 1 :]]) > held.outlier
        for place, actual in enumerate(actuals)
    )


def lesson(old: Number, actuals: Sequence[Number], figures: Figures | None = None) -> Lesson:
    """What logged figures teach: outliers set aside, the rest folded into the standard.

    Args:
        old: the standard so far, in its own unit [dimensionless]
        actuals: what each job took, in the same unit [dimensionless]
        figures: the shop's trust and limits; None for the ones it starts with

    Returns:
        The new standard, what it was learned from, and what was set aside.

    Source: common practice.
    """
    held = figures or house_figures()
    judged = tuple(zip(actuals, outlying(actuals, held), strict=True))
    kept = tuple(actual for actual, far in judged if not far)
    return Lesson(
        old=old,
        new=taught(old, kept, held.trust),
        kept=kept,
        outliers=tuple(actual for actual, far in judged if far),
    )


def standard_to_use(records: Sequence[Record], figures: Figures | None = None) -> Record:
    """Which standard holds: the narrowest that was timed often enough.

    Args:
        records: from the narrowest, such as this person in this wood by hand, to the widest
        figures: how often is enough; None for what the shop starts with

    Returns:
        The first that is based on enough jobs; the widest when none is.

    Raises:
        ValueError: there are no records.

    Source: common practice.
    """
    if not records:
        raise ValueError("There is no standard to choose from; give at least the shop's own.")
    least = (figures or house_figures()).least_jobs
    return next((record for record in records if record.times >= least), records[-1])
