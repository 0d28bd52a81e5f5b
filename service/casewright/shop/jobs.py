"""Jobs: taking one on, changing what is known of it, moving it along."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from casewright.records.base import new_id
from casewright.records.jobs import Customer, Job, JobState
from casewright.records.sessions import Fenced
from casewright.shop.keeping import next_number, note_history
from casewright.shop.refusals import NotFound, Refused, Stale

ARROWS: dict[JobState, tuple[JobState, ...]] = {
    JobState.ENQUIRY: (JobState.QUOTED, JobState.ACCEPTED, JobState.LOST),
    JobState.QUOTED: (JobState.ACCEPTED, JobState.LOST, JobState.ENQUIRY),
    JobState.ACCEPTED: (JobState.IN_HAND, JobState.LOST),
    JobState.IN_HAND: (JobState.READY, JobState.ACCEPTED),
    JobState.READY: (JobState.DELIVERED, JobState.IN_HAND),
    JobState.DELIVERED: (JobState.CLOSED, JobState.READY),
    JobState.CLOSED: (JobState.DELIVERED,),
    JobState.LOST: (JobState.ENQUIRY,),
}
"""Where a job may go from each state."""
FIELDS = ("name", "asked", "due_on", "note")


@dataclass(frozen=True, slots=True, kw_only=True)
class JobFacts:
    """What is known of a job."""

    name: str
    customer_id: str
    asked: str = ""
    due_on: date | None = None
    note: str = ""


def load_job(db: Fenced, job_id: str) -> Job:
    """A job of the shop.

    Raises:
        NotFound: the shop has no such job
    """
    found = db.get(Job, (db.shop_id, job_id))
    if found is None:
        raise NotFound("job")
    return found


def take_on_job(db: Fenced, facts: JobFacts, who: str, now: datetime) -> Job:
    """Takes a new job on, under the shop's next number.

    Raises:
        NotFound: the shop has no such customer
    """
    if db.get(Customer, (db.shop_id, facts.customer_id)) is None:
        raise NotFound("customer")
    job = Job(
        id=new_id(),
        number=next_number(db, "job"),
        name=facts.name,
        customer_id=facts.customer_id,
        asked=facts.asked,
        due_on=facts.due_on,
        note=facts.note,
        state=JobState.ENQUIRY,
        own={},
        created_at=now,
        moved_at=now,
    )
    db.add(job)
    db.flush()
    note_history(db, who, now, f"Took on job {job.number}, {job.name}.", job_id=job.id)
    return job


def change_job(db: Fenced, job: Job, facts: JobFacts, version: int, who: str, now: datetime) -> None:
    """Changes what is known of a job.

    Raises:
        Stale: somebody else saved since the version that the form shows
    """
    before = {name: _plain(getattr(job, name)) for name in FIELDS}
    after = {name: _plain(getattr(facts, name)) for name in FIELDS}
    if job.version != version:
        raise Stale({name: value for name, value in before.items() if value != after[name]})
    changed = [name for name in FIELDS if before[name] != after[name]]
    if not changed:
        return
    for name in changed:
        setattr(job, name, getattr(facts, name))
    note_history(
        db,
        who,
        now,
        f"Changed the job: {', '.join(name.replace('_on', ' date') for name in changed)}.",
        job_id=job.id,
        before={name: before[name] for name in changed},
        after={name: after[name] for name in changed},
    )


def set_own_figures(db: Fenced, job: Job, own: dict[str, Any], who: str, now: datetime) -> None:
    """Gives a job figures of its own, such as the miles to drive, readable as a shop's figures are."""
    if own == job.own:
        return
    note_history(
        db, who, now, "Changed the job's own figures.", job_id=job.id, before=dict(job.own), after=own
    )
    job.own = own


def move_job(db: Fenced, job: Job, state: JobState, who: str, now: datetime, *, why: str = "") -> None:
    """Moves a job to another state, along the arrows only.

    Raises:
        Refused: there is no arrow
    """
    if state is job.state:
        return
    if state not in ARROWS[job.state]:
        raise Refused(f"A job that is {job.state.value} cannot become {state.value} at once.")
    was, job.state, job.moved_at = job.state, state, now
    note_history(
        db,
        who,
        now,
        f"The job is {state.value} now, {was.value} before{f': {why}' if why else ''}.",
        job_id=job.id,
        before={"state": was.value},
        after={"state": state.value},
    )


def _plain(value: Any) -> str:
    return value.isoformat() if isinstance(value, date) else str(value or "")
