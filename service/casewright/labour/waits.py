"""Waiting that is not work, and the date that can be promised when it is counted."""

import math
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache

from casewright.labour.figures import bundled
from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import Hours, Minutes, Number, Weeks

MINUTES_PER_WEEK = 7 * 24 * 60
DAYS_PER_WEEK = 7
SATURDAY = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """A time that passes without anyone at work.

    Attributes:
        key: its short name in data files
        name: what is waited for
        least: the shortest [min]
        most: the longest [min]
        usual: what is planned with [min]
        overlapped: other work of the job goes on meanwhile, so it does not move the date
        source: where the times come from
        basis: published, common practice, from memory or learned
    """

    key: str
    name: str
    least: Minutes
    most: Minutes
    usual: Minutes
    overlapped: bool
    source: str
    basis: str

    def __post_init__(self) -> None:
        if not 0 <= self.least <= self.usual <= self.most:
            raise ValueError(f"{self.name}: the usual time lies between the shortest and the longest.")


@cache
def waits() -> tuple[Wait, ...]:
    """The waits that a shop starts with.

    Returns:
        Glue, rest, lumber, finish; each with its shortest, usual and longest time.

    Source: leevalley.com for PVA glue; the rest is common practice.
    """
    return tuple(wait(row) for row in bundled("waits.json")["waits"])


def wait(row: dict[str, object]) -> Wait:
    """One wait read from a row of a data file.

    Args:
        row: its fields, as JSON gives them, times in minutes

    Returns:
        The wait.

    Source: common practice.
    """
    plain = {name.removesuffix("_minutes"): value for name, value in row.items()}
    return Wait(**plain)  # type: ignore[arg-type]


@cache
def usual_job_waits() -> tuple[Wait, ...]:
    """The waits of an ordinary job that no work overlaps: the lumber, its rest in stickers, the cure.

    Source: common practice.
    """
    keys = bundled("waits.json")["usual_job"]
    return tuple(one for one in waits() if one.key in keys)


def waiting_weeks(job: Iterable[Wait]) -> Weeks:
    """How many weeks a job stands still.

    Rule: sum of the usual times of the waits that no work overlaps

    Args:
        job: the waits of the job, each once

    Returns:
        The waits that move the date [week]

    Source: common practice.
    """
    return math.fsum(one.usual for one in job if not one.overlapped) / MINUTES_PER_WEEK


def bench_hours(paid_week: Hours, share: Number) -> Hours:
    """How many hours of a paid week are spent on jobs.

    Rule: paid_week * share

    Args:
        paid_week: hours paid in a week [hour]
        share: the part that reaches the bench; 0.5 to 0.7 is usual [dimensionless]

    Returns:
        Hours at the bench in a week [hour]

    Source: common practice.
    """
    return paid_week * share


def promise_weeks(
    hours: Hours,
    factor: Number,
    bench_hours_per_week: Hours,
    waits_weeks: Weeks,
    queue_weeks: Weeks,
) -> Weeks:
    """How long from today until the piece is ready.

    Rule: queue_weeks + hours * factor / bench_hours_per_week + waits_weeks

    Args:
        hours: estimated hours, allowance included [hour]
        factor: how such jobs run over: the median for an expectation, P80 for a promise [dimensionless]
        bench_hours_per_week: hours at the bench in a week [hour]
        waits_weeks: the waits that no work overlaps [week]
        queue_weeks: until the bench is free of earlier jobs [week]

    Returns:
        Weeks from today [week]

    Raises:
        ValueError: no hours reach the bench, or something is below zero.

    Source: common practice.
    """
    if bench_hours_per_week <= 0:
        raise ValueError("No hours reach the bench, so no date can be promised; give the hours of a week.")
    if min(hours, factor, waits_weeks, queue_weeks) < 0:
        raise ValueError("Hours, factor, waits and queue are zero or more.")
    return queue_weeks + hours * factor / bench_hours_per_week + waits_weeks


def promise_date(start: date, weeks: Weeks, closed: Collection[date] = ()) -> date:
    """The day that can be promised: whole days, and never one on which nobody delivers.

    Weeks become days of the calendar, and a day begun counts as a whole one. If that day is a Saturday, a
    Sunday or one on which the shop is closed, the next working day is promised.

    Args:
        start: the day from which is counted
        weeks: how long it takes [week]
        closed: holidays

    Returns:
        The day.

    Raises:
        ValueError: the weeks are below zero.

    Source: common practice.
    """
    if weeks < 0:
        raise ValueError("A date before the start cannot be promised.")
    day = start + timedelta(days=math.ceil(weeks * DAYS_PER_WEEK - TOLERANCE))
    while day.weekday() >= SATURDAY or day in closed:
        day += timedelta(days=1)
    return day
