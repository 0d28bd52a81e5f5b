"""Suppliers: the list, one of them with what was bought there, the form."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.pricing.prices import PriceKind
from casewright.records.stock import Supplier
from casewright.records.stock_lists import DeliveryRow, OrderRow, deliveries, list_orders, suppliers
from casewright.shop.keeping import once
from casewright.shop.refusals import Stale
from casewright.shop.suppliers import (
    FIELDS,
    SOLD,
    SupplierFacts,
    add_supplier,
    change_supplier,
    end_supplier,
    load_supplier,
    shown,
)
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office
from casewright.web.stock.tabs import OFFICE_TABS

router = APIRouter()
NAMES = {
    "name": "Name",
    "email": "E-mail",
    "lead_days": "Days from order to delivery",
    "kinds": "What they sell",
}
SELLS = {
    PriceKind.LUMBER: "lumber",
    PriceKind.SHEET: "sheets",
    PriceKind.HARDWARE: "hardware",
    PriceKind.FINISH: "finish",
    PriceKind.CONSUMABLE: "glue, abrasives and sundries",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SuppliersPage(Page):
    """The list of suppliers."""

    template: ClassVar[str] = "stock/suppliers.html"
    rows: Sequence[tuple[Supplier, str]]
    tabs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplierPage(Page):
    """One supplier, with its orders and deliveries."""

    template: ClassVar[str] = "stock/supplier.html"
    supplier: Supplier
    sells: str
    orders: Sequence[OrderRow]
    deliveries: Sequence[DeliveryRow]
    sees_prices: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplierFormPage(Page):
    """The form for a new supplier, or for a known one."""

    template: ClassVar[str] = "stock/supplier_form.html"
    form: Form
    action: str
    back: str
    sells: tuple[tuple[str, str], ...]
    names: dict[str, str]


@router.get("/stock/suppliers")
def show_suppliers(visit: Office) -> Response:
    """The suppliers, those of before among them."""
    rows = [(each, sells_words(each)) for each in suppliers(visit.db, ended=True)]
    return show(visit, SuppliersPage(title="Suppliers", rows=rows, tabs=OFFICE_TABS))


@router.get("/stock/suppliers/new")
def new_supplier(visit: Office) -> Response:
    """The form for a new supplier."""
    return show(visit, _form_page("New supplier", form_of(), "/stock/suppliers", "/stock/suppliers"))


@router.post("/stock/suppliers")
def save_new_supplier(visit: Office) -> Response:
    """Takes a new supplier down."""
    read = Reader(visit.typed)
    facts = read_supplier(read)
    if read.faults:
        page = _form_page("New supplier", read.form, "/stock/suppliers", "/stock/suppliers")
        return show(visit, page, 422)

    def make() -> str:
        return f"/stock/suppliers/{add_supplier(visit.db, facts, visit.who, visit.now).id}"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


@router.get("/stock/suppliers/{supplier_id}")
def show_supplier(visit: Office, supplier_id: str) -> Response:
    """One supplier."""
    held = load_supplier(visit.db, supplier_id)
    orders, _ = list_orders(visit.db, supplier_id=held.id)
    page = SupplierPage(
        title=held.name,
        supplier=held,
        sells=sells_words(held),
        orders=orders,
        deliveries=deliveries(visit.db, supplier_id=held.id),
        sees_prices=visit.is_owner,
    )
    return show(visit, page)


@router.get("/stock/suppliers/{supplier_id}/change")
def show_supplier_form(visit: Office, supplier_id: str) -> Response:
    """The form for a known supplier."""
    held = load_supplier(visit.db, supplier_id)
    values = {name: shown(getattr(held, name)) for name in FIELDS if name != "kinds"}
    values |= {f"kinds.{kind}": "1" for kind in held.kinds}
    return show(visit, _change_page(held, form_of(**values, version=str(held.version))))


@router.post("/stock/suppliers/{supplier_id}/change")
def save_supplier(visit: Office, supplier_id: str) -> Response:
    """Saves what was changed; of two who save at once the second sees both."""
    held = load_supplier(visit.db, supplier_id)
    read = Reader(visit.typed)
    facts = read_supplier(read)
    version = read.whole("version", least=1, most=10**8)
    if read.faults:
        return show(visit, _change_page(held, read.form), 422)
    try:
        change_supplier(visit.db, held, facts, version, visit.who, visit.now)
    except Stale as stale:
        values = {**read.form.values, "version": str(held.version)}
        return show(visit, _change_page(held, Form(values=values, theirs=stale.theirs, is_stale=True)), 409)
    return see(f"/stock/suppliers/{held.id}", "saved")


@router.post("/stock/suppliers/{supplier_id}/end")
def save_end(visit: Office, supplier_id: str) -> Response:
    """Ceases to buy there, or begins again."""
    held = load_supplier(visit.db, supplier_id)
    end_supplier(visit.db, held, visit.who, visit.now, back=visit.typed.get("back") == "1")
    return see(f"/stock/suppliers/{held.id}", "saved")


def read_supplier(read: Reader) -> SupplierFacts:
    """The supplier that a form describes."""
    days = read.typed.get("lead_days").strip()
    kinds = tuple(kind for kind in SOLD if read.ticked(f"kinds.{kind.value}"))
    name = read.line("name", most=120, needed="Write the supplier's name, such as Sawyer & Daughters.")
    if not kinds:
        read.fault("kinds.lumber", "Tick what they sell: orders offer them for it.")
    return SupplierFacts(
        name=name,
        kinds=kinds,
        email=read.email("email"),
        phone=read.line("phone", most=60),
        address=read.text("address", most=1000),
        account=read.line("account", most=60),
        lead_days=read.whole("lead_days", least=0, most=365) if days else None,
        note=read.text("note", most=5000),
    )


def sells_words(held: Supplier) -> str:
    """What a supplier sells, in words."""
    return ", ".join(SELLS[kind] for kind in SOLD if kind.value in held.kinds)


def _form_page(title: str, form: Form, action: str, back: str) -> SupplierFormPage:
    sells = tuple((kind.value, words) for kind, words in SELLS.items())
    return SupplierFormPage(title=title, form=form, action=action, back=back, sells=sells, names=NAMES)


def _change_page(held: Supplier, form: Form) -> SupplierFormPage:
    address = f"/stock/suppliers/{held.id}"
    return _form_page(f"Change {held.name}", form, f"{address}/change", address)
