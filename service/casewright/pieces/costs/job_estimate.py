"""One or several units priced together as one job: what they take is added up, rounded once, priced once."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from casewright.labour.drivers import Driver
from casewright.labour.standards import LabourLine, direct_minutes, with_allowance
from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.measure.money import in_proportion
from casewright.measure.units import Cents, Minutes
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.costs.estimate import Estimate, estimate
from casewright.pieces.costs.job_goods import job_finishes, job_hardware, job_order, job_sheets
from casewright.pieces.costs.priced import (
    FinishNeed,
    Promise,
    goods_wanted,
    job_price,
    job_promise,
    material_lines,
    missing_prices,
    stand_in_prices,
)
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.fitted import HardwareItem
from casewright.pieces.takeoff.lumber import OrderLine
from casewright.pricing.materials import MaterialLine
from casewright.pricing.price import Price
from casewright.pricing.rate import ShopRate, shop_rate
from casewright.pricing.risk import RiskFactors, risk_factors
from casewright.pricing.rules import labour_amount
from casewright.wood.sheets import SheetsByArea

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True, kw_only=True)
class JobEstimate:
    """What a job takes and costs, all its units together.

    Attributes:
        units: each unit estimated alone, as though it were the whole job
        order: lumber of all units; feet of one wood, cut and class are added before they are rounded up
        sheets: sheets of all units, by area, rounded up once a kind
        hardware: what is bought by the piece, for all units
        finishes: finish of all units, rounded up once a product
        labour: hours, operation by operation; what is done once a job is in there once
        minutes: direct minutes [min]
        hours: with the allowance [hour]
        materials: direct materials, line by line
        rate: the shop's rate and how it is made
        risk: how past jobs ran against their estimates
        price: what it takes, what is asked, the least to accept
        promise: when the whole job can be ready
        unpriced: what the price book has no price for
        unit_prices_cents: the asked price divided between the units; they add up to it [cent]
        ledger: the working of the job's figures; each unit keeps its own
    """

    units: tuple[Estimate, ...]
    order: tuple[OrderLine, ...]
    sheets: tuple[SheetsByArea, ...]
    hardware: tuple[HardwareItem, ...]
    finishes: tuple[FinishNeed, ...]
    labour: tuple[LabourLine, ...]
    minutes: float
    hours: float
    materials: tuple[MaterialLine, ...]
    rate: ShopRate
    risk: RiskFactors
    price: Price
    promise: Promise
    unpriced: tuple[str, ...]
    unit_prices_cents: tuple[int, ...]
    ledger: Ledger

    @property
    def findings(self) -> tuple[Finding, ...]:
        """The checks of every unit, and what has no price yet; among several units each says whose it is."""
        return (
            *(finding for held in self.units for finding in _checked(held, alone=len(self.units) == 1)),
            *stand_in_prices(self.materials),
            *missing_prices(self.unpriced),
        )

    def unit(self, code: str) -> Estimate:
        """The estimate of one unit by its code, such as `A`."""
        return next(held for held in self.units if held.unit.spec.code == code)


def estimate_job(specs: tuple[UnitSpec, ...], shop: Shop, start: date) -> JobEstimate:
    """What a job of one or several units takes, costs, and when it can be ready.

    Args:
        specs: what was chosen, unit by unit
        shop: the shop's figures
        start: the day from which the promise counts

    Returns:
        The estimate; for a job of one unit its price is that of `estimate`, to the cent.

    Raises:
        CannotGraduate, CannotBuild, CannotBeLaidOut, TooThick, NoWasteFigure: with a sentence that says what
            would work

    Source: common practice: one delivery, one rounding and one least charge for a job.
    """
    _refuse_twins(specs)
    units = tuple(estimate(spec, shop, start) for spec in specs)
    ledger = Ledger()
    order, sheets = job_order(units, shop, ledger), job_sheets(units, shop, ledger)
    hardware, finishes = job_hardware(units), job_finishes(units, ledger)
    labour = job_labour(units, shop, ledger)
    minutes = ledger.given(
        "hours.minutes",
        direct_minutes(labour),
        "minutes of every operation added up; figures hours.minutes.…",
        Minutes,
    )
    hours = ledger.take("hours.total", with_allowance, minutes=minutes, allowance=shop.standards.allowance)
    materials, unpriced = material_lines(
        goods_wanted(
            order=order,
            sheets=sheets,
            hardware=hardware,
            finishes=finishes,
            units=sum(held.takeoff.count for held in units),
            show=math.fsum(held.drivers[Driver.SHOW_SQFT] for held in units),
        ),
        shop,
    )
    risk, rate = risk_factors(shop.history, ledger), shop_rate(shop.year, ledger.under("rate"))
    price = job_price(materials, hours, rate, risk, shop, ledger)
    return JobEstimate(
        units=units,
        order=order,
        sheets=sheets,
        hardware=hardware,
        finishes=finishes,
        labour=labour,
        minutes=minutes,
        hours=hours,
        materials=materials,
        rate=rate,
        risk=risk,
        price=price,
        promise=job_promise(hours, risk, shop, start, ledger),
        unpriced=unpriced,
        unit_prices_cents=_divided(price, units, shop, ledger),
        ledger=ledger,
    )


def price_difference(base: JobEstimate, other: JobEstimate) -> Cents:
    """What a job would cost more if it were made the other way.

    Args:
        base: the job as it is offered
        other: the job with something changed

    Returns:
        Asked price of the other less that of the base, before tax; below zero where it costs less [cent]

    Source: common practice: an option is shown as its difference.
    """
    return int(other.price.asked - base.price.asked)


def _refuse_twins(specs: tuple[UnitSpec, ...]) -> None:
    if not specs:
        raise CannotBuild("This job has no unit yet; draw one first.")
    codes = [spec.code for spec in specs]
    twin = next((code for code in codes if codes.count(code) > 1), None)
    if twin:
        marks = (*LETTERS, *(f"U{number}" for number in range(len(codes) + 1)))
        free = next(mark for mark in marks if mark not in codes)
        raise CannotBuild(f"code: two units of this job go by the mark {twin}; call one of them {free}")


def job_labour(units: tuple[Estimate, ...], shop: Shop, ledger: Ledger) -> tuple[LabourLine, ...]:
    """The hours of all units, operation by operation.

    An operation that counts jobs is done once. Coats of one finish go on all units together, so that a coat
    is set up and cleaned up after once: as often as the unit with most coats needs it. All else is added up;
    an operation keeps one line for each wood factor.

    Args:
        units: the units, estimated alone
        shop: its operations
        ledger: keeps the working

    Returns:
        The lines, in the order of the work.

    Source: common practice.
    """
    found: dict[tuple[str, float], list[tuple[str, LabourLine]]] = {}
    for held in units:
        for line in held.labour:
            found.setdefault((line.code, float(line.factor)), []).append((held.finish.product, line))
    place = {one.code: number for number, one in enumerate(shop.standards.operations)}
    lines = [_together(found[key]) for key in sorted(found, key=lambda key: place[key[0]])]
    marks = ", ".join(held.unit.spec.code for held in units)
    under = ledger.under("hours.minutes")
    for code in dict.fromkeys(line.code for line in lines):
        minutes = math.fsum(line.minutes for line in lines if line.code == code)
        under.given(code, minutes, f"figures hours.minutes.{code} of the units {marks}, together", Minutes)
    return tuple(lines)


def _together(members: list[tuple[str, LabourLine]]) -> LabourLine:
    """One line for an operation on several units."""
    lines = [line for _, line in members]
    if lines[0].driver is Driver.JOBS:
        lines = [max(lines, key=lambda line: line.quantity)]
    elif lines[0].driver is Driver.COATS:
        products = dict.fromkeys(product for product, _ in members)
        lines = [
            max((line for name, line in members if name == product), key=lambda line: line.quantity)
            for product in products
        ]
    if len(lines) == 1:
        return lines[0]
    return replace(
        lines[0],
        quantity=math.fsum(line.quantity for line in lines),
        minutes=math.fsum(line.minutes for line in lines),
    )


def _divided(price: Price, units: tuple[Estimate, ...], shop: Shop, ledger: Ledger) -> tuple[int, ...]:
    """The asked price, divided between the units by what each takes of its own."""
    weights = tuple(own_base(held, shop) for held in units)
    parts = in_proportion(int(price.asked), weights)
    for held, part, weight in zip(units, parts, weights, strict=True):
        basis = (
            f"figure price.asked in proportion to {weight / 100:,.2f}, the unit's own materials with mark-up "
            "and its own hours at the rate"
        )
        ledger.given(f"price.unit_{held.unit.spec.code}", part, basis, Cents)
    return parts


def own_base(held: Estimate, shop: Shop) -> Cents:
    """What a unit takes of its own: materials with mark-up, and the hours that are not the whole job's.

    Delivery, outwork, extras, contingency and what is done once a job are left out: these are shared by it.

    Args:
        held: the unit, estimated alone
        shop: its allowance

    Returns:
        The base by which the asked price is divided [cent]

    Source: common practice.
    """
    own = [line for line in held.labour if line.driver is not Driver.JOBS]
    hours = with_allowance(direct_minutes(own), shop.standards.allowance)
    return int(held.price.charges.charged_materials + labour_amount(hours, held.rate.rate))


def _checked(held: Estimate, *, alone: bool) -> Iterator[Finding]:
    """The checks of one unit; among several, each about that unit or a part of it."""
    code = held.unit.spec.code
    for finding in held.unit.findings:
        if alone or finding.about.startswith(f"{code}-"):
            yield finding
        else:
            yield replace(finding, about=f"{code}-{finding.about}" if finding.about else code)
