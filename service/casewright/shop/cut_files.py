"""From a job and the rack to a cut file: every part of its units, and the pieces it may be cut from."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from casewright.measure.lengths import LengthUnit, from_ticks, write_with_unit
from casewright.measure.units import Ticks
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.pieces.takeoff.cut_parts import cut_data_for
from casewright.records.stock import PieceKind, StockPiece
from casewright.shop.stock import StockSort, label
from casewright.wood.movement import Cut

FACES = {"both": "both", "better": "front", "poor": "back"}
"""The faces of a board as the rack calls them, and as a cut file does."""
SAP = 1.0
"""How far sapwood is taken to reach in from an edge, for nobody notes how far (this program's own) [in]."""


def cut_data_of_job(
    estimate: JobEstimate, codes: Sequence[str], figures: Figures, unit: LengthUnit, name: str
) -> dict[str, Any]:
    """The parts of a job's units, as a cut file holds them, with the habits of the shop's saw; without stock.

    Args:
        estimate: the job worked out
        codes: the mark of each of its units, which goes before the marks of its parts where there are several
        figures: the shop's figures
        unit: in which unit the layout is written
        name: what it is for

    Returns:
        What the JSON of a cut file would hold.
    """
    found: dict[str, Any] = {}
    parts: list[dict[str, Any]] = []
    sets: list[dict[str, Any]] = []
    for code, each in zip(codes, estimate.units, strict=True):
        data = cut_data_for(each.unit, each.takeoff, figures)
        before = f"{code} " if len(codes) > 1 else ""
        parts += [{**part, "code": before + part["code"]} for part in data["parts"]]
        sets += [
            {
                **one,
                "name": before + one["name"],
                "rows": [[before + mark for mark in row] for row in one["rows"]],
            }
            for one in data["sets"]
        ]
        found = data
    return {**found, "unit": unit.value, "name": name, "parts": parts, "sets": sets}


def stock_data_of(pieces: Iterable[StockPiece]) -> dict[str, list[dict[str, Any]]]:
    """Pieces from the rack, as a cut file holds them.

    Args:
        pieces: boards, sheets and offcuts

    Returns:
        `boards` and `sheets`.
    """
    found: dict[str, list[dict[str, Any]]] = {"boards": [], "sheets": []}
    for piece in pieces:
        found["sheets" if piece.is_sheet else "boards"].append(dict(_piece(piece)))
    return found


def _piece(piece: StockPiece) -> Iterator[tuple[str, Any]]:
    yield "code", label(piece)
    yield "wood", _wood(piece)
    yield "length", _size(piece.length_ticks)
    yield "width", _size(piece.left_width_ticks or piece.width_ticks)
    yield "offcut", piece.kind is PieceKind.OFFCUT
    yield "place", piece.place
    if piece.cost_cents is not None:
        yield "cost", f"{piece.cost_cents / 100:.2f}"
    if piece.thickness_ticks is not None:
        yield "thickness", _size(piece.thickness_ticks)
    if piece.is_sheet:
        yield "count", 1
        return
    yield "class", piece.size
    if piece.left_width_ticks or piece.right_width_ticks:
        yield "width_middle", _size(piece.width_ticks)
        yield "width_end", _size(piece.right_width_ticks or piece.width_ticks)
    if piece.sap_edge in {"lower", "both"}:
        yield "sap_near", f"{SAP:g} in"
    if piece.sap_edge in {"upper", "both"}:
        yield "sap_far", f"{SAP:g} in"
    if piece.log_mark:
        yield "log", piece.log_mark
    if piece.defects:
        yield "defects", [_defect(each) for each in piece.defects]


def _wood(piece: StockPiece) -> str:
    """A wood as the parts call it: its cut goes with it unless it is flat-sawn; a sheet with its size."""
    if piece.is_sheet:
        return f"{piece.size} in {piece.material}" if piece.size else piece.material
    if piece.cut in {"", Cut.FLAT.value}:
        return piece.material
    return f"{piece.material}, {Cut(piece.cut).sawn}"


def sort_called(wood: str, size: str) -> StockSort:
    """What sort of stock a board or sheet is that a cut file names: the other way round.

    Args:
        wood: as the parts call it, such as `white oak, quartersawn` or `1/4 in birch plywood`
        size: the class of boards; empty for sheets
    """
    if not size:
        nominal, _, kind = wood.rpartition(" in ")
        return StockSort(material=kind, size=nominal, is_sheet=True)
    name, _, sawn = wood.partition(", ")
    cut = next((each.value for each in Cut if each.sawn == sawn), Cut.FLAT.value)
    return StockSort(material=name, size=size, cut=cut)


def material_called(wood: str) -> str:
    """What the rack calls the material that a part names: without its cut, a sheet without its size."""
    return wood.partition(",")[0].rpartition(" in ")[2]


def _defect(defect: Mapping[str, Any]) -> dict[str, Any]:
    return {
        "face": FACES[defect["face"]],
        "from_end": _size(defect["from_left"]),
        "from_edge": _size(defect["from_edge"]),
        "length": _size(defect["length"]),
        "width": _size(defect["width"]),
    }


def _size(ticks: Ticks) -> str:
    return write_with_unit(from_ticks(ticks))
