"""Questions about suppliers, orders, deliveries and the rack."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from typing import Any, NamedTuple

from sqlalchemy import Select, and_, func, or_, select

from casewright.records.jobs import Job, JobState
from casewright.records.sessions import Fenced
from casewright.records.stock import (
    Delivery,
    OrderJob,
    OrderLine,
    OrderState,
    PieceKind,
    PieceState,
    StockEvent,
    StockPiece,
    Supplier,
    SupplyOrder,
    WoodYield,
)

A_PAGE = 50
ON_HAND = (PieceState.STOCK, PieceState.KEPT)
TO_ORDER_FOR = (JobState.QUOTED, JobState.ACCEPTED, JobState.IN_HAND)
"""Jobs for which wood may be bought."""


class JobRow(NamedTuple):
    """A job, as far as lists of orders name it."""

    id: str
    number: int
    name: str
    state: JobState
    demo: bool


class OrderRow(NamedTuple):
    """One line of the list of orders."""

    id: str
    number: int
    state: OrderState
    supplier_id: str
    supplier: str
    needed_by: date | None
    issued_at: datetime
    demo: bool


class DeliveryRow(NamedTuple):
    """One line of the list of deliveries."""

    id: str
    number: int
    supplier: str
    order: int | None
    arrived_on: date
    ended_at: datetime | None
    pieces: int


class PieceRow(NamedTuple):
    """A piece of stock with the number of the job that it is kept for or went into."""

    piece: StockPiece
    job: int | None


def suppliers(db: Fenced, *, ended: bool = False) -> Sequence[Supplier]:
    """The suppliers by name; those with whom the shop has done only where they are asked for."""
    asked = select(Supplier).order_by(func.lower(Supplier.name), Supplier.id)
    return db.scalars(asked if ended else asked.where(Supplier.ended_at.is_(None))).all()


def jobs_to_order_for(db: Fenced) -> Sequence[JobRow]:
    """The jobs for which wood may be bought, the oldest first."""
    asked = select(Job.id, Job.number, Job.name, Job.state, Job.demo)
    return [JobRow(*row) for row in db.execute(asked.where(Job.state.in_(TO_ORDER_FOR)).order_by(Job.number))]


def list_orders(
    db: Fenced, *, supplier_id: str = "", is_open: bool = False, page: int = 1
) -> tuple[Sequence[OrderRow], int]:
    """A page of orders, the latest first, and how many there are."""
    asked: Select[Any] = select(SupplyOrder)
    if supplier_id:
        asked = asked.where(SupplyOrder.supplier_id == supplier_id)
    if is_open:
        asked = asked.where(SupplyOrder.state == OrderState.OPEN)
    total = db.execute(asked.with_only_columns(func.count(SupplyOrder.id))).scalar_one()
    rows = db.execute(
        asked.join(
            Supplier,
            (Supplier.shop_id == SupplyOrder.shop_id) & (Supplier.id == SupplyOrder.supplier_id),
        )
        .with_only_columns(
            SupplyOrder.id,
            SupplyOrder.number,
            SupplyOrder.state,
            Supplier.id,
            Supplier.name,
            SupplyOrder.needed_by,
            SupplyOrder.issued_at,
            SupplyOrder.demo,
        )
        .order_by(SupplyOrder.number.desc())
        .limit(A_PAGE)
        .offset((page - 1) * A_PAGE)
    )
    return [OrderRow._make(row) for row in rows], total


def jobs_of_orders(db: Fenced, order_ids: Iterable[str]) -> Mapping[str, list[JobRow]]:
    """The jobs of some orders, by the order's id; one query."""
    found: dict[str, list[JobRow]] = {}
    rows = db.execute(
        select(OrderJob.order_id, Job.id, Job.number, Job.name, Job.state, Job.demo)
        .join(Job, (Job.shop_id == OrderJob.shop_id) & (Job.id == OrderJob.job_id))
        .where(OrderJob.order_id.in_(list(order_ids)))
        .order_by(Job.number)
    )
    for row in rows:
        found.setdefault(row[0], []).append(JobRow(*row[1:]))
    return found


def order_with_supplier(db: Fenced, order_id: str) -> tuple[SupplyOrder, Supplier] | None:
    """An order and whom it went to; one query."""
    found = db.execute(
        select(SupplyOrder, Supplier)
        .join(
            Supplier,
            (Supplier.shop_id == SupplyOrder.shop_id) & (Supplier.id == SupplyOrder.supplier_id),
        )
        .where(SupplyOrder.id == order_id)
    ).first()
    return (found[0], found[1]) if found else None


def lines_of_order(db: Fenced, order_id: str) -> Sequence[OrderLine]:
    """The lines of an order, as they were issued."""
    return db.scalars(select(OrderLine).where(OrderLine.order_id == order_id).order_by(OrderLine.place)).all()


