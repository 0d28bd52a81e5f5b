"""Pages about time: the timer of a person, and the hours of a job."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.operations import Operation
from casewright.records.change_orders import hours_in_changes
from casewright.records.hours import (
    A_PAGE,
    DrawerChoice,
    EntryRow,
    Log,
    case_stages_of_job,
    drawers_of_job,
    entries_of,
    log_of,
    people_at_work,
    running_timer,
)
from casewright.records.jobs import Job
from casewright.records.people import Person
from casewright.records.sessions import Fenced
from casewright.shop.figures import figures_text
from casewright.shop.hours import JobHours, estimated_codes, job_hours, shop_operations
from casewright.shop.jobs import load_job, said_over
from casewright.shop.keeping import once
from casewright.shop.refusals import NotFound, Refused
from casewright.shop.time import (
    WRITE,
    Work,
    drop_timer,
    elapsed_seconds,
    go_on,
    log_time,
    pause_timer,
    read_minutes,
    start_timer,
    take_back_time,
)
from casewright.shop.units import units_of
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Visit

router = APIRouter()
NO_OPERATION = "none"
"""What a form sends for time on no operation."""
FORGOTTEN = 4 * 3600
"""A timer that has run so long asks whether it was forgotten [s]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clock:
    """A person's timer as it is shown.

    Attributes:
        job_id: the job that it is for
        what: operation, job and drawer in words
        seconds: how long it has run
        runs: whether it runs now, or rests
        forgotten: whether it has run so long that somebody may have forgotten it
        started: when it was started, by which a form that drops it names it
        typed: what was typed for the time that was worked
        fault: what is wrong with that; empty where nothing is
    """

    job_id: str
    what: str
    seconds: int
    runs: bool
    forgotten: bool
    started: str
    typed: str = ""
    fault: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClockPage(Page):
    """The timer alone, for a script."""

    template: ClassVar[str] = "bench/clock.html"
    clock: Clock | None
    back: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursPage(Page):
    """The hours of a job."""

    template: ClassVar[str] = "bench/hours.html"
    job: Job
    over: str
    """Why no time is written down any more; empty while the job goes on."""
    hours: JobHours | None
    names: dict[str, str]
    own: Sequence[tuple[str, int]]
    entries: Sequence[EntryRow]
    me: str
    number: int
    pages: int
    form: Form
    operations: Sequence[tuple[str, str]]
    drawers: Sequence[tuple[str, str]]
    people: Sequence[tuple[str, str]]
    clock: Clock | None
    back: str


def clock_of(visit: Visit) -> Clock | None:
    """The timer of the person who asks; two queries at most."""
    found = running_timer(visit.db, visit.person.id)
    if found is None:
        return None
    timer, job, code = found
    names = names_of(shop_operations(figures_text(visit.db, visit.shop, job)))
    what = names.get(timer.operation, "other work")
    seconds = elapsed_seconds(timer, visit.now)
    return Clock(
        job_id=job.id,
        what=f"{what}, job {job.number}{f', {code}' if code else ''}",
        seconds=seconds,
        runs=timer.running_since is not None,
        forgotten=seconds >= FORGOTTEN,
        started=timer.started_at.isoformat(),
    )


def names_of(operations: Sequence[Operation]) -> dict[str, str]:
    """The names of operations by their codes."""
    return {each.code: each.name for each in operations}


@router.post("/timer")
def save_timer(visit: Everybody) -> Response:
    """Starts the timer of the person who asks."""
    work = _work(visit)
    back = page_touched(visit, work.job_id)

    def start() -> str:
        ended = start_timer(visit.db, visit.shop, visit.person, work, visit.now)
        return f"{back}{'&' if '?' in back else '?'}said=stopped" if ended else back

    address = once(visit.db, visit.typed.once, visit.now, start)
    return _answer(visit, address)


@router.post("/timer/pause")
def save_pause(visit: Everybody) -> Response:
    """Lets the timer rest."""
    pause_timer(visit.db, visit.person, visit.now)
    return _answer(visit, page_touched(visit))


@router.post("/timer/run")
def save_run(visit: Everybody) -> Response:
    """Lets the timer run on."""
    go_on(visit.db, visit.person, visit.now)
    return _answer(visit, page_touched(visit))


@router.post("/timer/removal")
def save_no_timer(visit: Everybody) -> Response:
    """Drops a timer that was started by mistake."""
    drop_timer(visit.db, visit.person, visit.typed.get("started"))
    return _answer(visit, page_touched(visit))


@router.get("/jobs/{job_id}/hours")
def show_hours(visit: Everybody, job_id: str, page: str = "1") -> Response:
    """The hours of a job: the office sees all of them, the bench its own."""
    job = load_job(visit.db, job_id)
    return show(visit, hours_page(visit, job, form_of(day=visit.today.isoformat()), page))


@router.post("/jobs/{job_id}/hours")
def save_hours(visit: Everybody, job_id: str) -> Response:
    """Writes time down."""
    job = load_job(visit.db, job_id)
    read = Reader(visit.typed)
    seconds = _typed_time(read)
    day = read.day("day", needed="On which day? Write it as 2027-03-01.")
    if day is not None and day > visit.today:
        read.fault("day", "This day is still to come; write down what was worked.")
    person = _typed_person(visit, read)
    operations = names_of(shop_operations(figures_text(visit.db, visit.shop, job)))
    operation = read.choice("operation", [*operations, NO_OPERATION])
    drawers = [each.id for each, _ in drawers_of_job(visit.db, job.id)]
    drawer = read.choice("drawer", ["", *drawers], default="")
    note = read.line("note", most=300)
    over = said_over(job, WRITE)
    if over:
        read.fault("time", over)
    if read.faults or person is None or day is None:
        return show(visit, hours_page(visit, job, read.form), 409 if over else 422)
    work = Work(job_id=job.id, operation=_code(operation), drawer_id=drawer or None)

    def write() -> str:
        log_time(visit.db, person, work, seconds, day, visit.who, visit.now, note)
        return f"/jobs/{job.id}/hours"

    return see(once(visit.db, visit.typed.once, visit.now, write), "added")


