"""What every table has: its shop first in every key, ids that the program makes, moments in UTC."""

import secrets
import threading
import time
from datetime import UTC, datetime
from enum import StrEnum
from typing import Any, ClassVar

from sqlalchemy import (
    JSON,
    DateTime,
    Dialect,
    Enum,
    ForeignKeyConstraint,
    Integer,
    MetaData,
    String,
    TypeDecorator,
)
from sqlalchemy.dialects.postgresql import JSONB
from sqlalchemy.orm import DeclarativeBase, Mapped, declared_attr, mapped_column

NAMING = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s",
    "pk": "pk_%(table_name)s",
}
SIGNS = "0123456789abcdefghjkmnpqrstvwxyz"
"""Base 32 after Crockford: no letter that a hand could take for a digit."""
ID_LENGTH = 13
RANDOM_BITS = 20


class _Clock:
    """The last id that this process made, so that the next one is greater."""

    def __init__(self) -> None:
        self.lock = threading.Lock()
        self.last = 0

    def next(self) -> int:
        fresh = time.time_ns() // 1_000_000 << RANDOM_BITS | secrets.randbits(RANDOM_BITS)
        with self.lock:
            self.last = max(fresh, self.last + 1)
            return self.last


_clock = _Clock()


def new_id() -> str:
    """An id for a new row: 13 signs that sort by the time of their making."""
    value = _clock.next()
    return "".join(SIGNS[value >> shift & 31] for shift in range(60, -1, -5))


class UtcTime(TypeDecorator[datetime]):
    """A moment, always aware and in UTC; SQLite forgets the zone, so it is put back on reading."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a moment without a time zone cannot be stored")
        return value.astimezone(UTC)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


Document = JSON().with_variant(JSONB(), "postgresql")
"""JSON, in the form that each database searches best."""


def choice(words: type[StrEnum]) -> Enum:
    """A column that holds one of a list of words, kept as the word itself."""
    return Enum(
        words,
        native_enum=False,
        create_constraint=True,
        validate_strings=True,
        length=20,
        name=words.__name__.lower(),
        values_callable=lambda each: [word.value for word in each],
    )


def owned_by(table: str, column: str, *, key: str = "id") -> ForeignKeyConstraint:
    """A reference that stays inside the shop."""
    return ForeignKeyConstraint(["shop_id", column], [f"{table}.shop_id", f"{table}.{key}"])


class Base(DeclarativeBase):
    """The root of all tables."""

    metadata = MetaData(naming_convention=NAMING)
    type_annotation_map: ClassVar[dict[Any, Any]] = {datetime: UtcTime, dict[str, Any]: Document}


class Owned:
    """A table whose every row belongs to one shop. Queries are held inside the session's shop."""

    shop_id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True, sort_order=-20)


class Item(Owned):
    """An owned row with an id of its own."""

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True, default=new_id, sort_order=-19)


class Edited:
    """A row that people edit in forms: a save must name the version that it started from."""

    version: Mapped[int] = mapped_column(Integer, default=1, sort_order=90)

    @declared_attr.directive
    @classmethod
    def __mapper_args__(cls) -> dict[str, Any]:
        return {"version_id_col": cls.__dict__.get("version") or cls.version}


class Lasting:
    """A row that is written once and never changed: what happened stays as it was."""
