"""Taking a backup: one consistent moment of the database in one file, while people go on working."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import Connection, Engine

from casewright import __version__
from casewright.records.engine import NewerDatabase, present_revision
from casewright.upkeep.archive import FORM, SECRET, Manifest, new_archive
from casewright.upkeep.forms import UnknownForm, tables_of
from casewright.upkeep.rows import lines_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """A backup that was taken.

    Attributes:
        path: where it is
        size: how long it is [bytes]
        manifest: what it says of itself
        has_secret: whether the key of the links is in it
    """

    path: Path
    size: int
    manifest: Manifest
    has_secret: bool


class NothingThere(Exception):
    """A database without any form: nothing was ever kept in it."""


@contextmanager
def one_moment(engine: Engine) -> Iterator[Connection]:
    """A connection that sees one moment of the whole database for as long as it lasts; it holds up nobody."""
    with engine.connect() as bare:
        if engine.dialect.name == "postgresql":
            connection = bare.execution_options(
                isolation_level="REPEATABLE READ", postgresql_readonly=True, read_only=True
            )
        else:
            connection = bare.execution_options(read_only=True)
        with connection.begin():
            yield connection


def take_backup(engine: Engine, target: Path, secret: bytes | None, *, overwrite: bool = False) -> Taken:
    """Writes all that the service keeps into one file.

    Args:
        engine: the database, in any form that this program knows
        target: the file
        secret: the key of the links; None where it is kept elsewhere
        overwrite: whether a file of this name may be replaced

    Returns:
        What was taken.

    Raises:
        FileIsThere: there is a file of this name
        NothingThere: the database is empty
        NewerDatabase: it has a form that this program does not know
    """
    revision = present_revision(engine)
    if revision is None:
        raise NothingThere
    try:
        tables = tables_of(revision)
    except UnknownForm:
        raise NewerDatabase(
            f"The database was last used by a newer casewright (form {revision}); take the backup with "
            "that one."
        ) from None
    now = datetime.now(UTC).isoformat(timespec="seconds")
    with one_moment(engine) as connection, new_archive(target, overwrite=overwrite) as archive:
        for form in tables:
            archive.add(f"tables/{form.name}.jsonl", lines_of(connection, form))
        if secret is not None:
            archive.add(SECRET, [secret + b"\n"])
        manifest = Manifest(
            form=FORM,
            program=__version__,
            revision=revision,
            at=now,
            database=engine.dialect.name,
            parts=tuple(archive.parts),
        )
        archive.close(manifest)
    return Taken(path=target, size=target.stat().st_size, manifest=manifest, has_secret=secret is not None)
