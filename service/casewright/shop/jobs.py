"""Jobs: taking one on, changing what is known of it, moving it along."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from casewright.records.base import new_id
from casewright.records.job_page import JobHead, job_head
from casewright.records.jobs import Job, JobState
from casewright.records.sessions import Fenced
from casewright.records.units import has_units
from casewright.shop.customers import load_customer
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
OVER = {JobState.CLOSED: "open it again", JobState.LOST: "take it up again"}
"""States in which no paper is written any more, and what would have to be done first."""
UNDECIDED = {JobState.ENQUIRY, JobState.QUOTED}
"""States in which the customer has yet to say yes."""
OF_UNITS = {JobState.QUOTED, JobState.ACCEPTED}
"""States of which a unit is what was quoted or agreed."""
NO_UNIT = "The job has no unit, so there is nothing to call {}; describe one first, or bring one back."
FIELDS = ("name", "customer_id", "asked", "due_on", "note")
CALLED = {"customer_id": "customer", "asked": "what was asked", "due_on": "due date"}
"""What the history calls a field, where that is not its name."""


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


def load_job_head(db: Fenced, job_id: str) -> JobHead:
    """A job of the shop with its customer and its hours; one query.

    Raises:
        NotFound: the shop has no such job
    """
    found = job_head(db, job_id)
    if found is None:
        raise NotFound("job")
    return found


def refuse_if_over(job: Job, to: str = "write papers for it") -> None:
    """Lets nothing be written or agreed for a job that is over.

    Args:
        job: the job
        to: what somebody wants to do

    Raises:
        Refused: the job is closed or lost
    """
    if said_over(job, to):
        raise Refused(said_over(job, to))


def said_over(job: Job, to: str = "write papers for it") -> str:
    """Why something is not done for a job any more, and what to do first; empty while it goes on."""
    if job.state not in OVER:
        return ""
    return f"The job is {job.state.value}; {OVER[job.state]} to {to}."


def take_on_job(db: Fenced, facts: JobFacts, who: str, now: datetime) -> Job:
    """Takes a new job on, under the shop's next number.

    Raises:
        NotFound: the shop has no such customer
    """
    load_customer(db, facts.customer_id)
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
        NotFound: the shop has no such customer
    """
    before = {name: _plain(getattr(job, name)) for name in FIELDS}
    after = {name: _plain(getattr(facts, name)) for name in FIELDS}
    changed = [name for name in FIELDS if before[name] != after[name]]
    if not changed:  # whoever asks for what is saved already, such as by a second press, is in nobody's way
        return
    if job.version != version:
        raise Stale({name: before[name] for name in changed})
    if "customer_id" in changed:
        was, becomes = load_customer(db, job.customer_id), load_customer(db, facts.customer_id)
        before["customer_id"], after["customer_id"] = was.name, becomes.name
    for name in changed:
        setattr(job, name, getattr(facts, name))
    names = [CALLED.get(name, name) for name in changed]
    note_history(
        db,
        who,
        now,
        f"Changed the job: {', '.join(names)}.",
        job_id=job.id,
        before={called: before[name] for called, name in zip(names, changed, strict=True)},
        after={called: after[name] for called, name in zip(names, changed, strict=True)},
    )


def set_own_figures(
    db: Fenced, job: Job, own: dict[str, Any], who: str, now: datetime, *, version: int | None = None
) -> None:
    """Gives a job figures of its own, such as the miles to drive, readable as a shop's figures are.

    Raises:
        Stale: somebody else saved since the version that the form shows
    """
    if own == job.own:  # whoever changed nothing is in nobody's way, however old the form
        return
    if version is not None and job.version != version:
        raise Stale({})
    note_history(
        db, who, now, "Changed the job's own figures.", job_id=job.id, before=dict(job.own), after=own
    )
    job.own = own


def move_job(db: Fenced, job: Job, state: JobState, who: str, now: datetime, *, why: str = "") -> None:
    """Moves a job to another state, along the arrows only.

    Raises:
        Refused: there is no arrow, or nothing that could be quoted or agreed
    """
    if state is job.state:
        return
    if state not in ARROWS[job.state]:
        raise Refused(f"A job that is {job.state.value} cannot become {state.value} at once.")
    if needs_units(job.state, state) and not has_units(db, job.id):
        raise Refused(NO_UNIT.format(state.value))
    if state is JobState.LOST and not why.strip():
        raise Refused("Write why the job was lost: the next one may be won by it.", 422)
    was, job.state, job.moved_at = job.state, state, now
    reason = f": {why.strip().rstrip('.')}" if why.strip() else ""
    note_history(
        db,
        who,
        now,
        f"The job is {state.value} now, {was.value} before{reason}.",
        job_id=job.id,
        before={"state": was.value},
        after={"state": state.value},
    )


def needs_units(was: JobState, state: JobState) -> bool:
    """Whether a unit must be there for a move: nothing is quoted or agreed before, but one may go back."""
    return state in OF_UNITS and was is not JobState.IN_HAND


def _plain(value: Any) -> str:
    return value.isoformat() if isinstance(value, date) else str(value or "")
