"""A change after approval is looked at step by step: what it does, what it costs, what the customer reads."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import in_unit, refusal
from casewright.papers.head import day
from casewright.papers.writing import Writing
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.change_price import SET_UP_AGAIN
from casewright.pieces.words.rework_words import change_words
from casewright.shop.change_orders import (
    CustomerWords,
    Weighed,
    customer_words,
    make_change_order,
    weigh_change,
)
from casewright.shop.jobs import said_over
from casewright.shop.keeping import once
from casewright.shop.refusals import Refused
from casewright.shop.remaking import PutBackWords, planned, words_of
from casewright.shop.units import load_unit
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.change_shown import PieceWords, PriceShown, price_shown, said_delivered
from casewright.web.units.rework import before_it
from casewright.web.units.worked import Met, UnitHead, meet_unit

router = APIRouter()
MOST_HOURS = 200.0
MOST_WORDS = 600
"""So many characters for the customer leave an ordinary change order on one page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the form asks for.

    Attributes:
        set_up: drawings and setting up again [h]
        asked: what is asked in place of what it comes to; None for just that [cent]
        note: the maker's own words to the customer
    """

    set_up: float = SET_UP_AGAIN
    asked: int | None = None
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewPage(Page):
    """A change with its price, before it is made an order.

    Attributes:
        number: the revision that the change makes
        against: the one that was agreed
        reason: why it differs, as it was noted for the shop
        says: what the customer's paper will say; None where it cannot be priced
        pieces: what it does to the parts, for the shop
        again: what goes back at the bench once it is agreed
        price: what it comes to; None where it cannot be priced
        trouble: why not
        delivered: what to mind where the piece has left the shop
        over: why no order can be made; empty where one can
    """

    template: ClassVar[str] = "units/change_review.html"
    head: UnitHead
    number: int
    against: int
    reason: str
    says: CustomerWords | None
    pieces: tuple[PieceWords, ...]
    again: tuple[PutBackWords, ...]
    price: PriceShown | None
    trouble: str
    delivered: str
    over: str
    form: Form


@router.get("/units/{unit_id}/revisions/{number}/change-order")
def show_change(visit: Office, unit_id: str, number: int, against: int | None = None) -> Response:
    """A change with its price, to be looked at before it is made an order."""
    met = meet_unit(visit, unit_id, number)
    other = str(against or before_it(met, number))
    form = form_of(against=other, set_up=f"{SET_UP_AGAIN:g}", asked="", note="")
    return show(visit, _review(visit, met, form, Asked()))


@router.post("/units/{unit_id}/revisions/{number}/change-order")
def save_change(visit: Office, unit_id: str, number: int) -> Response:
    """Works the price out anew, or makes the order where that is asked for."""
    met, reader = meet_unit(visit, unit_id, number), Reader(visit.typed)
    against = reader.whole("against", least=1, most=10**6)
    set_up = reader.number("set_up", least=0, most=MOST_HOURS, example="0.5")
    price = reader.money("asked", needed=False, negative=True) if visit.typed.get("asked").strip() else None
    asked = Asked(set_up=set_up, asked=price, note=reader.text("note", most=MOST_WORDS))
    wanted = reader.choice("act", ("work it out", "make it"))
    if reader.faults:
        return show(visit, _review(visit, met, reader.form, Asked(note=asked.note)), 422)
    if wanted == "work it out":
        return show(visit, _review(visit, met, reader.form, asked))

    def make() -> str:
        try:
            weighed = _weighed(visit, met, against, asked)
        except REFUSALS as error:
            raise Refused(refusal(error, visit.unit), 409) from None
        made = make_change_order(visit.db, weighed, met.writing.unit, visit.who, visit.now, asked.note)
        return f"/change-orders/{made.id}"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


def _weighed(visit: Visit, met: Met, against: int, asked: Asked) -> Weighed:
    number = met.loaded.revision.number
    if against == number:
        raise Refused("A revision is held against another one, not against itself.", 404)
    before = load_unit(visit.db, met.loaded.unit.id, against)
    set_up, price = asked.set_up, asked.asked
    return weigh_change(visit.db, visit.shop, before, met.loaded, visit.today, set_up=set_up, asked=price)


def _review(visit: Visit, met: Met, form: Form, asked: Asked) -> ReviewPage:
    number, writing, job = met.loaded.revision.number, met.writing, met.loaded.job
    against = int(form.values["against"]) if form.values["against"].isdecimal() else before_it(met, number)
    weighed, trouble = None, ""
    try:
        weighed = _weighed(visit, met, against, asked)
    except REFUSALS as error:
        trouble = refusal(error, writing.unit)
    return ReviewPage(
        title=f"Price of the change to revision {number} · {met.loaded.spec.name}",
        head=met.head,
        number=number,
        against=against,
        reason=met.loaded.revision.note,
        says=customer_words(weighed, writing.unit, asked.note) if weighed else None,
        pieces=tuple(_pieces(weighed, writing)) if weighed else (),
        again=_again(visit, weighed) if weighed else (),
        price=_price_of(visit, weighed, writing) if weighed else None,
        trouble=trouble,
        delivered=said_delivered(job, day(visit.day_of(job.moved_at))),
        over=said_over(job, "take a change order down"),
        form=form,
    )


def _again(visit: Visit, weighed: Weighed) -> tuple[PutBackWords, ...]:
    return words_of(planned(visit.db, weighed.before, weighed.after, weighed.was, weighed.becomes))


def _pieces(weighed: Weighed, writing: Writing) -> Iterator[PieceWords]:
    for piece, found in weighed.found:
        name = f"Piece {piece}" if len(weighed.found) > 1 else ""
        words = tuple(in_unit(words, writing.unit) for words in change_words(found, with_codes=False))
        yield PieceWords(name=name, words=words)


def _price_of(visit: Visit, weighed: Weighed, writing: Writing) -> PriceShown:
    price = weighed.price
    lines = [
        {"label": line.label, "amount_cents": line.amount, "working": line.working} for line in price.lines
    ]
    figures = {"hours": price.hours, "weeks": price.weeks, "priced_by": weighed.priced_by, "lines": lines}
    return price_shown(visit, figures, (price.asked, price.tax, price.total), writing)
