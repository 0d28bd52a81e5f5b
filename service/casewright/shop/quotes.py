"""Quotes from draft to answer: they move along arrows only, and once sent nothing in them changes."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from pydantic import ValidationError
from sqlalchemy import update

from casewright.pieces.words.offer import Offer
from casewright.records.base import new_id
from casewright.records.jobs import Customer, Job, JobState, Unit
from casewright.records.papers import Quote, QuoteState
from casewright.records.quotes import quote_with_job, quotes_of
from casewright.records.sessions import Fenced
from casewright.records.units import has_units
from casewright.shop.jobs import NO_UNIT, UNDECIDED, move_job, refuse_if_over
from casewright.shop.keeping import next_number, note_history
from casewright.shop.refusals import NotFound, Refused, Stale

ARROWS: dict[QuoteState, tuple[QuoteState, ...]] = {
    QuoteState.DRAFT: (QuoteState.SENT,),
    QuoteState.SENT: (
        QuoteState.ACCEPTED,
        QuoteState.DECLINED,
        QuoteState.EXPIRED,
        QuoteState.SUPERSEDED,
    ),
    QuoteState.ACCEPTED: (),
    QuoteState.DECLINED: (QuoteState.SUPERSEDED,),
    QuoteState.EXPIRED: (QuoteState.SUPERSEDED,),
    QuoteState.SUPERSEDED: (),
}
"""Where a quote may go from each state."""
MOST_DAYS = 730
WHY_NOT = {
    QuoteState.DRAFT: "It is a draft and has not been sent.",
    QuoteState.SENT: "It has been sent, so nothing in it changes any more; make a new revision.",
    QuoteState.ACCEPTED: "It has been accepted, and stays as it was accepted.",
    QuoteState.DECLINED: "It has been declined; make a new revision.",
    QuoteState.EXPIRED: "It has expired; make a new revision at today's prices.",
    QuoteState.SUPERSEDED: "A newer revision has taken its place.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadedQuote:
    """A quote with its job and its customer."""

    quote: Quote
    job: Job
    customer: Customer

    @property
    def number(self) -> str:
        """The number as it is read and written."""
        return shown_number(self.quote.number)

    @property
    def name(self) -> str:
        """Number and revision, as they stand in the history."""
        return f"quote {self.number}, revision {self.quote.revision}"

    @property
    def offer(self) -> Offer | None:
        """What was issued; nothing for a draft, and nothing where what is kept cannot be read back."""
        try:
            return None if self.quote.offer is None else Offer.model_validate(self.quote.offer)
        except ValidationError:
            return None  # a row that was changed by hand: whoever shows it says that there is nothing to show


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftWords:
    """What a draft says beside what is worked out.

    Attributes:
        note: a few words to the customer
        days: how many days it stands; None for the shop's usual
        ready_by: when the job is promised; None for what the estimate promises
        left_out: the ids of the options that are not offered
    """

    note: str = ""
    days: int | None = None
    ready_by: date | None = None
    left_out: tuple[str, ...] = ()

    @staticmethod
    def of(quote: Quote) -> "DraftWords":
        """What a quote's draft says."""
        held = quote.choices
        ready_by = held.get("ready_by")
        return DraftWords(
            note=quote.note,
            days=held.get("days"),
            ready_by=date.fromisoformat(ready_by) if ready_by else None,
            left_out=tuple(held.get("left_out", ())),
        )

    @property
    def choices(self) -> dict[str, Any]:
        """The same, as it is kept."""
        return {
            "days": self.days,
            "ready_by": self.ready_by.isoformat() if self.ready_by else None,
            "left_out": list(self.left_out),
        }

    def instead_of(self, other: "DraftWords") -> dict[str, str]:
        """What these words say where others say something else, by the fields of the draft's form."""
        mine, others = set(self.left_out), set(other.left_out)
        differ = {f"offer.{each}": "left out" if each in mine else "on the quote" for each in mine ^ others}
        if self.note != other.note:
            differ["note"] = self.note
        if self.days != other.days:
            differ["days"] = str(self.days or "")
        if self.ready_by != other.ready_by:
            differ["ready_by"] = self.ready_by.isoformat() if self.ready_by else ""
        return differ


