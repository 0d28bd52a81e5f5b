"""One piece of stock: what is known of it, what is done with it, what happened to it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import in_unit
from casewright.records.stock import PieceState, StockEvent, StockPiece
from casewright.records.stock_lists import JobRow, events_of_piece, jobs_to_order_for, offcuts_of
from casewright.shop.jobs import load_job
from casewright.shop.receiving import faults_of
from casewright.shop.refusals import Stale
from casewright.shop.stock import MOVES, feet_of, label, load_piece, measure_piece, move_piece, sort_of
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Visit
from casewright.web.stock.piece_form import (
    DEFECT_WORDS,
    FACES,
    SAP,
    defect_rows,
    names,
    piece_values,
    read_piece,
)
from casewright.web.stock.sorts import size_words, sort_words

router = APIRouter()
DID = {
    "tallied": "tallied",
    "labelled": "labelled",
    "measured": "measured",
    "keep": "kept",
    "release": "released",
    "use": "cut up",
    "return": "put back on the rack",
    "send back": "sent back",
    "taken back": "taken out of the tally",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class EventShown:
    """What happened to a piece, in words."""

    words: str
    who: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecePage(Page):
    """One piece of stock."""

    template: ClassVar[str] = "stock/piece.html"
    piece: StockPiece
    job: int | None
    sort: str
    size: str
    feet: str
    faults: Sequence[str]
    offcuts: Sequence[tuple[str, str, str]]
    events: Sequence[EventShown]
    jobs: Sequence[JobRow]
    form: Form
    names: dict[str, str]
    rows: range
    sap: tuple[tuple[str, str], ...]
    faces: tuple[tuple[str, str], ...]
    defect_words: dict[str, str]
    is_here: bool
    unit: str
    sees_cost: bool


@router.get("/stock/pieces/{piece_id}")
def show_piece(visit: Everybody, piece_id: str) -> Response:
    """One piece of stock."""
    return show(visit, _page(visit, piece_id))


@router.post("/stock/pieces/{piece_id}/sizes")
def save_piece(visit: Everybody, piece_id: str) -> Response:
    """Writes down what was measured; of two who save at once the second is told."""
    piece, read = load_piece(visit.db, piece_id).piece, Reader(visit.typed)
    facts = read_piece(read, visit.unit)
    version = read.whole("version", least=1, most=10**8)
    if read.faults:
        return show(visit, _page(visit, piece_id, read.form), 422)
    try:
        measure_piece(visit.db, piece, facts, version, visit.who, visit.now)
    except Stale:
        theirs = piece_values(piece, visit.unit)
        changed = {
            name: text for name, text in theirs.items() if name != "version" and text != read.typed.get(name)
        }
        form = Form(values={**read.form.values, "version": str(piece.version)}, theirs=changed, is_stale=True)
        return show(visit, _page(visit, piece_id, form), 409)
    return see(f"/stock/pieces/{piece.id}", "saved")


@router.post("/stock/pieces/{piece_id}/acts")
def save_act(visit: Everybody, piece_id: str) -> Response:
    """Keeps a piece for a job, cuts it up, puts it back, or sends it back."""
    piece, read = load_piece(visit.db, piece_id).piece, Reader(visit.typed)
    act = read.choice("act", list(MOVES))
    chosen = visit.typed.get("job")[:13]
    if act in {"keep", "use"} and not chosen:
        read.fault("job", "Choose the job.")
    why = read.line("why", most=200)
    if read.faults:
        return show(visit, _page(visit, piece_id, read.form), 422)
    job = load_job(visit.db, chosen) if chosen and act in {"keep", "use"} else None
    move_piece(visit.db, piece, act, job, visit.who, visit.now, why)
    if act == "use":
        return see(f"/stock/offcuts/new?piece={piece.id}", "saved")
    return see(f"/stock/pieces/{piece.id}", "saved")


def _page(visit: Visit, piece_id: str, form: Form | None = None) -> PiecePage:
    row = load_piece(visit.db, piece_id)
    piece = row.piece
    held = form_of(**piece_values(piece, visit.unit), job=piece.for_job or "")
    if form is not None:
        form = Form(
            values={**held.values, **form.values},
            faults=form.faults,
            theirs=form.theirs,
            is_stale=form.is_stale,
            once=form.once,
        )
    shown = form or held
    return PiecePage(
        title=f"{piece.kind.value.capitalize()} {label(piece)}",
        piece=piece,
        job=row.job,
        sort=sort_words(sort_of(piece)),
        size=size_words(piece, visit.unit),
        feet="" if piece.is_sheet else f"{feet_of(piece):.2f}",
        faults=[in_unit(said, visit.unit) for said in faults_of(piece)],
        offcuts=[
            (each.id, label(each), size_words(each, visit.unit)) for each in offcuts_of(visit.db, piece.id)
        ],
        events=[
            EventShown(words=", ".join(_words(each)), who=each.who, at=each.at)
            for each in events_of_piece(visit.db, piece.id)
        ],
        jobs=jobs_to_order_for(visit.db),
        form=shown,
        names=names() | {"job": "Job"},
        rows=defect_rows(shown.values),
        sap=SAP,
        faces=FACES,
        defect_words=DEFECT_WORDS,
        is_here=piece.state in {PieceState.STOCK, PieceState.KEPT},
        unit=visit.unit.value,
        sees_cost=visit.is_owner,
    )


def _words(event: StockEvent) -> Iterator[str]:
    yield DID.get(event.kind, event.kind)
    if event.data.get("job"):
        yield f"job {event.data['job']}"
    if event.data.get("why"):
        yield event.data["why"]
    if event.kind == "measured":
        yield " and ".join(
            name.removesuffix("_ticks").replace("_", " ") for name in sorted(event.data.get("after", {}))
        )
