"""The doctor's look at the place: the folder, the key, the disk, the clock."""

import shutil
import time
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

from sqlalchemy import make_url

from casewright.settings import Settings
from casewright.upkeep.key import LEAST as LEAST_KEY
from casewright.upkeep.key import SECRET, is_whole
from casewright.upkeep.looks import Look, fine, look, wrong
from casewright.upkeep.place import folder_of

LITTLE, LEAST = 1_000_000_000, 100_000_000
"""Room on the disk below which somebody should look, and below which saving is in danger [bytes]."""
LEFT_OVER = 3600
"""A file that was being made and has not been touched for so long will not be finished [s]."""
BUILT = datetime(2026, 11, 1, tzinfo=UTC)
"""No clock that is right says an earlier day."""


def look_at_folder(settings: Settings) -> Iterator[Look]:
    """The data folder is there, and for its owner alone."""
    if not settings.data.is_dir():
        yield wrong(
            "data folder", f"{settings.data} is not there.", "Name it with --data or CASEWRIGHT_DATA."
        )
        return
    mode = settings.data.stat().st_mode & 0o777
    if mode & 0o077:
        yield wrong(
            "data folder",
            f"Others on this computer can read {settings.data} (mode {mode:o}).",
            f"chmod 700 {settings.data}",
        )
        return
    yield fine("data folder", f"{settings.data}, for its owner alone.")


def look_at_secret(settings: Settings) -> Iterator[Look]:
    """The key of the links is there, long enough, and for its owner alone."""
    if settings.secret:
        yield fine("key of the links", "It comes from CASEWRIGHT_SECRET; keep a copy apart from the backups.")
        return
    path = settings.data / SECRET
    if not path.exists():
        yield look("key of the links", "There is none yet.", "Start the service; it makes one.")
        return
    mode = path.stat().st_mode & 0o777
    if mode & 0o077:
        yield wrong("key of the links", f"Others can read {path} (mode {mode:o}).", f"chmod 600 {path}")
    elif not is_whole(path.read_bytes().strip()):
        yield wrong(
            "key of the links",
            f"{path} is shorter than {LEAST_KEY} bytes: it is empty or cut, and the service does not start.",
            "Restore it from a backup. Without one, delete it and start the service: it makes a new one, and "
            "links to quotes that were sent no longer open.",
        )
    else:
        yield fine("key of the links", f"{path}, for its owner alone.")


def look_at_room(settings: Settings) -> Iterator[Look]:
    """There is room to go on, where the key and backups are and where the database's file is."""
    places = [place for place in _places(settings) if place.is_dir()]
    if not places:
        return
    free, least = min((shutil.disk_usage(place).free, str(place)) for place in places)
    said = f"{free / 1e9:.1f} GB are free where the data are ({least})."
    if free < LEAST:
        yield wrong("room", said, "Make room now: without it nothing can be saved.")
    elif free < LITTLE:
        yield look("room", said, "Make room, or move older backups elsewhere.")
    else:
        yield fine("room", said)


def look_at_leftovers(settings: Settings) -> Iterator[Look]:
    """Nothing half made lies about."""
    before = time.time() - LEFT_OVER
    places = (*_places(settings), settings.data / "backups")
    left = [
        path
        for place in places
        for path in sorted(place.glob(".*"))
        if _is_left_over(path) and path.stat().st_mtime < before
    ]
    for path in left:
        yield look(
            "leftovers",
            f"{path} was being made when something stopped it.",
            f"Delete it: rm -r {path}",
        )


def _places(settings: Settings) -> tuple[Path, ...]:
    """The data folder, and the folder of SQLite's file where that is another one."""
    return tuple(dict.fromkeys((settings.data, folder_of(make_url(settings.database_url), settings.data))))


def _is_left_over(path: Path) -> bool:
    return path.name.endswith(".part") or path.name.startswith(".restore-")


def look_at_clock(now: datetime, newest: datetime | None) -> Iterator[Look]:
    """The clock goes forward.

    Args:
        now: what the clock says
        newest: when something was last kept
    """
    said = f"It says {now.astimezone():%Y-%m-%d %H:%M %Z}."
    if now < BUILT:
        yield wrong("clock", said, "Set it: this version of casewright is younger than that.")
    elif newest is not None and newest > now + timedelta(minutes=5):
        yield wrong(
            "clock",
            f"{said} But something was kept at {newest.astimezone():%Y-%m-%d %H:%M %Z}, still to come.",
            "Set the clock, and let it follow a time server.",
        )
    else:
        yield fine("clock", said)
