"""The shop's own starting units: kept from a unit's page, renamed and taken away on a page of their own."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.records.jobs import OwnStart
from casewright.shop.keeping import once
from casewright.shop.own_starts import (
    keep_start,
    own_start,
    own_starts,
    rename_start,
    take_start_away,
    why_not_kept,
    why_not_renamed,
)
from casewright.shop.units import LoadedUnit, load_unit
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office
from casewright.web.units.worked import UnitHead, head_of

router = APIRouter()
NAMELESS = "Give it a name, so that it is found again."


@dataclass(frozen=True, slots=True, kw_only=True)
class StartsPage(Page):
    """The shop's own starting units.

    Attributes:
        starts: by name
        form: what was typed into one of them, and what is wrong with it
        typed_for: the id of that one; empty for none
    """

    template: ClassVar[str] = "units/own_starts.html"
    starts: Sequence[OwnStart]
    form: Form
    typed_for: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeepStartPage(Page):
    """What a unit is to be called as a starting unit.

    Attributes:
        head: the unit
        form: what is typed
    """

    template: ClassVar[str] = "units/keep_start.html"
    head: UnitHead
    form: Form


@router.get("/starting-units")
def show_starts(visit: Office) -> Response:
    """The shop's own starting units."""
    return show(visit, StartsPage(title="Starting units", starts=own_starts(visit.db), form=Form()))


@router.post("/starting-units/{start_id}")
def save_start(visit: Office, start_id: str) -> Response:
    """Renames a starting unit."""
    start, reader = own_start(visit.db, start_id), Reader(visit.typed)
    name = reader.line("name", most=120, needed=NAMELESS)
    words = reader.line("words", most=300)
    version = reader.whole("version", least=1, most=10**8)
    if not reader.faults and (why := why_not_renamed(visit.db, start, name)):
        reader.fault("name", why)
    if reader.faults:
        page = StartsPage(
            title="Starting units", starts=own_starts(visit.db), form=reader.form, typed_for=start_id
        )
        return show(visit, page, 422)
    rename_start(visit.db, start, name, words, version)
    return see("/starting-units", "saved")


@router.post("/starting-units/{start_id}/removal")
def remove_start(visit: Office, start_id: str) -> Response:
    """Takes a starting unit away."""
    take_start_away(visit.db, own_start(visit.db, start_id))
    return see("/starting-units", "removed")


@router.get("/units/{unit_id}/starting-units")
def ask_about_start(visit: Office, unit_id: str) -> Response:
    """Asks what a unit is to be called as a starting unit."""
    loaded = load_unit(visit.db, unit_id)
    return show(visit, _keeping(loaded, form_of(name=loaded.unit.name, words="")))


@router.post("/units/{unit_id}/starting-units")
def keep_unit_as_start(visit: Office, unit_id: str) -> Response:
    """Keeps a unit, as it was saved last, as a starting unit of the shop."""
    loaded, reader = load_unit(visit.db, unit_id), Reader(visit.typed)
    name = reader.line("name", most=120, needed=NAMELESS)
    words = reader.line("words", most=300)
    if not reader.faults and (why := why_not_kept(visit.db, name)):
        reader.fault("name", why)
    if reader.faults:
        return show(visit, _keeping(loaded, reader.form), 422)

    def make() -> str:
        keep_start(visit.db, loaded, name, words, visit.who, visit.now)
        return "/starting-units"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


def _keeping(loaded: LoadedUnit, form: Form) -> KeepStartPage:
    return KeepStartPage(
        title=f"Keep unit {loaded.unit.code} as a starting unit", head=head_of(loaded), form=form
    )
