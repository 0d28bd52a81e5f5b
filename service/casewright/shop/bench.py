"""What is tapped at the bench: stages reached and taken back, ticks, sizes and notes; and the fold over it.

Every tap is an event that is kept for good. Where a drawer or a case stands is the fold over its events, kept
in its row by the same transaction, so that a board need not fold what a shop has ever tapped.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import select

from casewright.labour.bench import BenchEvent as Tap
from casewright.labour.bench import (
    CaseProgress,
    DrawerProgress,
    EventKind,
    Progress,
    case_progress,
    drawer_progress,
)
from casewright.labour.next_step import Step, can_take_back, next_case_step, next_step
from casewright.labour.stages import Stage, case_stages, drawer_stages, every_tick, place_of
from casewright.measure.saying import say, strung
from casewright.records.base import new_id
from casewright.records.bench import BenchEvent, Carcase, Drawer
from casewright.records.board import IN_HAND, Tapped, tapped
from casewright.records.jobs import Job, JobState
from casewright.records.sessions import Fenced
from casewright.shop.refusals import NotFound, Refused


@dataclass(frozen=True, slots=True, kw_only=True)
class Hand:
    """Who taps, when, and the mark of the tap.

    Attributes:
        mark: sent twice, it counts once
        now: the moment
        who: the person's name
        person_id: the person
        is_maker: whether the person is the owner or a maker
    """

    mark: str
    now: datetime
    who: str
    person_id: str
    is_maker: bool


AT_WORK = (*IN_HAND, JobState.DELIVERED)
"""The states of a job in which taps count: the bench works on it, or sees to it where it was delivered.

A phone without a signal sends its taps late, and they must not be lost because the piece has left meanwhile.
"""
MOST_CHANGES = 4
TOLD = ("stage", "tick", "size", "value", "text", "until", "change")
"""What of a tap the core reads."""
SAME = 1e-6
"""Two sizes nearer than this are one: a hundredth of what any gauge shows [in]."""


class NotYet(Refused):
    """A stage that cannot be reached yet, with what it needs first."""


@dataclass(slots=True)
class Place:
    """A drawer, or a case where there is no drawer, with all that was tapped about its case.

    Attributes:
        job: its job
        carcase: the case
        drawer: the drawer; None where the case itself is meant
        rows: what was tapped about the case and its drawers, in the order of time
    """

    job: Job
    carcase: Carcase
    drawer: Drawer | None
    rows: list[Tapped] = field(default_factory=list)

    @property
    def case(self) -> CaseProgress:
        """Where the case stands."""
        return case_progress(taps_of(self.rows, None))

    @property
    def progress(self) -> Progress:
        """Where the drawer stands, or the case where that is meant."""
        return self.case if self.drawer is None else self.drawer_progress

    @property
    def drawer_progress(self) -> DrawerProgress:
        """Where the drawer stands; at the beginning where there is none."""
        return drawer_progress(taps_of(self.rows, self.drawer.id) if self.drawer else ())

    @property
    def step(self) -> Step:
        """What comes next."""
        return (
            next_case_step(self.case) if self.drawer is None else next_step(self.drawer_progress, self.case)
        )

    @property
    def stages(self) -> tuple[Stage, ...]:
        """The stages that it goes through."""
        return case_stages() if self.drawer is None else drawer_stages()

    @property
    def name(self) -> str:
        """What it is called in a sentence."""
        return f"Drawer {self.drawer.code}" if self.drawer else "The case"


def taps_of(rows: Iterable[Tapped], drawer_id: str | None) -> list[Tap]:
    """The taps about one drawer, or about the case itself, as the core reads them."""
    return [tap_from(row) for row in rows if row.drawer_id == drawer_id]


def tap_from(row: Tapped) -> Tap:
    """One tap as the core reads it. Its id is the row's: ids sort by their making, marks do not."""
    known = {name: row.data[name] for name in TOLD if name in row.data}
    return Tap(id=row.id, kind=EventKind(row.kind), at=row.at, who=row.who, **known)


