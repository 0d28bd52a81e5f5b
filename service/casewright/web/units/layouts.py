"""The layouts of one row's tails: what could be cut, drawn side by side, and taken or typed by the maker."""

import re
from dataclasses import dataclass, replace
from typing import ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.measure.saying import refusal, say
from casewright.measure.units import Inches
from casewright.papers.writing import Writing
from casewright.pieces.asked.layout_spec import row_of
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.drawers.layouts import DrawerEnd, has_tails, with_layout
from casewright.shop.figures import figures_from
from casewright.shop.refusals import NotFound, Stale
from casewright.shop.units import REASON, needs_reason, refuse_if_taken_out, revise_unit
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.divider_card import DividerCard, asked_of, card_id, divider_card
from casewright.web.units.findings import FindingShown
from casewright.web.units.form import sentence
from casewright.web.units.layout_sight import Own, Sight, marks_of, same
from casewright.web.units.layouts_shown import (
    ChoiceShown,
    FamilyShown,
    OtherShown,
    RowLink,
    choices_drawing,
    choices_shown,
    families_shown,
    family_drawing,
    joint_drawing,
    layout_of,
    layouts_address,
    others_shown,
    refused_lines,
    row_links,
)
from casewright.web.units.worked import Seen, UnitHead, see_built_unit

router = APIRouter()
MOST_TAILS = 60
TAKEN = re.compile(r"([0-9]{1,2}) ([0-9]{1,3}\.[0-9]{1,9})")
"""How a button names a layout: its tails, and its pin in inches."""
PIN_TAKEN = re.compile(r"pin ([0-9]{1,3}\.[0-9]{1,9})")
NO_TAILS = "Write how many tails you want, such as 5, or take one of the layouts below."


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutsPage(Page):
    """The layouts that one row could have at one end of its sides.

    Attributes:
        head: the unit
        address: of this row at this end
        row: the mark of the row, such as `5` or `2-1-3`
        end: front or back
        serves: codes of the drawers that the row's tails are cut on
        unit: the unit of the sizes
        rows: the rows to choose from, by end
        now: the layout as it is
        pin_now: the unit's pin at this end
        is_own: whether the number of tails is the maker's own
        pin_is_own: whether the pin is
        shown: what is typed, the best layouts, and what is cut now
        side_by_side: those, drawn
        shared: what the checks say of every one of them alike: moisture and measuring, not the layout
        others: the other layouts that pass
        refused: why still others do not
        families: all rows, for every width of the pin
        family: all rows with the pin that is looked at, drawn
        form: what is typed of her own
        yours: the layout that it makes; None where nothing, or nothing that can be cut, is typed
        yours_drawn: its joint, drawn in full
        card: the dividers
        version: the version that the form was opened with
        asks_why: whether a reason is asked for
    """

    template: ClassVar[str] = "units/layouts.html"
    head: UnitHead
    address: str
    row: str
    end: str
    serves: tuple[str, ...]
    unit: str
    rows: tuple[tuple[str, tuple[RowLink, ...]], ...]
    now: ChoiceShown
    pin_now: str
    is_own: bool
    pin_is_own: bool
    shown: tuple[ChoiceShown, ...]
    side_by_side: Markup
    shared: tuple[FindingShown, ...]
    others: tuple[OtherShown, ...]
    refused: tuple[str, ...]
    families: tuple[FamilyShown, ...]
    family: Markup
    form: Form
    yours: ChoiceShown | None
    yours_drawn: Markup
    card: DividerCard
    version: str
    asks_why: bool


@router.get("/units/{unit_id}/layouts")
def show_layouts(visit: Office, unit_id: str, row: str = "", end: str = "front") -> Response:
    """What one row's tails could be; with what is typed of her own worked out, and nothing saved."""
    seen = see_built_unit(visit, unit_id)
    reader = Reader(asked_of(visit.request))
    return show(visit, _page(seen, _sight(seen, row, end), reader))


@router.post("/units/{unit_id}/layouts")
def take_layout(visit: Office, unit_id: str) -> Response:
    """Takes a layout into the unit, or takes the maker's choice back: a new revision."""
    seen = see_built_unit(visit, unit_id)
    refuse_if_taken_out(seen.loaded.unit)
    reader = Reader(visit.typed)
    sight = _sight(seen, visit.typed.get("row"), visit.typed.get("end"))
    wanted = _wanted(seen, sight, reader)
    version = reader.whole("version", least=1, most=10**8)
    note = reader.line("note", most=300, needed=REASON if needs_reason(seen.loaded.unit) else "")
    if wanted is None or reader.faults:
        return show(visit, _page(seen, sight, reader), 422)
    try:
        _save(visit, seen, wanted, version, note)
    except Stale:
        return show(visit, _page(seen, sight, reader, is_stale=True), 409)
    except REFUSALS as refused:
        # The unit as a whole cannot be built so, though this row by itself could.
        reader.fault(_place(sight, refused), sentence(refusal(refused, seen.writing.unit)))
        return show(visit, _page(seen, sight, reader), 422)
    return see(layouts_address(seen.head.address, sight.row, sight.end), "saved")


def _sight(seen: Seen, row: str, end: str) -> Sight:
    """The row and the end that are asked for.

    Raises:
        NotFound: the unit has no such row, or its sides no such end, or no tails there
    """
    if end not in {each.value for each in DrawerEnd}:
        raise NotFound("end of a drawer's side")
    marks = marks_of(seen.built)
    if (row or marks[0]) not in marks:
        raise NotFound("row of this unit")
    if not has_tails(seen.built.drawers, DrawerEnd(end)):
        raise NotFound("row of tails at this end")
    return Sight(built=seen.built, row=row or marks[0], end=DrawerEnd(end))


