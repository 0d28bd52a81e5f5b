"""What a customer's link opens: one quote to read, to print and to answer. No account, no cookie."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from typing import Annotated, Any, ClassVar
from zoneinfo import ZoneInfo

from fastapi import APIRouter, Depends, Request
from starlette.responses import Response

from casewright.records.papers import QuoteState
from casewright.records.people import Shop
from casewright.records.sessions import Fenced, reading, writing
from casewright.shop.jobs import OVER
from casewright.shop.links import shop_of_secret
from casewright.shop.quote_links import DOOR, Opened, note_opening, open_link
from casewright.shop.quotes import Answer, LoadedQuote, answer_quote, state_on
from casewright.shop.refusals import Refused
from casewright.shop.throttle import note_wrong_link
from casewright.web.frame.around import Frame
from casewright.web.frame.pages import Page, form_of, see, show_stranger
from casewright.web.frame.pdfs import paper_for
from casewright.web.frame.typed import Form, Reader, Typed
from casewright.web.frame.visits import SAFE, address_of, cookie_name, engine_of, in_turn, moment
from casewright.web.quotes.offer_shown import OfferShown, shown
from casewright.web.quotes.pdfs import quote_answer

router = APIRouter()
NO_REFERRER = {"referrer-policy": "no-referrer"}
"""The address is the key: no other site may read it from a request."""
TAKEN_OUT = (
    "The shop has taken out what this quote offers, so it can't be accepted now. Ask the shop about it."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkCall:
    """One request by somebody with a link.

    Attributes:
        request: the request
        db: a session inside the link's shop; it reads for GET and writes for POST
        opened: what the link opens
        secret: the last part of its address
        now: the moment, in UTC
        typed: the form that was sent
    """

    request: Request
    db: Fenced
    opened: Opened
    secret: str
    now: datetime
    typed: Typed

    @property
    def today(self) -> date:
        """The day in the shop's own time zone."""
        return self.now.astimezone(ZoneInfo(self.opened.shop.time_zone)).date()

    @property
    def held(self) -> LoadedQuote:
        """The quote."""
        return self.opened.held

    @property
    def state(self) -> QuoteState:
        """Where the quote stands today."""
        return state_on(self.held.quote.state, self.held.quote.valid_until, self.today)

    @property
    def is_laid_aside(self) -> bool:
        """Whether the job went no further, although its quote would still stand."""
        return self.state is QuoteState.SENT and self.held.job.state in OVER

    @property
    def path(self) -> str:
        """The link itself."""
        return f"/quote/{self.secret}"


@dataclass(frozen=True, slots=True, kw_only=True)
class LetterPage(Page):
    """A quote as its customer reads it."""

    template: ClassVar[str] = "quotes/letter.html"
    shop: Shop
    call_number: str
    state: QuoteState
    has_ended: bool
    is_laid_aside: bool
    offer: OfferShown | None
    own_page: bool
    valid_until: date | None
    answered_at: datetime | None
    answered_name: str
    path: str
    form: Form


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingPage(Page):
    """What a link shows that opens nothing."""

    template: ClassVar[str] = "quotes/nothing.html"


class NoQuote(Exception):
    """The link opens nothing."""


def with_link() -> Any:
    """A dependency for the pages of a link: it finds the quote, and a session that fits the request."""

    def enter(request: Request, secret: str, typed: Annotated[Typed, in_turn()]) -> Iterator[LinkCall]:
        engine, now, shop_id = engine_of(request), moment(request), shop_of_secret(secret)
        if not shop_id or not _is_good(request, shop_id, secret):
            note_wrong_link(engine, DOOR, address_of(request), now)
            raise NoQuote
        with (reading if request.method in SAFE else writing)(engine, shop_id) as db:
            opened = open_link(db, secret)
            if opened is None or (opened.held.offer is None and not opened.has_ended):
                raise NoQuote
            yield LinkCall(request=request, db=db, opened=opened, secret=secret, now=now, typed=typed)

    enter.roles = frozenset()  # type: ignore[attr-defined]
    return Depends(enter, scope="function")


