"""Restoring a backup: tried first, then what is there is kept aside, then the backup takes its place.

The live data stay as they are until the whole backup has been restored beside them and checked. On SQLite
the checked database then takes the place of the old one by one change of name; on PostgreSQL everything
happens in one transaction.

A database that a newer program used cannot be put into a backup by this one, and going back to this one is
when somebody restores: then the SQLite file, or the schema on PostgreSQL, is kept as it is.
"""

import os
import shutil
import sqlite3
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import closing, contextmanager, suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from alembic import command
from sqlalchemy import Connection, Engine, delete, text, update
from sqlalchemy.exc import DatabaseError, OperationalError, ProgrammingError, SQLAlchemyError

from casewright.records.engine import (
    NewerDatabase,
    alembic_config,
    migrate,
    newest_revision,
    one_at_a_time,
    present_revision,
)
from casewright.records.people import KeyLink, SignIn
from casewright.records.sessions import across_shops
from casewright.shop.refusals import Refused
from casewright.upkeep.archive import Archive, BadArchive, new_file, open_archive, put_in_place
from casewright.upkeep.backup import NothingThere, one_moment, take_backup
from casewright.upkeep.forms import TableForm, known_revisions, tables_of
from casewright.upkeep.key import is_whole
from casewright.upkeep.place import Place
from casewright.upkeep.rehearsal import Tried, tried
from casewright.upkeep.rows import insert_rows, read_row, rows_of

