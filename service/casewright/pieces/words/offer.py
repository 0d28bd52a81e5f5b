"""What a quote says: everything that a customer is offered, and nothing of what it costs the shop."""

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Cents, Count
from casewright.pieces.asked.fields import Spec
from casewright.pieces.asked.shop import Shop
from casewright.pieces.costs.job_estimate import JobEstimate, price_difference
from casewright.pieces.words.clauses import cautions_of, usual_texts
from casewright.pieces.words.describe import describe


class Party(Spec):
    """Who offers, or who is offered to."""

    name: str = Field(min_length=1, max_length=200, description="The name.")
    lines: tuple[str, ...] = Field((), description="Address, telephone and e-mail, line by line.")


class OfferedUnit(Spec):
    """One piece, as the customer reads it."""

    code: str = Field(description="The mark of the unit.")
    name: str = Field(description="What it is called.")
    count: int = Field(ge=1, description="How many alike are made.")
    words: tuple[str, ...] = Field(description="The piece in plain words, paragraph by paragraph.")
    drawing: str = Field("", description="Its elevation as SVG, to stand within a page; empty for none.")
    price_cents: Cents = Field(ge=0, description="For all that are alike, before tax.")


class OfferedOption(Spec):
    """Something that could be otherwise, and what that changes."""

    label: str = Field(min_length=1, max_length=200, description="What it is.")
    words: str = Field("", description="In a sentence or two.")
    difference_cents: Cents = Field(description="What it adds before tax; below zero where it saves.")


class OfferedStage(Spec):
    """One payment."""

    trigger: str = Field(description="What makes it due.")
    share: float = Field(ge=0, le=1, description="Its part of the total.")
    amount_cents: Cents = Field(description="How much, tax included.")


class Offer(Spec):
    """A quote as it is issued, frozen: nothing in it is computed anew when it is read years later."""

    form: Literal[1] = Field(1, description="Version of this form: 1.")
    shop: Party = Field(description="Who offers.")
    customer: Party = Field(description="Who is offered to.")
    job_number: str = Field(description="The shop's number of the job.")
    job_name: str = Field(description="What the job is called.")
    note: str = Field("", max_length=5000, description="A few words to the customer, above the pieces.")
    quote_number: str = Field(description="The shop's number of the quote.")
    revision: int = Field(ge=1, description="Which revision of the quote this is.")
    issued_on: date | None = Field(None, description="When it was issued; none for a draft.")
    valid_until: date | None = Field(None, description="The last day on which it may be accepted.")
    ready_by: date | None = Field(None, description="When the job is promised.")
    symbol: str = Field(description="The sign of the currency.")
    currency: str = Field(description="The name of the currency.")
    unit: LengthUnit = Field(description="The unit of the sizes in its words.")
    units: tuple[OfferedUnit, ...] = Field(min_length=1, description="The pieces.")
    options: tuple[OfferedOption, ...] = Field((), description="What could be otherwise.")
    net_cents: Cents = Field(ge=0, description="The price before tax.")
    tax_rate: float = Field(ge=0, description="The rate of the tax.")
    tax_cents: Cents = Field(ge=0, description="The tax.")
    total_cents: Cents = Field(ge=0, description="What the customer pays in all.")
    stages: tuple[OfferedStage, ...] = Field(description="When it is paid.")
    terms: tuple[str, ...] = Field(description="On which terms.")
    not_included: tuple[str, ...] = Field(description="What the price does not hold.")
    cautions: tuple[str, ...] = Field(description="What the customer must know.")

    @model_validator(mode="after")
    def sums_agree(self) -> Self:
        """Refuses an offer whose figures do not add up: no customer may find that out first."""
        sums = (
            ("the prices of the units", sum(unit.price_cents for unit in self.units), self.net_cents),
            ("price and tax", self.net_cents + self.tax_cents, self.total_cents),
            ("the stages", sum(stage.amount_cents for stage in self.stages), self.total_cents),
        )
        for what, found, needed in sums:
            if found != needed:
                raise PydanticCustomError(
                    "choice",
                    "{what} add up to {found} cents and should be {needed}",
                    {"what": what, "found": found, "needed": needed},
                )
        return self


