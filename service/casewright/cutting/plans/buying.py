"""The least that has to be bought for parts that found no place: tried, size by size."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from casewright.cutting.asked.parts_spec import CutPart, GlueUp
from casewright.cutting.asked.stock_spec import Board, SheetStock
from casewright.cutting.plans.blanks import single
from casewright.cutting.plans.ground import ground_of
from casewright.cutting.plans.strips import panel_of, strip_counts
from casewright.cutting.plans.trying import Found, Table, tried
from casewright.measure.lengths import from_ticks, write_with_unit
from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import Count, Inches

FOOT = 12.0
LONGEST: Inches = 16 * FOOT
"""Hardwood is sold to 16 ft (NHLA rules: standard lengths are 4 to 16 ft)."""
SHORTEST: Inches = 4 * FOOT
WIDTHS = (6.0, 8.0, 10.0, 12.0)
"""Widths at which a yard is asked for boards (common practice) [in]."""
TRIED = 3
"""So many widths are tried, the narrowest that would do first."""
USUAL: Inches = 10 * FOOT
SHEET = (96.0, 48.0)
"""The usual sheet (common practice) [in]."""
MOST = 256
CODE = "one more"


@dataclass(frozen=True, slots=True, kw_only=True)
class More:
    """What has to be bought.

    Attributes:
        length: of each board or sheet [in]
        width: of each [in]
        count: how many [dimensionless]
        found: what came of it
        glued: the parts that have to be glued up for it, since no board is sold so wide
        data: the same as a cut file holds it
    """

    length: Inches
    width: Inches
    count: Count
    found: Found
    glued: tuple[str, ...]
    data: dict[str, Any]


def one_more(table: Table, parts: Sequence[CutPart]) -> More | None:
    """The least that has to be bought so that every part finds a place.

    Of boards one that is as small as it can be, in whole feet of length; where one is not enough, several of
    a usual size. Of sheets as many as it takes.

    Args:
        table: where the parts would lie
        parts: the parts, as often as they have no place

    Returns:
        What it is; None where nothing that is sold would do.

    Source: common practice; each size is tried.
    """
    if table.lot.is_sheets:
        return _several(table, parts, *_sheet(table))
    saw = table.file.saw
    wide_ones = {part.code for part in gluable_of(table, parts) if _widest(table, part) > WIDTHS[-1]}
    parts = [
        part.model_copy(update={"glue_up": GlueUp()}) if part.code in wide_ones else part for part in parts
    ]
    blanks = [single(part, saw, has_allowance=True) for part in parts]
    long = from_ticks(max(blank.length for blank in blanks)) + 2 * saw.end_trim
    wide = [from_ticks(blank.width) for blank, part in zip(blanks, parts, strict=True) if not part.glue_up]
    least = math.ceil((max(wide, default=0.0) + 2 * saw.edge - TOLERANCE) * 2) / 2
    shortest = max(SHORTEST, math.ceil((long - TOLERANCE) / FOOT) * FOOT)
    longest = max(LONGEST, shortest)
    ones = [
        one
        for width in [least, *(each for each in WIDTHS if each > least)][:TRIED]
        if width > 0 and (one := _shortest(table, parts, width, shortest, longest))
    ]
    if ones:
        return min(ones, key=lambda one: one.length * one.width)
    return _several(table, parts, max(USUAL, shortest), max(8.0, least))


def _shortest(
    table: Table, parts: Sequence[CutPart], width: Inches, shortest: Inches, longest: Inches
) -> More | None:
    """One board of a width, as short as it may be; None where the longest is not enough."""
    low, high = round(shortest / FOOT), round(longest / FOOT)
    best = _with(table, parts, longest, width, 1)
    if best is None:
        return None
    while low < high and not table.budget.stop():
        middle = (low + high) // 2
        found = _with(table, parts, middle * FOOT, width, 1)
        if found is None:
            low = middle + 1
        else:
            best, high = found, middle
    return best


def _several(table: Table, parts: Sequence[CutPart], length: Inches, width: Inches) -> More | None:
    """So many boards or sheets of one size as it takes."""
    count, best = 1, None
    while best is None and count <= MOST and not table.budget.stop():
        best = _with(table, parts, length, width, count)
        count *= 4
    return best


def _with(table: Table, parts: Sequence[CutPart], length: Inches, width: Inches, count: Count) -> More | None:
    """What comes of having so many more; None where not every part finds a place."""
    data: dict[str, Any] = {
        "code": _free_code(table),
        "wood": table.lot.wood,
        "length": write_with_unit(length),
        "width": write_with_unit(width),
        "count": count,
    }
    stock: Board | SheetStock
    if table.lot.is_sheets:
        stock = SheetStock.model_validate(data)
    else:
        data["class"] = table.lot.thickness_class
        stock = Board.model_validate(data)
    ground = ground_of(stock, table.file.saw)
    if ground is None:
        return None
    found = tried(table, parts, (ground,))
    if len(found.placed) < sum(part.count for part in parts):
        return None
    count = data["count"] = sum(begun is ground for _, begun in found.begun)
    glued = sorted({part.code for part in parts if part.glue_up == GlueUp()} & set(_unglued(table)))
    return More(length=length, width=width, count=count, found=found, glued=tuple(glued), data=data)


def _unglued(table: Table) -> list[str]:
    """The marks of the parts that the cut file wants from one board."""
    return [part.code for part in table.file.parts if part.glue_up is None]


def gluable_of(table: Table, parts: Sequence[CutPart]) -> list[CutPart]:
    """Parts that come from one board and could come from several.

    Args:
        table: where they would lie
        parts: the parts

    Returns:
        Those of them.

    Source: common practice.
    """
    return [
        part
        for part in parts
        if not table.lot.is_sheets
        and part.glue_up is None
        and any(
            count > 1
            for count in strip_counts(
                panel_of(single(part, table.file.saw, has_allowance=True), GlueUp(), table.file.saw)
            )
        )
    ]


def too_wide(table: Table, parts: Sequence[CutPart]) -> list[CutPart]:
    """Parts that are wider than any board.

    Args:
        table: where they would lie
        parts: the parts

    Returns:
        Those of them.

    Source: geometry.
    """
    grounds = (*table.lot.grounds, *table.lot.spare)
    widest = max((from_ticks(ground.usable.width) for ground in grounds), default=0.0)
    return [part for part in parts if _widest(table, part) - 2 * table.file.saw.edge > widest + TOLERANCE]


def _widest(table: Table, part: CutPart) -> Inches:
    """How wide a board has to be for a part in one piece."""
    return from_ticks(single(part, table.file.saw, has_allowance=True).width) + 2 * table.file.saw.edge


def _free_code(table: Table) -> str:
    file = table.file
    taken = {each.code for each in (*file.boards, *file.sheets, *file.lengths)}
    return next(code for code in _codes() if code not in taken)


def _codes() -> Iterator[str]:
    yield CODE
    number = 1
    while True:
        number += 1
        yield f"{CODE} {number}"


def _sheet(table: Table) -> tuple[Inches, Inches]:
    """The largest whole sheet of the kind that the file knows; else the usual one."""
    held = [
        (ground.stock.length, from_ticks(ground.outer.width))
        for ground in (*table.lot.grounds, *table.lot.spare)
        if not ground.stock.offcut
    ]
    return max(held, key=lambda one: one[0] * one[1], default=SHEET)
