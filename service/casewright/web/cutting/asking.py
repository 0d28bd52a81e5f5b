"""Asking for a layout: the job's parts are known; which boards and sheets, and how long to look."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from fastapi import APIRouter
from starlette.background import BackgroundTask
from starlette.responses import Response

from casewright.cutting.asked.cut_file import cut_file_of
from casewright.measure.json_files import CannotRead
from casewright.measure.lengths import LengthUnit, from_ticks, write_length, write_with_unit
from casewright.measure.saying import refusal
from casewright.pieces.built.refusals import REFUSALS
from casewright.records.jobs import Job
from casewright.records.layouts import LayoutRow, layouts_of, pieces_to_cut
from casewright.records.stock import StockPiece
from casewright.shop.cut_files import cut_data_of_job, material_called, stock_data_of
from casewright.shop.figures import figures_from
from casewright.shop.jobs import load_job
from casewright.shop.keeping import once
from casewright.shop.layouts import MOST_SECONDS, ask_layout
from casewright.shop.papers import JobAtHand, job_at_hand
from casewright.shop.refusals import Refused
from casewright.shop.stock import label
from casewright.web.cutting.crews import crew_of
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit

router = APIRouter()
NO_BREAK = "\N{NO-BREAK SPACE}"
ROWS = 4
"""Rows for boards that are not on the rack."""
USUAL_SECONDS = 2
STRATEGIES = (
    ("best", "Whichever is better", "Ripped first, crosscut first and board by board are all tried."),
    ("rip first", "Rip first", "Every board is ripped to width from end to end, then crosscut."),
    ("crosscut first", "Crosscut first", "Every board is crosscut to length, then ripped."),
)
OFFCUTS = (("first", "Offcuts first"), ("by cost", "By what they are worth"), ("last", "Offcuts last"))
SHEET = (96.0, 48.0)
"""The usual sheet of plywood (common practice) [in]."""
MOST_SPARE = 300
"""So many pieces of the rack are looked at; the rest of a large rack says nothing of ways out."""
NAMES = {
    "take": "From the rack",
    "seconds": "Seconds",
    "first_cut": "First cuts",
    "offcuts": "Offcuts",
    **{
        f"more.{row}.{field}": f"Board {row + 1}, {field}"
        for row in range(ROWS)
        for field in ("wood", "length", "width", "count")
    },
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceShown:
    """A piece on the rack that parts may be cut from."""

    id: str
    label: str
    words: str
    place: str
    taken: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodShown:
    """One wood and class, or kind of sheet: what is wanted of it, and what is there.

    Attributes:
        wood: its name
        size: its class; empty for sheets
        parts: how many parts, in words
        pieces: what is on the rack of it
        sheet: the field by which new sheets are taken; empty for boards
        sheet_size: how large those are, in words
    """

    wood: str
    size: str
    parts: int
    pieces: tuple[PieceShown, ...]
    sheet: str
    sheet_size: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AskPage(Page):
    """What is laid out on what."""

    template: ClassVar[str] = "cutting/ask.html"
    job: Job
    woods: Sequence[WoodShown]
    sorts: Sequence[tuple[str, str]]
    layouts: Sequence[LayoutRow]
    form: Form
    names: dict[str, str]
    rows: int
    strategies: Sequence[tuple[str, str, str]]
    offcuts: Sequence[tuple[str, str]]
    trouble: str


@router.get("/jobs/{job_id}/cutting")
def show_asking(visit: Office, job_id: str) -> Response:
    """The layouts of a job, and a form for another one."""
    job = load_job(visit.db, job_id)
    try:
        at_hand = job_at_hand(visit.db, visit.shop, job, visit.today)
    except REFUSALS as error:
        return show(visit, _page(visit, job, {}, _fresh({}), refusal(error, visit.unit)))
    data = _parts(visit, job, at_hand)
    return show(visit, _page(visit, job, data, _fresh(data)))


@router.post("/jobs/{job_id}/cutting")
def ask(visit: Office, job_id: str) -> Response:
    """Puts a layout in the queue."""
    job = load_job(visit.db, job_id)
    try:
        data = _parts(visit, job, job_at_hand(visit.db, visit.shop, job, visit.today))
    except REFUSALS as error:
        raise Refused(refusal(error, visit.unit), 422) from None
    read = Reader(visit.typed)
    seconds = read.number("seconds", least=1, most=MOST_SECONDS, example=str(USUAL_SECONDS))
    asked = {
        **data,
        "first_cut": read.choice("first_cut", [value for value, _, _ in STRATEGIES]),
        "offcuts": read.choice("offcuts", [value for value, _ in OFFCUTS]),
        **_stock(visit, job, read, data),
    }
    if not read.faults and all(each.get("spare") for each in (*asked["boards"], *asked["sheets"])):
        read.fault("take", "Choose what to cut from: pieces of the rack, or boards typed below.")
    if not read.faults:
        try:
            cut_file_of(asked)
        except CannotRead as error:
            read.fault("take", str(error))
    if read.faults:
        return show(visit, _page(visit, job, data, read.form), 422)

    def make() -> str:
        layout = ask_layout(
            visit.db, job.id, asked, seconds=float(seconds), seed=0, who=visit.who, now=visit.now
        )
        return f"/cutting/{layout.id}"

    address = once(visit.db, visit.typed.once, visit.now, make)
    answer = see(address)
    # Only once this session has ended is the layout there to be taken.
    answer.background = BackgroundTask(crew_of(visit.request).wake)
    return answer


def _fresh(data: dict[str, Any]) -> Form:
    sheets = {f"sheet.{place}": "1" for place in range(len(_sheets(data)))}
    return form_of(seconds=str(USUAL_SECONDS), first_cut="best", offcuts="first", **sheets)


def _parts(visit: Visit, job: Job, at_hand: JobAtHand) -> dict[str, Any]:
    return cut_data_of_job(
        at_hand.estimate,
        [loaded.unit.code for loaded in at_hand.units],
        figures_from(at_hand.figures_text),
        visit.unit,
        f"Job {job.number}",
    )


def _stock(visit: Visit, job: Job, read: Reader, data: dict[str, Any]) -> dict[str, list[dict[str, Any]]]:
    """The pieces of the rack that are ticked, boards that are typed, and new sheets.

    What is not ticked is only named where parts find no place.
    """
    taken = set(read.typed.all("take"))
    pieces = _pieces(visit, job, data)
    held = stock_data_of(each for each in pieces if each.id in taken)
    others = [each for each in pieces if each.id not in taken][: max(0, MOST_SPARE - len(taken))]
    for row in range(ROWS):
        start = f"more.{row}"
        if not any(read.typed.get(f"{start}.{name}").strip() for name in ("length", "width")):
            continue
        sort = read.choice(f"{start}.wood", [value for value, _ in _sorts(data)])
        long, wide = (read.length(f"{start}.{name}", visit.unit) for name in ("length", "width"))
        count = read.whole(f"{start}.count", least=1, most=500, default=1)
        if long is None or wide is None:
            continue
        wood, _, size = sort.rpartition("|")
        held["boards"].append(
            {
                "code": f"N{row + 1}",
                "wood": wood,
                "class": size,
                "length": write_with_unit(long),
                "width": write_with_unit(wide),
                "count": count,
            }
        )
    for place, wood in enumerate(_sheets(data)):
        if read.ticked(f"sheet.{place}"):
            length, width = map(write_with_unit, SHEET)
            held["sheets"].append({"code": f"P{place + 1}", "wood": wood, "length": length, "width": width})
    for kind, some in stock_data_of(others).items():
        held[kind] += [{**each, "spare": True} for each in some]
    return held


def _wanted(data: dict[str, Any]) -> dict[tuple[str, str], int]:
    """How many parts there are of each wood and class, or kind of sheet."""
    found: dict[tuple[str, str], int] = {}
    for part in data.get("parts", ()):
        key = part["wood"], part.get("class") or ""
        found[key] = found.get(key, 0) + part.get("count", 1)
    return found


def _sorts(data: dict[str, Any]) -> list[tuple[str, str]]:
    """The woods and classes of boards that are wanted, as the choices of a field."""
    return [(f"{wood}|{size}", f"{wood} {size}") for wood, size in _wanted(data) if size]


def _sheets(data: dict[str, Any]) -> list[str]:
    """The kinds of sheets that are wanted."""
    return [wood for wood, size in _wanted(data) if not size]


def _pieces(visit: Visit, job: Job, data: dict[str, Any]) -> list[StockPiece]:
    """What is on the rack of the woods that are wanted: free, or kept for this job."""
    woods = [wood for wood, _ in _wanted(data)]
    return list(pieces_to_cut(visit.db, job.id, {*woods, *map(material_called, woods)}))


def _page(visit: Visit, job: Job, data: dict[str, Any], form: Form, trouble: str = "") -> AskPage:
    pieces = [(each, stock_data_of([each])) for each in _pieces(visit, job, data)] if data else []
    taken = set(visit.typed.all("take")) if visit.typed.pairs else {each.id for each, _ in pieces}
    woods = []
    for (wood, size), parts in _wanted(data).items():
        mine = [
            PieceShown(
                id=each.id,
                label=label(each),
                words=_words(each, visit.unit),
                place=each.place,
                taken=each.id in taken,
            )
            for each, held in pieces
            for one in (*held["boards"], *held["sheets"])
            if one["wood"] == wood and one.get("class", "") == size
        ]
        woods.append(
            WoodShown(
                wood=wood,
                size=size,
                parts=parts,
                pieces=tuple(mine),
                sheet="" if size else f"sheet.{_sheets(data).index(wood)}",
                sheet_size=" × ".join(write_length(each, visit.unit) for each in SHEET),
            )
        )
    return AskPage(
        title=f"Cutting for job {job.number}",
        job=job,
        woods=woods,
        sorts=_sorts(data),
        layouts=layouts_of(visit.db, job.id),
        form=form,
        names=NAMES,
        rows=ROWS,
        strategies=STRATEGIES,
        offcuts=OFFCUTS,
        trouble=trouble,
    )


def _words(piece: StockPiece, unit: LengthUnit) -> str:
    length, width = from_ticks(piece.length_ticks), from_ticks(piece.width_ticks)
    kept = ", kept for this job" if piece.for_job else ""
    size = " × ".join((write_length(length, unit), write_length(width, unit)))
    return f"{size.replace(' ', NO_BREAK)}{kept}"
