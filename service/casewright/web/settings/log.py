"""What the log of finished jobs suggests for the hours, to be taken over by a tick."""

from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.figures import house_figures
from casewright.shop.log_lessons import Taught, take_lessons, what_the_log_teaches
from casewright.shop.refusals import Stale
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Reader
from casewright.web.frame.visits import Owner, Visit

router = APIRouter()
ADDRESS = "/shop/hours/log"


@dataclass(frozen=True, slots=True, kw_only=True)
class LogPage(Page):
    """What the log suggests."""

    template: ClassVar[str] = "shop/log.html"
    taught: tuple[Taught, ...]
    trust: float
    outlier: float
    revision: int
    stale: bool
    has_demo: bool
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/hours/log")
def show_log(visit: Owner) -> Response:
    """What finished jobs teach the hours."""
    return show(visit, _page(visit))


@router.post("/shop/hours/log")
def save_log(visit: Owner) -> Response:
    """Takes over what was ticked."""
    started = Reader(visit.typed).whole(
        "revision", least=1, most=visit.shop.figures, default=visit.shop.figures
    )
    try:
        take_lessons(
            visit.db, visit.shop, visit.typed.all("take"), started, visit.who, visit.now, visit.today
        )
    except Stale:
        return show(visit, _page(visit, stale=True), 409)
    return see("/shop/hours", "saved")


def _page(visit: Visit, *, stale: bool = False) -> LogPage:
    held = house_figures()
    return LogPage(
        title="What the log says",
        taught=what_the_log_teaches(visit.db, visit.shop, visit.today),
        trust=held.trust,
        outlier=held.outlier,
        revision=visit.shop.figures,
        stale=stale,
        has_demo=visit.shop.demo,
        tabs=rooms_for(visit),
    )
