"""Two rows of every table, in a shop of their own each, with values that are easily lost on the way."""

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from typing import Any

from sqlalchemy import (
    JSON,
    BigInteger,
    Boolean,
    Column,
    Date,
    Engine,
    Enum,
    Float,
    Integer,
    String,
    Table,
    inspect,
    null,
)

from casewright.records.base import ID_LENGTH, UtcTime, new_id
from casewright.records.tables import METADATA

HARD = "½ ⅛ – “quoted” 'too' \\ %s :x 🪑\tand\nanother line; "
MOMENT = datetime(2027, 3, 14, 6, 30, 0, 123456, UTC)
DOCUMENT = {"é": [1, 0.1, None, True, 2**53], "size": "13/16", "empty": {}, "text": HARD}


def fill(engine: Engine) -> None:
    """Puts two rows into every table, one for each of two shops; an older form may lack some of them."""
    with engine.begin() as connection:
        there = inspect(connection)
        for number in (1, 2):
            made: dict[str, dict[str, Any]] = {}
            for table in METADATA.sorted_tables:
                if not there.has_table(table.name):
                    continue
                made[table.name] = row_for(table, number, made)
                held = {column["name"] for column in there.get_columns(table.name)}
                row = {name: value for name, value in made[table.name].items() if name in held}
                connection.execute(table.insert().values(row))


def row_for(table: Table, number: int, made: dict[str, dict[str, Any]]) -> dict[str, Any]:
    """A row of a table; its references lead to the rows that were made before."""
    row = {column.name: value_for(column, number) for column in table.columns}
    for key in table.foreign_key_constraints:
        for part in key.elements:
            held = row if key.referred_table is table else made[key.referred_table.name]
            row[part.parent.name] = held[part.column.name]
    return row


def value_for(column: Column[Any], number: int) -> Any:
    """A value of the column's kind; the second row is empty where it can be."""
    if isinstance(column.type, JSON):
        empty = null() if column.nullable else None
        return DOCUMENT if number == 1 else empty
    if column.nullable and number == 2 and not column.foreign_keys:
        return None
    return next(make(column, number) for kind, make in MAKE.items() if isinstance(column.type, kind))


def text_for(column: Column[Any], number: int) -> str:
    """A text as long as it may be, or an id."""
    length = getattr(column.type, "length", None) or 200
    return new_id() if length == ID_LENGTH else f"{number} {column.name} {HARD}"[:length]


MAKE: dict[type[Any], Callable[[Column[Any], int], Any]] = {
    Enum: lambda column, number: next(iter(column.type.enum_class)),  # type: ignore[attr-defined]
    Boolean: lambda column, number: number == 1,
    BigInteger: lambda column, number: -(2**62) if number == 1 else 2**62,
    Float: lambda column, number: 13.40625 * number + 0.1,
    Integer: lambda column, number: number,
    UtcTime: lambda column, number: MOMENT + timedelta(days=number),
    Date: lambda column, number: date(2028, 2, 29),
    String: text_for,
}
