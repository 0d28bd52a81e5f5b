"""Where in the rows of a unit a change is made, and where every opening is after it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from casewright.pieces.asked.edit_tree import (
    Rows,
    Stack,
    followed,
    openings_of,
    stack_of,
    with_cell,
    with_row,
    written,
)

Path = tuple[int, ...]
"""Numbers from one, of rows and columns in turn: (2, 1, 3, 1) is the opening R2-1-3-1."""


class CannotEdit(ValueError):
    """A change that this layout does not allow, with a sentence that says why."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Edited:
    """Rows after a change.

    Attributes:
        rows: as a unit file has them
        moved: every opening that there was, and where it is now; None for one that is gone
    """

    rows: tuple[dict[str, Any], ...]
    moved: dict[str, str | None]


Followed = Mapping[str, str]
"""By an opening's code the one that it had before: empty for a new one, left out where it is the same."""


def followed_through(before: Followed, edited: Edited) -> dict[str, str]:
    """Where every opening was at the beginning, after one change more.

    Args:
        before: where the openings were at the beginning, before this change
        edited: the change

    Returns:
        The same after it.

    Source: geometry of the face.
    """
    was = {now: before.get(code, code) for code, now in edited.moved.items() if now is not None}
    codes = [code for code, _ in openings_of(stack_of(edited.rows, ""))]
    return {code: was.get(code, "") for code in codes if was.get(code, "") != code}


def origins_after(rows: Rows, before: Mapping[str, str], follows: Followed, number: int) -> dict[str, str]:
    """The origin of every opening of a revision: its first code, kept however rows and columns move.

    Args:
        rows: those of the revision, as a unit file has them
        before: the origin of every opening of the revision that it was made from, by code
        follows: where the openings were in that one
        number: the revision's number, with which an opening that is new is marked

    Returns:
        Origins by code. No two are alike.

    Source: geometry of the face.
    """
    origins: dict[str, str] = {}
    for code, _ in openings_of(stack_of(rows, "")):
        origin = before.get(follows.get(code, code), "")
        if not origin or origin in origins.values():
            origin = f"{code}@{number}" if number > 1 else code
        origins[code] = origin
    return origins


Change = Callable[[Stack, int], Stack]
"""What is done to a stack and one row of it, counted from nought."""


def path_of(code: str) -> Path:
    """The numbers of an opening's code, or of a row's or column's.

    Args:
        code: such as `R2-1-3-1`, with or without the R

    Returns:
        Numbers from one.

    Raises:
        CannotEdit: it is no code

    Source: the unit file.
    """
    steps = code.removeprefix("R").split("-")
    if not all(step.isascii() and step.isdecimal() and 0 < int(step[:4]) < 1000 for step in steps):
        raise CannotEdit("Choose an opening of the list first.")
    return tuple(int(step) for step in steps)


def changed_rows(rows: Rows, path: Path, change: Change) -> Edited:
    """Rows with a change made to the row of an opening, and what has become of every opening.

    Args:
        rows: as a unit file has them
        path: of the opening, or of its row
        change: what is done to the row's stack

    Returns:
        The rows, and where every opening is now.

    Raises:
        CannotEdit: there is no such row, or the change does not allow it

    Source: geometry of the face.
    """
    before = stack_of(rows, "")
    after = _changed(before, path[: len(path) - (len(path) % 2 == 0)], change)
    now = {was: code for code, was in followed(after, "") if was}
    return Edited(
        rows=tuple(written(row) for row in after),
        moved={code: now.get(code) for code, _ in openings_of(before)},
    )


def _changed(stack: Stack, path: Path, change: Change) -> Stack:
    """The stack with a change made to the row that a path leads to."""
    place, *rest = path
    if place > len(stack):
        raise CannotEdit("There is no such row any more; choose another opening.")
    if not rest:
        return change(stack, place - 1)
    row, (column, *below) = stack[place - 1], rest
    inner = row.cells[column - 1].rows if column <= len(row.cells) else None
    if inner is None:
        raise CannotEdit("There is no such opening any more; choose another.")
    cell = replace(row.cells[column - 1], rows=_changed(inner, tuple(below), change))
    return with_row(stack, place - 1, with_cell(row, column - 1, cell))
