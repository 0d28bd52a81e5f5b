"""Opening the database, SQLite or PostgreSQL, and bringing it up to the present form."""

import fcntl
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, create_engine, event, make_url, text

from casewright.folders import migrations

LOCK = 727_274
"""The advisory lock under which PostgreSQL is migrated; any number that nobody else takes."""
NO_ROOM = "53100"
"""What PostgreSQL says when its disk is full."""
PATIENCE = 5_000
"""How long a writer waits for another, and everybody for a server that does not answer [ms]."""


class NewerDatabase(Exception):
    """The database was brought to a form that this program does not know."""


def open_engine(url: str) -> Engine:
    """An engine for a database.

    Args:
        url: such as sqlite:////data/casewright.db or postgresql+psycopg://user@host/name

    Returns:
        The engine; SQLite is set to lose nothing that it has confirmed.
    """
    if make_url(url).get_backend_name() != "sqlite":
        soon = {} if "connect_timeout" in make_url(url).query else {"connect_timeout": PATIENCE // 1000}
        engine = create_engine(
            url, connect_args=soon, pool_size=10, max_overflow=10, pool_timeout=5, pool_pre_ping=True
        )
        event.listen(engine, "connect", _set_up_postgresql)
        return engine
    engine = create_engine(
        url, connect_args={"check_same_thread": False}, pool_size=20, max_overflow=20, pool_timeout=5
    )
    event.listen(engine, "connect", _set_up_sqlite)
    event.listen(engine, "begin", _begin_sqlite)
    return engine


def _set_up_postgresql(connection: Any, _: object) -> None:
    connection.execute(f"SET lock_timeout = {PATIENCE}")
    connection.commit()


def _set_up_sqlite(connection: Any, _: object) -> None:
    connection.isolation_level = None  # the driver would begin late, and not at all for some statements
    for pragma in (f"busy_timeout={PATIENCE}", "synchronous=FULL", "foreign_keys=ON", "cache_size=-16000"):
        connection.execute(f"PRAGMA {pragma}")
    # SQLite's own folds ASCII alone: MÜLLER would not find Müller.
    connection.create_function("lower", 1, _lower, deterministic=True)


def _lower(text: object) -> object:
    return text.lower() if isinstance(text, str) else text


def _begin_sqlite(connection: Connection) -> None:
    """Writers take their turn at the start: a reader that becomes a writer half-way would be refused."""
    options = connection.get_execution_options()
    if options.get("read_only"):
        connection.exec_driver_sql("BEGIN DEFERRED")
        return
    patience = options.get("patience", PATIENCE)
    driver: Any = connection.connection.driver_connection
    if patience != PATIENCE:
        driver.execute(f"PRAGMA busy_timeout={int(patience)}")
    try:
        connection.exec_driver_sql("BEGIN IMMEDIATE")
    finally:
        if patience != PATIENCE:
            driver.execute(f"PRAGMA busy_timeout={PATIENCE}")


def is_disk_full(error: BaseException | None) -> bool:
    """Whether a database refuses for want of room.

    Args:
        error: what its driver raised
    """
    code, state = getattr(error, "sqlite_errorcode", 0), getattr(error, "sqlstate", "")
    return code & 0xFF == sqlite3.SQLITE_FULL or state == NO_ROOM


def alembic_config(connection: Connection | None = None) -> Config:
    """What alembic needs to know."""
    config = Config()
    config.set_main_option("script_location", str(migrations()))
    config.set_main_option("path_separator", "os")
    if connection is not None:
        config.attributes["connection"] = connection
    return config


def newest_revision() -> str:
    """The form of the database that this program works with."""
    head = ScriptDirectory.from_config(alembic_config()).get_current_head()
    assert head is not None  # noqa: S101 - the program comes with its migrations
    return head


def present_revision(engine: Engine) -> str | None:
    """The form that a database has; None for an empty one."""
    with engine.connect() as connection:
        return MigrationContext.configure(connection).get_current_revision()


def migrate(engine: Engine) -> None:
    """Brings a database up to the present form; several processes may start at once.

    Raises:
        NewerDatabase: it has a form that this program does not know
    """
    with one_at_a_time(engine), engine.connect() as connection:
        known = {each.revision for each in ScriptDirectory.from_config(alembic_config()).walk_revisions()}
        held = MigrationContext.configure(connection).get_current_revision()
        connection.rollback()
        if held is not None and held not in known:
            raise NewerDatabase(
                f"The database was last used by a newer casewright (form {held}). Start that version, or "
                "restore a backup that this one made."
            )
        if engine.dialect.name == "sqlite":
            _migrate_sqlite(connection)
        else:
            command.upgrade(alembic_config(connection), "head")
            connection.commit()


def _migrate_sqlite(connection: Connection) -> None:
    driver: Any = connection.connection.driver_connection
    driver.execute("PRAGMA journal_mode=WAL")
    driver.execute("PRAGMA foreign_keys=OFF")  # a table that is rebuilt is dropped: nothing may follow it
    command.upgrade(alembic_config(connection), "head")
    connection.commit()
    dangling = driver.execute("PRAGMA foreign_key_check").fetchall()
    driver.execute("PRAGMA foreign_keys=ON")
    if dangling:
        raise RuntimeError(f"references that lead nowhere after the migration: {dangling[:5]}")


@contextmanager
def one_at_a_time(engine: Engine) -> Iterator[None]:
    """Holds up everybody else who would migrate the database, or replace it."""
    if engine.dialect.name == "postgresql":
        with engine.connect() as connection:
            connection.execute(text("SET LOCAL lock_timeout = 0"))  # another's migration may take its time
            connection.execute(text("SELECT pg_advisory_lock(:key)"), {"key": LOCK})
            connection.commit()
            try:
                yield
            finally:
                connection.execute(text("SELECT pg_advisory_unlock(:key)"), {"key": LOCK})
                connection.commit()
        return
    database = engine.url.database or ""
    Path(database).parent.mkdir(parents=True, exist_ok=True)
    with Path(f"{database}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        yield
