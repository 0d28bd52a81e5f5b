"""Change orders: what was made an order of a change, for the customer to sign; agreed on, or withdrawn."""

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.drawing.page import Drawing
from casewright.drawing.small import small_elevations
from casewright.measure.saying import refusal
from casewright.papers.change_order_pdf import ChangePaper, change_order_pdf
from casewright.papers.head import day
from casewright.pieces.built.refusals import REFUSALS
from casewright.records.jobs import Job
from casewright.records.papers import ChangeOrder
from casewright.shop.bench import Hand
from casewright.shop.change_orders import (
    CustomerWords,
    LoadedChange,
    agree_to_change,
    load_change,
    remade_by,
    withdraw_change,
    words_held,
)
from casewright.shop.customers import load_customer
from casewright.shop.estimating import worked_unit
from casewright.shop.figures import figures_text
from casewright.shop.issuing import customer_party, shop_party
from casewright.shop.jobs import said_over
from casewright.shop.remaking import PutBack, PutBackWords, words_of
from casewright.shop.units import load_unit
from casewright.web.frame.pages import Page, drawing, form_of, new_mark, see, show
from casewright.web.frame.pdfs import paper_for, pdf_answer
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.change_shown import (
    PieceWords,
    PriceShown,
    later_words,
    price_shown,
    said_delivered,
)
from casewright.web.units.worked import writing_of

router = APIRouter()
WAYS = (
    ("signed", "with a signature"),
    ("written", "in writing"),
    ("spoken", "by word of mouth"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeOrderPage(Page):
    """A change order as it was made.

    Attributes:
        says: what the customer reads
        reason: why the unit was changed, as it was noted for the shop
        pieces: what it does to the parts, for the shop
        again: what goes back at the bench once it is agreed; none once it was answered
        trouble: why that cannot be said
        pictures: the front before and after; none where one cannot be drawn any more
        delivered: what to mind where the piece has left the shop
        over: why no answer can be taken down; empty where one can
    """

    template: ClassVar[str] = "units/change_order.html"
    job: Job
    held: LoadedChange
    made_at: datetime
    says: CustomerWords
    reason: str
    pieces: tuple[PieceWords, ...]
    again: tuple[PutBackWords, ...]
    trouble: str
    price: PriceShown
    pictures: tuple[tuple[str, Markup], ...]
    delivered: str
    over: str
    ways: tuple[tuple[str, str], ...]
    form: Form


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
    """Takes down that the customer agrees; what is made again goes back at the bench."""
    held, reader = load_change(visit.db, change_id), Reader(visit.typed)
    way = dict(WAYS)[reader.choice("way", [value for value, _ in WAYS])]
    name = reader.line("name", most=120, needed="Write who agreed.")
    if reader.faults:
        return show(visit, _order_page(visit, held, reader.form), 422)
    hand = Hand(
        mark=new_mark(), now=visit.now, who=visit.who, person_id=visit.person.id, is_maker=visit.sees_prices
    )
    unit = writing_of(visit, load_unit(visit.db, held.unit.id, held.order.after)).unit
    plans, _ = _remade(visit, held)
    agree_to_change(visit.db, held, name, f"{way}, taken down by {visit.who}", plans, unit, hand)
    return see(f"/change-orders/{change_id}", "saved")


@router.post("/change-orders/{change_id}/removal")
def save_withdrawal(visit: Office, change_id: str) -> Response:
    """Withdraws a change order."""
    withdraw_change(visit.db, load_change(visit.db, change_id), visit.who, visit.now)
    return see(f"/change-orders/{change_id}", "saved")


def _remade(visit: Visit, held: LoadedChange) -> tuple[tuple[PutBack, ...], str]:
    """What the bench makes again, and what stands in the way of saying so."""
    if held.order.agreed_at is not None:
        return (), ""
    try:
        return remade_by(visit.db, visit.shop, held), ""
    except REFUSALS as error:
        return (), refusal(error, visit.unit)


def _order_page(visit: Visit, held: LoadedChange, form: Form) -> ChangeOrderPage:
    order, job = held.order, held.job
    content = order.content
    loaded = load_unit(visit.db, held.unit.id, order.after)
    cents = (order.net_cents, content["tax_cents"], order.total_cents)
    plans, trouble = _remade(visit, held)
    is_answered = order.agreed_at is not None or order.withdrawn_at is not None
    return ChangeOrderPage(
        title=f"Change order {held.name} · {content['name']}",
        job=job,
        held=held,
        made_at=order.created_at,
        says=words_held(order),
        reason=content["reason"],
        pieces=tuple(PieceWords(name=each["name"], words=tuple(each["words"])) for each in content["pieces"]),
        again=words_of(plans),
        trouble=trouble,
        price=price_shown(visit, content, cents, writing_of(visit, loaded)),
        pictures=tuple(
            (words, drawing(front.svg(prefix=words.lower()))) for words, front in _fronts(visit, held)
        ),
        delivered="" if is_answered else said_delivered(job, day(visit.day_of(job.moved_at))),
        over=said_over(job, "take an answer down"),
        ways=WAYS,
        form=form,
    )


def _paper_of(visit: Visit, held: LoadedChange) -> ChangePaper:
    order, job, content = held.order, held.job, held.order.content
    said = words_held(order)
    return ChangePaper(
        shop=shop_party(visit.shop),
        customer=customer_party(load_customer(visit.db, job.customer_id)),
        number=held.name,
        job_number=str(job.number),
        job_name=job.name,
        unit_name=content["name"],
        made_on=visit.day_of(order.created_at),
        note=said.note,
        changes=said.changes,
        work=said.work,
        pictures=tuple((words, front.svg()) for words, front in _fronts(visit, held)),
        net_cents=order.net_cents,
        tax_cents=content["tax_cents"],
        total_cents=order.total_cents,
        symbol=visit.shop.symbol,
        ready=later_words(content["weeks"], than=" than promised"),
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
    """The front before and after, in one scale; none where one can be built no more by the figures now."""
    order, figures = held.order, figures_text(visit.db, visit.shop, held.job)
    found = []
    for words, number in (("Before", order.before), ("After", order.after)):
        text = load_unit(visit.db, held.unit.id, number).text
        try:
            built = worked_unit(text, figures)
        except REFUSALS:
            return ()
        found.append((words, built))
    drawn = small_elevations([built for _, built in found])
    return tuple((words, front) for (words, _), front in zip(found, drawn, strict=True))
