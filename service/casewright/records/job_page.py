"""What the page of one job shows besides its units: its customer, papers, bench, money, hours, history."""

from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import Any, NamedTuple

from sqlalchemy import and_, case, func, select, type_coerce
from sqlalchemy.orm import aliased

from casewright.records.base import Document
from casewright.records.bench import Carcase, Drawer, TimeEntry
from casewright.records.changed_since import order_before_change
from casewright.records.jobs import Customer, History, Job, Payment, Unit
from casewright.records.papers import Paper, PaperKind
from casewright.records.sessions import Fenced

HISTORY_PAGE = 50


class JobHead(NamedTuple):
    """A job, for whom it is, and what was worked on it.

    Attributes:
        job: the job
        customer: its customer
        seconds: the time that was logged on it; what was taken back counts against it [s]
        old_order: the latest order, if one of its units changed after it; else empty
    """

    job: Job
    customer: Customer
    seconds: int
    old_order: str


class PaperRow(NamedTuple):
    """A paper without what stands on it."""

    id: str
    kind: PaperKind
    number: int
    revision: int
    issued_at: datetime
    who: str
    basis_hash: str
    says: dict[str, str] | None
    """What it says of each part and in all; None for those but the newest of their kind, and for old ones."""


class CaseRow(NamedTuple):
    """A case at the bench, with its drawers."""

    code: str
    piece: int
    pieces: int
    stage: str
    again: str
    """The change orders for which it is made again, in part; empty for none."""
    drawers: int


class AtBench(NamedTuple):
    """The drawers of a job at the bench.

    Attributes:
        stages: how many stand at each stage; those not begun under an empty name
        again: the code of each that is made again, with its change orders
    """

    stages: dict[str, int]
    again: list[tuple[str, str]]


def job_head(db: Fenced, job_id: str) -> JobHead | None:
    """A job with its customer and its hours; one query, as the page of a job has none to spare."""
    seconds = select(func.sum(TimeEntry.seconds)).where(TimeEntry.job_id == job_id).scalar_subquery()
    found = db.execute(
        select(Job, Customer, func.coalesce(seconds, 0), order_before_change(job_id))
        .join(Customer, and_(Customer.shop_id == Job.shop_id, Customer.id == Job.customer_id))
        .where(Job.id == job_id)
    ).first()
    if found is None:
        return None
    return JobHead(job=found[0], customer=found[1], seconds=int(found[2]), old_order=found[3] or "")


def papers_of(db: Fenced, job_id: str) -> Sequence[PaperRow]:
    """The papers of a job, the newest first."""
    other = aliased(Paper)
    newest = (
        select(func.max(other.revision))
        .where(other.job_id == job_id, other.kind == Paper.kind)
        .correlate(Paper)
        .scalar_subquery()
    )
    rows = db.execute(
        select(
            Paper.id,
            Paper.kind,
            Paper.number,
            Paper.revision,
            Paper.issued_at,
            Paper.who,
            Paper.basis_hash,
            type_coerce(case((Paper.revision == newest, Paper.says)), Document),
        )
        .where(Paper.job_id == job_id)
        .order_by(Paper.issued_at.desc(), Paper.id.desc())
    )
    return [PaperRow._make(row) for row in rows]


def contents_of(db: Fenced, paper_ids: Iterable[str]) -> Sequence[tuple[str, PaperKind, dict[str, Any]]]:
    """Some papers with all that stands on them, which is much."""
    rows = db.execute(select(Paper.id, Paper.kind, Paper.content).where(Paper.id.in_(list(paper_ids))))
    return [(row[0], row[1], row[2]) for row in rows]


def drawers_of(db: Fenced, job_id: str) -> AtBench:
    """How many drawers of a job stand at each stage, and which are made again; one query."""
    rows = db.execute(
        select(Drawer.stage, Drawer.again, Unit.code, Unit.count, Carcase.piece, Drawer.code)
        .join(Unit, and_(Unit.shop_id == Drawer.shop_id, Unit.id == Drawer.unit_id))
        .join(Carcase, and_(Carcase.shop_id == Drawer.shop_id, Carcase.id == Drawer.carcase_id))
        .where(Drawer.job_id == job_id, Drawer.gone.is_(False))
        .order_by(Unit.code, Carcase.piece, Drawer.position, Drawer.code)
    )
    stages: dict[str, int] = {}
    again: list[tuple[str, str]] = []
    for stage, change, letter, pieces, piece, code in rows:
        stages[stage] = stages.get(stage, 0) + 1
        if change:
            again.append((f"{letter}-{code}{f' ({piece})' if pieces > 1 else ''}", change))
    return AtBench(stages=stages, again=again)


def cases_of(db: Fenced, job_id: str) -> Sequence[CaseRow]:
    """The cases of a job that are to be built, unit by unit."""
    rows = db.execute(
        select(Unit.code, Carcase.piece, Unit.count, Carcase.stage, Carcase.again, func.count(Drawer.id))
        .join(Unit, and_(Unit.shop_id == Carcase.shop_id, Unit.id == Carcase.unit_id))
        .outerjoin(
            Drawer,
            and_(Drawer.shop_id == Carcase.shop_id, Drawer.carcase_id == Carcase.id, Drawer.gone.is_(False)),
        )
        .where(Carcase.job_id == job_id, Unit.ended_at.is_(None), Carcase.piece <= Unit.count)
        .group_by(Unit.code, Carcase.piece, Unit.count, Carcase.stage, Carcase.again)
        .order_by(Unit.code, Carcase.piece)
    )
    return [CaseRow._make(row) for row in rows]


def payments_of(db: Fenced, job_id: str) -> Sequence[Payment]:
    """The payments of a job, in the order in which they came in."""
    return db.scalars(
        select(Payment).where(Payment.job_id == job_id).order_by(Payment.received_on, Payment.id)
    ).all()


def history_of(db: Fenced, job_id: str, *, page: int = 1, most: int = HISTORY_PAGE) -> Sequence[History]:
    """A page of a job's history, the latest first, and one more where there are more."""
    return db.scalars(
        select(History)
        .where(History.job_id == job_id)
        .order_by(History.at.desc(), History.id.desc())
        .limit(most + 1)
        .offset((page - 1) * most)
    ).all()