def _is_good(request: Request, shop_id: str, secret: str) -> bool:
    """Looks a link up before anything waits or is written: wrong ones must not slow good ones down."""
    with reading(engine_of(request), shop_id) as db:
        return open_link(db, secret) is not None


WithLink = Annotated[LinkCall, with_link()]


def on_no_quote(request: Request, error: Exception) -> Response:
    """A page for somebody whose link opens nothing; it leads nowhere."""
    page = NothingPage(title="No quote at this address")
    return _bare(show_stranger(request, page, 404))


@router.get("/quote/{secret}")
def show_letter(call: WithLink) -> Response:
    """A quote as its customer reads it. That it was opened is noted once; nothing is answered by looking."""
    page = _letter(call, form_of())
    if _is_first_look(call):
        note_opening(engine_of(call.request), call.held, call.now)
    return _bare(show_stranger(call.request, page, 200, _frame(call)))


def _is_first_look(call: LinkCall) -> bool:
    """Whether the customer looks for the first time; people of the shop, who are signed in, do not count."""
    is_shop = bool(call.request.cookies.get(cookie_name(call.request)))
    quote = call.held.quote
    return quote.opened_at is None and not is_shop and not call.opened.has_ended


@router.post("/quote/{secret}/answer")
def save_letter_answer(call: WithLink) -> Response:
    """Takes the customer's answer: once, and only while the quote is sent, valid and its link open."""
    read = Reader(call.typed)
    said = read.choice("answer", ("accept", "decline"), default="")
    name = read.line("name", most=120, needed="Write your name, as under a letter.")
    words = read.text("words", most=2000)
    if said == "accept" and not read.ticked("agreed"):
        read.fault("agreed", "Tick that you accept the price, the drawing and the terms.")
    if call.opened.has_ended or call.is_laid_aside or call.state is not QuoteState.SENT:
        return _closed(call)
    if read.faults:
        page = _letter(call, read.form)
        return _bare(show_stranger(call.request, page, 422, _frame(call)))
    answer = Answer(accepts=said == "accept", name=name, words=words, way="by the link", who="the customer")
    try:
        taken = answer_quote(call.db, call.held, answer, call.now, call.today)
    except Refused:
        read.fault("agreed", TAKEN_OUT)
        return _bare(show_stranger(call.request, _letter(call, read.form), 409, _frame(call)))
    if not taken:
        return _closed(call)
    return _bare(see(f"{call.path}#answer"))


def _closed(call: LinkCall) -> Response:
    """The page as it now stands: it says why nothing can be answered any more."""
    gone = call.opened.has_ended or call.state is QuoteState.EXPIRED
    page = _letter(call, form_of())
    return _bare(show_stranger(call.request, page, 410 if gone else 409, _frame(call)))


@router.get("/quote/{secret}/quote.pdf")
def show_letter_pdf(call: WithLink, paper: str = "") -> Response:
    """The quote as PDF, as it was issued."""
    offer = call.held.offer
    if offer is None or call.opened.has_ended:
        raise NoQuote
    return _bare(quote_answer(offer, paper_for(paper, call.opened.shop)))


def _letter(call: LinkCall, form: Form) -> LetterPage:
    quote, offer = call.held.quote, call.held.offer
    ended = call.opened.has_ended
    shop = call.opened.shop
    return LetterPage(
        title=f"Quote {call.held.number}",
        shop=shop,
        call_number="".join(sign for sign in shop.phone if sign.isdigit() or sign == "+"),
        state=call.state,
        has_ended=ended,
        is_laid_aside=call.is_laid_aside,
        offer=shown(offer) if offer and not ended else None,
        own_page=True,
        valid_until=quote.valid_until,
        answered_at=quote.answered_at,
        answered_name=quote.answered_name,
        path=call.path,
        form=form,
    )


def _frame(call: LinkCall) -> Frame:
    shop = call.opened.shop
    return Frame(
        shop=shop.name,
        zone=shop.time_zone,
        symbol=shop.symbol,
        here="/quote/",
        demo=call.held.job.demo,
    )


def _bare(response: Response) -> Response:
    response.headers.update(NO_REFERRER)
    return response
