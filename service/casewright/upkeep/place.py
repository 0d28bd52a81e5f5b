"""Where a service keeps its data, for those who look after it."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import URL, Engine, make_url
from sqlalchemy.exc import DatabaseError, OperationalError

from casewright.records.engine import newest_revision, open_engine, present_revision
from casewright.settings import BadSetting, Settings
from casewright.shop.refusals import Refused


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
        return self.data / "secret"

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
    """
    engine = open_engine(settings.database_url)
    try:
        yield Place(engine=engine, data=settings.data, keeps_secret=not settings.secret)
    except OperationalError as error:
        reason = str(error.orig).strip().partition("\n")[0]
        raise BadSetting(
            f"The database {engine.url.render_as_string()} cannot be used ({reason}); look at --data, at "
            "CASEWRIGHT_DATABASE_URL, and at whether it runs."
        ) from None
    finally:
        engine.dispose()


@contextmanager
def present_place(settings: Settings) -> Iterator[Place]:
    """The place that the settings name, with a database in the present form.

    Raises:
        BadSetting: there is no such database, or it does not answer
        Refused: it has another form
    """
    refuse_if_missing(settings)
    with place_of(settings) as place:
        held = form_of(place.engine)
        if held != newest_revision():
            raise Refused(
                f"The database has the form {held or 'of nothing yet'}; this casewright works with "
                f"{newest_revision()}. `casewright migrate` brings an older one forward."
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
            f"{engine.url.database} is no database, or it is damaged; `casewright doctor` tells more."
        ) from None
