"""Customers: taking them down, and changing what is known of them."""

from dataclasses import dataclass
from datetime import datetime

from casewright.records.base import new_id
from casewright.records.jobs import Customer
from casewright.records.sessions import Fenced
from casewright.shop.keeping import change, note_history
from casewright.shop.refusals import NotFound


@dataclass(frozen=True, slots=True, kw_only=True)
class CustomerFacts:
    """What is known of a customer."""

    name: str
    email: str = ""
    phone: str = ""
    address: str = ""
    source: str = ""
    note: str = ""


FIELDS = ("name", "email", "phone", "address", "source", "note")


def load_customer(db: Fenced, customer_id: str) -> Customer:
    """A customer of the shop.

    Raises:
        NotFound: the shop has no such customer
    """
    found = db.get(Customer, (db.shop_id, customer_id))
    if found is None:
        raise NotFound("customer")
    return found


def add_customer(db: Fenced, facts: CustomerFacts, who: str, now: datetime) -> Customer:
    """Takes a new customer down."""
    made = Customer(id=new_id(), created_at=now, **facts_of(facts))
    db.add(made)
    note_history(db, who, now, f"Added the customer {facts.name}.")
    return made


def change_customer(
    db: Fenced, held: Customer, facts: CustomerFacts, version: int, who: str, now: datetime
) -> None:
    """Changes what is known of a customer.

    Raises:
        Stale: somebody else saved since the version that the form shows
    """
    what = f"the customer {facts.name}"
    change(db, held, facts_of(facts), version, what, who, now)


def facts_of(facts: CustomerFacts) -> dict[str, str]:
    """The facts by the names of their columns."""
    return {name: getattr(facts, name) for name in FIELDS}
