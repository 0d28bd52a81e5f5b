"""The demo's own page: what it is, bringing it in, and taking it out again."""

from dataclasses import dataclass
from datetime import date, datetime
from functools import partial
from typing import ClassVar

from fastapi import APIRouter, Request
from starlette.responses import Response

from casewright.records.jobs import Job
from casewright.records.papers import PaperKind
from casewright.records.people import Person, Shop
from casewright.records.sessions import Fenced
from casewright.shop.demo.made import DemoStanding, bring_demo_in, demo_standing, take_demo_out
from casewright.shop.demo.scene import Act, WritesIssue
from casewright.shop.papers import JobAtHand
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.paper_says import OrderWords
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Owner, Visit
from casewright.web.quotes.paper_making import Writer

router = APIRouter()
NOT_SURE = "Tick this first: what is taken out cannot be brought back as it was."


@dataclass(frozen=True, slots=True, kw_only=True)
class DemoPage(Page):
    """What the demo is, and whether it is in the shop."""

    template: ClassVar[str] = "shop/demo.html"
    standing: DemoStanding
    tabs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DemoRemovalPage(Page):
    """What goes with the demo, and what stays."""

    template: ClassVar[str] = "shop/demo_removal.html"
    form: Form
    standing: DemoStanding
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/demo")
def show_demo(visit: Owner) -> Response:
    """What the demo is."""
    page = DemoPage(title="The demo", standing=demo_standing(visit.db), tabs=rooms_for(visit))
    return show(visit, page)


@router.post("/shop/demo")
def save_demo(visit: Owner) -> Response:
    """Brings the demo in; sent twice, it comes once."""
    if not visit.shop.demo:
        bring_demo(visit.db, visit.shop, visit.person, visit.request, visit.now)
    return see("/jobs", "added")


@router.get("/shop/demo/removal")
def show_removal(visit: Owner) -> Response:
    """What taking the demo out would take along."""
    if not visit.shop.demo:
        return see("/shop/demo")
    return show(visit, _removal(visit, form_of()))


@router.post("/shop/demo/removal")
def save_removal(visit: Owner) -> Response:
    """Takes the demo out, once that is ticked; sent twice, it goes once."""
    if not visit.shop.demo:
        return see("/shop/demo")
    if not visit.typed.has("sure"):
        return show(visit, _removal(visit, Form(faults={"sure": NOT_SURE})), 422)
    take_demo_out(visit.db, visit.shop, visit.who, visit.now)
    return see("/shop/demo", "removed")


def bring_demo(db: Fenced, shop: Shop, person: Person, request: Request, now: datetime) -> None:
    """Brings the demo in, its papers written as every paper is."""
    secret: bytes = request.app.state.secret
    bring_demo_in(db, shop, person, secret=secret, paper=demo_paper, now=now)


def demo_paper(shop: Shop, job: Job, at_hand: JobAtHand, today: date, act: Act) -> WritesIssue:
    """How a paper of the demo is written."""
    words = OrderWords(
        supplier=act.get("supplier", ""),
        needed_by=act["needed_by"],
        delivery=act.get("delivery", ""),
        remarks=tuple(act.get("remarks", ())),
    )
    writer = Writer(shop=shop, job=job, at_hand=at_hand, today=today, words=words)
    return partial(writer.write, PaperKind(act["kind"]))


def _removal(visit: Visit, form: Form) -> DemoRemovalPage:
    return DemoRemovalPage(
        title="Take the demo out", form=form, standing=demo_standing(visit.db), tabs=rooms_for(visit)
    )
