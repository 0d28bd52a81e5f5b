"""What goods and hours come to: materials line by line, the price, and the date that can be promised."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from casewright.labour.waits import bench_hours, promise_date, promise_weeks, usual_job_waits, waiting_weeks
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.units import Count, Hours, SquareFeet, Weeks
from casewright.pieces.asked.shop import Shop
from casewright.pieces.layout.fitted import HardwareItem
from casewright.pieces.takeoff.lumber import OrderLine
from casewright.pricing.charges import PriceInputs
from casewright.pricing.materials import MaterialLine, material_line
from casewright.pricing.price import Price, price
from casewright.pricing.prices import NoPrice, PriceKind, PriceRow
from casewright.pricing.rate import ShopRate
from casewright.pricing.risk import RiskFactors
from casewright.wood.movement import Cut
from casewright.wood.sheets import SheetsByArea


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishNeed:
    """One finish, for all units that take it.

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


@dataclass(frozen=True, slots=True)
class Wanted:
    """One thing to buy, by the names that the price book has for it.

    Attributes:
        kind: the sort of thing
        item: its name
        size: thickness class or thickness; empty where there is only one
        quantity: how much of it, in the unit of its price
    """

    kind: PriceKind
    item: str
    size: str
    quantity: float


def of_all_units(items: Iterable[HardwareItem], count: Count) -> tuple[HardwareItem, ...]:
    """Hardware for all units of a design.

    Args:
        items: for one unit
        count: how many units are made [dimensionless]

    Returns:
        The same items, as many times as there are units.

    Source: arithmetic.
    """
    return tuple(replace(item, quantity=item.quantity * count, spare=item.spare * count) for item in items)


def goods_wanted(
    *,
    order: Iterable[OrderLine],
    sheets: Iterable[SheetsByArea],
    hardware: Iterable[HardwareItem],
    finishes: Iterable[FinishNeed],
    units: Count,
    show: SquareFeet,
) -> tuple[Wanted, ...]:
    """Everything that is bought and charged; spares are ordered but not charged.

    Args:
        order: the lumber order
        sheets: whole sheets
        hardware: for all units
        finishes: for all units
        units: how many pieces are made, for the glue [dimensionless]
        show: show surface of all units, for the abrasives [sq ft]

    Returns:
        The goods of which there are any.

    Source: common practice.
    """
    goods = (
        *(
            Wanted(PriceKind.LUMBER, line.wood, bought_as(line.bought.name, line.cut), float(line.feet))
            for line in order
        ),
        *(Wanted(PriceKind.SHEET, each.sheet.kind, each.sheet.nominal, each.count) for each in sheets),
        *(Wanted(PriceKind.HARDWARE, item.item, "", item.quantity) for item in hardware),
        *(Wanted(PriceKind.FINISH, need.product, "", need.buy) for need in finishes),
        Wanted(PriceKind.CONSUMABLE, "glue", "", units),
        Wanted(PriceKind.CONSUMABLE, "abrasives", "", show),
    )
    return tuple(each for each in goods if each.quantity > 0)


def material_lines(goods: Iterable[Wanted], shop: Shop) -> tuple[tuple[MaterialLine, ...], tuple[str, ...]]:
    """Direct materials priced line by line, and a sentence for each that has no price.

    Args:
        goods: what is bought
        shop: its price book

    Returns:
        The lines; the sentences, each once.

    Source: common practice.
    """
    lines, missing = [], []
    for each in goods:
        try:
            row = (
                shop.prices.lumber(each.item, each.size)
                if each.kind is PriceKind.LUMBER
                else shop.prices.find(each.kind, each.item, each.size)
            )
            lines.append(material_line(row, each.quantity, wanted=each.size))
        except NoPrice as error:
            missing.append(str(error))
    return tuple(lines), tuple(missing)


def bought_as(thickness_class: str, cut: Cut) -> str:
    """The size under which the price book keeps lumber.

    Args:
        thickness_class: such as `4/4`
        cut: how the boards are to be sawn

    Returns:
        Such as `4/4`, or `4/4 quartersawn`: flat-sawn boards are what a yard sells unasked.

    Source: common practice.
    """
    return thickness_class if cut is Cut.FLAT else f"{thickness_class} {cut.sawn}"


def stand_in_prices(materials: Iterable[MaterialLine]) -> tuple[Finding, ...]:
    """A caution for everything that is priced by another size than is bought.

    Args:
        materials: the priced lines

    Returns:
        The findings.

    Source: common practice: boards picked by their cut cost more than boards as they come.
    """
    return tuple(
        Finding(
            rule="price of another cut",
            verdict=Verdict.CAUTION,
            message=f"There is no price for {line.label}; that of flat-sawn boards stands for it.",
            remedy=f"Ask the yard, and add a lumber price with the size “{line.stands_in}”: "
            "boards picked by their cut usually cost more.",
            source="the price book",
        )
        for line in materials
        if line.stands_in
    )


def missing_prices(unpriced: Iterable[str]) -> tuple[Finding, ...]:
    """A stop for everything that the price book has no price for.

    Args:
        unpriced: a sentence for each

    Returns:
        The findings.

    Source: common practice.
    """
    return tuple(
        Finding(
            rule="price missing",
            verdict=Verdict.STOP,
            message=message,
            remedy="Put the price into the shop file; until then the price leaves it out.",
            source="the price book",
        )
        for message in unpriced
    )


def job_price(
    materials: tuple[MaterialLine, ...],
    hours: Hours,
    rate: ShopRate,
    risk: RiskFactors,
    shop: Shop,
    ledger: Ledger,
) -> Price:
    """The price of a job, with one delivery, one set of outwork and extras, one rounding, one least charge.

    Args:
        materials: direct materials of the whole job
        hours: of the whole job, allowance included [hour]
        rate: the shop's rate
        risk: how past jobs ran against their estimates
        shop: its terms, outwork, extras and way to the customer
        ledger: keeps the working

    Returns:
        The price.

    Raises:
        NoPrice: the job is driven to and the price book has no price for the vehicle

    Source: common practice.
    """
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


def job_promise(hours: Hours, risk: RiskFactors, shop: Shop, start: date, ledger: Ledger) -> Promise:
    """When a job can be ready.

    Args:
        hours: of the whole job, allowance included [hour]
        risk: how past jobs ran against their estimates
        shop: its working week and its queue
        start: the day from which the promise counts
        ledger: keeps the working

    Returns:
        The likely date and the one to promise.

    Source: common practice.
    """
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
