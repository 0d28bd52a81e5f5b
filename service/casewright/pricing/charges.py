"""What a price is made from, and what each part of it comes to before and after mark-up."""

from dataclasses import dataclass, field

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.units import Cents, Hours, Number
from casewright.pricing.materials import MaterialLine, direct_amount, with_consumables
from casewright.pricing.risk import RiskFactors, RiskLevel, factor_at
from casewright.pricing.rules import contingency_amount, delivery_amount, labour_amount, marked_up
from casewright.pricing.stages import StagePlan, stage_plan


@dataclass(frozen=True, slots=True, kw_only=True)
class PlainLine:
    """An amount that somebody named: outwork, a crane, a parking permit.

    Attributes:
        label: what it is for
        amount: what it comes to [cent]
    """

    label: str
    amount: Cents

    def __post_init__(self) -> None:
        if not self.label.strip():
            raise ValueError("Name the line; the customer will ask what it is for.")
        if self.amount < 0:
            raise ValueError(f"“{self.label}” is below zero; give a discount as a discount.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceInputs:
    """Everything that a price is made from.

    Attributes:
        materials: direct materials, line by line
        hours: estimated hours, allowance included [hour]
        rate: what is asked for an hour, profit included [cent]
        cost_rate: what an hour costs the shop [cent]
        markup: on direct materials [dimensionless]
        factors: how such jobs run over
        level: how sure the price is to be
        safe_level: how sure the least acceptable price is to be
        consumables: as a share of direct materials; 0 where they are itemised [dimensionless]
        outwork: what others are paid
        outwork_markup: on outwork [dimensionless]
        distance: driven for the job, in the unit of its rate [in its own unit]
        per_distance: for one mile or kilometre [cent]
        extras: fixed extras
        step: the asked price is a whole multiple of it [cent]
        minimum: the least that a job is taken on for [cent]
        tax_rate: of the place where the tax is owed [dimensionless]
        taxable_share: the part of the price on which it is owed [dimensionless]
        stages: in which stages it is paid
    """

    materials: tuple[MaterialLine, ...]
    hours: Hours
    rate: Cents
    cost_rate: Cents
    markup: Number
    factors: RiskFactors
    level: RiskLevel = RiskLevel.P80
    safe_level: RiskLevel = RiskLevel.P80
    consumables: Number = 0.0
    outwork: tuple[PlainLine, ...] = ()
    outwork_markup: Number = 0.0
    distance: Number = 0.0
    per_distance: Cents = 0
    extras: tuple[PlainLine, ...] = ()
    step: Cents = 1000
    minimum: Cents = 0
    tax_rate: Number = 0.0
    taxable_share: Number = 1.0
    stages: StagePlan = field(default_factory=stage_plan)


@dataclass(frozen=True, slots=True, kw_only=True)
class Charges:
    """What goes into a price, before and after mark-up.

    Attributes:
        materials: direct materials, consumables among them
        direct: as bought [cent]
        charged_materials: with the mark-up [cent]
        labour: the estimated hours at the rate [cent]
        factor: what the hours are multiplied by for the risk [dimensionless]
        contingency: in case they run over [cent]
        outwork: what others are paid [cent]
        charged_outwork: with the mark-up [cent]
        delivery: what driving costs [cent]
        extras: fixed extras [cent]
    """

    materials: tuple[MaterialLine, ...]
    direct: Cents
    charged_materials: Cents
    labour: Cents
    factor: Number
    contingency: Cents
    outwork: Cents
    charged_outwork: Cents
    delivery: Cents
    extras: Cents


def charges(given: PriceInputs, ledger: Ledger = UNKEPT) -> Charges:
    """What goes into a price, each amount rounded once.

    Args:
        given: everything that the price is made from
        ledger: where the working is kept

    Returns:
        The amounts.

    Raises:
        ValueError: consumables are charged twice, or something is below zero.

    Source: common practice.
    """
    materials = with_consumables(given.materials, given.consumables)
    direct = direct_amount(materials)
    outwork = sum(line.amount for line in given.outwork)
    factor = factor_at(given.factors, given.level)
    time = {"hours": given.hours, "rate": given.rate}
    return Charges(
        materials=materials,
        direct=direct,
        charged_materials=ledger.take("price.materials", marked_up, amount=direct, markup=given.markup),
        labour=ledger.take("price.labour", labour_amount, **time),
        factor=factor,
        contingency=ledger.take("price.contingency", contingency_amount, **time, factor=factor),
        outwork=outwork,
        charged_outwork=ledger.take("price.outwork", marked_up, amount=outwork, markup=given.outwork_markup),
        delivery=ledger.take(
            "price.delivery", delivery_amount, distance=given.distance, per_distance=given.per_distance
        ),
        extras=sum(line.amount for line in given.extras),
    )
