"""The hours of a job: what was estimated beside what was worked, and whether they run ahead of the work."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import TypeVar

from casewright.labour.actuals import Comparison, compare
from casewright.labour.bench import CaseProgress, DrawerProgress, Mark, Progress
from casewright.labour.earned import earned_minutes, finished_shares, hours_warning
from casewright.labour.operations import Operation
from casewright.labour.stages import Stage, case_stages, drawer_stages, place_of
from casewright.measure.findings import Finding
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import refusal
from casewright.measure.units import Hours
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.drawer_stock import drawer_stock
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.records.hours import Log
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import figures_from

SOME_TIME = datetime(2000, 1, 1, tzinfo=UTC)
Kind = TypeVar("Kind", bound=Progress)


@dataclass(frozen=True, slots=True, kw_only=True)
class JobHours:
    """The hours of a job.

    Attributes:
        comparison: operation by operation; None where the job cannot be estimated
        warning: whether the hours run ahead of the work; None likewise
        trouble: why the job cannot be estimated
        lost: what went into parts that changes scrap, and is left out of the warning [h]
    """

    comparison: Comparison | None
    warning: Finding | None
    trouble: str = ""
    lost: Hours = 0.0


def shop_operations(figures_text: str) -> tuple[Operation, ...]:
    """The operations of the shop's hours, in the order of the work."""
    return figures_from(figures_text).standards.operations


def job_hours(
    specs: tuple[str, ...],
    figures_text: str,
    today: date,
    log: Log,
    stages: tuple[Sequence[str], Sequence[str]],
    shown: LengthUnit = LengthUnit.INCH,
    changes: tuple[Hours, Hours] = (0.0, 0.0),
) -> JobHours:
    """The hours of a job, estimated and worked.

    Args:
        specs: what was chosen, unit by unit, as JSON texts
        figures_text: the shop's figures, as JSON text
        today: the day from which the promise counts
        log: what was written down
        stages: the last stage of every drawer, and of every case
        shown: the unit in which a refusal is read
        changes: of change orders, the hours in parts that they scrap, and those that no design counts [h]

    Returns:
        The comparison, the allowance put on the estimate as the log holds it, and the warning.
    """
    try:
        estimate = estimated_job(specs, figures_text, today)
    except REFUSALS as error:
        return JobHours(comparison=None, warning=None, trouble=refusal(error, shown))
    worked = [(code, seconds / 60) for code, seconds in log.seconds.items()]
    allowance = figures_from(figures_text).standards.allowance
    return JobHours(
        comparison=compare(estimate.labour, worked, allowance),
        warning=_warning(estimate, sum(minutes for _, minutes in worked), stages, changes),
        lost=changes[0],
    )


def estimated_codes(specs: tuple[str, ...], figures_text: str, today: date) -> tuple[str, ...]:
    """The operations that the estimate of a job gives time to, in the order of the work.

    Args:
        specs: what was chosen, unit by unit, as JSON texts
        figures_text: the shop's figures, as JSON text
        today: the day from which the promise counts

    Returns:
        Their codes; none where the job cannot be estimated.
    """
    try:
        labour = estimated_job(specs, figures_text, today).labour
    except REFUSALS:
        return ()
    return tuple(dict.fromkeys(line.code for line in labour if line.minutes > 0))


def _warning(
    estimate: JobEstimate,
    worked: float,
    stages: tuple[Sequence[str], Sequence[str]],
    changes: tuple[Hours, Hours],
) -> Finding:
    lost, again = changes
    drawers = [progress_at(stage, drawer_stages(), DrawerProgress) for stage in stages[0]]
    cases = [progress_at(stage, case_stages(), CaseProgress) for stage in stages[1]]
    return hours_warning(
        round(estimate.hours + again, 2),
        round(max(0.0, worked / 60 - lost), 2),
        direct=estimate.minutes,
        earned=earned_minutes(estimate.labour, finished_shares(drawers, cases, drawer_stock(estimate))),
    )


def progress_at(stage: str, stages: tuple[Stage, ...], kind: type[Kind]) -> Kind:
    """The progress of something that stands at a stage: that one and all before it are reached."""
    done = stages[: place_of(stage, stages) + 1] if stage else ()
    return kind(reached=tuple(Mark(name=each.code, at=SOME_TIME, who="") for each in done))
