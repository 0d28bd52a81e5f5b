"""The tally of a delivery, by tapping: a length stays, a tap on a width is a board."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit, from_ticks, show_in
from casewright.measure.saying import in_unit
from casewright.measure.units import MILLIMETRES_PER_INCH
from casewright.pricing.prices import PriceKind
from casewright.records.stock import OrderLine, PieceState, StockPiece
from casewright.records.stock_lists import lines_of_order, pieces_of_delivery
from casewright.shop.keeping import once
from casewright.shop.receiving import (
    LoadedDelivery,
    end_delivery,
    faults_of,
    key_of,
    line_key,
    load_delivery,
    take_back,
    tallies_of,
    tally_piece,
)
from casewright.shop.refusals import NotFound
from casewright.shop.stock import PieceFacts, StockSort, feet_of, label, load_piece, sort_of
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Visit
from casewright.web.stock.sorts import read_sort, size_words, sort_values, sort_words
from casewright.web.stock.tally_form import INCHES, QUARTERS, STEPS_MM, WIDTHS_MM, inherited, lengths_to_tap
from casewright.wood.grades import GradeName
from casewright.wood.sheets import sheets
from casewright.wood.species import woods
from casewright.wood.tally import Tally
from casewright.wood.thickness import usual_classes

router = APIRouter()
NAMES = {
    "width": "Width",
    "length": "Length",
    "thickness": "Thickness",
    "moisture": "Moisture",
    "count": "How many sheets",
    "material": "Wood",
    "size": "Class",
}
MOST_SHEETS = 60
LARGEST = 600.0
"""Nobody carries a board of more than 50 ft [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SortShown:
    """One sort of stock in a delivery: what was ordered of it, and what has come."""

    key: str
    words: str
    ordered: str
    came: str
    is_here: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceShown:
    """One tallied piece."""

    id: str
    label: str
    size: str
    counted: str
    exact: str
    more: str
    faults: Sequence[str]
    is_sent_back: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Running:
    """The running tally of one sort: pieces, surface measure and feet as the yard counts, exact feet."""

    pieces: int
    surface: str
    counted: str
    exact: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyPage(Page):
    """A delivery while it is tallied, and after."""

    template: ClassVar[str] = "stock/tally.html"
    loaded: LoadedDelivery
    sorts: Sequence[SortShown]
    sort: StockSort | None
    sort_words: str
    sort_values: dict[str, str]
    pieces: Sequence[PieceShown]
    running: Running | None
    last: PieceShown | None
    form: Form
    names: dict[str, str]
    lengths: Sequence[tuple[str, str]]
    widths: Sequence[tuple[str, str]]
    steps: Sequence[tuple[str, str]]
    unit: str
    woods: Sequence[str]
    classes: Sequence[str]
    grades: Sequence[str]
    sheet_kinds: Sequence[str]
    has_order: bool
    is_office: bool


@router.get("/stock/deliveries/{delivery_id}")
def show_tally(visit: Everybody, delivery_id: str, line: str = "") -> Response:
    """A delivery, with the buttons to tally it."""
    return show(visit, _page(visit, load_delivery(visit.db, delivery_id), line))


@router.post("/stock/deliveries/{delivery_id}/pieces")
def save_pieces(visit: Everybody, delivery_id: str) -> Response:
    """Tallies a board, or some sheets that are alike."""
    loaded = load_delivery(visit.db, delivery_id)
    read = Reader(visit.typed)
    sort = read_sort(read)
    count = read.whole("count", least=1, most=MOST_SHEETS, default=1) if sort.is_sheet else 1
    facts = _read_facts(read, visit.unit, is_sheet=sort.is_sheet)
    key = line_key(sort.material, sort.cut, sort.size, sort.grade)
    if read.faults:
        return show(visit, _page(visit, loaded, key, read.form), 422)

    def make() -> str:
        for number in range(count):
            tally_piece(
                visit.db,
                loaded,
                sort,
                facts,
                f"{visit.typed.once[:58]}.{number}" if visit.typed.once else "",
                visit.who,
                visit.now,
            )
        return f"/stock/deliveries/{loaded.delivery.id}"

    return see(once(visit.db, visit.typed.once, visit.now, make) + "#tally")


@router.post("/stock/pieces/{piece_id}/removal")
def save_removal(visit: Everybody, piece_id: str) -> Response:
    """Takes a tap back."""
    piece = load_piece(visit.db, piece_id).piece
    if not piece.delivery_id:
        raise NotFound("tally of this piece")
    loaded = load_delivery(visit.db, piece.delivery_id)
    take_back(visit.db, loaded, piece, visit.who, visit.now)
    return see(f"/stock/deliveries/{loaded.delivery.id}#tally", "undone")


@router.post("/stock/deliveries/{delivery_id}/end")
def save_end(visit: Everybody, delivery_id: str) -> Response:
    """Ends the tally, or opens it again."""
    loaded = load_delivery(visit.db, delivery_id)
    typed = visit.typed
    end_delivery(
        visit.db,
        loaded,
        visit.who,
        visit.now,
        all_here=typed.get("all_here") == "1",
        back=typed.get("back") == "1",
    )
    return see(f"/stock/deliveries/{loaded.delivery.id}", "saved")


def _read_facts(read: Reader, unit: LengthUnit, *, is_sheet: bool) -> PieceFacts:
    """What was measured: width from a button and a fraction, or as it was typed; length likewise."""
    typed = read.typed
    width = _read_width(read, unit)
    if typed.get("length_typed").strip() or is_sheet:
        length = _bounded(read, "length_typed", unit)
    else:
        length = _bounded(read, "length", unit)
    thickness = read.length("thickness", unit, needed=False)
    moisture = None
    if typed.get("moisture").strip():
        moisture = read.number("moisture", least=1, most=60, example="7.5", unit=" %")
    return PieceFacts(
        width=width,
        length=length,
        thickness=thickness or None,
        moisture=moisture,
        log_mark=read.line("log_mark", most=40),
        place=read.line("place", most=80),
    )


def _read_width(read: Reader, unit: LengthUnit) -> float:
    tapped = read.typed.get("tapped").strip()
    if not tapped:
        return _bounded(read, "width", unit)
    metric = unit is LengthUnit.MILLIMETRE
    offered = [str(each) for each in (WIDTHS_MM if metric else INCHES)]
    steps = dict(STEPS_MM if metric else QUARTERS)
    over = read.typed.get("over") or "0"
    if tapped not in offered or over not in steps:
        read.fault("width", "Tap one of the widths, or write what the rule says.")
        return 1.0
    if metric:
        return (int(tapped) + int(over)) / MILLIMETRES_PER_INCH
    whole, _, parts = over.partition("/")
    return int(tapped) + (int(whole) / int(parts) if parts else 0.0)


def _bounded(read: Reader, name: str, unit: LengthUnit) -> float:
    size = read.length(name, unit) or 0.0
    if name not in read.faults and not 0.5 <= size <= LARGEST:
        read.fault(
            name,
            f"A piece of stock measures {show_in(0.5, unit)} at least and {show_in(LARGEST, unit)} at most.",
        )
    return max(size, 0.5)


def _page(visit: Visit, loaded: LoadedDelivery, line: str, form: Form | None = None) -> TallyPage:
    pieces = pieces_of_delivery(visit.db, loaded.delivery.id)
    ordered = [
        each
        for each in (lines_of_order(visit.db, loaded.order.id) if loaded.order else ())
        if each.kind in {PriceKind.LUMBER, PriceKind.SHEET}
    ]
    sorts = _sorts(ordered, pieces)
    last = pieces[-1] if pieces else None
    # What was sent and cannot be used is shown again, of whatever sort it was meant to be.
    asked = form.values if form else visit.request.query_params
    sort: StockSort | None
    if asked.get("material"):
        sort = StockSort(
            material=asked["material"][:120],
            size=asked.get("size", "")[:40],
            cut="" if asked.get("is_sheet") else asked.get("cut", "flat")[:20],
            grade="" if asked.get("is_sheet") else asked.get("grade", "")[:30],
            is_sheet=bool(asked.get("is_sheet")),
        )
    else:
        wanted = line or (key_of(last) if last else "")
        sort = sorts.get(wanted) or next(iter(sorts.values()), None)
    here = line_key(sort.material, sort.cut, sort.size, sort.grade) if sort else ""
    mine = [each for each in pieces if key_of(each) == here]
    counted = tallies_of([each for each in mine if each.state is not PieceState.SENT_BACK]).get(here)
    shown = _pieces(mine, counted, visit.unit)
    metric = visit.unit is LengthUnit.MILLIMETRE
    return TallyPage(
        title=f"Delivery {loaded.number}",
        loaded=loaded,
        sorts=_sorts_shown(sorts, ordered, pieces, here),
        sort=sort,
        sort_words=sort_words(sort) if sort else "",
        sort_values=sort_values(sort) if sort else {},
        pieces=shown,
        running=_running(mine, counted, sort),
        last=shown[-1] if shown else None,
        form=form or inherited(mine[-1] if mine else None, sort, visit.unit),
        names=NAMES,
        lengths=lengths_to_tap(mine[-1] if mine else None, visit.unit),
        widths=[(str(each), str(each)) for each in (WIDTHS_MM if metric else INCHES)],
        steps=STEPS_MM if metric else QUARTERS,
        unit="mm" if metric else "in",
        woods=[each.name for each in woods()],
        classes=[each.name for each in usual_classes()],
        grades=[each.value for each in GradeName],
        sheet_kinds=sorted({each.kind for each in sheets()}),
        has_order=loaded.order is not None,
        is_office=visit.sees_prices,
    )


def _sorts(ordered: Iterable[OrderLine], pieces: Iterable[StockPiece]) -> dict[str, StockSort]:
    """What was ordered, then what came beside, by line."""
    found = {
        line_key(each.item, each.cut, each.size, each.grade): StockSort(
            material=each.item,
            size=each.size,
            cut=each.cut,
            grade=each.grade,
            is_sheet=each.kind == PriceKind.SHEET,
        )
        for each in ordered
    }
    for piece in pieces:
        found.setdefault(key_of(piece), sort_of(piece))
    return found


def _sorts_shown(
    sorts: dict[str, StockSort], ordered: Sequence[OrderLine], pieces: Sequence[StockPiece], here: str
) -> list[SortShown]:
    wanted = {line_key(each.item, each.cut, each.size, each.grade): each for each in ordered}
    staying = [each for each in pieces if each.state is not PieceState.SENT_BACK]
    tallies = tallies_of(staying)
    shown = []
    for key, sort in sorts.items():
        line, count = wanted.get(key), sum(key_of(each) == key for each in staying)
        came = (
            f"{count} here" if sort.is_sheet else f"{tallies[key].feet if key in tallies else 0} bd ft here"
        )
        shown.append(
            SortShown(
                key=key,
                words=sort_words(sort),
                ordered=f"{line.quantity:g} {line.unit} ordered" if line else "not ordered",
                came=came,
                is_here=key == here,
            )
        )
    return shown


def _pieces(pieces: Sequence[StockPiece], counted: Tally | None, unit: LengthUnit) -> list[PieceShown]:
    surfaces = {line.board.mark: str(line.counted) for line in counted.lines} if counted else {}
    return [
        PieceShown(
            id=each.id,
            label=label(each),
            size=size_words(each, unit),
            counted=surfaces.get(label(each), ""),
            exact="" if each.is_sheet else f"{feet_of(each):.2f}",
            more=", ".join(_more(each, unit)),
            faults=[in_unit(said, unit) for said in faults_of(each)],
            is_sent_back=each.state is PieceState.SENT_BACK,
        )
        for each in pieces
    ]


def _more(piece: StockPiece, unit: LengthUnit) -> Iterable[str]:
    if piece.thickness_ticks:
        yield f"{show_in(from_ticks(piece.thickness_ticks), unit)} thick"
    if piece.moisture is not None:
        yield f"{piece.moisture:g} %"
    if piece.log_mark:
        yield f"log {piece.log_mark}"
    if piece.place:
        yield piece.place


def _running(pieces: Sequence[StockPiece], counted: Tally | None, sort: StockSort | None) -> Running | None:
    if sort is None or not pieces:
        return None
    staying = [each for each in pieces if each.state is not PieceState.SENT_BACK]
    if counted is None:
        return Running(pieces=len(staying), surface="", counted="", exact="")
    return Running(
        pieces=len(staying),
        surface=str(counted.counted),
        counted=str(counted.feet),
        exact=f"{sum(map(feet_of, staying)):.2f}",
    )
