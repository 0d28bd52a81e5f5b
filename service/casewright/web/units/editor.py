"""The editor of a unit: the form, what comes out of it as it is typed, and saving it."""

from dataclasses import dataclass, replace
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import HTMLResponse, Response

from casewright.shop.figures import figures_from
from casewright.shop.refusals import Stale
from casewright.shop.units import REASON, needs_reason, refuse_if_taken_out, revise_unit, spec_text
from casewright.web.frame.pages import Page, frame_of, render, see, show
from casewright.web.frame.typed import Reader
from casewright.web.frame.visits import Office, OfficeLooks, Visit
from casewright.web.units.finding_fields import finding_field
from casewright.web.units.follows import FOLLOWS, made_from, opened_with
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
from casewright.web.units.measured_text import folded
from casewright.web.units.result import VIEWS, Result, drawn_sizes, result_of
from casewright.web.units.rows import shape_of
from casewright.web.units.running_group import SLIDE, slide_choices
from casewright.web.units.sheet import UnitSheet, sheet_of
from casewright.web.units.tools import Tools, tools_of
from casewright.web.units.worked import Met, UnitHead, meet_unit, work_out

router = APIRouter()
MOST_REMARK = 400
"""How long what is said of a change may be, carried on by the form."""
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
        is_typed: whether the page answers to what was typed
        history: what was changed since the form was opened
        tools: what can be done to the opening that is chosen
        view: which drawing is looked at
        views: every drawing, and what its tab is called
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
    is_typed: bool
    history: History
    tools: Tools
    view: str
    version: str
    note: str = ""
    note_fault: str = ""
    views: tuple[tuple[str, str], ...] = tuple(VIEWS.items())


@router.get("/units/{unit_id}")
def show_unit(visit: Office, unit_id: str) -> Response:
    """The editor, with what was saved last."""
    met = meet_unit(visit, unit_id)
    values = values_of(met.loaded.text) | {FOLLOWS: opened_with(met.loaded.revision.number)}
    read = Read(values=values, spec=met.loaded.spec)
    return show(visit, _page(visit, met, read, begun(read.values)))


@router.post("/units/{unit_id}/working")
def work_unit_out(visit: OfficeLooks, unit_id: str) -> Response:
    """What comes out of what is typed; saves nothing."""
    met = meet_unit(visit, unit_id)
    done, history = _after(visit, met, _typed(visit))
    page = _page(visit, met, read_values(done.values, met.loaded.spec), history, done=done)
    status = 422 if page.sheet.faults else 200
    if visit.wants_block not in {"result", "fields", "drawn"}:
        return show(visit, page, status)
    # Where something is wrong, only that: the browser keeps the drawing and the price that it has.
    block = "said" if page.sheet.faults and visit.wants_block == "result" else visit.wants_block
    frame = frame_of(visit, visit.request)
    # A button changes the fields, what is chosen, and what is to be said of it.
    more = ("history", "changed_tools") if block == "fields" else ("history",)
    return HTMLResponse("".join(render(page, frame, each) for each in (block, *more)), status)


def _after(visit: Visit, met: Met, typed: dict[str, str]) -> tuple[Acted, History]:
    """The form after the button that was pressed, and every step that led there."""
    act, at, into, to = (visit.typed.get(name)[:40] for name in ("do", "at", "into", "to"))
    history = stepped(_history(visit, met), typed, visit.typed.get("step")[:80])
    if act in BACK_AND_FORTH:
        history = BACK_AND_FORTH[act](history)
        return Acted(values=dict(history.was), at=at), history
    done = acted(typed, Pressed(act=act, at=at, into=into, to=to))
    return done, stepped(history, done.values)


@router.post("/units/{unit_id}")
def save_unit(visit: Office, unit_id: str) -> Response:
    """Keeps a new revision; of two who save at once the second sees both values."""
    met = meet_unit(visit, unit_id)
    refuse_if_taken_out(met.loaded.unit)
    reader = Reader(visit.typed)
    version = reader.whole("version", least=1, most=10**8)
    note = reader.line("note", most=300, needed=REASON if needs_reason(met.loaded.unit) else "")
    read = read_values(_typed(visit), met.loaded.spec)
    history = stepped(_history(visit, met), read.values)
    page = _page(visit, met, read, history, note_fault=reader.faults.get("note", ""))
    if read.spec is None or page.sheet.faults or reader.faults:
        return show(visit, page, 422)
    try:
        _revise(visit, met, read, version, note)
    except Stale:
        return show(visit, _page(visit, met, read, history, theirs=_theirs(met, read)), 409)
    view = _view(visit)
    return see(f"/units/{unit_id}{f'?view={view}' if view != 'front' else ''}", "saved")


