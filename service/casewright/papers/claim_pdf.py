"""The claim sheet: what was ordered, billed and received, line by line, and what is asked back."""

from dataclasses import dataclass
from datetime import date
from typing import Any

from casewright.measure.money import show_money
from casewright.papers.cleaning import name, words
from casewright.papers.head import day
from casewright.papers.pdf import Paper, render
from casewright.wood.arrival import tally_difference


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimRow:
    """One line of a claim.

    Attributes:
        words: what it is
        unit: feet or pieces
        ordered: how much was ordered; None for what nobody did
        billed: how much was billed; None where it stands on no bill
        received: how much came and stays, counted as a yard counts
        exact: exact feet, or pieces
        price_cents: what one of it was billed at [cent]
        claim_cents: what is asked back [cent]
        faults: what is wrong with which piece
        sent_back: labels of what went back
    """

    words: str
    unit: str
    ordered: float | None
    billed: float | None
    received: float
    exact: float
    price_cents: int | None
    claim_cents: int
    faults: tuple[str, ...]
    sent_back: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimPaper:
    """A claim as it is printed.

    Attributes:
        shop: who claims
        supplier: of whom
        delivery: the number of the delivery
        order: the number of the order; empty for none
        bill: the number of the bill; empty where it is not known
        arrived_on: the day on which it came
        written_on: the day of the claim
        symbol: the sign of the currency
        rows: line by line
    """

    shop: str
    supplier: str
    delivery: str
    order: str
    bill: str
    arrived_on: date
    written_on: date
    symbol: str
    rows: tuple[ClaimRow, ...]


def claim_pdf(claim: ClaimPaper, paper: Paper = Paper.LETTER) -> bytes:
    """The claim as PDF.

    Args:
        claim: the claim
        paper: the sheet

    Returns:
        A PDF for the supplier: no customer, no job, no price but the one that was billed.
    """
    return render("claim", claim_data(claim), paper)


def claim_data(claim: ClaimPaper) -> dict[str, Any]:
    """The claim as it is read.

    Args:
        claim: the claim

    Returns:
        Every figure in words.
    """
    heading = f"Claim for delivery {claim.delivery}"
    facts = [
        ["Arrived", day(claim.arrived_on)],
        *([["Order", claim.order]] if claim.order else []),
        *([["Bill", name(claim.bill, 40)]] if claim.bill else []),
        ["Written", day(claim.written_on)],
    ]
    total = sum(row.claim_cents for row in claim.rows)
    return {
        "title": f"{heading}, {name(claim.supplier)}",
        "heading": heading,
        "shop": name(claim.shop),
        "job_name": "",
        "facts": facts,
        "foot": f"{heading} · {day(claim.written_on)}",
        "is_draft": False,
        "supplier": name(claim.supplier),
        "rows": [_row(row, claim.symbol) for row in claim.rows],
        "pieces": [words(said) for row in claim.rows for said in _pieces(row)],
        "total": show_money(total, claim.symbol),
    }


def _row(row: ClaimRow, symbol: str) -> list[str]:
    short = tally_difference(row.billed, row.received) if row.billed else 0.0
    exact = f"{row.exact:.2f}" if row.unit == "bd ft" else ""
    return [
        words(f"{row.words}, {row.unit}"),
        _amount(row.ordered),
        _amount(row.billed),
        _amount(row.received),
        exact,
        f"{abs(short) * 100:.1f} %{' over' * (short < 0)}" if row.billed else "",
        "" if row.price_cents is None else show_money(row.price_cents, symbol),
        show_money(row.claim_cents, symbol) if row.claim_cents else "",
    ]


def _amount(value: float | None) -> str:
    return "" if value is None else f"{value:g}"


def _pieces(row: ClaimRow) -> list[str]:
    said = [f"{row.words}: {fault}" for fault in row.faults]
    return said + ([f"{row.words}: sent back {', '.join(row.sent_back)}"] if row.sent_back else [])
