"""The editor of a unit: the form, what comes out of it as it is typed, and saving it."""

from dataclasses import dataclass, replace
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import HTMLResponse, Response

from casewright.pieces.asked.spec import UnitSpec
from casewright.shop.figures import figures_from
from casewright.shop.refusals import Stale
from casewright.shop.units import REASON, needs_reason, refuse_if_taken_out, revise_unit, spec_text
from casewright.web.frame.pages import Page, frame_of, render, see, show
from casewright.web.frame.typed import Reader
from casewright.web.frame.visits import Office, OfficeLooks, Visit
from casewright.web.units.form import (
    Read,
    asked_fields,
    read_values,
    refusal_fault,
    values_of,
)
from casewright.web.units.form_acts import Acted, Pressed, acted
from casewright.web.units.history import (
    NOT_CHANGES,
    History,
    begun,
    read_history,
    redone,
    stepped,
    undone,
)
from casewright.web.units.result import Result, result_of
from casewright.web.units.rows import shape_of
from casewright.web.units.sheet import UnitSheet, sheet_of
from casewright.web.units.tools import Tools, tools_of
from casewright.web.units.worked import Seen, UnitHead, see_unit, work_out

router = APIRouter()
BACK_AND_FORTH = {"undo": undone, "redo": redone}


@dataclass(frozen=True, slots=True, kw_only=True)
class EditorPage(Page):
    """The form of a unit beside what comes out of it.

    Attributes:
        head: the unit
        sheet: the form
        result: what comes out; None where nothing can be built even of what was saved
        stale_result: whether the result is of what was saved, because what is typed cannot be worked out
        is_saved: whether what is typed is what was saved
        history: what was changed since the form was opened
        tools: what can be done to the opening that is chosen
        version: the version that the form was opened with
        note: the reason, as typed
        note_fault: what is wrong with the reason
    """

    template: ClassVar[str] = "units/editor.html"
    head: UnitHead
    sheet: UnitSheet
    result: Result | None
    stale_result: bool
    is_saved: bool
    history: History
    tools: Tools
    version: str
    note: str = ""
    note_fault: str = ""


@router.get("/units/{unit_id}")
def show_unit(visit: Office, unit_id: str) -> Response:
    """The editor, with what was saved last."""
    seen = see_unit(visit, unit_id)
    read = Read(values=values_of(seen.loaded.text), spec=seen.loaded.spec)
    return show(visit, _page(visit, seen, read, begun(read.values)))


@router.post("/units/{unit_id}/working")
def work_unit_out(visit: OfficeLooks, unit_id: str) -> Response:
    """What comes out of what is typed; saves nothing."""
    seen = see_unit(visit, unit_id)
    done, history = _after(visit, seen, _typed(visit))
    page = _page(visit, seen, read_values(done.values, seen.loaded.spec), history, done=done)
    status = 422 if page.sheet.faults else 200
    if visit.wants_block not in {"result", "fields"}:
        return show(visit, page, status)
    # Where something is wrong, only that: the browser keeps the drawing and the price that it has.
    block = "said" if page.sheet.faults and visit.wants_block == "result" else visit.wants_block
    frame = frame_of(visit, visit.request)
    return HTMLResponse(render(page, frame, block) + render(page, frame, "history"), status)


def _after(visit: Visit, seen: Seen, typed: dict[str, str]) -> tuple[Acted, History]:
    """The form after the button that was pressed, and every step that led there."""
    act, at, into, to = (visit.typed.get(name)[:40] for name in ("do", "at", "into", "to"))
    history = stepped(_history(visit, seen), typed, visit.typed.get("step")[:80])
    if act in BACK_AND_FORTH:
        history = BACK_AND_FORTH[act](history)
        return Acted(values=dict(history.was), at=at), history
    done = acted(typed, Pressed(act=act, at=at, into=into, to=to))
    return done, stepped(history, done.values)


