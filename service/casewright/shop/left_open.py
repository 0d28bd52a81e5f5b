"""What a job leaves open when it is delivered or closed: money, drawers, timers that run."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.labour.stages import drawer_stages
from casewright.measure.money import show_money
from casewright.records.hours import timers_on
from casewright.records.jobs import Job, JobState
from casewright.records.sessions import Fenced
from casewright.records.standing import Standing, standings
from casewright.shop.waiting import open_amount

ENDS = {(JobState.READY, JobState.DELIVERED), (JobState.DELIVERED, JobState.CLOSED)}
"""Moves before which somebody looks at what is open; the ways back are free."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOpen:
    """What is open on a job.

    Attributes:
        owed_cents: what is still to come of what was agreed; nothing where all is paid [cent]
        undone: how many drawers stand at each stage before the last, in words, the least done first
        drawers: how many drawers the job has
        timers: whose timers run or rest on it
    """

    owed_cents: int
    undone: tuple[tuple[int, str], ...]
    drawers: int
    timers: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.owed_cents or self.undone or self.timers)

    def sentences(self, symbol: str) -> tuple[str, ...]:
        """What is open, one sentence without a stop for each kind.

        Args:
            symbol: the sign of the shop's currency
        """
        return tuple(self._said(symbol))

    def _said(self, symbol: str) -> Iterator[str]:
        if self.owed_cents:
            yield f"{show_money(self.owed_cents, symbol)} of what was agreed has not come in"
        if self.undone:
            missing, last = sum(count for count, _ in self.undone), drawer_stages()[-1].word
            noun = "drawer is" if self.drawers == 1 else "drawers are"
            stand = ", ".join(f"{count} {word}" for count, word in self.undone)
            yield f"{missing} of {self.drawers} {noun} not {last} by the board: {stand}"
        if self.timers:
            names, run = ", ".join(self.timers), "a timer runs" if len(self.timers) == 1 else "timers run"
            yield f"{run} on it: {names}"


def left_open(db: Fenced, job: Job) -> LeftOpen:
    """What is open on a job; five queries."""
    return open_of(standings(db, [job.id])[job.id], tuple(timers_on(db, job.id)))


def open_of(held: Standing, timers: tuple[str, ...] = ()) -> LeftOpen:
    """What is open, by what there is of a job.

    Args:
        held: its money and drawers
        timers: whose timers run on it
    """
    before_last = [("", "not begun"), *((each.code, each.word) for each in drawer_stages()[:-1])]
    return LeftOpen(
        owed_cents=max(0, open_amount(held)),
        undone=tuple((held.drawers[code], word) for code, word in before_last if held.drawers.get(code)),
        drawers=sum(held.drawers.values()),
        timers=timers,
    )
