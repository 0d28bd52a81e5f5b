"""What has come in for a price that is paid in stages, and what is still open of each."""

from dataclasses import dataclass

from casewright.measure.units import Cents
from casewright.pricing.stages import StageAmount


@dataclass(frozen=True, slots=True, kw_only=True)
class StagePaid:
    """One payment that was agreed, and how much of it has come in.

    Attributes:
        trigger: what makes it due
        amount: how much it is [cent]
        paid: how much of it has come in [cent]
    """

    trigger: str
    amount: Cents
    paid: Cents

    @property
    def open(self) -> Cents:
        """What is still to come [cent]."""
        return self.amount - self.paid

    @property
    def is_paid(self) -> bool:
        """Whether all of it has come in."""
        return self.paid >= self.amount


def paid_stages(stages: tuple[StageAmount, ...], received: Cents) -> tuple[StagePaid, ...]:
    """The stages, filled one after the other by what has come in.

    Rule: the first stage takes what it needs, the next takes of the rest, and so on

    Args:
        stages: what was agreed, in the order in which it falls due
        received: all payments added up, corrections and money paid back among them; below zero where more
            went back than came in [cent]

    Returns:
        One for each stage. What came in beyond the last of them stands in none.

    Source: common practice: money without a purpose pays the oldest debt.
    """
    left = max(0, received)
    filled = []
    for stage in stages:
        paid = min(left, stage.amount)
        left -= paid
        filled.append(StagePaid(trigger=stage.trigger, amount=stage.amount, paid=paid))
    return tuple(filled)


def still_open(agreed: Cents, received: Cents) -> Cents:
    """What is still to come of what was agreed.

    Rule: agreed - received

    Args:
        agreed: the whole price, tax included [cent]
        received: all payments added up [cent]

    Returns:
        Below zero where more came in than was agreed [cent]

    Source: arithmetic.
    """
    return agreed - received
