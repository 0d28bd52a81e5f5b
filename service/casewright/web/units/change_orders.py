"""Change orders: a change is priced and looked at, made an order, then agreed on or withdrawn."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.drawing.page import Drawing
from casewright.drawing.small import small_elevation
from casewright.measure.saying import in_unit, refusal
from casewright.papers.change_order_pdf import ChangePaper, change_order_pdf
from casewright.papers.head import day
from casewright.papers.writing import Writing
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.change_price import SET_UP_AGAIN
from casewright.pieces.words.rework_words import change_words
from casewright.records.jobs import Job
from casewright.records.papers import ChangeOrder
from casewright.shop.change_orders import (
    LoadedChange,
    Weighed,
    agree_to_change,
    load_change,
    make_change_order,
    weigh_change,
    withdraw_change,
)
from casewright.shop.customers import load_customer
from casewright.shop.estimating import worked_unit
from casewright.shop.figures import figures_text
from casewright.shop.issuing import customer_party, shop_party
from casewright.shop.jobs import said_over
from casewright.shop.keeping import once
from casewright.shop.refusals import Refused
from casewright.shop.units import load_unit
from casewright.web.frame.pages import Page, drawing, form_of, see, show
from casewright.web.frame.pdfs import paper_for, pdf_answer
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.rework import before_it
from casewright.web.units.worked import Met, UnitHead, meet_unit, writing_of

router = APIRouter()
WAYS = (
    ("signed", "with a signature"),
    ("written", "in writing"),
    ("spoken", "by word of mouth"),
)
MOST_HOURS = 200.0


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


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewPage(Page):
    """A change with its price, before it is made an order.

    Attributes:
        number: the revision that the change makes
        against: the one that was agreed
        reason: why it differs
        price: what it comes to; None where it cannot be priced
        trouble: why not
        over: why no order can be made; empty where one can
    """

    template: ClassVar[str] = "units/change_review.html"
    head: UnitHead
    number: int
    against: int
    reason: str
    pieces: tuple[PieceWords, ...]
    price: PriceShown | None
    trouble: str
    over: str
    form: Form


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeOrderPage(Page):
    """A change order as it was made.

    Attributes:
        pictures: the front before and after; none where one cannot be drawn any more
        over: why no answer can be taken down; empty where one can
    """

    template: ClassVar[str] = "units/change_order.html"
    job: Job
    held: LoadedChange
    made_at: datetime
    reason: str
    pieces: tuple[PieceWords, ...]
    price: PriceShown
    pictures: tuple[tuple[str, Markup], ...]
    over: str
    ways: tuple[tuple[str, str], ...]
    form: Form


@router.get("/units/{unit_id}/revisions/{number}/change-order")
def show_change(visit: Office, unit_id: str, number: int, against: int | None = None) -> Response:
    """A change with its price, to be looked at before it is made an order."""
    met = meet_unit(visit, unit_id, number)
    form = form_of(against=str(against or before_it(met, number)), set_up=f"{SET_UP_AGAIN:g}", asked="")
    return show(visit, _review(visit, met, form))


@router.post("/units/{unit_id}/revisions/{number}/change-order")
def save_change(visit: Office, unit_id: str, number: int) -> Response:
    """Works the price out anew, or makes the order where that is asked for."""
    met, reader = meet_unit(visit, unit_id, number), Reader(visit.typed)
    against = reader.whole("against", least=1, most=10**6)
    set_up = reader.number("set_up", least=0, most=MOST_HOURS, example="0.5")
    asked = reader.money("asked", needed=False, negative=True) if visit.typed.get("asked").strip() else None
    wanted = reader.choice("act", ("work it out", "make it"))
    if reader.faults:
        return show(visit, _review(visit, met, reader.form), 422)
    if wanted == "work it out":
        return show(visit, _review(visit, met, reader.form, set_up, asked))

    def make() -> str:
        try:
            weighed = _weighed(visit, met, against, set_up, asked)
        except REFUSALS as error:
            raise Refused(refusal(error, visit.unit), 409) from None
        made = make_change_order(visit.db, weighed, met.writing.unit, visit.who, visit.now)
        return f"/change-orders/{made.id}"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


@router.get("/change-orders/{change_id}")
def show_change_order(visit: Office, change_id: str) -> Response:
    """A change order."""
    return show(visit, _order_page(visit, load_change(visit.db, change_id), form_of(way="signed", name="")))


@router.get("/change-orders/{change_id}/paper.pdf")
def show_change_paper(visit: Office, change_id: str, paper: str = "") -> Response:
    """A change order as PDF, for the customer to sign."""
    held = load_change(visit.db, change_id)
    said, sheet = _paper_of(visit, held), paper_for(paper, visit.shop)
    return pdf_answer(f"change-order-{held.name}", lambda: change_order_pdf(said, sheet))


@router.post("/change-orders/{change_id}/agreement")
def save_agreement(visit: Office, change_id: str) -> Response:
    """Takes down that the customer agrees."""
    held, reader = load_change(visit.db, change_id), Reader(visit.typed)
    way = dict(WAYS)[reader.choice("way", [value for value, _ in WAYS])]
    name = reader.line("name", most=120, needed="Write who agreed.")
    if reader.faults:
        return show(visit, _order_page(visit, held, reader.form), 422)
    agree_to_change(visit.db, held, name, f"{way}, taken down by {visit.who}", visit.who, visit.now)
    return see(f"/change-orders/{change_id}", "saved")


@router.post("/change-orders/{change_id}/removal")
def save_withdrawal(visit: Office, change_id: str) -> Response:
    """Withdraws a change order."""
    withdraw_change(visit.db, load_change(visit.db, change_id), visit.who, visit.now)
    return see(f"/change-orders/{change_id}", "saved")


def _weighed(visit: Visit, met: Met, against: int, set_up: float, asked: int | None) -> Weighed:
    number = met.loaded.revision.number
    if against == number:
        raise Refused("A revision is held against another one, not against itself.", 404)
    before = load_unit(visit.db, met.loaded.unit.id, against)
    return weigh_change(visit.db, visit.shop, before, met.loaded, visit.today, set_up=set_up, asked=asked)


def _review(
    visit: Visit, met: Met, form: Form, set_up: float = SET_UP_AGAIN, asked: int | None = None
) -> ReviewPage:
    number, writing = met.loaded.revision.number, met.writing
    against = int(form.values["against"]) if form.values["against"].isdecimal() else before_it(met, number)
    weighed, trouble = None, ""
    try:
        weighed = _weighed(visit, met, against, set_up, asked)
    except REFUSALS as error:
        trouble = refusal(error, writing.unit)
    return ReviewPage(
        title=f"Price of the change to revision {number} · {met.loaded.spec.name}",
        head=met.head,
        number=number,
        against=against,
        reason=met.loaded.revision.note,
        pieces=tuple(_pieces(weighed, writing)) if weighed else (),
        price=_price_of(visit, weighed, writing) if weighed else None,
        trouble=trouble,
        over=said_over(met.loaded.job, "take a change order down"),
        form=form,
    )


def _pieces(weighed: Weighed, writing: Writing) -> Iterator[PieceWords]:
    for piece, found in weighed.found:
        name = f"Piece {piece}" if len(weighed.found) > 1 else ""
        words = tuple(in_unit(words, writing.unit) for words in change_words(found))
        yield PieceWords(name=name, words=words)


def _price_of(visit: Visit, weighed: Weighed, writing: Writing) -> PriceShown:
    price = weighed.price
    lines = [
        {"label": line.label, "amount_cents": line.amount, "working": line.working} for line in price.lines
    ]
    figures = {"hours": price.hours, "weeks": price.weeks, "priced_by": weighed.priced_by, "lines": lines}
    return _shown(visit, figures, (price.asked, price.tax, price.total), writing)


def _shown(
    visit: Visit, held: Mapping[str, Any], cents: tuple[int, int, int], writing: Writing
) -> PriceShown:
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
        later=_later(held["weeks"]),
        priced_by=held["priced_by"],
    )


def _later(weeks: float) -> str:
    """How much later, to the half week: nobody knows it finer."""
    halves = round(abs(weeks) * 2) / 2
    if not halves:
        return "as promised"
    noun = "week" if halves <= 1 else "weeks"
    return f"{halves:g} {noun} {'later' if weeks > 0 else 'sooner'}"


def _order_page(visit: Visit, held: LoadedChange, form: Form) -> ChangeOrderPage:
    order = held.order
    content = order.content
    loaded = load_unit(visit.db, held.unit.id, order.after)
    cents = (order.net_cents, content["tax_cents"], order.total_cents)
    return ChangeOrderPage(
        title=f"Change order {held.name} · {content['name']}",
        job=held.job,
        held=held,
        made_at=order.created_at,
        reason=content["reason"],
        pieces=tuple(PieceWords(name=each["name"], words=tuple(each["words"])) for each in content["pieces"]),
        price=_shown(visit, content, cents, writing_of(visit, loaded)),
        pictures=tuple(
            (words, drawing(front.svg(prefix=words.lower()))) for words, front in _fronts(visit, held)
        ),
        over=said_over(held.job, "take an answer down"),
        ways=WAYS,
        form=form,
    )


def _paper_of(visit: Visit, held: LoadedChange) -> ChangePaper:
    order, job, content = held.order, held.job, held.order.content
    return ChangePaper(
        shop=shop_party(visit.shop),
        customer=customer_party(load_customer(visit.db, job.customer_id)),
        number=held.name,
        job_number=str(job.number),
        job_name=job.name,
        unit_code=content["code"],
        unit_name=content["name"],
        before=order.before,
        after=order.after,
        made_on=visit.day_of(order.created_at),
        reason=content["reason"],
        pieces=tuple((each["name"], tuple(each["words"])) for each in content["pieces"]),
        pictures=tuple((words, front.svg()) for words, front in _fronts(visit, held)),
        net_cents=order.net_cents,
        tax_cents=content["tax_cents"],
        total_cents=order.total_cents,
        symbol=visit.shop.symbol,
        ready=_later(content["weeks"]),
        answer=_answer(visit, order),
    )


def _answer(visit: Visit, order: ChangeOrder) -> str:
    """What became of the order; nothing while it waits."""
    if order.agreed_at is not None:
        return f"Agreed by {order.agreed_name} {order.agreed_way}, {day(visit.day_of(order.agreed_at))}."
    if order.withdrawn_at is not None:
        return f"Withdrawn {day(visit.day_of(order.withdrawn_at))}: it does not hold."
    return ""


def _fronts(visit: Visit, held: LoadedChange) -> tuple[tuple[str, Drawing], ...]:
    """The front before and after; none where the figures that hold now let one of them be built no more."""
    order, figures = held.order, figures_text(visit.db, visit.shop, held.job)
    found = []
    for words, number in (("Before", order.before), ("After", order.after)):
        text = load_unit(visit.db, held.unit.id, number).text
        try:
            built = worked_unit(text, figures)
        except REFUSALS:
            return ()
        found.append((words, small_elevation(built)))
    return tuple(found)
