"""From a job to its offer: worked out with what holds now, and frozen on the day on which it is sent."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from hashlib import sha256
from typing import Any

from casewright.drawing.elevation import elevation
from casewright.measure.findings import Finding, Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import refusal
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.job_estimate import JobEstimate, price_difference
from casewright.pieces.words.offer import Offer, OfferedOption, Party, offer, stands_until
from casewright.pieces.words.otherwise import otherwise
from casewright.records.jobs import Customer, Job, JobState, UnitOption
from casewright.records.papers import QuoteState
from casewright.records.people import Shop
from casewright.records.quotes import options_of, quotes_of
from casewright.records.sessions import Fenced
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import OF_A_JOB, figures_from, figures_text
from casewright.shop.jobs import move_job, refuse_if_over
from casewright.shop.options import option_text
from casewright.shop.quote_links import new_link
from casewright.shop.quotes import DraftWords, LoadedQuote, move_quote, supersede_others
from casewright.shop.refusals import Refused, Stale
from casewright.shop.still_examples import example_words
from casewright.shop.units import LoadedUnit, units_of

CHANGED_SINCE = "Something has changed since you looked at it; look at it again, then send it."
STOPPED = "Checks say stop. Look at them, then tick that it is to go out all the same."


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionWorked:
    """An option with what it comes to.

    Attributes:
        option: the option
        unit_code: the unit that it is a way to make
        words: what is different, in words
        difference: what it adds before tax; None where it cannot be worked out [cent]
        trouble: why it cannot be offered; empty where it can
        left_out: the draft leaves it out
        text: the unit made the other way, as JSON text
    """

    option: UnitOption
    unit_code: str
    words: str = ""
    difference: int | None = None
    trouble: str = ""
    left_out: bool = False
    text: str = ""

    @property
    def is_offered(self) -> bool:
        """Whether the customer reads of it."""
        return self.difference is not None and not self.trouble and not self.left_out


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A job worked out as it stands today.

    Attributes:
        offer: what the customer would be offered; without a day of issue
        estimate: what it takes and costs
        units: the units it is made from
        options: every option, offered or not
        figures_text: the figures it is made with
        promised: the day that the estimate promises
    """

    offer: Offer
    estimate: JobEstimate
    units: tuple[LoadedUnit, ...]
    options: tuple[OptionWorked, ...]
    figures_text: str
    promised: date

    @property
    def mark(self) -> str:
        """A mark of what is offered: another one tomorrow means that something has changed."""
        return sha256(self.offer.model_dump_json().encode()).hexdigest()[:32]

    @property
    def stops(self) -> tuple[Finding, ...]:
        """The checks that say stop."""
        return tuple(each for each in self.estimate.findings if each.verdict is Verdict.STOP)

    @property
    def cautions(self) -> tuple[Finding, ...]:
        """The checks that say: look at this first."""
        return tuple(each for each in self.estimate.findings if each.verdict is Verdict.CAUTION)

    @property
    def examples(self) -> tuple[str, ...]:
        """What the price still takes from an example shop."""
        return tuple(_examples(self))


def work_out(db: Fenced, shop: Shop, held: LoadedQuote, today: date) -> Worked:
    """What a draft would offer today.

    Raises:
        CannotBuild, CannotGraduate, CannotBeLaidOut …: with a sentence that says what would work
    """
    units = tuple(units_of(db, held.job))
    text = figures_text(db, shop, held.job)
    words = DraftWords.of(held.quote)
    estimate = estimated_job(tuple(each.text for each in units), text, today)
    found = options_of(db, (each.unit.id for each in units))
    options = tuple(_worked_options(units, found, estimate, text, today, shop, words))
    offered = offer(
        estimate,
        figures_from(text),
        offered_by=shop_party(shop),
        customer=customer_party(held.customer),
        job_number=str(held.job.number),
        job_name=held.job.name,
        quote_number=held.number,
        revision=held.quote.revision,
        note=words.note,
        valid_until=stands_until(today, words.days or shop.quote_days),
        ready_by=words.ready_by,
        currency=shop.currency,
        unit=LengthUnit(shop.unit),
        drawings={
            each.unit.spec.code: elevation(each.unit, LengthUnit(shop.unit)).svg() for each in estimate.units
        },
        options=tuple(
            OfferedOption(label=each.option.label, words=each.words, difference_cents=each.difference)
            for each in options
            if each.is_offered and each.difference is not None
        ),
        terms=_paragraphs(shop.terms),
    )
    return Worked(
        offer=offered,
        estimate=estimate,
        units=units,
        options=options,
        figures_text=text,
        promised=estimate.promise.promised,
    )


