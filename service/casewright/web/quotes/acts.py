"""Quotes: drawing one up, looking at it as the customer will, sending it, and what becomes of it."""

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import refusal
from casewright.pieces.built.refusals import REFUSALS
from casewright.records.papers import QuoteState
from casewright.shop.issuing import send_quote, work_out
from casewright.shop.jobs import load_job
from casewright.shop.keeping import once
from casewright.shop.quote_links import end_link, renew_link
from casewright.shop.quotes import (
    MOST_DAYS,
    WHY_NOT,
    Answer,
    DraftWords,
    answer_quote,
    change_draft,
    draft_quote,
    load_quote,
    new_revision,
    remove_draft,
    state_on,
)
from casewright.shop.refusals import Refused, Stale
from casewright.web.frame.pages import see, show
from casewright.web.frame.pdfs import paper_for
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office
from casewright.web.quotes.page import WAYS, quote_page, show_again
from casewright.web.quotes.pdfs import quote_answer

router = APIRouter()


@router.post("/jobs/{job_id}/quotes")
def save_new_quote(visit: Office, job_id: str) -> Response:
    """Draws up a quote for a job, or goes on with the draft that it has."""
    job = load_job(visit.db, job_id)

    def make() -> str:
        return f"/quotes/{draft_quote(visit.db, job, visit.who, visit.now).id}"

    return see(once(visit.db, visit.typed.once, visit.now, make))


@router.get("/quotes/{quote_id}")
def show_quote(visit: Office, quote_id: str) -> Response:
    """One quote, as its customer will read it, with what the shop must know around it."""
    return show(visit, quote_page(visit, load_quote(visit.db, quote_id)))


@router.post("/quotes/{quote_id}/words")
def save_draft(visit: Office, quote_id: str) -> Response:
    """Saves what a draft says beside what is worked out."""
    held = load_quote(visit.db, quote_id)
    read = Reader(visit.typed)
    words = _read_words(read)
    version = read.whole("version", least=1, most=10**8)
    if read.faults:
        return show_again(visit, held, form=read.form)
    try:
        change_draft(visit.db, held, words, version)
    except Stale as stale:
        values = {**read.form.values, "version": str(held.quote.version)}
        form = Form(values=values, theirs=stale.theirs, is_stale=True)
        return show_again(visit, held, 409, form=form)
    return see(f"/quotes/{held.quote.id}", "saved")


def _read_words(read: Reader) -> DraftWords:
    days = read.whole("days", least=1, most=MOST_DAYS, default=0)
    offered = read.typed.all("option")
    return DraftWords(
        note=read.text("note", most=5000),
        days=days or None,
        ready_by=read.day("ready_by"),
        left_out=tuple(each[:20] for each in offered if not read.ticked(f"offer.{each}"))[:100],
    )


@router.post("/quotes/{quote_id}/removal")
def save_removal(visit: Office, quote_id: str) -> Response:
    """Throws a draft away."""
    held = load_quote(visit.db, quote_id)
    remove_draft(visit.db, held, visit.who, visit.now)
    return see(f"/jobs/{held.job.id}", "removed")


@router.post("/quotes/{quote_id}/sending")
def save_sending(visit: Office, quote_id: str) -> Response:
    """Issues a draft: from now on nothing in it changes, and the customer can read it by its link."""
    held = load_quote(visit.db, quote_id)

    def send() -> str:
        send_quote(
            visit.db,
            visit.shop,
            held,
            secret=visit.request.app.state.secret,
            seen=visit.typed.get("seen")[:64],
            sure=Reader(visit.typed).ticked("sure"),
            who=visit.who,
            now=visit.now,
            today=visit.today,
        )
        return f"/quotes/{held.quote.id}?said=sent"

    try:
        return see(once(visit.db, visit.typed.once, visit.now, send))
    except REFUSALS as error:
        raise Refused(refusal(error, visit.unit), 422) from None


@router.post("/quotes/{quote_id}/revisions")
def save_revision(visit: Office, quote_id: str) -> Response:
    """Draws up the next revision of a quote."""
    held = load_quote(visit.db, quote_id)

    def make() -> str:
        return f"/quotes/{new_revision(visit.db, held, visit.who, visit.now, visit.today).id}"

    return see(once(visit.db, visit.typed.once, visit.now, make))


@router.post("/quotes/{quote_id}/link")
def save_link(visit: Office, quote_id: str) -> Response:
    """Makes a new link; the old one stops."""
    held = load_quote(visit.db, quote_id)
    renew_link(visit.db, held, visit.request.app.state.secret, visit.who, visit.now)
    return see(f"/quotes/{held.quote.id}#link", "saved")


@router.post("/quotes/{quote_id}/link/ending")
def save_link_ending(visit: Office, quote_id: str) -> Response:
    """Ends the link."""
    held = load_quote(visit.db, quote_id)
    end_link(visit.db, held, visit.who, visit.now)
    return see(f"/quotes/{held.quote.id}#link", "ended")


@router.post("/quotes/{quote_id}/answer")
def save_answer(visit: Office, quote_id: str) -> Response:
    """Takes down what the customer said, wrote or signed."""
    held = load_quote(visit.db, quote_id)
    read = Reader(visit.typed)
    said = read.choice("answer", ("accept", "decline"))
    way = dict(WAYS)[read.choice("way", [value for value, _ in WAYS])]
    name = read.line("name", most=120, needed="Write who said so.")
    words = read.text("words", most=2000)
    if read.faults:
        return show_again(visit, held, answer=read.form)
    answer = Answer(
        accepts=said == "accept",
        name=name,
        words=words,
        way=f"{way}, taken down by {visit.who}",
        who=visit.who,
    )
    if not answer_quote(visit.db, held, answer, visit.now, visit.today):
        raise Refused(WHY_NOT[state_on(held.quote.state, held.quote.valid_until, visit.today)])
    return see(f"/quotes/{held.quote.id}", "saved")


@router.get("/quotes/{quote_id}/quote.pdf")
def show_quote_pdf(visit: Office, quote_id: str, paper: str = "") -> Response:
    """A quote as PDF; a draft is marked as one."""
    held = load_quote(visit.db, quote_id)
    sheet = paper_for(paper, visit.shop)
    offer = held.offer
    if held.quote.state is not QuoteState.DRAFT:
        if offer is None:
            raise Refused("What was issued cannot be read back from the books; a backup may still hold it.")
    else:
        try:
            offer = work_out(visit.db, visit.shop, held, visit.today).offer
        except REFUSALS as error:
            raise Refused(refusal(error, visit.unit), 409) from None
    return quote_answer(offer, sheet)
