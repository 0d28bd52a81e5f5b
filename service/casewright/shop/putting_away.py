"""Once boards are cut: what a layout took from the rack is used up, and what is left of it goes there."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from casewright.measure.lengths import from_ticks
from casewright.measure.rounding import TOLERANCE
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pricing.prices import NoPrice, PriceKind
from casewright.pricing.usable import cost_of_each
from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.layouts import CutBoard, CutLayout, cut_boards, pieces_numbered
from casewright.records.sessions import Fenced
from casewright.records.stock import PieceKind, PieceState, StockPiece
from casewright.records.stock_lists import pieces_by_id
from casewright.shop.cut_files import SAP, sort_called
from casewright.shop.keeping import note_history
from casewright.shop.refusals import Refused
from casewright.shop.stock import (
    LETTERS,
    PieceFacts,
    StockSort,
    label,
    label_offcut,
    move_piece,
    sort_of,
    usable,
    worth_of,
)
from casewright.wood.arrival import exact_feet
from casewright.wood.movement import Cut
from casewright.wood.tally import billed_thickness
from casewright.wood.thickness import class_named

LABEL = re.compile(r"([BSO])([0-9]{1,9})")
KINDS = {letter: kind for kind, letter in LETTERS.items()}


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardCut:
    """A board or sheet that a layout cuts up.

    Attributes:
        name: its name in the layout
        size: its length and width [in]
        sort: what sort of stock it is
        piece: the board on the rack; None for one that was typed, and for new sheets
        left: what the layout leaves of it that is worth keeping
        gone: why it cannot be put away, in a sentence; empty where it can
        put_away: when and by whom that was done; None where it still can be
        offcuts: what came of it
    """

    name: str
    size: tuple[float, float]
    sort: StockSort
    piece: StockPiece | None
    left: tuple[PieceFacts, ...]
    gone: str
    put_away: CutBoard | None
    offcuts: tuple[StockPiece, ...]


def boards_cut(db: Fenced, layout: CutLayout) -> tuple[BoardCut, ...]:
    """Every board and sheet that a layout cuts up, in its order; three queries.

    Args:
        db: the session
        layout: the layout, with what came of it
    """
    boards = [(lot, board) for lot in (layout.answer or {}).get("lots", ()) for board in lot["layouts"]]
    pieces = _pieces(db, [board["stock"] for _, board in boards])
    done = {each.board: each for each in cut_boards(db, layout.id)}
    made = {
        each.id: each for each in pieces_by_id(db, [one for each in done.values() for one in each.offcuts])
    }
    found = []
    for lot, board in boards:
        piece, name = pieces.get(board["stock"]), board["name"]
        away = done.get(name)
        found.append(
            BoardCut(
                name=name,
                size=(board["length_in"], board["width_in"]),
                sort=sort_of(piece) if piece else sort_called(lot["wood"], lot["class"] or ""),
                piece=piece,
                left=tuple(_left(each, piece, board["place"]) for each in board["left"]),
                gone="" if away else _why_gone(board["stock"], piece, layout),
                put_away=away,
                offcuts=tuple(made[each] for each in away.offcuts if each in made) if away else (),
            )
        )
    return tuple(found)


def _pieces(db: Fenced, codes: Iterable[str]) -> dict[str, StockPiece]:
    """The pieces of the rack among the stock of a layout, by their labels."""
    numbers: dict[PieceKind, set[int]] = {}
    for code in codes:
        if found := LABEL.fullmatch(code):
            numbers.setdefault(KINDS[found[1]], set()).add(int(found[2]))
    return {label(each): each for each in pieces_numbered(db, numbers)}


def _why_gone(code: str, piece: StockPiece | None, layout: CutLayout) -> str:
    if piece is None:
        return f"{code} is not among the shop's stock any more." if LABEL.fullmatch(code) else ""
    if piece.state is PieceState.KEPT and piece.for_job != layout.job_id:
        return f"{code} is kept for another job by now. Release it first, or take its tick out."
    if piece.state not in {PieceState.STOCK, PieceState.KEPT}:
        return f"{code} is {piece.state.value} by now and cannot be cut up again. Take its tick out."
    return ""


def _left(left: Mapping[str, Any], piece: StockPiece | None, place: str) -> PieceFacts:
    """What is left, with what its board is known to have: log, moisture, and its part of defects and sap."""
    width, length = left["width_in"], left["length_in"]
    if piece is None:
        return PieceFacts(width=width, length=length, place=place)
    return PieceFacts(
        width=width,
        length=length,
        thickness=None if piece.thickness_ticks is None else from_ticks(piece.thickness_ticks),
        moisture=piece.moisture,
        sap_edge=_sap_edge(left, piece),
        defects=tuple(_defects(left, piece)),
        log_mark=piece.log_mark,
        place=piece.place,
    )


def _sap_edge(left: Mapping[str, Any], piece: StockPiece) -> str:
    lower = piece.sap_edge in {"lower", "both"} and left["from_edge_in"] < SAP - TOLERANCE
    inner = usable(piece) - SAP + TOLERANCE
    upper = piece.sap_edge in {"upper", "both"} and left["from_edge_in"] + left["width_in"] > inner
    return {(True, True): "both", (True, False): "lower", (False, True): "upper"}.get((lower, upper), "")


def _defects(left: Mapping[str, Any], piece: StockPiece) -> Iterator[dict[str, Any]]:
    """The defects of a board as far as they lie in what is left, measured from its own end and edge."""
    for defect in piece.defects:
        start = max(0.0, from_ticks(defect["from_left"]) - left["from_end_in"])
        low = max(0.0, from_ticks(defect["from_edge"]) - left["from_edge_in"])
        end = from_ticks(defect["from_left"] + defect["length"]) - left["from_end_in"]
        high = from_ticks(defect["from_edge"] + defect["width"]) - left["from_edge_in"]
        length, width = min(end, left["length_in"]) - start, min(high, left["width_in"]) - low
        if length > TOLERANCE and width > TOLERANCE:
            yield {
                "face": defect["face"],
                "from_left": start,
                "from_edge": low,
                "length": length,
                "width": width,
            }


def shrunk(facts: PieceFacts, length: float, width: float, place: str) -> PieceFacts:
    """An offcut as it was measured: what the layout said of it, within its real size.

    Args:
        facts: what the layout said
        length: along the grain [in]
        width: across the grain [in]
        place: where it lies from now on
    """
    kept = []
    for defect in facts.defects:
        long = min(defect["length"], length - defect["from_left"])
        wide = min(defect["width"], width - defect["from_edge"])
        if long > TOLERANCE and wide > TOLERANCE:
            kept.append({**defect, "length": long, "width": wide})
    return PieceFacts(
        width=width,
        length=length,
        thickness=facts.thickness,
        moisture=facts.moisture,
        sap_edge=facts.sap_edge,
        defects=tuple(kept),
        log_mark=facts.log_mark,
        place=place,
    )


def worth_left(board: BoardCut, facts: PieceFacts, figures: Figures) -> int | None:
    """What an offcut is worth: its share of what its board cost, or what the shop's price book says.

    Args:
        board: what it was cut from
        facts: how large it is
        figures: the shop's figures, for a board that has no cost

    Returns:
        The worth; None where neither is known [cent]
    """
    if board.piece is not None and board.piece.cost_cents is not None:
        return worth_of(board.piece, facts)
    sort = board.sort
    try:
        if sort.is_sheet:
            price = figures.prices.find(PriceKind.SHEET, sort.material, sort.size).price
            part, whole = facts.length * facts.width, board.size[0] * board.size[1]
            return cost_of_each(int(price), (part, max(whole - part, 0.0)))[0]
        sawn = "" if sort.cut in {"", Cut.FLAT.value} else f" {Cut(sort.cut).sawn}"
        price = figures.prices.lumber(sort.material, f"{sort.size}{sawn}").price
    except NoPrice:
        return None
    rough = billed_thickness(class_named(sort.size).rough)
    return round(price * exact_feet(rough, facts.width, None, None, facts.length))


def put_away(
    db: Fenced,
    layout: CutLayout,
    job: Job,
    boards: Sequence[tuple[BoardCut, Sequence[PieceFacts]]],
    figures: Figures,
    who: str,
    now: datetime,
) -> tuple[StockPiece, ...]:
    """Notes that boards of a layout are cut up, and puts what is left of them on the rack.

    Args:
        db: the session
        layout: the layout
        job: its job
        boards: each board that was cut, with its offcuts as they were measured
        figures: the shop's figures, for what offcuts are worth
        who: who does it
        now: the moment

    Returns:
        The offcuts, with their labels.

    Raises:
        Refused: one of them has been used meanwhile, was put away before, or is smaller than its offcuts
    """
    made: list[StockPiece] = []
    for board, offcuts in boards:
        if board.put_away is not None:
            raise Refused(f"{board.name} was put away before, by {board.put_away.who}.", 409)
        if board.gone:
            raise Refused(board.gone, 409)
        if board.piece is not None:
            move_piece(db, board.piece, "use", job, who, now)
        some = [
            label_offcut(
                db,
                board.sort,
                facts,
                f"{layout.id}-{board.name}-{number}",
                who,
                now,
                origin=board.piece,
                worth_cents=worth_left(board, facts, figures),
                is_demo=layout.demo,
            )
            for number, facts in enumerate(offcuts, 1)
        ]
        db.add(
            CutBoard(
                id=new_id(),
                layout_id=layout.id,
                job_id=layout.job_id,
                board=board.name,
                offcuts=[each.id for each in some],
                at=now,
                who=who,
            )
        )
        made += some
    names = ", ".join(board.name for board, _ in boards)
    kept = f"; {', '.join(map(label, made))} on the rack" if made else ""
    note_history(db, who, now, f"Cut up {names} by layout {layout.number}{kept}.", job_id=layout.job_id)
    return tuple(made)
