"""What happened at the bench, tap by tap, and where a drawer or a case stands by it.

Taps come from several phones, late, twice, and in any order. Each carries an id; the fold sorts them by their
time and counts an id once, so that the same taps always tell the same story.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Any

from casewright.labour.stages import Stage, case_stages, drawer_stages, place_of
from casewright.measure.units import Count, Inches


class EventKind(StrEnum):
    """What a tap says."""

    REACHED = "reached"
    TAKEN_BACK = "taken_back"
    TICKED = "ticked"
    UNTICKED = "unticked"
    MEASURED = "measured"
    NOTE = "note"
    PUT_BACK = "put_back"
    """A change after approval was agreed: parts are made again, from a stage on."""
    STANDS = "stands"
    """That was wrong: it stands as it was before."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchEvent:
    """One tap at the bench, about one drawer or one case.

    Attributes:
        id: its own mark, made where it was tapped
        kind: what it says
        at: when, with its time zone
        who: who tapped
        stage: for a stage that was reached or taken back, its code
        tick: for a tick, the code of its line
        size: for a measured size, its name: part and size, such as `SL.thickness` or `opening.height`
        value: for a measured size, how much; None takes the size back [in]
        text: for a note, what it says; for what is put back, the parts that are made again
        until: for what is put back, the code of the stage by which all is made again
        change: for what is put back or stands after all, the number of the change order
    """

    id: str
    kind: EventKind
    at: datetime
    who: str
    stage: str = ""
    tick: str = ""
    size: str = ""
    value: Inches | None = None
    text: str = ""
    until: str = ""
    change: str = ""

    def __post_init__(self) -> None:
        if not self.id:
            raise ValueError("A tap needs an id, or it would count twice when it is sent twice.")
        if self.at.utcoffset() is None:
            raise ValueError("The time of a tap needs its time zone.")
        for needed in NEEDS.get(self.kind, ()):
            if not getattr(self, needed):
                raise ValueError(f"A tap of the kind “{self.kind}” names its {needed}.")
        if self.value is not None and self.value < 0:
            raise ValueError(f"{self.size}: a measured size is not below nothing.")


