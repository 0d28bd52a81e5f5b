"""The rack: the tools that the shop owns, and the numbers that are usual in its joints."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.joinery.chisels import SAW_ROWS
from casewright.joinery.sourced import rows
from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.shop.own_figures import held_figures, spec_of
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Owner, Visit
from casewright.web.settings.forms import fresh, save
from casewright.web.settings.lines import OWN, Ground, ground_of, is_own
from casewright.web.settings.rack_form import (
    COUNTS,
    USES,
    WIDTHS,
    field_names,
    rack_rows,
    rack_values,
    read_rack,
)
from casewright.web.settings.rack_lines import HABITS, LOOKS_LINES, USUAL_LINES, Habit, habit_grounds

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class RackPage(Page):
    """The rack."""

    template: ClassVar[str] = "shop/rack.html"
    form: Form
    names: Mapping[str, str]
    unit: LengthUnit
    grounds: Mapping[str, Ground]
    rows: Mapping[str, range]
    uses: tuple[tuple[str, str], ...]
    usual_lines: tuple[Habit, ...]
    looks_lines: tuple[Habit, ...]
    houses: Mapping[str, str]
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/rack")
def show_rack(visit: Owner) -> Response:
    """The rack, and the shop's usual numbers."""
    spec, form = fresh(visit, partial(rack_values, unit=visit.unit))
    return show(visit, _page(visit, spec, form))


@router.post("/shop/rack")
def save_rack(visit: Owner) -> Response:
    """Saves the rack, and the shop's usual numbers."""
    again = save(visit, partial(rack_values, unit=visit.unit), partial(read_rack, unit=visit.unit))
    if again is None:
        return see("/shop/rack", "saved")
    form, status = again
    return show(visit, _page(visit, spec_of(held_figures(visit.db, visit.shop)), form), status)


def _page(visit: Visit, spec: ShopSpec, form: Form) -> RackPage:
    return RackPage(
        title="Rack",
        form=form,
        names=field_names(),
        unit=visit.unit,
        grounds=_tool_grounds(spec) | habit_grounds(HABITS, spec),
        rows={group: rack_rows(form.values, group) for group in (*WIDTHS, "saw")},
        uses=tuple((use.value, words) for use, words in USES.items()),
        usual_lines=USUAL_LINES,
        looks_lines=LOOKS_LINES,
        houses={habit.name: habit.shown(habit.house.value, visit.unit) for habit in HABITS},
        tabs=rooms_for(visit),
    )


def _tool_grounds(spec: ShopSpec) -> dict[str, Ground]:
    """On what ground each list of tools stands now."""
    held = rows("rack")
    grounds = {
        name: Ground(word=OWN) if is_own(spec, name) else ground_of(held[name]["basis"], held[name]["source"])
        for name in (*WIDTHS.values(), *COUNTS)
    }
    own_saws = is_own(spec, "saws") or is_own(spec, "saw_kerf")
    for name, row in SAW_ROWS.items():
        grounds[name] = Ground(word=OWN) if own_saws else ground_of(row["basis"], row["source"])
    return grounds