@router.post("/jobs/{job_id}/hours/{entry_id}/correction")
def save_correction(visit: Everybody, job_id: str, entry_id: str) -> Response:
    """Takes an entry back by its opposite."""
    job, why = load_job(visit.db, job_id), " ".join(visit.typed.get("why").split())[:300]
    take_back_time(visit.db, job, entry_id, visit.person, visit.now, why)
    return see(f"/jobs/{job_id}/hours#log", "undone")


def hours_page(visit: Visit, job: Job, form: Form, page: str = "1") -> HoursPage:
    """The page of a job's hours; ten queries at most."""
    db, mine = visit.db, "" if visit.sees_prices else visit.person.id
    figures = figures_text(db, visit.shop, job)
    names = names_of(shop_operations(figures))
    specs = tuple(each.text for each in units_of(db, job))
    log = log_of(db, job.id, mine)
    drawers = drawers_of_job(db, job.id)
    pages = max(1, -(-log.entries // A_PAGE))
    number = min(max(1, int(page[:5])), pages) if page.isascii() and page.isdigit() else 1
    return HoursPage(
        title=f"Hours of job {job.number}",
        job=job,
        over=said_over(job, WRITE),
        hours=None if mine else _compared(visit, job, (specs, figures), log, [stage for _, stage in drawers]),
        names=names,
        own=sorted(log.seconds.items()) if mine else (),
        entries=entries_of(db, job.id, mine, number),
        me=visit.person.id,
        number=number,
        pages=pages,
        form=form,
        operations=[
            ("", "choose the operation"),
            *((code, f"{code} {names[code]}") for code in _own_first(visit, specs, figures, names)),
            (NO_OPERATION, "none: fetching, sharpening, clearing up"),
        ],
        drawers=[("", "none in particular"), *((each.id, drawer_words(each)) for each, _ in drawers)],
        people=() if mine else people_at_work(db),
        clock=clock_of(visit),
        back=f"/jobs/{job.id}/hours",
    )


def _own_first(visit: Visit, specs: tuple[str, ...], figures: str, names: dict[str, str]) -> list[str]:
    """Every operation, those of the job's own estimate first."""
    own = [code for code in estimated_codes(specs, figures, visit.today) if code in names]
    return list(dict.fromkeys((*own, *names)))


def _compared(
    visit: Visit, job: Job, given: tuple[tuple[str, ...], str], log: Log, stages: Sequence[str]
) -> JobHours:
    specs, figures = given
    cases = case_stages_of_job(visit.db, job.id)
    changes = hours_in_changes(visit.db, job.id)
    return job_hours(specs, figures, visit.today, log, (stages, cases), visit.unit, changes)


def drawer_words(drawer: DrawerChoice) -> str:
    """A drawer to choose from: A-R4-1, with the number of its case where there are several."""
    piece = f" ({drawer.piece})" if drawer.pieces > 1 else ""
    return f"{drawer.unit}-{drawer.code}{piece}"


def _typed_time(read: Reader) -> int:
    try:
        return read_minutes(read.typed.get("time"))
    except Refused as refusal:
        read.fault("time", str(refusal))
        return 0


def _typed_person(visit: Visit, read: Reader) -> Person | None:
    """Who worked: the office may write down for others."""
    wanted = visit.typed.get("person") if visit.sees_prices else ""
    if not wanted or wanted == visit.person.id:
        return visit.person
    found = person_at_work(visit.db, wanted)
    if found is None:
        read.fault("person", "Choose one of the list.")
    return found


def person_at_work(db: Fenced, person_id: str) -> Person | None:
    """Somebody who works in the shop now."""
    found = db.get(Person, (db.shop_id, person_id))
    return found if found is not None and found.ended_at is None else None


def _code(chosen: str) -> str:
    """The code of the operation that a form names; empty for none of them."""
    return "" if chosen == NO_OPERATION else chosen


def _work(visit: Visit) -> Work:
    """What the timer is to run for."""
    job = load_job(visit.db, visit.typed.get("job"))
    operation = _code(visit.typed.get("operation"))
    known = names_of(shop_operations(figures_text(visit.db, visit.shop, job)))
    if operation and operation not in known:
        raise NotFound("operation")
    return Work(job_id=job.id, operation=operation, drawer_id=visit.typed.get("drawer") or None)


def page_touched(visit: Visit, job_id: str = "") -> str:
    """The page that the timer was touched on."""
    back = visit.typed.get("back")
    if back.startswith(("/board", "/bench/", "/jobs/")):
        return back
    return f"/jobs/{job_id}/hours" if job_id else "/board"


def _answer(visit: Visit, address: str) -> Response:
    """The timer alone where a script asked for it, else the page again."""
    if visit.wants_block == "clock":
        visit.db.flush()
        return show(visit, ClockPage(title="Timer", clock=clock_of(visit), back=page_touched(visit)))
    return see(address)
