"""The shop, its people, and how they come in."""

from datetime import datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import ForeignKeyConstraint, Index, String, Text, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from casewright.records.base import ID_LENGTH, Base, Edited, Item, Lasting, Owned, choice, new_id, owned_by


class Role(StrEnum):
    """What somebody may see and do."""

    OWNER = "owner"
    MAKER = "maker"
    BENCH = "bench"


class LinkKind(StrEnum):
    """What a link that was sent to a person is good for."""

    INVITATION = "invitation"
    RESET = "reset"


class Shop(Owned, Edited, Base):
    """A furniture shop: the owner of every other row."""

    __tablename__ = "shop"
    name: Mapped[str] = mapped_column(String(120))
    currency: Mapped[str] = mapped_column(String(3))
    symbol: Mapped[str] = mapped_column(String(4))
    unit: Mapped[str] = mapped_column(String(2))
    denominator: Mapped[int] = mapped_column(default=64)
    time_zone: Mapped[str] = mapped_column(String(60))
    paper: Mapped[str] = mapped_column(String(10))
    address: Mapped[str] = mapped_column(Text, default="")
    phone: Mapped[str] = mapped_column(String(60), default="")
    email: Mapped[str] = mapped_column(String(254), default="")
    quote_days: Mapped[int] = mapped_column(default=30)
    terms: Mapped[str] = mapped_column(Text, default="")
    figures: Mapped[int] = mapped_column(default=1)
    """The revision of its figures that holds now."""
    demo: Mapped[bool] = mapped_column(default=False)
    """Whether the demo's jobs are in it."""
    created_at: Mapped[datetime]


class ShopFigures(Owned, Lasting, Base):
    """One revision of a shop's rates, prices, standards and woods; never overwritten."""

    __tablename__ = "shop_figures"
    __table_args__ = (ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]),)
    revision: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    spec: Mapped[dict[str, Any]]
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))


class Person(Item, Edited, Base):
    """Somebody who works in a shop."""

    __tablename__ = "person"
    __table_args__ = (
        ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]),
        UniqueConstraint("shop_id", "email"),
        Index(None, "email"),  # sign-in knows no shop yet
    )
    name: Mapped[str] = mapped_column(String(120))
    email: Mapped[str] = mapped_column(String(254))
    """Folded to small letters."""
    role: Mapped[Role] = mapped_column(choice(Role))
    password_hash: Mapped[str] = mapped_column(String(200))
    ended_at: Mapped[datetime | None]
    """When the person left; nobody is deleted who has done something."""
    first_steps_away: Mapped[bool] = mapped_column(default=False)
    """Whether the list of first steps was put away."""
    seen_at: Mapped[datetime | None]
    """When the person was last here, on any device."""
    created_at: Mapped[datetime]


class SignIn(Item, Base):
    """A person signed in on one device."""

    __tablename__ = "sign_in"
    __table_args__ = (owned_by("person", "person_id"), Index(None, "shop_id", "person_id"))
    token_hash: Mapped[str] = mapped_column(String(64))
    person_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    device: Mapped[str] = mapped_column(String(200), default="")
    address: Mapped[str] = mapped_column(String(60), default="")
    created_at: Mapped[datetime]
    seen_at: Mapped[datetime]
    ends_at: Mapped[datetime]


class KeyLink(Item, Base):
    """An invitation or a way to a new password, sent as a link, good once and for a while."""

    __tablename__ = "key_link"
    __table_args__ = (ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]),)
    kind: Mapped[LinkKind] = mapped_column(choice(LinkKind))
    token_hash: Mapped[str] = mapped_column(String(64))
    person_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    """Whose password it renews; none for an invitation."""
    role: Mapped[Role] = mapped_column(choice(Role))
    made_by: Mapped[str] = mapped_column(String(120))
    """The name at that time, to be read; a name may change."""
    made_by_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    """Who made it; none on links from before this was kept."""
    created_at: Mapped[datetime]
    ends_at: Mapped[datetime]
    used_at: Mapped[datetime | None]


class Attempt(Base):
    """A failed try at a guarded door. It belongs to no shop: who tries is not known yet."""

    __tablename__ = "attempt"
    __table_args__ = (Index(None, "key_hash", "at"),)
    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True, default=new_id)
    key_hash: Mapped[str] = mapped_column(String(64))
    at: Mapped[datetime]


class House(Base):
    """One row for the whole installation: the code that opens the set-up page until a shop exists."""

    __tablename__ = "house"
    id: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    code_hash: Mapped[str | None] = mapped_column(String(64))
    set_up_at: Mapped[datetime | None]


class Once(Owned, Base):
    """A form that has been taken: sent again, it leads to what the first one made."""

    __tablename__ = "once"
    __table_args__ = (ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]), Index(None, "shop_id", "at"))
    key: Mapped[str] = mapped_column(String(64), primary_key=True)
    location: Mapped[str] = mapped_column(String(300))
    at: Mapped[datetime]


class Counter(Owned, Base):
    """The last number that a shop gave out, for numbers that people read."""

    __tablename__ = "counter"
    __table_args__ = (ForeignKeyConstraint(["shop_id"], ["shop.shop_id"]),)
    name: Mapped[str] = mapped_column(String(20), primary_key=True)
    value: Mapped[int]
