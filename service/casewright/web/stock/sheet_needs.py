"""The sheets of some jobs counted together: laid out as one, what is on the rack first."""

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from casewright.measure.lengths import from_ticks, show_in
from casewright.measure.units import SquareInches
from casewright.papers.order import SheetLine
from casewright.pieces.takeoff.sheets_asked import (
    TRIM,
    SheetOnHand,
    SheetPart,
    SheetsAsked,
    SheetsLaid,
    sheet_parts,
)
from casewright.records.jobs import Job
from casewright.records.stock import PieceKind, StockPiece
from casewright.records.stock_lists import free_on_hand
from casewright.shop.figures import figures_from
from casewright.shop.stock import label, usable
from casewright.solving.beside import NoAnswer
from casewright.solving.sheets import laid_sheets
from casewright.web.frame.visits import Visit
from casewright.web.stock.needs import JobsAtHand, SheetCount, SheetOffer


def with_sheets(visit: Visit, at_hand: JobsAtHand, take: Collection[str] | None) -> JobsAtHand:
    """The same jobs with their sheets counted together; as before where they take none, or too many parts.

    Args:
        visit: the request
        at_hand: the jobs, each job's sheets still counted by itself
        take: the pieces of the rack that are used; None for all that serve
    """
    lines = at_hand.order.sheets
    if not lines:
        return at_hand
    names = [f"{line.nominal} in {line.kind}" for line in lines]
    parts = _parts(at_hand)
    rack = _rack(visit, lines, [job.id for job in at_hand.jobs])
    kerf = figures_from(at_hand.at_hand[0].figures_text).spec.kerf

    def asked(use: Collection[str] | None) -> tuple[SheetsAsked, ...]:
        return tuple(
            SheetsAsked(
                parts=tuple(parts[name]),
                on_hand=tuple(_on_hand(each) for each in rack[name] if use is None or each.id in use),
                width=line.width_in,
                length=line.length_in,
                kerf=kerf,
            )
            for name, line in zip(names, lines, strict=True)
        )

    try:
        offered = laid_sheets(asked(None))
        used = {piece for laid in offered for piece, _ in laid.taken}
        found = offered if take is None or used <= set(take) else laid_sheets(asked(used & set(take)))
    except NoAnswer:
        return at_hand
    counts, shown, every = {}, [], sheet_areas(at_hand)
    for name, line, laid, mine in zip(names, lines, found, offered, strict=True):
        key = key_of_line(line)
        areas = every[key]
        counts[key] = SheetCount(
            sheets=laid.sheets,
            areas=areas,
            offers=tuple(_offer(piece, jobs, key, rack[name], at_hand.jobs) for piece, jobs in mine.taken),
            words=_words(laid, kerf, len(areas), visit),
        )
        shown.append(line.model_copy(update={"sheets": laid.sheets, "note": counts[key].words}))
    return replace(
        at_hand,
        order=at_hand.order.model_copy(update={"sheets": tuple(shown)}),
        shares={**at_hand.shares, **{key: _shares(each) for key, each in counts.items()}},
        sheets=counts,
    )


def sheet_areas(at_hand: JobsAtHand) -> Mapping[str, Mapping[str, SquareInches]]:
    """The area of each job's parts of each kind of sheet, by the line's key and the job's id [sq in]."""
    parts, found = _parts(at_hand), dict[str, Mapping[str, SquareInches]]()
    for line in at_hand.order.sheets:
        areas: dict[str, float] = {}
        for part in parts[f"{line.nominal} in {line.kind}"]:
            areas[part.job] = areas.get(part.job, 0.0) + part.area
        found[key_of_line(line)] = areas
    return found


def key_of_line(line: SheetLine) -> str:
    """By what a line of sheets is known among those of one order."""
    return f"sheet/{line.kind}//{line.nominal}/"


def _parts(at_hand: JobsAtHand) -> Mapping[str, Sequence[SheetPart]]:
    found: dict[str, list[SheetPart]] = {}
    for job, each in zip(at_hand.jobs, at_hand.at_hand, strict=True):
        for held in each.estimate.units:
            for name, part in sheet_parts(held.unit, held.takeoff.count, job.id):
                found.setdefault(name, []).append(part)
    return found


def _rack(
    visit: Visit, lines: Sequence[SheetLine], jobs: Sequence[str]
) -> Mapping[str, Sequence[StockPiece]]:
    free = free_on_hand(visit.db, {line.kind for line in lines}, jobs, is_sheet=True)
    return {
        f"{line.nominal} in {line.kind}": [
            each for each in free if (each.material, each.size) == (line.kind, line.nominal)
        ]
        for line in lines
    }


def _on_hand(piece: StockPiece) -> SheetOnHand:
    return SheetOnHand(
        id=piece.id,
        width=usable(piece),
        length=from_ticks(piece.length_ticks),
        is_offcut=piece.kind is PieceKind.OFFCUT,
    )


def _offer(
    piece_id: str, jobs: Sequence[str], key: str, rack: Sequence[StockPiece], at_hand: Sequence[Job]
) -> SheetOffer:
    piece = next(each for each in rack if each.id == piece_id)
    by_id = {job.id: job for job in at_hand}
    return SheetOffer(
        piece=piece,
        label=label(piece),
        job=by_id[jobs[0]],
        key=key,
        jobs=tuple(sorted(by_id[each].number for each in jobs)),
    )


def _shares(counted: SheetCount) -> Mapping[str, float]:
    """Each job's part of the sheets, by the area of its parts."""
    area = math.fsum(counted.areas.values())
    return {job: max(1, counted.sheets) * each / area for job, each in counted.areas.items()}


def _words(laid: SheetsLaid, kerf: float, jobs: int, visit: Visit) -> str:
    """How it was counted, for the page and the order."""
    unit = visit.unit
    together = f" for {jobs} jobs together" if jobs > 1 else ""
    words = f"laid out{together}, kerf {show_in(kerf, unit)}, {show_in(TRIM, unit)} trimmed off each edge"
    if laid.sheets and laid.fewest == laid.sheets:
        words += ", no layout takes fewer"
    if laid.too_large:
        words += f"; {laid.too_large} parts are larger than a sheet and not counted"
    return words
