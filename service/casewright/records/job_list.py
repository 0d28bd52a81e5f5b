"""The list of jobs: a page of it, and the counts beside it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from functools import cache
from typing import Any, NamedTuple

from sqlalchemy import ColumnElement, Date, Select, and_, bindparam, case, func, select

from casewright.records.jobs import Customer, Job, JobState
from casewright.records.sessions import Fenced

A_PAGE = 50
IN_ORDER = (
    JobState.IN_HAND,
    JobState.ACCEPTED,
    JobState.QUOTED,
    JobState.ENQUIRY,
    JobState.READY,
    JobState.DELIVERED,
    JobState.CLOSED,
    JobState.LOST,
)
"""The states in the order of the list: what is worked on comes first."""
OPEN = IN_ORDER[:6]
"""What the list shows unless it is asked for more."""
STILL_DUE = IN_ORDER[:5]
"""States in which a due date is still to be kept."""
SOON = timedelta(days=6)
"""Within this a day of the week says which day is meant."""


class Sort(StrEnum):
    """The order of jobs within a state."""

    DUE = "due"
    NUMBER = "number"
    NAME = "name"
    CUSTOMER = "customer"


class Due(StrEnum):
    """Jobs by their due date."""

    LATE = "late"
    SOON = "soon"


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """Which jobs are asked for.

    Attributes:
        state: only of this state; None for all that are open
        due: only those that are late, or due soon
        sort: in which order
        page: which page of them, from 1
    """

    state: JobState | None = None
    due: Due | None = None
    sort: Sort = Sort.DUE
    page: int = 1


class JobRow(NamedTuple):
    """One line of the list."""

    id: str
    number: int
    name: str
    state: JobState
    due_on: date | None
    customer_id: str
    customer: str
    demo: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Counts:
    """How many jobs there are.

    Attributes:
        states: of each state
        late: how many should be ready already
        soon: how many are due within a week
    """

    states: dict[JobState, int]
    late: int
    soon: int

    @property
    def open(self) -> int:
        """How many are neither closed nor lost."""
        return sum(self.states.get(state, 0) for state in OPEN)

    def of(self, asked: Asked) -> int:
        """How many an unpaged list would hold."""
        if asked.due:
            return self.late if asked.due is Due.LATE else self.soon
        return self.states.get(asked.state, 0) if asked.state else self.open


def count_jobs(db: Fenced, today: date) -> Counts:
    """How many jobs there are of each state, and how many are late or due soon; one query."""
    rows = db.execute(_counting(), _days(today)).all()
    return Counts(
        states={row[0]: row[1] for row in rows},
        late=sum(int(row[2]) for row in rows),
        soon=sum(int(row[3]) for row in rows),
    )


def list_jobs(db: Fenced, asked: Asked, today: date, *, most: int | None = A_PAGE) -> Sequence[JobRow]:
    """A page of jobs: state by state, and within a state as asked; one query.

    Args:
        db: the session
        asked: which jobs
        today: the day in the shop
        most: how many a page holds; None for all of them
    """
    given: dict[str, Any] = _days(today)
    if most is None:
        found = _listing(asked.state, asked.due, asked.sort)
    else:
        found = _paged(asked.state, asked.due, asked.sort)
        given |= {"most": most, "before": (asked.page - 1) * most}
    return [JobRow(*row) for row in db.execute(found, given)]


def _days(today: date) -> dict[str, Any]:
    return {"today": today, "soon": today + SOON}


# Each is built once: a list of jobs is asked for all day, and building it took longer than answering.


@cache
def _counting() -> Select[*tuple[Any, ...]]:
    late, soon = (func.sum(case((_is_due(due), 1), else_=0)) for due in Due)
    return select(Job.state, func.count(Job.id), late, soon).group_by(Job.state)


@cache
def _listing(state: JobState | None, due: Due | None, sort: Sort) -> Select[*tuple[Any, ...]]:
    of_the_job = (Job.id, Job.number, Job.name, Job.state, Job.due_on, Job.customer_id)
    found = select(*of_the_job, Customer.name, Job.demo).join(
        Customer, and_(Customer.shop_id == Job.shop_id, Customer.id == Job.customer_id)
    )
    found = found.where(_is_due(due) if due else Job.state.in_([state] if state else OPEN))
    return found.order_by(_rank(), *_order(sort), Job.number)


@cache
def _paged(state: JobState | None, due: Due | None, sort: Sort) -> Select[*tuple[Any, ...]]:
    return _listing(state, due, sort).limit(bindparam("most")).offset(bindparam("before"))


def _is_due(due: Due) -> ColumnElement[bool]:
    today = bindparam("today", type_=Date)
    late = Job.due_on < today
    when = late if due is Due.LATE else Job.due_on.between(today, bindparam("soon", type_=Date))
    return and_(Job.state.in_(STILL_DUE), when)


def _rank() -> ColumnElement[int]:
    return case({state: place for place, state in enumerate(IN_ORDER)}, value=Job.state)


def _order(sort: Sort) -> tuple[Any, ...]:
    match sort:
        case Sort.NUMBER:
            return (Job.number.desc(),)
        case Sort.NAME:
            return (func.lower(Job.name),)
        case Sort.CUSTOMER:
            return (func.lower(Customer.name),)
        case Sort.DUE:
            return (Job.due_on.is_(None), Job.due_on)