def drawer_place(db: Fenced, drawer_id: str) -> Place:
    """A drawer with what was tapped about its case, held until the end of the transaction.

    Raises:
        NotFound: the shop has no such drawer
    """
    drawer = db.get(Drawer, (db.shop_id, drawer_id))
    if drawer is None:
        raise NotFound("drawer")
    place = case_place(db, drawer.carcase_id)
    place.drawer = drawer
    return place


def case_place(db: Fenced, carcase_id: str) -> Place:
    """A case with what was tapped about it, held until the end of the transaction.

    A drawer's gates look at its case, so whoever taps holds the case: taps go one after another and count.

    Raises:
        NotFound: the shop has no such case
    """
    found = db.execute(
        select(Job, Carcase)
        .join(Carcase, (Carcase.shop_id == Job.shop_id) & (Carcase.job_id == Job.id))
        .where(Carcase.id == carcase_id)
        .with_for_update(of=Carcase)
    ).first()
    if found is None:
        raise NotFound("case")
    return Place(found[0], found[1], None, list(tapped(db, [carcase_id])))


def reach_stage(db: Fenced, place: Place, stage: str, hand: Hand) -> None:
    """Notes that a drawer or a case has reached a stage; one that it has reached already tells nothing new.

    Raises:
        NotYet: another stage comes first, or the stage needs something
        Refused: there is no such stage, the drawer has no opening any more, or the job is not worked on
    """
    _refuse_unknown(stage, place.stages)
    if place.progress.has_reached(stage) or _taken(db, [hand.mark]):
        return
    _refuse_idle(place)
    step = place.step
    if step.stage is None or step.stage.code != stage:
        word = step.stage.word if step.stage else ""
        raise NotYet(f"{place.name} is not there yet: “{word}” comes first.")
    if step.held:
        held = strung("; ", step.held)
        raise NotYet(say("{}: “{}” is not allowed yet: {}.", place.name, step.stage.word, held))
    note_tap(db, place, hand, EventKind.REACHED, {"stage": stage})
    refold(place)


def take_back_stage(db: Fenced, place: Place, stage: str, hand: Hand) -> None:
    """Takes back the stage that was reached last: for ten minutes anybody, later the owner or a maker.

    Raises:
        Refused: the ten minutes have gone by, other stages were reached since, or the job is not worked on
    """
    _refuse_unknown(stage, place.stages)
    if not place.progress.has_reached(stage) or _taken(db, [hand.mark]):
        return
    refuse_at_rest(place)
    if place.progress.stage != stage:
        raise Refused(f"{place.name} has gone on since; take back its last stage first.")
    answer = can_take_back(place.progress, hand.now, is_maker=hand.is_maker)
    if not answer.allowed:
        raise Refused(f"{place.name} stays as it is: {answer.reason}.", 403)
    note_tap(db, place, hand, EventKind.TAKEN_BACK, {"stage": stage})
    refold(place)


def set_ticks(db: Fenced, place: Place, changes: Mapping[str, bool], hand: Hand) -> None:
    """Ticks lines of the two lists, or takes ticks off; a line that stands so already is passed over.

    Raises:
        Refused: there is no such line, the drawer has no opening any more, or the job is not worked on
    """
    strange = [code for code in changes if code not in {line.code for line in every_tick()}]
    if strange:
        raise Refused(f"Neither list has a line “{strange[0][:40]}”.", 404)
    ticked, taken = place.progress.ticked, _taken(db, [f"{hand.mark}:{code}" for code in changes])
    for code, on in changes.items():
        if (code in ticked) is not on and f"{hand.mark}:{code}" not in taken:
            _refuse_idle(place)
            kind = EventKind.TICKED if on else EventKind.UNTICKED
            note_tap(db, place, hand, kind, {"tick": code}, part=code)


