"""The quote as PDF: what a customer is offered, on a paper that a maker is proud to hand over."""

from typing import Any

from casewright.measure.money import show_money
from casewright.measure.shares import show_part, show_percent
from casewright.papers.cleaning import name, words
from casewright.papers.head import day
from casewright.papers.pdf import Paper, render
from casewright.pieces.words.offer import Offer, OfferedOption, OfferedStage, OfferedUnit, Party

MOST_LINES = 8
"""Lines of an address that a letterhead shows."""


def quote_pdf(offer: Offer, paper: Paper = Paper.LETTER) -> bytes:
    """A quote.

    Args:
        offer: what is offered, as it is kept
        paper: the sheet

    Returns:
        A PDF; marked as a draft while the offer has no day of issue.
    """
    number = f"Quote {name(offer.quote_number, 40)}"
    mark = f"{number}, revision {offer.revision}"
    issued = day(offer.issued_on)
    data = {
        "title": f"{mark}, {name(offer.job_name)}" + ("" if issued else " (draft)"),
        "foot": f"{name(offer.shop.name, 60)} · {mark} · {issued or 'draft'}",
        "is_draft": not issued,
        "shop": name(offer.shop.name),
        "shop_lines": lines_of(offer.shop),
        "customer": name(offer.customer.name),
        "customer_lines": lines_of(offer.customer),
        "number": number,
        "job_name": name(offer.job_name),
        "note": [words(line) for line in offer.note.splitlines() if line.strip()],
        "facts": [[label, said] for label, said in _facts(offer, issued) if said],
        "units": [_unit(unit, offer) for unit in offer.units],
        "options": [_option(option, offer) for option in offer.options],
        "price": _price(offer),
        "total": _money(offer.total_cents, offer),
        "stages": [_stage(stage, offer) for stage in offer.stages],
        "not_included": [words(line) for line in offer.not_included],
        "cautions": [words(line) for line in offer.cautions],
        "terms": [words(line) for line in offer.terms],
        "acceptance": _acceptance(offer, mark),
    }
    return render("quote", data, paper)


def lines_of(party: Party) -> list[str]:
    """The lines under a name in a letterhead.

    Args:
        party: who writes, or to whom

    Returns:
        Address, telephone and mail, cleaned.
    """
    return [name(line) for line in party.lines[:MOST_LINES]]


def _facts(offer: Offer, issued: str) -> list[tuple[str, str]]:
    return [
        ("Revision", str(offer.revision)),
        ("Job", name(offer.job_number, 40)),
        ("Issued", issued or "draft, not yet an offer"),
        ("Valid until", day(offer.valid_until)),
        ("Ready by", day(offer.ready_by)),
    ]


def _money(cents: int, offer: Offer) -> str:
    return show_money(cents, name(offer.symbol, 5))


def _unit(unit: OfferedUnit, offer: Offer) -> dict[str, Any]:
    return {
        "title": _title(unit),
        "words": [words(line) for line in unit.words],
        "drawing": unit.drawing,
        "alt": f"Front elevation of {name(unit.name)}, drawn to scale with its sizes.",
        "price": _money(unit.price_cents, offer) if len(offer.units) > 1 else "",
    }


def _option(option: OfferedOption, offer: Offer) -> list[str]:
    sign = "+" if option.difference_cents > 0 else ""
    difference = f"{sign}{_money(option.difference_cents, offer)}".replace("-", "−", 1)
    return [name(option.label), words(option.words), difference]


def _price(offer: Offer) -> list[list[str]]:
    """The price table: each unit, what they come to, tax and total."""
    rows = [[_title(unit), _money(unit.price_cents, offer)] for unit in offer.units]
    if len(rows) > 1:
        rows.append(["Together, before tax", _money(offer.net_cents, offer)])
    if offer.tax_cents or offer.tax_rate:
        rows.append([f"Tax, {show_percent(offer.tax_rate)}", _money(offer.tax_cents, offer)])
    currency = name(offer.currency, 20)
    rows.append([f"Total in {currency}" if currency else "Total", _money(offer.total_cents, offer)])
    return rows


def _title(unit: OfferedUnit) -> str:
    return f"{unit.count} × {name(unit.name)}" if unit.count > 1 else name(unit.name)


def _stage(stage: OfferedStage, offer: Offer) -> list[str]:
    trigger = name(stage.trigger)
    return [
        trigger[:1].upper() + trigger[1:],
        show_part(stage.share),
        _money(stage.amount_cents, offer),
    ]


def _acceptance(offer: Offer, mark: str) -> str:
    total = _money(offer.total_cents, offer)
    if offer.issued_on is None:
        return f"This is a draft of {mark}, at {total} in all: no offer yet, and nothing to sign."
    until = f", if signed by {day(offer.valid_until)}" if offer.valid_until else ""
    return f"I accept {mark}, with its drawings and its terms, for {total} in all{until}."
