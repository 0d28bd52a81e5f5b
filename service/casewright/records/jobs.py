"""Customers, jobs and their units, and what was written about them."""

from datetime import date, datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import BigInteger, ForeignKeyConstraint, Index, String, Text, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from casewright.records.base import ID_LENGTH, Base, Document, Edited, Item, Lasting, Owned, choice, owned_by


class JobState(StrEnum):
    """Where a job stands."""

    ENQUIRY = "enquiry"
    QUOTED = "quoted"
    ACCEPTED = "accepted"
    IN_HAND = "in hand"
    READY = "ready"
    DELIVERED = "delivered"
    CLOSED = "closed"
    LOST = "lost"


class Customer(Item, Edited, Base):
    """Somebody who asks for a piece."""

    __tablename__ = "customer"
    __table_args__ = (ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]), Index(None, "shop_id", "name"))
    name: Mapped[str] = mapped_column(String(200))
    email: Mapped[str] = mapped_column(String(254), default="")
    phone: Mapped[str] = mapped_column(String(60), default="")
    address: Mapped[str] = mapped_column(Text, default="")
    source: Mapped[str] = mapped_column(String(200), default="")
    note: Mapped[str] = mapped_column(Text, default="")
    demo: Mapped[bool] = mapped_column(default=False)
    created_at: Mapped[datetime]


class Job(Item, Edited, Base):
    """A commission, from enquiry to last payment."""

    __tablename__ = "job"
    __table_args__ = (
        owned_by("customer", "customer_id"),
        UniqueConstraint("shop_id", "number"),
        Index(None, "shop_id", "state", "number"),
        Index(None, "shop_id", "customer_id"),
    )
    number: Mapped[int]
    name: Mapped[str] = mapped_column(String(200))
    customer_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    state: Mapped[JobState] = mapped_column(choice(JobState), default=JobState.ENQUIRY)
    asked: Mapped[str] = mapped_column(Text, default="")
    """What was asked for, in the customer's words."""
    due_on: Mapped[date | None]
    note: Mapped[str] = mapped_column(Text, default="")
    own: Mapped[dict[str, Any]] = mapped_column(Document, default=dict)
    """Figures of this job alone, by their names in the shop's figures: miles, extras, outwork, risk."""
    demo: Mapped[bool] = mapped_column(default=False)
    created_at: Mapped[datetime]
    moved_at: Mapped[datetime]
    """When it came to its present state."""


class Unit(Item, Edited, Base):
    """One design of a job: a case piece with drawers, made once or several times."""

    __tablename__ = "unit"
    __table_args__ = (owned_by("job", "job_id"), UniqueConstraint("shop_id", "job_id", "code"))
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    code: Mapped[str] = mapped_column(String(6))
    name: Mapped[str] = mapped_column(String(120))
    count: Mapped[int]
    revision: Mapped[int]
    """The revision that holds now."""
    approved: Mapped[int | None]
    """The revision that the customer's acceptance or the maker locked."""
    ended_at: Mapped[datetime | None]
    """When it was taken out of the job; what was done to it is kept."""
    created_at: Mapped[datetime]


class UnitRevision(Owned, Lasting, Base):
    """What the maker chose, as it was saved once; kept for good."""

    __tablename__ = "unit_revision"
    __table_args__ = (owned_by("unit", "unit_id"),)
    unit_id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    spec: Mapped[dict[str, Any]]
    origins: Mapped[dict[str, Any]] = mapped_column(server_default="{}")
    """The origin of every opening whose code is another by now, by its code; of all others it is the code."""
    note: Mapped[str] = mapped_column(String(300), default="")
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))


class UnitOption(Item, Base):
    """Another way to make a unit, offered beside it with its difference in price."""

    __tablename__ = "unit_option"
    __table_args__ = (owned_by("unit", "unit_id"), Index(None, "shop_id", "unit_id"))
    unit_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    label: Mapped[str] = mapped_column(String(120))
    changes: Mapped[dict[str, Any]]
    """What is different in the unit file, so that the option follows the unit through its revisions."""
    created_at: Mapped[datetime]


class OwnStart(Item, Edited, Base):
    """A starting unit of the shop's own, offered beside those of the house."""

    __tablename__ = "own_start"
    __table_args__ = (ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]),)
    name: Mapped[str] = mapped_column(String(120))
    words: Mapped[str] = mapped_column(String(300), default="")
    spec: Mapped[dict[str, Any]]
    who: Mapped[str] = mapped_column(String(120))
    created_at: Mapped[datetime]


class Payment(Item, Lasting, Base):
    """Money that came in, or a correction of one by its negative."""

    __tablename__ = "payment"
    __table_args__ = (
        owned_by("job", "job_id"),
        Index(None, "shop_id", "job_id"),
        UniqueConstraint("shop_id", "corrects_id"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    amount_cents: Mapped[int] = mapped_column(BigInteger)
    received_on: Mapped[date]
    method: Mapped[str] = mapped_column(String(60), default="")
    note: Mapped[str] = mapped_column(String(300), default="")
    corrects_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))


class History(Item, Lasting, Base):
    """One sentence of a shop's or a job's history, with what was before and after."""

    __tablename__ = "history"
    __table_args__ = (
        ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]),
        owned_by("job", "job_id"),
        Index(None, "shop_id", "job_id", "at"),
    )
    job_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    what: Mapped[str] = mapped_column(Text)
    before: Mapped[dict[str, Any] | None]
    after: Mapped[dict[str, Any] | None]
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))
