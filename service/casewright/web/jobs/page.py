"""The page of one job: where it stands, its units, papers, drawers, money, hours and history."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.stages import Stage, case_stages, drawer_stages
from casewright.measure.lengths import LengthUnit
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.records.change_orders import ChangeRow, changes_of_job
from casewright.records.job_page import (
    HISTORY_PAGE,
    CaseRow,
    PaperRow,
    cases_of,
    drawers_of,
    history_of,
    papers_of,
    payments_of,
)
from casewright.records.jobs import Customer, History, Job, JobState
from casewright.records.papers import PaperKind, QuoteState
from casewright.records.standing import AgreedChange, QuoteRow, Standing, quotes_of
from casewright.shop.changes import Change, changes
from casewright.shop.figures import figures_text
from casewright.shop.job_figures import JobFigures, job_figures
from casewright.shop.job_money import JobMoney, job_money
from casewright.shop.jobs import ARROWS, OVER, load_job, load_job_head, needs_units
from casewright.shop.left_open import ENDS, open_of
from casewright.shop.papers import basis_at_hand
from casewright.shop.units import units_of
from casewright.shop.waiting import (
    DueWords,
    Seen,
    change_number,
    due_words,
    quote_name,
    quote_stands,
    what_waits,
)
from casewright.web.frame.pages import Page, form_of, show
from casewright.web.frame.paper_says import newest_of, stale_papers
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Office, Visit
from casewright.web.jobs.listing import seen_from

router = APIRouter()
MOST_CODES = 8
"""So many drawers that are made again are named before the rest is counted."""
RECENT = 12
"""As much history as the page of a job shows by itself."""
OF_THE_OWNER = ("outwork", "extras")
"""Figures of a job that say what it costs."""
MOVES = {
    JobState.ENQUIRY: "Back to enquiry",
    JobState.QUOTED: "Mark as quoted",
    JobState.ACCEPTED: "Mark as accepted",
    JobState.IN_HAND: "Take in hand",
    JobState.READY: "Mark as ready",
    JobState.DELIVERED: "Mark as delivered",
    JobState.CLOSED: "Close the job",
    JobState.LOST: "Lost …",
}
AT_ONE_TAP = (PaperKind.CUT_LIST, PaperKind.JOINT_CARDS, PaperKind.CAUTION_SHEET)
"""Papers of which nothing need be said before they are issued; an order has a form."""
BY_QUOTE = {JobState.ENQUIRY, JobState.QUOTED}
"""States that a quote leads on."""
BACK = {
    (JobState.IN_HAND, JobState.ACCEPTED): "Back to accepted",
    (JobState.READY, JobState.IN_HAND): "Back in hand",
    (JobState.DELIVERED, JobState.READY): "Back to ready",
    (JobState.CLOSED, JobState.DELIVERED): "Open it again",
    (JobState.LOST, JobState.ENQUIRY): "Take it up again",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """A state that the job may come to next.

    Attributes:
        state: the state
        words: what the move is called
        is_main: whether it is the way forward
        asks: the page that asks something before; empty for a move at one press
    """

    state: JobState
    words: str
    is_main: bool
    asks: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AtStage:
    """How many drawers stand at a stage."""

    word: str
    count: int
    is_begun: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseLine:
    """A case at the bench."""

    case: CaseRow
    stage: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AgainLine:
    """What is made again for a change order.

    Attributes:
        change: the number of the change order
        address: its page; empty where it is not found
        what: the case and the drawers that are not done yet, such as `case A, drawers A-R2-1 and A-R3-1`
    """

    change: str
    address: str
    what: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HistoryLine:
    """One sentence of the history."""

    at: datetime
    who: str
    what: str
    changes: tuple[Change, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class QuoteLine:
    """A quote, with where it stands in words."""

    quote: QuoteRow
    name: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeLine:
    """A change order, with where it stands in words."""

    order: ChangeRow
    name: str
    mark: str
    state: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JobPage(Page):
    """One job."""

    template: ClassVar[str] = "jobs/one.html"
    job: Job
    customer: Customer
    due: DueWords | None
    promised: date | None
    """The day by which the accepted quote promises it."""
    waits: tuple[str, ...]
    moves: tuple[Move, ...]
    over: str
    """What has to be done before papers are written again; empty for a job that is not over."""
    waiting: QuoteLine | None
    """The quote that is drafted, or sent and not answered, while nothing is agreed."""
    figures: JobFigures
    estimate: JobEstimate | None
    quotes: tuple[QuoteLine, ...]
    change_orders: tuple[ChangeLine, ...]
    papers: Sequence[PaperRow]
    superseded: frozenset[str]
    """The papers that a later revision has taken the place of."""
    stale_papers: frozenset[str]
    """The papers that say something else than they would if they were issued now."""
    kinds: tuple[PaperKind, ...]
    drawers: tuple[AtStage, ...]
    drawers_total: int
    cases: tuple[CaseLine, ...]
    again: tuple[AgainLine, ...]
    """What is made again for change orders, and is not done yet."""
    money: JobMoney
    payment: Form
    seconds: int
    old_order: str
    """The latest order, if a unit changed after it; empty for none, and for a job that is over."""
    history: tuple[HistoryLine, ...]
    has_more_history: bool
    is_owner: bool
    today: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JobHistoryPage(Page):
    """All that happened to a job."""

    template: ClassVar[str] = "jobs/history.html"
    job: Job
    lines: tuple[HistoryLine, ...]
    number: int
    has_more: bool


@router.get("/jobs/{job_id}")
def show_job(visit: Office, job_id: str) -> Response:
    """One job."""
    return show(visit, job_page(visit, job_id))


@router.get("/jobs/{job_id}/history")
def show_history(visit: Office, job_id: str, page: int = 1) -> Response:
    """All that happened to a job, the latest first."""
    job, number = load_job(visit.db, job_id), min(max(page, 1), 10_000)
    rows = history_of(visit.db, job.id, page=number)
    lines = _history(rows[:HISTORY_PAGE], is_owner=visit.is_owner)
    title = f"History of job {job.number}"
    has_more = len(rows) > HISTORY_PAGE
    return show(visit, JobHistoryPage(title=title, job=job, lines=lines, number=number, has_more=has_more))


def job_page(visit: Visit, job_id: str, payment: Form | None = None) -> JobPage:
    """Everything that the page of a job shows, in twelve queries."""
    db, today = visit.db, visit.today
    job, customer, seconds, old_order = load_job_head(db, job_id)
    loaded = units_of(db, job)
    shop_figures, papers = figures_text(db, visit.shop, job), papers_of(db, job.id)
    figures = job_figures(loaded, shop_figures, today, visit.unit)
    payments, at_bench, cases = payments_of(db, job.id), drawers_of(db, job.id), cases_of(db, job.id)
    drawers = at_bench.stages
    quotes = tuple(quotes_of(db, [job.id]).get(job.id, ()))
    changed = changes_of_job(db, job.id)
    held = Standing(
        units=len(loaded),
        quotes=quotes,
        received=sum(each.amount_cents for each in payments),
        drawers=drawers,
        changes=tuple(
            AgreedChange(number=each.number, total_cents=each.total_cents)
            for each in reversed(changed)
            if each.agreed_at
        ),
    )
    seen = seen_from(visit)
    history = history_of(db, job.id, most=RECENT)
    lines = tuple(
        QuoteLine(quote=each, name=quote_name(each), words=quote_stands(each, seen)) for each in quotes
    )
    return JobPage(
        title=f"{job.number} · {job.name}",
        job=job,
        customer=customer,
        due=due_words(job.due_on, job.state, today),
        promised=held.promised,
        waits=what_waits(job.state, held, seen),
        moves=tuple(_moves(job.state, has_units=bool(loaded), leaves_open=bool(open_of(held)))),
        over=OVER.get(job.state, ""),
        waiting=_waiting(job.state, lines),
        figures=figures,
        estimate=figures.estimate,
        quotes=lines,
        change_orders=tuple(_change(each, seen) for each in changed),
        papers=papers,
        superseded=frozenset({each.id for each in papers} - {each.id for each in newest_of(papers).values()}),
        stale_papers=frozenset(
            stale_papers(
                db,
                papers,
                lambda: basis_at_hand(db, loaded, shop_figures),
                today,
                LengthUnit(visit.shop.unit),
            )
        ),
        kinds=AT_ONE_TAP,
        drawers=_at_stages(drawers),
        drawers_total=sum(drawers.values()),
        cases=tuple(CaseLine(case=each, stage=_word(each.stage)) for each in cases),
        again=tuple(_again(cases, at_bench.again, changed)),
        money=job_money(held, payments, figures.estimate, with_cost=visit.is_owner),
        payment=payment or form_of(received_on=today.isoformat()),
        seconds=seconds,
        old_order="" if job.state in OVER else old_order,
        history=_history(history[:RECENT], is_owner=visit.is_owner),
        has_more_history=len(history) > RECENT,
        is_owner=visit.is_owner,
        today=today.isoformat(),
    )


def _again(
    cases: Sequence[CaseRow], drawers: Sequence[tuple[str, str]], orders: Sequence[ChangeRow]
) -> Iterator[AgainLine]:
    """What is made again, one line for each change order, the first that was made first."""
    found: dict[str, tuple[list[str], list[str]]] = {}
    for case in cases:
        for change in filter(None, case.again.split(", ")):
            piece = f" ({case.piece})" if case.pieces > 1 else ""
            found.setdefault(change, ([], []))[0].append(f"{case.code}{piece}")
    for code, numbers in drawers:
        for change in numbers.split(", "):
            found.setdefault(change, ([], []))[1].append(code)
    addresses = {change_number(each.number): f"/change-orders/{each.id}" for each in orders}
    for change, (bodies, boxes) in sorted(found.items()):
        told = [_named("case", bodies), _named("drawer", boxes)]
        yield AgainLine(change=change, address=addresses.get(change, ""), what="; ".join(filter(None, told)))


def _named(noun: str, codes: Sequence[str]) -> str:
    if not codes:
        return ""
    rest = f" and {len(codes) - MOST_CODES} more" if len(codes) > MOST_CODES else ""
    return f"{noun if len(codes) == 1 else f'{noun}s'} {', '.join(codes[:MOST_CODES])}{rest}"


def _change(order: ChangeRow, seen: Seen) -> ChangeLine:
    """A change order of the job, as its list shows it."""
    mark, state, when = "waits", "waits for an answer", f"made {seen.on(order.created_at)}"
    if order.agreed_at:
        mark, state = "pass", "agreed"
        when = f"by {order.agreed_name}, {seen.on(order.agreed_at)}"
    elif order.withdrawn_at:
        mark, state, when = "ended", "withdrawn", seen.on(order.withdrawn_at)
    name = change_number(order.number)
    return ChangeLine(order=order, name=name, mark=mark, state=state, words=when)


def _waiting(state: JobState, quotes: Sequence[QuoteLine]) -> QuoteLine | None:
    """The newest quote that is drafted or sent, while the job is not agreed."""
    if state not in BY_QUOTE:
        return None
    open_ones = {QuoteState.DRAFT, QuoteState.SENT}
    return next((line for line in quotes if line.quote.state in open_ones), None)


def _moves(state: JobState, *, has_units: bool, leaves_open: bool) -> list[Move]:
    """The states that a job may come to: the way forward first, then the ways back, and lost last.

    Nothing is quoted or agreed before there is a unit, so neither is offered for a job without one. While a
    job is asked for or quoted its quotes lead it on, so that no move stands out. One that leaves something
    open is asked about first, and so is one that is lost.
    """
    arrows = [to for to in ARROWS[state] if has_units or not needs_units(state, to)]
    ahead = (to for to in arrows if (state, to) not in BACK and to is not JobState.LOST)
    forward = None if state in BY_QUOTE else next(ahead, None)
    moves = [
        Move(
            state=to,
            words=BACK.get((state, to), MOVES[to]),
            is_main=to is forward,
            asks=_asks(state, to, leaves_open=leaves_open),
        )
        for to in arrows
    ]
    return sorted(moves, key=lambda move: (not move.is_main, move.state is JobState.LOST))


def _asks(state: JobState, to: JobState, *, leaves_open: bool) -> str:
    """The page of a job that asks something before a move; empty where nothing is asked."""
    if to is JobState.LOST:
        return "lost"
    return "left-open" if leaves_open and (state, to) in ENDS else ""


def _at_stages(drawers: dict[str, int]) -> tuple[AtStage, ...]:
    """The drawers by stage, the furthest first; stages where none stands are left out."""
    known = [*reversed(drawer_stages())]
    lines = [AtStage(word=one.word, count=drawers.get(one.code, 0), is_begun=True) for one in known]
    lines.append(AtStage(word="not begun", count=drawers.get("", 0), is_begun=False))
    return tuple(line for line in lines if line.count)


def _word(code: str) -> str:
    """What a stage of a case is called; “not begun” before the first."""
    found: Stage | None = next((one for one in case_stages() if one.code == code), None)
    return found.word if found else "not begun"


def _history(rows: Sequence[History], *, is_owner: bool) -> tuple[HistoryLine, ...]:
    """The history in lines, without what only the owner may see."""
    hidden = () if is_owner else OF_THE_OWNER
    return tuple(
        HistoryLine(
            at=row.at,
            who=row.who,
            what=row.what,
            changes=() if "state" in (row.after or {}) else changes(row.before, row.after, hidden),
        )
        for row in rows
    )
