"""What the bench makes again once a change is agreed: drawers and cases go back to where their parts are.

What was tapped stays in the books: a change puts back by an event of its own, which can be undone by another.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from casewright.labour.bench import Again, EventKind, Progress, said_change
from casewright.labour.next_step import can_leave
from casewright.labour.stages import (
    Stage,
    before_marking,
    case_stages,
    drawer_stages,
    dry_fit,
    place_of,
)
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.remakes import Remake, remakes
from casewright.pieces.built.rework import rework
from casewright.pieces.built.rework_stages import CASE, Reached
from casewright.pieces.words.remake_words import full_words, short_words
from casewright.records.bench import Drawer
from casewright.records.jobs import Job
from casewright.records.people import Shop
from casewright.records.rework import Standing, standing_of_unit
from casewright.records.sessions import Fenced
from casewright.shop.bench import Hand, Place, case_place, note_tap, refold, refuse_at_rest
from casewright.shop.estimating import worked_unit
from casewright.shop.figures import figures_text
from casewright.shop.keeping import note_history
from casewright.shop.refusals import Refused
from casewright.shop.units import LoadedUnit, followed, load_unit, origins_of

Sizes = dict[str, list[Any]]
"""What was measured, by its name: the size in inches, and how it was typed."""
OPENING = "opening."
DRY = "dry."
"""What the measures of a dry-fit begin with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PutBack:
    """One case with its drawers, and what of it is made again.

    Attributes:
        piece: which of several pieces
        carcase_id: the case
        standing: how far its drawers are, by their openings in the new design, and the case
        drawer_ids: the drawers by their openings in the new design
        remakes: what is made again, the case first
        anew: the openings that are measured anew, because the case around them changes
    """

    piece: int
    carcase_id: str
    standing: Reached
    drawer_ids: Mapping[str, str]
    remakes: tuple[Remake, ...]
    anew: frozenset[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class PutBackWords:
    """What of a drawer, or of the case, is made again, in words.

    Attributes:
        what: such as `Case`, or `R4-1, R4-2` where both have one story; of several pieces with its number
        was: the stage at which it stands
        becomes: the stage to which it goes back; empty where it stays there
        parts: which parts
    """

    what: str
    was: str
    becomes: str
    parts: str


def planned(
    db: Fenced, before: LoadedUnit, after: LoadedUnit, was: Construction, becomes: Construction
) -> tuple[PutBack, ...]:
    """What is made again of each piece of a unit, as far as its parts are now; one query.

    Args:
        db: the session
        before: the unit at the revision that was agreed
        after: the unit at the revision that it is to have
        was: the unit as it was being made
        becomes: the unit as it is to be
    """
    codes = {origin: code for code, origin in origins_of(before.revision).items()}
    fresh = {origin: code for code, origin in origins_of(after.revision).items()}
    follows = followed(before.revision, after.revision)
    count = min(was.spec.count, becomes.spec.count)
    found = []
    for piece, rows in groupby(standing_of_unit(db, after.unit.id), key=lambda row: row.piece):
        if piece <= count:
            members = list(rows)
            made, now = _reached(members, codes), _reached(members, fresh)
            again = remakes(rework(was, becomes, made, follows), was, becomes, made, now, follows)
            found.append(
                PutBack(
                    piece=piece,
                    carcase_id=members[0].carcase_id,
                    standing=now,
                    drawer_ids={fresh[row.origin]: row.drawer_id for row in members if row.origin in fresh},
                    remakes=again,
                    anew=frozenset(_anew(again, was, becomes, codes, fresh)),
                )
            )
    return tuple(found)


def remade_between(
    db: Fenced, shop: Shop, job: Job, unit_id: str, before: int, after: int
) -> tuple[PutBack, ...]:
    """What is made again where a unit goes from one revision to another, as far as its parts are now.

    Raises:
        CannotBuild, CannotBeLaidOut …: one of the two revisions cannot be built any more
    """
    figures = figures_text(db, shop, job)
    held, changed = (load_unit(db, unit_id, number) for number in (before, after))
    was, becomes = (worked_unit(each.text, figures) for each in (held, changed))
    return planned(db, held, changed, was, becomes)


def _reached(rows: list[Standing], codes: Mapping[str, str]) -> Reached:
    drawers = {codes[row.origin]: row.stage for row in rows if row.origin in codes}
    return Reached(case=rows[0].case_stage, drawers=drawers)


def _anew(
    again: tuple[Remake, ...],
    was: Construction,
    becomes: Construction,
    codes: Mapping[str, str],
    fresh: Mapping[str, str],
) -> Iterator[str]:
    """The openings of which what was measured holds no more."""
    glued = place_of("glued", case_stages())
    moved = any(one.assembly == CASE and place_of(one.first, case_stages()) <= glued for one in again)
    old = {drawer.sizes.code: drawer.sizes.opening for drawer in was.drawers}
    origins = {code: origin for origin, code in fresh.items()}
    for drawer in becomes.drawers:
        code, opening = drawer.sizes.code, drawer.sizes.opening
        mine = old.get(codes.get(origins.get(code, ""), ""))
        if moved or mine is None or (mine.width, mine.height) != (opening.width, opening.height):
            yield code


def words_of(plans: tuple[PutBack, ...]) -> tuple[PutBackWords, ...]:
    """What is made again, in words for whoever takes the agreement down; drawers of one story together."""
    many = len(plans) > 1
    found: dict[tuple[str, str, str], list[str]] = {}
    for plan in plans:
        for one in plan.remakes:
            told = _words(one, plan, f" ({plan.piece})" if many else "")
            found.setdefault((told.was, told.becomes, told.parts), []).append(told.what)
    return tuple(
        PutBackWords(what=", ".join(names), was=was, becomes=becomes, parts=parts)
        for (was, becomes, parts), names in found.items()
    )


def _words(one: Remake, plan: PutBack, piece: str) -> PutBackWords:
    is_case = one.assembly == CASE
    stages = case_stages() if is_case else drawer_stages()
    stage = plan.standing.case if is_case else plan.standing.drawers.get(one.assembly, "")
    kept = _kept(one, stage, stages)
    return PutBackWords(
        what=f"{'Case' if is_case else one.assembly}{piece}",
        was=_word(stage, stages),
        becomes="" if kept == stage else _word(kept, stages),
        parts=short_words(one),
    )


def _kept(one: Remake, stage: str, stages: tuple[Stage, ...]) -> str:
    """The stage that holds on: the one before the first that has to be reached again."""
    if not stage or place_of(stage, stages) < place_of(one.first, stages):
        return stage
    place = place_of(one.first, stages)
    return stages[place - 1].code if place else ""


def _word(stage: str, stages: tuple[Stage, ...]) -> str:
    return stages[place_of(stage, stages)].word if stage else "not begun"


def put_back(
    db: Fenced, job: Job, plans: tuple[PutBack, ...], change: str, unit: LengthUnit, hand: Hand
) -> None:
    """Puts drawers and cases back to where their parts are after a change; what was tapped is kept.

    Args:
        db: the session
        job: the job
        plans: what is made again
        change: the number of the change order, or the name of the revision where there is none
        unit: the unit in which the shop reads the piece
        hand: who took the agreement down; its mark is the change's own
    """
    told = [each.what for each in words_of(plans)]
    if told:
        sentence = f"Put back at the bench for {said_change(change)}: {'; '.join(told)}."
        note_history(db, hand.who, hand.now, sentence, job_id=job.id)
    for plan in plans:
        openings = _forget_openings(db, plan, hand)
        for one in plan.remakes:
            place = case_place(db, plan.carcase_id)
            if one.assembly != CASE:
                place.drawer = db.get(Drawer, (db.shop_id, plan.drawer_ids[one.assembly]))
            _put_back_one(db, place, one, plan, change, unit, hand, {} if place.drawer else openings)


def _put_back_one(
    db: Fenced,
    place: Place,
    one: Remake,
    plan: PutBack,
    change: str,
    unit: LengthUnit,
    hand: Hand,
    openings: Mapping[str, Sizes],
) -> None:
    progress = place.progress
    ticks = _ticks_off(one, progress) if place.drawer else []
    sizes = {
        mark.name: [mark.value, mark.text]
        for mark in progress.sizes
        if place.drawer and _is_forgotten(mark.name, one, is_anew=one.assembly in plan.anew)
    }
    lines = [short_words(one), *(in_unit(words, unit) for words in full_words(one))]
    told = {"stage": one.first, "until": one.until, "change": change, "text": "\n".join(lines)}
    part = place.drawer.id if place.drawer else f"{plan.carcase_id}:case"
    kept = {"ticks": ticks, "sizes": sizes, "openings": openings}
    note_tap(db, place, hand, EventKind.PUT_BACK, told | kept, part=part)
    for code in ticks:
        note_tap(db, place, hand, EventKind.UNTICKED, {"tick": code}, part=f"{part}:{code}")
    for name in sizes:
        gone = {"size": name, "value": None, "text": ""}
        note_tap(db, place, hand, EventKind.MEASURED, gone, part=f"{part}:{name}")
    refold(place)


def _ticks_off(one: Remake, progress: Progress) -> list[str]:
    """The lines of the two lists that are gone through again."""
    place, off = place_of(one.first, drawer_stages()), set[str]()
    if place <= place_of("joints", drawer_stages()):
        off |= {line.code for line in before_marking()}
    if place <= place_of("glued", drawer_stages()):
        off |= {line.code for line in dry_fit()}
    return [mark.name for mark in progress.ticks if mark.name in off]


def _is_forgotten(name: str, one: Remake, *, is_anew: bool) -> bool:
    place = place_of(one.first, drawer_stages())
    if name.startswith(OPENING):
        return is_anew and place <= place_of("fitted", drawer_stages())
    if name.startswith(DRY):
        return place <= place_of("glued", drawer_stages())
    return one.forgets_size(name)


def _forget_openings(db: Fenced, plan: PutBack, hand: Hand) -> dict[str, Sizes]:
    """Takes back what was measured of openings that change before anything is fitted to them.

    Returns:
        What it was, by the id of each drawer that nobody makes again.
    """
    found: dict[str, Sizes] = {}
    done, fitted = {one.assembly for one in plan.remakes}, place_of("fitted", drawer_stages())
    for code in sorted(plan.anew - done & plan.drawer_ids.keys()):
        stage = plan.standing.drawers.get(code, "")
        if code in plan.drawer_ids and (not stage or place_of(stage, drawer_stages()) < fitted):
            place = case_place(db, plan.carcase_id)
            place.drawer = db.get(Drawer, (db.shop_id, plan.drawer_ids[code]))
            sizes = [mark for mark in place.progress.sizes if mark.name.startswith(OPENING)]
            found[place.drawer.id if place.drawer else ""] = {
                mark.name: [mark.value, mark.text] for mark in sizes
            }
            for name in [mark.name for mark in sizes]:
                gone = {"size": name, "value": None, "text": ""}
                part = f"{plan.drawer_ids[code]}:{name}"
                note_tap(db, place, hand, EventKind.MEASURED, gone, part=part)
    return found


def leave_as_it_was(db: Fenced, place: Place, change: str, hand: Hand) -> None:
    """Says of what a change put back that it stands as it was: its stages, ticks and sizes come back.

    Raises:
        Refused: the work has gone on since, the ten minutes have gone by, or the job is not worked on
    """
    if not any(each.change == change for each in place.progress.again):
        return
    refuse_at_rest(place)
    answer = can_leave(place.progress, hand.now, is_maker=hand.is_maker)
    if not answer.allowed or answer.stage != change:
        raise Refused(f"{place.name} stays as it is: {answer.reason or 'a later change came after it'}.", 403)
    last = place.progress.again[-1]
    note_tap(db, place, hand, EventKind.STANDS, {"change": change})
    refold(place)
    _bring_back(db, place, last, hand)


def _bring_back(db: Fenced, place: Place, last: Again, hand: Hand) -> None:
    """The ticks and sizes that were taken off, but for those that were set since."""
    kept = next(row.data for row in place.rows if row.id == last.id)
    for code in kept["ticks"]:
        if code not in place.progress.ticked:
            note_tap(db, place, hand, EventKind.TICKED, {"tick": code}, part=code)
    _measure_again(db, place, kept["sizes"], hand, "")
    for drawer_id, sizes in kept.get("openings", {}).items():
        drawer = db.get(Drawer, (db.shop_id, drawer_id))
        of_drawer = Place(place.job, place.carcase, drawer, place.rows)
        _measure_again(db, of_drawer, sizes, hand, f"{drawer_id}:")


def _measure_again(db: Fenced, place: Place, sizes: Sizes, hand: Hand, part: str) -> None:
    measured = place.progress.measured
    for name, (value, text) in sizes.items():
        if name not in measured:
            data = {"size": name, "value": value, "text": text}
            note_tap(db, place, hand, EventKind.MEASURED, data, part=f"{part}{name}")
