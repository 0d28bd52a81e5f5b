"""The shop's own starting units: kept from a unit, renamed, taken away."""

import json
from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import select

from casewright.pieces.asked.measured import Measured
from casewright.pieces.asked.spec import UnitSpec
from casewright.records.base import new_id
from casewright.records.jobs import OwnStart
from casewright.records.sessions import Fenced
from casewright.shop.keeping import note_history
from casewright.shop.refusals import NotFound, Refused, Stale
from casewright.shop.units import LoadedUnit, spec_from, spec_text

MOST = 60


def own_starts(db: Fenced) -> Sequence[OwnStart]:
    """The shop's own starting units, by name; one query."""
    return db.scalars(select(OwnStart).order_by(OwnStart.name, OwnStart.id)).all()


def own_start(db: Fenced, start_id: str) -> OwnStart:
    """One of them.

    Raises:
        NotFound: the shop has none of this id
    """
    held = db.get(OwnStart, (db.shop_id, start_id))
    if held is None:
        raise NotFound("starting unit")
    return held


def start_text(start: OwnStart) -> str:
    """What a new unit begins with, as JSON text."""
    return json.dumps(start.spec, sort_keys=True)


def start_spec(start: OwnStart) -> UnitSpec:
    """The choices that a new unit begins with."""
    return spec_from(start_text(start))


def why_not_kept(db: Fenced, name: str) -> str:
    """Why no starting unit of this name can be kept; empty where one can."""
    held = own_starts(db)
    if len(held) >= MOST:
        return f"A shop keeps {MOST} starting units at most; take one away first."
    return _why_taken(held, name)


def why_not_renamed(db: Fenced, start: OwnStart, name: str) -> str:
    """Why a starting unit cannot go by this name; empty where it can. Its own name it may keep."""
    return _why_taken([each for each in own_starts(db) if each.id != start.id], name)


def _why_taken(others: Sequence[OwnStart], name: str) -> str:
    if any(each.name.casefold() == name.casefold() for each in others):
        return f"There is a starting unit called “{name}” already; give this one another name."
    return ""


def keep_start(db: Fenced, loaded: LoadedUnit, name: str, words: str, who: str, now: datetime) -> OwnStart:
    """Keeps a unit as a starting unit: its choices, and nothing of what was measured on it.

    Args:
        db: the session
        loaded: the unit at the revision to be kept
        name: what it is called
        words: what it is, in a sentence
        who: who keeps it
        now: the moment

    Raises:
        Refused: the shop has enough of them, or one of this name
    """
    if why := why_not_kept(db, name):
        raise Refused(why, 422)
    plain = loaded.spec.model_copy(update={"code": "A", "name": name, "measured": Measured()})
    made = OwnStart(
        id=new_id(), name=name, words=words, spec=json.loads(spec_text(plain)), who=who, created_at=now
    )
    db.add(made)
    note_history(
        db, who, now, f"Kept unit {loaded.unit.code} as the starting unit “{name}”.", job_id=loaded.job.id
    )
    return made


def rename_start(db: Fenced, start: OwnStart, name: str, words: str, version: int) -> None:
    """Gives a starting unit another name and other words.

    Raises:
        Refused: another one goes by this name
        Stale: somebody else changed it since
    """
    if why := why_not_renamed(db, start, name):
        raise Refused(why, 422)
    if start.version != version:
        raise Stale({})
    start.name, start.words = name, words
    db.flush()


def take_start_away(db: Fenced, start: OwnStart) -> None:
    """Takes a starting unit away; units that began with it stay as they are."""
    db.delete(start)