def ordered_for(db: Fenced, job_ids: Iterable[str]) -> Sequence[tuple[OrderLine, int, datetime]]:
    """The lines that were ordered for some jobs and not called off, with number and moment of issue."""
    of_jobs = select(OrderJob.order_id).where(OrderJob.job_id.in_(list(job_ids)))
    rows = db.execute(
        select(OrderLine, SupplyOrder.number, SupplyOrder.issued_at)
        .join(
            SupplyOrder,
            (SupplyOrder.shop_id == OrderLine.shop_id) & (SupplyOrder.id == OrderLine.order_id),
        )
        .where(OrderLine.order_id.in_(of_jobs), SupplyOrder.state != OrderState.CALLED_OFF)
        .order_by(SupplyOrder.number, OrderLine.place)
    )
    return [(row[0], row[1], row[2]) for row in rows]


def deliveries(db: Fenced, *, order_id: str = "", supplier_id: str = "") -> Sequence[DeliveryRow]:
    """The latest deliveries, with how many pieces were tallied in each."""
    pieces = (
        select(func.count(StockPiece.id))
        .where(
            StockPiece.shop_id == Delivery.shop_id,
            StockPiece.delivery_id == Delivery.id,
            StockPiece.state != PieceState.TAKEN_BACK,
        )
        .scalar_subquery()
    )
    asked = (
        select(
            Delivery.id,
            Delivery.number,
            Supplier.name,
            SupplyOrder.number,
            Delivery.arrived_on,
            Delivery.ended_at,
            pieces,
        )
        .join(Supplier, (Supplier.shop_id == Delivery.shop_id) & (Supplier.id == Delivery.supplier_id))
        .outerjoin(
            SupplyOrder, (SupplyOrder.shop_id == Delivery.shop_id) & (SupplyOrder.id == Delivery.order_id)
        )
        .order_by(Delivery.number.desc())
        .limit(A_PAGE)
    )
    if order_id:
        asked = asked.where(Delivery.order_id == order_id)
    if supplier_id:
        asked = asked.where(Delivery.supplier_id == supplier_id)
    return [DeliveryRow(*row) for row in db.execute(asked)]


def delivery_with_supplier(
    db: Fenced, delivery_id: str
) -> tuple[Delivery, Supplier, SupplyOrder | None] | None:
    """A delivery, who sent it, and the order that it is for; one query."""
    found = db.execute(
        select(Delivery, Supplier, SupplyOrder)
        .join(Supplier, (Supplier.shop_id == Delivery.shop_id) & (Supplier.id == Delivery.supplier_id))
        .outerjoin(
            SupplyOrder, (SupplyOrder.shop_id == Delivery.shop_id) & (SupplyOrder.id == Delivery.order_id)
        )
        .where(Delivery.id == delivery_id)
    ).first()
    return (found[0], found[1], found[2]) if found else None


def pieces_of_delivery(db: Fenced, delivery_id: str) -> Sequence[StockPiece]:
    """What was tallied in a delivery and not taken back, in the order of the tally."""
    return db.scalars(
        select(StockPiece)
        .where(StockPiece.delivery_id == delivery_id, StockPiece.state != PieceState.TAKEN_BACK)
        .where(StockPiece.from_id.is_(None))
        .order_by(StockPiece.id)
    ).all()


def rack(
    db: Fenced,
    *,
    kind: PieceKind | None = None,
    material: str = "",
    job: str = "",
    page: int = 1,
    most: int = A_PAGE,
) -> tuple[Sequence[PieceRow], int]:
    """What is on the rack, offcuts with the boards of their wood, and how many there are."""
    asked: Select[Any] = select(StockPiece).where(StockPiece.state.in_(ON_HAND))
    if kind:
        asked = asked.where(StockPiece.kind == kind)
    if material:
        asked = asked.where(StockPiece.material == material)
    if job:
        asked = asked.where(StockPiece.for_job == job)
    total = db.execute(asked.with_only_columns(func.count(StockPiece.id))).scalar_one()
    rows = db.execute(
        _with_job(asked)
        .order_by(
            StockPiece.is_sheet, StockPiece.material, StockPiece.size, StockPiece.kind, StockPiece.number
        )
        .limit(most)
        .offset((page - 1) * most)
    )
    return [PieceRow(row[0], row[1]) for row in rows], total


def materials_on_hand(db: Fenced) -> Sequence[str]:
    """The woods and sheets of which something is on the rack."""
    asked = select(StockPiece.material).where(StockPiece.state.in_(ON_HAND)).distinct()
    return list(db.scalars(asked.order_by(StockPiece.material)))


