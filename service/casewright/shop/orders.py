"""Orders: issuing one for some jobs, calling it off, saying that all of it is here."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any

from casewright.pricing.prices import PriceKind
from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.sessions import Fenced
from casewright.records.stock import OrderJob, OrderLine, OrderState, Supplier, SupplyOrder
from casewright.records.stock_lists import deliveries, order_with_supplier
from casewright.shop.jobs import refuse_if_over
from casewright.shop.keeping import next_number, note_history
from casewright.shop.refusals import NotFound, Refused, Stale

COUNTER = "supply order"


@dataclass(frozen=True, slots=True, kw_only=True)
class LineFacts:
    """One line of an order.

    Attributes:
        kind: what sort of thing it is
        item: the wood, or the thing
        cut: how a wood is sawn
        size: thickness class or nominal thickness
        grade: the grade of a wood
        quantity: how much of it, in its unit
        unit: what one of it is
        price_cents: what one of it costs, if that is known [cent]
        shares: how much of it each job takes, by the job's id
        areas: of sheets, the area of each job's parts, by the job's id [sq in]
        needs: how much each job took of it when it was ordered, before rounding and what the rack gave
    """

    kind: PriceKind
    item: str
    cut: str = ""
    size: str = ""
    grade: str = ""
    quantity: float
    unit: str
    price_cents: int | None = None
    shares: Mapping[str, float] = field(default_factory=dict)
    areas: Mapping[str, float] = field(default_factory=dict)
    needs: Mapping[str, float] = field(default_factory=dict)


def order_number(number: int) -> str:
    """The number of an order as people write it, such as P-0003."""
    return f"P-{number:04d}"


def issue_order(
    db: Fenced,
    supplier: Supplier,
    jobs: Sequence[Job],
    lines: Sequence[LineFacts],
    write: Callable[[str], Mapping[str, Any]],
    needed_by: date | None,
    who: str,
    now: datetime,
) -> SupplyOrder:
    """Issues an order to one supplier, under the shop's next number; it stays as it was issued.

    Args:
        db: the session
        supplier: whom it goes to
        jobs: the jobs that it is for
        lines: what is ordered
        write: makes the paper, from the order's number
        needed_by: the day on which it must be here
        who: who issues it
        now: the moment

    Raises:
        Refused: nothing is ordered, or a job is over
    """
    if not lines or not jobs:
        raise Refused("An order names a job and at least one thing to buy.", 422)
    for job in jobs:
        refuse_if_over(job, "order for it")
    number = next_number(db, COUNTER)
    made = SupplyOrder(
        id=new_id(),
        number=number,
        supplier_id=supplier.id,
        state=OrderState.OPEN,
        needed_by=needed_by,
        content=dict(write(order_number(number))),
        issued_at=now,
        moved_at=now,
        who=who,
        demo=all(job.demo for job in jobs),
    )
    db.add(made)
    db.flush()
    for place, line in enumerate(lines):
        db.add(_line(made.id, place, line))
    for job in jobs:
        db.add(OrderJob(order_id=made.id, job_id=job.id))
        note_history(db, who, now, f"Issued order {order_number(number)} to {supplier.name}.", job_id=job.id)
    return made


def _line(order_id: str, place: int, line: LineFacts) -> OrderLine:
    return OrderLine(
        id=new_id(),
        order_id=order_id,
        place=place,
        kind=line.kind.value,
        item=line.item,
        cut=line.cut,
        size=line.size,
        grade=line.grade,
        quantity=line.quantity,
        unit=line.unit,
        price_cents=line.price_cents,
        detail={"shares": dict(line.shares)}
        | ({"areas": dict(line.areas)} if line.areas else {})
        | ({"needs": dict(line.needs)} if line.needs else {}),
    )


def load_order(db: Fenced, order_id: str) -> tuple[SupplyOrder, Supplier]:
    """An order of the shop, and whom it went to; one query.

    Raises:
        NotFound: the shop has no such order
    """
    found = order_with_supplier(db, order_id)
    if found is None:
        raise NotFound("order")
    return found


def move_order(
    db: Fenced, order: SupplyOrder, state: OrderState, version: int, who: str, now: datetime
) -> None:
    """Says of an order that all of it is here, that it is open after all, or that it was called off.

    Raises:
        Stale: somebody else moved it since
        Refused: something of it has come, so that it cannot be called off
    """
    if order.state is state:
        return
    if order.version != version:
        raise Stale({})
    if state is OrderState.CALLED_OFF and deliveries(db, order_id=order.id):
        raise Refused("Something of this order has come, so it cannot be called off; say that it is here.")
    order.state, order.moved_at = state, now
    said = {
        OrderState.OPEN: "is open again",
        OrderState.HERE: "is here",
        OrderState.CALLED_OFF: "was called off",
    }
    note_history(db, who, now, f"Order {order_number(order.number)} {said[state]}.")
