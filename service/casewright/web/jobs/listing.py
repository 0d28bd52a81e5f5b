"""The first page of the day: the shop's jobs, state by state, with what each waits for."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import ClassVar
from zoneinfo import ZoneInfo

from fastapi import APIRouter
from starlette.responses import Response

from casewright.records.first_steps import StepsTaken, steps_taken
from casewright.records.job_list import (
    A_PAGE,
    IN_ORDER,
    Asked,
    Counts,
    Due,
    JobRow,
    Sort,
    count_jobs,
    list_jobs,
)
from casewright.records.jobs import JobState
from casewright.records.standing import Standing, standings
from casewright.shop.jobs import OVER
from casewright.shop.waiting import DueWords, Seen, due_words, what_waits
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.visits import Office, Visit

router = APIRouter()
SLUGS = {state: state.value.replace(" ", "-") for state in JobState}
"""States as they stand in an address."""
STATES = {slug: state for state, slug in SLUGS.items()}
SORTS = ((Sort.DUE, "due date"), (Sort.NUMBER, "newest"), (Sort.NAME, "name"), (Sort.CUSTOMER, "customer"))
MOST_PAGES = 10_000


@dataclass(frozen=True, slots=True, kw_only=True)
class JobLine:
    """One job of the list."""

    job: JobRow
    due: DueWords | None
    waits: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """The jobs of one state that are on this page, and how many the shop has of it in all."""

    state: JobState
    total: int
    lines: tuple[JobLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """A link that shows other jobs, or the same in another order."""

    address: str
    name: str
    count: int
    is_here: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class JobsPage(Page):
    """The list of jobs."""

    template: ClassVar[str] = "jobs/list.html"
    groups: Sequence[Group]
    states: Sequence[Choice]
    dues: Sequence[Choice]
    sorts: Sequence[Choice]
    total: int
    any_job: bool
    what: str
    number: int
    pages: int
    more: str
    steps: StepsTaken | None
    steps_away: bool
    newest: str
    """The id of the shop's latest job that goes on, for the step that follows it; empty for none."""


@router.get("/jobs")
def show_jobs(visit: Office, state: str = "", due: str = "", sort: str = "", page: int = 1) -> Response:
    """The list of jobs; by default those that are neither closed nor lost."""
    asked = read_asked(state, due, sort, page)
    counts = count_jobs(visit.db, visit.today)
    rows = list_jobs(visit.db, asked, visit.today)
    held = standings(visit.db, [row.id for row in rows]) if rows else {}
    steps = None if visit.person.first_steps_away else steps_taken(visit.db)
    return show(visit, _jobs_page(visit, asked, counts, rows, held, steps))


@router.post("/first-steps")
def save_first_steps(visit: Office) -> Response:
    """Puts the list of first steps away, or brings it back."""
    visit.person.first_steps_away = visit.typed.get("away") == "1"
    return see("/jobs")


def read_asked(state: str, due: str, sort: str, page: int) -> Asked:
    """Which jobs an address asks for; what it does not know, it leaves out."""
    return Asked(
        state=STATES.get(state),
        due=Due(due) if due in set(Due) else None,
        sort=Sort(sort) if sort in set(Sort) else Sort.DUE,
        page=min(max(page, 1), MOST_PAGES),
    )


def seen_from(visit: Visit) -> Seen:
    """The day, the time zone and the currency in which a visitor reads."""
    return Seen(today=visit.today, zone=ZoneInfo(visit.shop.time_zone), symbol=visit.shop.symbol)


def _jobs_page(
    visit: Visit,
    asked: Asked,
    counts: Counts,
    rows: Sequence[JobRow],
    held: dict[str, Standing],
    steps: StepsTaken | None,
) -> JobsPage:
    total = counts.of(asked)
    own = (row for row in rows if row.state not in OVER and not row.demo)
    newest = max(own, key=lambda row: row.number, default=None)
    return JobsPage(
        title="Jobs",
        groups=tuple(_groups(visit, counts, rows, held)),
        states=tuple(_states(asked, counts)),
        dues=tuple(_dues(asked, counts)),
        sorts=tuple(_sorts(asked)),
        total=total,
        any_job=bool(counts.states),
        what=_what(asked),
        number=asked.page,
        pages=max(1, -(-total // A_PAGE)),
        more="".join(f"&{name}={value}" for name, value in _query(asked)),
        steps=None if steps is None or steps.all else steps,
        steps_away=visit.person.first_steps_away,
        newest=newest.id if newest else "",
    )


def _groups(
    visit: Visit, counts: Counts, rows: Sequence[JobRow], held: dict[str, Standing]
) -> Iterator[Group]:
    seen = seen_from(visit)
    for state, members in groupby(rows, key=lambda row: row.state):
        lines = tuple(
            JobLine(
                job=row,
                due=due_words(row.due_on, row.state, visit.today),
                waits=what_waits(row.state, held[row.id], seen),
            )
            for row in members
        )
        yield Group(state=state, total=counts.states.get(state, 0), lines=lines)


def _states(asked: Asked, counts: Counts) -> Iterator[Choice]:
    """All that are open, then each state of which there is a job."""
    sort = _with(asked, state="", due="")
    yield Choice(
        address=sort, name="open", count=counts.open, is_here=asked.state is None and asked.due is None
    )
    for state in IN_ORDER:
        count, is_here = counts.states.get(state, 0), asked.state is state
        if count or is_here:
            address = _with(asked, state=SLUGS[state], due="")
            yield Choice(address=address, name=state.value, count=count, is_here=is_here)


def _dues(asked: Asked, counts: Counts) -> Iterator[Choice]:
    for due, name, count in (
        (Due.LATE, "late", counts.late),
        (Due.SOON, "due within a week", counts.soon),
    ):
        is_here = asked.due is due
        if count or is_here:
            yield Choice(
                address=_with(asked, state="", due=due.value), name=name, count=count, is_here=is_here
            )


def _sorts(asked: Asked) -> Iterator[Choice]:
    for sort, name in SORTS:
        address = _with(asked, sort="" if sort is Sort.DUE else sort.value)
        yield Choice(address=address, name=name, count=0, is_here=asked.sort is sort)


def _query(asked: Asked) -> list[tuple[str, str]]:
    """What an address has to say so that it asks for the same jobs again, from their first page."""
    given = (
        ("state", SLUGS[asked.state] if asked.state else ""),
        ("due", asked.due.value if asked.due else ""),
        ("sort", "" if asked.sort is Sort.DUE else asked.sort.value),
    )
    return [(name, value) for name, value in given if value]


def _with(asked: Asked, **changed: str) -> str:
    query = {**dict(_query(asked)), **changed}
    said = "&".join(f"{name}={value}" for name, value in query.items() if value)
    return f"/jobs?{said}" if said else "/jobs"


def _what(asked: Asked) -> str:
    """The jobs that are shown, as one would say it: “jobs in hand”."""
    if asked.due:
        return "late" if asked.due is Due.LATE else "due within a week"
    return asked.state.value if asked.state else "open"
