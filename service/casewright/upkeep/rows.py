"""Rows of a table as lines of JSON, and back: the same for both databases.

A column without a value is left out of its line, so that a document that holds `null` and one that is not
there stay two things. Moments are written in UTC with their offset, days as 2027-03-01.
"""

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import UTC, date, datetime
from itertools import islice
from typing import Any, NoReturn

from sqlalchemy import Connection, Text, bindparam, cast, insert, select
from sqlalchemy.dialects.postgresql import JSONB

from casewright.upkeep.forms import TYPES, Kind, TableForm

AT_ONCE = 500
"""Rows that travel together."""
LARGEST_NUMBER = 2**63


class BadRow(ValueError):
    """A row that the table cannot hold; the message says which value, never what it is."""


def lines_of(connection: Connection, form: TableForm) -> Iterator[bytes]:
    """Every row of a table, in the order of its key, each as a line of JSON."""
    for row in rows_of(connection, form):
        yield json.dumps(row, separators=(",", ":"), sort_keys=True, allow_nan=False).encode() + b"\n"


def rows_of(connection: Connection, form: TableForm, shop_id: str | None = None) -> Iterator[dict[str, Any]]:
    """Every row of a table as plain data, in the order of its key.

    Args:
        connection: a connection in a transaction that sees one moment
        form: the table
        shop_id: only the rows of this shop; None for all
    """
    held = form.clause()
    asked = select(
        *(
            cast(held.c[name], Text).label(name) if kind is Kind.DOCUMENT else held.c[name]
            for name, kind in form.columns.items()
        )
    ).order_by(*(held.c[name] for name in form.key))
    if shop_id is not None:
        asked = asked.where(held.c.shop_id == shop_id)
    names = tuple(form.columns)
    write = tuple(_WRITE.get(kind, _as_it_is) for kind in form.columns.values())
    for row in connection.execution_options(yield_per=AT_ONCE).execute(asked):
        yield {
            name: to_json(value)
            for name, to_json, value in zip(names, write, row, strict=True)
            if value is not None
        }


def _as_it_is(value: Any) -> Any:
    return value


_WRITE: Mapping[Kind, Callable[[Any], Any]] = {
    Kind.DOCUMENT: json.loads,
    Kind.MOMENT: lambda value: value.isoformat(),
    Kind.DAY: lambda value: value.isoformat(),
}


def read_line(line: bytes, form: TableForm) -> dict[str, Any]:
    """One row from its line, every column in it, every value of the kind that the column holds.

    Raises:
        BadRow: it is no row of this table
    """
    try:
        row = json.loads(line, parse_constant=_refuse)
    except (ValueError, RecursionError):
        raise BadRow("a line is not JSON") from None
    if not isinstance(row, dict) or not row.keys() <= form.columns.keys():
        raise BadRow("a line has columns that the table has not")
    return read_row(row, form)


def read_row(row: Mapping[str, Any], form: TableForm) -> dict[str, Any]:
    """A row of `rows_of`, of this table in any database, ready to be put into another.

    Raises:
        BadRow: a value is not of the kind that its column holds
    """
    return {name: _read(row, name, kind) for name, kind in form.columns.items()}


def _refuse(_: str) -> NoReturn:
    raise ValueError


def _read(row: Mapping[str, Any], name: str, kind: Kind) -> Any:
    if name not in row:
        return None
    try:
        return _READ[kind](row[name])
    except (ValueError, TypeError, OverflowError, RecursionError):
        raise BadRow(f"{name} is no {kind.value}") from None


def _exactly(kind: type) -> Callable[[Any], Any]:
    def read(value: Any) -> Any:
        if type(value) is not kind:
            raise ValueError
        return value

    return read


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise ValueError
    value.encode()  # half a sign has no place in either database
    return value


def _whole(value: Any) -> int:
    if type(value) is not int or not -LARGEST_NUMBER <= value < LARGEST_NUMBER:
        raise ValueError
    return value


def _real(value: Any) -> float:
    if type(value) not in {int, float}:
        raise ValueError
    return float(value)


def _moment(value: Any) -> datetime:
    read = datetime.fromisoformat(value)
    if read.tzinfo is None:
        raise ValueError
    return read.astimezone(UTC)


_READ: Mapping[Kind, Callable[[Any], Any]] = {
    Kind.TEXT: _text,
    Kind.WHOLE: _whole,
    Kind.REAL: _real,
    Kind.TRUTH: _exactly(bool),
    Kind.DAY: date.fromisoformat,
    Kind.MOMENT: _moment,
    Kind.DOCUMENT: json.dumps,
}


def insert_rows(connection: Connection, form: TableForm, rows: Iterable[dict[str, Any]]) -> int:
    """Puts rows into a table, those of `read_line` or of another database.

    Args:
        connection: a connection in a transaction
        form: the table
        rows: its rows, every column in each

    Returns:
        How many they were.
    """
    postgresql = connection.dialect.name == "postgresql"
    putting = insert(form.clause()).values(
        {name: _bound(name, kind, postgresql=postgresql) for name, kind in form.columns.items()}
    )
    count, ahead = 0, iter(rows)
    while chunk := list(islice(ahead, AT_ONCE)):
        connection.execute(putting, chunk)
        count += len(chunk)
    return count


def _bound(name: str, kind: Kind, *, postgresql: bool) -> Any:
    held = bindparam(name, type_=TYPES[kind])
    return cast(held, JSONB) if postgresql and kind is Kind.DOCUMENT else held
