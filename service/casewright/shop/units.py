"""The units of a job: designing one, revising it, and the cases and drawers that are built from it."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from functools import lru_cache
from typing import Any

from sqlalchemy import update

from casewright.pieces.asked.edit_change import Followed, origins_after
from casewright.pieces.asked.edits import codes_of as opening_codes
from casewright.pieces.asked.reading import read_as, write_unit
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction, construct
from casewright.records.base import new_id
from casewright.records.bench import Carcase, Drawer
from casewright.records.jobs import Job, Unit, UnitRevision
from casewright.records.sessions import Fenced
from casewright.records.units import (
    cases_of_unit,
    codes_of,
    drawers_of_unit,
    revision_of,
    unit_with_job,
    units_with_revisions,
)
from casewright.shop.keeping import note_history
from casewright.shop.refusals import NotFound, Refused, Stale

REASON = "The approved revision stays as it is. Say why this one differs, for the history."
TAKEN_OUT = "This unit was taken out of its job. Bring it back first; nothing of it is lost."
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""The marks of a job's units: no I and no O, which a hand takes for digits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeFrom:
    """What a new revision was made from.

    Attributes:
        number: the revision that was changed
        follows: where its openings are now: by the new code the one that they had there
    """

    number: int
    follows: Followed = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadedUnit:
    """A unit with its job and what the maker chose.

    Attributes:
        unit: the unit
        job: its job
        revision: the revision that is shown
        text: the choices as JSON text
    """

    unit: Unit
    job: Job
    revision: UnitRevision
    text: str

    @property
    def spec(self) -> UnitSpec:
        """What the maker chose."""
        return spec_from(self.text)


@lru_cache(maxsize=512)
def spec_from(text: str) -> UnitSpec:
    """What the maker chose, from its JSON text."""
    return read_as(UnitSpec, json.loads(text))


def spec_text(spec: UnitSpec) -> str:
    """The JSON text of what the maker chose, sizes as they were typed."""
    return json.dumps(json.loads(write_unit(spec)), sort_keys=True)


def load_unit(db: Fenced, unit_id: str, number: int | None = None) -> LoadedUnit:
    """A unit with its job, at its present revision or an earlier one; one query.

    Raises:
        NotFound: the shop has no such unit or revision
    """
    found = unit_with_job(db, unit_id, number)
    if found is None:
        raise NotFound("unit")
    unit, job, revision = found
    return LoadedUnit(unit=unit, job=job, revision=revision, text=_text(revision))


def units_of(db: Fenced, job: Job) -> list[LoadedUnit]:
    """The units of a job, in the order of their codes; one query."""
    found = units_with_revisions(db, job.id)
    return [
        LoadedUnit(unit=unit, job=job, revision=revision, text=_text(revision)) for unit, revision in found
    ]


def _text(revision: UnitRevision) -> str:
    return json.dumps(revision.spec, sort_keys=True)


def add_unit(db: Fenced, job: Job, spec: UnitSpec, figures: Figures, who: str, now: datetime) -> Unit:
    """Adds a unit to a job, under the next free letter.

    Args:
        db: the session
        job: the job
        spec: what the maker chose; its code is set here
        figures: the shop's figures, to try whether it can be built
        who: who adds it
        now: the moment

    Raises:
        CannotBuild, CannotGraduate, CannotBeLaidOut …: it cannot be built, with a sentence that says why
        Refused: the job is full
    """
    taken = codes_of(db, job.id)
    code = next((letter for letter in LETTERS if letter not in taken), None)
    if code is None:
        raise Refused(f"A job holds {len(LETTERS)} units at most; take on a second job for more.")
    spec = spec.model_copy(update={"code": code})
    built = construct(spec, figures)
    unit = Unit(
        id=new_id(), job_id=job.id, code=code, name=spec.name, count=spec.count, revision=1, created_at=now
    )
    db.add(unit)
    db.flush()
    first = json.loads(spec_text(spec))
    db.add(UnitRevision(unit_id=unit.id, number=1, spec=first, origins={}, at=now, who=who))
    _keep_bench_in_step(db, unit, built, {})
    note_history(db, who, now, f"Added unit {code}, {spec.name}.", job_id=job.id)
    return unit


def revise_unit(
    db: Fenced,
    loaded: LoadedUnit,
    spec: UnitSpec,
    figures: Figures,
    version: int,
    who: str,
    now: datetime,
    note: str = "",
    made_from: MadeFrom | None = None,
) -> None:
    """Keeps a new revision of a unit; the earlier ones stay as they were.

    Args:
        db: the session
        loaded: the unit at its present revision
        spec: what the maker chooses now
        figures: the shop's figures, to try whether it can be built
        version: the version of the unit that the form showed
        who: who saves
        now: the moment
        note: why, for the history
        made_from: where its openings were; with the same codes in the present revision, if left out

    Raises:
        Refused: the unit was taken out of its job, or is approved and no reason is given
        Stale: somebody else saved since
        CannotBuild, CannotGraduate, CannotBeLaidOut …: it cannot be built, with a sentence that says why
    """
    unit = loaded.unit
    refuse_if_taken_out(unit)
    spec = spec.model_copy(update={"code": unit.code})
    text = spec_text(spec)
    origins = _origins(db, loaded, json.loads(text), made_from or MadeFrom(number=loaded.revision.number))
    if text == loaded.text and origins == origins_of(loaded.revision):
        return  # whoever asks for what is saved already, such as by a second press, has it
    _refuse_unless_free(unit, version, note)
    built = construct(spec, figures)
    _keep_revision(db, unit, spec, text, origins, note, who, now)
    _keep_bench_in_step(db, unit, built, origins)
    _note_revision(db, loaded, text, note, who, now)


def _refuse_unless_free(unit: Unit, version: int, note: str) -> None:
    """Lets nobody save over somebody else, nor over what is approved without a reason."""
    if unit.version != version:
        raise Stale({})
    if needs_reason(unit) and not note.strip():
        raise Refused(REASON, 422)


def origins_of(revision: UnitRevision) -> dict[str, str]:
    """The origin of every opening of a revision, by its code."""
    return {code: revision.origins.get(code, code) for code in opening_codes(revision.spec.get("rows", ()))}


def followed(before: UnitRevision, after: UnitRevision) -> dict[str, str]:
    """The opening that each drawer has in one revision, by the one that it has in another.

    Args:
        before: the revision whose codes are known
        after: the other; drawers that it does not have are left out
    """
    there = {origin: code for code, origin in origins_of(after).items()}
    return {code: there[origin] for code, origin in origins_of(before).items() if origin in there}


def _origins(db: Fenced, loaded: LoadedUnit, data: dict[str, Any], made_from: MadeFrom) -> dict[str, str]:
    """The origin of every opening of a new revision."""
    source = loaded.revision
    if made_from.number != source.number:
        source = revision_of(db, loaded.unit.id, made_from.number) or source
    return origins_after(data["rows"], origins_of(source), made_from.follows, loaded.unit.revision + 1)


def _keep_revision(
    db: Fenced,
    unit: Unit,
    spec: UnitSpec,
    text: str,
    origins: Mapping[str, str],
    note: str,
    who: str,
    now: datetime,
) -> None:
    unit.revision += 1
    unit.name, unit.count = spec.name, spec.count
    db.add(
        UnitRevision(
            unit_id=unit.id,
            number=unit.revision,
            spec=json.loads(text),
            origins={code: origin for code, origin in origins.items() if code != origin},
            note=note,
            at=now,
            who=who,
        )
    )
    db.flush()


def _note_revision(db: Fenced, loaded: LoadedUnit, text: str, note: str, who: str, now: datetime) -> None:
    unit = loaded.unit
    late = " after its approval" if unit.approved else ""
    note_history(
        db,
        who,
        now,
        f"Revised unit {unit.code} to revision {unit.revision}{late}{f': {note}' if note else ''}.",
        job_id=unit.job_id,
        before=loaded.revision.spec,
        after=json.loads(text),
    )


def refuse_if_taken_out(unit: Unit) -> None:
    """Lets nothing be changed of a unit that was taken out.

    Raises:
        Refused: it was
    """
    if unit.ended_at is not None:
        raise Refused(TAKEN_OUT)


def needs_reason(unit: Unit) -> bool:
    """Whether a new revision must say why it differs: an earlier one is approved."""
    return unit.approved is not None


def said_not_agreed(unit: Unit) -> str:
    """What to mind where a unit was changed after its approval and the change is not agreed; else nothing."""
    if unit.approved is None or unit.approved == unit.revision:
        return ""
    return (
        f"Unit {unit.code} was changed: revision {unit.revision} is not agreed yet, agreed is revision "
        f"{unit.approved}. The numbers at the bench are those of revision {unit.approved}: let work on what "
        "changes rest."
    )


def take_out_unit(db: Fenced, loaded: LoadedUnit, who: str, now: datetime) -> None:
    """Takes a unit out of its job; its revisions and what was done to it stay in the books."""
    loaded.unit.ended_at = now
    db.execute(update(Drawer).where(Drawer.unit_id == loaded.unit.id).values(gone=True))
    note_history(
        db, who, now, f"Took unit {loaded.unit.code}, {loaded.unit.name}, out.", job_id=loaded.job.id
    )


def bring_back_unit(db: Fenced, loaded: LoadedUnit, figures: Figures, who: str, now: datetime) -> None:
    """Brings a unit back that was taken out."""
    loaded.unit.ended_at = None
    db.flush()
    _keep_bench_in_step(db, loaded.unit, construct(loaded.spec, figures), loaded.revision.origins)
    note_history(db, who, now, f"Brought unit {loaded.unit.code} back.", job_id=loaded.job.id)


def approve_unit(db: Fenced, loaded: LoadedUnit, number: int, who: str, now: datetime) -> None:
    """Locks the present revision: what the customer has agreed to.

    Args:
        db: the session
        loaded: the unit at its present revision
        number: the revision that whoever approves has looked at
        who: who approves
        now: the moment

    Raises:
        Stale: it is not the present one
    """
    held = loaded.unit.revision
    if number != held:
        saved = f"{loaded.revision.who} has saved revision {held}"
        raise Stale({}, f"{saved} since you looked at revision {number}. Look at it, then approve it.")
    if loaded.unit.approved == loaded.unit.revision:
        return
    loaded.unit.approved = loaded.unit.revision
    note_history(
        db,
        who,
        now,
        f"Approved unit {loaded.unit.code} at revision {loaded.unit.revision}.",
        job_id=loaded.job.id,
    )


def _keep_bench_in_step(db: Fenced, unit: Unit, built: Construction, origins: Mapping[str, str]) -> None:
    """Gives every piece its case and drawers; drawers without an opening now are marked, never deleted.

    A drawer is known by the origin of its opening: what was measured on it, its stage and hours go with it
    wherever it moves, and another that gets its old code begins with nothing.
    """
    cases = {each.piece: each for each in cases_of_unit(db, unit.id)}
    for piece in range(1, unit.count + 1):
        if piece not in cases:
            cases[piece] = Carcase(id=new_id(), job_id=unit.job_id, unit_id=unit.id, piece=piece, again="")
            db.add(cases[piece])
    db.flush()
    held = {(each.carcase_id, each.origin): each for each in drawers_of_unit(db, unit.id)}
    wanted = {
        (cases[piece].id, origins.get(code, code)): (code, position)
        for piece in range(1, unit.count + 1)
        for position, code in enumerate((each.sizes.code for each in built.drawers), 1)
    }
    for key, (code, position) in wanted.items():
        if key not in held:
            db.add(_drawer(unit, *key, code, position))
            continue
        held[key].code, held[key].position, held[key].gone = code, position, False
    for key, drawer in held.items():
        if key not in wanted:
            drawer.gone = True
    db.flush()


def _drawer(unit: Unit, carcase_id: str, origin: str, code: str, position: int) -> Drawer:
    facts: dict[str, Any] = {"job_id": unit.job_id, "unit_id": unit.id, "carcase_id": carcase_id}
    return Drawer(id=new_id(), origin=origin, code=code, position=position, again="", **facts)
