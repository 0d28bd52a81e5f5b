"""The rack: what is known of each piece, keeping it for a job, cutting it up, labelling what is left."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import select

from casewright.measure.lengths import from_ticks, to_ticks
from casewright.pricing.usable import cost_of_each
from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.sessions import Fenced
from casewright.records.stock import PieceKind, PieceState, StockEvent, StockPiece
from casewright.records.stock_lists import PieceRow, piece_with_job
from casewright.shop.keeping import next_number
from casewright.shop.refusals import NotFound, Refused, Stale
from casewright.wood.arrival import exact_feet, usable_width
from casewright.wood.tally import billed_thickness
from casewright.wood.thickness import class_named

LETTERS = {PieceKind.BOARD: "B", PieceKind.SHEET: "S", PieceKind.OFFCUT: "O"}
MOVES = {
    "keep": (PieceState.STOCK, PieceState.KEPT),
    "release": (PieceState.KEPT, PieceState.STOCK),
    "use": (None, PieceState.USED),
    "return": (PieceState.USED, PieceState.STOCK),
    "send back": (None, PieceState.SENT_BACK),
}
"""What may be done with a piece: the state that it must be in, none for any on the rack, and the next one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceFacts:
    """What is measured and noted of a piece.

    Attributes:
        width: in the middle [in]
        length: along the grain [in]
        left_width: at the left end; None where it is as in the middle [in]
        right_width: at the right end; None likewise [in]
        thickness: as measured; None where nobody did [in]
        moisture: percent; None where nobody measured
        sap_edge: which edges are sapwood
        defects: what no part may touch: face, and from left, from edge, length and width [in]
        log_mark: which log it came from
        place: where it lies
        note: anything else
    """

    width: float
    length: float
    left_width: float | None = None
    right_width: float | None = None
    thickness: float | None = None
    moisture: float | None = None
    sap_edge: str = ""
    defects: tuple[Mapping[str, Any], ...] = ()
    log_mark: str = ""
    place: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StockSort:
    """What sort of stock a piece is: its wood or what a sheet is of, cut, class and grade."""

    material: str
    size: str
    cut: str = ""
    grade: str = ""
    is_sheet: bool = False


def label(piece: StockPiece) -> str:
    """The code on the label of a piece, such as B12."""
    return f"{LETTERS[piece.kind]}{piece.number}"


def load_piece(db: Fenced, piece_id: str) -> PieceRow:
    """A piece of stock with the number of its job; one query.

    Raises:
        NotFound: the shop has no such piece
    """
    found = piece_with_job(db, piece_id)
    if found is None:
        raise NotFound("piece of stock")
    return found


def inches(ticks: int | None) -> float | None:
    """A stored length in inches; None for none."""
    return None if ticks is None else from_ticks(ticks)


def feet_of(piece: StockPiece) -> float:
    """The exact board feet of a piece of solid wood; a sheet has none."""
    if piece.is_sheet:
        return 0.0
    return exact_feet(
        billed_thickness(class_named(piece.size).rough),
        from_ticks(piece.width_ticks),
        inches(piece.left_width_ticks),
        inches(piece.right_width_ticks),
        from_ticks(piece.length_ticks),
    )


def usable(piece: StockPiece) -> float:
    """The width of the straight strip in a piece [in]."""
    return usable_width(
        from_ticks(piece.width_ticks), inches(piece.left_width_ticks), inches(piece.right_width_ticks)
    )


def make_piece(
    db: Fenced,
    kind: PieceKind,
    sort: StockSort,
    facts: PieceFacts,
    tap: str,
    who: str,
    now: datetime,
    **held: Any,
) -> StockPiece:
    """Puts a piece on the rack, under the next label of its kind. A tap that was taken before makes nothing.

    Args:
        db: the session
        kind: board, sheet or offcut
        sort: what sort of stock it is
        facts: what was measured
        tap: the mark of the tap
        who: who tallied it
        now: the moment
        held: other columns: its delivery, the board that it comes from, its cost

    Returns:
        The piece, or the one that the tap made before.
    """
    if tap and (before := db.scalars(select(StockPiece).where(StockPiece.tap == tap[:64])).first()):
        return before
    made_id = new_id()
    made = StockPiece(
        id=made_id,
        kind=kind,
        number=next_number(db, f"stock {kind.value}"),
        material=sort.material,
        is_sheet=sort.is_sheet,
        cut=sort.cut,
        size=sort.size,
        grade=sort.grade,
        state=PieceState.STOCK,
        tap=tap[:64] or made_id,
        created_at=now,
        who=who,
        **columns_of(facts),
        **held,
    )
    db.add(made)
    db.flush()
    note_event(db, made, "tallied" if kind is not PieceKind.OFFCUT else "labelled", {}, who, now)
    return made


def columns_of(facts: PieceFacts) -> dict[str, Any]:
    """The facts by the names of their columns."""
    return {
        "width_ticks": to_ticks(facts.width),
        "length_ticks": to_ticks(facts.length),
        "left_width_ticks": _ticks(facts.left_width),
        "right_width_ticks": _ticks(facts.right_width),
        "thickness_ticks": _ticks(facts.thickness),
        "moisture": facts.moisture,
        "sap_edge": facts.sap_edge,
        "defects": [
            {name: to_ticks(value) if isinstance(value, float) else value for name, value in each.items()}
            for each in facts.defects
        ],
        "log_mark": facts.log_mark,
        "place": facts.place,
        "note": facts.note,
    }


