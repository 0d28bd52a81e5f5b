"""The rack: what is there, its labels, and labelling what is left of a board."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit
from casewright.papers.labels_pdf import MOST, Label, labels_pdf
from casewright.records.stock import PieceKind, PieceState, StockPiece
from casewright.records.stock_lists import (
    A_PAGE,
    PieceRow,
    materials_on_hand,
    pieces_by_id,
    pieces_of_delivery,
    rack,
)
from casewright.shop.keeping import once
from casewright.shop.receiving import load_delivery
from casewright.shop.refusals import NotFound, Refused
from casewright.shop.stock import PieceFacts, feet_of, label, label_offcut, load_piece, sort_of
from casewright.web.frame.filters import day
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.pdfs import paper_for, pdf_answer
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Visit
from casewright.web.stock.piece_form import read_size
from casewright.web.stock.sorts import read_sort, size_words, sort_words
from casewright.web.stock.tabs import tabs_for
from casewright.wood.arrival import is_worth_keeping
from casewright.wood.grades import GradeName
from casewright.wood.species import woods
from casewright.wood.thickness import usual_classes

router = APIRouter()
NAMES = {
    "material": "Wood",
    "size": "Class",
    "width": "Width",
    "length": "Length",
    "worth": "Worth",
    "moisture": "Moisture",
    "small": "Smaller than usual",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceLine:
    """One piece on the rack."""

    row: PieceRow
    label: str
    sort: str
    size: str
    feet: str
    worth_cents: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class RackPage(Page):
    """What is on the rack."""

    template: ClassVar[str] = "stock/rack.html"
    lines: Sequence[PieceLine]
    total: int
    feet: str
    materials: Sequence[str]
    kind: str
    material: str
    number: int
    pages: int
    more: str
    sees_cost: bool
    tabs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OffcutPage(Page):
    """The form to label what is left of a board, or something that has no board."""

    template: ClassVar[str] = "stock/offcut.html"
    form: Form
    origin: StockPiece | None
    origin_words: str
    names: dict[str, str]
    woods: Sequence[str]
    classes: Sequence[str]
    grades: Sequence[str]
    sees_cost: bool


@router.get("/stock")
def show_rack(visit: Everybody, kind: str = "", material: str = "", page: int = 1) -> Response:
    """What is on the rack, by wood and class."""
    number = min(max(page, 1), 10_000)
    wanted = PieceKind(kind) if kind in set(PieceKind) else None
    rows, total = rack(visit.db, kind=wanted, material=material[:120], page=number)
    lines = [_line(row, visit) for row in rows]
    asked = {"kind": wanted.value if wanted else "", "material": material[:120]}
    held = RackPage(
        title="Stock",
        lines=lines,
        total=total,
        feet=f"{sum(feet_of(row.piece) for row in rows):.1f}",
        materials=materials_on_hand(visit.db),
        kind=asked["kind"],
        material=asked["material"],
        number=number,
        pages=max(1, -(-total // A_PAGE)),
        more="".join(f"&{name}={value}" for name, value in asked.items() if value and value.isascii()),
        sees_cost=visit.is_owner,
        tabs=tabs_for(visit),
    )
    return show(visit, held)


def _line(row: PieceRow, visit: Visit) -> PieceLine:
    piece = row.piece
    return PieceLine(
        row=row,
        label=label(piece),
        sort=sort_words(sort_of(piece)),
        size=size_words(piece, visit.unit),
        feet="" if piece.is_sheet else f"{feet_of(piece):.2f}",
        worth_cents=piece.cost_cents if visit.is_owner else None,
    )


@router.get("/stock/labels.pdf")
def show_labels(visit: Everybody, delivery: str = "", piece: str = "", paper: str = "") -> Response:
    """Labels as PDF: of a delivery, of one piece or several, or of all that is on the rack."""
    pieces: Sequence[StockPiece]
    if delivery:
        came = pieces_of_delivery(visit.db, load_delivery(visit.db, delivery[:13]).delivery.id)
        pieces = [each for each in came if each.state is not PieceState.SENT_BACK]
    elif piece:
        pieces = pieces_by_id(visit.db, [each[:13] for each in piece.split(",")[:MOST]])
    else:
        pieces = [row.piece for row in rack(visit.db, most=MOST)[0]]
    if not pieces:
        raise NotFound("piece of stock to label")
    labels = [_label(each, visit.unit) for each in pieces]
    sheet = paper_for(paper, visit.shop)
    return pdf_answer(f"labels-{labels[0].code}", lambda: labels_pdf(visit.shop.name, labels, sheet))


def _label(piece: StockPiece, unit: LengthUnit) -> Label:
    facts = (
        f"{piece.moisture:g} %" if piece.moisture is not None else "",
        f"log {piece.log_mark}" if piece.log_mark else "",
        piece.place,
        day(piece.created_at.date()),
    )
    return Label(
        code=label(piece),
        sort=sort_words(sort_of(piece)),
        size=size_words(piece, unit),
        facts=tuple(each for each in facts if each),
    )


@router.get("/stock/offcuts/new")
def new_offcut(visit: Everybody, piece: str = "") -> Response:
    """The form to label an offcut; of a board, it knows the wood already."""
    origin = load_piece(visit.db, piece[:13]).piece if piece else None
    values = {"place": origin.place, "log_mark": origin.log_mark} if origin else {"size": "4/4"}
    return show(visit, _page(visit, origin, form_of(**values)))


@router.post("/stock/offcuts")
def save_offcut(visit: Everybody) -> Response:
    """Labels an offcut."""
    read = Reader(visit.typed)
    origin = load_piece(visit.db, visit.typed.get("piece")[:13]).piece if visit.typed.get("piece") else None
    sort = sort_of(origin) if origin else read_sort(read)
    width, length = read_size(read, "width", visit.unit), read_size(read, "length", visit.unit)
    typed = visit.is_owner and visit.typed.get("worth").strip()
    worth = read.money("worth") if typed else None
    moisture = None
    if visit.typed.get("moisture").strip():
        moisture = read.number("moisture", least=1, most=60, example="7.5", unit=" %")
    facts = PieceFacts(
        width=width,
        length=length,
        moisture=moisture,
        log_mark=read.line("log_mark", most=40),
        place=read.line("place", most=80),
        note=read.line("note", most=300),
    )
    is_small = not sort.is_sheet and not is_worth_keeping(width, length)
    if not read.faults and is_small and visit.typed.get("small") != "1":
        read.fault("small", "It is smaller than what is usually kept. Tick to label it all the same.")
    if read.faults:
        return show(visit, _page(visit, origin, read.form), 422)

    def make() -> str:
        made = label_offcut(
            visit.db,
            sort,
            facts,
            visit.typed.once,
            visit.who,
            visit.now,
            origin=origin,
            worth_cents=worth,
        )
        return f"/stock/pieces/{made.id}"

    try:
        return see(once(visit.db, visit.typed.once, visit.now, make), "added")
    except Refused as refused:
        read.fault("length", str(refused))
        return show(visit, _page(visit, origin, read.form), refused.status)


def _page(visit: Visit, origin: StockPiece | None, form: Form) -> OffcutPage:
    of = f" of {label(origin)}" if origin else ""
    return OffcutPage(
        title=f"New offcut{of}",
        form=form,
        origin=origin,
        origin_words=f"{sort_words(sort_of(origin))}, {size_words(origin, visit.unit)}" if origin else "",
        names=NAMES,
        woods=[each.name for each in woods()],
        classes=[each.name for each in usual_classes()],
        grades=[each.value for each in GradeName],
        sees_cost=visit.is_owner,
    )