def free_on_hand(
    db: Fenced, materials: Iterable[str], job_ids: Iterable[str], *, is_sheet: bool
) -> Sequence[StockPiece]:
    """The boards, sheets and offcuts of some materials that are kept for nobody, or for one of these jobs.

    Boards that came for an order are its jobs' as long as one of them is under way; offcuts are free.
    """
    of_jobs = (
        select(Delivery.id)
        .join(OrderJob, (OrderJob.shop_id == Delivery.shop_id) & (OrderJob.order_id == Delivery.order_id))
        .join(Job, (Job.shop_id == OrderJob.shop_id) & (Job.id == OrderJob.job_id))
        .where(Job.state.in_(TO_ORDER_FOR))
    )
    free = or_(
        StockPiece.kind == PieceKind.OFFCUT,
        StockPiece.delivery_id.is_(None),
        StockPiece.delivery_id.not_in(of_jobs),
    )
    return db.scalars(
        select(StockPiece)
        .where(
            or_(
                StockPiece.state == PieceState.STOCK,
                and_(StockPiece.state == PieceState.KEPT, StockPiece.for_job.in_(list(job_ids))),
            )
        )
        .where(StockPiece.is_sheet.is_(is_sheet), free)
        .where(StockPiece.material.in_(list(materials)))
        .order_by(StockPiece.id)
    ).all()


def piece_with_job(db: Fenced, piece_id: str) -> PieceRow | None:
    """A piece of stock; one query."""
    found = db.execute(_with_job(select(StockPiece).where(StockPiece.id == piece_id))).first()
    return PieceRow(found[0], found[1]) if found else None


def pieces_by_id(db: Fenced, ids: Iterable[str]) -> Sequence[StockPiece]:
    """Some pieces of stock, in the order of their making."""
    return db.scalars(select(StockPiece).where(StockPiece.id.in_(list(ids))).order_by(StockPiece.id)).all()


def offcuts_of(db: Fenced, piece_id: str) -> Sequence[StockPiece]:
    """What was labelled of a board when it was cut up."""
    return db.scalars(
        select(StockPiece)
        .where(StockPiece.from_id == piece_id, StockPiece.state != PieceState.TAKEN_BACK)
        .order_by(StockPiece.number)
    ).all()


def events_of_piece(db: Fenced, piece_id: str) -> Sequence[StockEvent]:
    """What happened to a piece, the latest first."""
    return db.scalars(
        select(StockEvent).where(StockEvent.piece_id == piece_id).order_by(StockEvent.id.desc())
    ).all()


def pieces_of_job(db: Fenced, job_id: str) -> Sequence[StockPiece]:
    """What went into a job."""
    return db.scalars(
        select(StockPiece).where(StockPiece.for_job == job_id, StockPiece.state == PieceState.USED)
    ).all()


def offcuts_of_all(db: Fenced, piece_ids: Iterable[str]) -> Sequence[StockPiece]:
    """What was labelled of some boards."""
    return db.scalars(
        select(StockPiece).where(
            StockPiece.from_id.in_(list(piece_ids)), StockPiece.state != PieceState.TAKEN_BACK
        )
    ).all()


def jobs_with_cut_wood(db: Fenced) -> Sequence[JobRow]:
    """The jobs for which boards were cut up, the latest first."""
    cut = select(StockPiece.for_job).where(
        StockPiece.state == PieceState.USED, StockPiece.is_sheet.is_(False)
    )
    asked = select(Job.id, Job.number, Job.name, Job.state, Job.demo).where(Job.id.in_(cut))
    return [JobRow(*row) for row in db.execute(asked.order_by(Job.number.desc()).limit(A_PAGE))]


def pieces_of_deliveries(db: Fenced, delivery_ids: Iterable[str]) -> Sequence[StockPiece]:
    """What was tallied in some deliveries and not taken back, in the order of the tally."""
    return db.scalars(
        select(StockPiece)
        .where(StockPiece.delivery_id.in_(list(delivery_ids)), StockPiece.from_id.is_(None))
        .where(StockPiece.state != PieceState.TAKEN_BACK)
        .order_by(StockPiece.id)
    ).all()


def yields(db: Fenced) -> Sequence[tuple[WoodYield, Job]]:
    """What jobs took, by wood and grade; of a job that was noted twice the latest."""
    rows = db.execute(
        select(WoodYield, Job)
        .join(Job, (Job.shop_id == WoodYield.shop_id) & (Job.id == WoodYield.job_id))
        .order_by(WoodYield.id)
    )
    latest = {(row[0].job_id, row[0].wood, row[0].grade): (row[0], row[1]) for row in rows}
    return sorted(latest.values(), key=lambda each: (each[0].wood, each[0].grade, each[1].number))


def _with_job(asked: Select[Any]) -> Select[Any]:
    return asked.outerjoin(
        Job, (Job.shop_id == StockPiece.shop_id) & (Job.id == StockPiece.for_job)
    ).add_columns(Job.number)


class SupplierFigure(NamedTuple):
    """What a supplier billed and what was tallied of it."""

    supplier_id: str
    bill: Mapping[str, Any]
    delivery_id: str


def bills(db: Fenced) -> Sequence[SupplierFigure]:
    """The bills of all deliveries whose tally was ended."""
    rows = db.execute(
        select(Delivery.supplier_id, Delivery.bill, Delivery.id).where(Delivery.ended_at.is_not(None))
    )
    return [SupplierFigure(*row) for row in rows]
