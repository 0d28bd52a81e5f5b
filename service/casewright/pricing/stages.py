"""The stages in which a price is paid, to the cent, so that they add up to it."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from casewright.measure.money import times
from casewright.measure.units import Cents, Number
from casewright.pricing.bundled import bundled

WHOLE = 1e-9
"""How far shares such as a third may miss one in adding up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """One payment: what makes it due, and how much it is: a share of the price, or a fixed amount.

    Attributes:
        trigger: what makes it due
        share: of what the fixed amounts leave; None for a fixed amount [dimensionless]
        amount: a fixed amount; None for a share [cent]
    """

    trigger: str
    share: Number | None = None
    amount: Cents | None = None

    def __post_init__(self) -> None:
        if (self.share is None) == (self.amount is None):
            raise ValueError(f"The stage “{self.trigger}” needs a share or an amount, one of the two.")
        if (self.share or 0) < 0 or (self.amount or 0) < 0:
            raise ValueError(f"The stage “{self.trigger}” cannot be below zero.")


@dataclass(frozen=True, slots=True, kw_only=True)
class StagePlan:
    """In which stages a price is paid.

    Attributes:
        name: what the plan is called
        stages: the payments in the order in which they fall due
        source: where the plan comes from
        basis: published, common practice or the shop's own
    """

    name: str
    stages: tuple[Stage, ...]
    source: str = "the shop's own terms"
    basis: str = "common practice"

    def __post_init__(self) -> None:
        shares = [stage.share for stage in self.stages if stage.share is not None]
        if not shares:
            raise ValueError(f"The plan “{self.name}” has no share to take what is left of the price.")
        if abs(sum(shares) - 1) > WHOLE:
            raise ValueError(f"The shares of “{self.name}” add up to {sum(shares):.0%}; make it 100 %.")


@dataclass(frozen=True, slots=True, kw_only=True)
class StageAmount:
    """One payment of a certain price.

    Attributes:
        trigger: what makes it due
        amount: how much [cent]
    """

    trigger: str
    amount: Cents


def stage_amounts(total: Cents, plan: StagePlan) -> tuple[StageAmount, ...]:
    """What falls due at each stage.

    Fixed amounts come off the total first; the shares divide the rest, and the last of them takes what
    rounding left.

    Args:
        total: the whole price, tax included [cent]
        plan: the stages

    Returns:
        One amount for each stage, adding up to the total.

    Raises:
        ValueError: the fixed amounts are more than the price.

    Source: common practice.
    """
    left = total - sum(stage.amount or 0 for stage in plan.stages)
    if left < 0:
        raise ValueError(f"The fixed stages of “{plan.name}” are more than the price; lower them.")
    amounts = [stage.amount if stage.share is None else times(left, stage.share) for stage in plan.stages]
    last = max(place for place, stage in enumerate(plan.stages) if stage.share is not None)
    whole = [amount or 0 for amount in amounts]
    whole[last] += total - sum(whole)
    return tuple(
        StageAmount(trigger=stage.trigger, amount=amount)
        for stage, amount in zip(plan.stages, whole, strict=True)
    )


@cache
def stage_plans() -> tuple[StagePlan, ...]:
    """The plans that a shop may choose from; the first is the one it starts with.

    Source: woodshopnews.com for the four stages; the others are common practice.
    """
    return tuple(
        StagePlan(
            name=row["name"],
            stages=tuple(
                Stage(trigger=stage["trigger"], share=float(Fraction(stage["share"])))
                for stage in row["stages"]
            ),
            source=row["source"],
            basis=row["basis"],
        )
        for row in bundled("stages.json")["plans"]
    )


def stage_plan(name: str | None = None) -> StagePlan:
    """A plan by its name.

    Args:
        name: what it is called; None for the one that a shop starts with

    Returns:
        The plan.

    Raises:
        ValueError: there is no such plan, with the names that there are.

    Source: common practice.
    """
    wanted = name or stage_plans()[0].name
    for plan in stage_plans():
        if plan.name == wanted:
            return plan
    names = ", ".join(plan.name for plan in stage_plans())
    raise ValueError(f"There is no plan “{wanted}”; there are: {names}.")