IN_USE = "The service is running on these data: stop it first, then restore."
OTHERS = (
    "SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() "
    "AND pid <> pg_backend_pid() AND backend_type = 'client backend'"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Restored:
    """What was restored.

    Attributes:
        rows: how many rows each table had
        at: the moment that the backup shows
        kept: the file in which the data that were there before are; None where there were none
        kept_schema: the schema of PostgreSQL in which they are, where a newer program had used them
        has_secret: whether the key of the links came with it, and whole
    """

    rows: dict[str, int]
    at: str
    kept: Path | None
    kept_schema: str | None
    has_secret: bool


def restore(path: Path, place: Place, *, force: bool = False) -> Restored:
    """Puts a backup in the place of the data.

    Args:
        path: the backup
        place: where the data are
        force: whether data that are there may be replaced; they are kept aside in a backup

    Raises:
        BadArchive: it cannot be used; the data are as they were
        NewerDatabase: a newer program made the backup
        Refused: the service is running, or there are data and `force` was not given
    """
    with open_archive(path) as archive, _folder_beside(place) as folder:
        refuse_if_in_use(place.engine)
        filled = _is_filled(place.engine)
        if filled and not force:
            raise Refused(
                "There are data already. Give --force to replace them; they are kept aside in a backup first."
            )
        with tried(archive, folder) as held:
            _close_doors(held.engine)
            stamp = datetime.now(UTC).strftime("%Y%m%d-%H%M%S-%f")
            kept, schema = _keep_aside(place, stamp) if filled else None, None
            place.engine.dispose()
            if place.engine.dialect.name == "sqlite":
                with one_at_a_time(place.engine):
                    _take_place(held, Path(place.engine.url.database or ""))
            elif _is_newer(place.engine):
                schema = f"before_restore_{stamp.replace('-', '_')}"
                _pour_anew(held.engine, place.engine, schema)
            else:
                migrate(place.engine)
                _pour(held.engine, place.engine)
        has_secret = _put_secret(archive, place)
        return Restored(
            rows=held.rows,
            at=archive.manifest.at,
            kept=kept,
            kept_schema=schema,
            has_secret=has_secret,
        )


@contextmanager
def _folder_beside(place: Place) -> Iterator[Path]:
    """A folder for the restored database: on the disk of the live one, so that it can take its place."""
    for folder in (place.data, place.beside):
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    with tempfile.TemporaryDirectory(dir=place.beside, prefix=".restore-") as made:
        yield Path(made)


def refuse_if_in_use(engine: Engine) -> None:
    """Refuses when anybody else is connected to the database.

    Raises:
        Refused: somebody is
    """
    engine.dispose()
    if engine.dialect.name == "postgresql":
        with engine.connect() as connection:
            if connection.execute(text(OTHERS)).scalar_one():
                raise Refused(IN_USE)
        return
    path = Path(engine.url.database or "")
    if not path.exists():
        return
    with suppress(sqlite3.DatabaseError), _alone(path) as connection:
        connection.execute("ROLLBACK")
        connection.execute("PRAGMA journal_mode=WAL")


@contextmanager
def _alone(path: Path) -> Iterator[sqlite3.Connection]:
    """The only connection to an SQLite database, which nobody can open while it is there; its log is empty.

    Raises:
        Refused: somebody has it open
        sqlite3.DatabaseError: it is no database, or a damaged one
    """
    with closing(sqlite3.connect(path, timeout=0.5, isolation_level=None)) as connection:
        try:
            connection.execute("PRAGMA journal_mode=DELETE")  # refused while anybody else has it open
            connection.execute("BEGIN EXCLUSIVE")
        except sqlite3.OperationalError as error:
            raise (Refused(IN_USE) if "locked" in str(error) else error) from None
        yield connection


def _is_filled(engine: Engine) -> bool:
    """Whether anything would be lost."""
    if engine.dialect.name == "sqlite" and not Path(engine.url.database or "").exists():
        return False
    try:
        if present_revision(engine) is None:
            return False
        with one_moment(engine) as connection:
            return bool(connection.execute(text("SELECT count(*) FROM shop")).scalar_one())
    except DatabaseError:
        return True  # damaged: all the more reason to keep it


def _close_doors(engine: Engine) -> None:
    """Ends sign-ins and links of before the backup: one that was ended since must not come back."""
    with across_shops(engine, write=True) as db:
        db.execute(delete(SignIn))
        db.execute(update(KeyLink).where(KeyLink.used_at.is_(None)).values(used_at=datetime.now(UTC)))


def _is_newer(engine: Engine) -> bool:
    """Whether a newer program brought the database to a form that this one does not know."""
    held = present_revision(engine)
    return held is not None and held not in known_revisions()


def _keep_aside(place: Place, stamp: str) -> Path | None:
    """A backup of what is there; a database that this program cannot read is copied as it is.

    None for a PostgreSQL that a newer program used: it stays where it is, under another name.
    """
    folder = place.data / "backups"
    folder.mkdir(exist_ok=True, mode=0o700)
    target = folder / f"before-restore-{stamp}.zip"
    try:
        return take_backup(place.engine, target, place.secret()).path
    except (SQLAlchemyError, NothingThere, NewerDatabase, ValueError) as error:
        on_sqlite = place.engine.dialect.name == "sqlite"
        if not on_sqlite and not isinstance(error, NewerDatabase):
            raise
    if place.keeps_secret:
        _copy_aside(place.secret_file, target.with_suffix(".secret"))
    if not on_sqlite:
        return None
    live, target = Path(place.engine.url.database or ""), target.with_suffix(".db")
    for end in ("", "-wal"):
        _copy_aside(Path(f"{live}{end}"), Path(f"{target}{end}"))
    return target


def _copy_aside(path: Path, target: Path) -> None:
    with suppress(FileNotFoundError):
        shutil.copy2(path, target)


def _take_place(held: Tried, live: Path) -> None:
    """Gives the restored SQLite database the name of the live one, while nobody can open that."""
    held.engine.dispose()
    if Path(f"{held.path}-wal").exists():
        raise RuntimeError("the restored database is still open")
    held.path.chmod(0o600)
    with held.path.open("rb+") as file:
        os.fsync(file.fileno())
    try:
        with _alone(live):
            put_in_place(held.path, live, overwrite=True)
    except sqlite3.DatabaseError:  # it is damaged; its log must not be read into the new one
        for end in ("-wal", "-shm"):
            Path(f"{live}{end}").unlink(missing_ok=True)
        put_in_place(held.path, live, overwrite=True)


def _pour(source: Engine, target: Engine) -> None:
    """Replaces all rows of a PostgreSQL database by those of the restored one, in one transaction."""
    with one_moment(source) as held, target.begin() as connection:
        _fill(held, connection)
    target.dispose()


def _pour_anew(source: Engine, target: Engine, aside: str) -> None:
    """Gives the schema of a newer program another name, and fills a new one: in one transaction, too."""
    with one_at_a_time(target), one_moment(source) as held, target.begin() as connection:
        quote = connection.dialect.identifier_preparer.quote
        schema, user = connection.execute(text("SELECT current_schema(), current_user")).one()
        there = text("SELECT tablename FROM pg_tables WHERE schemaname = :schema")
        tables = connection.execute(there, {"schema": schema}).scalars()
        try:
            _lock(connection, tables)
            connection.execute(text(f"ALTER SCHEMA {quote(schema)} RENAME TO {quote(aside)}"))
            connection.execute(text(f"CREATE SCHEMA {quote(schema)}"))
        except ProgrammingError as error:
            reason = str(error.orig).partition("\n")[0]
            raise Refused(
                "A newer casewright used the PostgreSQL database, so its data must be set aside first, and "
                f"its user {user} may not do so ({reason}). As its owner: ALTER SCHEMA {quote(schema)} "
                f"RENAME TO {quote(aside)}; CREATE SCHEMA {quote(schema)} AUTHORIZATION {quote(user)}; then "
                "restore again."
            ) from None
        command.upgrade(alembic_config(connection), "head")
        _fill(held, connection)
    target.dispose()


def _fill(source: Connection, target: Connection) -> None:
    """Replaces all rows of a PostgreSQL database of the present form."""
    tables = tables_of(newest_revision())
    names = _lock(target, [form.name for form in tables])
    target.execute(text(f"TRUNCATE {names}"))
    for form in tables:
        _copy(source, target, form)
    # Else the first pages take seconds, until the database does so by itself.
    target.execute(text(f"ANALYZE {names}"))


def _lock(connection: Connection, tables: Iterable[str]) -> str:
    """Locks tables against everybody else until the transaction ends; their names as a statement has them.

    Raises:
        Refused: somebody is using one
    """
    names = ", ".join(map(connection.dialect.identifier_preparer.quote, tables))
    try:
        connection.execute(text(f"LOCK TABLE {names} IN ACCESS EXCLUSIVE MODE NOWAIT"))
    except OperationalError:
        raise Refused(IN_USE) from None
    return names


def _copy(source: Connection, target: Connection, form: TableForm) -> None:
    try:
        insert_rows(target, form, (read_row(row, form) for row in rows_of(source, form)))
    except DatabaseError as error:
        reason = str(error.orig).partition("\n")[0]
        raise BadArchive(f"PostgreSQL does not take the backup's rows of {form.name} ({reason}).") from None


def _put_secret(archive: Archive, place: Place) -> bool:
    """Puts the backup's key of the links in place; a cut one would keep the service from starting."""
    if not archive.has_secret or not is_whole(key := archive.secret()):
        return False
    if place.keeps_secret:
        with new_file(place.secret_file, overwrite=True) as file:
            file.write(key)
    return True
