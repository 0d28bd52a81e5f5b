"""The two databases that every test of the service runs on."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import Engine

from casewright.records.engine import migrate, open_engine
from pgtemp import database, server


@contextmanager
def migrated(kind: str, folder: Path) -> Iterator[Engine]:
    """An engine over a fresh, migrated database."""
    if kind == "sqlite":
        engine = open_engine(f"sqlite:///{folder / 'casewright.db'}")
        migrate(engine)
        yield engine
        engine.dispose()
        return
    with server() as url:
        engine = open_engine(database(url, "casewright"))
        migrate(engine)
        yield engine
        engine.dispose()