def _ticks(size: float | None) -> int | None:
    return None if size is None else to_ticks(size)


def measure_piece(
    db: Fenced, piece: StockPiece, facts: PieceFacts, version: int, who: str, now: datetime
) -> None:
    """Writes down what was measured and noted of a piece.

    Raises:
        Stale: somebody else wrote since the version that the form shows
        Refused: the piece is not on the rack any more
    """
    after = columns_of(facts)
    changed = {name: value for name, value in after.items() if value != getattr(piece, name)}
    if not changed:
        return
    if piece.version != version:
        raise Stale({})
    _refuse_if_gone(piece, "measure it")
    before = {name: getattr(piece, name) for name in changed}
    for name, value in changed.items():
        setattr(piece, name, value)
    note_event(db, piece, "measured", {"before": before, "after": changed}, who, now)


def move_piece(
    db: Fenced, piece: StockPiece, act: str, job: Job | None, who: str, now: datetime, why: str = ""
) -> None:
    """Keeps a piece for a job, releases it, cuts it up, takes it back, or sends it back to the yard.

    Args:
        db: the session
        piece: the piece
        act: one of `MOVES`
        job: the job that it is kept for or goes into
        who: who does it
        now: the moment
        why: what is wrong with a piece that goes back

    Raises:
        Refused: it is not where it would have to be for that, or no job is named
    """
    needs, to = MOVES[act]
    if piece.state is to and (job is None or piece.for_job == job.id):
        return
    if needs is None:
        _refuse_if_gone(piece, act)
    elif piece.state is not needs:
        raise Refused(
            f"{label(piece)} is {piece.state.value}; to {act} it, it would have to be {needs.value}."
        )
    if act in {"keep", "use"} and job is None:
        raise Refused(f"Say for which job to {act} {label(piece)}.", 422)
    piece.state = to
    piece.for_job = job.id if job and act in {"keep", "use"} else None
    note_event(db, piece, act, {"job": job.number if job else None, "why": why}, who, now)


def keep_for(db: Fenced, pieces: Sequence[StockPiece], job: Job, who: str, now: datetime) -> None:
    """Keeps pieces for a job that is to be made from them."""
    for piece in pieces:
        move_piece(db, piece, "keep", job, who, now)


def _refuse_if_gone(piece: StockPiece, act: str) -> None:
    if piece.state not in {PieceState.STOCK, PieceState.KEPT}:
        raise Refused(f"{label(piece)} is {piece.state.value}; it is not on the rack to {act}.")


def label_offcut(
    db: Fenced,
    sort: StockSort,
    facts: PieceFacts,
    tap: str,
    who: str,
    now: datetime,
    *,
    origin: StockPiece | None = None,
    worth_cents: int | None = None,
    is_demo: bool = False,
) -> StockPiece:
    """Measures, labels and values what is left of a board or a sheet.

    Args:
        db: the session
        sort: what sort of stock it is; of a known board, as that is
        facts: what was measured
        tap: the mark of the tap
        who: who labels it
        now: the moment
        origin: the board or sheet that it was cut from, if that is known
        worth_cents: what it is worth; where it is left out, what its feet of the board cost [cent]
        is_demo: is it left of what only the demo had? That of a known board is the demo's where the board is

    Raises:
        Refused: it is larger than what it was cut from
    """
    held: dict[str, Any] = {"cost_cents": worth_cents, "demo": is_demo}
    if origin is not None:
        if facts.length > from_ticks(origin.length_ticks) or facts.width > max(
            from_ticks(each)
            for each in (origin.width_ticks, origin.left_width_ticks, origin.right_width_ticks)
            if each
        ):
            raise Refused(f"An offcut cannot be larger than {label(origin)}, which it was cut from.", 422)
        held |= {"from_id": origin.id, "delivery_id": origin.delivery_id, "demo": origin.demo}
        if worth_cents is None:
            held["cost_cents"] = worth_of(origin, facts)
    return make_piece(db, PieceKind.OFFCUT, sort, facts, tap, who, now, **held)


def worth_of(origin: StockPiece, facts: PieceFacts) -> int | None:
    """What an offcut is worth: its share, by area, of what its board or sheet cost [cent]."""
    if origin.cost_cents is None:
        return None
    whole = from_ticks(origin.width_ticks) * from_ticks(origin.length_ticks)
    part = min(facts.width * facts.length, whole)
    return cost_of_each(origin.cost_cents, (part, whole - part))[0]


def sort_of(piece: StockPiece) -> StockSort:
    """What sort of stock a piece is."""
    return StockSort(
        material=piece.material,
        size=piece.size,
        cut=piece.cut,
        grade=piece.grade,
        is_sheet=piece.is_sheet,
    )


def note_event(
    db: Fenced, piece: StockPiece, kind: str, data: Mapping[str, Any], who: str, now: datetime
) -> None:
    """Writes down what happened to a piece."""
    db.add(StockEvent(id=new_id(), piece_id=piece.id, kind=kind, data=dict(data), at=now, who=who))
