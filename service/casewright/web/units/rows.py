"""The rows of a unit's form: which there are by the names of its fields, and what is asked of each.

A row whose columns are spelled out has a line for each, and a column with rows of its own one for each
row: `rows.1.across.2.rows.3.height` is the height of the third row in the second column of the first row.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from casewright.pieces.asked.layout_spec import MOST_LEVELS
from casewright.web.units.fields import Asked, Kind
from casewright.web.units.row_fields import COLUMN_FIELDS, GROWTH_FIELDS, ROW_FIELDS

MOST_ROWS, MOST_COLUMNS = 40, 12
MOST_LINES = 400
"""Rows and columns that a form has together; what is named beyond them is no form of ours."""
SEPARATOR = ";"
REST = {"", "rest", "equal", "-", "–"}
"""How an opening width is left to share what remains."""
FIRST_ROW, FIRST_COLUMN = "rows.1.", "rows.1.across.1."
IN_A_ROW = re.compile(r"rows(\.[1-9][0-9]?\.across\.[1-9][0-9]?\.rows)*\.[1-9][0-9]?\.[a-z_.0-9]+")
STEP = re.compile(r"(rows|across)\.([1-9][0-9]?)\.")
COUNTED = {"columns", "widths"}
"""What a row says of its columns where they are not spelled out."""

Values = dict[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A row, or a column that is spelled out.

    Attributes:
        name: the beginning of the names of its fields, such as `rows.1.across.2`
        inner: a row's columns where they are spelled out, or a column's own rows
    """

    name: str
    inner: tuple["Line", ...] = ()

    @property
    def is_column(self) -> bool:
        """Is it a column?"""
        return self.name.rpartition(".")[0].endswith("across")

    @property
    def mark(self) -> str:
        """Its numbers, such as `1-2`: the code of its opening without the R."""
        return "-".join(step for step in self.name.split(".") if step.isdecimal())

    @property
    def words(self) -> str:
        """What it is called in a label, such as `Row 1` or `Column 1-2`."""
        return f"{'Column' if self.is_column else 'Row'} {self.mark}"


Shape = tuple[Line, ...]


def shape_of(values: Mapping[str, str]) -> Shape:
    """The rows of a form, by the names of its fields."""
    tree: dict[int, Any] = {}
    for name in values:
        steps = (
            [(kind, int(number)) for kind, number in STEP.findall(name)] if name.startswith("rows.") else []
        )
        here = tree
        for place, (kind, number) in enumerate(steps[: 2 * MOST_LEVELS]):
            if (kind == "rows") != (place % 2 == 0) or number > (MOST_ROWS, MOST_COLUMNS)[place % 2]:
                break
            here = here.setdefault(number, {})
    return _lines(tree, "rows", [MOST_LINES])


def _lines(tree: Mapping[int, Any], name: str, room: list[int]) -> Shape:
    found = []
    for number in range(1, max(tree, default=0) + 1):
        room[0] -= 1
        if room[0] < 0:
            break
        mine = f"{name}.{number}"
        inner = "across" if name.endswith("rows") else "rows"
        found.append(Line(name=mine, inner=_lines(tree.get(number, {}), f"{mine}.{inner}", room)))
    return tuple(found)


def shape_in(rows: Sequence[Mapping[str, Any]], name: str = "rows") -> Shape:
    """The rows of a unit file."""
    found = []
    for number, row in enumerate(rows, 1):
        mine = f"{name}.{number}"
        columns = tuple(
            Line(
                name=f"{mine}.across.{at}",
                inner=shape_in(column.get("rows") or (), f"{mine}.across.{at}.rows"),
            )
            for at, column in enumerate(row.get("across") or (), 1)
        )
        found.append(Line(name=mine, inner=columns))
    return tuple(found)


def all_lines(shape: Shape) -> Iterator[Line]:
    """Every row and column that is spelled out, from the top."""
    for line in shape:
        yield line
        yield from all_lines(line.inner)


def field_of(shape: Shape, mark: str) -> str:
    """The name of the field in which an opening, a column or a row begins; empty where there is none.

    Args:
        shape: the rows of a form
        mark: its code without the R, such as `1-2`, or `1` for the whole row
    """
    lines, line = shape, None
    for step in mark.split("-"):
        if not 0 < int(step) <= len(lines):
            break
        line = lines[int(step) - 1]
        lines = line.inner
    return f"{line.name}.{'width' if line.is_column else 'height'}" if line else ""


@lru_cache(maxsize=4 * MOST_LINES)
def line_fields(line: Line) -> tuple[Asked, ...]:
    """The fields of a row or column."""
    return tuple(_line_fields(line))


def _line_fields(line: Line) -> Iterator[Asked]:
    of_column: tuple[Asked, ...] = GROWTH_FIELDS if line.inner else COLUMN_FIELDS
    for each in of_column if line.is_column else ROW_FIELDS:
        first = FIRST_COLUMN if line.is_column else FIRST_ROW
        last = each.name.removeprefix(first)
        if not (line.inner and last in COUNTED):
            when = tuple(
                f"{line.name}.{step.removeprefix(first)}" if "." in step else step for step in each.when
            )
            when = when if each.when and each.when[0].startswith(first) else each.when
            label = f"{line.words}: {each.label[:1].lower()}{each.label[1:]}"
            yield replace(each, name=f"{line.name}.{last}", label=label, when=when)


def empty_rows(shape: Shape) -> list[dict[str, Any]]:
    """Rows of a unit file in which nothing stands yet."""
    return [
        {"across": [{"rows": empty_rows(column.inner)} if column.inner else {} for column in row.inner]}
        if row.inner
        else {}
        for row in shape
    ]


def typed_rows(values: Mapping[str, str]) -> list[dict[str, Any]]:
    """What is typed into the rows of a form, as a unit file has rows; nothing of it is read."""
    return [_typed(values, line) for line in shape_of(values)]


def _typed(values: Mapping[str, str], line: Line) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for each in line_fields(line):
        text = values.get(each.name, "").strip()
        if not text or (each.kind is Kind.CHOICE and text == each.usual):
            continue
        way, _, last = each.name.removeprefix(f"{line.name}.").rpartition(".")
        place = made.setdefault(way, {}) if way else made
        place[last] = _widths(text) if each.kind is Kind.SIZES else text
    if line.inner:
        made["rows" if line.is_column else "across"] = [_typed(values, each) for each in line.inner]
    return made


def _widths(text: str) -> list[str | None]:
    parts = [part.strip() for part in text.split(SEPARATOR)]
    return [None if part.casefold() in REST else part for part in parts]


def with_rows(values: Mapping[str, str], rows: Sequence[Mapping[str, Any]]) -> Values:
    """A form with other rows in it."""
    left = {name: text for name, text in values.items() if not IN_A_ROW.fullmatch(name)}
    for line in all_lines(shape_in(rows)):
        for each in line_fields(line):
            left[each.name] = _text(rows, each)
    return left


def _text(rows: Sequence[Mapping[str, Any]], asked: Asked) -> str:
    found: Any = {"rows": rows}
    for step in asked.name.split("."):
        if found is not None:
            found = found[int(step) - 1] if isinstance(found, list | tuple) else found.get(step)
    if isinstance(found, list | tuple):
        return f"{SEPARATOR} ".join(each or "rest" for each in found)
    if found is None:
        return str(asked.usual) if asked.kind is Kind.CHOICE and asked.usual is not None else ""
    return str(found)
