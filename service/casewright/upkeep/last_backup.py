"""Keeps the note of the last backup, from which the doctor and the shop's page tell how old that is."""

import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

from casewright.folders import called
from casewright.settings import Settings
from casewright.shop.last_backup import LONG_AGO, NOTE, LastBackup, last_backup
from casewright.upkeep.archive import BadArchive, new_file, open_archive
from casewright.upkeep.backup import Taken
from casewright.upkeep.looks import Look, fine, look, wrong

AT = "last backup"
TAKE_ONE = (
    f"Take one now, to another disk: `{called('backup FILE')}`. A line for every night is in the README."
)
MOST = f"{LONG_AGO // timedelta(hours=1)} hours"


def note_backup(data: Path, taken: Taken) -> None:
    """Remembers a backup.

    Raises:
        OSError: the data folder cannot be written to
    """
    at = datetime.fromisoformat(taken.manifest.at)
    _write(data, LastBackup(at=at, file=str(taken.path.absolute())))


def note_trial(data: Path, path: Path, at: str | None, now: datetime) -> None:
    """Remembers that the last backup was restored aside and looked over; of any other, nothing.

    Args:
        data: the data folder
        path: the backup that was tried
        at: the moment that it shows; None where it was found not to be good
        now: the moment

    Raises:
        OSError: the data folder cannot be written to
    """
    noted = last_backup(data)
    if noted is None:
        return
    if at is None and noted.file == str(path.absolute()):
        _write(data, replace(noted, tried_at=now, is_good=False))
    elif at is not None and datetime.fromisoformat(at) == noted.at:  # it, or a copy of it
        _write(data, replace(noted, tried_at=now, is_good=True))


def _write(data: Path, noted: LastBackup) -> None:
    said = {
        "at": noted.at.isoformat(),
        "file": noted.file,
        "tried_at": noted.tried_at.isoformat(timespec="seconds") if noted.tried_at else None,
        "is_good": noted.is_good,
    }
    with new_file(data / NOTE, overwrite=True) as file:
        file.write(json.dumps(said).encode() + b"\n")


def look_at_last_backup(settings: Settings, now: datetime) -> Iterator[Look]:
    """There is a backup of the last 48 hours, and where it still lies where it was put, it is whole."""
    if not settings.data.is_dir():
        return
    noted = last_backup(settings.data)
    if noted is None:
        yield look(AT, "None is known of.", TAKE_ONE)
        return
    said = f"It shows {noted.at.isoformat()} and was put into {noted.file}"
    path = Path(noted.file)
    try:
        with open_archive(path):
            pass
    except BadArchive as error:
        yield wrong(AT, f"{said}. {error}", TAKE_ONE)
        return
    except OSError:  # on a disk that is elsewhere now, as it should be
        said += ", where it is no more"
    if not noted.is_good:
        yield wrong(AT, f"{said}. Restored aside, it was found not to be good.", TAKE_ONE)
    elif noted.is_old(now):
        yield look(AT, f"{said}: {_ago(now - noted.at)} ago, and {MOST} are the most.", TAKE_ONE)
    else:
        yield fine(AT, f"{said}{'; it was restored aside and found whole' if noted.tried_at else ''}.")


def _ago(span: timedelta) -> str:
    return f"{span.days} days" if span.days > 3 else f"{span // timedelta(hours=1)} hours"