def _with_own(sight: Sight, reader: Reader, writing: Writing) -> Sight:
    """The row with the layout that is typed, where one is and its joint can be laid out.

    A number that is left out is the best looking for the pin; a pin that is left out is the unit's.
    """
    typed = reader.typed
    if not typed.get("tails").strip() and not typed.get("pin").strip():
        return sight
    tails = reader.whole("tails", least=1, most=MOST_TAILS) if typed.get("tails").strip() else None
    pin = reader.length("pin", writing.unit, needed=False)
    if pin is not None and pin <= 0:
        least = say("A pin needs a width; {} is the least here.", sight.set_out.least_pin)
        reader.fault("pin", writing.said(least))
    if {"tails", "pin"} & set(reader.faults):
        return sight
    pin = sight.set_out.pin if pin is None else pin
    own = replace(sight, own=Own(tails=tails or sight.layout.count, pin=pin))
    if tails is None:
        best = next((each for each in own.choices if same(each.pin, pin)), None)
        if best is None:
            reader.fault("pin", writing.said(own.why_not(0, pin)))
            return sight
        own = replace(own, own=Own(tails=best.count, pin=pin))
    try:
        own.joints(own.own.tails if own.own else 0, pin)
    except REFUSALS as refused:
        reader.fault("tails" if tails else "pin", sentence(refusal(refused, writing.unit)))
        return sight
    return own


def _wanted(seen: Seen, sight: Sight, reader: Reader) -> UnitSpec | None:
    """The unit with what a button asks for; None where what is typed cannot be used."""
    spec, act = seen.loaded.spec, reader.typed.get("take")
    tails = getattr(row_of(spec.rows, sight.row), sight.end.tails_name)
    pin = getattr(spec.drawers, sight.end.joint_name).pin
    layout, for_all = TAKEN.fullmatch(act), PIN_TAKEN.fullmatch(act)
    if act == "looks":
        tails = None
    elif act == "usual-pin":
        pin = None
    elif for_all:
        pin = _pin(sight, float(for_all[1]), pin)
    elif layout:
        tails, pin = int(layout[1]), _pin(sight, float(layout[2]), pin)
    else:
        own = _with_own(sight, reader, seen.writing).own
        if own is None or not reader.typed.get("tails").strip():
            reader.fault("tails", NO_TAILS)
            return None
        tails, pin = own.tails, _pin(sight, own.pin, pin)
    try:
        return with_layout(spec, sight.row, sight.end, tails, pin)
    except CannotRead as refused:
        reader.fault("tails", sentence(refused.problems[0].message))
        return None


def _pin(sight: Sight, wanted: Inches, written: Inches | None) -> Inches | None:
    """The pin to write down: the one in use stays as it was written, or as it was left out."""
    return written if same(wanted, sight.set_out.pin) else wanted


def _save(visit: Visit, seen: Seen, spec: UnitSpec, version: int, note: str) -> None:
    own = figures_from(seen.figures)
    revise_unit(visit.db, seen.loaded, spec, own, version, visit.who, visit.now, note)


def _shared(shown: tuple[ChoiceShown, ...]) -> tuple[FindingShown, ...]:
    """The stops and cautions that every layout has in the same words, so that they are said once."""
    first, *rest = (each.checks.stops + each.checks.cautions for each in shown)
    return tuple(each for each in first if all(each in other for other in rest))


def _place(sight: Sight, refused: Exception) -> str:
    """The field that a refusal is about: the pin, where another row has no room for it."""
    return "tails" if any(each.sizes.code in str(refused) for each in sight.drawers) else "pin"


def _page(seen: Seen, plain: Sight, reader: Reader, *, is_stale: bool = False) -> LayoutsPage:
    writing, unit, typed, spec = seen.writing, seen.loaded.unit, reader.typed, seen.loaded.spec
    sight = _with_own(plain, reader, writing)
    shown = tuple(choices_shown(sight, writing, seen.head.address))
    known = card_id(sight.drawers[0].sizes.code, sight.end)
    kept = [("row", sight.row), ("end", sight.end.value)]
    kept += [(name, typed.get(name)) for name in ("tails", "pin") if sight.own and typed.get(name)]
    opened = typed.get("version") if re.fullmatch(r"[0-9]{1,9}", typed.get("version")) else ""
    return LayoutsPage(
        title=f"Layouts of row {sight.row}, {sight.end.value} · {unit.code} · {unit.name}",
        head=seen.head,
        address=f"{seen.head.address}/layouts",
        row=sight.row,
        end=sight.end.value,
        serves=sight.codes,
        unit=writing.unit.value,
        rows=tuple(row_links(sight, seen.head.address)),
        now=next(each for each in shown if each.is_now),
        pin_now=writing.size(sight.set_out.pin),
        is_own=getattr(row_of(spec.rows, sight.row), sight.end.tails_name) is not None,
        pin_is_own=getattr(spec.drawers, sight.end.joint_name).pin is not None,
        shown=shown,
        side_by_side=choices_drawing(sight, shown, writing),
        shared=_shared(shown),
        others=tuple(others_shown(sight, shown, writing, seen.head.address)),
        refused=tuple(refused_lines(sight, writing)),
        families=tuple(families_shown(sight, writing)),
        family=family_drawing(sight, writing),
        form=Form(values=typed.values(), faults=reader.faults, is_stale=is_stale),
        yours=next((each for each in shown if each.is_yours), None),
        yours_drawn=joint_drawing(sight, sight.own.tails, sight.own.pin, writing) if sight.own else Markup(),
        card=divider_card(layout_of(sight), known, ", ".join(sight.codes), writing, typed, tuple(kept)),
        version=str(unit.version) if is_stale or not opened else opened,
        asks_why=needs_reason(unit),
    )
