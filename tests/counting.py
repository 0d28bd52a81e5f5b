"""Counts the statements that a page sends to its database."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from sqlalchemy import Engine, event

MOST = 12
"""As many statements as a page may send, however much there is to show."""


@contextmanager
def counted(engine: Engine) -> Iterator[list[str]]:
    """The statements that are sent within the block, in their order; BEGIN and its like are not counted."""
    sent: list[str] = []

    def note(_: Any, __: Any, statement: str, *___: Any) -> None:
        if statement.partition(" ")[0].upper() in {"SELECT", "INSERT", "UPDATE", "DELETE", "WITH"}:
            sent.append(statement)

    event.listen(engine, "before_cursor_execute", note)
    try:
        yield sent
    finally:
        event.remove(engine, "before_cursor_execute", note)