def _worked_options(
    units: Sequence[LoadedUnit],
    options: Sequence[UnitOption],
    base: JobEstimate,
    figures: str,
    today: date,
    shop: Shop,
    words: DraftWords,
) -> Iterator[OptionWorked]:
    by_id = {each.unit.id: each for each in units}
    for option in options:
        loaded = by_id[option.unit_id]
        plain = OptionWorked(option=option, unit_code=loaded.unit.code, left_out=option.id in words.left_out)
        try:
            yield _worked_option(plain, units, loaded, base, figures, today, LengthUnit(shop.unit))
        except REFUSALS as error:
            yield OptionWorked(
                option=option,
                unit_code=plain.unit_code,
                left_out=plain.left_out,
                trouble=refusal(error, LengthUnit(shop.unit)),
            )


def _worked_option(
    plain: OptionWorked,
    units: Sequence[LoadedUnit],
    loaded: LoadedUnit,
    base: JobEstimate,
    figures: str,
    today: date,
    shown: LengthUnit,
) -> OptionWorked:
    text = option_text(loaded, plain.option)
    texts = tuple(text if each is loaded else each.text for each in units)
    other = estimated_job(texts, figures, today)
    lacking = [each for each in other.unpriced if each not in base.unpriced]
    said = otherwise(base.unit(plain.unit_code).unit, other.unit(plain.unit_code).unit, shown)
    among = f"{loaded.unit.name}: " if len(units) > 1 else ""
    return OptionWorked(
        option=plain.option,
        unit_code=plain.unit_code,
        left_out=plain.left_out,
        words=f"{among}{said}" if said else among.removesuffix(": "),
        difference=int(price_difference(base, other)),
        trouble=lacking[0] if lacking else "",
        text=text,
    )


def shop_party(shop: Shop) -> Party:
    """The shop as it signs."""
    lines = (*shop.address.splitlines(), shop.phone, shop.email)
    return Party(name=shop.name, lines=tuple(line.strip() for line in lines if line.strip()))


def customer_party(customer: Customer) -> Party:
    """The customer as a letter is addressed."""
    lines = (*customer.address.splitlines(), customer.email, customer.phone)
    return Party(name=customer.name, lines=tuple(line.strip() for line in lines if line.strip()))


def _paragraphs(text: str) -> tuple[str, ...] | None:
    found = tuple(line.strip() for line in text.splitlines() if line.strip())
    return found or None


def _examples(worked: Worked) -> Iterator[str]:
    yield from example_words(worked.estimate.materials, figures_from(worked.figures_text))
    if not worked.offer.shop.lines:
        yield "The letterhead has no address and no telephone number yet."


