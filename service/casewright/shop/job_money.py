"""What a job asks, what was agreed, what has come in and what is open; to the cent."""

from collections.abc import Sequence
from dataclasses import dataclass

from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.pricing.margins import margin_of
from casewright.pricing.received import StagePaid
from casewright.records.jobs import Payment
from casewright.records.standing import QuoteRow, Standing
from casewright.shop.waiting import changed_by, open_amount, stages_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A price with its tax.

    Attributes:
        net_cents: before tax [cent]
        tax_cents: the tax [cent]
        total_cents: with it [cent]
    """

    net_cents: int
    tax_cents: int
    total_cents: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """What only the owner sees.

    Attributes:
        cost_cents: what the job takes if it goes as usual, by today's figures [cent]
        lowest_cents: the least that can be accepted, before tax [cent]
        margin: what is left of the price, as a part of it; None where nothing is asked [dimensionless]
    """

    cost_cents: int
    lowest_cents: int
    margin: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PaymentLine:
    """A payment, and whether it can still be corrected."""

    payment: Payment
    is_corrected: bool

    @property
    def is_correction(self) -> bool:
        """Whether it is an entry against another."""
        return self.payment.corrects_id is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class JobMoney:
    """The money of a job.

    Attributes:
        agreed: what the customer has accepted; None before that
        changed_cents: what the change orders that were agreed on add to it, with tax [cent]
        estimate: what today's figures would ask; None where the job cannot be priced
        stages: the stage payments with what has come in of each; none before a quote is accepted
        received_cents: what came in, corrections among it [cent]
        open_cents: what is still to come; below zero where too much came in [cent]
        payments: every payment and correction, in the order of their days
        cost: cost and margin; None for whoever may not see them
    """

    agreed: Asked | None
    changed_cents: int
    estimate: Asked | None
    stages: tuple[StagePaid, ...]
    received_cents: int
    open_cents: int
    payments: tuple[PaymentLine, ...]
    cost: Cost | None

    @property
    def with_changes_cents(self) -> int:
        """What was agreed, with tax and all change orders [cent]."""
        return (self.agreed.total_cents if self.agreed else 0) + self.changed_cents


def job_money(
    held: Standing, payments: Sequence[Payment], estimate: JobEstimate | None, *, with_cost: bool
) -> JobMoney:
    """The money of a job, from its quotes, payments and estimate.

    Args:
        held: what there is of the job
        payments: every payment of it
        estimate: the job by today's figures; None where it cannot be priced
        with_cost: whether cost and margin are for this reader
    """
    agreed = _agreed(held.accepted)
    asked = _estimated(estimate)
    corrected = {payment.corrects_id for payment in payments}
    return JobMoney(
        agreed=agreed,
        changed_cents=changed_by(held),
        estimate=asked,
        stages=stages_of(held),
        received_cents=held.received,
        open_cents=open_amount(held),
        payments=tuple(
            PaymentLine(payment=payment, is_corrected=payment.id in corrected) for payment in payments
        ),
        cost=_cost(estimate, agreed or asked) if with_cost else None,
    )


def _agreed(quote: QuoteRow | None) -> Asked | None:
    """What was accepted."""
    if quote is None:
        return None
    return Asked(
        net_cents=quote.net_cents or 0,
        tax_cents=quote.tax_cents or 0,
        total_cents=quote.total_cents or 0,
    )


def _estimated(estimate: JobEstimate | None) -> Asked | None:
    if estimate is None:
        return None
    price = estimate.price
    return Asked(net_cents=int(price.asked), tax_cents=int(price.tax), total_cents=int(price.total))


def _cost(estimate: JobEstimate | None, asked: Asked | None) -> Cost | None:
    if estimate is None or asked is None:
        return None
    cost = int(estimate.price.cost)
    margin = float(margin_of(asked.net_cents, cost)) if asked.net_cents > 0 else None
    return Cost(cost_cents=cost, lowest_cents=int(estimate.price.lowest), margin=margin)
