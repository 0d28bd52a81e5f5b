"""Where jobs stand: their units, quotes, money and drawers, for as many jobs as a page shows at once."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any, NamedTuple

from sqlalchemy import BindParameter, ColumnElement, bindparam, case, func, select

from casewright.records.bench import Drawer
from casewright.records.jobs import Payment, Unit
from casewright.records.papers import ChangeOrder, Quote, QuoteState
from casewright.records.sessions import Fenced


class QuoteRow(NamedTuple):
    """A quote without its words and drawings."""

    id: str
    job_id: str
    number: int
    revision: int
    state: QuoteState
    total_cents: int | None
    issued_at: datetime | None
    opened_at: datetime | None
    answered_at: datetime | None
    answered_name: str
    valid_until: date | None
    created_at: datetime
    net_cents: int | None
    tax_cents: int | None
    stages: list[dict[str, Any]] | None
    ready_by: str | None
    """These four as they stand in its offer, the day as ISO 8601; none for one that is not accepted."""


class AgreedChange(NamedTuple):
    """A change order that the customer has agreed to."""

    number: int
    total_cents: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """What there is of a job.

    Attributes:
        units: how many units it has
        quotes: its quotes, the newest first
        received: what came in, corrections among it [cent]
        drawers: how many drawers stand at each stage; those not begun under an empty name
        changes: the change orders that were agreed on, in their order
    """

    units: int = 0
    quotes: tuple[QuoteRow, ...] = ()
    received: int = 0
    drawers: Mapping[str, int] = field(default_factory=dict)
    changes: tuple[AgreedChange, ...] = ()

    @property
    def accepted(self) -> QuoteRow | None:
        """The quote that holds: of those that the customer has agreed to, the one answered last."""
        agreed = [quote for quote in self.quotes if quote.state is QuoteState.ACCEPTED]
        return max(agreed, key=lambda quote: (quote.answered_at or quote.created_at, quote.id), default=None)

    @property
    def promised(self) -> date | None:
        """The day by which the accepted quote promises the work; None where nothing is promised."""
        day = self.accepted.ready_by if self.accepted else None
        return date.fromisoformat(day) if day else None


def standings(db: Fenced, job_ids: Sequence[str]) -> dict[str, Standing]:
    """Where each of some jobs stands, in five queries."""
    units = _units(db, job_ids)
    quotes = quotes_of(db, job_ids)
    money = _received(db, job_ids)
    drawers = _drawers(db, job_ids)
    changes = agreed_changes(db, job_ids)
    return {
        job: Standing(
            units=units.get(job, 0),
            quotes=tuple(quotes.get(job, ())),
            received=money.get(job, 0),
            drawers=drawers.get(job, {}),
            changes=tuple(changes.get(job, ())),
        )
        for job in job_ids
    }


def quotes_of(db: Fenced, job_ids: Sequence[str]) -> dict[str, list[QuoteRow]]:
    """The quotes of some jobs, the newest first; of the offers that were accepted, what is paid when."""
    found: dict[str, list[QuoteRow]] = defaultdict(list)
    for row in db.execute(_QUOTES, {"jobs": job_ids}):
        quote = QuoteRow._make(row)
        found[quote.job_id].append(quote)
    return found


def agreed_changes(db: Fenced, job_ids: Sequence[str]) -> dict[str, list[AgreedChange]]:
    """The change orders of some jobs that were agreed on, in their order; one query."""
    found: dict[str, list[AgreedChange]] = defaultdict(list)
    for job, number, cents in db.execute(_CHANGES, {"jobs": job_ids}):
        found[job].append(AgreedChange(number=number, total_cents=cents))
    return found


def _if_agreed(part: ColumnElement[Any]) -> ColumnElement[Any]:
    """A part of an offer, of accepted ones only: a database reads the whole of an offer for each part."""
    return case((Quote.state == QuoteState.ACCEPTED, part))


def _units(db: Fenced, job_ids: Sequence[str]) -> dict[str, int]:
    return {row[0]: row[1] for row in db.execute(_UNITS, {"jobs": job_ids})}


def _received(db: Fenced, job_ids: Sequence[str]) -> dict[str, int]:
    return {job: int(cents) for job, cents in db.execute(_RECEIVED, {"jobs": job_ids})}


def _drawers(db: Fenced, job_ids: Sequence[str]) -> dict[str, dict[str, int]]:
    found: dict[str, dict[str, int]] = defaultdict(dict)
    for job, stage, count in db.execute(_DRAWERS, {"jobs": job_ids}):
        found[job][stage] = count
    return found


_JOBS: BindParameter[Any] = bindparam("jobs", expanding=True)
_OFFER = Quote.offer
# Built once: a list of jobs is asked for all day, and building these took longer than answering them.
_QUOTES = (
    select(
        *(Quote.id, Quote.job_id, Quote.number, Quote.revision, Quote.state, Quote.total_cents),
        *(Quote.issued_at, Quote.opened_at, Quote.answered_at, Quote.answered_name, Quote.valid_until),
        Quote.created_at,
        *(_if_agreed(part) for part in (_OFFER["net_cents"].as_integer(), _OFFER["tax_cents"].as_integer())),
        _if_agreed(_OFFER["stages"]),
        _if_agreed(_OFFER["ready_by"].as_string()),
    )
    .where(Quote.job_id.in_(_JOBS))
    .order_by(Quote.number.desc(), Quote.revision.desc())
)
_UNITS = (
    select(Unit.job_id, func.count(Unit.id))
    .where(Unit.job_id.in_(_JOBS), Unit.ended_at.is_(None))
    .group_by(Unit.job_id)
)
_RECEIVED = (
    select(Payment.job_id, func.sum(Payment.amount_cents))
    .where(Payment.job_id.in_(_JOBS))
    .group_by(Payment.job_id)
)
_CHANGES = (
    select(ChangeOrder.job_id, ChangeOrder.number, ChangeOrder.total_cents)
    .where(ChangeOrder.job_id.in_(_JOBS), ChangeOrder.agreed_at.is_not(None))
    .order_by(ChangeOrder.number)
)
_DRAWERS = (
    select(Drawer.job_id, Drawer.stage, func.count(Drawer.id))
    .where(Drawer.job_id.in_(_JOBS), Drawer.gone.is_(False))
    .group_by(Drawer.job_id, Drawer.stage)
)
