"""Quotes and other papers that have been issued: frozen with everything they were made from."""

from datetime import date, datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import BigInteger, Index, String, Text, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from casewright.records.base import ID_LENGTH, Base, Document, Edited, Item, Lasting, choice, owned_by

LARGE = 95
"""Large columns stand last in their table: SQLite reads through all of them to what stands behind."""


class QuoteState(StrEnum):
    """Where a quote stands; it moves only along the arrows of `shop.quotes.ARROWS`."""

    DRAFT = "draft"
    SENT = "sent"
    ACCEPTED = "accepted"
    DECLINED = "declined"
    EXPIRED = "expired"
    SUPERSEDED = "superseded"


class PaperKind(StrEnum):
    """The papers that are issued beside quotes."""

    LUMBER_ORDER = "lumber order"
    CUT_LIST = "cut list"
    JOINT_CARDS = "joint cards"
    CAUTION_SHEET = "caution sheet"


class Quote(Item, Edited, Base):
    """One revision of a quote. From the moment it is sent, offer and basis never change."""

    __tablename__ = "quote"
    __table_args__ = (
        owned_by("job", "job_id"),
        UniqueConstraint("shop_id", "number", "revision"),
        Index(None, "shop_id", "job_id"),
        Index(None, "shop_id", "link_hash"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    number: Mapped[int]
    revision: Mapped[int]
    state: Mapped[QuoteState] = mapped_column(choice(QuoteState), default=QuoteState.DRAFT)
    offer: Mapped[dict[str, Any] | None] = mapped_column(sort_order=LARGE)
    """What the customer reads; nothing while it is a draft, which is worked out anew each time."""
    basis: Mapped[dict[str, Any] | None] = mapped_column(sort_order=LARGE)
    """The units, figures and prices it was made from."""
    total_cents: Mapped[int | None] = mapped_column(BigInteger)
    note: Mapped[str] = mapped_column(Text, default="")
    """A few words to the customer above the price."""
    choices: Mapped[dict[str, Any]] = mapped_column(Document, default=dict)
    """What the draft says beside what is worked out: days, date, which options are left out."""
    link_serial: Mapped[int] = mapped_column(default=1)
    link_hash: Mapped[str | None] = mapped_column(String(64))
    link_ended_at: Mapped[datetime | None]
    """When the shop ended the link; who opens it then is told so."""
    issued_at: Mapped[datetime | None]
    valid_until: Mapped[date | None]
    opened_at: Mapped[datetime | None]
    answered_at: Mapped[datetime | None]
    answered_name: Mapped[str] = mapped_column(String(120), default="")
    answered_way: Mapped[str] = mapped_column(String(200), default="")
    """How the answer came: by the link, or spoken or signed and taken down by somebody."""
    answer_note: Mapped[str] = mapped_column(Text, default="")
    created_at: Mapped[datetime]


class Paper(Item, Lasting, Base):
    """A lumber order, cut list, set of joint cards or caution sheet as it was issued."""

    __tablename__ = "paper"
    __table_args__ = (
        owned_by("job", "job_id"),
        Index(None, "shop_id", "job_id"),
        UniqueConstraint("shop_id", "kind", "number", "revision"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    kind: Mapped[PaperKind] = mapped_column(choice(PaperKind))
    number: Mapped[int]
    revision: Mapped[int]
    content: Mapped[dict[str, Any]] = mapped_column(sort_order=LARGE)
    basis_hash: Mapped[str] = mapped_column(String(64))
    """Of what it was made from: another hash today means that it is out of date."""
    issued_at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))
    says: Mapped[dict[str, Any] | None] = mapped_column(sort_order=LARGE)
    """What it says of each part, and in all, as hashes; another one today means that it is wrong now.

    Papers from before have none; it is worked out of their content.
    """


class ChangeOrder(Item, Edited, Base):
    """A change of a unit after its approval, with its price; what it says never changes."""

    __tablename__ = "change_order"
    __table_args__ = (
        owned_by("job", "job_id"),
        owned_by("unit", "unit_id"),
        UniqueConstraint("shop_id", "number"),
        Index(None, "shop_id", "job_id"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    unit_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    number: Mapped[int]
    before: Mapped[int]
    """The revision of the unit that was agreed."""
    after: Mapped[int]
    """The revision that the change makes of it."""
    net_cents: Mapped[int] = mapped_column(BigInteger)
    """Before tax; below zero where the change costs less."""
    total_cents: Mapped[int] = mapped_column(BigInteger)
    created_at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))
    agreed_at: Mapped[datetime | None]
    agreed_name: Mapped[str] = mapped_column(String(120), default="")
    agreed_way: Mapped[str] = mapped_column(String(200), default="")
    withdrawn_at: Mapped[datetime | None]
    content: Mapped[dict[str, Any]] = mapped_column(sort_order=LARGE)
    """Words, lines with their working, tax, hours and weeks, as it was made."""
