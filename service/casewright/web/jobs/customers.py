"""Pages about customers."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.records.customers import A_PAGE, CustomerRow, jobs_of, list_customers
from casewright.records.jobs import Customer, Job
from casewright.shop.customers import FIELDS, CustomerFacts, add_customer, change_customer, load_customer
from casewright.shop.keeping import once
from casewright.shop.refusals import Stale
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class CustomersPage(Page):
    """The list of customers."""

    template: ClassVar[str] = "customers/list.html"
    rows: Sequence[CustomerRow]
    total: int
    words: str
    number: int
    pages: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CustomerPage(Page):
    """One customer."""

    template: ClassVar[str] = "customers/one.html"
    customer: Customer
    jobs: Sequence[Job]


@dataclass(frozen=True, slots=True, kw_only=True)
class CustomerFormPage(Page):
    """The form for a new customer, or for a known one."""

    template: ClassVar[str] = "customers/form.html"
    form: Form
    action: str
    back: str


@router.get("/customers")
def show_customers(visit: Office, q: str = "", page: int = 1) -> Response:
    """The list of customers."""
    words, number = " ".join(q.split())[:100], min(max(page, 1), 10_000)
    rows, total = list_customers(visit.db, words, number)
    pages = max(1, -(-total // A_PAGE))
    return show(
        visit,
        CustomersPage(title="Customers", rows=rows, total=total, words=words, number=number, pages=pages),
    )


@router.get("/customers/new")
def new_customer(visit: Office) -> Response:
    """The form for a new customer."""
    return show(visit, _form_page("New customer", form_of(), "/customers", "/customers"))


@router.post("/customers")
def save_new_customer(visit: Office) -> Response:
    """Takes a new customer down."""
    read = Reader(visit.typed)
    facts = read_customer(read)
    if read.faults:
        return show(visit, _form_page("New customer", read.form, "/customers", "/customers"), 422)

    def make() -> str:
        return f"/customers/{add_customer(visit.db, facts, visit.who, visit.now).id}"

    return see(once(visit.db, visit.typed.once, visit.now, make))


@router.get("/customers/{customer_id}")
def show_customer(visit: Office, customer_id: str) -> Response:
    """One customer with their jobs."""
    held = load_customer(visit.db, customer_id)
    return show(visit, CustomerPage(title=held.name, customer=held, jobs=jobs_of(visit.db, held.id)))


@router.get("/customers/{customer_id}/change")
def show_customer_form(visit: Office, customer_id: str) -> Response:
    """The form for a known customer."""
    held = load_customer(visit.db, customer_id)
    values = {name: getattr(held, name) for name in FIELDS}
    return show(visit, _change_page(held, form_of(**values, version=str(held.version))))


@router.post("/customers/{customer_id}/change")
def save_customer(visit: Office, customer_id: str) -> Response:
    """Saves what was changed; of two who save at once the second sees both."""
    held = load_customer(visit.db, customer_id)
    read = Reader(visit.typed)
    facts = read_customer(read)
    version = read.whole("version", least=1, most=10**8)
    if read.faults:
        return show(visit, _change_page(held, read.form), 422)
    try:
        change_customer(visit.db, held, facts, version, visit.who, visit.now)
    except Stale as stale:
        values = {**read.form.values, "version": str(held.version)}
        return show(visit, _change_page(held, Form(values=values, theirs=stale.theirs, is_stale=True)), 409)
    return see(f"/customers/{held.id}", "saved")


def read_customer(read: Reader) -> CustomerFacts:
    """The customer that a form describes."""
    return CustomerFacts(
        name=read.line("name", needed="Write the customer's name, such as Ada Marsh."),
        email=read.email("email"),
        phone=read.line("phone", most=60),
        address=read.text("address", most=1000),
        source=read.line("source"),
        note=read.text("note", most=5000),
    )


def _form_page(title: str, form: Form, action: str, back: str) -> CustomerFormPage:
    return CustomerFormPage(title=title, form=form, action=action, back=back)


def _change_page(held: Customer, form: Form) -> CustomerFormPage:
    address = f"/customers/{held.id}"
    return _form_page(f"Change {held.name}", form, f"{address}/change", address)
