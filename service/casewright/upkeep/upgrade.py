"""Bringing an older database forward, after a backup of it as it is."""

from datetime import UTC, datetime
from pathlib import Path

from casewright.records.engine import migrate, newest_revision
from casewright.upkeep.backup import take_backup
from casewright.upkeep.forms import known_revisions
from casewright.upkeep.place import Place, form_of


def bring_forward(place: Place) -> Path | None:
    """Brings the database to the present form; one that holds something is backed up first.

    Args:
        place: where the data are; the folder is made if need be

    Returns:
        The backup; None where none was needed.

    Raises:
        NewerDatabase: a newer program used it
    """
    place.data.mkdir(parents=True, exist_ok=True, mode=0o700)
    held, taken = form_of(place.engine), None
    if held in known_revisions() - {newest_revision()}:
        stamp = datetime.now(UTC).strftime("%Y%m%d-%H%M%S-%f")
        taken = place.data / "backups" / f"before-upgrade-from-{held}-{stamp}.zip"
        taken.parent.mkdir(exist_ok=True, mode=0o700)
        take_backup(place.engine, taken, place.secret())
    migrate(place.engine)
    return taken
