"""Taps at the bench after which a page is shown again: a stage reached or taken back, a timer stopped."""

from collections.abc import Callable
from dataclasses import replace
from urllib.parse import urlsplit

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.stages import drawer_stages
from casewright.measure.saying import refusal as said_in
from casewright.records.board import drawer_row
from casewright.shop.at_bench import at_bench
from casewright.shop.bench import Place, case_place, drawer_place, reach_stage, take_back_stage
from casewright.shop.board import drawer_line
from casewright.shop.jobs import load_job
from casewright.shop.keeping import once
from casewright.shop.refusals import Refused
from casewright.shop.remaking import leave_as_it_was
from casewright.shop.time import read_minutes, stop_timer
from casewright.web.bench.board import BoardPage, LinePage, asked_again, board_page, line_as_read
from casewright.web.bench.hands import hand_of
from casewright.web.bench.page import BenchPage, bench_page
from casewright.web.bench.time import HoursPage, hours_page, page_touched
from casewright.web.frame.pages import form_of, see, show
from casewright.web.frame.visits import Everybody, Visit

router = APIRouter()
Act = Callable[..., None]


@router.post("/drawers/{drawer_id}/stage")
def save_drawer_stage(visit: Everybody, drawer_id: str) -> Response:
    """Moves a drawer on to its next stage."""
    return _tap(visit, drawer_place(visit.db, drawer_id), reach_stage)


@router.post("/drawers/{drawer_id}/stage/undo")
def save_drawer_undo(visit: Everybody, drawer_id: str) -> Response:
    """Takes a drawer's last stage back."""
    return _tap(visit, drawer_place(visit.db, drawer_id), take_back_stage)


@router.post("/cases/{case_id}/stage")
def save_case_stage(visit: Everybody, case_id: str) -> Response:
    """Moves a case on to its next stage."""
    return _tap(visit, case_place(visit.db, case_id), reach_stage)


@router.post("/cases/{case_id}/stage/undo")
def save_case_undo(visit: Everybody, case_id: str) -> Response:
    """Takes a case's last stage back."""
    return _tap(visit, case_place(visit.db, case_id), take_back_stage)


@router.post("/drawers/{drawer_id}/remake/undo")
def save_drawer_as_it_was(visit: Everybody, drawer_id: str) -> Response:
    """Says of a drawer that a change put back that it stands as it was."""
    return _tap(visit, drawer_place(visit.db, drawer_id), leave_as_it_was, "change")


@router.post("/cases/{case_id}/remake/undo")
def save_case_as_it_was(visit: Everybody, case_id: str) -> Response:
    """Says of a case that a change put back that it stands as it was."""
    return _tap(visit, case_place(visit.db, case_id), leave_as_it_was, "change")


@router.post("/timer/end")
def save_end(visit: Everybody) -> Response:
    """Stops the timer: its time is written down; as typed, where it was forgotten."""
    typed, back = visit.typed.get("time"), page_touched(visit)
    try:
        seconds = read_minutes(typed) if typed.strip() else None
    except Refused as refusal:
        return _clock_again(visit, back, typed, str(refusal))

    def stop() -> str:
        stop_timer(visit.db, visit.shop, visit.person, visit.now, seconds)
        return back

    return see(once(visit.db, visit.typed.once, visit.now, stop))


def _clock_again(visit: Visit, back: str, typed: str, fault: str) -> Response:
    """The page on which the timer was stopped, with what was typed; a timer that has ended asks nothing."""
    page = _page_at(visit, back)
    if page.clock is None:
        return see(back)
    clock = replace(page.clock, typed=typed, fault=fault)
    return show(visit, replace(page, clock=clock), 422)


def _page_at(visit: Visit, back: str) -> BoardPage | BenchPage | HoursPage:
    kind, _, rest = urlsplit(back).path.removeprefix("/").partition("/")
    key = rest.partition("/")[0][:20]
    if kind == "bench":
        return bench_page(visit, at_bench(visit.db, visit.shop, key))
    if kind == "jobs":
        return hours_page(visit, load_job(visit.db, key), form_of(day=visit.today.isoformat()))
    return board_page(visit, asked_again(back))


def _tap(visit: Visit, place: Place, act: Act, field: str = "stage") -> Response:
    """Does what was tapped and shows the page again from which it came; a refusal stands on that page."""
    try:
        act(visit.db, place, visit.typed.get(field)[:40], hand_of(visit))
    except Refused as refusal:
        if refusal.status == 404:
            raise
        return _again(visit, place, said_in(refusal, visit.unit), refusal.status)
    if visit.wants_block:
        return _again(visit, place, "", 200)
    return see(_back(visit, place))


def _again(visit: Visit, place: Place, refused: str, status: int) -> Response:
    visit.db.flush()
    back = _back(visit, place)
    if back.startswith("/bench/"):
        held = at_bench(visit.db, visit.shop, back.removeprefix("/bench/")[:13])
        return show(visit, bench_page(visit, held, refused=refused), status)
    if visit.wants_block == "line" and place.drawer is not None:
        return show(visit, _line_page(visit, place, refused), status)
    return show(visit, board_page(visit, asked_again(back), refused), status)


def _line_page(visit: Visit, place: Place, refused: str) -> LinePage:
    row = drawer_row(visit.db, place.drawer.id if place.drawer else "")
    assert row is not None  # noqa: S101 - it was found a moment ago
    taps = [tap for tap in place.rows if tap.drawer_id == row.drawer.id]
    line = line_as_read(drawer_line(row, taps, place.case, visit.now), visit.unit)
    return LinePage(
        title=line.code, line=line, stages=drawer_stages(), back=_back(visit, place), line_refused=refused
    )


def _back(visit: Visit, place: Place) -> str:
    """The page from which was tapped; the board where none is named."""
    back = visit.typed.get("back")
    if back.startswith(("/board", "/bench/")):
        return back
    return f"/bench/{place.drawer.id}" if place.drawer else "/board"
