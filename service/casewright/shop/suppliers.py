"""Suppliers: taking one down, changing what is known of it, ceasing to buy there."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from casewright.pricing.prices import PriceKind
from casewright.records.base import new_id
from casewright.records.sessions import Fenced
from casewright.records.stock import Supplier
from casewright.shop.keeping import change, note_history
from casewright.shop.refusals import NotFound

SOLD = (PriceKind.LUMBER, PriceKind.SHEET, PriceKind.HARDWARE, PriceKind.FINISH, PriceKind.CONSUMABLE)
"""What a shop buys for its pieces."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplierFacts:
    """What is known of a supplier."""

    name: str
    kinds: tuple[PriceKind, ...] = ()
    email: str = ""
    phone: str = ""
    address: str = ""
    account: str = ""
    lead_days: int | None = None
    note: str = ""


FIELDS = ("name", "kinds", "email", "phone", "address", "account", "lead_days", "note")


def load_supplier(db: Fenced, supplier_id: str) -> Supplier:
    """A supplier of the shop.

    Raises:
        NotFound: the shop has no such supplier
    """
    found = db.get(Supplier, (db.shop_id, supplier_id))
    if found is None:
        raise NotFound("supplier")
    return found


def add_supplier(db: Fenced, facts: SupplierFacts, who: str, now: datetime) -> Supplier:
    """Takes a new supplier down."""
    made = Supplier(id=new_id(), created_at=now, **facts_of(facts))
    db.add(made)
    note_history(db, who, now, f"Added the supplier {facts.name}.")
    return made


def change_supplier(
    db: Fenced, held: Supplier, facts: SupplierFacts, version: int, who: str, now: datetime
) -> None:
    """Changes what is known of a supplier.

    Raises:
        Stale: somebody else saved since the version that the form shows
    """
    what = f"the supplier {facts.name}"
    change(db, held, facts_of(facts), version, what, who, now, shown=shown)


def end_supplier(db: Fenced, held: Supplier, who: str, now: datetime, *, back: bool = False) -> None:
    """Ceases to buy there, or begins again; what was bought stays."""
    held.ended_at = None if back else now
    did = "Buys again of" if back else "Ceased to buy of"
    note_history(db, who, now, f"{did} {held.name}.")


def facts_of(facts: SupplierFacts) -> dict[str, Any]:
    """The facts by the names of their columns."""
    found: dict[str, Any] = {name: getattr(facts, name) for name in FIELDS}
    return found | {"kinds": [kind.value for kind in facts.kinds]}


def shown(value: Any) -> str:
    """A fact as it stands in a form."""
    return ", ".join(value) if isinstance(value, list) else "" if value is None else str(value)
