"""The demo's hours: what was logged on each operation, near what the estimate gave it and never just that."""

from collections.abc import Iterator, Mapping
from datetime import date, datetime, time
from typing import Any
from zoneinfo import ZoneInfo

from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.records.jobs import Job
from casewright.records.people import Person
from casewright.records.sessions import Fenced
from casewright.shop.time import MINUTE, Work, log_time

RAN = (1.1, 0.85, 1.0, 1.25, 0.95, 0.9, 1.15)
"""How operations ran beside their estimates, one after another."""
SITTING = 180
"""Nobody works longer on one thing without looking up [min]."""
STEP = 5
"""Times are written down to this [min]."""
EVENING = time(17, 30)


def log_hours(
    db: Fenced,
    job: Job,
    estimate: JobEstimate,
    worker: tuple[Person, str],
    days: tuple[date, ...],
    zone: ZoneInfo,
    script: Mapping[str, Any],
) -> None:
    """Writes down the hours of a job, in the order of its operations, spread over the days of the work.

    Args:
        db: the session
        job: the job
        estimate: its estimate, from which the hours are taken
        worker: in whose account it is written down, and the invented name of whoever worked
        days: on which days
        zone: the shop's time zone
        script: how much of each operation is done, and how the whole ran against the estimate
    """
    person, who = worker
    entries = list(_entries(estimate, script["done"], script["share"]))
    for number, (operation, minutes) in enumerate(entries):
        day = days[number * len(days) // len(entries)]
        work = Work(job_id=job.id, operation=operation)
        now = datetime.combine(day, EVENING, zone)
        log_time(db, person, work, minutes * MINUTE, day, who, now)


def _entries(estimate: JobEstimate, done: Mapping[str, float], share: float) -> Iterator[tuple[str, int]]:
    """Operation and minutes of each entry; long work in several."""
    for place, line in enumerate(estimate.labour):
        part = done.get(line.code, done.get(line.code[:1], 0.0))
        left = round(line.minutes * part * share * RAN[place % len(RAN)] / STEP) * STEP
        while left > 0:
            yield line.code, min(left, SITTING)
            left -= SITTING
