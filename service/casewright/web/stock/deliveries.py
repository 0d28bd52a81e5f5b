"""Deliveries: the list, beginning one, its bill, and the claim for what did not come."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.papers.claim_pdf import ClaimPaper, ClaimRow, claim_pdf
from casewright.pricing.usable import cost_per_usable_foot
from casewright.records.stock_lists import (
    DeliveryRow,
    OrderRow,
    deliveries,
    lines_of_order,
    list_orders,
    pieces_of_delivery,
    suppliers,
)
from casewright.shop.keeping import once
from casewright.shop.orders import load_order, order_number
from casewright.shop.receiving import (
    Billed,
    ClaimLine,
    LoadedDelivery,
    begin_delivery,
    claim_lines,
    load_delivery,
    write_bill,
)
from casewright.shop.refusals import Refused, Stale
from casewright.shop.suppliers import load_supplier
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.pdfs import paper_for, pdf_answer
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Office, Owner, Visit
from casewright.web.stock.tabs import tabs_for

router = APIRouter()
MOST_FEET = 1e6


@dataclass(frozen=True, slots=True, kw_only=True)
class DeliveriesPage(Page):
    """The latest deliveries, and how to begin one."""

    template: ClassVar[str] = "stock/deliveries.html"
    rows: Sequence[DeliveryRow]
    orders: Sequence[OrderRow]
    suppliers: Sequence[tuple[str, str]]
    form: Form
    today: str
    tabs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimPage(Page):
    """What was ordered, billed and received, line by line."""

    template: ClassVar[str] = "stock/claim.html"
    loaded: LoadedDelivery
    lines: Sequence[ClaimLine]
    faults: Mapping[str, Sequence[str]]
    form: Form
    names: Mapping[str, str]
    claim_cents: int
    got_cents: int | None
    billed_cents: int
    exact: float
    usable_cents: int | None
    credited_cents: int | None
    is_billed: bool
    sees_cost: bool


@router.get("/stock/deliveries")
def show_deliveries(visit: Everybody) -> Response:
    """The latest deliveries, and what is still to come."""
    return show(visit, _page(visit, form_of()))


def _page(visit: Visit, form: Form) -> DeliveriesPage:
    orders, _ = list_orders(visit.db, is_open=True)
    return DeliveriesPage(
        title="Deliveries",
        rows=deliveries(visit.db),
        orders=orders,
        suppliers=[(each.id, each.name) for each in suppliers(visit.db)],
        form=form,
        today=visit.today.isoformat(),
        tabs=tabs_for(visit),
    )


@router.post("/stock/deliveries")
def save_new_delivery(visit: Everybody) -> Response:
    """Begins to receive what came, for an order or without one."""
    read = Reader(visit.typed)
    order = load_order(visit.db, visit.typed.get("order")[:13])[0] if visit.typed.get("order") else None
    known = [each.id for each in suppliers(visit.db, ended=True)]
    chosen = order.supplier_id if order else read.choice("supplier", ["", *known], default="")
    if not chosen:
        read.fault("supplier", "Choose the supplier who sent it; the office adds a new one.")
    arrived = read.day("arrived_on") or visit.today
    if read.faults:
        return show(visit, _page(visit, read.form), 422)

    def make() -> str:
        supplier = load_supplier(visit.db, chosen)
        return (
            f"/stock/deliveries/{begin_delivery(visit.db, supplier, order, arrived, visit.who, visit.now).id}"
        )

    return see(once(visit.db, visit.typed.once, visit.now, make))


@router.get("/stock/deliveries/{delivery_id}/claim")
def show_claim(visit: Office, delivery_id: str) -> Response:
    """The bill against the tally, line by line."""
    return show(visit, _claim_page(visit, load_delivery(visit.db, delivery_id)))


@router.post("/stock/deliveries/{delivery_id}/claim")
def save_bill(visit: Owner, delivery_id: str) -> Response:
    """Writes down what was billed; each board then has its cost."""
    loaded = load_delivery(visit.db, delivery_id)
    lines = _claim_lines(visit, loaded)
    read = Reader(visit.typed)
    billed: dict[str, Billed] = {}
    for place, line in enumerate(lines, 1):
        start = f"bill.{place}"
        if not read.typed.get(f"{start}.quantity").strip() and not read.typed.get(f"{start}.amount").strip():
            continue
        much = read.number(f"{start}.quantity", least=0, most=MOST_FEET, example="39")
        cents = read.money(f"{start}.amount")
        if read.typed.get(f"{start}.what") != line.key:
            read.fault(
                f"{start}.quantity", "The tally changed while you were writing: look at this line again."
            )
        billed[line.key] = Billed(quantity=much, cents=cents)
    got = read.money("got") if read.typed.get("got").strip() else None
    number = read.line("bill_number", most=60)
    version = read.whole("version", least=1, most=10**8, default=loaded.delivery.version)
    if read.faults:
        return show(visit, _claim_page(visit, loaded, read.form), 422)
    pieces = pieces_of_delivery(visit.db, loaded.delivery.id)
    try:
        write_bill(visit.db, loaded, pieces, billed, number, version, visit.who, visit.now, got_cents=got)
    except Stale:
        form = Form(values={**read.form.values, "version": str(loaded.delivery.version)}, is_stale=True)
        return show(visit, _claim_page(visit, loaded, form), 409)
    return see(f"/stock/deliveries/{loaded.delivery.id}/claim", "saved")


@router.get("/stock/deliveries/{delivery_id}/claim.pdf")
def show_claim_pdf(visit: Owner, delivery_id: str, paper: str = "") -> Response:
    """The claim as PDF, for the supplier."""
    loaded = load_delivery(visit.db, delivery_id)
    lines = _claim_lines(visit, loaded)
    if not loaded.delivery.bill.get("lines"):
        raise Refused("Write down the bill first: a claim sets it against what came.")
    said = ClaimPaper(
        shop=visit.shop.name,
        supplier=loaded.supplier.name,
        delivery=loaded.number,
        order=order_number(loaded.order.number) if loaded.order else "",
        bill=loaded.delivery.bill_number,
        arrived_on=loaded.delivery.arrived_on,
        written_on=visit.today,
        symbol=visit.shop.symbol,
        # What neither came nor was billed is still to come: it is nothing to claim for.
        rows=tuple(
            _row(line, visit.unit) for line in lines if line.received or line.sent_back or line.billed
        ),
    )
    sheet = paper_for(paper, visit.shop)
    return pdf_answer(f"claim-{loaded.number}", lambda: claim_pdf(said, sheet))


def _row(line: ClaimLine, unit: LengthUnit) -> ClaimRow:
    return ClaimRow(
        words=line.words,
        unit=line.unit,
        ordered=line.ordered,
        billed=line.billed,
        received=line.received,
        exact=line.exact,
        price_cents=line.price_cents,
        claim_cents=line.claim_cents,
        faults=tuple(f"{code}: {in_unit(said, unit)}" for code, said in line.faults),
        sent_back=line.sent_back,
    )


def _claim_lines(visit: Visit, loaded: LoadedDelivery) -> tuple[ClaimLine, ...]:
    ordered = lines_of_order(visit.db, loaded.order.id) if loaded.order else ()
    return claim_lines(loaded.delivery, ordered, pieces_of_delivery(visit.db, loaded.delivery.id))


def _claim_page(visit: Visit, loaded: LoadedDelivery, form: Form | None = None) -> ClaimPage:
    lines, delivery = _claim_lines(visit, loaded), loaded.delivery
    billed = sum(row["cents"] for row in delivery.bill.get("lines", {}).values())
    exact = sum(line.exact for line in lines if line.unit == "bd ft")
    lumber = sum(
        row["cents"]
        for key, row in delivery.bill.get("lines", {}).items()
        if any(line.key == key and line.unit == "bd ft" for line in lines)
    )
    asked = sum(line.claim_cents for line in lines if line.unit == "bd ft") if lumber else 0
    return ClaimPage(
        title=f"Bill and claim of delivery {loaded.number}",
        loaded=loaded,
        lines=lines,
        faults={
            line.key: [f"{code}: {in_unit(said, visit.unit)}" for code, said in line.faults] for line in lines
        },
        form=form or form_of(**_first(lines, delivery.bill), bill_number=delivery.bill_number),
        names={
            **{f"bill.{place}.quantity": f"{line.words}, billed" for place, line in enumerate(lines, 1)},
            **{f"bill.{place}.amount": f"{line.words}, amount" for place, line in enumerate(lines, 1)},
            "got": "Credit that came",
        },
        claim_cents=sum(line.claim_cents for line in lines),
        got_cents=delivery.bill.get("got_cents"),
        billed_cents=billed,
        exact=exact,
        usable_cents=cost_per_usable_foot(lumber, exact) if lumber else None,
        credited_cents=cost_per_usable_foot(lumber - asked, exact) if asked else None,
        is_billed=bool(delivery.bill.get("lines")),
        sees_cost=visit.is_owner,
    )


def _first(lines: Sequence[ClaimLine], bill: Mapping[str, Any]) -> dict[str, str]:
    values = {}
    for place, line in enumerate(lines, 1):
        row = bill.get("lines", {}).get(line.key)
        values[f"bill.{place}.quantity"] = f"{row['quantity']:g}" if row else ""
        values[f"bill.{place}.amount"] = f"{row['cents'] / 100:.2f}" if row else ""
    got = bill.get("got_cents")
    return values | {"got": "" if got is None else f"{got / 100:.2f}"}
