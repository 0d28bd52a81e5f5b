"""Questions about what changed in a job after something was issued for it."""

from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import NamedTuple

from sqlalchemy import ScalarSelect, func, or_, select

from casewright.records.jobs import Unit, UnitRevision
from casewright.records.sessions import Fenced
from casewright.records.stock import OrderJob, OrderState, SupplyOrder


class ChangedUnit(NamedTuple):
    """A unit that was revised, added or taken out."""

    job_id: str
    code: str
    at: datetime
    ended_at: datetime | None


def units_changed_since(db: Fenced, job_ids: Iterable[str], moment: datetime) -> Sequence[ChangedUnit]:
    """The units of some jobs that were revised, added or taken out after a moment; one query."""
    last = func.max(UnitRevision.at)
    rows = db.execute(
        select(Unit.job_id, Unit.code, last, Unit.ended_at)
        .join(UnitRevision, (UnitRevision.shop_id == Unit.shop_id) & (UnitRevision.unit_id == Unit.id))
        .where(Unit.job_id.in_(list(job_ids)))
        # What was added and taken out again since makes no difference.
        .where(or_(Unit.ended_at.is_(None), Unit.created_at <= moment))
        .group_by(Unit.job_id, Unit.id, Unit.code, Unit.ended_at)
        .having(or_(last > moment, Unit.ended_at > moment))
        .order_by(Unit.job_id, Unit.code)
    )
    return [ChangedUnit(*row) for row in rows]


def order_before_change(job_id: str) -> ScalarSelect[str | None]:
    """As part of another query: the latest order of a job, if one of its units changed after it."""
    changed = (
        select(func.max(UnitRevision.at))
        .join(Unit, (Unit.shop_id == UnitRevision.shop_id) & (Unit.id == UnitRevision.unit_id))
        .where(Unit.job_id == job_id)
        .scalar_subquery()
    )
    taken_out = select(func.max(Unit.ended_at)).where(Unit.job_id == job_id).scalar_subquery()
    return (
        select(func.max(SupplyOrder.id))
        .join(OrderJob, (OrderJob.shop_id == SupplyOrder.shop_id) & (OrderJob.order_id == SupplyOrder.id))
        .where(OrderJob.job_id == job_id, SupplyOrder.state != OrderState.CALLED_OFF)
        .having(or_(func.max(SupplyOrder.issued_at) < changed, func.max(SupplyOrder.issued_at) < taken_out))
        .scalar_subquery()
    )