def send_quote(
    db: Fenced,
    shop: Shop,
    held: LoadedQuote,
    *,
    secret: bytes,
    seen: str,
    sure: bool,
    who: str,
    now: datetime,
    today: date,
) -> None:
    """Issues a draft: offer and basis are frozen, a link is made, earlier revisions are superseded.

    Args:
        db: the session
        shop: the shop
        held: the draft
        secret: the key under which links are made
        seen: the mark of what the sender looked at; empty for no matter
        sure: it is to go out although checks say stop
        who: who sends it
        now: the moment
        today: the day in the shop

    Raises:
        Refused: it is no draft, checks say stop, or the job is over
        Stale: something changed since it was looked at
        CannotBuild, CannotGraduate, CannotBeLaidOut …: it cannot be worked out
    """
    refuse_if_over(held.job)
    _refuse_if_another_is_accepted(db, held)
    move_quote(db, held, QuoteState.SENT, who, now)
    worked = work_out(db, shop, held, today)
    _refuse_unless_looked_at(worked, seen, sure)
    _freeze(shop, held, worked, now, today)
    new_link(db, held, secret, first=True)
    older = {QuoteState.SENT, QuoteState.DECLINED, QuoteState.EXPIRED}
    supersede_others(db, held, older, who, now)
    if held.job.state is JobState.ENQUIRY:
        move_job(db, held.job, JobState.QUOTED, who, now, why=f"{held.name}, sent")


def _refuse_if_another_is_accepted(db: Fenced, held: LoadedQuote) -> None:
    """Lets no revision take the place of one that was accepted."""
    others = quotes_of(db, held.job.id)
    if any(each.number == held.quote.number and each.state is QuoteState.ACCEPTED for each in others):
        raise Refused(
            "An earlier revision has been accepted meanwhile; draw up a new quote for what is to change."
        )


def _refuse_unless_looked_at(worked: Worked, seen: str, sure: bool) -> None:
    """Lets nothing go out that nobody has seen, or that checks stop."""
    if seen and seen != worked.mark:
        raise Stale({}, CHANGED_SINCE)
    if worked.stops and not sure:
        raise Refused(STOPPED, 422)


def _freeze(shop: Shop, held: LoadedQuote, worked: Worked, now: datetime, today: date) -> None:
    """Keeps the offer, and beside it everything it was made from."""
    quote = held.quote
    issued = worked.offer.model_copy(update={"issued_on": today})
    quote.offer = issued.model_dump(mode="json")
    quote.basis = basis_of(worked, shop, held.job, today)
    quote.total_cents = int(issued.total_cents)
    quote.issued_at, quote.valid_until = now, issued.valid_until


def basis_of(worked: Worked, shop: Shop, job: Job, today: date) -> dict[str, Any]:
    """Everything that an offer was made from, as it is kept beside it."""
    figures = json.loads(worked.figures_text)
    return {
        "form": 1,
        "on": today.isoformat(),
        "figures_revision": shop.figures,
        "figures": figures,
        "own": {name: value for name, value in job.own.items() if name in OF_A_JOB},
        "units": [
            {
                "id": each.unit.id,
                "code": each.unit.code,
                "name": each.unit.name,
                "revision": each.revision.number,
                "spec": json.loads(each.text),
            }
            for each in worked.units
        ],
        "options": [
            {
                "id": each.option.id,
                "unit": each.unit_code,
                "label": each.option.label,
                "spec": json.loads(each.text),
                "difference_cents": each.difference,
            }
            for each in worked.options
            if each.is_offered
        ],
        "estimate": estimate_kept(worked.estimate),
    }


def estimate_kept(held: JobEstimate) -> dict[str, Any]:
    """The figures of an estimate that an issued quote keeps: for the owner alone."""
    price = held.price
    return {
        "materials": [
            {
                "kind": line.kind.value,
                "item": line.label,
                "quantity": float(line.quantity),
                "unit": line.unit,
                "unit_price_cents": int(line.unit_price),
                "amount_cents": int(line.amount),
                "source": line.source,
            }
            for line in held.materials
        ],
        "lines": [
            {"label": line.label, "amount_cents": int(line.amount), "working": line.working}
            for line in price.lines
        ],
        "minutes": float(held.minutes),
        "hours": float(held.hours),
        "rate_cents": int(held.rate.rate),
        "cost_rate_cents": int(held.rate.cost),
        "before_rounding_cents": int(price.before_rounding),
        "asked_cents": int(price.asked),
        "cost_cents": int(price.cost),
        "lowest_cents": int(price.lowest),
        "promised_on": held.promise.promised.isoformat(),
        "likely_on": held.promise.likely.isoformat(),
    }
