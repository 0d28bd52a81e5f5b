"""Small duties of every act: its number, its sentence in the history, and that it happens once."""

from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import delete, select, update
from sqlalchemy.dialects import postgresql, sqlite

from casewright.records.base import new_id
from casewright.records.jobs import History
from casewright.records.people import Counter, Once
from casewright.records.sessions import Fenced
from casewright.shop.refusals import Stale

FORGOTTEN = timedelta(days=30)
"""A form is sent again within minutes, or by a phone that was without a signal; not after a month."""


def next_number(db: Fenced, name: str) -> int:
    """The next of the shop's own numbers: 1, 2, 3 …, none left out once the act is kept."""
    _insert(db, Counter, {"shop_id": db.shop_id, "name": name, "value": 0})
    found = db.execute(
        update(Counter).where(Counter.name == name).values(value=Counter.value + 1).returning(Counter.value)
    )
    return found.scalar_one()


def note_history(
    db: Fenced,
    who: str,
    now: datetime,
    what: str,
    *,
    job_id: str | None = None,
    shop_id: str | None = None,
    before: dict[str, Any] | None = None,
    after: dict[str, Any] | None = None,
) -> None:
    """Writes a sentence into the history of a job, or of the shop: the session's, unless another is named."""
    db.add(
        History(
            shop_id=shop_id,
            id=new_id(),
            job_id=job_id,
            what=what,
            before=before,
            after=after,
            at=now,
            who=who,
        ),
    )


def change(
    db: Fenced,
    held: Any,
    after: Mapping[str, Any],
    version: int,
    what: str,
    who: str,
    now: datetime,
    *,
    shown: Callable[[Any], str] = str,
) -> None:
    """Saves the fields of a form in which something was changed, and notes what in the shop's history.

    Args:
        db: the session
        held: the row that the form is of
        after: every field of the form by its name
        version: the version that the form shows
        what: what is changed, such as `the customer Ada Marsh`
        who: who saves
        now: the moment
        shown: how a field's value is written in the form

    Raises:
        Stale: somebody else saved since that version
    """
    before = {name: getattr(held, name) for name in after}
    changed = {name: value for name, value in after.items() if value != before[name]}
    if not changed:  # whoever asks for what is saved already, such as by a second press, is in nobody's way
        return
    if held.version != version:
        raise Stale({name: shown(before[name]) for name in changed})
    for name, value in changed.items():
        setattr(held, name, value)
    note_history(
        db,
        who,
        now,
        f"Changed {what}: {', '.join(changed)}.",
        before={name: before[name] for name in changed},
        after=changed,
    )


def once(db: Fenced, key: str, now: datetime, act: Callable[[], str]) -> str:
    """Does an act unless its form was taken before. An act that is refused leaves nothing, its mark neither.

    Args:
        db: the session
        key: the mark of the form; without one the act is simply done
        now: the moment
        act: makes the record and gives the address to go to

    Returns:
        The address that the first sending led to.
    """
    if not key:
        return act()
    row = {"shop_id": db.shop_id, "key": key[:64], "location": "", "at": now}
    db.execute(delete(Once).where(Once.at < now - FORGOTTEN))
    with db.begin_nested():  # a form that is shown again after a refusal must be taken when it is mended
        if not _insert(db, Once, row):
            return db.execute(select(Once.location).where(Once.key == key[:64])).scalar_one()
        location = act()
        db.flush()
        db.execute(update(Once).where(Once.key == key[:64]).values(location=location))
    return location


def _insert(db: Fenced, table: type[Any], row: dict[str, Any]) -> bool:
    """Inserts a row unless its key is there; says whether it did. A second writer waits for the first."""
    dialect = sqlite if db.get_bind().dialect.name == "sqlite" else postgresql
    made = db.execute(dialect.insert(table).on_conflict_do_nothing().returning(table.shop_id), [row])
    return made.first() is not None