def shown_number(number: int) -> str:
    """A quote's number as it is read: Q-0012."""
    return f"Q-{number:04d}"


def state_on(state: QuoteState, valid_until: date | None, today: date) -> QuoteState:
    """Where a quote stands on a day: a sent one expires by itself when its last day is over."""
    if state is QuoteState.SENT and valid_until is not None and valid_until < today:
        return QuoteState.EXPIRED
    return state


def load_quote(db: Fenced, quote_id: str) -> LoadedQuote:
    """A quote of the shop.

    Raises:
        NotFound: the shop has no such quote
    """
    found = quote_with_job(db, quote_id)
    if found is None:
        raise NotFound("quote")
    quote, job, customer = found
    return LoadedQuote(quote=quote, job=job, customer=customer)


def draft_quote(db: Fenced, job: Job, who: str, now: datetime) -> Quote:
    """A draft for a job under the shop's next number; the one that it has, where it has one.

    Raises:
        Refused: the job is closed or lost
    """
    refuse_if_over(job)
    held = _draft(quotes_of(db, job.id))
    if held is not None:
        return held
    return _new_draft(db, job, next_number(db, "quote"), 1, who, now, DraftWords())


def _draft(quotes: Iterable[Quote]) -> Quote | None:
    return next((each for each in quotes if each.state is QuoteState.DRAFT), None)


def _new_draft(
    db: Fenced, job: Job, number: int, revision: int, who: str, now: datetime, words: DraftWords
) -> Quote:
    made = Quote(
        id=new_id(),
        job_id=job.id,
        number=number,
        revision=revision,
        state=QuoteState.DRAFT,
        note=words.note,
        choices=words.choices,
        created_at=now,
    )
    db.add(made)
    db.flush()
    what = f"Drew up quote {shown_number(number)}{f', revision {revision}' if revision > 1 else ''}."
    note_history(db, who, now, what, job_id=job.id)
    return made


def change_draft(db: Fenced, held: LoadedQuote, words: DraftWords, version: int) -> None:
    """Changes what a draft says.

    Raises:
        Refused: it is no draft any more
        Stale: somebody else saved since the version that the form shows
    """
    _refuse_unless_draft(held.quote)
    theirs = DraftWords.of(held.quote).instead_of(words)
    if not theirs:  # whoever says what is saved already, such as by a second press, is in nobody's way
        return
    if held.quote.version != version:
        raise Stale(theirs)
    held.quote.note, held.quote.choices = words.note, words.choices


def remove_draft(db: Fenced, held: LoadedQuote, who: str, now: datetime) -> None:
    """Throws a draft away; what was sent is never thrown away.

    Raises:
        Refused: it is no draft any more
    """
    _refuse_unless_draft(held.quote)
    db.delete(held.quote)
    note_history(db, who, now, f"Threw the draft of {held.name} away.", job_id=held.job.id)


def _refuse_unless_draft(quote: Quote) -> None:
    if quote.state is not QuoteState.DRAFT:
        raise Refused(WHY_NOT[quote.state])


def new_revision(db: Fenced, held: LoadedQuote, who: str, now: datetime, today: date) -> Quote:
    """A draft that is to take the place of a quote that was sent, declined or has expired.

    Raises:
        Refused: it is a draft itself, was accepted, or has been superseded; the job has another draft, or
            is closed or lost
    """
    refuse_if_over(held.job)
    settle(db, held, now, today)
    if QuoteState.SUPERSEDED not in ARROWS[held.quote.state]:
        raise Refused(WHY_NOT[held.quote.state])
    quotes = quotes_of(db, held.job.id)
    draft = _draft(quotes)
    if draft is not None and draft.number != held.quote.number:
        raise Refused(
            f"The job has a draft already, {shown_number(draft.number)}; send it or delete it first."
        )
    if draft is not None:
        return draft
    newest = max(each.revision for each in quotes if each.number == held.quote.number)
    words = DraftWords.of(held.quote)
    kept = DraftWords(note=words.note, days=words.days, left_out=words.left_out)
    return _new_draft(db, held.job, held.quote.number, newest + 1, who, now, kept)


