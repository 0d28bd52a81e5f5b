"""The shop's rate: what a year costs, what an hour must earn, and the terms of a price."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.ledger import Ledger
from casewright.measure.printing import Style
from casewright.measure.working import Explanation, explain
from casewright.pieces.asked.reading import CannotRead, read_as
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pricing.rate import ShopRate, shop_rate
from casewright.pricing.risk import RiskFactors, factor_at, risk_factors
from casewright.pricing.risk import RiskLevel as Level
from casewright.pricing.stages import StagePlan, stage_plans
from casewright.records.people import Role
from casewright.shop.own_figures import held_figures, spec_of
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Owner, Visit, allow
from casewright.web.settings.forms import FigureReader, fresh, merged, note_problems, save
from casewright.web.settings.lines import OWN, Ground, Line, ground_of, grounds_of, is_own
from casewright.web.settings.rate_form import (
    BLANK_COSTS,
    BLANK_STAGES,
    cost_grounds,
    field_names,
    rate_values,
    read_rate,
    rows_of,
)
from casewright.web.settings.rate_lines import ALL_LINES, JOB_LINES, TERM_LINES, YEAR_LINES

router = APIRouter()
OwnerLooks = Annotated[Visit, allow(Role.OWNER, reads=True)]
HOW_SURE = {
    Level.PLANNED: "As planned, with no reserve",
    Level.P50: "Enough in half of all jobs",
    Level.P80: "Enough in eight jobs of ten",
    Level.P90: "Enough in nine jobs of ten",
}
STEPS = (
    ("yearly_costs", "Costs of a year"),
    ("billable_hours", "Hours that can be billed"),
    ("hourly_cost", "Cost of an hour"),
    ("hourly_rate", "Rate"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """The rate and the risk with their working.

    Attributes:
        rate: the rate
        steps: the working of the rate, each with what it is called
        risk: the factors of the shop's own jobs, or the usual ones
        factors: for each level of certainty its words and its factor
        risk_steps: the working of the risk; empty for the usual factors
    """

    rate: ShopRate
    steps: tuple[tuple[str, Explanation], ...]
    risk: RiskFactors
    factors: tuple[tuple[str, float], ...]
    risk_steps: tuple[tuple[str, Explanation], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RatePage(Page):
    """The rate."""

    template: ClassVar[str] = "shop/rate.html"
    form: Form
    worked: Worked
    tried: bool
    year_lines: tuple[Line, ...]
    term_lines: tuple[Line, ...]
    job_lines: tuple[Line, ...]
    grounds: Mapping[str, Ground]
    names: Mapping[str, str]
    cost_rows: range
    cost_grounds: Mapping[int, Ground]
    stage_rows: range
    stage_ground: Ground
    plans: tuple[StagePlan, ...]
    levels: tuple[tuple[str, str], ...]
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/rate")
def show_rate(visit: Owner) -> Response:
    """The rate with its working."""
    spec, form = fresh(visit, rate_values)
    return show(visit, _page(visit, spec, form))


@router.post("/shop/rate")
def save_rate(visit: Owner) -> Response:
    """Saves the figures behind the rate."""
    again = save(visit, rate_values, read_rate)
    if again is None:
        return see("/shop/rate", "saved")
    form, status = again
    return show(visit, _page(visit, spec_of(held_figures(visit.db, visit.shop)), form), status)


@router.post("/shop/rate/look")
def look_at_rate(visit: OwnerLooks) -> Response:
    """Works the rate out with what is typed, and saves nothing."""
    held = held_figures(visit.db, visit.shop)
    read, spec = FigureReader(visit.typed), spec_of(held)
    draft = read_rate(read, spec)
    try:
        tried = spec if read.faults else read_as(ShopSpec, merged(held, draft))
    except CannotRead as error:
        note_problems(read, draft, error.problems)
        tried = spec
    form = Form(values=visit.typed.values(), faults=read.faults, once=visit.typed.once)
    status = 422 if read.faults and not visit.wants_block else 200
    return show(visit, _page(visit, tried, form, tried=True), status)


def work_rate_out(figures: Figures, symbol: str) -> Worked:
    """Rate and risk through the ledger, so that each can say why."""
    ledger, style = Ledger(), Style(symbol=symbol)
    rate = shop_rate(figures.year, ledger)
    factors = risk_factors(figures.history, ledger)
    learned = [
        (name, words)
        for name, words in (
            ("risk.log_mean", "The middle of the past jobs"),
            ("risk.log_deviation", "How widely they spread"),
            ("risk.P50", "Half of all jobs"),
            ("risk.P80", "Eight jobs of ten"),
            ("risk.P90", "Nine jobs of ten"),
        )
        if name in ledger
    ]
    return Worked(
        rate=rate,
        steps=tuple((words, explain(ledger, name, style)) for name, words in STEPS),
        risk=factors,
        factors=tuple((words, factor_at(factors, level)) for level, words in HOW_SURE.items()),
        risk_steps=tuple((words, explain(ledger, name, style)) for name, words in learned),
    )


def _page(visit: Visit, spec: ShopSpec, form: Form, *, tried: bool = False) -> RatePage:
    figures = figures_of_spec(spec)
    usual = stage_plans()[0]
    return RatePage(
        title="Rate",
        form=form,
        worked=work_rate_out(figures, visit.shop.symbol),
        tried=tried and not form.faults,
        year_lines=YEAR_LINES,
        term_lines=TERM_LINES,
        job_lines=JOB_LINES,
        grounds=grounds_of(ALL_LINES, spec),
        names=field_names(),
        cost_rows=rows_of(form.values, "cost", BLANK_COSTS),
        cost_grounds=cost_grounds(form.values),
        stage_rows=rows_of(form.values, "stage", BLANK_STAGES),
        stage_ground=Ground(word=OWN) if is_own(spec, "stages") else ground_of(usual.basis, usual.source),
        plans=stage_plans(),
        levels=tuple((level.value, words) for level, words in HOW_SURE.items()),
        tabs=rooms_for(visit),
    )
