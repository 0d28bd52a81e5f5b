"""The note of the last backup: it lies in the data folder, so that the doctor can tell how old that is."""

import json
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from casewright.settings import Settings
from casewright.upkeep.archive import BadArchive, new_file, open_archive
from casewright.upkeep.backup import Taken
from casewright.upkeep.looks import Look, fine, look, wrong

NOTE = "last-backup.json"
LONG_AGO = timedelta(days=7)
"""A shop can write a week's work down again from memory and paper, not more (common practice)."""
AT = "last backup"
TAKE_ONE = "Take one now, to another disk: `casewright backup FILE`. A line for every night is in the README."


@dataclass(frozen=True, slots=True, kw_only=True)
class Noted:
    """The last backup that was taken of these data.

    Attributes:
        at: the moment that it shows, in UTC
        file: where it was put
    """

    at: str
    file: str


def note_backup(data: Path, taken: Taken) -> None:
    """Remembers a backup.

    Raises:
        OSError: the data folder cannot be written to
    """
    noted = Noted(at=taken.manifest.at, file=str(taken.path.absolute()))
    with new_file(data / NOTE, overwrite=True) as file:
        file.write(json.dumps(asdict(noted)).encode() + b"\n")


def look_at_last_backup(settings: Settings, now: datetime) -> Iterator[Look]:
    """There is a backup of lately, and where it still lies where it was put, it is whole."""
    if not settings.data.is_dir():
        return
    try:
        noted = Noted(**json.loads((settings.data / NOTE).read_text(encoding="utf-8")))
        old = now - datetime.fromisoformat(noted.at).astimezone(UTC)
    except (OSError, ValueError, TypeError):  # none, or a note that says nothing: no backup to rely on
        yield look(AT, "None is known of.", TAKE_ONE)
        return
    said = f"It shows {noted.at} and was put into {noted.file}"
    path = Path(noted.file)
    try:
        with open_archive(path):
            pass
    except BadArchive as error:
        yield wrong(AT, f"{said}. {error}", TAKE_ONE)
        return
    except OSError:  # on a disk that is elsewhere now, as it should be
        said += ", where it is no more"
    if old > LONG_AGO:
        yield look(AT, f"{said}: {old.days} days ago.", TAKE_ONE)
    else:
        yield fine(AT, f"{said}.")
