"""Every revision of the shop's figures: who changed what, a look at an old one, the shop file out and in."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.pieces.asked.reading import CannotRead
from casewright.records.figures import A_PAGE, list_revisions
from casewright.records.people import ShopFigures
from casewright.shop.own_figures import figures_file, held_figures, put_back, take_in
from casewright.shop.refusals import Stale
from casewright.shop.what_changed import Difference, in_words, what_changed
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Owner, Visit
from casewright.web.settings.forms import sentence

router = APIRouter()
FEW = 6
"""So many differences stand in the list; the rest on the revision's own page."""
LONGEST_FILE = 200_000


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionRow:
    """One revision in the list.

    Attributes:
        number: its number
        at: when it was saved
        who: who saved it
        changed: the first of its differences from the one before
        more: how many there are beyond
    """

    number: int
    at: datetime
    who: str
    changed: tuple[Difference, ...]
    more: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionsPage(Page):
    """The revisions, and the shop file."""

    template: ClassVar[str] = "shop/revisions.html"
    rows: tuple[RevisionRow, ...]
    holds: int
    number: int
    pages: int
    form: Form
    problems: tuple[str, ...]
    tabs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionPage(Page):
    """One revision."""

    template: ClassVar[str] = "shop/revision.html"
    held: ShopFigures
    holds: int
    changed: tuple[Difference, ...]
    all: tuple[tuple[str, str], ...]
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/revisions")
def show_revisions(visit: Owner, page: int = 1) -> Response:
    """The revisions, the latest first."""
    return show(visit, _page(visit, form_of(), number=min(max(page, 1), 10_000)))


@router.post("/shop/revisions")
def save_file(visit: Owner) -> Response:
    """Takes a shop file in as the next revision."""
    read = Reader(visit.typed)
    text = read.text("file", most=LONGEST_FILE, needed="Paste the whole file, from { to }.")
    started = read.whole("revision", least=1, most=visit.shop.figures, default=visit.shop.figures)
    if read.faults:
        return show(visit, _page(visit, read.form), 422)
    try:
        take_in(visit.db, visit.shop, text, started, visit.who, visit.now)
    except CannotRead as error:
        read.fault("file", "The file cannot be used yet; what is wrong with it is listed above.")
        problems = tuple(
            f"{one.field}: {sentence(one.message)}" if one.field else sentence(one.message)
            for one in error.problems
        )
        return show(visit, _page(visit, read.form, problems=problems), 422)
    except Stale:
        read.fault(
            "file",
            "Somebody else changed the figures meanwhile. Look at their change, then take the file in.",
        )
        return show(visit, _page(visit, read.form), 409)
    return see("/shop/revisions", "saved")


@router.get("/shop/revisions/{number}")
def show_revision(visit: Owner, number: int) -> Response:
    """One revision: what it changed, and everything it says."""
    kept = held_figures(visit.db, visit.shop, number)
    before = held_figures(visit.db, visit.shop, number - 1) if number > 1 else {}
    held = visit.db.get_one(ShopFigures, (visit.shop.shop_id, number))
    return show(
        visit,
        RevisionPage(
            title=f"Revision {number} of the figures",
            held=held,
            holds=visit.shop.figures,
            changed=what_changed(before, kept) if before else (),
            all=tuple(in_words(kept).items()),
            tabs=rooms_for(visit),
        ),
    )


@router.post("/shop/revisions/{number}")
def put_revision_back(visit: Owner, number: int) -> Response:
    """Lets an earlier revision hold again."""
    started = Reader(visit.typed).whole(
        "revision", least=1, most=visit.shop.figures, default=visit.shop.figures
    )
    put_back(visit.db, visit.shop, number, started, visit.who, visit.now)
    return see("/shop/revisions", "saved")


@router.get("/shop/figures.json")
def download_figures(visit: Owner, revision: int | None = None) -> Response:
    """The shop file: what the command line reads, and what can be taken in again."""
    number = visit.shop.figures if revision is None else revision
    name = re.sub(r"[^a-z0-9]+", "-", visit.shop.name.lower()).strip("-") or "shop"
    return Response(
        figures_file(held_figures(visit.db, visit.shop, number)),
        media_type="application/json",
        headers={"content-disposition": f'attachment; filename="{name[:40]}-figures-{number}.json"'},
    )


def _page(visit: Visit, form: Form, *, number: int = 1, problems: tuple[str, ...] = ()) -> RevisionsPage:
    holds = visit.shop.figures
    return RevisionsPage(
        title="Revisions",
        rows=_rows(list_revisions(visit.db, number)),
        holds=holds,
        number=number,
        pages=max(1, -(-holds // A_PAGE)),
        form=form,
        problems=problems,
        tabs=rooms_for(visit),
    )


def _rows(found: Sequence[ShopFigures]) -> tuple[RevisionRow, ...]:
    rows = []
    for place, each in enumerate(found[:A_PAGE]):
        earlier = found[place + 1].spec if place + 1 < len(found) else None
        changed = what_changed(earlier, each.spec) if earlier is not None else ()
        rows.append(
            RevisionRow(
                number=each.revision,
                at=each.at,
                who=each.who,
                changed=changed[:FEW],
                more=max(0, len(changed) - FEW),
            )
        )
    return tuple(rows)