NEEDS = {
    EventKind.REACHED: ("stage",),
    EventKind.TICKED: ("tick",),
    EventKind.UNTICKED: ("tick",),
    EventKind.MEASURED: ("size",),
    EventKind.NOTE: ("text",),
    EventKind.PUT_BACK: ("stage", "until", "change"),
    EventKind.STANDS: ("change",),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """Something that stands, with who set it and when.

    Attributes:
        name: a stage, a line of the list, or a size
        at: when
        who: who
        value: for a size, how much [in]
        text: for a note, what it says
    """

    name: str
    at: datetime
    who: str
    value: Inches | None = None
    text: str = ""


REVISION = "revision"
"""How a change is called that was approved without an order."""


def said_change(change: str) -> str:
    """What a change is called in a sentence.

    Args:
        change: the number of a change order, or the name of a revision that was approved without one

    Returns:
        Such as `change order CO-0002`, or `revision 3`.

    Source: our own words.
    """
    return change if change.startswith(REVISION) else f"change order {change}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Again:
    """Parts that are made again after a change that was agreed, until all of them are.

    Attributes:
        change: the number of the change order, or the name of the revision that was approved without one
        stage: the first stage that has to be reached again
        until: the stage by which all is made again
        before: the stages that were reached when it was put back
        kept: how many of them hold on [dimensionless]
        text: which parts
        at: when
        who: who took the agreement down
        id: the tap that put it back
    """

    change: str
    stage: str
    until: str
    before: tuple[Mark, ...]
    kept: Count
    text: str
    at: datetime
    who: str
    id: str

    @property
    def said(self) -> str:
        """What the change is called in a sentence."""
        return said_change(self.change)

    @property
    def was(self) -> str:
        """The stage at which it stood before; empty before the first."""
        return self.before[-1].name if self.before else ""

    @property
    def summary(self) -> str:
        """Which parts, in one line."""
        return self.text.partition("\n")[0]

    @property
    def details(self) -> tuple[str, ...]:
        """The same part by part."""
        return tuple(self.text.split("\n")[1:])


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """Where something stands at the bench.

    Attributes:
        reached: the stages that were reached, in order, none left out
        ticks: the lines of the dry-fit list that are ticked
        sizes: the sizes that are measured, each as it was measured last
        notes: what was noted, in order
        again: what has to be made again after changes, in the order in which they were agreed
    """

    reached: tuple[Mark, ...] = ()
    ticks: tuple[Mark, ...] = ()
    sizes: tuple[Mark, ...] = ()
    notes: tuple[Mark, ...] = ()
    again: tuple[Again, ...] = ()

    @property
    def stage(self) -> str:
        """The code of the last stage that was reached; empty before the first."""
        return self.reached[-1].name if self.reached else ""

    @property
    def ticked(self) -> frozenset[str]:
        """The codes of the lines that are ticked."""
        return frozenset(mark.name for mark in self.ticks)

    @property
    def measured(self) -> dict[str, Inches]:
        """The measured sizes by their names [in]."""
        return {mark.name: mark.value for mark in self.sizes if mark.value is not None}

    def has_reached(self, stage: str) -> bool:
        """Whether a stage was reached.

        Args:
            stage: its code

        Returns:
            True where it was, and was not taken back.

        Source: common practice.
        """
        return any(mark.name == stage for mark in self.reached)


class DrawerProgress(Progress):
    """Where a drawer stands at the bench."""

    __slots__ = ()


class CaseProgress(Progress):
    """Where a case stands at the bench."""

    __slots__ = ()


def drawer_progress(events: Iterable[BenchEvent]) -> DrawerProgress:
    """Where a drawer stands by what was tapped about it.

    Args:
        events: all taps about the drawer, in any order, repeats among them

    Returns:
        Its progress; a stage counts only when the one before it was reached.

    Source: common practice.
    """
    return DrawerProgress(**_folded(events, drawer_stages()))


def case_progress(events: Iterable[BenchEvent]) -> CaseProgress:
    """Where a case stands by what was tapped about it.

    Args:
        events: all taps about the case, in any order, repeats among them

    Returns:
        Its progress; a stage counts only when the one before it was reached.

    Source: common practice.
    """
    return CaseProgress(**_folded(events, case_stages()))


def once_each(events: Iterable[BenchEvent]) -> tuple[BenchEvent, ...]:
    """The taps in the order of their time, each id once.

    Args:
        events: taps in any order, repeats among them

    Returns:
        The taps; where two of one id differ, the earlier.

    Source: common practice.
    """
    found: dict[str, BenchEvent] = {}
    for event in sorted(events, key=_in_time):
        found.setdefault(event.id, event)
    return tuple(found.values())


def _in_time(event: BenchEvent) -> tuple[object, ...]:
    """By time; where two taps share it, by all else that they say, so that the order never matters."""
    value = -1.0 if event.value is None else event.value
    return (
        *(event.at, event.id, event.kind, event.who),
        *(event.stage, event.tick, event.size, value, event.text, event.until, event.change),
    )


def _folded(events: Iterable[BenchEvent], stages: tuple[Stage, ...]) -> dict[str, Any]:
    reached: list[Mark] = []
    again: list[Again] = []
    ticks: dict[str, Mark] = {}
    sizes: dict[str, Mark] = {}
    notes: list[Mark] = []
    for event in once_each(events):
        mark = _mark(event)
        match event.kind:
            case EventKind.REACHED:
                reached.extend(_if_next(mark, len(reached), stages))
            case EventKind.TAKEN_BACK:
                if reached and event.stage in ("", reached[-1].name):
                    reached.pop()
            case EventKind.TICKED:
                ticks.setdefault(mark.name, mark)
            case EventKind.UNTICKED:
                ticks.pop(mark.name, None)
            case EventKind.MEASURED:
                _measure(sizes, mark)
            case EventKind.NOTE:
                notes.append(mark)
            case EventKind.PUT_BACK:
                again = [*_not_done(again, reached, stages), _put_back(event, reached, stages)]
                del reached[again[-1].kept :]
            case EventKind.STANDS:
                again = _as_it_was(event.change, again, reached)
    return {
        "reached": tuple(reached),
        "ticks": tuple(ticks.values()),
        "sizes": tuple(sizes.values()),
        "notes": tuple(notes),
        "again": tuple(_not_done(again, reached, stages)),
    }


def _put_back(event: BenchEvent, reached: Sequence[Mark], stages: tuple[Stage, ...]) -> Again:
    """What a change puts back: the stages before the first that has to be reached again hold on."""
    return Again(
        change=event.change,
        stage=event.stage,
        until=event.until,
        before=tuple(reached),
        kept=min(len(reached), place_of(event.stage, stages)),
        text=event.text,
        at=event.at,
        who=event.who,
        id=event.id,
    )


def _not_done(again: Iterable[Again], reached: Sequence[Mark], stages: tuple[Stage, ...]) -> list[Again]:
    """What has still to be made again: the stage by which it is done has not been reached since."""
    return [each for each in again if place_of(each.until, stages) >= len(reached)]


def _as_it_was(change: str, again: Sequence[Again], reached: list[Mark]) -> list[Again]:
    """The stages that were reached before the last change come back, unless the work has gone on since."""
    if again and again[-1].change == change and len(reached) == again[-1].kept:
        reached[:] = again[-1].before
    return [each for each in again if each.change != change]


def _mark(event: BenchEvent) -> Mark:
    name = event.stage or event.tick or event.size
    return Mark(name=name, at=event.at, who=event.who, value=event.value, text=event.text)


def _if_next(mark: Mark, done: Count, stages: tuple[Stage, ...]) -> Iterator[Mark]:
    """The mark, where its stage is the next; a stage reached twice or too soon tells nothing new."""
    if done < len(stages) and stages[done].code == mark.name:
        yield mark


def _measure(sizes: dict[str, Mark], mark: Mark) -> None:
    """Keeps the last measure of a size; one without a value takes it back."""
    sizes.pop(mark.name, None)
    if mark.value is not None:
        sizes[mark.name] = mark
