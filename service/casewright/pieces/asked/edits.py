"""Changes to how the face of a unit is parted, each a pure function over the rows of its file.

They take rows as a unit file has them, or as they stand in a form: what is typed is handed through unread.
Every opening is followed, so that whatever was written down under its code can go with it.
"""

from dataclasses import replace
from typing import Any

from casewright.pieces.asked.edit_change import CannotEdit, Edited, Path, changed_rows
from casewright.pieces.asked.edit_tree import (
    MOST_COLUMNS,
    CellDraft,
    RowDraft,
    Rows,
    Stack,
    followed,
    openings_of,
    stack_of,
    with_cell,
    with_given,
    with_row,
)
from casewright.pieces.asked.layout_spec import MOST_LEVELS

MOST_ROWS = 40
"""How many rows a stack has at most, as the schema says."""


def codes_of(rows: Rows) -> tuple[str, ...]:
    """The code of every opening, row by row from the top.

    Args:
        rows: as a unit file has them

    Returns:
        Codes such as `R2-1`, or `R2-1-3-1` in a column with rows of its own.

    Source: geometry of the face.
    """
    return tuple(code for code, _ in openings_of(stack_of(rows, "")))


def add_row(rows: Rows, path: Path, *, below: bool) -> Edited:
    """A new row above or below the row of an opening, in the same stack.

    Args:
        rows: as a unit file has them
        path: of the opening, or of its row
        below: below it, or above

    Returns:
        The rows; the new one holds one drawer and follows the rule.

    Raises:
        CannotEdit: the stack is full, or there is no such row

    Source: geometry of the face.
    """

    def change(stack: Stack, place: int) -> Stack:
        if len(stack) >= MOST_ROWS:
            raise CannotEdit(f"There are {MOST_ROWS} rows already; a stack has no more.")
        at = place + below
        return (*stack[:at], RowDraft(given={}, cells=(CellDraft(given={}),)), *stack[at:])

    return changed_rows(rows, path, change)


def remove_row(rows: Rows, path: Path) -> Edited:
    """The rows without the row of an opening; the last row of a column makes the column one opening again.

    Args:
        rows: as a unit file has them
        path: of the opening

    Returns:
        The rows, and where every opening is now.

    Raises:
        CannotEdit: it is the only row of the unit, or there is no such row

    Source: geometry of the face.
    """
    first = stack_of(rows, "")
    if _is_last_of_column(first, path):
        return merge_rows(rows, path)

    def change(stack: Stack, place: int) -> Stack:
        if len(stack) == 1:
            raise CannotEdit("This is the only row; add another before this one goes.")
        return (*stack[:place], *stack[place + 1 :])

    return changed_rows(rows, path, change)


def move_row(rows: Rows, path: Path, by: int) -> Edited:
    """The row of an opening moved up (-1) or down (1) in its stack; at the end it stays.

    Args:
        rows: as a unit file has them
        path: of the opening
        by: -1 for up, 1 for down

    Returns:
        The rows, and where every opening is now.

    Raises:
        CannotEdit: there is no such row

    Source: geometry of the face.
    """

    def change(stack: Stack, place: int) -> Stack:
        there = min(max(place + by, 0), len(stack) - 1)
        left = [*stack[:place], *stack[place + 1 :]]
        left.insert(there, stack[place])
        return tuple(left)

    return changed_rows(rows, path, change)


def split_across(rows: Rows, path: Path, into: int = 2) -> Edited:
    """An opening parted into openings side by side, alike in all but their width, which they share anew.

    Args:
        rows: as a unit file has them
        path: of the opening
        into: how many it becomes

    Returns:
        The rows, and where every opening is now.

    Raises:
        CannotEdit: the row would have too many columns, or it is no opening

    Source: geometry of the face.
    """

    def change(stack: Stack, place: int) -> Stack:
        row, at = stack[place], _column(stack[place], path)
        if not 2 <= into <= MOST_COLUMNS or len(row.cells) + into - 1 > MOST_COLUMNS:
            raise CannotEdit(f"A row has {MOST_COLUMNS} columns at most; {len(row.cells)} are here.")
        cell = row.cells[at]
        _needs_opening(cell)
        given = {name: value for name, value in cell.given.items() if name != "width"}
        parts = (replace(cell, given=given), *(CellDraft(given=dict(given)) for _ in range(into - 1)))
        return with_row(stack, place, replace(row, cells=(*row.cells[:at], *parts, *row.cells[at + 1 :])))

    return changed_rows(rows, path, change)


