"""The terms on which a shop prices: mark-ups, the step of its prices, the least charge, tax."""

from dataclasses import dataclass
from functools import cache

from casewright.measure.money import from_decimal
from casewright.measure.units import Cents, Count, Number
from casewright.pricing.bundled import bundled, typed_number


@dataclass(frozen=True, slots=True, kw_only=True)
class Terms:
    """Defaults of the price that a shop may overwrite.

    Attributes:
        markup: on direct materials [dimensionless]
        outwork_markup: on what others are paid [dimensionless]
        step: the asked price is a whole multiple of it [cent]
        minimum: the least that a job is taken on for [cent]
        minimum_change: the least that a change is taken on for [cent]
        tax_rate: on the taxable part of the price [dimensionless]
        valid_days: how many days a quote stands [dimensionless]
    """

    markup: Number
    outwork_markup: Number
    step: Cents
    minimum: Cents
    minimum_change: Cents
    tax_rate: Number
    valid_days: Count


@cache
def house_terms() -> Terms:
    """The terms that a shop starts with.

    Source: common practice; least charges and tax are examples, to be replaced by the shop's own.
    """
    held = {row["name"]: typed_number(row["value"], row["name"]) for row in bundled("terms.json")["terms"]}
    return Terms(
        markup=float(held["markup"]),
        outwork_markup=float(held["outwork_markup"]),
        step=from_decimal(held["step"]),
        minimum=from_decimal(held["minimum"]),
        minimum_change=from_decimal(held["minimum_change"]),
        tax_rate=float(held["tax_rate"]),
        valid_days=int(held["valid_days"]),
    )