def offer(
    job: JobEstimate,
    shop: Shop,
    *,
    offered_by: Party,
    customer: Party,
    job_number: str,
    job_name: str,
    quote_number: str,
    revision: Count = 1,
    note: str = "",
    issued_on: date | None = None,
    valid_until: date | None = None,
    ready_by: date | None = None,
    currency: str = "USD",
    unit: LengthUnit = LengthUnit.INCH,
    drawings: Mapping[str, str] | None = None,
    options: tuple[OfferedOption, ...] = (),
    terms: tuple[str, ...] | None = None,
    not_included: tuple[str, ...] | None = None,
    cautions: tuple[str, ...] | None = None,
) -> Offer:
    """What a customer is offered for a job.

    Args:
        job: the job, estimated
        shop: its tax, stages and currency sign
        offered_by: the shop as it signs
        customer: who is offered to
        job_number: the shop's number of the job
        job_name: what the job is called
        quote_number: the shop's number of the quote
        revision: which revision of the quote this is [dimensionless]
        note: a few words to the customer, above the pieces
        issued_on: the day of issue; None for a draft
        valid_until: the last day on which it may be accepted
        ready_by: when the job is promised; None for what the estimate promises
        currency: the name of the currency
        unit: the unit of the sizes in its words
        drawings: the elevation of each unit by its code, as SVG to stand within a page
        options: what could be otherwise
        terms: the shop's own terms; None for the usual ones
        not_included: the shop's own list; None for the usual one
        cautions: the shop's own; None for the usual ones that apply to these units

    Returns:
        The offer, every sum agreeing.

    Source: common practice of quotes.
    """
    drawn = drawings or {}
    price = job.price
    made = tuple(held.unit for held in job.units)
    return Offer(
        shop=offered_by,
        customer=customer,
        job_number=job_number,
        job_name=job_name,
        quote_number=quote_number,
        revision=revision,
        note=note,
        issued_on=issued_on,
        valid_until=valid_until,
        ready_by=ready_by or job.promise.promised,
        symbol=shop.spec.symbol,
        currency=currency,
        unit=unit,
        units=tuple(
            OfferedUnit(
                code=each.spec.code,
                name=each.spec.name,
                count=each.spec.count,
                words=describe(each, unit),
                drawing=drawn.get(each.spec.code, ""),
                price_cents=int(cents),
            )
            for each, cents in zip(made, job.unit_prices_cents, strict=True)
        ),
        options=options,
        net_cents=int(price.asked),
        tax_rate=float(shop.terms.tax_rate),
        tax_cents=int(price.tax),
        total_cents=int(price.total),
        stages=_stages(job, shop),
        terms=usual_texts("terms") if terms is None else terms,
        not_included=usual_texts("not_included") if not_included is None else not_included,
        cautions=cautions_of(made) if cautions is None else cautions,
    )


def _stages(job: JobEstimate, shop: Shop) -> tuple[OfferedStage, ...]:
    """The payments, each with its part of the total; where some are fixed amounts, all are worked out so."""
    total, planned = int(job.price.total), shop.stages.stages
    by_share = all(stage.share is not None for stage in planned)
    return tuple(
        OfferedStage(
            trigger=due.trigger,
            share=float(stage.share or 0) if by_share else due.amount / max(1, total),
            amount_cents=int(due.amount),
        )
        for due, stage in zip(job.price.stages, planned, strict=True)
    )


def option(label: str, words: str, base: JobEstimate, other: JobEstimate) -> OfferedOption:
    """Something that could be otherwise, as the difference of two asked prices.

    Args:
        label: what it is
        words: in a sentence or two
        base: the job as it is offered
        other: the job made the other way

    Returns:
        The option with its difference before tax.

    Source: common practice: options are shown as differences.
    """
    return OfferedOption(label=label, words=words, difference_cents=price_difference(base, other))


def stands_until(issued_on: date, days: Count) -> date:
    """The last day on which a quote may be accepted.

    Args:
        issued_on: the day of issue
        days: how many days it stands, such as the shop's `terms.valid_days` [dimensionless]

    Returns:
        The day.

    Source: common practice: 30 days.
    """
    return issued_on + timedelta(days=days)