def merge_across(rows: Rows, path: Path) -> Edited:
    """An opening made one with its neighbour at the right, or with the one at the left where it is the last.

    Args:
        rows: as a unit file has them
        path: of the opening

    Returns:
        The rows, and where every opening is now.

    Raises:
        CannotEdit: it stands alone in its row

    Source: geometry of the face.
    """

    def change(stack: Stack, place: int) -> Stack:
        row = stack[place]
        if len(row.cells) == 1:
            raise CannotEdit("It stands alone in its row; there is nothing to join it with.")
        at = min(_column(row, path), len(row.cells) - 2)
        chosen = row.cells[_column(row, path)]
        given = {name: value for name, value in chosen.given.items() if name != "width"}
        one = replace(chosen, given=given)
        cells = (*row.cells[:at], one, *row.cells[at + 2 :])
        return with_row(stack, place, replace(row, cells=cells))

    return changed_rows(rows, path, change)


def split_down(rows: Rows, path: Path, into: int = 2) -> Edited:
    """An opening made a stack of rows of its own; each holds what the opening held.

    Args:
        rows: as a unit file has them
        path: of the opening
        into: how many rows it becomes

    Returns:
        The rows, and where every opening is now.

    Raises:
        CannotEdit: stacks would go too deep, or it is no opening

    Source: geometry of the face.
    """
    if len(path) // 2 >= MOST_LEVELS:
        raise CannotEdit(f"Stacks go {MOST_LEVELS} deep at most; split the row across, or add a row.")
    if not 2 <= into <= MOST_ROWS:
        raise CannotEdit(f"A column has 2 to {MOST_ROWS} rows of its own.")

    def change(stack: Stack, place: int) -> Stack:
        row, at = stack[place], _column(stack[place], path)
        cell = row.cells[at]
        _needs_opening(cell)
        holds = cell.given.get("holds") or row.given.get("holds")
        kept = {name: value for name, value in cell.given.items() if name in {"shelves", "leaves", "hinged"}}
        # The pipes that a row is notched for stand behind all that it becomes.
        notch = row.given.get("notch") if (holds or "drawer") == "drawer" else None
        inner = tuple(
            RowDraft(
                given=with_given({"holds": holds} if holds else {}, "notch", notch),
                cells=(CellDraft(given=dict(kept), was=cell.was if number == 0 else ""),),
            )
            for number in range(into)
        )
        outer = {name: value for name, value in cell.given.items() if name == "width"}
        parted = with_cell(row, at, CellDraft(given=outer, rows=inner))
        if all(each.rows for each in parted.cells):
            parted = replace(parted, given=with_given(parted.given, "notch", None))
        return with_row(stack, place, parted)

    return changed_rows(rows, path, change)


