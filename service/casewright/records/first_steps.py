"""Which of the first steps a shop has taken."""

from typing import NamedTuple

from sqlalchemy import ColumnElement, and_, exists, select

from casewright.records.bench import BenchEvent
from casewright.records.jobs import Job, Unit
from casewright.records.papers import Quote
from casewright.records.people import Shop
from casewright.records.sessions import Fenced


class StepsTaken(NamedTuple):
    """What a shop has done for the first time; the demo's jobs do not count."""

    job: bool
    unit: bool
    figures: bool
    quote: bool
    drawer: bool

    @property
    def all(self) -> bool:
        """Whether nothing of the list is left."""
        return self.job and self.unit and self.figures and self.quote and self.drawer


def steps_taken(db: Fenced) -> StepsTaken:
    """Which of the first steps the shop has taken; one query."""
    return StepsTaken(*(bool(taken) for taken in db.execute(_TAKEN).one()[1:]))


def _own_job(table: type[Unit] | type[Quote] | type[BenchEvent]) -> ColumnElement[bool]:
    """That a row belongs to a job which is not the demo's."""
    return exists().where(and_(Job.shop_id == table.shop_id, Job.id == table.job_id, Job.demo.is_(False)))


_TAKEN = select(
    Shop.shop_id,
    exists().where(Job.shop_id == Shop.shop_id, Job.demo.is_(False)),
    exists().where(Unit.shop_id == Shop.shop_id, _own_job(Unit)),
    Shop.figures > 1,
    exists().where(Quote.shop_id == Shop.shop_id, Quote.issued_at.is_not(None), _own_job(Quote)),
    exists().where(BenchEvent.shop_id == Shop.shop_id, _own_job(BenchEvent)),
)
