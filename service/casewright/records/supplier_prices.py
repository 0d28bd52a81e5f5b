"""Questions about what suppliers quoted."""

from collections.abc import Sequence

from sqlalchemy import select

from casewright.records.sessions import Fenced
from casewright.records.stock import Supplier, SupplierPrice


def prices_of_suppliers(db: Fenced, supplier_id: str = "") -> Sequence[SupplierPrice]:
    """What suppliers quoted with whom the shop still buys, the earliest first, one supplier's or all."""
    asked = select(SupplierPrice).order_by(SupplierPrice.quoted_on, SupplierPrice.id)
    if supplier_id:
        asked = asked.where(SupplierPrice.supplier_id == supplier_id)
    else:
        buys = select(Supplier.id).where(Supplier.ended_at.is_(None))
        asked = asked.where(SupplierPrice.supplier_id.in_(buys))
    return db.scalars(asked).all()
