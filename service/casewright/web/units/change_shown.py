"""What the pages of a change after approval have in common: its price, and what it does, in words."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from casewright.papers.writing import Writing
from casewright.records.jobs import Job, JobState
from casewright.web.frame.visits import Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class LineShown:
    """A line of the price of a change; working is empty for whoever may not see it."""

    label: str
    amount: str
    working: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceWords:
    """What a change does to one piece, in sentences; its name is empty where it is the only one."""

    name: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceShown:
    """What a change comes to.

    Attributes:
        lines: what adds up to it; none for whoever may not see how a price is made up
        asked: before tax
        tax: on it
        total: with tax
        is_less: whether it costs less than before
        hours: how many more or less, in words
        later: how much later it is ready, in words
        priced_by: whose figures it was priced with
    """

    lines: tuple[LineShown, ...]
    asked: str
    tax: str
    total: str
    is_less: bool
    hours: str
    later: str
    priced_by: str


def price_shown(
    visit: Visit, held: Mapping[str, Any], cents: tuple[int, int, int], writing: Writing
) -> PriceShown:
    """A price as its page shows it.

    Args:
        visit: who looks
        held: its lines, hours, weeks and whose figures, as a change order keeps them
        cents: what is asked before tax, the tax, and both [cent]
        writing: how the shop writes
    """
    asked, tax, total = (writing.money(each) for each in cents)
    lines = tuple(
        LineShown(label=line["label"], amount=writing.money(line["amount_cents"]), working=line["working"])
        for line in held["lines"]
    )
    return PriceShown(
        lines=lines if visit.is_owner else (),
        asked=asked,
        tax=tax,
        total=total,
        is_less=cents[0] < 0,
        hours=f"{abs(held['hours']):.1f} hours {'less' if held['hours'] < 0 else 'more'}",
        later=later_words(held["weeks"]),
        priced_by=held["priced_by"],
    )


def later_words(weeks: float, than: str = "") -> str:
    """How much later, to the half week: nobody knows it finer.

    Args:
        weeks: later; below zero for sooner [week]
        than: what it is held against, where that is not said beside it
    """
    halves = round(abs(weeks) * 2) / 2
    if not halves:
        return "as promised"
    noun = "week" if halves <= 1 else "weeks"
    return f"{halves:g} {noun} {'later' if weeks > 0 else 'sooner'}{than}"


def said_delivered(job: Job, when: str) -> str:
    """What to mind where the piece has left the shop; empty while it is there.

    Args:
        job: the job
        when: the day on which it came to its state, in words
    """
    if job.state is not JobState.DELIVERED:
        return ""
    return (
        f"The job is delivered since {when}: what changes stands at the customer's, and has to come back or "
        "is made there. A change can still be priced and agreed. The board shows jobs in hand: take this one "
        "back on its page before the work begins."
    )
