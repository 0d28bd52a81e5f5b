"""Once boards are cut: which of them, and what is left of each, measured, for the rack."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit, from_ticks, show_in, write_length
from casewright.measure.money import show_money
from casewright.measure.rounding import TOLERANCE
from casewright.pieces.asked.shop import Shop as Figures
from casewright.records.jobs import Job
from casewright.records.layouts import CutLayout, LayoutState, ticked
from casewright.records.stock import StockPiece
from casewright.shop.figures import figures
from casewright.shop.jobs import load_job
from casewright.shop.keeping import once
from casewright.shop.layouts import cuts_of, layout_with_all
from casewright.shop.putting_away import BoardCut, boards_cut, put_away, shrunk, worth_left
from casewright.shop.refusals import Refused
from casewright.shop.stock import PieceFacts, label
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Visit
from casewright.wood.arrival import is_worth_keeping

router = APIRouter()
AT_ONCE = 60
"""So many boards stand in one form; the next ones come once those are put away."""
LEAST = 0.5
"""Nothing that is narrower is a piece of stock [in]."""
SMALL = "It is smaller than what is usually kept. Take its tick out, or tick below to keep it all the same."


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftAsked:
    """A piece that is left, in the form.

    Attributes:
        name: what its fields begin with
        words: as the layout has it
        remarks: what is known of it: sapwood, defects
        worth: what it is worth; empty for who sees no money
    """

    name: str
    words: str
    remarks: str
    worth: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardAsked:
    """A board in the form.

    Attributes:
        field: the field that says whether it was cut
        name: its mark
        words: its size and place
        cuts: how many of its cuts are ticked off, in words; empty where none of the layout is
        left: what the layout leaves of it
    """

    field: str
    name: str
    words: str
    cuts: str
    left: Sequence[LeftAsked]


@dataclass(frozen=True, slots=True, kw_only=True)
class AwayShown:
    """A board that was put away, and what came of it."""

    name: str
    who: str
    offcuts: Sequence[tuple[str, str, str]]


@dataclass(frozen=True, slots=True, kw_only=True)
class PutAwayPage(Page):
    """Which boards are cut, and what of them goes on the rack."""

    template: ClassVar[str] = "cutting/put_away.html"
    layout: CutLayout
    job: Job
    boards: Sequence[BoardAsked]
    more: int
    away: Sequence[AwayShown]
    labels: str
    asks_small: bool
    form: Form
    names: Mapping[str, str]


@router.get("/cutting/{layout_id}/put-away")
def show_putting_away(visit: Everybody, layout_id: str) -> Response:
    """The boards of a layout, with what is left of each."""
    layout = _cut_layout(visit, layout_id)
    boards = boards_cut(visit.db, layout)
    return show(visit, _page(visit, layout, boards, _fresh(visit, layout, boards)))


@router.post("/cutting/{layout_id}/put-away")
def save_putting_away(visit: Everybody, layout_id: str) -> Response:
    """Takes boards that are cut off the rack and puts their offcuts on it; sent twice, it counts once."""
    layout = _cut_layout(visit, layout_id)
    job, own = load_job(visit.db, layout.job_id), _figures(visit, layout)

    def make() -> str:
        boards = boards_cut(visit.db, layout)
        read = Reader(visit.typed)
        chosen = list(_read(read, boards, visit.unit))
        if not read.faults and not chosen:
            read.fault("boards", "Tick the boards that are cut.")
        if read.faults:
            raise _Faulty(read)
        put_away(visit.db, layout, job, chosen, own, visit.who, visit.now)
        return f"/cutting/{layout.id}#put-away"

    try:
        return see(once(visit.db, visit.typed.once, visit.now, make), "saved")
    except _Faulty as faulty:
        page = _page(visit, layout, boards_cut(visit.db, layout), faulty.read.form)
        return show(visit, page, 422)


class _Faulty(Exception):
    """What was typed cannot be used; raised so that the form's mark is given back."""

    def __init__(self, read: Reader) -> None:
        super().__init__()
        self.read = read


def _cut_layout(visit: Visit, layout_id: str) -> CutLayout:
    layout = layout_with_all(visit.db, layout_id)
    if layout.state is not LayoutState.DONE:
        raise Refused("There is no layout yet by which anything could be cut.", 409)
    return layout


def _figures(visit: Visit, layout: CutLayout) -> Figures:
    return figures(visit.db, visit.shop, load_job(visit.db, layout.job_id))


def _open(boards: Sequence[BoardCut]) -> list[tuple[int, BoardCut]]:
    """The boards that can be put away, with their places in the layout; as many as one form holds."""
    return [(place, each) for place, each in enumerate(boards) if each.put_away is None][:AT_ONCE]


def _fresh(visit: Visit, layout: CutLayout, boards: Sequence[BoardCut]) -> Form:
    """What stands there at first: every board; where cuts are ticked off, those that have all ticked."""
    unit, done = visit.unit, ticked(visit.db, layout.id)
    to_cut = {board for board, step in cuts_of(layout.answer or {}) if (board, step) not in done}
    values = {}
    for place, board in _open(boards):
        if not board.gone and not (done and board.name in to_cut):
            values[f"cut.{place}"] = "1"
        for number, left in enumerate(board.left):
            start = f"left.{place}.{number}"
            values |= {
                f"{start}.kept": "1",
                f"{start}.length": write_length(left.length, unit),
                f"{start}.width": write_length(left.width, unit),
                f"{start}.place": left.place,
            }
    return form_of(**values)


