"""The page of a quote: as its customer will read it, and around it what the shop must know."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any, ClassVar
from urllib.parse import quote as in_address

from starlette.responses import Response

from casewright.measure.findings import Finding
from casewright.measure.saying import refusal
from casewright.pieces.built.refusals import REFUSALS
from casewright.records.papers import QuoteState
from casewright.records.quotes import QuoteRow, quote_rows
from casewright.shop.issuing import OptionWorked, Worked, estimate_kept, work_out
from casewright.shop.jobs import said_over
from casewright.shop.quote_changes import Since, changed_since
from casewright.shop.quote_links import link_path
from casewright.shop.quotes import ARROWS, DraftWords, LoadedQuote, state_on
from casewright.web.frame.filters import percent
from casewright.web.frame.pages import Page, form_of, show
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Visit
from casewright.web.quotes.offer_shown import OfferShown, difference, shown
from casewright.web.quotes.option_form import OptionForm, option_form

STATE_SHAPES = {
    QuoteState.DRAFT: "new",
    QuoteState.SENT: "waits",
    QuoteState.ACCEPTED: "done",
    QuoteState.DECLINED: "ended",
    QuoteState.EXPIRED: "ended",
    QuoteState.SUPERSEDED: "ended",
}
WAYS = (("spoken", "by word of mouth"), ("signed", "with a signature"), ("written", "in writing"))


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnerFigures:
    """What the owner sees beside the price, and nobody else."""

    asked: int
    cost: int
    margin: int
    share: str
    lowest: int
    hours: float
    rate: int


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionShown:
    """An option as the shop sees it."""

    id: str
    label: str
    unit_code: str
    words: str
    difference: str
    trouble: str
    is_offered: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeShown:
    """One line of the price that is not what it was."""

    label: str
    then: int
    now: int
    difference: str
    worked_then: str
    worked_now: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkShown:
    """The customer's link.

    Attributes:
        address: the whole address; empty where it cannot be shown
        has_ended: the shop ended it
        letter: an e-mail that carries it; empty without an address to send to
    """

    address: str
    has_ended: bool
    letter: str


@dataclass(frozen=True, slots=True, kw_only=True)
class QuotePage(Page):
    """One quote."""

    template: ClassVar[str] = "quotes/one.html"
    held: LoadedQuote
    address: str
    state: QuoteState
    shape: str
    offer: OfferShown | None
    own_page: bool
    trouble: str
    seen: str
    stops: Sequence[Finding]
    cautions: Sequence[Finding]
    examples: Sequence[str]
    early: date | None
    figures: OwnerFigures | None
    since: Since | None
    changes: Sequence[ChangeShown]
    since_difference: str
    options: Sequence[OptionShown]
    form: Form
    option: OptionForm | None
    answer: Form
    ways: Sequence[tuple[str, str]]
    link: LinkShown | None
    others: Sequence[QuoteRow]
    can_revise: bool
    over: str
    """Why nothing more is written for the job; empty while it goes on."""


def quote_page(
    visit: Visit,
    held: LoadedQuote,
    *,
    form: Form | None = None,
    option: Form | None = None,
    answer: Form | None = None,
) -> QuotePage:
    """The page of a quote.

    Args:
        visit: who looks
        held: the quote
        form: the draft's form, where it is shown again
        option: the form for an option, where it is shown again
        answer: the form for an answer, where it is shown again
    """
    is_draft = held.quote.state is QuoteState.DRAFT
    worked, trouble = _worked(visit, held) if is_draft else (None, "")
    offer = worked.offer if worked else held.offer
    state = state_on(held.quote.state, held.quote.valid_until, visit.today)
    since = None if is_draft else changed_since(visit.db, visit.shop, held, visit.today)
    ready_by = DraftWords.of(held.quote).ready_by
    fresh = draft_form(held, worked)
    title = f"Quote {held.number}" + (f", revision {held.quote.revision}" if held.quote.revision > 1 else "")
    return QuotePage(
        title=title,
        held=held,
        address=f"/quotes/{held.quote.id}",
        state=state,
        shape=STATE_SHAPES[state],
        offer=shown(offer) if offer else None,
        own_page=False,
        trouble=trouble,
        seen=worked.mark if worked else "",
        stops=tuple(each.in_unit(visit.unit) for each in worked.stops) if worked else (),
        cautions=tuple(each.in_unit(visit.unit) for each in worked.cautions) if worked else (),
        examples=worked.examples if worked else (),
        early=worked.promised if worked and ready_by and ready_by < worked.promised else None,
        figures=_owner_figures(visit, held, worked),
        since=since,
        changes=tuple(_changes(visit, since)),
        since_difference=difference(since.difference, visit.shop.symbol) if since else "",
        options=tuple(_option(each, visit.shop.symbol) for each in worked.options) if worked else (),
        form=_with_unseen(visit, form, fresh) if form else fresh,
        option=option_form(visit, worked.units, worked.figures_text, option) if worked else None,
        answer=answer or form_of(name=held.customer.name, way="spoken"),
        ways=WAYS,
        link=_link(visit, held) if held.quote.link_hash else None,
        others=[each for each in quote_rows(visit.db, held.job.id) if each.id != held.quote.id],
        can_revise=QuoteState.SUPERSEDED in ARROWS[state] and not said_over(held.job),
        over=said_over(held.job),
    )


def show_again(visit: Visit, held: LoadedQuote, status: int = 422, **forms: Form) -> Response:
    """A quote's page with a form that is shown again: `form`, `option` or `answer`."""
    return show(visit, quote_page(visit, held, **forms), status)


