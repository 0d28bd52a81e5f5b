"""How often somebody may try at a guarded door."""

from datetime import datetime, timedelta
from hashlib import sha256

from sqlalchemy import Engine, delete, func, select

from casewright.records.people import Attempt
from casewright.records.sessions import Fenced, across_shops
from casewright.shop.refusals import TooMany

WINDOW = timedelta(minutes=15)
FREE_TRIES = 8
"""Failures in the window before the door closes; after that it stays shut until the oldest is forgotten."""
TRIES_FROM_ONE_ADDRESS = 30


def _mark(door: str, key: str) -> str:
    return sha256(f"{door}\n{key}".encode()).hexdigest()


def _take_turn(db: Fenced, mark: str) -> None:
    """Lets tries with the same mark in one after the other, so that many at once cannot slip under the limit.

    SQLite has one writer at a time anyway.
    """
    if db.get_bind().dialect.name == "postgresql":
        db.execute(select(func.pg_advisory_xact_lock(int(mark[:15], 16))))


def refuse_if_too_many(db: Fenced, door: str, now: datetime, **keys: str) -> None:
    """Refuses a try when too many have failed lately.

    Args:
        db: a session across shops
        door: which door, such as sign-in
        now: the moment
        keys: who tries, by account and by address

    Raises:
        TooMany: with how long to wait
    """
    for name, key in keys.items():
        _take_turn(db, _mark(f"{door} {name}", key))
        most = TRIES_FROM_ONE_ADDRESS if name == "address" else FREE_TRIES
        found = db.execute(
            select(func.count(), func.min(Attempt.at)).where(
                Attempt.key_hash == _mark(f"{door} {name}", key), Attempt.at > now - WINDOW
            )
        ).one()
        if found[0] >= most:
            oldest: datetime = found[1]
            raise TooMany(max(1, int((oldest + WINDOW - now).total_seconds())))


def note_failure(db: Fenced, door: str, now: datetime, **keys: str) -> None:
    """Remembers a failed try, and forgets those that no longer count."""
    db.execute(delete(Attempt).where(Attempt.at < now - 2 * WINDOW))
    for name, key in keys.items():
        db.add(Attempt(key_hash=_mark(f"{door} {name}", key), at=now))


def count_wrong_link(db: Fenced, door: str, address: str, now: datetime) -> None:
    """Counts a link that opens nothing, in a session that writes anyway; kept only if that session is kept.

    Raises:
        TooMany: too many of them lately; good links are looked up before this and never wait for it
    """
    refuse_if_too_many(db, door, now, address=address)
    note_failure(db, door, now, address=address)


def note_wrong_link(engine: Engine, door: str, address: str, now: datetime) -> None:
    """Counts a link that opens nothing against the address that it came from, in sessions of its own.

    Raises:
        TooMany: too many of them lately
    """
    with across_shops(engine) as db:  # who is shut out already keeps no writer waiting
        refuse_if_too_many(db, door, now, address=address)
    with across_shops(engine, write=True) as db:  # asked again: of many at once, none slips under the limit
        count_wrong_link(db, door, address, now)


def forget_failures(db: Fenced, door: str, **keys: str) -> None:
    """Forgets the failures of somebody who came in."""
    marks = [_mark(f"{door} {name}", key) for name, key in keys.items()]
    db.execute(delete(Attempt).where(Attempt.key_hash.in_(marks)))
