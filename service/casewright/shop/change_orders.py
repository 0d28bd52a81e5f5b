"""Change orders: what a change after approval costs, made once it was looked at, then agreed or withdrawn."""

import json
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.rework import Rework
from casewright.pieces.costs.change_price import ChangePrice, LostFeet, lost_feet, price_change
from casewright.pieces.words.changed_words import changed_words, work_words
from casewright.pieces.words.rework_words import change_words
from casewright.records.base import new_id
from casewright.records.change_orders import agreed_quotes, change_order_with_job
from casewright.records.jobs import Job, Unit
from casewright.records.papers import ChangeOrder
from casewright.records.people import Shop
from casewright.records.sessions import Fenced
from casewright.shop.bench import Hand
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import figures_from, figures_text
from casewright.shop.jobs import refuse_if_over
from casewright.shop.keeping import next_number, note_history
from casewright.shop.quotes import shown_number
from casewright.shop.refusals import NotFound, Refused
from casewright.shop.remaking import PutBack, put_back, remade_between
from casewright.shop.rework import reworked
from casewright.shop.units import LoadedUnit, units_of
from casewright.shop.waiting import change_number

TODAY = "the figures that hold now"
ANSWERED = "This change order was agreed on, and stays as it was agreed."
WITHDRAWN = "This change order was withdrawn; make a new one from the page of what the revision does."


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """A change with what it does and costs, before it is made an order.

    Attributes:
        before: the unit as it was agreed
        after: the unit as it is to be
        was: the unit as it was agreed, worked out
        becomes: the unit as it is to be, worked out
        lost: the boards that went into parts which are scrapped
        found: what the change does, by the number of each piece
        price: what it comes to
        priced_by: whose figures: an accepted quote's, or those that hold now
    """

    before: LoadedUnit
    after: LoadedUnit
    was: Construction
    becomes: Construction
    lost: tuple[LostFeet, ...]
    found: tuple[tuple[int, Rework], ...]
    price: ChangePrice
    priced_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadedChange:
    """A change order with its job and unit."""

    order: ChangeOrder
    job: Job
    unit: Unit

    @property
    def name(self) -> str:
        """Its number, as it is read and written."""
        return change_number(self.order.number)


def weigh_change(
    db: Fenced,
    shop: Shop,
    before: LoadedUnit,
    after: LoadedUnit,
    today: date,
    *,
    set_up: float,
    asked: int | None = None,
) -> Weighed:
    """What a change costs, by the figures of the quote that was accepted, else by those that hold now.

    Args:
        db: the session
        shop: the shop
        before: the unit at the revision that was agreed
        after: the unit at the revision that it is to have
        today: the day from which the promise counts
        set_up: drawings and setting up again [h]
        asked: what is asked in place of what it comes to; None for just that [cent]

    Raises:
        CannotBuild, CannotBeLaidOut …: one of the two cannot be built or priced
    """
    text, priced_by = _job_figures(db, shop, after.job)
    others = units_of(db, after.job)
    was = estimated_job(_with(others, before), text, today)
    becomes = estimated_job(_with(others, after), text, today)
    code = after.unit.code
    found = reworked(db, before.revision, after.revision, was.unit(code), becomes.unit(code).unit)
    pieces = tuple(each for _, each in found)
    price = price_change(was, becomes, code, pieces, figures_from(text), set_up=set_up, asked=asked)
    return Weighed(
        before=before,
        after=after,
        was=was.unit(code).unit,
        becomes=becomes.unit(code).unit,
        lost=lost_feet(was.unit(code), pieces),
        found=found,
        price=price,
        priced_by=priced_by,
    )


def _with(units: Sequence[LoadedUnit], one: LoadedUnit) -> tuple[str, ...]:
    """The job's units with one of them at another revision; a unit that was taken out is not among them."""
    if all(each.unit.id != one.unit.id for each in units):
        raise Refused("This unit was taken out of its job. Bring it back first; nothing of it is lost.")
    return tuple(one.text if each.unit.id == one.unit.id else each.text for each in units)


def _job_figures(db: Fenced, shop: Shop, job: Job) -> tuple[str, str]:
    """The figures that the job was sold by, and whose they are."""
    for quote in agreed_quotes(db, job.id):
        if quote.basis and "figures" in quote.basis:
            name = f"quote {shown_number(quote.number)}, revision {quote.revision}"
            return json.dumps(quote.basis["figures"], sort_keys=True), f"the figures of {name}"
    return figures_text(db, shop, job), TODAY


@dataclass(frozen=True, slots=True, kw_only=True)
class CustomerWords:
    """What the customer's paper says of a change: no part by its mark, and nothing that was noted inside.

    Attributes:
        note: the maker's own words to the customer; empty for none
        changes: what changes, with sizes
        work: what that does to the work that is done
    """

    note: str
    changes: tuple[str, ...]
    work: tuple[str, ...]


def customer_words(weighed: Weighed, unit: LengthUnit, note: str = "") -> CustomerWords:
    """What the paper of a change will say.

    Args:
        weighed: the change
        unit: the unit in which the shop reads the piece
        note: the maker's own words to the customer
    """
    return CustomerWords(
        note=note,
        changes=changed_words(weighed.was, weighed.becomes, unit),
        work=work_words(weighed.was, tuple(each for _, each in weighed.found)),
    )


