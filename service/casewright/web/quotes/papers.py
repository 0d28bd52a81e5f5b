"""Papers of a job: issuing them, reading them on the screen, printing them, taking them as CSV."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any, ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit, refusal
from casewright.papers.card_standing import cards_standing
from casewright.papers.joint_cards import JointCardsPaper
from casewright.papers.kinds import KINDS, Kind
from casewright.papers.order_pdf import lumber_order_pdf
from casewright.papers.says import WHOLE, says_of
from casewright.pieces.built.refusals import REFUSALS
from casewright.records.jobs import Job
from casewright.records.papers import PaperKind
from casewright.records.quotes import IssueRow, papers_of_kind
from casewright.shop.jobs import OVER, load_job, refuse_if_over
from casewright.shop.keeping import once
from casewright.shop.papers import (
    Basis,
    LoadedPaper,
    issue_paper,
    job_at_hand,
    load_paper,
    measured_since,
    stale_reasons,
)
from casewright.shop.refusals import NotFound, Refused
from casewright.web.frame.pages import Page, drawing, see, show
from casewright.web.frame.paper_says import OrderWords, facts_now, gauges_now, says_now
from casewright.web.frame.pdfs import file_answer, paper_for, pdf_answer
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Office, Visit
from casewright.web.quotes.order_form import order_form, said_before
from casewright.web.quotes.paper_making import Writer

router = APIRouter()
OURS = "shop"
TEMPLATES = "templates"
"""The copy of an order that stays, with the sums behind it."""
RESERVED = "This paper is for the owner or the maker of the shop."


@dataclass(frozen=True, slots=True, kw_only=True)
class CardShown:
    """One card of a set, and why it is out of date; nothing where it holds."""

    anchor: str
    title: str
    drawers: str
    wrong: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperPage(Page):
    """One paper, as it was issued."""

    held: LoadedPaper
    pdf: str
    csv: str
    ours: str
    templates: str
    dxf: str
    data: Mapping[str, Any]
    drawings: Mapping[int, Markup]
    other_drawings: Sequence[Markup]
    stale: Sequence[str]
    cards: Sequence[CardShown]
    wrong: Mapping[str, Sequence[str]]
    """What is wrong on the cards of a set, by their places on the page."""
    newer: IssueRow | None
    earlier: Sequence[IssueRow]
    form: Form
    is_office: bool
    is_over: bool


class OrderPage(PaperPage):
    """A lumber order."""

    template: ClassVar[str] = "paper_pages/lumber_order.html"


class CutListPage(PaperPage):
    """A cut list."""

    template: ClassVar[str] = "paper_pages/cut_list.html"


class JointCardsPage(PaperPage):
    """A set of joint cards."""

    template: ClassVar[str] = "paper_pages/joint_cards.html"


class CautionSheetPage(PaperPage):
    """A caution sheet."""

    template: ClassVar[str] = "paper_pages/caution_sheet.html"


PAGES: dict[PaperKind, type[PaperPage]] = {
    PaperKind.LUMBER_ORDER: OrderPage,
    PaperKind.CUT_LIST: CutListPage,
    PaperKind.JOINT_CARDS: JointCardsPage,
    PaperKind.CAUTION_SHEET: CautionSheetPage,
}


@router.get("/jobs/{job_id}/lumber-order")
def show_order_form(visit: Office, job_id: str) -> Response:
    """Asks to whom an order goes and by when, before it is issued."""
    job = load_job(visit.db, job_id)
    refuse_if_over(job)
    return _show_order_form(visit, job)


def _show_order_form(visit: Visit, job: Job, form: Form | None = None) -> Response:
    try:
        return show(visit, order_form(visit, job, form), 422 if form else 200)
    except REFUSALS as error:
        raise Refused(refusal(error, visit.unit), 422) from None


@router.post("/jobs/{job_id}/papers")
def save_paper(visit: Office, job_id: str) -> Response:
    """Issues a paper of a job; one that was issued before gets a new revision."""
    job = load_job(visit.db, job_id)
    refuse_if_over(job)
    read = Reader(visit.typed)
    kind = PaperKind(read.choice("kind", [each.value for each in PaperKind]))
    words = _read_words(read)
    if read.faults:
        return _show_order_form(visit, job, read.form)

    def make() -> str:
        at_hand = job_at_hand(visit.db, visit.shop, job, visit.today)
        writer = Writer(shop=visit.shop, job=job, at_hand=at_hand, today=visit.today, words=words)
        made = issue_paper(
            visit.db,
            job,
            kind,
            at_hand,
            partial(writer.write, kind),
            visit.who,
            visit.now,
        )
        return f"/papers/{made.id}"

    try:
        return see(once(visit.db, visit.typed.once, visit.now, make))
    except REFUSALS as error:
        raise Refused(refusal(error, visit.unit), 422) from None


def _read_words(read: Reader) -> OrderWords:
    return OrderWords(
        supplier=read.line("supplier", most=120),
        needed_by=read.day("needed_by"),
        delivery=read.line("delivery", most=200),
        surfacing=read.line("surfacing", most=120),
        remarks=tuple(line.strip() for line in read.text("remarks", most=2000).splitlines() if line.strip()),
    )


@router.get("/papers/{paper_id}")
def show_paper(visit: Everybody, paper_id: str) -> Response:
    """One paper, with what has changed since."""
    held, kind = _paper(visit, paper_id)
    address = f"/papers/{held.paper.id}"
    rows = papers_of_kind(visit.db, held.job.id, held.paper.kind)
    newer = next((each for each in rows if each.revision > held.paper.revision), None)
    data = kind.data(kind.read(held.content))
    revision = f", revision {held.paper.revision}" if held.paper.revision > 1 else ""
    stale, cards = ((), ()) if newer else _stale(visit, held)
    page = PAGES[held.paper.kind](
        title=f"{kind.title} {held.number}{revision}",
        held=held,
        pdf=f"{address}/{kind.slug}.pdf",
        csv=f"{address}/{kind.slug}.csv" if kind.csv else "",
        ours=f"{address}/{kind.slug}.pdf?copy={OURS}" if held.paper.kind is PaperKind.LUMBER_ORDER else "",
        templates=f"{address}/{kind.slug}.pdf?copy={TEMPLATES}" if data.get("has_templates") else "",
        dxf=f"{address}/{kind.slug}.dxf" if data.get("has_templates") else "",
        data=data,
        drawings=_drawings(data),
        other_drawings=[drawing(card["drawing"]) for card in data.get("others", ())],
        stale=stale,
        cards=cards,
        wrong={each.anchor: each.wrong for each in cards if each.wrong},
        newer=newer,
        earlier=[each for each in rows if each.id != held.paper.id],
        form=said_before(held.content),
        is_office=visit.sees_prices,
        is_over=held.job.state in OVER,
    )
    return show(visit, page)


def _paper(visit: Visit, paper_id: str, slug: str = "") -> tuple[LoadedPaper, Kind]:
    """A paper that this person may read.

    Raises:
        NotFound: the shop has no such paper, or it is of another kind
        Refused: it is not for the bench
    """
    held = load_paper(visit.db, paper_id)
    kind = KINDS[held.paper.kind]
    if slug and slug != kind.slug:
        raise NotFound("paper")
    if not kind.for_bench and not visit.sees_prices:
        raise Refused(RESERVED, 403)
    return held, kind


def _drawings(data: Mapping[str, Any]) -> dict[int, Markup]:
    """The drawing of each card, by its place; one that serves several settings of a gauge stands once."""
    found: dict[str, int] = {}
    for place, card in enumerate(data.get("cards", ())):
        found.setdefault(card["drawing"], place)
    return {place: drawing(svg) for svg, place in found.items()}


def _stale(visit: Visit, held: LoadedPaper) -> tuple[Sequence[str], tuple[CardShown, ...]]:
    try:
        at_hand = job_at_hand(visit.db, visit.shop, held.job, visit.today)
        reasons = stale_reasons(held, at_hand, lambda: _says_the_same(visit, held, at_hand))
        cards = _cards(visit, held, at_hand) if reasons and held.paper.kind is PaperKind.JOINT_CARDS else ()
    except REFUSALS as error:
        return (f"the job cannot be worked out as it stands now ({refusal(error, visit.unit)})",), ()
    return reasons, cards


def _says_the_same(visit: Visit, held: LoadedPaper, at_hand: Basis) -> bool:
    kind, unit = held.paper.kind, LengthUnit(visit.shop.unit)
    now = says_now(kind, at_hand.texts, at_hand.figures_text, visit.today, unit)
    return says_of(kind, held.content)[WHOLE] == now[WHOLE]


def _cards(visit: Visit, held: LoadedPaper, at_hand: Basis) -> tuple[CardShown, ...]:
    """The cards of a set that is out of date: which are wrong, and which hold."""
    standing = cards_standing(
        JointCardsPaper.model_validate(held.content),
        facts_now(at_hand.texts, at_hand.figures_text),
        measured_since(held, at_hand),
        tuple(line for text in at_hand.texts for line in gauges_now(text, at_hand.figures_text, visit.unit)),
    )
    return tuple(
        CardShown(
            anchor=f"{each.among}-{each.place + 1}",
            title=each.title,
            drawers=", ".join(each.drawers),
            wrong=tuple(in_unit(line, visit.unit) for line in each.wrong),
        )
        for each in standing
    )


@router.get("/papers/{paper_id}/{slug}.pdf")
def show_paper_pdf(visit: Everybody, paper_id: str, slug: str, paper: str = "", copy: str = "") -> Response:
    """A paper as PDF, as it was issued."""
    held, kind = _paper(visit, paper_id, slug)
    sheet, said = paper_for(paper, visit.shop), kind.read(held.content)
    name = f"{held.number}-{held.paper.revision}-{kind.slug}"
    templates = kind.templates
    if copy == TEMPLATES:
        if templates is None or not said.strips:
            raise NotFound("file")
        return pdf_answer(f"{name}-templates", lambda: templates(said, sheet))
    if copy == OURS and held.paper.kind is PaperKind.LUMBER_ORDER:
        return pdf_answer(f"{name}-our-copy", lambda: lumber_order_pdf(said, sheet, for_shop=True))
    return pdf_answer(name, lambda: kind.pdf(said, sheet))


@router.get("/papers/{paper_id}/{slug}.csv")
def show_paper_csv(visit: Everybody, paper_id: str, slug: str) -> Response:
    """A paper as CSV, for a spreadsheet or another program."""
    held, kind = _paper(visit, paper_id, slug)
    if kind.csv is None:
        raise NotFound("file")
    name = f"{held.number}-{held.paper.revision}-{kind.slug}.csv"
    return file_answer(name, kind.csv(kind.read(held.content)), "text/csv; charset=utf-8")


@router.get("/papers/{paper_id}/{slug}.dxf")
def show_paper_dxf(visit: Everybody, paper_id: str, slug: str) -> Response:
    """What a paper marks on boards, for a machine or another drawing program."""
    held, kind = _paper(visit, paper_id, slug)
    said = kind.read(held.content)
    if kind.dxf is None or not said.strips:
        raise NotFound("file")
    name = f"{held.number}-{held.paper.revision}-{kind.slug}.dxf"
    return file_answer(name, kind.dxf(said), "image/vnd.dxf")
