"""What a shop buys and has: suppliers, orders, deliveries, boards, sheets and offcuts; and its own yields."""

from datetime import date, datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import BigInteger, ForeignKeyConstraint, Index, String, Text, UniqueConstraint, false
from sqlalchemy.orm import Mapped, mapped_column

from casewright.records.base import ID_LENGTH, Base, Document, Edited, Item, Lasting, Owned, choice, owned_by
from casewright.records.papers import LARGE


class OrderState(StrEnum):
    """Where an order stands."""

    OPEN = "open"
    HERE = "here"
    CALLED_OFF = "called off"


class PieceKind(StrEnum):
    """What a piece of stock is."""

    BOARD = "board"
    SHEET = "sheet"
    OFFCUT = "offcut"


class PieceState(StrEnum):
    """Where a piece of stock stands: on the rack, kept for a job, cut up, sent back, or never there."""

    STOCK = "in stock"
    KEPT = "kept"
    USED = "used"
    SENT_BACK = "sent back"
    TAKEN_BACK = "taken back"


class Supplier(Item, Edited, Base):
    """Somebody who sells lumber, sheets, hardware or finish to the shop."""

    __tablename__ = "supplier"
    __table_args__ = (ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]), Index(None, "shop_id", "name"))
    name: Mapped[str] = mapped_column(String(120))
    kinds: Mapped[list[str]] = mapped_column(Document, default=list)
    """What is bought there, in the words of the price book: lumber, sheet, hardware, finish, consumable."""
    email: Mapped[str] = mapped_column(String(254), default="")
    phone: Mapped[str] = mapped_column(String(60), default="")
    address: Mapped[str] = mapped_column(Text, default="")
    account: Mapped[str] = mapped_column(String(60), default="")
    """The shop's number with them."""
    lead_days: Mapped[int | None]
    note: Mapped[str] = mapped_column(Text, default="")
    ended_at: Mapped[datetime | None]
    """When the shop stopped to buy there; what was bought stays."""
    created_at: Mapped[datetime]
    demo: Mapped[bool] = mapped_column(default=False, server_default=false())


class SupplierPrice(Item, Lasting, Base):
    """What a supplier quoted for a thing, or that it quotes it no more; the latest is the one that holds."""

    __tablename__ = "supplier_price"
    __table_args__ = (owned_by("supplier", "supplier_id"), Index(None, "shop_id", "supplier_id"))
    supplier_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    kind: Mapped[str] = mapped_column(String(20))
    """In the words of the price book: lumber, sheet, hardware, finish, consumable."""
    item: Mapped[str] = mapped_column(String(120))
    """The wood, or the thing."""
    cut: Mapped[str] = mapped_column(String(20), default="")
    """How a wood is sawn; empty for boards as they come."""
    size: Mapped[str] = mapped_column(String(40), default="")
    grade: Mapped[str] = mapped_column(String(30), default="")
    """The grade of a wood; empty for any."""
    price_cents: Mapped[int | None] = mapped_column(BigInteger)
    """For one of them; none from the day on which it is quoted no more."""
    quoted_on: Mapped[date]
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))


class SupplyOrder(Item, Edited, Base):
    """What was ordered of one supplier, for one job or several."""

    __tablename__ = "supply_order"
    __table_args__ = (
        owned_by("supplier", "supplier_id"),
        UniqueConstraint("shop_id", "number"),
        Index(None, "shop_id", "state", "number"),
        Index(None, "shop_id", "supplier_id"),
    )
    number: Mapped[int]
    supplier_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    state: Mapped[OrderState] = mapped_column(choice(OrderState), default=OrderState.OPEN)
    needed_by: Mapped[date | None]
    content: Mapped[dict[str, Any]] = mapped_column(Document, sort_order=LARGE)
    """The paper as it was issued; nothing computes it anew."""
    issued_at: Mapped[datetime]
    moved_at: Mapped[datetime]
    """When it came to its present state."""
    who: Mapped[str] = mapped_column(String(120))
    demo: Mapped[bool] = mapped_column(default=False)


class OrderLine(Item, Lasting, Base):
    """One line of an order, as it was issued."""

    __tablename__ = "order_line"
    __table_args__ = (owned_by("supply_order", "order_id"), Index(None, "shop_id", "order_id"))
    order_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    place: Mapped[int]
    kind: Mapped[str] = mapped_column(String(20))
    item: Mapped[str] = mapped_column(String(120))
    cut: Mapped[str] = mapped_column(String(20), default="")
    size: Mapped[str] = mapped_column(String(40), default="")
    grade: Mapped[str] = mapped_column(String(30), default="")
    quantity: Mapped[float]
    unit: Mapped[str] = mapped_column(String(20))
    price_cents: Mapped[int | None] = mapped_column(BigInteger)
    """The price of one of them that was known when it was ordered."""
    detail: Mapped[dict[str, Any]] = mapped_column(Document, default=dict)
    """How much of it each job takes, by the job's id; what it took of it before rounding, and of
    sheets the area of its parts."""


