"""The rows of a unit as a tree that can be changed, in which every opening carries the code that it had.

It is made of rows as a unit file has them, or as they stand in a form: what is typed is handed on unread.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

MOST_COLUMNS = 12
"""How many columns a row has at most, as the schema says."""
SPELLED_OUT = frozenset({"columns", "widths", "across"})
"""The fields of a row that say which columns it has."""
Rows = Sequence[Mapping[str, Any]]


@dataclass(frozen=True, slots=True, kw_only=True)
class CellDraft:
    """A column.

    Attributes:
        given: what is given of it, but for its rows
        rows: rows of its own; None for an opening
        was: the code that the opening had; empty for a new one
    """

    given: dict[str, Any]
    rows: "tuple[RowDraft, ...] | None" = None
    was: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowDraft:
    """A row.

    Attributes:
        given: what is given of it, but for its columns
        cells: its columns, from the left
        is_spelled: were they spelled out one by one?
        has_widths: were their widths listed?
        columns: how many were asked for, as typed; None where that was left out
    """

    given: dict[str, Any]
    cells: tuple[CellDraft, ...]
    is_spelled: bool = False
    has_widths: bool = False
    columns: Any = None


Stack = tuple[RowDraft, ...]


def with_given(given: dict[str, Any], name: str, value: Any) -> dict[str, Any]:
    """What is given of a row or column, with one thing given anew, or no more where it is empty.

    Args:
        given: what is given, by name
        name: the thing
        value: as typed

    Returns:
        What is given then.

    Source: the unit file.
    """
    left = {key: held for key, held in given.items() if key != name}
    return left | {name: value} if value else left


def stack_of(rows: Rows, code: str) -> Stack:
    """The rows as a tree in which every opening carries its code.

    Args:
        rows: as a unit file has them
        code: that of the column whose rows they are; empty for the whole face

    Returns:
        The tree.

    Source: the unit file.
    """
    return tuple(
        _read_row(row, f"{code}-{number}" if code else f"R{number}") for number, row in enumerate(rows, 1)
    )


def _read_row(row: Mapping[str, Any], code: str) -> RowDraft:
    across, widths = row.get("across"), row.get("widths")
    if across:
        given: list[Mapping[str, Any]] = list(across)
    else:
        count = max(1, len(widths)) if widths else _whole(row.get("columns"))
        given = [with_given({}, "width", (widths or (None,) * count)[place]) for place in range(count)]
    cells = []
    for number, each in enumerate(given, 1):
        inner = each.get("rows")
        mine = f"{code}-{number}"
        rest = {name: value for name, value in each.items() if name != "rows"}
        own = stack_of(inner, mine) if inner else None
        cells.append(CellDraft(given=rest, rows=own, was="" if own else mine))
    kept = {name: value for name, value in row.items() if name not in SPELLED_OUT}
    return RowDraft(
        given=kept,
        cells=tuple(cells),
        is_spelled=bool(across),
        has_widths=bool(widths),
        columns=row.get("columns"),
    )


def with_row(stack: Stack, place: int, row: RowDraft) -> Stack:
    """The rows with another in the place of one of them.

    Args:
        stack: the rows
        place: which one, counted from nought
        row: what stands there then

    Returns:
        The rows.

    Source: geometry of the face.
    """
    return (*stack[:place], row, *stack[place + 1 :])


def with_cell(row: RowDraft, at: int, cell: CellDraft) -> RowDraft:
    """A row with another column in the place of one of its own.

    Args:
        row: the row
        at: which column, counted from nought
        cell: what stands there then

    Returns:
        The row.

    Source: geometry of the face.
    """
    return replace(row, cells=(*row.cells[:at], cell, *row.cells[at + 1 :]))


def _whole(columns: Any) -> int:
    """How many columns are asked for; one where that cannot be read."""
    text = str(columns or 1).strip()
    return min(max(int(text), 1), MOST_COLUMNS) if text.isascii() and text.isdecimal() else 1


def openings_of(stack: Stack) -> Iterator[tuple[str, CellDraft]]:
    """Every opening, row by row from the top.

    Args:
        stack: the tree

    Returns:
        The code that it had when the tree was made, and the opening.

    Source: geometry of the face.
    """
    for row in stack:
        for cell in row.cells:
            if cell.rows is None:
                yield cell.was, cell
            else:
                yield from openings_of(cell.rows)


def followed(stack: Stack, code: str) -> Iterator[tuple[str, str]]:
    """Every opening's code now, and the code that it had.

    Args:
        stack: the tree, after a change
        code: that of the column whose rows they are; empty for the whole face

    Returns:
        Both codes; the second is empty for an opening that is new.

    Source: geometry of the face.
    """
    for number, row in enumerate(stack, 1):
        for column, cell in enumerate(row.cells, 1):
            mine = f"{code}-{number}-{column}" if code else f"R{number}-{column}"
            if cell.rows is None:
                yield mine, cell.was
            else:
                yield from followed(cell.rows, mine)


def written(row: RowDraft) -> dict[str, Any]:
    """A row as a unit file has it: its columns counted where they are plain, else spelled out.

    Args:
        row: of the tree

    Returns:
        The row.

    Source: the unit file.
    """
    made = dict(row.given)
    is_plain = all(cell.rows is None and not _rest(cell.given, "width") for cell in row.cells)
    if row.is_spelled or not is_plain:
        made["across"] = [
            {**_filled(cell.given), **({"rows": [written(each) for each in cell.rows]} if cell.rows else {})}
            for cell in row.cells
        ]
        return made
    widths = [cell.given.get("width") or None for cell in row.cells]
    if any(widths) or (row.has_widths and len(widths) > 1):
        made["widths"] = widths
    if row.columns and _whole(row.columns) == len(widths):
        made["columns"] = row.columns  # as typed
    elif len(widths) > 1 and (row.columns or "widths" not in made):
        made["columns"] = len(widths)
    return made


def _rest(given: Mapping[str, Any], *without: str) -> dict[str, Any]:
    return {name: value for name, value in _filled(given).items() if name not in without}


def _filled(given: Mapping[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in given.items() if value not in (None, "", False, {})}
