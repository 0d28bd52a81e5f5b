"""Questions about finished jobs: what was logged on them, and of which units they were."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from typing import NamedTuple

from sqlalchemy import exists, func, select

from casewright.records.bench import TimeEntry
from casewright.records.jobs import Job, JobState, Unit, UnitRevision
from casewright.records.papers import ChangeOrder
from casewright.records.people import ShopFigures
from casewright.records.sessions import Fenced

FINISHED = (JobState.READY, JobState.DELIVERED, JobState.CLOSED)
LATEST = 12
"""A standard is taught by the latest jobs; older ones were made by other hands and habits."""
REVISIONS = 200


class Logged(NamedTuple):
    """What was logged on one operation of a finished job."""

    job_id: str
    operation: str
    seconds: int
    begun_on: date


def has_log(db: Fenced) -> bool:
    """Whether time was logged on any finished job; one query. The jobs of a demo teach nothing."""
    found = db.execute(
        select(TimeEntry.id)
        .join(Job, (Job.shop_id == TimeEntry.shop_id) & (Job.id == TimeEntry.job_id))
        .where(Job.state.in_(FINISHED), Job.demo.is_(False), TimeEntry.operation != "")
        .limit(1)
    )
    return found.first() is not None


def finished_jobs(db: Fenced) -> Sequence[Job]:
    """The latest finished jobs on which time was logged; one query.

    The jobs of a demo teach nothing, nor do those of which a change had parts made twice.
    """
    made_twice = exists().where(
        ChangeOrder.shop_id == Job.shop_id,
        ChangeOrder.job_id == Job.id,
        ChangeOrder.agreed_at.is_not(None),
        ChangeOrder.content["hours_lost"].as_float() > 0,
    )
    logged = exists().where(
        TimeEntry.shop_id == Job.shop_id, TimeEntry.job_id == Job.id, TimeEntry.operation != ""
    )
    return db.scalars(
        select(Job)
        .where(Job.state.in_(FINISHED), Job.demo.is_(False), logged, ~made_twice)
        .order_by(Job.number.desc())
        .limit(LATEST)
    ).all()


def logged_on(db: Fenced, jobs: Iterable[Job]) -> list[Logged]:
    """The time on each operation of some jobs; one query."""
    found = db.execute(
        select(
            TimeEntry.job_id,
            TimeEntry.operation,
            func.sum(TimeEntry.seconds),
            func.min(TimeEntry.on_day),
        )
        .where(TimeEntry.job_id.in_([job.id for job in jobs]), TimeEntry.operation != "")
        .group_by(TimeEntry.job_id, TimeEntry.operation)
    )
    return [Logged(job, code, int(seconds), begun) for job, code, seconds, begun in found if seconds > 0]


def unit_revisions_of(db: Fenced, jobs: Iterable[Job]) -> Mapping[str, list[UnitRevision]]:
    """The present revision of every unit of some jobs, by job; one query."""
    found = db.execute(
        select(Unit.job_id, UnitRevision)
        .join(
            UnitRevision,
            (UnitRevision.shop_id == Unit.shop_id)
            & (UnitRevision.unit_id == Unit.id)
            & (UnitRevision.number == Unit.revision),
        )
        .where(Unit.job_id.in_([job.id for job in jobs]), Unit.ended_at.is_(None))
        .order_by(Unit.code)
    )
    by_job: dict[str, list[UnitRevision]] = {}
    for job_id, revision in found:
        by_job.setdefault(job_id, []).append(revision)
    return by_job


def minutes_by_revision(db: Fenced) -> list[tuple[datetime, Mapping[str, object]]]:
    """The shop's own minutes as each of the latest revisions had them, the latest first; one query."""
    found = db.execute(
        select(ShopFigures.at, ShopFigures.spec["minutes"])
        .order_by(ShopFigures.revision.desc())
        .limit(REVISIONS)
    )
    return [(at, minutes or {}) for at, minutes in found]