class OrderJob(Owned, Lasting, Base):
    """A job for which an order was written."""

    __tablename__ = "order_job"
    __table_args__ = (
        owned_by("supply_order", "order_id"),
        owned_by("job", "job_id"),
        Index(None, "shop_id", "job_id"),
    )
    order_id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)


class Delivery(Item, Edited, Base):
    """What came in at one time, tallied piece by piece, and what was billed for it."""

    __tablename__ = "delivery"
    __table_args__ = (
        owned_by("supplier", "supplier_id"),
        owned_by("supply_order", "order_id"),
        UniqueConstraint("shop_id", "number"),
        Index(None, "shop_id", "order_id"),
        Index(None, "shop_id", "supplier_id"),
    )
    number: Mapped[int]
    supplier_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    order_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    """None for what was bought without an order."""
    arrived_on: Mapped[date]
    bill: Mapped[dict[str, Any]] = mapped_column(Document, default=dict)
    """Feet or pieces and cents that were billed, by what they were billed for; and what the claim came to."""
    bill_number: Mapped[str] = mapped_column(String(60), default="")
    note: Mapped[str] = mapped_column(Text, default="")
    ended_at: Mapped[datetime | None]
    """When the tally was ended."""
    created_at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))
    demo: Mapped[bool] = mapped_column(default=False)


class StockPiece(Item, Edited, Base):
    """A board, a sheet or an offcut, with its label and what is known of it.

    Its state is the fold over its events, kept here so that the rack is quick. Lengths are whole ticks.
    """

    __tablename__ = "stock_piece"
    __table_args__ = (
        owned_by("delivery", "delivery_id"),
        owned_by("stock_piece", "from_id"),
        UniqueConstraint("shop_id", "kind", "number"),
        UniqueConstraint("shop_id", "tap"),
        Index(None, "shop_id", "state", "kind", "material"),
        Index(None, "shop_id", "delivery_id"),
        Index(None, "shop_id", "from_id"),
        Index(None, "shop_id", "for_job"),
    )
    kind: Mapped[PieceKind] = mapped_column(choice(PieceKind))
    number: Mapped[int]
    delivery_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    from_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    """The board or sheet that an offcut was cut from."""
    material: Mapped[str] = mapped_column(String(120))
    """The wood, or what a sheet is of."""
    is_sheet: Mapped[bool] = mapped_column(default=False)
    cut: Mapped[str] = mapped_column(String(20), default="")
    size: Mapped[str] = mapped_column(String(40))
    """The thickness class, or a sheet's nominal thickness."""
    grade: Mapped[str] = mapped_column(String(30), default="")
    thickness_ticks: Mapped[int | None]
    """As measured; none where nobody did."""
    width_ticks: Mapped[int]
    """In the middle."""
    left_width_ticks: Mapped[int | None]
    right_width_ticks: Mapped[int | None]
    """At the ends, where they differ from the middle."""
    length_ticks: Mapped[int]
    moisture: Mapped[float | None]
    """In percent of dry weight."""
    sap_edge: Mapped[str] = mapped_column(String(10), default="")
    defects: Mapped[list[dict[str, Any]]] = mapped_column(Document, default=list)
    """What no part may touch: face, from the left end, from the lower edge, length and width, in ticks."""
    log_mark: Mapped[str] = mapped_column(String(40), default="")
    place: Mapped[str] = mapped_column(String(80), default="")
    cost_cents: Mapped[int | None] = mapped_column(BigInteger)
    """What it cost, or what an offcut is worth."""
    state: Mapped[PieceState] = mapped_column(choice(PieceState), default=PieceState.STOCK)
    for_job: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    """The job that it is kept for or went into; no reference, for a demo job goes and the board stays."""
    tap: Mapped[str] = mapped_column(String(64))
    """The mark of the tap that made it: sent twice, it is one board."""
    note: Mapped[str] = mapped_column(String(300), default="")
    created_at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))
    demo: Mapped[bool] = mapped_column(default=False)


class StockEvent(Item, Lasting, Base):
    """What happened to a piece of stock: tallied, measured, moved, kept for a job, cut up, sent back."""

    __tablename__ = "stock_event"
    __table_args__ = (owned_by("stock_piece", "piece_id"), Index(None, "shop_id", "piece_id", "at"))
    piece_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    kind: Mapped[str] = mapped_column(String(20))
    data: Mapped[dict[str, Any]] = mapped_column(Document, default=dict)
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))


class WoodYield(Item, Lasting, Base):
    """What a job took of one wood and grade; the latest of a job, wood and grade is the one that counts."""

    __tablename__ = "wood_yield"
    __table_args__ = (owned_by("job", "job_id"), Index(None, "shop_id", "wood", "grade"))
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    wood: Mapped[str] = mapped_column(String(120))
    grade: Mapped[str] = mapped_column(String(30))
    net_bd_ft: Mapped[float]
    """Of its finished parts."""
    rough_bd_ft: Mapped[float]
    """Of its parts on rough size."""
    table_bd_ft: Mapped[float]
    """What the table of waste would have bought for them."""
    cut_bd_ft: Mapped[float]
    """What was cut up, offcuts that were kept left out."""
    cost_cents: Mapped[int | None] = mapped_column(BigInteger)
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))