@router.post("/units/{unit_id}")
def save_unit(visit: Office, unit_id: str) -> Response:
    """Keeps a new revision; of two who save at once the second sees both values."""
    seen = see_unit(visit, unit_id)
    refuse_if_taken_out(seen.loaded.unit)
    reader = Reader(visit.typed)
    version = reader.whole("version", least=1, most=10**8)
    note = reader.line("note", most=300, needed=REASON if needs_reason(seen.loaded.unit) else "")
    read = read_values(_typed(visit), seen.loaded.spec)
    history = stepped(_history(visit, seen), read.values)
    page = _page(visit, seen, read, history, note_fault=reader.faults.get("note", ""))
    if read.spec is None or page.sheet.faults or reader.faults:
        return show(visit, page, 422)
    try:
        _revise(visit, seen, read.spec, version, note)
    except Stale:
        return show(visit, _page(visit, seen, read, history, theirs=_theirs(seen, read)), 409)
    return see(f"/units/{unit_id}", "saved")


def _typed(visit: Visit) -> dict[str, str]:
    """The fields of the form; what steers the request is left out."""
    return {name: value for name, value in visit.typed.values().items() if name not in NOT_CHANGES}


def _history(visit: Visit, seen: Seen) -> History:
    return read_history(visit.typed.values(), values_of(seen.loaded.text))


def _revise(visit: Visit, seen: Seen, spec: UnitSpec, version: int, note: str) -> None:
    as_opened = read_values(values_of(seen.loaded.text), seen.loaded.spec).spec
    if as_opened and spec_text(spec) == spec_text(as_opened):  # such as by a second press
        return
    own = figures_from(seen.figures)
    revise_unit(visit.db, seen.loaded, spec, own, version, visit.who, visit.now, note)


def _theirs(seen: Seen, read: Read) -> dict[str, str]:
    """What somebody else saved meanwhile, where it differs from what is typed."""
    saved = values_of(seen.loaded.text)
    return {
        each.name: saved.get(each.name, "")
        for each in asked_fields(shape_of({**saved, **read.values}))
        if saved.get(each.name, "") != read.values.get(each.name, "").strip()
    }


def _tools(visit: Visit, read: Read, done: Acted | None) -> Tools:
    """What is chosen in the drawing; after a change, what is chosen then."""
    at, note = (done.at, done.note) if done else (visit.typed.get("at")[:40], "")
    made = tools_of(read.values, at, note)
    if visit.typed.get("do").startswith("edit-") and not note:
        return made
    return replace(made, into=visit.typed.get("into", "2")[:2], to=visit.typed.get("to")[:30])


def _page(
    visit: Visit,
    seen: Seen,
    read: Read,
    history: History,
    theirs: dict[str, str] | None = None,
    note_fault: str = "",
    done: Acted | None = None,
) -> EditorPage:
    """The page for what is typed: worked out where it can be, else with what was saved beside it."""
    unit = seen.loaded.unit
    worked, is_saved = seen.worked, read.spec == seen.loaded.spec
    if read.spec is not None and not is_saved:
        spec = read.spec.model_copy(update={"code": unit.code})
        worked = work_out(spec_text(spec), seen.figures, visit.today, read.unit)
    if worked.unit is None and read.spec is not None:
        read = Read(values=read.values, faults=refusal_fault(worked.refusal, read.values))
    writing = seen.writing if read.spec is None else seen.writing_in(read.unit)
    shown = seen.worked if worked.unit is None or read.spec is None else worked
    is_first = not visit.typed.has("version")
    return EditorPage(
        title=f"Unit {unit.code} · {unit.name}",
        head=seen.head,
        sheet=sheet_of(read, theirs),
        result=result_of(shown, writing),
        stale_result=bool(read.faults),
        is_saved=is_saved,
        history=history,
        tools=_tools(visit, read, done),
        version=str(unit.version) if is_first or theirs is not None else visit.typed.get("version"),
        note=visit.typed.get("note"),
        note_fault=note_fault,
    )
