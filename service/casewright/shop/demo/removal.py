"""What hangs on the demo, table by table, and taking it out again without touching anything else."""

from typing import Any

from sqlalchemy import ColumnElement, Select, delete, exists, or_, select, update

from casewright.records.base import Base
from casewright.records.jobs import Customer, Job, Unit
from casewright.records.sessions import REMOVAL, Fenced
from casewright.records.stock import (
    Delivery,
    OrderLine,
    StockEvent,
    StockPiece,
    Supplier,
    SupplierPrice,
    SupplyOrder,
)
from casewright.records.tables import METADATA


def remove_demo_rows(db: Fenced) -> dict[str, int]:
    """Takes out every row that hangs on a demo job, what was bought for it alone, then the demo's customers.

    A customer for whom the shop has a job of its own stays, and so does a supplier of whom it has bought
    something of its own; both are marked as the demo's no more.

    Returns:
        How many rows went, by table; tables without one are left out.
    """
    db.flush()
    gone: dict[str, int] = {}
    db.info[REMOVAL] = True
    try:
        for bought, condition in bought_for_the_demo():
            gone[bought.__tablename__] = _delete(db, bought, condition)
        for table in hanging():
            gone[table.__tablename__] = _delete(db, table, on_the_demo(table))
        gone["supply_order"] = _delete(db, SupplyOrder, SupplyOrder.demo.is_(True))
        db.execute(update(Supplier).where(Supplier.demo.is_(True), _is_dealt_with()).values(demo=False))
        of_demo = select(Supplier.id).where(Supplier.demo.is_(True))
        gone["supplier_price"] = _delete(db, SupplierPrice, SupplierPrice.supplier_id.in_(of_demo))
        gone["supplier"] = _delete(db, Supplier, Supplier.demo.is_(True))
        gone["job"] = _delete(db, Job, Job.demo.is_(True))
        db.execute(update(Customer).where(Customer.demo.is_(True), _has_job()).values(demo=False))
        gone["customer"] = _delete(db, Customer, Customer.demo.is_(True))
    finally:
        del db.info[REMOVAL]
    db.expire_all()
    return {name: count for name, count in gone.items() if count}


def hanging() -> list[Any]:
    """The tables whose rows belong to a job or to one of its units, those that hang deepest first."""
    classes = {each.local_table: each.class_ for each in Base.registry.mappers}
    tables = [table for table in reversed(METADATA.sorted_tables) if table.name not in {"job", "customer"}]
    return [classes[table] for table in tables if {"job_id", "unit_id"} & set(table.c.keys())]


def bought_for_the_demo() -> list[tuple[Any, ColumnElement[bool]]]:
    """What was ordered and received for demo jobs alone, what hangs deepest first; the orders go last."""
    pieces = select(StockPiece.id).where(StockPiece.demo.is_(True))
    orders = select(SupplyOrder.id).where(SupplyOrder.demo.is_(True))
    return [
        (StockEvent, StockEvent.piece_id.in_(pieces)),
        (StockPiece, StockPiece.demo.is_(True)),
        (OrderLine, OrderLine.order_id.in_(orders)),
        (Delivery, Delivery.demo.is_(True)),
    ]


def on_the_demo(table: Any) -> ColumnElement[bool]:
    """The condition that a row of such a table hangs on a demo job."""
    if hasattr(table, "job_id"):
        return table.job_id.in_(demo_jobs())  # type: ignore[no-any-return]
    return table.unit_id.in_(select(Unit.id).where(Unit.job_id.in_(demo_jobs())))  # type: ignore[no-any-return]


def demo_jobs() -> Select[str]:
    """The ids of the demo's jobs."""
    return select(Job.id).where(Job.demo.is_(True))


def _has_job() -> ColumnElement[bool]:
    return exists().where(Job.shop_id == Customer.shop_id, Job.customer_id == Customer.id)


def _is_dealt_with() -> ColumnElement[bool]:
    """The shop has an order or a delivery of its own with a supplier of the demo, who then is its own."""
    ordered = exists().where(SupplyOrder.shop_id == Supplier.shop_id, SupplyOrder.supplier_id == Supplier.id)
    came = exists().where(Delivery.shop_id == Supplier.shop_id, Delivery.supplier_id == Supplier.id)
    return or_(ordered, came)


def _delete(db: Fenced, table: Any, condition: ColumnElement[bool]) -> int:
    gone: Any = db.execute(delete(table).where(condition).execution_options(synchronize_session=False))
    return int(gone.rowcount)