def _read(
    read: Reader, boards: Sequence[BoardCut], unit: LengthUnit
) -> Iterator[tuple[BoardCut, tuple[PieceFacts, ...]]]:
    """The boards that are ticked, each with its offcuts as they were measured."""
    for place, board in enumerate(boards):
        if not read.ticked(f"cut.{place}"):
            continue
        if board.put_away is not None:
            read.fault("boards", f"{board.name} was put away meanwhile, by {board.put_away.who}.")
        elif board.gone:
            read.fault(f"cut.{place}", board.gone)
        yield board, tuple(_read_left(read, place, board, unit))


def _read_left(read: Reader, place: int, board: BoardCut, unit: LengthUnit) -> Iterator[PieceFacts]:
    area = 0.0
    for number, left in enumerate(board.left):
        start = f"left.{place}.{number}"
        if not read.ticked(f"{start}.kept"):
            continue
        length, width = (read.length(f"{start}.{name}", unit) for name in ("length", "width"))
        where = read.line(f"{start}.place", most=80)
        if length is None or width is None:
            continue
        for name, size, most in (("length", length, board.size[0]), ("width", width, board.size[1])):
            if not LEAST <= size <= most + TOLERANCE:
                least, greatest = show_in(LEAST, unit), show_in(most, unit)
                read.fault(
                    f"{start}.{name}", f"{board.name} leaves pieces from {least} to {greatest} that way."
                )
        area += length * width
        if area > board.size[0] * board.size[1] + TOLERANCE:
            read.fault(f"{start}.length", f"Together these are more than there was of {board.name}.")
        if not board.sort.is_sheet and not is_worth_keeping(width, length) and not read.ticked("small"):
            read.fault(f"{start}.width", SMALL)
        yield shrunk(left, length, width, where)


def _page(visit: Visit, layout: CutLayout, boards: Sequence[BoardCut], form: Form) -> PutAwayPage:
    done = Counter(board for board, _ in ticked(visit.db, layout.id))
    total = Counter(board for board, _ in cuts_of(layout.answer or {}))
    asked = _open(boards)
    own = _figures(visit, layout) if visit.is_owner else None
    return PutAwayPage(
        title=f"Put away what is left of layout {layout.number}",
        layout=layout,
        job=load_job(visit.db, layout.job_id),
        boards=[
            BoardAsked(
                field=f"cut.{place}",
                name=board.name,
                words=_size(board.size, visit.unit),
                cuts=f"{done[board.name]} of {total[board.name]} cuts ticked" if done else "",
                left=tuple(
                    LeftAsked(
                        name=f"left.{place}.{number}",
                        words=_size((left.length, left.width), visit.unit),
                        remarks=_remarks(left),
                        worth=_worth(visit, board, left, own),
                    )
                    for number, left in enumerate(board.left)
                ),
            )
            for place, board in asked
        ],
        more=sum(each.put_away is None for each in boards) - len(asked),
        away=away_shown(boards, visit.unit),
        labels=labels_of(boards),
        asks_small=SMALL in form.faults.values() or bool(form.values.get("small")),
        form=form,
        names=_names(asked),
    )


def away_shown(boards: Sequence[BoardCut], unit: LengthUnit) -> tuple[AwayShown, ...]:
    """The boards that were put away, with what came of each.

    Args:
        boards: the boards of a layout
        unit: the shop's unit
    """
    return tuple(
        AwayShown(
            name=board.name,
            who=board.put_away.who,
            offcuts=tuple((each.id, label(each), _offcut(each, unit)) for each in board.offcuts),
        )
        for board in boards
        if board.put_away is not None
    )


def labels_of(boards: Sequence[BoardCut]) -> str:
    """The offcuts of a layout, as the address of their labels names them.

    Args:
        boards: the boards of a layout
    """
    return ",".join(each.id for board in boards for each in board.offcuts)


def _offcut(piece: StockPiece, unit: LengthUnit) -> str:
    size = _size((from_ticks(piece.length_ticks), from_ticks(piece.width_ticks)), unit)
    return f"{size}, {piece.place}" if piece.place else size


def _size(size: tuple[float, float], unit: LengthUnit) -> str:
    return " × ".join(show_in(each, unit) for each in size)


def _remarks(left: PieceFacts) -> str:
    words = [
        "with sapwood" if left.sap_edge else "",
        f"{len(left.defects)} defects noted" if len(left.defects) > 1 else "",
        "1 defect noted" if len(left.defects) == 1 else "",
    ]
    return ", ".join(filter(None, words))


def _worth(visit: Visit, board: BoardCut, left: PieceFacts, own: Figures | None) -> str:
    cents = worth_left(board, left, own) if own else None
    return "" if cents is None else show_money(cents, visit.shop.symbol)


def _names(asked: Sequence[tuple[int, BoardCut]]) -> dict[str, str]:
    """What the fields are called in the list of problems."""
    found = {"boards": "Boards", "small": "Small pieces"}
    for place, board in asked:
        found[f"cut.{place}"] = board.name
        for number in range(len(board.left)):
            for name in ("length", "width", "place"):
                found[f"left.{place}.{number}.{name}"] = f"Left of {board.name}, piece {number + 1}, {name}"
    return found
