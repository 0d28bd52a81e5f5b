"""Questions about quotes, options and issued papers."""

from collections.abc import Iterable, Sequence
from datetime import date, datetime
from typing import NamedTuple

from sqlalchemy import select

from casewright.records.jobs import Customer, Job, UnitOption
from casewright.records.papers import Paper, PaperKind, Quote, QuoteState
from casewright.records.people import Shop
from casewright.records.sessions import Fenced


class QuoteRow(NamedTuple):
    """One line of the list of a job's quotes."""

    id: str
    number: int
    revision: int
    state: QuoteState
    total_cents: int | None
    issued_at: datetime | None
    valid_until: date | None
    answered_at: datetime | None
    answered_name: str


class IssueRow(NamedTuple):
    """One issue of a paper, without what it says."""

    id: str
    number: int
    revision: int
    issued_at: datetime
    who: str


def quote_rows(db: Fenced, job_id: str) -> Sequence[QuoteRow]:
    """A job's quotes, the newest first, without what they say."""
    columns = [getattr(Quote, name) for name in QuoteRow._fields]
    found = db.execute(
        select(*columns).where(Quote.job_id == job_id).order_by(Quote.number.desc(), Quote.revision.desc())
    )
    return [QuoteRow(*row) for row in found]


def quote_with_job(db: Fenced, quote_id: str) -> tuple[Quote, Job, Customer] | None:
    """A quote with its job and customer, in one query."""
    found = db.execute(
        select(Quote, Job, Customer)
        .join(Job, (Job.shop_id == Quote.shop_id) & (Job.id == Quote.job_id))
        .join(Customer, (Customer.shop_id == Job.shop_id) & (Customer.id == Job.customer_id))
        .where(Quote.id == quote_id)
    ).first()
    return (found[0], found[1], found[2]) if found else None


def quotes_of(db: Fenced, job_id: str) -> Sequence[Quote]:
    """A job's quotes, whole."""
    return db.scalars(select(Quote).where(Quote.job_id == job_id).order_by(Quote.id)).all()


def quote_by_link(db: Fenced, link_hash: str) -> tuple[Quote, Shop, Job, Customer] | None:
    """The quote that a link opens, with its shop, job and customer."""
    found = db.execute(
        select(Quote, Shop, Job, Customer)
        .join(Shop, Shop.shop_id == Quote.shop_id)
        .join(Job, (Job.shop_id == Quote.shop_id) & (Job.id == Quote.job_id))
        .join(Customer, (Customer.shop_id == Job.shop_id) & (Customer.id == Job.customer_id))
        .where(Quote.link_hash == link_hash)
    ).first()
    return (found[0], found[1], found[2], found[3]) if found else None


def options_of(db: Fenced, unit_ids: Iterable[str]) -> Sequence[UnitOption]:
    """The options of some units, in the order in which they were made."""
    return db.scalars(
        select(UnitOption).where(UnitOption.unit_id.in_(list(unit_ids))).order_by(UnitOption.id)
    ).all()


def papers_of_kind(db: Fenced, job_id: str, kind: PaperKind) -> Sequence[IssueRow]:
    """A job's papers of one kind, the newest first, without what they say."""
    columns = [getattr(Paper, name) for name in IssueRow._fields]
    found = db.execute(
        select(*columns)
        .where(Paper.job_id == job_id, Paper.kind == kind)
        .order_by(Paper.number.desc(), Paper.revision.desc())
    )
    return [IssueRow(*row) for row in found]


def paper_with_job(db: Fenced, paper_id: str) -> tuple[Paper, Job] | None:
    """A paper with its job."""
    found = db.execute(
        select(Paper, Job)
        .join(Job, (Job.shop_id == Paper.shop_id) & (Job.id == Paper.job_id))
        .where(Paper.id == paper_id)
    ).first()
    return (found[0], found[1]) if found else None