def set_sizes(db: Fenced, place: Place, sizes: Mapping[str, tuple[float | None, str]], hand: Hand) -> None:
    """Keeps sizes that were measured, each with the text as it was typed; None takes one back.

    Args:
        db: the session
        place: the drawer
        sizes: by name, such as `SL.thickness`: the size in inches, and how it was typed
        hand: who measured, and when

    Raises:
        Refused: the drawer has no opening any more, or the job is not worked on
    """
    held, taken = place.progress.measured, _taken(db, [f"{hand.mark}:{size}" for size in sizes])
    for size, (value, text) in sizes.items():
        if not is_same(held.get(size), value) and f"{hand.mark}:{size}" not in taken:
            _refuse_idle(place)
            data = {"size": size, "value": value, "text": text[:60]}
            note_tap(db, place, hand, EventKind.MEASURED, data, part=size)


def is_same(held: float | None, size: float | None) -> bool:
    """Whether a size is the one that was measured before, or both are none."""
    if held is None or size is None:
        return held is size
    return abs(held - size) < SAME


def add_note(db: Fenced, place: Place, text: str, hand: Hand) -> None:
    """Keeps a note about a drawer or a case, whatever its job's state: it moves nothing."""
    if text and not _taken(db, [hand.mark]):
        note_tap(db, place, hand, EventKind.NOTE, {"text": text})


def refold(place: Place) -> bool:
    """Brings the kept stage of a drawer or a case in step with the fold over its events.

    Returns:
        Whether it was out of step.
    """
    row, progress = place.drawer or place.carcase, place.progress
    last = progress.reached[-1] if progress.reached else None
    again = again_words(progress)
    fresh = (last.name, last.at, last.who, again) if last else ("", None, "", again)
    if (row.stage, row.stage_at, row.stage_by, row.again) == fresh:
        return False
    row.stage, row.stage_at, row.stage_by, row.again = fresh
    return True


def again_words(progress: Progress) -> str:
    """The change orders for which parts are made again, the latest first, as many as a row has room for."""
    names = dict.fromkeys(each.change for each in reversed(progress.again))
    return ", ".join([*names][:MOST_CHANGES])


def note_tap(
    db: Fenced, place: Place, hand: Hand, kind: EventKind, data: dict[str, Any], *, part: str = ""
) -> None:
    """Keeps one event; it comes after all that was tapped about the case, whatever the clocks say.

    Args:
        db: the session
        place: the drawer or the case
        hand: who, when, and the mark of the tap
        kind: what it says
        data: what it says of it
        part: tells one event of a tap from another
    """
    last = place.rows[-1].at if place.rows else None
    at = hand.now if last is None or hand.now > last else last + timedelta(microseconds=1)
    drawer_id = place.drawer.id if place.drawer else None
    made = BenchEvent(
        id=new_id(),
        job_id=place.carcase.job_id,
        carcase_id=place.carcase.id,
        drawer_id=drawer_id,
        kind=kind.value,
        data=data,
        tap=f"{hand.mark}:{part}" if part else hand.mark,
        at=at,
        who=hand.who,
        person_id=hand.person_id,
    )
    db.add(made)
    place.rows.append(Tapped(place.carcase.id, drawer_id, made.id, kind.value, data, at, hand.who))


def _taken(db: Fenced, marks: list[str]) -> set[str]:
    """The marks that came before. Writers of one shop go one after another, so a look is enough."""
    return set(db.scalars(select(BenchEvent.tap).where(BenchEvent.tap.in_(marks))))


def _refuse_unknown(stage: str, stages: tuple[Stage, ...]) -> None:
    try:
        place_of(stage, stages)
    except ValueError as error:
        raise Refused(str(error), 404) from None


def at_rest(job: Job) -> str:
    """Why nothing is tapped for a job now; empty where its state lets the bench work on it."""
    if job.state in AT_WORK:
        return ""
    return (
        f"Job {job.number} stands at “{job.state.value}”: the office moves it before the bench works on it."
    )


def refuse_at_rest(place: Place) -> None:
    """Lets nobody tap for a job that the bench does not work on.

    Raises:
        Refused: its state does not let the bench work on it
    """
    said = at_rest(place.job)
    if said:
        raise Refused(said)


def _refuse_idle(place: Place) -> None:
    refuse_at_rest(place)
    if place.drawer is not None and place.drawer.gone:
        raise Refused(f"{place.name} has no opening in the present design; what was done to it is kept.")