def _view(visit: Visit) -> str:
    """Which drawing is asked for, by its tab, by the form, or by the address."""
    asked = visit.typed.get("show") or visit.typed.get("view") or visit.request.query_params.get("view", "")
    return asked if asked in VIEWS else next(iter(VIEWS))


def _typed(visit: Visit) -> dict[str, str]:
    """The fields of the form; what steers the request is left out."""
    return folded({name: value for name, value in visit.typed.values().items() if name not in NOT_CHANGES})


def _history(visit: Visit, met: Met) -> History:
    return read_history(visit.typed.values(), values_of(met.loaded.text))


def _revise(visit: Visit, met: Met, read: Read, version: int, note: str) -> None:
    as_opened = read_values(values_of(met.loaded.text), met.loaded.spec).spec
    spec = read.spec
    if spec is None:
        return
    if as_opened and spec_text(spec) == spec_text(as_opened):
        spec = met.loaded.spec  # nothing but where its openings were may be new
    own = figures_from(met.figures)
    source = made_from(read.values.get(FOLLOWS, ""), met.loaded.revision.number)
    revise_unit(visit.db, met.loaded, spec, own, version, visit.who, visit.now, note, source)


def _theirs(met: Met, read: Read) -> dict[str, str]:
    """What somebody else saved meanwhile, where it differs from what is typed."""
    saved = values_of(met.loaded.text)
    return {
        each.name: saved.get(each.name, "")
        for each in asked_fields(shape_of({**saved, **read.values}))
        if saved.get(each.name, "") != read.values.get(each.name, "").strip()
    }


def _tools(visit: Visit, read: Read, done: Acted | None) -> Tools:
    """What is chosen in the drawing; after a change, what is chosen then."""
    at, note = (done.at, done.note) if done else (visit.typed.get("at")[:40], "")
    if not visit.typed.get("do"):
        note = visit.typed.get("remark")[:MOST_REMARK]  # of the last change, until something else is typed
    made = tools_of(read.values, at, note)
    if visit.typed.get("do").startswith("edit-") and not note:
        return made
    return replace(made, into=visit.typed.get("into", "2")[:2], to=visit.typed.get("to")[:30])


def _page(
    visit: Visit,
    met: Met,
    read: Read,
    history: History,
    theirs: dict[str, str] | None = None,
    note_fault: str = "",
    done: Acted | None = None,
) -> EditorPage:
    """The page for what is typed: worked out where it can be, else with what was saved beside it."""
    unit, today, view = met.loaded.unit, visit.today, _view(visit)
    is_saved, worked = read.spec == met.loaded.spec, None
    if read.spec is not None:
        spec = read.spec.model_copy(update={"code": unit.code})
        text = met.loaded.text if is_saved else spec_text(spec)
        worked = work_out(text, met.figures, today, read.unit)
        if worked.unit is None:
            read = Read(values=read.values, faults=refusal_fault(worked.refusal, read.values))
            worked = None
    writing = met.writing if read.spec is None else met.writing_in(read.unit)
    shown = worked or met.work_out(today)
    lists = {SLIDE: slide_choices(figures_from(met.figures).slides)}
    is_first = not visit.typed.has("version")
    return EditorPage(
        title=f"Unit {unit.code} · {unit.name}",
        head=met.head,
        sheet=sheet_of(read, theirs, lists, drawn_sizes(shown, writing)),
        result=result_of(shown, writing, view, finding_field(read.values)),
        stale_result=bool(read.faults),
        is_saved=is_saved and not made_from(read.values.get(FOLLOWS, ""), unit.revision).follows,
        is_typed=not is_first,
        history=history,
        tools=_tools(visit, read, done),
        view=view,
        version=str(unit.version) if is_first or theirs is not None else visit.typed.get("version"),
        note=visit.typed.get("note"),
        note_fault=note_fault,
    )
