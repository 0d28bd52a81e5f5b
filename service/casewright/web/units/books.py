"""The books of a unit: its revisions, approving it, copying it, taking it out and bringing it back."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.bench import REVISION
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.words.describe import describe
from casewright.records.jobs import UnitRevision
from casewright.records.units import A_PAGE, revisions_of
from casewright.shop.bench import Hand
from casewright.shop.figures import figures_from
from casewright.shop.jobs import refuse_if_over
from casewright.shop.keeping import once
from casewright.shop.refusals import Refused, Stale
from casewright.shop.remaking import put_back, remade_between
from casewright.shop.units import (
    REASON,
    LoadedUnit,
    MadeFrom,
    add_unit,
    approve_unit,
    bring_back_unit,
    load_unit,
    needs_reason,
    refuse_if_taken_out,
    revise_unit,
    take_out_unit,
)
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.changes import Change, changes_between, rows_between
from casewright.web.units.form import asked_fields, values_of
from casewright.web.units.result import Result, result_of
from casewright.web.units.rows import shape_of
from casewright.web.units.worked import Seen, UnitHead, head_of, see_unit, writing_of

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionShown:
    """One revision: who, when, why, what it changed, and the rows that came or went, a line for each."""

    number: int
    who: str
    at: datetime
    note: str
    changes: tuple[Change, ...]
    rows: tuple[str, ...]
    is_first: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionsPage(Page):
    """The revisions of a unit, the latest first."""

    template: ClassVar[str] = "units/revisions.html"
    head: UnitHead
    revisions: tuple[RevisionShown, ...]
    earlier: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionPage(Page):
    """One revision, to be looked at."""

    template: ClassVar[str] = "units/revision.html"
    head: UnitHead
    revision: UnitRevision
    words: tuple[str, ...]
    result: Result | None
    chosen: tuple[tuple[str, str], ...]
    form: Form
    refusal: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RemovalPage(Page):
    """Asks whether a unit is to be taken out."""

    template: ClassVar[str] = "units/removal.html"
    head: UnitHead


@router.get("/units/{unit_id}/revisions")
def show_revisions(visit: Office, unit_id: str, below: int | None = None) -> Response:
    """What was saved, by whom and when, and what it changed."""
    loaded = load_unit(visit.db, unit_id)
    found = revisions_of(visit.db, unit_id, below)
    page = RevisionsPage(
        title=f"Revisions of unit {loaded.unit.code} · {loaded.unit.name}",
        head=head_of(loaded),
        revisions=tuple(_revisions(found)),
        earlier=found[A_PAGE - 1].number if len(found) > A_PAGE else None,
    )
    return show(visit, page)


def _revisions(found: Sequence[UnitRevision]) -> Iterator[RevisionShown]:
    for place, each in enumerate(found[:A_PAGE]):
        before = found[place + 1] if place + 1 < len(found) else None
        yield RevisionShown(
            number=each.number,
            who=each.who,
            at=each.at,
            note=each.note,
            changes=tuple(changes_between(before.spec, each.spec)) if before else (),
            rows=tuple(rows_between(before.spec, each.spec)) if before else (),
            is_first=before is None,
        )


@router.get("/units/{unit_id}/revisions/{number}")
def show_revision(visit: Office, unit_id: str, number: int) -> Response:
    """One revision as it was saved, worked out with the figures that hold now."""
    seen = see_unit(visit, unit_id, number)
    return show(visit, _revision_page(seen, form_of(version=str(seen.loaded.unit.version))))


def _revision_page(seen: Seen, form: Form) -> RevisionPage:
    revision, unit = seen.loaded.revision, seen.worked.unit
    values = values_of(seen.loaded.text)
    labels = {each.name: each.label for each in asked_fields(shape_of(values))}
    return RevisionPage(
        title=f"Revision {revision.number} of unit {seen.head.unit.code} · {seen.loaded.spec.name}",
        head=seen.head,
        revision=revision,
        words=describe(unit) if unit else (),
        result=result_of(seen.worked, seen.writing),
        chosen=tuple((labels[name], value) for name, value in values.items() if value and name in labels),
        form=form,
        refusal=seen.worked.refusal,
    )


@router.post("/units/{unit_id}/revisions")
def save_old_revision(visit: Office, unit_id: str) -> Response:
    """Brings an old revision back, as a new one."""
    reader = Reader(visit.typed)
    number = reader.whole("number", least=1, most=10**6)
    version = reader.whole("version", least=1, most=10**8)
    seen, old = see_unit(visit, unit_id), see_unit(visit, unit_id, number)
    refuse_if_taken_out(seen.loaded.unit)
    typed = reader.line("note", most=250, needed=REASON if needs_reason(seen.loaded.unit) else "")
    if reader.faults or not old.built:
        return show(visit, _revision_page(old, reader.form), 422)
    note = f"as revision {number}{f': {typed}' if typed else ''}"
    own = figures_from(seen.figures)
    try:
        revise_unit(
            visit.db,
            seen.loaded,
            old.loaded.spec,
            own,
            version,
            visit.who,
            visit.now,
            note,
            MadeFrom(number=number),
        )
    except Stale as stale:
        said = f"Somebody else saved revision {seen.head.unit.revision} meanwhile."
        raise Stale(stale.theirs, said) from stale
    return see(f"/units/{unit_id}", "saved")


@router.post("/units/{unit_id}/approval")
def approve(visit: Office, unit_id: str) -> Response:
    """Locks the revision that holds, if it is the one that was looked at: what was agreed."""
    number = Reader(visit.typed).whole("number", least=0, most=10**6, default=0)
    loaded = load_unit(visit.db, unit_id)
    if not number:
        raise Refused("Open the unit, and approve the revision that you see.", 422)
    agreed = loaded.unit.approved
    approve_unit(visit.db, loaded, number, visit.who, visit.now)
    if agreed and agreed != number:
        _remake(visit, loaded, agreed)
    return see(f"/units/{unit_id}", "saved")


def _remake(visit: Visit, loaded: LoadedUnit, agreed: int) -> None:
    """Puts back at the bench what is made again, where a changed unit is approved without a change order."""
    number = loaded.unit.revision
    try:
        plans = remade_between(visit.db, visit.shop, loaded.job, loaded.unit.id, agreed, number)
    except REFUSALS:
        return  # a revision that cannot be built any more says nothing of its parts
    mark, unit = f"{loaded.unit.id}:{number}", writing_of(visit, loaded).unit
    hand = Hand(mark=mark, now=visit.now, who=visit.who, person_id=visit.person.id, is_maker=True)
    put_back(visit.db, loaded.job, plans, f"{REVISION} {number}", unit, hand)


@router.post("/units/{unit_id}/copies")
def copy_unit(visit: Office, unit_id: str) -> Response:
    """Adds a copy of a unit to its job, and opens it."""
    seen = see_unit(visit, unit_id)
    refuse_if_over(seen.head.job, "add a unit")

    def make() -> str:
        own, spec = figures_from(seen.figures), seen.loaded.spec
        made = add_unit(visit.db, seen.head.job, spec, own, visit.who, visit.now)
        return f"/units/{made.id}"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


@router.get("/units/{unit_id}/removal")
def show_removal(visit: Office, unit_id: str) -> Response:
    """Asks before a unit is taken out."""
    loaded = load_unit(visit.db, unit_id)
    title = f"Take out unit {loaded.unit.code} · {loaded.unit.name}?"
    return show(visit, RemovalPage(title=title, head=head_of(loaded)))


@router.post("/units/{unit_id}/removal")
def remove_unit(visit: Office, unit_id: str) -> Response:
    """Takes a unit out of its job; it can be brought back."""
    loaded = load_unit(visit.db, unit_id)
    if loaded.unit.ended_at is None:
        take_out_unit(visit.db, loaded, visit.who, visit.now)
    return see(f"/units/{unit_id}", "removed")


@router.post("/units/{unit_id}/return")
def return_unit(visit: Office, unit_id: str) -> Response:
    """Brings a unit back into its job."""
    seen = see_unit(visit, unit_id)
    if seen.loaded.unit.ended_at is not None and seen.built:
        bring_back_unit(visit.db, seen.loaded, figures_from(seen.figures), visit.who, visit.now)
    return see(f"/units/{unit_id}", "undone")
