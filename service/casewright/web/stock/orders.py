"""Orders: the list, one of them as it was issued, its files, and where it stands."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.units import Cents
from casewright.papers.csv_files import supply_order_csv
from casewright.papers.supply_order import SupplyOrderPaper
from casewright.papers.supply_order_pdf import supply_order_data, supply_order_pdf
from casewright.records.stock import OrderLine, OrderState, Supplier, SupplyOrder
from casewright.records.stock_lists import (
    A_PAGE,
    DeliveryRow,
    JobRow,
    OrderRow,
    deliveries,
    jobs_of_orders,
    lines_of_order,
    list_orders,
    suppliers,
)
from casewright.shop.orders import load_order, move_order, order_number
from casewright.shop.refusals import Stale
from casewright.shop.supplier_prices import quotes_in_force
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.pdfs import file_answer, paper_for, pdf_answer
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.stock.needs import quoted_for
from casewright.web.stock.order_changes import OrderChanges, changes_since
from casewright.web.stock.tabs import OFFICE_TABS
from casewright.web.stock.wanted import much_words, need_of, words_of

router = APIRouter()
OURS = "shop"


@dataclass(frozen=True, slots=True, kw_only=True)
class OrdersPage(Page):
    """The list of orders."""

    template: ClassVar[str] = "stock/orders.html"
    rows: Sequence[OrderRow]
    jobs: Mapping[str, Sequence[JobRow]]
    total: int
    is_open: bool
    number: int
    pages: int
    tabs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceShown:
    """One line of an order with its price."""

    words: str
    quantity: str
    price_cents: int | None
    amount_cents: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherShown:
    """What another supplier would ask for the lines that it quotes.

    Attributes:
        name: the supplier
        lines: how many lines of the order it quotes
        there_cents: what they come to there [cent]
        here_cents: what the same lines come to as they were ordered [cent]
        quoted: the days of its quotes, the oldest first, in words
    """

    name: str
    lines: int
    there_cents: int
    here_cents: int
    quoted: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderPage(Page):
    """One order, as it was issued."""

    template: ClassVar[str] = "stock/order.html"
    order: SupplyOrder
    supplier: Supplier
    jobs: Sequence[JobRow]
    deliveries: Sequence[DeliveryRow]
    data: Mapping[str, Any]
    prices: Sequence[PriceShown]
    total_cents: int
    unpriced: int
    others: Sequence[OtherShown]
    changes: OrderChanges | None
    form: Form
    today: str


@router.get("/stock/orders")
def show_orders(visit: Office, only: str = "", page: int = 1) -> Response:
    """The list of orders; all of them, or those that are open."""
    number = min(max(page, 1), 10_000)
    rows, total = list_orders(visit.db, is_open=only == "open", page=number)
    held = OrdersPage(
        title="Orders",
        rows=rows,
        jobs=jobs_of_orders(visit.db, [row.id for row in rows]),
        total=total,
        is_open=only == "open",
        number=number,
        pages=max(1, -(-total // A_PAGE)),
        tabs=OFFICE_TABS,
    )
    return show(visit, held)


@router.get("/stock/orders/{order_id}")
def show_order(visit: Office, order_id: str) -> Response:
    """One order, as it was issued, with what came of it."""
    order, supplier = load_order(visit.db, order_id)
    return show(visit, _page(visit, order, supplier))


def _page(visit: Visit, order: SupplyOrder, supplier: Supplier, *, stale: bool = False) -> OrderPage:
    lines = lines_of_order(visit.db, order.id)
    prices = tuple(_price(line) for line in lines) if visit.is_owner else ()
    jobs = jobs_of_orders(visit.db, [order.id]).get(order.id, ())
    return OrderPage(
        title=f"Order {order_number(order.number)}",
        order=order,
        supplier=supplier,
        jobs=jobs,
        deliveries=deliveries(visit.db, order_id=order.id),
        data=supply_order_data(
            SupplyOrderPaper.model_validate(order.content), for_shop=True, with_prices=visit.is_owner
        ),
        prices=prices,
        total_cents=sum(each.amount_cents or 0 for each in prices),
        unpriced=sum(each.amount_cents is None for each in prices),
        others=tuple(_others(visit, supplier, lines)) if visit.is_owner else (),
        changes=changes_since(visit, order, jobs, lines),
        form=Form(is_stale=stale),
        today=visit.today.isoformat(),
    )


def _price(line: OrderLine) -> PriceShown:
    return PriceShown(
        words=words_of(need_of(line)),
        quantity=much_words(line.quantity, need_of(line)),
        price_cents=line.price_cents,
        amount_cents=None if line.price_cents is None else amount_of(line.price_cents, line.quantity),
    )


def _others(visit: Visit, supplier: Supplier, lines: Sequence[OrderLine]) -> Iterator[OtherShown]:
    """What others would ask today for what was ordered, line by line where both prices are known."""
    quotes = quotes_in_force(visit.db)
    for other in suppliers(visit.db):
        if other.id == supplier.id or other.id not in quotes:
            continue
        held = tuple(quotes[other.id].values())
        both = [
            (line, quote)
            for line in lines
            if line.price_cents is not None and (quote := quoted_for(held, need_of(line))) is not None
        ]
        if both:
            days = sorted({quote.on.isoformat() for _, quote in both})
            yield OtherShown(
                name=other.name,
                lines=len(both),
                there_cents=sum(amount_of(quote.price, line.quantity) for line, quote in both),
                here_cents=sum(amount_of(line.price_cents or 0, line.quantity) for line, _ in both),
                quoted=days[0] if len(days) == 1 else f"{days[0]} to {days[-1]}",
            )


def amount_of(price: Cents, quantity: float) -> Cents:
    """What so many come to, rounded half up once [cent]."""
    return math.floor(price * quantity + 0.5)


@router.post("/stock/orders/{order_id}/state")
def save_order_state(visit: Office, order_id: str) -> Response:
    """Says that all of an order is here, that it is open after all, or that it was called off."""
    order, supplier = load_order(visit.db, order_id)
    read = Reader(visit.typed)
    state = OrderState(read.choice("state", [each.value for each in OrderState]))
    version = read.whole("version", least=1, most=10**8, default=order.version)
    try:
        move_order(visit.db, order, state, version, visit.who, visit.now)
    except Stale:
        return show(visit, _page(visit, order, supplier, stale=True), 409)
    return see(f"/stock/orders/{order.id}", "saved")


@router.get("/stock/orders/{order_id}/order.pdf")
def show_order_pdf(visit: Office, order_id: str, paper: str = "", copy: str = "") -> Response:
    """An order as PDF, for the supplier or the copy that stays."""
    order, _ = load_order(visit.db, order_id)
    said, sheet = SupplyOrderPaper.model_validate(order.content), paper_for(paper, visit.shop)
    name, ours = order_number(order.number), copy == OURS
    return pdf_answer(
        f"{name}-our-copy" if ours else name,
        lambda: supply_order_pdf(said, sheet, for_shop=ours, with_prices=visit.is_owner),
    )


@router.get("/stock/orders/{order_id}/order.csv")
def show_order_csv(visit: Office, order_id: str) -> Response:
    """An order as CSV, for a spreadsheet or the supplier's program."""
    order, _ = load_order(visit.db, order_id)
    body = supply_order_csv(SupplyOrderPaper.model_validate(order.content))
    return file_answer(f"{order_number(order.number)}.csv", body, "text/csv; charset=utf-8")
