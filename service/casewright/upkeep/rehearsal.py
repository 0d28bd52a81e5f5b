"""Trying a backup: all of it is put into a database of its own, and looked at, before it is trusted."""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import Connection, Engine
from sqlalchemy.exc import DatabaseError

from casewright.records.engine import NewerDatabase, migrate, open_engine
from casewright.upkeep.archive import Archive, BadArchive
from casewright.upkeep.forms import TableForm, UnknownForm, bring_to, tables_of
from casewright.upkeep.rows import BadRow, insert_rows, read_line

ROOM = 4
"""How many times its unpacked size a backup needs on the disk while it is tried."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """A backup that was put into a database of its own.

    Attributes:
        path: that database, in the present form
        engine: open on it
        rows: how many rows each table had in the backup
    """

    path: Path
    engine: Engine
    rows: dict[str, int]


@contextmanager
def tried(archive: Archive, folder: Path) -> Iterator[Tried]:
    """Restores a backup into a database in a folder, brings it forward, and checks it.

    Args:
        archive: the backup
        folder: where the database is made; who asks takes it away

    Raises:
        BadArchive: it does not hold what it says, or what it holds does not fit together
        NewerDatabase: a newer program made it
    """
    revision = archive.manifest.revision
    try:
        tables = tables_of(revision)
    except UnknownForm:
        raise NewerDatabase(
            f"The backup was made by a newer casewright ({archive.manifest.program[:20]}); restore it with "
            "that version, or a newer one."
        ) from None
    if archive.manifest.rows().keys() != {form.name for form in tables}:
        raise BadArchive("The backup cannot be used: its tables are not those of its form.")
    _refuse_without_room(archive, folder)
    path = folder / "tried.db"
    engine = open_engine(f"sqlite:///{path}")
    try:
        bring_to(engine, revision)
        with engine.connect() as connection:
            _fill(connection, archive, tables)
        migrate(engine)
        _check(engine)
        yield Tried(path=path, engine=engine, rows=archive.manifest.rows())
    finally:
        engine.dispose()


def _refuse_without_room(archive: Archive, folder: Path) -> None:
    needed, free = archive.size * ROOM, shutil.disk_usage(folder).free
    if needed > free:
        raise BadArchive(
            f"The backup unpacks to {archive.size // 2**20} MB, and {folder} has {free // 2**20} MB left for "
            "it. Make room, or name a roomier folder in TMPDIR."
        )


def _fill(connection: Connection, archive: Archive, tables: tuple[TableForm, ...]) -> None:
    """Puts every row in; this database need not outlive a power cut yet."""
    connection.connection.driver_connection.execute("PRAGMA synchronous=OFF")  # type: ignore[union-attr]
    with connection.begin():
        for form in tables:
            lines = archive.lines(f"tables/{form.name}.jsonl")
            try:
                insert_rows(connection, form, (read_line(line, form) for line in lines))
            except BadRow as error:
                raise BadArchive(f"The backup cannot be used: in {form.name}, {error}.") from None
            except DatabaseError as error:
                reason = str(error.orig).partition("\n")[0]
                raise BadArchive(
                    f"The backup cannot be used: its rows of {form.name} do not fit together ({reason})."
                ) from None
        if archive.has_secret:
            archive.secret()  # read to its end, so that its hash is compared


def _check(engine: Engine) -> None:
    with engine.connect() as connection:
        driver = connection.connection.driver_connection
        assert isinstance(driver, sqlite3.Connection)  # noqa: S101 - it was made a few lines above
        whole = [row[0] for row in driver.execute("PRAGMA integrity_check")]
        dangling = driver.execute("PRAGMA foreign_key_check").fetchall()
        driver.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    if whole != ["ok"] or dangling:
        raise BadArchive("The backup cannot be used: what it holds does not fit together.")