def words_held(order: ChangeOrder) -> CustomerWords:
    """What the paper of an order says; one from before has what it said then, the marks of parts among it."""
    content = order.content
    if said := content.get("customer"):
        return CustomerWords(note=said["note"], changes=tuple(said["changes"]), work=tuple(said["work"]))
    lines = tuple(line for each in content["pieces"] for line in (each["name"], *each["words"]) if line)
    return CustomerWords(note=content["reason"], changes=lines, work=())


def make_change_order(
    db: Fenced, weighed: Weighed, unit: LengthUnit, who: str, now: datetime, note: str = ""
) -> ChangeOrder:
    """Makes an order of a change that was looked at; what it says never changes.

    Args:
        db: the session
        weighed: the change with its price
        unit: the unit in which the shop reads the piece
        who: who makes it
        now: the moment
        note: the maker's own words to the customer; empty for none

    Raises:
        Refused: the job is over, or the revision is the agreed one itself
    """
    loaded = weighed.after
    refuse_if_over(loaded.job, "take a change order down")
    price = weighed.price
    made = ChangeOrder(
        id=new_id(),
        job_id=loaded.job.id,
        unit_id=loaded.unit.id,
        number=next_number(db, "change order"),
        before=weighed.before.revision.number,
        after=loaded.revision.number,
        net_cents=price.asked,
        total_cents=price.total,
        created_at=now,
        who=who,
        content=_content(weighed, unit, note),
    )
    db.add(made)
    db.flush()
    what = (
        f"Made change order {change_number(made.number)}: unit {loaded.unit.code} at revision {made.after}."
    )
    note_history(db, who, now, what, job_id=loaded.job.id)
    return made


def _content(weighed: Weighed, unit: LengthUnit, note: str) -> dict[str, Any]:
    price, loaded = weighed.price, weighed.after
    said = customer_words(weighed, unit, note)
    many = len(weighed.found) > 1
    return {
        "code": loaded.unit.code,
        "name": loaded.spec.name,
        "reason": loaded.revision.note,
        "customer": {"note": said.note, "changes": said.changes, "work": said.work},
        "lost": [
            {"wood": each.wood, "cut": each.cut.value, "size": each.size, "feet": round(each.feet, 2)}
            for each in weighed.lost
        ],
        "pieces": [
            {
                "name": f"Piece {piece}" if many else "",
                "words": [in_unit(words, unit) for words in change_words(each, with_codes=False)],
            }
            for piece, each in weighed.found
        ],
        "lines": [
            {"label": line.label, "amount_cents": line.amount, "working": line.working}
            for line in price.lines
        ],
        "computed_cents": price.computed,
        "tax_cents": price.tax,
        "hours": price.hours,
        "hours_lost": price.lost,
        "hours_again": price.again,
        "weeks": round(price.weeks, 2),
        "priced_by": weighed.priced_by,
    }


def load_change(db: Fenced, change_id: str) -> LoadedChange:
    """A change order of the shop.

    Raises:
        NotFound: the shop has no such change order
    """
    found = change_order_with_job(db, change_id)
    if found is None:
        raise NotFound("change order")
    order, job, unit = found
    return LoadedChange(order=order, job=job, unit=unit)


def remade_by(db: Fenced, shop: Shop, held: LoadedChange) -> tuple[PutBack, ...]:
    """What the bench makes again for a change order, by how far the parts are now; nothing once withdrawn.

    Raises:
        CannotBuild, CannotBeLaidOut …: one of the two revisions cannot be built any more
    """
    if held.order.withdrawn_at is not None:
        return ()
    order = held.order
    return remade_between(db, shop, held.job, held.unit.id, order.before, order.after)


def agree_to_change(
    db: Fenced,
    held: LoadedChange,
    name: str,
    way: str,
    plans: tuple[PutBack, ...],
    unit: LengthUnit,
    hand: Hand,
) -> None:
    """Takes down that the customer agrees: the unit is approved as changed, the job costs more or less.

    What is made again goes back at the bench in the same breath.

    Args:
        db: the session
        held: the change order
        name: who agreed
        way: how, and who took it down
        plans: what the bench makes again
        unit: the unit in which the shop reads the piece
        hand: who took it down

    Raises:
        Refused: it was agreed on or withdrawn before, or the job is over
    """
    _refuse_unless_open(held.order)
    refuse_if_over(held.job, "take an answer down")
    order, who, now = held.order, hand.who, hand.now
    order.agreed_at, order.agreed_name, order.agreed_way = now, name, way
    held.unit.approved = order.after
    code = held.unit.code
    what = f"Change order {held.name} was agreed on by {name} {way}; unit {code} is approved at revision"
    note_history(db, who, now, f"{what} {order.after}.", job_id=held.job.id)
    put_back(db, held.job, plans, held.name, unit, replace(hand, mark=order.id))


def withdraw_change(db: Fenced, held: LoadedChange, who: str, now: datetime) -> None:
    """Withdraws a change order that nobody has agreed to; it stays in the books.

    Raises:
        Refused: it was agreed on or withdrawn before
    """
    _refuse_unless_open(held.order)
    held.order.withdrawn_at = now
    note_history(db, who, now, f"Withdrew change order {held.name}.", job_id=held.job.id)


def _refuse_unless_open(order: ChangeOrder) -> None:
    if order.agreed_at is not None:
        raise Refused(ANSWERED)
    if order.withdrawn_at is not None:
        raise Refused(WITHDRAWN)
