"""What a job waits for, and how near its due date is: in words, for whoever opens the list in the morning."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime
from enum import StrEnum
from zoneinfo import ZoneInfo

from casewright.labour.stages import drawer_stages
from casewright.measure.money import show_money
from casewright.pricing.received import StagePaid, paid_stages, still_open
from casewright.pricing.stages import StageAmount
from casewright.records.job_list import SOON, STILL_DUE
from casewright.records.jobs import JobState
from casewright.records.papers import QuoteState
from casewright.records.standing import AgreedChange, QuoteRow, Standing
from casewright.shop.quotes import shown_number

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


class Nearness(StrEnum):
    """How near a due date is."""

    LATE = "late"
    SOON = "soon"
    FAR = "far"


@dataclass(frozen=True, slots=True, kw_only=True)
class DueWords:
    """A due date in words.

    Attributes:
        nearness: late, soon, or neither
        words: such as “3 days late” or “on Thursday”; empty where the date alone says enough
    """

    nearness: Nearness
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """From where a page is seen.

    Attributes:
        today: the day in the shop
        zone: its time zone
        symbol: the sign of its currency
    """

    today: date
    zone: ZoneInfo
    symbol: str

    def on(self, when: date | datetime) -> str:
        """A day as one says it: 5 Mar, and with its year where that is another."""
        day = when.astimezone(self.zone).date() if isinstance(when, datetime) else when
        year = "" if day.year == self.today.year else f" {day.year}"
        return f"{day.day} {MONTHS[day.month - 1]}{year}"


def due_words(due_on: date | None, state: JobState, today: date) -> DueWords | None:
    """A due date in words where it is late or near; None where there is none, or it no longer counts."""
    if due_on is None or state not in STILL_DUE:
        return None
    days = (due_on - today).days
    if days < 0:
        return DueWords(nearness=Nearness.LATE, words=f"{_span(-days)} late")
    if days == 0:
        return DueWords(nearness=Nearness.SOON, words="today")
    if days == 1:
        return DueWords(nearness=Nearness.SOON, words="tomorrow")
    if days <= SOON.days:
        return DueWords(nearness=Nearness.SOON, words=f"on {WEEKDAYS[due_on.weekday()]}")
    return DueWords(nearness=Nearness.FAR, words="")


def _span(days: int) -> str:
    if days < 14:
        return f"{days} {'day' if days == 1 else 'days'}"
    return f"{days // 7} weeks"


def what_waits(state: JobState, held: Standing, seen: Seen) -> tuple[str, ...]:
    """What a job waits for, the most urgent first.

    Args:
        state: where the job stands
        held: what there is of it
        seen: the day, and how money is written

    Returns:
        Short sentences without a stop; none for a job that waits for nothing.
    """
    waits: tuple[str, ...]
    match state:
        case JobState.ENQUIRY | JobState.QUOTED:
            waits = (_quote(held, seen),)
        case JobState.ACCEPTED:
            waits = (*_units(held), *_next_payment(held, seen)) or ("can be taken in hand",)
        case JobState.IN_HAND:
            waits = (*_units(held), *_drawers(held), *_next_payment(held, seen))
        case JobState.READY:
            waits = (*_left_open(held), "to be delivered", *_next_payment(held, seen))
        case JobState.DELIVERED:
            waits = (*_left_open(held), *_next_payment(held, seen)) or ("can be closed",)
        case JobState.CLOSED:
            waits = tuple(_still_owed(held, seen))
        case _:
            waits = ()
    return waits


def _quote(held: Standing, seen: Seen) -> str:
    newest = next((quote for quote in held.quotes if quote.state is not QuoteState.SUPERSEDED), None)
    if newest is None:
        return "no quote yet" if held.units else "no unit yet"
    return quote_words(newest, seen)


def quote_name(quote: QuoteRow) -> str:
    """What a quote is called: “Q-0012, revision 2”."""
    later = f", revision {quote.revision}" if quote.revision > 1 else ""
    return f"{shown_number(quote.number)}{later}"


def quote_words(quote: QuoteRow, seen: Seen) -> str:
    """Where a quote stands, with its name: “Q-0012 sent 5 Mar, no answer yet”."""
    return f"{quote_name(quote)} {quote_stands(quote, seen)}"


def quote_stands(quote: QuoteRow, seen: Seen) -> str:
    """Where a quote stands: “sent 5 Mar, opened 6 Mar, no answer yet”."""
    answered = f" {seen.on(quote.answered_at)}" if quote.answered_at else ""
    ended = f" on {seen.on(quote.valid_until)}" if quote.valid_until else ""
    match quote.state:
        case QuoteState.DRAFT:
            return "is not sent yet"
        case QuoteState.SENT if quote.valid_until and quote.valid_until < seen.today:
            return f"ran out{ended} without an answer"
        case QuoteState.SENT:
            sent = f" {seen.on(quote.issued_at)}" if quote.issued_at else ""
            opened = f", opened {seen.on(quote.opened_at)}" if quote.opened_at else ""
            return f"sent{sent}{opened}, no answer yet"
        case QuoteState.EXPIRED:
            return f"ran out{ended}"
        case QuoteState.SUPERSEDED:
            return "replaced by a later one"
        case _:
            return f"{quote.state.value}{answered}"


def _units(held: Standing) -> Iterator[str]:
    if not held.units:
        yield "no unit yet"


def _drawers(held: Standing) -> Iterator[str]:
    total = sum(held.drawers.values())
    if total:
        yield drawers_words(held)


def _left_open(held: Standing) -> Iterator[str]:
    """Drawers that the board holds back, in a shop that taps at all; one that never does is not nagged."""
    last, total = drawer_stages()[-1], sum(held.drawers.values())
    missing = total - held.drawers.get(last.code, 0)
    if missing and held.drawers.get("", 0) < total:
        yield f"{missing} of {total} drawer{'' if total == 1 else 's'} not {last.word} by the board"


def drawers_words(held: Standing) -> str:
    """How far the drawers of a job are: “3 of 11 drawers glued up”."""
    total = sum(held.drawers.values())
    noun = "drawer" if total == 1 else "drawers"
    furthest = next((one for one in reversed(drawer_stages()) if held.drawers.get(one.code)), None)
    if furthest is None:
        return f"{total} {noun}, none begun"
    count = held.drawers[furthest.code]
    if count < total:
        return f"{count} of {total} {noun} {furthest.word}"
    return f"the drawer is {furthest.word}" if total == 1 else f"all {total} {noun} {furthest.word}"


def _next_payment(held: Standing, seen: Seen) -> Iterator[str]:
    following = next((stage for stage in stages_of(held) if not stage.is_paid), None)
    if following:
        yield f"payment open: {following.trigger}, {show_money(following.open, seen.symbol)}"


def _still_owed(held: Standing, seen: Seen) -> Iterator[str]:
    owed = open_amount(held)
    if owed > 0:
        yield f"{show_money(owed, seen.symbol)} still open"


def stages_of(held: Standing) -> tuple[StagePaid, ...]:
    """The stage payments that were agreed, with what has come in of each; none before a quote is accepted."""
    quote = held.accepted
    agreed = tuple(
        StageAmount(trigger=stage["trigger"], amount=stage["amount_cents"])
        for stage in (quote.stages or () if quote else ())
    )
    return paid_stages(with_changes(agreed, held.changes) if agreed else (), held.received)


def with_changes(
    agreed: tuple[StageAmount, ...], changes: tuple[AgreedChange, ...]
) -> tuple[StageAmount, ...]:
    """The stage payments with what was changed since: more falls due by itself, less comes off the last."""
    stages = [*agreed]
    for change in changes:
        if change.total_cents >= 0:
            trigger = f"change order {change_number(change.number)}"
            stages.append(StageAmount(trigger=trigger, amount=change.total_cents))
            continue
        credit = -change.total_cents
        for place in reversed(range(len(stages))):
            taken = min(credit, stages[place].amount)
            stages[place] = replace(stages[place], amount=stages[place].amount - taken)
            credit -= taken
    return tuple(stages)


def change_number(number: int) -> str:
    """A change order's number as it is read: CO-0003."""
    return f"CO-{number:04d}"


def changed_by(held: Standing) -> int:
    """What the change orders that were agreed on add to what was agreed, with tax [cent]."""
    return sum(change.total_cents for change in held.changes) if held.accepted else 0


def open_amount(held: Standing) -> int:
    """What is still to come of what was agreed; below zero where too much came in [cent]."""
    agreed = held.accepted.total_cents if held.accepted else None
    return still_open((agreed or 0) + changed_by(held), held.received)
