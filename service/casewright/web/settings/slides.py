"""The table of metal slides: what the maker's sheet of each model says, as the shop typed it."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.shop.own_figures import held_figures, spec_of
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Owner, Visit
from casewright.web.settings.forms import fresh, save
from casewright.web.settings.lines import OWN, Ground
from casewright.web.settings.slides_form import (
    COLUMNS,
    KINDS,
    Column,
    field_names,
    read_slides,
    slide_rows,
    slide_values,
)

router = APIRouter()
ADDRESS = "/shop/slides"


@dataclass(frozen=True, slots=True, kw_only=True)
class SlidesPage(Page):
    """The table of slides."""

    template: ClassVar[str] = "shop/slides.html"
    form: Form
    names: Mapping[str, str]
    unit: LengthUnit
    rows: range
    columns: tuple[Column, ...]
    kinds: tuple[tuple[str, str], ...]
    grounds: Mapping[str, Ground]
    tabs: tuple[tuple[str, str], ...]


@router.get(ADDRESS)
def show_slides(visit: Owner) -> Response:
    """The table of slides."""
    spec, form = fresh(visit, partial(slide_values, unit=visit.unit))
    return show(visit, _page(visit, spec, form))


@router.post(ADDRESS)
def save_slides(visit: Owner) -> Response:
    """Saves the table of slides."""
    again = save(visit, partial(slide_values, unit=visit.unit), partial(read_slides, unit=visit.unit))
    if again is None:
        return see(ADDRESS, "saved")
    form, status = again
    return show(visit, _page(visit, spec_of(held_figures(visit.db, visit.shop)), form), status)


def _page(visit: Visit, spec: ShopSpec, form: Form) -> SlidesPage:
    return SlidesPage(
        title="Slides",
        form=form,
        names=field_names(),
        unit=visit.unit,
        rows=slide_rows(form.values),
        columns=COLUMNS,
        kinds=KINDS,
        grounds=_grounds(spec),
        tabs=rooms_for(visit),
    )


def _grounds(spec: ShopSpec) -> dict[str, Ground]:
    """On what ground each slide of the table stands, by its name; one never changed keeps its own."""
    return {
        each.name: Ground(word=each.basis or OWN, source=each.source) for each in figures_of_spec(spec).slides
    }
