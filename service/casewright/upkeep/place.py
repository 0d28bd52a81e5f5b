"""Where a service keeps its data, for those who look after it."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import URL, Engine, make_url
from sqlalchemy.exc import DatabaseError, OperationalError

from casewright.folders import called
from casewright.records.engine import newest_revision, open_engine, present_revision
from casewright.settings import BadSetting, Settings
from casewright.shop.refusals import Refused
from casewright.upkeep.key import SECRET

DAMAGED = {"XX001", "XX002"}
"""What PostgreSQL says of a table or an index that cannot be read (its manual, appendix A, class XX)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a service keeps its data.

    Attributes:
        engine: its database
        data: its folder
        keeps_secret: whether the key of the links is in that folder, and not in a setting
    """

    engine: Engine
    data: Path
    keeps_secret: bool = True

    @property
    def secret_file(self) -> Path:
        """Where the key of the links is."""
        return self.data / SECRET

    @property
    def beside(self) -> Path:
        """The folder in which SQLite's file is, on whatever disk; the data folder for PostgreSQL."""
        return folder_of(self.engine.url, self.data)

    def secret(self) -> bytes | None:
        """The key of the links; None where there is none in the folder."""
        if not self.keeps_secret or not self.secret_file.exists():
            return None
        return self.secret_file.read_bytes().strip()


def folder_of(url: URL, data: Path) -> Path:
    """The folder in which a database's file is; the data folder where it is no file."""
    return Path(url.database or "").absolute().parent if url.get_backend_name() == "sqlite" else data


@contextmanager
def place_of(settings: Settings) -> Iterator[Place]:
    """The place that the settings name; nothing is made, nothing need be there.

    Raises:
        BadSetting: the database does not answer
        Refused: it is damaged
    """
    engine = open_engine(settings.database_url)
    try:
        with answering(engine):
            yield Place(engine=engine, data=settings.data, keeps_secret=not settings.secret)
    finally:
        engine.dispose()


@contextmanager
def answering(engine: Engine) -> Iterator[None]:
    """Says in a sentence what is the matter with a database, and what to do; a fault of the program passes.

    Raises:
        BadSetting: it does not answer
        Refused: it is damaged
    """
    try:
        yield
    except (DatabaseError, sqlite3.DatabaseError) as error:
        told = error.orig if isinstance(error, DatabaseError) else error
        reason = str(told).strip().partition("\n")[0]
        name = engine.url.render_as_string()
        if is_damage(told):
            raise Refused(
                f"The database {name} is damaged ({reason}). `{called('doctor')}` tells more; stop the "
                f"service and restore the last good backup: `{called('restore FILE --force')}`."
            ) from None
        if isinstance(error, OperationalError):
            raise BadSetting(
                f"The database {name} cannot be used ({reason}); look at --data, at CASEWRIGHT_DATABASE_URL, "
                "and at whether it runs."
            ) from None
        raise


def is_damage(told: BaseException | None) -> bool:
    """Whether a database says that what it holds cannot be read.

    Args:
        told: what its driver raised
    """
    code, state = getattr(told, "sqlite_errorcode", 0), getattr(told, "sqlstate", "")
    return code & 0xFF in {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB} or state in DAMAGED


@contextmanager
def present_place(settings: Settings) -> Iterator[Place]:
    """The place that the settings name, with a database in the present form.

    Raises:
        BadSetting: there is no such database, or it does not answer
        Refused: it has another form, or it is damaged
    """
    refuse_if_missing(settings)
    with place_of(settings) as place:
        held = form_of(place.engine)
        if held != newest_revision():
            raise Refused(
                f"The database has the form {held or 'of nothing yet'}; this casewright works with "
                f"{newest_revision()}. `{called('migrate')}` brings an older one forward."
            )
        yield place


def refuse_if_missing(settings: Settings) -> None:
    """Refuses a database that is not there, before opening it would make an empty one.

    Raises:
        BadSetting: there is none
    """
    url = make_url(settings.database_url)
    if url.get_backend_name() == "sqlite" and not Path(url.database or "").exists():
        raise BadSetting(
            f"There is no database at {url.database}; name the data folder with --data or CASEWRIGHT_DATA."
        )


def form_of(engine: Engine) -> str | None:
    """The form of a database.

    Raises:
        Refused: it is no database at all
    """
    try:
        return present_revision(engine)
    except OperationalError:
        raise
    except DatabaseError:
        raise Refused(
            f"{engine.url.database} is no database, or it is damaged; `{called('doctor')}` tells more, and "
            f"`{called('restore FILE --force')}` puts a backup in its place."
        ) from None
