"""An offer as a page shows it: every amount and date already in words, nothing left to be worked out."""

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from casewright.measure.money import show_money
from casewright.measure.shares import show_part, show_percent
from casewright.pieces.words.offer import Offer, OfferedOption, OfferedStage, OfferedUnit
from casewright.web.frame.filters import day
from casewright.web.frame.pages import drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitShown:
    """One piece of the offer."""

    code: str
    title: str
    words: tuple[str, ...]
    drawing: Markup
    price: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferShown:
    """An offer in words.

    Attributes:
        heading: the number of the quote
        facts: revision, job and dates, with their labels
        price: the lines of the price, the total left out
        total: what is paid in all, with its label
        stages: when it falls due, which part, how much
        first_payment: one sentence on it; empty where nothing is paid
    """

    heading: str
    job_name: str
    note: tuple[str, ...]
    shop: str
    shop_lines: tuple[str, ...]
    customer: str
    customer_lines: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    units: tuple[UnitShown, ...]
    options: tuple[tuple[str, str, str], ...]
    price: tuple[tuple[str, str], ...]
    total: tuple[str, str]
    stages: tuple[tuple[str, str, str], ...]
    first_payment: str
    not_included: tuple[str, ...]
    cautions: tuple[str, ...]
    terms: tuple[str, ...]


ON_THE_DAY = ("signing", "completion", "delivery", "order", "receipt")
"""What a payment may fall due on."""
ALREADY_SAID = ("before", "after", "on", "at", "when", "with", "by", "upon")
"""Words with which a stage says itself when it falls due."""


def shown(offer: Offer) -> OfferShown:
    """An offer as a page shows it."""
    facts = (
        ("Revision", str(offer.revision)),
        ("Job", offer.job_number),
        ("Issued", day(offer.issued_on) or "draft, not yet an offer"),
        ("Valid until", day(offer.valid_until)),
        ("Ready by", day(offer.ready_by)),
    )
    return OfferShown(
        heading=f"Quote {offer.quote_number}",
        job_name=offer.job_name,
        note=tuple(line for line in offer.note.splitlines() if line.strip()),
        shop=offer.shop.name,
        shop_lines=offer.shop.lines,
        customer=offer.customer.name,
        customer_lines=offer.customer.lines,
        facts=tuple((label, said) for label, said in facts if said),
        units=tuple(_unit(unit, offer) for unit in offer.units),
        options=tuple(_option(option, offer) for option in offer.options),
        price=tuple(_price(offer)),
        total=(f"Total in {offer.currency}", _money(offer.total_cents, offer)),
        stages=tuple(_stage(stage, offer) for stage in offer.stages),
        first_payment=_first_payment(offer),
        not_included=offer.not_included,
        cautions=offer.cautions,
        terms=offer.terms,
    )


def _money(cents: float, offer: Offer) -> str:
    return show_money(int(cents), offer.symbol)


def difference(cents: int, symbol: str) -> str:
    """A difference with its sign: +$120.00, −$35.00."""
    sign = "+" if cents > 0 else ""
    return f"{sign}{show_money(cents, symbol)}".replace("-", "−", 1)


def _title(unit: OfferedUnit) -> str:
    return f"{unit.count} × {unit.name}" if unit.count > 1 else unit.name


def _unit(unit: OfferedUnit, offer: Offer) -> UnitShown:
    several = len(offer.units) > 1
    return UnitShown(
        code=unit.code,
        title=_title(unit),
        words=unit.words,
        drawing=drawing(unit.drawing),
        price=_money(unit.price_cents, offer) if several else "",
    )


def _option(option: OfferedOption, offer: Offer) -> tuple[str, str, str]:
    return option.label, option.words, difference(int(option.difference_cents), offer.symbol)


def _price(offer: Offer) -> Iterator[tuple[str, str]]:
    yield from ((_title(unit), _money(unit.price_cents, offer)) for unit in offer.units)
    if len(offer.units) > 1:
        yield "Together, before tax", _money(offer.net_cents, offer)
    if offer.tax_cents or offer.tax_rate:
        yield f"Tax, {show_percent(offer.tax_rate)}", _money(offer.tax_cents, offer)


def _stage(stage: OfferedStage, offer: Offer) -> tuple[str, str, str]:
    trigger = f"{stage.trigger[:1].upper()}{stage.trigger[1:]}"
    return trigger, show_part(stage.share), _money(stage.amount_cents, offer)


def _first_payment(offer: Offer) -> str:
    """What the customer pays first, and when."""
    first = next((stage for stage in offer.stages if stage.amount_cents), None)
    if first is None:
        return ""
    amount = _money(first.amount_cents, offer)
    return f"The first payment, {amount}, falls due {_due(first.trigger)}; the shop will be in touch."


def _due(trigger: str) -> str:
    start = trigger.partition(" ")[0].strip(",").lower()
    if start in ALREADY_SAID:
        return trigger
    return f"on {trigger}" if start in ON_THE_DAY else f"at this stage: {trigger}"
