"""Questions about time: what runs, what was written down, and on what."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from sqlalchemy import ColumnElement, case, func, select
from sqlalchemy.orm import aliased

from casewright.records.bench import Carcase, Drawer, TimeEntry, Timer
from casewright.records.jobs import Job, Unit
from casewright.records.people import Person
from casewright.records.sessions import Fenced

A_PAGE = 50


class Running(NamedTuple):
    """A person's timer with what it is for."""

    timer: Timer
    job: Job
    drawer_code: str | None


class EntryRow(NamedTuple):
    """One entry of the log."""

    entry: TimeEntry
    person: str
    drawer_code: str | None
    taken_back: bool


class DrawerChoice(NamedTuple):
    """A drawer of a job, to choose from."""

    id: str
    unit: str
    code: str
    piece: int
    pieces: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Log:
    """What was written down about a job.

    Attributes:
        seconds: by operation
        entries: how many entries there are
    """

    seconds: dict[str, int]
    entries: int


def running_timer(db: Fenced, person_id: str) -> Running | None:
    """The timer that a person has running, or has paused; one query."""
    found = db.execute(
        select(Timer, Job, Drawer.code)
        .join(Job, (Job.shop_id == Timer.shop_id) & (Job.id == Timer.job_id))
        .outerjoin(Drawer, (Drawer.shop_id == Timer.shop_id) & (Drawer.id == Timer.drawer_id))
        .where(Timer.person_id == person_id)
    ).first()
    return Running(*found) if found else None


def timers_on(db: Fenced, job_id: str) -> Sequence[str]:
    """The names of those whose timers run or rest on a job; one query."""
    asked = select(Person.name).join(
        Timer, (Timer.shop_id == Person.shop_id) & (Timer.person_id == Person.id)
    )
    return db.scalars(asked.where(Timer.job_id == job_id).order_by(Person.name)).all()


def log_of(db: Fenced, job_id: str, person_id: str = "") -> Log:
    """The time on a job by operation, of everybody or of one person; one query."""
    asked = select(TimeEntry.operation, func.sum(TimeEntry.seconds), func.count(TimeEntry.id)).where(
        TimeEntry.job_id == job_id
    )
    if person_id:
        asked = asked.where(TimeEntry.person_id == person_id)
    found = [
        (code, int(seconds), count)
        for code, seconds, count in db.execute(asked.group_by(TimeEntry.operation))
    ]
    return Log(
        seconds={code: seconds for code, seconds, _ in found}, entries=sum(count for _, _, count in found)
    )


def entries_of(db: Fenced, job_id: str, person_id: str = "", page: int = 1) -> Sequence[EntryRow]:
    """A page of the log of a job, the latest first; one query."""
    counter = aliased(TimeEntry)
    asked = (
        select(TimeEntry, _worker(), Drawer.code, counter.id)
        .join(Person, (Person.shop_id == TimeEntry.shop_id) & (Person.id == TimeEntry.person_id))
        .join(Job, (Job.shop_id == TimeEntry.shop_id) & (Job.id == TimeEntry.job_id))
        .outerjoin(Drawer, (Drawer.shop_id == TimeEntry.shop_id) & (Drawer.id == TimeEntry.drawer_id))
        .outerjoin(
            counter,
            (counter.shop_id == TimeEntry.shop_id)
            & (counter.job_id == TimeEntry.job_id)  # what lets the database find it without reading all
            & (counter.corrects_id == TimeEntry.id),
        )
        .where(TimeEntry.job_id == job_id)
        .order_by(TimeEntry.at.desc(), TimeEntry.id.desc())
        .limit(A_PAGE)
        .offset((page - 1) * A_PAGE)
    )
    if person_id:
        asked = asked.where(TimeEntry.person_id == person_id)
    return [EntryRow(entry, name, code, other is not None) for entry, name, code, other in db.execute(asked)]


def _worker() -> ColumnElement[str]:
    """Who worked: a person of the shop, or somebody invented where the demo's own time is written down."""
    is_of_the_demo = Job.demo.is_(True) & TimeEntry.corrects_id.is_(None)
    return case((is_of_the_demo, TimeEntry.who), else_=Person.name)


def drawers_of_job(db: Fenced, job_id: str) -> Sequence[tuple[DrawerChoice, str]]:
    """The drawers of a job that have an opening, each with its stage; one query."""
    found = db.execute(
        select(Drawer.id, Unit.code, Drawer.code, Carcase.piece, Unit.count, Drawer.stage)
        .join(Carcase, (Carcase.shop_id == Drawer.shop_id) & (Carcase.id == Drawer.carcase_id))
        .join(Unit, (Unit.shop_id == Drawer.shop_id) & (Unit.id == Drawer.unit_id))
        .where(Drawer.job_id == job_id, Drawer.gone.is_(False), Unit.ended_at.is_(None))
        .order_by(Unit.code, Carcase.piece, Drawer.position)
    )
    return [(DrawerChoice(*row[:5]), row[5]) for row in found]


def case_stages_of_job(db: Fenced, job_id: str) -> Sequence[str]:
    """The stage of every case of a job that is to be built; one query."""
    return db.scalars(
        select(Carcase.stage)
        .join(Unit, (Unit.shop_id == Carcase.shop_id) & (Unit.id == Carcase.unit_id))
        .where(Carcase.job_id == job_id, Unit.ended_at.is_(None), Carcase.piece <= Unit.count)
    ).all()


def people_at_work(db: Fenced) -> Sequence[tuple[str, str]]:
    """Id and name of everybody who works in the shop now; one query."""
    found = db.execute(select(Person.id, Person.name).where(Person.ended_at.is_(None)).order_by(Person.name))
    return [(person_id, name) for person_id, name in found]