def merge_rows(rows: Rows, path: Path) -> Edited:
    """The stack in which an opening stands made one opening again, which holds what its top row held.

    Args:
        rows: as a unit file has them
        path: of the opening

    Returns:
        The rows, and where every opening is now.

    Raises:
        CannotEdit: the opening is in no column with rows of its own

    Source: geometry of the face.
    """
    if len(path) < 3:
        raise CannotEdit("It is in no column with rows of its own; there is nothing to make one.")
    outer = path[: (len(path) - 1) // 2 * 2]

    def change(stack: Stack, place: int) -> Stack:
        row, at = stack[place], _column(stack[place], outer)
        cell = row.cells[at]
        if not cell.rows:
            raise CannotEdit("It is in no column with rows of its own; there is nothing to make one.")
        top = cell.rows[0]
        first = next((code for _, code in followed((top,), "")), "")
        given = {name: value for name, value in cell.given.items() if name == "width"}
        given |= {name: value for name, value in top.cells[0].given.items() if name != "width"}
        holds = top.cells[0].given.get("holds") or top.given.get("holds") or "drawer"
        given.pop("graduation", None)
        given.pop("holds", None)
        if holds != (row.given.get("holds") or "drawer"):
            given["holds"] = holds
        if len(row.cells) == 1:
            row = replace(row, given=with_given(row.given, "notch", top.given.get("notch")))
        return with_row(stack, place, _counted(with_cell(row, at, CellDraft(given=given, was=first))))

    return changed_rows(rows, outer, change)


def hold(rows: Rows, path: Path, holds: str) -> Edited:
    """An opening made to hold a drawer, doors, or nothing.

    Args:
        rows: as a unit file has them
        path: of the opening
        holds: `drawer`, `doors` or `open`

    Returns:
        The rows; where the opening is alone in its row, the row says so.

    Raises:
        CannotEdit: it is no opening

    Source: the unit file.
    """

    def change(stack: Stack, place: int) -> Stack:
        row, at = stack[place], _column(stack[place], path)
        _needs_opening(row.cells[at])
        drop = {"holds", "knee", *(() if holds == "doors" else ("leaves", "hinged"))}
        drop |= {"shelves"} if holds == "drawer" else set()
        given = {name: value for name, value in row.cells[at].given.items() if name not in drop}
        if len(row.cells) == 1:
            row = replace(row, given={name: value for name, value in row.given.items() if name != "holds"})
            if holds != "drawer":
                row = replace(row, given={**with_given(row.given, "notch", None), "holds": holds})
        elif holds != (row.given.get("holds") or "drawer"):
            given["holds"] = holds
        return with_row(stack, place, _counted(with_cell(row, at, replace(row.cells[at], given=given))))

    return changed_rows(rows, path, change)


def spell_out(rows: Rows, path: Path) -> Edited:
    """The row of an opening with its columns spelled out one by one, each to be changed by itself.

    Args:
        rows: as a unit file has them
        path: of the opening

    Returns:
        The rows, and where every opening is now.

    Source: geometry of the face.
    """

    def change(stack: Stack, place: int) -> Stack:
        return with_row(stack, place, replace(stack[place], is_spelled=True))

    return changed_rows(rows, path, change)


def set_size(rows: Rows, path: Path, name: str, size: Any) -> Edited:
    """The opening's width, or its row's height, as typed; what is empty follows the rule again.

    Args:
        rows: as a unit file has them
        path: of the opening
        name: `width` or `height`
        size: as typed

    Returns:
        The rows.

    Raises:
        CannotEdit: it is no opening

    Source: the unit file.
    """

    def change(stack: Stack, place: int) -> Stack:
        row = stack[place]
        if name == "height":
            return with_row(stack, place, replace(row, given=with_given(row.given, "height", size)))
        at = _column(row, path)
        cell = replace(row.cells[at], given=with_given(row.cells[at].given, "width", size))
        return with_row(stack, place, with_cell(row, at, cell))

    return changed_rows(rows, path, change)


def _needs_opening(cell: CellDraft) -> None:
    if cell.rows is not None:
        raise CannotEdit("This column has rows of its own; choose one of its openings.")


def _column(row: RowDraft, path: Path) -> int:
    """Which column a path means in its row, counted from nought."""
    at = path[-1] - 1 if len(path) % 2 == 0 else 0
    if at >= len(row.cells):
        raise CannotEdit("There is no such opening any more; choose another.")
    return at


def _is_last_of_column(stack: Stack, path: Path) -> bool:
    rows: tuple[RowDraft, ...] | None = stack
    steps = path[: len(path) - (len(path) % 2 == 0)]
    for row, column in zip(steps[:-1:2], steps[1::2], strict=False):
        if rows is None or row > len(rows) or column > len(rows[row - 1].cells):
            return False
        rows = rows[row - 1].cells[column - 1].rows
    return len(steps) > 1 and rows is not None and len(rows) == 1


def _counted(row: RowDraft) -> RowDraft:
    """A row whose columns are counted again, where nothing is left to be spelled out of them."""
    return replace(row, is_spelled=False)
