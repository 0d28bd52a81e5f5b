"""The hours: what each operation takes, by hand and with machine help, and what is put on top."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.figures import bundled, house_figures
from casewright.labour.operations import Group, operations
from casewright.measure.shares import show_percent
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.records.finished import has_log
from casewright.shop.own_figures import held_figures, spec_of
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Owner, Visit
from casewright.web.settings.forms import fresh, save
from casewright.web.settings.hours_form import (
    ALLOWANCE,
    FactorLine,
    HoursLine,
    factor_lines,
    field_names,
    hours_lines,
    hours_values,
    read_hours,
)
from casewright.web.settings.lines import Ground, Line, ground_of, grounds_of
from casewright.wood.species import woods

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """A figure about repeats and learning, as every shop starts with it."""

    words: str
    value: str
    ground: Ground


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursPage(Page):
    """The hours."""

    template: ClassVar[str] = "shop/hours.html"
    form: Form
    groups: tuple[tuple[Group, tuple[HoursLine, ...]], ...]
    names: Mapping[str, str]
    own: int
    total: int
    allowance: Line
    allowance_ground: Ground
    factors: tuple[FactorLine, ...]
    habits: tuple[Habit, ...]
    woods: tuple[str, ...]
    has_log: bool
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/hours")
def show_hours(visit: Owner) -> Response:
    """The hours, the shop's own beside the usual ones."""
    spec, form = fresh(visit, hours_values)
    return show(visit, _page(visit, spec, form))


@router.post("/shop/hours")
def save_hours(visit: Owner) -> Response:
    """Saves the shop's own hours."""
    again = save(visit, hours_values, read_hours)
    if again is None:
        return see("/shop/hours", "saved")
    form, status = again
    return show(visit, _page(visit, spec_of(held_figures(visit.db, visit.shop)), form), status)


def _page(visit: Visit, spec: ShopSpec, form: Form) -> HoursPage:
    return HoursPage(
        title="Hours",
        form=form,
        groups=hours_lines(spec),
        names=field_names(spec),
        own=len(spec.minutes),
        total=len(operations()),
        allowance=ALLOWANCE,
        allowance_ground=grounds_of((ALLOWANCE,), spec)[ALLOWANCE.name],
        factors=factor_lines(spec),
        habits=habits(),
        woods=tuple(each.name for each in woods()),
        has_log=has_log(visit.db),
        tabs=rooms_for(visit),
    )


def habits() -> tuple[Habit, ...]:
    """How batches and learning are reckoned."""
    held, data = house_figures(), bundled("standards.json")
    repeats, learning = data["repeats"], data["learning"]
    learned = ground_of(learning["basis"], learning["source"])
    setups = ", ".join(one.code for one in operations() if one.setup)
    first = ground_of("common practice", "planning figures: averages of a batch")
    return (
        Habit(
            words="The minutes are", value="the average of a batch, so no curve is put on them", ground=first
        ),
        Habit(words="Paid once a batch", value=setups, ground=first),
        Habit(
            words="By the flat rule, each repeat saves",
            value=f"{show_percent(held.steady_saving)}, {show_percent(held.greatest_saving)} at most",
            ground=ground_of(repeats["basis"], repeats["source"]),
        ),
        Habit(
            words="A hand starts again after",
            value=f"{held.reset:g} weeks without it",
            ground=ground_of(repeats["reset_basis"], repeats["reset_source"]),
        ),
        Habit(
            words="A usual figure counts for",
            value=f"{held.trust:g} jobs when the log teaches",
            ground=learned,
        ),
        Habit(
            words="A time is set aside when it lies",
            value=f"more than {held.outlier:g} deviations from the others",
            ground=learned,
        ),
    )
