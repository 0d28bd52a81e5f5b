"""The two databases that every test of the service runs on."""

import atexit
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from functools import cache
from itertools import count
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, event

from casewright.records.engine import migrate, open_engine
from pgtemp import database, server

_numbers = count()


@contextmanager
def migrated(kind: str, folder: Path) -> Iterator[Engine]:
    """An engine over a fresh, migrated database."""
    if kind == "sqlite":
        engine = open_engine(f"sqlite:///{folder / 'casewright.db'}")
        event.listen(engine, "connect", _hasten)
        migrate(engine)
        yield engine
        engine.dispose()
        return
    engine = open_engine(database(postgresql(), f"books_{next(_numbers)}"))
    migrate(engine)
    yield engine
    engine.dispose()


def _hasten(connection: Any, _: object) -> None:
    connection.execute("PRAGMA synchronous=OFF")  # nothing here need outlive a power cut


@cache
def postgresql() -> str:
    """The one server of this run; every test that asks gets a database of its own in it."""
    running = ExitStack()
    atexit.register(running.close)
    return running.enter_context(server())
