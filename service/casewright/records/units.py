"""Queries over units: their revisions, cases and drawers, and earlier units that a new one may start from."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import or_, select

from casewright.records.bench import Carcase, Drawer
from casewright.records.customers import contains
from casewright.records.jobs import Job, Unit, UnitRevision
from casewright.records.sessions import Fenced

A_PAGE = 50


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlierUnit:
    """A unit of some job, to be copied."""

    id: str
    code: str
    name: str
    job_number: int
    job_name: str


def unit_with_job(
    db: Fenced, unit_id: str, number: int | None = None
) -> tuple[Unit, Job, UnitRevision] | None:
    """A unit with its job and one of its revisions, the present one where none is named; one query."""
    asked = UnitRevision.number == (Unit.revision if number is None else number)
    found = db.execute(
        select(Unit, Job, UnitRevision)
        .join(Job, (Job.shop_id == Unit.shop_id) & (Job.id == Unit.job_id))
        .join(
            UnitRevision,
            (UnitRevision.shop_id == Unit.shop_id) & (UnitRevision.unit_id == Unit.id) & asked,
        )
        .where(Unit.id == unit_id)
    ).first()
    return (found[0], found[1], found[2]) if found else None


def revision_of(db: Fenced, unit_id: str, number: int) -> UnitRevision | None:
    """One revision of a unit; one query."""
    return db.scalar(
        select(UnitRevision).where(UnitRevision.unit_id == unit_id, UnitRevision.number == number)
    )


def units_with_revisions(db: Fenced, job_id: str) -> Sequence[tuple[Unit, UnitRevision]]:
    """The units of a job that were not taken out, at their present revisions, in the order of their codes."""
    found = db.execute(
        select(Unit, UnitRevision)
        .join(
            UnitRevision,
            (UnitRevision.shop_id == Unit.shop_id)
            & (UnitRevision.unit_id == Unit.id)
            & (UnitRevision.number == Unit.revision),
        )
        .where(Unit.job_id == job_id, Unit.ended_at.is_(None))
        .order_by(Unit.code)
    )
    return [(row[0], row[1]) for row in found]


def codes_of(db: Fenced, job_id: str) -> set[str]:
    """The codes of all units that a job has or had: none is given twice."""
    return set(db.scalars(select(Unit.code).where(Unit.job_id == job_id)))


def cases_of_unit(db: Fenced, unit_id: str) -> Sequence[Carcase]:
    """The cases of a unit, one for each piece that was ever asked for."""
    return db.scalars(select(Carcase).where(Carcase.unit_id == unit_id)).all()


def drawers_of_unit(db: Fenced, unit_id: str) -> Sequence[Drawer]:
    """The drawers of a unit, also those without an opening now."""
    return db.scalars(select(Drawer).where(Drawer.unit_id == unit_id)).all()


def revisions_of(db: Fenced, unit_id: str, below: int | None = None) -> Sequence[UnitRevision]:
    """The revisions of a unit, the latest first, one more than a page shows so that changes can be told."""
    asked = select(UnitRevision).where(UnitRevision.unit_id == unit_id)
    if below is not None:
        asked = asked.where(UnitRevision.number < below)
    return list(db.scalars(asked.order_by(UnitRevision.number.desc()).limit(A_PAGE + 1)))


def has_units(db: Fenced, job_id: str) -> bool:
    """Whether a job has a unit that was not taken out."""
    asked = select(Unit.id).where(Unit.job_id == job_id, Unit.ended_at.is_(None)).limit(1)
    return db.scalar(asked) is not None


def earlier_units(db: Fenced, words: str = "") -> list[EarlierUnit]:
    """The latest units of all jobs, or those whose name or job has the words in it."""
    asked: Any = (
        select(Unit.id, Unit.code, Unit.name, Job.number, Job.name)
        .join(Job, (Job.shop_id == Unit.shop_id) & (Job.id == Unit.job_id))
        .where(Unit.ended_at.is_(None))
    )
    for word in words.split():
        like = contains(word)
        asked = asked.where(or_(Unit.name.ilike(like, escape="\\"), Job.name.ilike(like, escape="\\")))
    found = db.execute(asked.order_by(Unit.created_at.desc(), Unit.id).limit(A_PAGE))
    return [
        EarlierUnit(id=row[0], code=row[1], name=row[2], job_number=row[3], job_name=row[4]) for row in found
    ]
