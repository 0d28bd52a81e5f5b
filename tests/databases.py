"""The two databases that every test of the service runs on."""

import atexit
import shutil
import tempfile
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
    """An engine over a migrated database: the one that the folder holds, else a fresh one."""
    if kind == "sqlite":
        file = folder / "casewright.db"
        is_there = file.exists()
        if not is_there:
            shutil.copy(_fresh_sqlite(), file)
        engine = open_engine(f"sqlite:///{file}")
        event.listen(engine, "connect", _hasten)
        if is_there:
            migrate(engine)
        yield engine
        engine.dispose()
        return
    engine = open_engine(database(postgresql(), f"books_{next(_numbers)}", template=_fresh_postgresql()))
    yield engine
    engine.dispose()


@cache
def _fresh_sqlite() -> Path:
    """A migrated database to be copied: to migrate each anew takes longer than most of what is tried."""
    folder = Path(tempfile.mkdtemp(prefix="casewright-fresh-"))
    atexit.register(shutil.rmtree, folder)
    engine = open_engine(f"sqlite:///{folder / 'casewright.db'}")
    migrate(engine)
    engine.dispose()
    return folder / "casewright.db"


@cache
def _fresh_postgresql() -> str:
    """The same in the server of this run; its name."""
    engine = open_engine(database(postgresql(), "fresh_books"))
    migrate(engine)
    engine.dispose()
    return "fresh_books"


def _hasten(connection: Any, _: object) -> None:
    connection.execute("PRAGMA synchronous=OFF")  # nothing here need outlive a power cut


@cache
def postgresql() -> str:
    """The one server of this run; every test that asks gets a database of its own in it."""
    running = ExitStack()
    atexit.register(running.close)
    return running.enter_context(server())
