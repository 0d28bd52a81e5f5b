"""The price of a piece: what it takes, what is asked for it, and the least to accept, kept apart."""

from dataclasses import dataclass

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.money import as_decimal
from casewright.measure.units import Cents
from casewright.pricing.charges import Charges, PriceInputs, charges
from casewright.pricing.materials import MaterialLine
from casewright.pricing.risk import factor_at
from casewright.pricing.rules import asked_price, out_of_pocket, tax_amount
from casewright.pricing.stages import StageAmount, stage_amounts


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceLine:
    """One line of the price with its working.

    Attributes:
        label: what it is for
        amount: what it comes to [cent]
        working: the sum behind it, in whole currency units
    """

    label: str
    amount: Cents
    working: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """A price with everything that it is made of.

    Attributes:
        lines: what adds up to the price before rounding
        charges: what each part comes to, before and after mark-up
        base: all lines but the contingency [cent]
        before_rounding: all lines [cent]
        asked: what is asked, before tax [cent]
        tax: on the taxable part [cent]
        total: what is asked, with tax [cent]
        stages: what falls due when
        cost: what it takes if it goes as usual: no mark-up, no profit, hours at the median [cent]
        lowest: the least that can be accepted: no mark-up, no profit, hours at the safe level [cent]
    """

    lines: tuple[PriceLine, ...]
    charges: Charges
    base: Cents
    before_rounding: Cents
    asked: Cents
    tax: Cents
    total: Cents
    stages: tuple[StageAmount, ...]
    cost: Cents
    lowest: Cents


def price(given: PriceInputs, ledger: Ledger = UNKEPT) -> Price:
    """The price of a piece, with its lines, its tax, its stages, and the three numbers kept apart.

    Args:
        given: everything that the price is made from
        ledger: where the working is kept

    Returns:
        The price; its lines add up to the sum before rounding, its stages to the total.

    Raises:
        ValueError: consumables are charged twice, or something is below zero.

    Source: common practice: materials with mark-up, hours with their risk, outwork with mark-up, delivery and
        extras; then the rounding, then the tax.
    """
    held = charges(given, ledger)
    lines = price_lines(given, held)
    before = ledger.given(
        "price.before_rounding",
        sum(line.amount for line in lines),
        "every line of the price added up; each line shows its own sum",
        Cents,
    )
    asked = ledger.take(
        "price.asked", asked_price, before_rounding=before, step=given.step, minimum=given.minimum
    )
    tax = ledger.take(
        "price.tax", tax_amount, price=asked, tax_rate=given.tax_rate, taxable_share=given.taxable_share
    )
    total = ledger.take("price.total", with_tax, price=asked, tax=tax)
    stages = stage_amounts(total, given.stages)
    for number, stage in enumerate(stages, start=1):
        ledger.given(
            f"price.stage_{number}", stage.amount, f"its share of price.total, due on {stage.trigger}", Cents
        )
    spent = {
        "direct": held.direct,
        "hours": given.hours,
        "cost_rate": given.cost_rate,
        "outwork": held.outwork,
        "delivery": held.delivery,
        "extras": held.extras,
    }
    median, safe = given.factors.p50, factor_at(given.factors, given.safe_level)
    return Price(
        lines=lines,
        charges=held,
        base=before - held.contingency,
        before_rounding=before,
        asked=asked,
        tax=tax,
        total=total,
        stages=stages,
        cost=ledger.take("price.cost", out_of_pocket, **spent, factor=median),
        lowest=ledger.take("price.lowest", out_of_pocket, **spent, factor=safe),
    )


def with_tax(price: Cents, tax: Cents) -> Cents:
    """What the customer pays in all.

    Rule: price + tax

    Args:
        price: what is asked [cent]
        tax: on the taxable part [cent]

    Returns:
        The total [cent]

    Source: arithmetic.
    """
    return price + tax


def price_lines(given: PriceInputs, held: Charges) -> tuple[PriceLine, ...]:
    """What adds up to the price before rounding, line by line, each with its working.

    Args:
        given: everything that the price is made from
        held: the amounts

    Returns:
        Materials, mark-up, labour, contingency, outwork, delivery and extras; lines of nothing are left out.

    Source: common practice.
    """
    hour = f"{given.hours:.10g} h × {as_decimal(given.rate)}"
    lines = [
        *(PriceLine(label=line.label, amount=line.amount, working=bought(line)) for line in held.materials),
        PriceLine(
            label="mark-up on materials",
            amount=held.charged_materials - held.direct,
            working=f"{as_decimal(held.direct)} × {given.markup:.10g}",
        ),
        PriceLine(label="labour", amount=held.labour, working=hour),
        PriceLine(
            label=f"contingency, {given.level}",
            amount=held.contingency,
            working=f"{hour} × ({held.factor:.10g} - 1)",
        ),
        *(
            PriceLine(label=line.label, amount=line.amount, working="outwork as paid")
            for line in given.outwork
        ),
        PriceLine(
            label="mark-up on outwork",
            amount=held.charged_outwork - held.outwork,
            working=f"{as_decimal(held.outwork)} × {given.outwork_markup:.10g}",
        ),
        PriceLine(
            label="delivery",
            amount=held.delivery,
            working=f"{given.distance:.10g} × {as_decimal(given.per_distance)}",
        ),
        *(PriceLine(label=line.label, amount=line.amount, working="fixed extra") for line in given.extras),
    ]
    return tuple(line for line in lines if line.amount)


def bought(line: MaterialLine) -> str:
    """The working of a material line.

    Args:
        line: the line

    Returns:
        Quantity, unit and price, such as “39 bd ft × 9.50”.

    Source: common practice.
    """
    return f"{line.quantity:.10g} {line.unit} × {as_decimal(line.unit_price)}"
