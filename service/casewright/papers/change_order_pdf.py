"""The change order as PDF: what a customer agrees to after the work has begun."""

from dataclasses import dataclass
from datetime import date
from typing import Any

from casewright.measure.money import show_money
from casewright.papers.cleaning import name, words
from casewright.papers.head import day
from casewright.papers.pdf import Paper, render
from casewright.papers.quote_pdf import lines_of
from casewright.pieces.words.offer import Party


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangePaper:
    """A change order as it is printed: nothing of how its price is made up, no mark of a part.

    Attributes:
        shop: who writes
        customer: to whom
        number: of the change order, as it is read
        job_number: of the job, as it is read
        job_name: what the shop calls the job
        unit_name: the unit
        made_on: the day on which it was made
        note: the maker's words to the customer; empty for none
        changes: what changes, with sizes
        work: what that does to the work that is done
        pictures: the front before and after, in words and as SVG
        net_cents: the change before tax, below zero where it costs less [cent]
        tax_cents: tax on it [cent]
        total_cents: both together [cent]
        symbol: the sign of the currency
        ready: how much later it is ready, in words
        answer: what became of it; empty while it waits for an answer
    """

    shop: Party
    customer: Party
    number: str
    job_number: str
    job_name: str
    unit_name: str
    made_on: date
    note: str
    changes: tuple[str, ...]
    work: tuple[str, ...]
    pictures: tuple[tuple[str, str], ...]
    net_cents: int
    tax_cents: int
    total_cents: int
    symbol: str
    ready: str
    answer: str


def change_order_pdf(change: ChangePaper, paper: Paper = Paper.LETTER) -> bytes:
    """A change order, with places to sign while it waits for an answer.

    Args:
        change: the change order
        paper: the sheet

    Returns:
        A PDF.
    """
    return render("change_order", change_order_data(change), paper)


def change_order_data(change: ChangePaper) -> dict[str, Any]:
    """The change order as it is read.

    Args:
        change: the change order

    Returns:
        Every figure in words.
    """
    number, made = f"Change order {name(change.number, 40)}", day(change.made_on)
    unit = name(change.unit_name)
    return {
        "title": f"{number}, {name(change.job_name)}",
        "foot": f"{name(change.shop.name, 60)} · {number} · {made}",
        "is_draft": False,
        "shop": name(change.shop.name),
        "shop_lines": lines_of(change.shop),
        "customer": name(change.customer.name),
        "customer_lines": lines_of(change.customer),
        "number": number,
        "job_name": name(change.job_name),
        "facts": [["Job", name(change.job_number, 40)], ["Made", made], ["Ready", name(change.ready)]],
        "opening": f"This changes what was agreed for: {unit}.",
        "note": words(change.note),
        "pictures": [[said, f"{said}: the front of {unit}", picture] for said, picture in change.pictures],
        "changes": [words(line) for line in change.changes],
        "work": [words(line) for line in change.work],
        "price": _price(change),
        "agreement": _agreement(change, number),
        "is_open": not change.answer,
    }


def _price(change: ChangePaper) -> list[list[str]]:
    """What the change comes to before tax, tax, and together."""
    symbol = name(change.symbol, 5)
    less = change.net_cents < 0
    rows = [["Less for the change" if less else "The change", show_money(change.net_cents, symbol)]]
    if change.tax_cents:
        rows.append(["Tax", show_money(change.tax_cents, symbol)])
    return [*rows, ["Less in all" if less else "More in all", show_money(change.total_cents, symbol)]]


def _agreement(change: ChangePaper, number: str) -> str:
    if change.answer:
        return words(change.answer)
    total = show_money(abs(change.total_cents), name(change.symbol, 5))
    way = "less" if change.net_cents < 0 else "more"
    return f"I agree to {number}, for {total} {way} in all. All else stays as it was agreed."