def _worked(visit: Visit, held: LoadedQuote) -> tuple[Worked | None, str]:
    try:
        return work_out(visit.db, visit.shop, held, visit.today), ""
    except REFUSALS as error:
        return None, refusal(error, visit.unit)


def draft_form(held: LoadedQuote, worked: Worked | None) -> Form:
    """The draft's form as it stands; every option that is not left out is ticked."""
    words = DraftWords.of(held.quote)
    ticked = {
        f"offer.{each.option.id}": "1" for each in (worked.options if worked else ()) if not each.left_out
    }
    return form_of(
        note=words.note,
        days="" if words.days is None else str(words.days),
        ready_by=words.ready_by.isoformat() if words.ready_by else "",
        version=str(held.quote.version),
        **ticked,
    )


def _with_unseen(visit: Visit, form: Form, fresh: Form) -> Form:
    """The draft's form as it was sent, and with it the ticks of options that came after it was opened.

    An option that a form did not show was not left out by whoever sent it.
    """
    shown_options = {f"offer.{each}" for each in visit.typed.all("option")}
    unseen = {
        name: value
        for name, value in fresh.values.items()
        if name.startswith("offer.") and name not in shown_options
    }
    return replace(form, values={**unseen, **form.values})


def _owner_figures(visit: Visit, held: LoadedQuote, worked: Worked | None) -> OwnerFigures | None:
    """For the owner's eyes; for anybody else they are not even looked up."""
    if not visit.is_owner:
        return None
    if worked is not None:
        return _figures(estimate_kept(worked.estimate))
    return _figures(held.quote.basis["estimate"]) if held.quote.basis else None


def _figures(kept: Mapping[str, Any]) -> OwnerFigures:
    asked, cost = kept["asked_cents"], kept["cost_cents"]
    return OwnerFigures(
        asked=asked,
        cost=cost,
        margin=asked - cost,
        share=percent((asked - cost) / asked) if asked else "",
        lowest=kept["lowest_cents"],
        hours=kept["hours"] * 60,
        rate=kept["cost_rate_cents"],
    )


def _changes(visit: Visit, since: Since | None) -> Sequence[ChangeShown]:
    if since is None or not visit.is_owner:
        return ()
    return [
        ChangeShown(
            label=line.label,
            then=line.then,
            now=line.now,
            difference=difference(line.difference, visit.shop.symbol),
            worked_then=line.worked_then,
            worked_now=line.worked_now,
        )
        for line in since.lines
    ]


def _option(worked: OptionWorked, symbol: str) -> OptionShown:
    return OptionShown(
        id=worked.option.id,
        label=worked.option.label,
        unit_code=worked.unit_code,
        words=worked.words,
        difference="" if worked.difference is None else difference(worked.difference, symbol),
        trouble=worked.trouble,
        is_offered=worked.is_offered,
    )


def _link(visit: Visit, held: LoadedQuote) -> LinkShown:
    state = visit.request.app.state
    path = link_path(held.quote, state.secret)
    root = state.address or str(visit.request.base_url).rstrip("/")
    address = f"{root}{path}" if path else ""
    letter = ""
    if address and held.customer.email:
        subject = in_address(f"Quote {held.number} from {visit.shop.name}")
        body = in_address(
            f"Dear {held.customer.name},\n\nhere is the quote for {held.job.name}:\n{address}\n"
        )
        letter = f"mailto:{in_address(held.customer.email, safe='@')}?subject={subject}&body={body}"
    return LinkShown(address=address, has_ended=held.quote.link_ended_at is not None, letter=letter)
