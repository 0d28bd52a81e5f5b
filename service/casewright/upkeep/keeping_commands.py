"""The commands that keep the data: backup, verify-backup, restore, export, doctor, migrate."""

import argparse
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path

from casewright.settings import Settings
from casewright.shop.refusals import Refused
from casewright.upkeep.answers import FINE, WRONG, Answer, size_of, table
from casewright.upkeep.archive import BadArchive, FileIsThere, open_archive
from casewright.upkeep.backup import NothingThere, take_backup
from casewright.upkeep.doctor import look_over
from casewright.upkeep.export import export
from casewright.upkeep.last_backup import note_backup, note_trial
from casewright.upkeep.looks import Health
from casewright.upkeep.place import place_of, present_place, refuse_if_missing
from casewright.upkeep.rehearsal import tried
from casewright.upkeep.restore import restore
from casewright.upkeep.upgrade import bring_forward

KEPT_APART = (
    "The key of the links is not in it, for it comes from CASEWRIGHT_SECRET: keep a copy of that apart."
)


def _backup(settings: Settings, given: argparse.Namespace) -> Answer:
    target = Path(given.file)
    refuse_if_missing(settings)
    with place_of(settings) as place, _files(target):
        try:
            taken = take_backup(place.engine, target, place.secret(), overwrite=given.force)
        except NothingThere:
            raise Refused("There is nothing to back up: the service has not been started yet.") from None
    rows = taken.manifest.rows()
    words = [f"Wrote {target}: {size_of(taken.size)}, {sum(rows.values()):,} rows."]
    if settings.secret:
        words.append(KEPT_APART)
    try:
        note_backup(settings.data, taken)
    except OSError as error:
        words.append(f"The doctor will not know of it: {settings.data} cannot be written ({error.strerror}).")
    return Answer(
        words=tuple(words),
        data={
            "file": str(target),
            "bytes": taken.size,
            "at": taken.manifest.at,
            "form": taken.manifest.revision,
            "has_secret": taken.has_secret,
            "rows": rows,
        },
    )


def _verify(settings: Settings, given: argparse.Namespace) -> Answer:
    path = Path(given.file)
    try:
        with (
            _files(path),
            open_archive(path) as archive,
            tempfile.TemporaryDirectory(prefix="casewright-") as folder,
            tried(archive, Path(folder)) as held,
        ):
            manifest, rows = archive.manifest, held.rows
        with suppress(OSError):  # whoever tries a backup elsewhere has no note of it
            note_trial(settings.data, path, manifest.at, datetime.now(UTC))
    except BadArchive as error:
        with suppress(OSError):
            note_trial(settings.data, path, None, datetime.now(UTC))
        return Answer(
            words=(f"{path} is not good. {error}",),
            data={"file": str(path), "good": False, "reason": str(error)},
            status=WRONG,
        )
    return Answer(
        words=(
            f"{path} is good: {sum(rows.values()):,} rows of {manifest.at} were restored and checked.",
            f"It was made by casewright {manifest.program} and can be restored with this version.",
        ),
        data={
            "file": str(path),
            "good": True,
            "at": manifest.at,
            "form": manifest.revision,
            "program": manifest.program,
            "rows": rows,
        },
    )


def _restore(settings: Settings, given: argparse.Namespace) -> Answer:
    path = Path(given.file)
    with place_of(settings) as place, _files(path):
        done = restore(path, place, force=given.force)
    words = [
        f"Restored the shop as it was at {done.at}: {sum(done.rows.values()):,} rows.",
        "Everybody signs in again; invitations and links to new passwords that were open are closed.",
    ]
    if done.kept:
        words.append(f"What was there before is in {done.kept}")
    if done.kept and done.kept.suffix == ".db":
        words.append(
            "That is the database file as it was; a casewright that can read it takes it back as such."
        )
    if done.kept_schema:
        words += [
            f"What was there before is in the schema {done.kept_schema} of the same PostgreSQL database.",
            f"When nobody needs it any more: DROP SCHEMA {done.kept_schema} CASCADE;",
        ]
    if settings.secret or not done.has_secret:
        words.append("If the shop had set CASEWRIGHT_SECRET, set the same one: links to its quotes need it.")
    return Answer(
        words=tuple(words),
        data={
            "at": done.at,
            "rows": done.rows,
            "kept": str(done.kept) if done.kept else None,
            "kept_schema": done.kept_schema,
        },
    )


def _export(settings: Settings, given: argparse.Namespace) -> Answer:
    target = Path(given.to)
    with present_place(settings) as place, _files(target):
        done = export(place, target, given.shop, overwrite=given.force)
    words = [f"Wrote {target}: {sum(done.rows.values()):,} rows and {done.papers} papers of {done.shop}."]
    words += [f"{name} could not be printed; its content is in the data." for name in done.unprinted]
    return Answer(
        words=tuple(words),
        data={
            "to": str(target),
            "shop": done.shop,
            "rows": done.rows,
            "papers": done.papers,
            "unprinted": list(done.unprinted),
        },
    )


def _doctor(settings: Settings, given: argparse.Namespace) -> Answer:
    looks = look_over(settings, datetime.now(UTC))
    words = table([(each.health.value, each.at, each.found) for each in looks])
    todo = [f"{each.at}: {each.todo}" for each in looks if each.todo]
    ill = any(each.health is Health.WRONG for each in looks)
    return Answer(
        words=(*words, *(["", "What to do", *todo] if todo else ["", "All is well."])),
        data={
            "well": not ill,
            "looks": [
                {"at": each.at, "health": each.health.value, "found": each.found, "todo": each.todo}
                for each in looks
            ],
        },
        status=WRONG if ill else FINE,
    )


def _migrate(settings: Settings, given: argparse.Namespace) -> Answer:
    with place_of(settings) as place:
        kept = bring_forward(place)
    words = ["The database has this version's form."]
    if kept:
        words.append(f"As it was before, it is in {kept}")
    return Answer(words=tuple(words), data={"kept": str(kept) if kept else None})


@contextmanager
def _files(path: Path) -> Iterator[None]:
    """Says in a sentence why a file cannot be read or written."""
    try:
        yield
    except FileIsThere:
        raise Refused(f"{path} is there already; name another, or give --force to replace a file.") from None
    except OSError as error:
        where = error.filename if isinstance(error.filename, str) else path
        raise Refused(f"{where} cannot be used ({error.strerror or type(error).__name__}).") from None


KEEPING: dict[str, Callable[[Settings, argparse.Namespace], Answer]] = {
    "backup": _backup,
    "verify-backup": _verify,
    "restore": _restore,
    "export": _export,
    "doctor": _doctor,
    "migrate": _migrate,
}
