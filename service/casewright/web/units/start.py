"""A new unit of a job: from a starting unit, from a unit file, or as a copy of an earlier one."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.drawing.small import small_elevation
from casewright.measure.lengths import LengthUnit
from casewright.papers.writing import Writing
from casewright.pieces.asked.presets import presets
from casewright.pieces.asked.reading import CannotRead, read_unit
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.refusals import REFUSALS
from casewright.records.jobs import Job
from casewright.records.units import EarlierUnit, earlier_units
from casewright.shop.estimating import worked_unit
from casewright.shop.figures import figures_from, figures_text
from casewright.shop.jobs import load_job, refuse_if_over
from casewright.shop.keeping import once
from casewright.shop.own_starts import own_start, own_starts, start_spec
from casewright.shop.units import add_unit, load_unit, spec_text
from casewright.web.frame.pages import Page, drawing, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.form import sentence, too_many_drawers
from casewright.web.units.worked import work_out

router = APIRouter()
LONGEST_FILE = 200_000
OWN = "own-"
"""What the keys of the shop's own starting units begin with."""
NO_FIGURES = "{}"
"""The figures of a shop that has none of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """A starting unit as it is offered."""

    key: str
    name: str
    words: str
    size: str
    drawers: int
    drawing: Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class NewUnitPage(Page):
    """Where a unit starts."""

    template: ClassVar[str] = "units/new.html"
    job: Job
    cards: Sequence[Card]
    own: Sequence[Card]
    earlier: Sequence[EarlierUnit]
    words: str
    form: Form


@router.get("/jobs/{job_id}/units/new")
def show_new_unit(visit: Office, job_id: str, q: str = "") -> Response:
    """Starting units, a place for a unit file, and earlier units."""
    return show(visit, _page(visit, _open_job(visit, job_id), form_of(), " ".join(q.split())[:100]))


@router.post("/jobs/{job_id}/units")
def save_new_unit(visit: Office, job_id: str) -> Response:
    """Adds a unit to a job, and opens its form."""
    job = _open_job(visit, job_id)
    reader = Reader(visit.typed)
    spec = _chosen(visit, reader)
    if spec is not None and (too_many := too_many_drawers(spec)[1]):
        reader.fault("file", too_many)
    if spec is None or reader.faults:
        return show(visit, _page(visit, job, reader.form), 422)
    figures, start = figures_text(visit.db, visit.shop, job), spec
    worked = work_out(spec_text(spec), figures, visit.today, visit.unit)
    if worked.unit is None:
        reader.fault("file", sentence(worked.refusal))
        return show(visit, _page(visit, job, reader.form), 422)

    def make() -> str:
        return f"/units/{add_unit(visit.db, job, start, figures_from(figures), visit.who, visit.now).id}"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


def _open_job(visit: Visit, job_id: str) -> Job:
    job = load_job(visit.db, job_id)
    refuse_if_over(job, "add a unit")
    return job


def _chosen(visit: Visit, reader: Reader) -> UnitSpec | None:
    """The unit that was chosen to start from; None, with a fault, where it cannot be."""
    key, copied = visit.typed.get("start"), visit.typed.get("unit")
    if key:
        if key.startswith(OWN):
            return start_spec(own_start(visit.db, key.removeprefix(OWN)))
        known = {each.key: each for each in presets()}
        chosen = known[reader.choice("start", known)]
        return None if reader.faults else _in_shop_unit(visit, chosen.spec())
    if copied:
        return load_unit(visit.db, copied).spec
    text = reader.text("file", most=LONGEST_FILE, needed="Choose a start above, or paste a unit file here.")
    if reader.faults:
        return None
    try:
        return read_unit(text)
    except CannotRead as refused:
        for each in refused.problems[:1]:
            where = f"{each.field}: " if each.field else ""
            reader.fault("file", where + sentence(each.message))
        return None


def _in_shop_unit(visit: Visit, spec: UnitSpec) -> UnitSpec:
    """A starting unit as the shop writes sizes: one in inches is turned into millimetres where it must be."""
    return spec.model_copy(update={"unit": _unit_of(spec, visit.unit)})


def _unit_of(spec: UnitSpec, shop: LengthUnit) -> LengthUnit:
    return shop if spec.unit is LengthUnit.INCH else spec.unit


def _page(visit: Visit, job: Job, form: Form, words: str = "") -> NewUnitPage:
    return NewUnitPage(
        title="New unit",
        job=job,
        cards=_cards(visit.unit, visit.shop.denominator),
        own=tuple(_own_cards(visit)),
        earlier=earlier_units(visit.db, words),
        words=words,
        form=form,
    )


@lru_cache(maxsize=16)
def _cards(unit: LengthUnit, denominator: int) -> tuple[Card, ...]:
    """The starting units with their drawings, which no shop's figures change; kept a while."""
    return tuple(_card(each.key, each.name, each.words, each.spec(), unit, denominator) for each in presets())


def _card(key: str, name: str, words: str, chosen: UnitSpec, unit: LengthUnit, denominator: int) -> Card:
    built = worked_unit(spec_text(chosen), NO_FIGURES)
    spec = built.spec
    writing = Writing(unit=_unit_of(spec, unit), denominator=denominator)
    size = writing.sizes(spec.overall_width, spec.overall_depth, built.face.overall_height)
    return Card(
        key=key,
        name=name,
        words=words,
        size=f"{size} {writing.unit}",
        drawers=len(built.drawers),
        drawing=drawing(small_elevation(built).svg(prefix=key)),
    )


def _own_cards(visit: Visit) -> Iterator[Card]:
    """The shop's own starting units; one that can no longer be built with the rules of today is left out."""
    for each in own_starts(visit.db):
        try:
            spec = start_spec(each)
            yield _card(f"{OWN}{each.id}", each.name, each.words, spec, visit.unit, visit.shop.denominator)
        except (CannotRead, *REFUSALS):
            continue
