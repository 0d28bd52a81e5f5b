"""From a unit to its price: feet, sheets, hardware and finish, hours, waits, and what is asked."""

from dataclasses import dataclass
from datetime import date

from casewright.labour.drivers import Driver
from casewright.labour.standards import LabourLine, WoodFactor, direct_minutes, labour_lines, with_allowance
from casewright.labour.waits import bench_hours, promise_date, promise_weeks, usual_job_waits, waiting_weeks
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.units import SquareFeet, Weeks
from casewright.pieces.construct import Construction, construct
from casewright.pieces.drivers import count_drivers
from casewright.pieces.lumber import OrderLine, lumber_order
from casewright.pieces.shop import Shop
from casewright.pieces.spec import UnitSpec
from casewright.pieces.takeoff import TakeOff, take_off
from casewright.pricing.charges import PriceInputs
from casewright.pricing.materials import MaterialLine, material_line
from casewright.pricing.price import Price, price
from casewright.pricing.prices import NoPrice, PriceKind, PriceRow
from casewright.pricing.rate import ShopRate, shop_rate
from casewright.pricing.risk import RiskFactors, risk_factors
from casewright.wood.finish import coated_area, finish, quarts_needed, whole_quarts


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishNeed:
    """The finish that all units take.

    Attributes:
        product: its name
        quarts: exactly [quart]
        buy: whole quarts
    """

    product: str
    quarts: float
    buy: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Promise:
    """When the job can be ready.

    Attributes:
        queue_weeks: work that comes before it [week]
        wait_weeks: waits that no work overlaps [week]
        bench_hours: hours a week that reach the bench [hour]
        likely_weeks: at the median of past jobs [week]
        promised_weeks: at the P80 of past jobs [week]
        likely: the likely date
        promised: the date to promise
    """

    queue_weeks: float
    wait_weeks: float
    bench_hours: float
    likely_weeks: float
    promised_weeks: float
    likely: date
    promised: date


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
        missing = tuple(
            Finding(
                rule="price missing",
                verdict=Verdict.STOP,
                message=message,
                remedy="Put the price into the shop file; until then the price leaves it out.",
                source="the price book",
            )
            for message in self.unpriced
        )
        return (*self.unit.findings, *missing)


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
    materials, unpriced = _materials(unit, takeoff, order, drivers, coats, shop)
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
        price=_price(materials, hours, rate, risk, shop, ledger),
        promise=_promise(hours, risk, shop, start, ledger),
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


def _materials(
    unit: Construction,
    takeoff: TakeOff,
    order: tuple[OrderLine, ...],
    drivers: dict[Driver, float],
    coats: FinishNeed,
    shop: Shop,
) -> tuple[tuple[MaterialLine, ...], tuple[str, ...]]:
    """Direct materials priced line by line, and a sentence for each that has no price."""
    count = takeoff.count
    wanted: list[tuple[PriceKind, str, str, float]] = [
        (PriceKind.LUMBER, line.wood, line.bought.name, float(line.feet)) for line in order
    ]
    wanted += [(PriceKind.SHEET, each.sheet.kind, each.sheet.nominal, each.count) for each in takeoff.sheets]
    wanted += [(PriceKind.HARDWARE, item.item, "", item.quantity * count) for item in unit.hardware]
    wanted += [
        (PriceKind.FINISH, coats.product, "", coats.buy),
        (PriceKind.CONSUMABLE, "glue", "", count),
        (PriceKind.CONSUMABLE, "abrasives", "", drivers[Driver.SHOW_SQFT]),
    ]
    lines, missing = [], []
    for kind, item, size, quantity in wanted:
        if quantity <= 0:
            continue
        try:
            lines.append(material_line(shop.prices.find(kind, item, size), quantity))
        except NoPrice as error:
            missing.append(str(error))
    return tuple(lines), tuple(missing)


def _price(
    materials: tuple[MaterialLine, ...],
    hours: float,
    rate: ShopRate,
    risk: RiskFactors,
    shop: Shop,
    ledger: Ledger,
) -> Price:
    vehicle: PriceRow | None = None
    if shop.spec.miles:
        vehicle = shop.prices.find(PriceKind.TRAVEL, "vehicle")
    return price(
        PriceInputs(
            materials=materials,
            hours=hours,
            rate=rate.rate,
            cost_rate=rate.cost,
            markup=shop.terms.markup,
            factors=risk,
            level=shop.spec.risk,
            outwork=shop.outwork,
            outwork_markup=shop.terms.outwork_markup,
            distance=shop.spec.miles,
            per_distance=vehicle.price if vehicle else 0,
            extras=shop.extras,
            step=shop.terms.step,
            minimum=shop.terms.minimum,
            tax_rate=shop.terms.tax_rate,
            stages=shop.stages,
        ),
        ledger,
    )


def _promise(hours: float, risk: RiskFactors, shop: Shop, start: date, ledger: Ledger) -> Promise:
    under = ledger.under("promise")
    weekly = under.take(
        "bench_hours", bench_hours, paid_week=shop.year.hours_per_week, share=shop.year.billable_share
    )
    waits = under.given(
        "waits",
        waiting_weeks(usual_job_waits()),
        "lumber, its rest and the finish's cure, which no work overlaps",
        Weeks,
    )
    queue = under.given("queue", shop.spec.queue_weeks, "the shop file, as queue_weeks", Weeks)

    def weeks(name: str, factor: float) -> float:
        return under.take(
            name,
            promise_weeks,
            hours=hours,
            factor=factor,
            bench_hours_per_week=weekly,
            waits_weeks=waits,
            queue_weeks=queue,
        )

    likely, promised = weeks("likely_weeks", risk.p50), weeks("promised_weeks", risk.p80)
    return Promise(
        queue_weeks=shop.spec.queue_weeks,
        wait_weeks=waits,
        bench_hours=weekly,
        likely_weeks=likely,
        promised_weeks=promised,
        likely=promise_date(start, likely),
        promised=promise_date(start, promised),
    )
