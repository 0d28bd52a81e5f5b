"""What happened at the bench, tap by tap, and where a drawer or a case stands by it.

Taps come from several phones, late, twice, and in any order. Each carries an id; the fold sorts them by their
time and counts an id once, so that the same taps always tell the same story.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from casewright.labour.stages import Stage, case_stages, drawer_stages
from casewright.measure.units import Count, Inches


class EventKind(StrEnum):
    """What a tap says."""

    REACHED = "reached"
    TAKEN_BACK = "taken_back"
    TICKED = "ticked"
    UNTICKED = "unticked"
    MEASURED = "measured"
    NOTE = "note"


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
        text: for a note, what it says
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

    def __post_init__(self) -> None:
        if not self.id:
            raise ValueError("A tap needs an id, or it would count twice when it is sent twice.")
        if self.at.utcoffset() is None:
            raise ValueError("The time of a tap needs its time zone.")
        needed = NEEDS.get(self.kind, "")
        if needed and not getattr(self, needed):
            raise ValueError(f"A tap of the kind “{self.kind}” names its {needed}.")
        if self.value is not None and self.value < 0:
            raise ValueError(f"{self.size}: a measured size is not below nothing.")


NEEDS = {
    EventKind.REACHED: "stage",
    EventKind.TICKED: "tick",
    EventKind.UNTICKED: "tick",
    EventKind.MEASURED: "size",
    EventKind.NOTE: "text",
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """Where something stands at the bench.

    Attributes:
        reached: the stages that were reached, in order, none left out
        ticks: the lines of the dry-fit list that are ticked
        sizes: the sizes that are measured, each as it was measured last
        notes: what was noted, in order
    """

    reached: tuple[Mark, ...] = ()
    ticks: tuple[Mark, ...] = ()
    sizes: tuple[Mark, ...] = ()
    notes: tuple[Mark, ...] = ()

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
        *(event.stage, event.tick, event.size, value, event.text),
    )


def _folded(events: Iterable[BenchEvent], stages: tuple[Stage, ...]) -> dict[str, tuple[Mark, ...]]:
    reached: list[Mark] = []
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
    return {
        "reached": tuple(reached),
        "ticks": tuple(ticks.values()),
        "sizes": tuple(sizes.values()),
        "notes": tuple(notes),
    }


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
