"""Which tables and columns the database has in each of its forms, and what their values are."""

import threading
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from alembic import command
from alembic.script import ScriptDirectory
from sqlalchemy import (
    JSON,
    BigInteger,
    Boolean,
    Column,
    Date,
    DateTime,
    Engine,
    Float,
    Integer,
    MetaData,
    Numeric,
    String,
    TableClause,
    Text,
    column,
    create_engine,
    table,
)
from sqlalchemy.types import TypeEngine

from casewright.records.base import UtcTime
from casewright.records.engine import alembic_config

OF_ALEMBIC = "alembic_version"
_one_at_a_time = threading.Lock()  # alembic keeps what it is doing in a module of its own


class Kind(StrEnum):
    """What a column holds."""

    TEXT = "text"
    WHOLE = "whole number"
    REAL = "number"
    TRUTH = "yes or no"
    DAY = "day"
    MOMENT = "moment"
    DOCUMENT = "document"


KINDS: tuple[tuple[type[TypeEngine[Any]], Kind], ...] = (
    (JSON, Kind.DOCUMENT),
    (Boolean, Kind.TRUTH),
    (Integer, Kind.WHOLE),
    (Float, Kind.REAL),
    (Numeric, Kind.REAL),
    (DateTime, Kind.MOMENT),
    (Date, Kind.DAY),
    (String, Kind.TEXT),
)
TYPES: Mapping[Kind, TypeEngine[Any]] = {
    Kind.TEXT: Text(),
    Kind.WHOLE: BigInteger(),
    Kind.REAL: Float(),
    Kind.TRUTH: Boolean(),
    Kind.DAY: Date(),
    Kind.MOMENT: UtcTime(),
    Kind.DOCUMENT: Text(),  # as it is written, so that "no value" and the value null stay two things
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TableForm:
    """One table of a form of the database.

    Attributes:
        name: its name
        columns: what each column holds, in the order of the table
        key: the columns of its key
    """

    name: str
    columns: Mapping[str, Kind]
    key: tuple[str, ...]

    def clause(self) -> TableClause:
        """The table as a statement names it."""
        return table(self.name, *(column(name, TYPES[kind]) for name, kind in self.columns.items()))


class UnknownForm(Exception):
    """A form of the database that this program does not know: a newer program made it."""


def tables_of(revision: str) -> tuple[TableForm, ...]:
    """The tables of a form, each after those that it refers to.

    Args:
        revision: the form, as the migrations name it

    Raises:
        UnknownForm: no migration of this program leads to it
    """
    if revision not in known_revisions():
        raise UnknownForm(revision)
    with _one_at_a_time:
        return _tables_of(revision)


@cache
def known_revisions() -> frozenset[str]:
    """The forms that the migrations of this program lead to."""
    walked = ScriptDirectory.from_config(alembic_config()).walk_revisions()
    return frozenset(each.revision for each in walked)


@cache
def _tables_of(revision: str) -> tuple[TableForm, ...]:
    """Asked of an empty database that was brought to this form."""
    engine = create_engine("sqlite://")
    bring_to(engine, revision)
    held = MetaData()
    held.reflect(engine)
    engine.dispose()
    return tuple(
        TableForm(
            name=each.name,
            columns={own.name: _kind(own) for own in each.columns},
            key=tuple(own.name for own in each.primary_key),
        )
        for each in held.sorted_tables
        if each.name != OF_ALEMBIC
    )


def _kind(held: Column[Any]) -> Kind:
    return next(kind for types, kind in KINDS if isinstance(held.type, types))


def bring_to(engine: Engine, revision: str) -> None:
    """Brings an empty database that nobody else knows to a form."""
    with engine.connect() as connection:
        command.upgrade(alembic_config(connection), revision)
        connection.commit()
