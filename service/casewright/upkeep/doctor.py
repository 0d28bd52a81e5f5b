"""The doctor: looks over the service and its data, and says of each fault what to do."""

from collections.abc import Callable, Iterator
from datetime import datetime

from sqlalchemy.exc import DatabaseError

from casewright.folders import called
from casewright.records.engine import newest_revision
from casewright.records.sessions import Fenced, across_shops
from casewright.settings import BadSetting, Settings
from casewright.shop.refusals import Refused
from casewright.upkeep.backup import one_moment
from casewright.upkeep.doctor_database import (
    RESTORE,
    look_at_form,
    look_at_pages,
    look_at_references,
    look_at_server_clock,
    look_at_settings,
)
from casewright.upkeep.doctor_place import (
    look_at_clock,
    look_at_folder,
    look_at_leftovers,
    look_at_room,
    look_at_secret,
)
from casewright.upkeep.doctor_records import (
    look_at_numbers,
    look_at_quotes,
    look_at_shops,
    look_at_sign_ins,
    look_at_stages,
    look_at_units,
    newest_moment,
)
from casewright.upkeep.last_backup import look_at_last_backup
from casewright.upkeep.looks import Look, wrong
from casewright.upkeep.place import Place, form_of, place_of, refuse_if_missing

NAME_IT = "Name the right data folder or database, and see that the database runs."
OF_THE_PLACE = (look_at_folder, look_at_secret, look_at_room, look_at_leftovers)
OF_THE_DATABASE = (look_at_settings, look_at_pages, look_at_form, look_at_references)
OF_THE_RECORDS: tuple[Callable[[Fenced, datetime], Iterator[Look]], ...] = (
    look_at_shops,
    look_at_units,
    look_at_stages,
    look_at_quotes,
    look_at_numbers,
    look_at_sign_ins,
)


def look_over(settings: Settings, now: datetime) -> list[Look]:
    """Looks at everything; changes nothing.

    Args:
        settings: where the service runs
        now: the moment

    Returns:
        What was found, one look after another.
    """
    looks = [found for look_at in OF_THE_PLACE for found in look_at(settings)]
    looks += look_at_last_backup(settings, now)
    try:
        refuse_if_missing(settings)
        with place_of(settings) as place:
            looks += look_at_database(place, now)
    except (BadSetting, Refused) as error:
        looks.append(wrong("database", str(error), RESTORE if isinstance(error, Refused) else NAME_IT))
    return looks


def look_at_database(place: Place, now: datetime) -> Iterator[Look]:
    """Looks at the database, and at what is kept in it."""
    held, present = form_of(place.engine), newest_revision()
    if held != present:
        yield wrong(
            "database",
            f"It has the form {held or 'of nothing yet'}; this version works with {present}.",
            f"An older one: `{called('migrate')}`. A newer one: start the newer casewright, or go back with "
            f"the backup of before the upgrade: `{called('restore FILE --force')}`.",
        )
        return
    try:
        with one_moment(place.engine) as connection:
            for look_at in OF_THE_DATABASE:
                yield from look_at(connection)
            yield from look_at_server_clock(connection, now)
        with across_shops(place.engine) as db:
            yield from look_at_clock(now, newest_moment(db))
            for look_into in OF_THE_RECORDS:
                yield from look_into(db, now)
    except DatabaseError as error:
        reason = str(error.orig).partition("\n")[0]
        yield wrong("database", f"It cannot be read to its end: {reason}.", RESTORE)
