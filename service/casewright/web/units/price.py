"""The price of a unit: what a maker may see of it, and how it is made up, for the owner."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.papers.writing import Writing
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.estimate import Estimate
from casewright.pricing.margins import margin_of
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import figures_from
from casewright.shop.still_examples import example_words
from casewright.shop.units import units_of
from casewright.web.frame.filters import day
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.figure_names import line_working
from casewright.web.units.result import MoneyShown, Shown, money_of
from casewright.web.units.worked import Seen, UnitHead, see_built_unit

router = APIRouter()
BEHIND = {
    "mark-up on materials": "price.materials",
    "labour": "price.labour",
    "mark-up on outwork": "price.outwork",
    "delivery": "price.delivery",
}
ENOUGH = {"P50": "half of all jobs", "P80": "eight jobs of ten", "P90": "nine jobs of ten"}
"""How often hours multiplied by each factor are enough."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LineShown:
    """One line of the price with its working."""

    label: str
    working: str
    amount: Shown


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """What only the owner sees.

    Attributes:
        lines: what adds up to the price before rounding
        before_rounding: their sum
        cost: what it takes as likely as not
        margin: what is left of the price after that
        margin_share: the same as a share of the price
        lowest: the least to accept
        rate: what is asked for an hour
        hour_cost: what an hour costs the shop
        yearly: what the shop costs in a year
        billable: hours that reach the bench in a year
        risk: how past jobs ran, by how sure one wants to be
        risk_ground: where that comes from
    """

    lines: tuple[LineShown, ...]
    before_rounding: Shown
    cost: Shown
    margin: str
    margin_share: str
    lowest: Shown
    rate: Shown
    hour_cost: Shown
    yearly: Shown
    billable: Shown
    risk: tuple[Shown, ...]
    risk_ground: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PricePage(Page):
    """The price of a unit.

    Attributes:
        money: price, tax, total and date; None where there is no price
        stages: what falls due when
        likely: the day as likely as not
        waits: what the date is made of
        share: its part of the price of a job of several units; empty in a job of one
        examples: what it still takes from an example shop
        inside: how the price is made up; None for whoever may not see it
    """

    template: ClassVar[str] = "units/price.html"
    head: UnitHead
    money: MoneyShown | None
    stages: tuple[tuple[str, Shown], ...]
    likely: str
    waits: str
    share: str
    examples: tuple[str, ...]
    inside: Inside | None
    refusal: str


@router.get("/units/{unit_id}/price")
def show_price(visit: Office, unit_id: str) -> Response:
    """The price of a unit by itself, its stages and its date."""
    seen = see_built_unit(visit, unit_id)
    held, writing = seen.worked.held, seen.writing
    page = PricePage(
        title=f"Price of unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        money=money_of(held, writing) if held else None,
        stages=_stages(held, writing) if held else (),
        likely=day(held.promise.likely) if held else "",
        waits=_waits(held) if held else "",
        share=_share(visit, seen),
        examples=tuple(example_words(held.materials, figures_from(seen.figures))) if held else (),
        inside=_inside(held, writing) if held and visit.is_owner else None,
        refusal=seen.worked.refusal,
    )
    return show(visit, page)


def _stages(held: Estimate, writing: Writing) -> tuple[tuple[str, Shown], ...]:
    return tuple(
        (stage.trigger, Shown(text=writing.money(stage.amount), figure=f"price.stage_{number}"))
        for number, stage in enumerate(held.price.stages, start=1)
    )


def _waits(held: Estimate) -> str:
    promise = held.promise
    return (
        f"{promise.queue_weeks:g} weeks of queue, {promise.wait_weeks:g} of waiting, "
        f"{promise.bench_hours:g} bench hours a week"
    )


def _share(visit: Visit, seen: Seen) -> str:
    """What the unit comes to in a job of several; nothing in a job of one, or for a unit taken out."""
    units = units_of(visit.db, seen.head.job)
    place = next((index for index, each in enumerate(units) if each.unit.id == seen.head.unit.id), None)
    if len(units) < 2 or place is None or seen.worked.held is None:
        return ""
    try:
        job = estimated_job(tuple(each.text for each in units), seen.figures, visit.today)
    except REFUSALS:  # another unit of the job cannot be priced; its own page says why
        return ""
    share = seen.writing.money(job.unit_prices_cents[place])
    return f"{share} of {seen.writing.money(job.price.asked)} for all {len(units)} units together"


def _inside(held: Estimate, writing: Writing) -> Inside:
    price, rate, risk, money = held.price, held.rate, held.risk, writing.money
    return Inside(
        lines=tuple(_lines(held, writing)),
        before_rounding=Shown(text=money(price.before_rounding), figure="price.before_rounding"),
        cost=Shown(text=money(price.cost), figure="price.cost"),
        margin=money(price.asked - price.cost),
        margin_share=f"{margin_of(price.asked, price.cost):.1%}" if price.asked > 0 else "",
        lowest=Shown(text=money(price.lowest), figure="price.lowest"),
        rate=Shown(text=money(rate.rate), figure="rate.hourly_rate"),
        hour_cost=Shown(text=money(rate.cost), figure="rate.hourly_cost"),
        yearly=Shown(text=money(rate.yearly), figure="rate.yearly_costs"),
        billable=Shown(text=f"{rate.billable:,.0f} h", figure="rate.billable_hours"),
        risk=tuple(
            Shown(
                text=f"{ENOUGH[name]} × {value:g}",
                figure=f"risk.{name}" if f"risk.{name}" in held.ledger else "",
            )
            for name, value in (("P50", risk.p50), ("P80", risk.p80), ("P90", risk.p90))
        ),
        risk_ground=risk.basis,
    )


def _lines(held: Estimate, writing: Writing) -> Iterator[LineShown]:
    for line in held.price.lines:
        figure = "price.contingency" if line.label.startswith("contingency") else BEHIND.get(line.label, "")
        figure = figure if figure in held.ledger else ""
        yield LineShown(
            label=_named(line.label),
            working=line_working(line.label, line.working),
            amount=Shown(text=writing.money(line.amount), figure=figure),
        )


def _named(label: str) -> str:
    """What a line is called: the reserve by how often it is enough."""
    what, _, level = label.partition("contingency, ")
    return f"in case hours run over: enough in {ENOUGH[level]}" if not what and level in ENOUGH else label
