"""Questions about change orders: one with its job, those of a job, and what was agreed before them."""

from collections.abc import Sequence
from datetime import datetime
from typing import Any, NamedTuple

from sqlalchemy import select

from casewright.records.jobs import Job, Unit
from casewright.records.papers import ChangeOrder, Quote, QuoteState
from casewright.records.sessions import Fenced


class ChangeRow(NamedTuple):
    """A change order without what it says."""

    id: str
    unit_id: str
    number: int
    before: int
    after: int
    net_cents: int
    total_cents: int
    created_at: datetime
    agreed_at: datetime | None
    agreed_name: str
    withdrawn_at: datetime | None


def change_order_with_job(db: Fenced, change_id: str) -> tuple[ChangeOrder, Job, Unit] | None:
    """A change order with its job and unit; one query."""
    found = db.execute(
        select(ChangeOrder, Job, Unit)
        .join(Job, (Job.shop_id == ChangeOrder.shop_id) & (Job.id == ChangeOrder.job_id))
        .join(Unit, (Unit.shop_id == ChangeOrder.shop_id) & (Unit.id == ChangeOrder.unit_id))
        .where(ChangeOrder.id == change_id)
    ).first()
    return (found[0], found[1], found[2]) if found else None


def changes_of_job(db: Fenced, job_id: str) -> Sequence[ChangeRow]:
    """The change orders of a job, the newest first; one query."""
    columns = [getattr(ChangeOrder, name) for name in ChangeRow._fields]
    found = db.execute(
        select(*columns).where(ChangeOrder.job_id == job_id).order_by(ChangeOrder.number.desc())
    )
    return [ChangeRow(*row) for row in found]


def open_change(db: Fenced, unit_id: str, after: int) -> ChangeRow | None:
    """The change order that would make a revision of a unit the agreed one, and waits; one query."""
    columns = [getattr(ChangeOrder, name) for name in ChangeRow._fields]
    found = db.execute(
        select(*columns)
        .where(
            ChangeOrder.unit_id == unit_id,
            ChangeOrder.after == after,
            ChangeOrder.agreed_at.is_(None),
            ChangeOrder.withdrawn_at.is_(None),
        )
        .order_by(ChangeOrder.number.desc())
        .limit(1)
    ).first()
    return ChangeRow(*found) if found else None


class LostRow(NamedTuple):
    """Boards that went into parts which a change scraps."""

    job_id: str
    number: int
    agreed_at: datetime
    lost: list[dict[str, Any]] | None
    """Wood, cut, size and feet of each; None in orders from before."""


def lost_in_changes(db: Fenced, job_ids: Sequence[str]) -> Sequence[LostRow]:
    """What the agreed change orders of some jobs took of the boards that were bought; one query."""
    found = db.execute(
        select(ChangeOrder.job_id, ChangeOrder.number, ChangeOrder.agreed_at, ChangeOrder.content["lost"])
        .where(ChangeOrder.job_id.in_(list(job_ids)), ChangeOrder.agreed_at.is_not(None))
        .order_by(ChangeOrder.number)
    )
    return [LostRow(*row) for row in found]


def hours_in_changes(db: Fenced, job_id: str) -> tuple[float, float]:
    """What the agreed change orders of a job make of its hours; one query.

    Returns:
        Hours that went into parts which they scrap, and hours that no design counts; orders from before
        they were written down say neither [h].
    """
    content = ChangeOrder.content
    found = db.execute(
        select(content["hours_lost"].as_float(), content["hours_again"].as_float()).where(
            ChangeOrder.job_id == job_id, ChangeOrder.agreed_at.is_not(None)
        )
    ).all()
    return sum(row[0] or 0.0 for row in found), sum(row[1] or 0.0 for row in found)


def agreed_quotes(db: Fenced, job_id: str) -> Sequence[Quote]:
    """The quotes of a job that were accepted, the one answered last first; one query."""
    return db.scalars(
        select(Quote)
        .where(Quote.job_id == job_id, Quote.state == QuoteState.ACCEPTED)
        .order_by(Quote.answered_at.desc(), Quote.id.desc())
    ).all()
