"""The last backup of the data, as a note in the data folder says: how old it is, and how it was checked."""

import json
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

NOTE = "last-backup.json"
LONG_AGO = timedelta(hours=48)
"""A nightly backup that failed once is no reason to worry, one that failed twice is (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LastBackup:
    """The last backup that was taken of the data.

    Attributes:
        at: the moment that it shows, in UTC
        file: where it was put
        tried_at: when it was restored aside and looked over; None where it was not
        is_good: what that found; true where it was not tried
    """

    at: datetime
    file: str
    tried_at: datetime | None = None
    is_good: bool = True

    def is_old(self, now: datetime) -> bool:
        """Whether more than 48 hours have gone by since."""
        return now - self.at > LONG_AGO


def last_backup(data: Path) -> LastBackup | None:
    """The last backup; None where none is known, or where the note says nothing.

    Args:
        data: the data folder
    """
    try:
        said = json.loads((data / NOTE).read_text(encoding="utf-8"))
        tried = said.get("tried_at")
        return LastBackup(
            at=_moment(said["at"]),
            file=str(said["file"]),
            tried_at=_moment(tried) if tried else None,
            is_good=said.get("is_good") is not False,
        )
    except (OSError, ValueError, TypeError, KeyError, AttributeError):
        return None


def _moment(said: str) -> datetime:
    return datetime.fromisoformat(said).astimezone(UTC)