def settle(db: Fenced, held: LoadedQuote, now: datetime, today: date) -> QuoteState:
    """Writes down that a quote has expired, where it has; gives where it stands now."""
    state = state_on(held.quote.state, held.quote.valid_until, today)
    if state is not held.quote.state:
        move_quote(db, held, state, "the calendar", now, "its last day is over")
    return state


def move_quote(
    db: Fenced, held: LoadedQuote, state: QuoteState, who: str, now: datetime, why: str = ""
) -> None:
    """Moves a quote to another state, along the arrows only.

    Raises:
        Refused: there is no arrow
    """
    quote = held.quote
    if state not in ARROWS[quote.state]:
        raise Refused(WHY_NOT[quote.state])
    was, quote.state = quote.state, state
    what = f"{held.name[:1].upper()}{held.name[1:]}, is {state.value} now{f': {why}' if why else ''}."
    before, after = {"state": was.value}, {"state": state.value}
    note_history(db, who, now, what, job_id=held.job.id, before=before, after=after)


def supersede_others(db: Fenced, held: LoadedQuote, states: set[QuoteState], who: str, now: datetime) -> None:
    """Lets a quote take the place of the job's other quotes that stand in some states.

    For one that is sent these are earlier revisions of its number; for one that is accepted, whatever else
    of the job still waits for an answer.
    """
    for other in quotes_of(db, held.job.id):
        same = other.number == held.quote.number
        open_still = other.state is QuoteState.SENT and held.quote.state is QuoteState.ACCEPTED
        if other.id != held.quote.id and ((same and other.state in states) or open_still):
            older = LoadedQuote(quote=other, job=held.job, customer=held.customer)
            move_quote(db, older, QuoteState.SUPERSEDED, who, now, f"{held.name} takes its place")


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a customer says to a quote.

    Attributes:
        accepts: yes or no
        name: who says so
        words: what else they said
        way: how the answer came
        who: who writes it down: the customer, or a person of the shop
    """

    accepts: bool
    name: str
    words: str
    way: str
    who: str


def answer_quote(db: Fenced, held: LoadedQuote, answer: Answer, now: datetime, today: date) -> bool:
    """Takes an answer down: once, and only while the quote is sent and stands.

    Returns:
        Whether the answer was taken; where it was not, the quote's state says why.

    Raises:
        Refused: the job is over, or every unit has been taken out that would be accepted
    """
    if settle(db, held, now, today) is not QuoteState.SENT:
        return False
    quote, job = held.quote, held.job
    refuse_if_over(job, "take an answer down")
    if answer.accepts and not has_units(db, job.id):
        raise Refused(NO_UNIT.format("accepted"))
    state = QuoteState.ACCEPTED if answer.accepts else QuoteState.DECLINED
    move_quote(db, held, state, answer.who, now, f"{state.value} by {answer.name} {answer.way}")
    quote.answered_at, quote.answered_name, quote.answer_note = now, answer.name, answer.words
    quote.answered_way = answer.way
    if answer.accepts:
        _approve_units(db, held, answer.who, now)
        supersede_others(db, held, set(), answer.who, now)
        if job.state in UNDECIDED:  # one that is at work already stays where it is
            move_job(db, job, JobState.ACCEPTED, answer.who, now, why=f"{held.name}, accepted")
    return True


def _approve_units(db: Fenced, held: LoadedQuote, who: str, now: datetime) -> None:
    """Locks each unit at the revision that was quoted, whatever has been drawn since."""
    units: Sequence[dict[str, Any]] = (held.quote.basis or {}).get("units", ())
    for each in units:
        db.execute(
            update(Unit)
            .where(Unit.id == each["id"])
            .values(approved=each["revision"], version=Unit.version + 1)
            .execution_options(synchronize_session=False)
        )
        what = f"Approved unit {each['code']} at revision {each['revision']}, as in {held.name}."
        note_history(db, who, now, what, job_id=held.job.id)
