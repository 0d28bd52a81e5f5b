"""What an hour at the bench costs, and what has to be asked for it."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.money import exact, round_half_up
from casewright.measure.units import Cents, Hours, Number, Weeks
from casewright.pricing.bundled import bundled, typed_amount


@dataclass(frozen=True, slots=True, kw_only=True)
class YearlyCost:
    """One cost of keeping the shop open for a year.

    Attributes:
        name: what it is for
        amount: what it comes to in a year [cent]
        group: pay or overhead
        source: where the figure comes from
        basis: example, published, common practice, or learned from the shop's own books
    """

    name: str
    amount: Cents
    group: str = "overhead"
    source: str = "the shop's own books"
    basis: str = "learned"

    def __post_init__(self) -> None:
        if self.amount < 0:
            raise ValueError(f"{self.name} costs less than nothing; a cost is zero or more.")


@dataclass(frozen=True, slots=True, kw_only=True)
class ShopYear:
    """What a year costs and how many of its hours can be billed.

    Attributes:
        costs: every yearly cost, the maker's own pay among them
        weeks: weeks worked in the year [week]
        hours_per_week: paid hours in a week, of everyone together [hour]
        billable_share: the part of the paid hours that goes into jobs; 0.5 to 0.7 is usual [dimensionless]
        profit: the part of the price that is profit [dimensionless]
    """

    costs: tuple[YearlyCost, ...]
    weeks: Weeks
    hours_per_week: Hours
    billable_share: Number
    profit: Number

    def __post_init__(self) -> None:
        if not 0 < self.billable_share <= 1:
            raise ValueError("The billable share is above 0 and at most 1, such as 0.625.")
        if self.weeks <= 0 or self.hours_per_week <= 0:
            raise ValueError("A year without paid hours has no rate; give its weeks and their hours.")
        refuse_profit(self.profit)


@dataclass(frozen=True, slots=True, kw_only=True)
class ShopRate:
    """The rate of a shop, with the figures that made it.

    Attributes:
        yearly: all costs of a year [cent]
        billable: hours that can be billed in a year [hour]
        cost: what an hour at the bench costs [cent]
        rate: what is asked for it, profit included [cent]
    """

    yearly: Cents
    billable: Hours
    cost: Cents
    rate: Cents


def refuse_profit(profit: Number) -> None:
    """Refuses a profit that no price can hold.

    Args:
        profit: the part of the price [dimensionless]

    Raises:
        ValueError: it is below zero, or the whole price or more.

    Source: common practice.
    """
    if not 0 <= profit < 1:
        raise ValueError(f"A profit of {profit:g} of the price cannot be; give a part such as 0.10.")


def yearly_total(costs: Iterable[YearlyCost]) -> Cents:
    """What the shop costs in a year.

    Args:
        costs: every yearly cost

    Returns:
        Their sum [cent]

    Source: common practice.
    """
    return sum(cost.amount for cost in costs)


def billable_hours(weeks: Weeks, hours_per_week: Hours, billable_share: Number) -> Hours:
    """How many hours of a year can be billed; the others are worked and paid all the same.

    Rule: weeks * hours_per_week * billable_share

    Args:
        weeks: weeks worked in the year [week]
        hours_per_week: paid hours in a week [hour]
        billable_share: the part of the paid hours that goes into jobs [dimensionless]

    Returns:
        Billable hours in a year [hour]

    Source: common practice.
    """
    return weeks * hours_per_week * billable_share


def hourly_cost(yearly: Cents, billable: Hours) -> Cents:
    """What an hour at the bench costs, with all that stands behind it.

    Rule: yearly / billable

    Args:
        yearly: all costs of a year [cent]
        billable: hours that can be billed in it [hour]

    Returns:
        The cost of one hour, to the cent [cent]

    Raises:
        ValueError: no hour can be billed.

    Source: common practice: direct labour and overhead over billable hours.
    """
    return hourly_rate(yearly, billable, profit=0)


def hourly_rate(yearly: Cents, billable: Hours, profit: Number) -> Cents:
    """What is asked for an hour when a part of the price is to be profit.

    The profit is a part of the price, not something added to the cost: a tenth of the price is a ninth of
    the cost.

    Rule: yearly / billable / (1 - profit)

    Args:
        yearly: all costs of a year [cent]
        billable: hours that can be billed in it [hour]
        profit: the part of the price that is profit [dimensionless]

    Returns:
        The rate, rounded once, to the cent [cent]

    Raises:
        ValueError: no hour can be billed, or the profit is the whole price.

    Source: common practice: price from margin, cost / (1 - margin).
    """
    refuse_profit(profit)
    if billable <= 0:
        raise ValueError("No hour of the year can be billed, so there is no rate; give the billable hours.")
    return round_half_up(yearly / exact(billable) / (1 - exact(profit)))


def person_cost(pay: Cents, person_hours: Hours, overhead: Cents, shop_hours: Hours) -> Cents:
    """What an hour of one person costs: their own pay, and the overhead spread over everyone's hours.

    Rule: pay / person_hours + overhead / shop_hours

    Args:
        pay: a year's pay and burden of the person [cent]
        person_hours: hours of the person that can be billed in a year [hour]
        overhead: a year's costs other than pay [cent]
        shop_hours: hours of everyone that can be billed in a year [hour]

    Returns:
        The cost of one hour, to the cent [cent]

    Raises:
        ValueError: no hours can be billed.

    Source: common practice.
    """
    if min(person_hours, shop_hours) <= 0:
        raise ValueError("Without billable hours there is no cost of one; give the hours of the year.")
    return round_half_up(pay / exact(person_hours) + overhead / exact(shop_hours))


def billable_share_so_far(billable: Hours, paid: Hours) -> Number:
    """The part of the paid hours that went into jobs, to be laid beside the part that was assumed.

    Rule: billable / paid

    Args:
        billable: hours logged to jobs [hour]
        paid: all hours paid in the same time [hour]

    Returns:
        The share [dimensionless]

    Raises:
        ValueError: nothing was paid yet.

    Source: common practice.
    """
    if paid <= 0:
        raise ValueError("No hours were paid in this time, so there is no share yet.")
    return billable / paid


def shop_rate(year: ShopYear, ledger: Ledger = UNKEPT) -> ShopRate:
    """The rate of a shop from its year.

    Args:
        year: costs and hours
        ledger: where the working is kept

    Returns:
        Cost and rate of an hour, with the sums behind them.

    Source: common practice.
    """
    yearly = ledger.take("yearly_costs", yearly_total, costs=year.costs)
    billable = ledger.take(
        "billable_hours",
        billable_hours,
        weeks=year.weeks,
        hours_per_week=year.hours_per_week,
        billable_share=year.billable_share,
    )
    cost = ledger.take("hourly_cost", hourly_cost, yearly=yearly, billable=billable)
    rate = ledger.take("hourly_rate", hourly_rate, yearly=yearly, billable=billable, profit=year.profit)
    return ShopRate(yearly=yearly, billable=billable, cost=cost, rate=rate)


@cache
def example_year() -> ShopYear:
    """The year of a made-up shop of one maker, to be replaced by the shop's own.

    Source: an example; the billable share is common practice.
    """
    held = bundled("costs.json")
    year = held["year"]
    return ShopYear(
        costs=tuple(yearly_cost(row) for row in held["costs"]),
        weeks=year["weeks"],
        hours_per_week=year["hours_per_week"],
        billable_share=year["billable_share"],
        profit=year["profit"],
    )


def yearly_cost(row: dict[str, str]) -> YearlyCost:
    """A yearly cost read from a row of a data file.

    Args:
        row: its name, group, source and basis, and its amount in whole currency units as text

    Returns:
        The cost.

    Source: common practice.
    """
    amount = typed_amount(row["amount"], row["name"])
    return YearlyCost(**{**row, "amount": amount})  # type: ignore[arg-type]
