"""From a unit to its price: feet, sheets, hardware and finish, hours, waits, and what is asked."""

from dataclasses import dataclass
from datetime import date

from casewright.labour.drivers import Driver
from casewright.labour.standards import LabourLine, WoodFactor, direct_minutes, labour_lines, with_allowance
from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.measure.units import SquareFeet
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction, construct
from casewright.pieces.costs.priced import (
    FinishNeed,
    Promise,
    goods_wanted,
    job_price,
    job_promise,
    material_lines,
    missing_prices,
    of_all_units,
    stand_in_prices,
)
from casewright.pieces.takeoff.drivers import count_drivers
from casewright.pieces.takeoff.lumber import OrderLine, lumber_order
from casewright.pieces.takeoff.rough import TakeOff, take_off
from casewright.pricing.materials import MaterialLine
from casewright.pricing.price import Price
from casewright.pricing.rate import ShopRate, shop_rate
from casewright.pricing.risk import RiskFactors, risk_factors
from casewright.wood.finish import coated_area, finish, quarts_needed, whole_quarts


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """What all units of a design take and cost.

    Attributes:
        unit: one unit, worked out
        takeoff: rough sizes and feet
        order: lumber to order
        drivers: what the time standards counted
        labour: hours, operation by operation
        wood_factor: how the unit's show wood works
        minutes: direct minutes [min]
        hours: with the allowance [hour]
        finish: the finish to buy
        materials: direct materials, line by line
        rate: the shop's rate and how it is made
        risk: how past jobs ran against their estimates
        price: what it takes, what is asked, the least to accept
        promise: when it can be ready
        unpriced: what the price book has no price for
        ledger: the working of every figure
    """

    unit: Construction
    takeoff: TakeOff
    order: tuple[OrderLine, ...]
    drivers: dict[Driver, float]
    labour: tuple[LabourLine, ...]
    wood_factor: WoodFactor
    minutes: float
    hours: float
    finish: FinishNeed
    materials: tuple[MaterialLine, ...]
    rate: ShopRate
    risk: RiskFactors
    price: Price
    promise: Promise
    unpriced: tuple[str, ...]
    ledger: Ledger

    @property
    def findings(self) -> tuple[Finding, ...]:
        """The checks of the construction, and what has no price yet."""
        return (*self.unit.findings, *stand_in_prices(self.materials), *missing_prices(self.unpriced))


def estimate(chosen: UnitSpec, shop: Shop, start: date) -> Estimate:
    """What a design takes, costs, and when it can be ready.

    Args:
        chosen: what the maker chose
        shop: the shop's figures
        start: the day from which the promise counts

    Returns:
        The estimate, every figure with its working.

    Raises:
        CannotGraduate, CannotBuild, CannotBeLaidOut, TooThick, NoWasteFigure: with a sentence that says what
            would work

    Source: common practice of estimating; each line names its own.
    """
    unit = construct(chosen, shop)
    ledger = unit.ledger
    takeoff = take_off(unit, shop)
    order = lumber_order(unit, takeoff, shop)
    drivers = count_drivers(unit, takeoff)
    factor = shop.factor_of(unit.spec.woods.case.wood)
    lines = labour_lines(
        drivers, wood_factor=factor.factor, standards=shop.standards, ledger=ledger.under("hours")
    )
    minutes = ledger.given(
        "hours.minutes", direct_minutes(lines), "minutes of every operation added up; figures hours.minutes.…"
    )
    hours = ledger.take("hours.total", with_allowance, minutes=minutes, allowance=shop.standards.allowance)
    coats = _finish(unit, drivers, ledger)
    materials, unpriced = material_lines(
        goods_wanted(
            order=order,
            sheets=takeoff.sheets,
            hardware=of_all_units(unit.hardware, takeoff.count),
            finishes=(coats,),
            units=takeoff.count,
            show=drivers[Driver.SHOW_SQFT],
        ),
        shop,
    )
    risk = risk_factors(shop.history, ledger)
    rate = shop_rate(shop.year, ledger.under("rate"))
    return Estimate(
        unit=unit,
        takeoff=takeoff,
        order=order,
        drivers=drivers,
        labour=lines,
        wood_factor=factor,
        minutes=minutes,
        hours=hours,
        finish=coats,
        materials=materials,
        rate=rate,
        risk=risk,
        price=job_price(materials, hours, rate, risk, shop, ledger),
        promise=job_promise(hours, risk, shop, start, ledger),
        unpriced=unpriced,
        ledger=ledger,
    )


def all_coats(show: SquareFeet, inside: SquareFeet) -> SquareFeet:
    """The area of every coat, on show surfaces and inside.

    Rule: show + inside

    Args:
        show: show surfaces times their coats [sq ft]
        inside: insides of drawers times theirs [sq ft]

    Returns:
        The area to be covered [sq ft]

    Source: arithmetic.
    """
    return show + inside


def _finish(unit: Construction, drivers: dict[Driver, float], ledger: Ledger) -> FinishNeed:
    product = finish(unit.spec.finish.product)
    under = ledger.under("finish")
    show = under.take(
        "show_coats",
        coated_area,
        area=drivers[Driver.SHOW_SQFT],
        coats=unit.spec.finish.show_coats,
    )
    inside = under.take(
        "inside_coats",
        coated_area,
        area=drivers[Driver.INSIDE_SQFT],
        coats=unit.spec.finish.inside_coats,
    )
    coats = under.take("coats", all_coats, show=show, inside=inside)
    quarts = under.take("quarts", quarts_needed, area=coats, coverage=product.coverage, loss=product.loss)
    return FinishNeed(product=product.name, quarts=quarts, buy=whole_quarts(quarts=quarts))
