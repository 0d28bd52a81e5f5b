"""Cut list and lumber order as CSV for other programs: RFC 4180, UTF-8, each unit in its column's name."""

import csv
from collections.abc import Iterable, Sequence
from io import StringIO

from casewright.measure.lengths import LengthUnit, show, show_mm
from casewright.papers.cleaning import clean_text
from casewright.papers.cut_list import CutListPaper
from casewright.papers.order import BoardsNeeded, MatchedSet, OrderPaper
from casewright.papers.supply_order import SupplyOrderPaper, needs_of

FORMULA = ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")
"""What a spreadsheet may take for the start of a formula."""
SIZES = ("thickness", "width", "length")


def cut_list_csv(cuts: CutListPaper) -> bytes:
    """The finished cut list, one row for each line of a unit or drawer.

    Args:
        cuts: the cut list, as it is kept

    Returns:
        The file. Every size stands as a fraction, in decimal inches and in millimetres; `quantity` counts all
        units that are alike.
    """
    headings = (
        *("job", "revision", "unit", "group", "mark", "codes", "part", "quantity", "wood", "cut"),
        *(column for size in SIZES for column in _columns(size)),
        *("grain", "face", "one_end", "other_end"),
    )
    rows = (
        (
            *(cuts.head.job_number, cuts.head.revision, unit.code, group.code, row.mark, " ".join(row.codes)),
            *(row.name, len(row.codes) * unit.count, row.wood, "" if row.sheet else row.cut.value),
            *(cell for size in (row.thickness_in, row.width_in, row.length_in) for cell in _cells(size)),
            *(row.grain.value, row.face, *row.ends),
        )
        for unit in cuts.units
        for group in unit.groups
        for row in group.rows
    )
    return _file(headings, rows)


def lumber_order_csv(order: OrderPaper) -> bytes:
    """The lumber order, one row for each wood, cut and class.

    Args:
        order: the order, as it is kept

    Returns:
        The file; without sheets, hardware or any price. Longest, wide boards and sets are rounded up as a
        yard picks them.
    """
    headings = (
        *("job", "revision", "wood", "cut", "class", "grade", "surfacing", "feet_bd_ft", "exact_bd_ft"),
        *("rough_bd_ft", *_columns("longest"), *_columns("must_plane_to"), "wide_boards", "sets"),
    )
    rows = (
        (
            *(order.head.job_number, order.head.revision, line.wood, line.cut.value, line.bought),
            *(line.grade.value, line.surfacing, line.feet_bd_ft, _decimal(line.exact_bd_ft)),
            _decimal(sum(each.rough_bd_ft for each in line.behind)),
            *(*_cells(line.longest_in), *_cells(line.must_plane_to_in)),
            _wide(line.needs, order.head.unit),
            _sets(line.sets, order.head.unit),
        )
        for line in order.lumber
    )
    return _file(headings, rows)


def supply_order_csv(order: SupplyOrderPaper) -> bytes:
    """An order to one supplier, one row for each thing that is bought.

    Args:
        order: the order, as it is kept

    Returns:
        The file; without any price, and without a customer.
    """
    headings = (
        *("order", "jobs", "kind", "item", "cut", "size", "grade", "quantity", "unit", "surfacing"),
        *(*_columns("longest"), *_columns("must_plane_to"), "wide_boards", "sets"),
    )
    boards = {need.key: line for need, line in zip(needs_of(order), order.lumber, strict=False)}
    rows = []
    for need in needs_of(order):
        line = boards.get(need.key)
        rows.append(
            (
                *(order.head.number, order.head.job_number, need.kind.value, need.item, need.cut, need.size),
                *(need.grade, _decimal(need.quantity), need.unit, line.surfacing if line else ""),
                *(_cells(line.longest_in) if line else NO_CELLS),
                *(_cells(line.must_plane_to_in) if line else NO_CELLS),
                _wide(line.needs, order.head.unit) if line else "",
                _sets(line.sets, order.head.unit) if line else "",
            )
        )
    return _file(headings, rows)


NO_CELLS = ("", "", "")
"""What stands in the cells of a size where there is none."""


def _columns(size: str) -> tuple[str, str, str]:
    return f"{size}_fraction_in", f"{size}_in", f"{size}_mm"


def _cells(inches: float) -> tuple[str, str, str]:
    return show(inches), _decimal(inches), show_mm(inches)


def _picked(width: float, length: float, unit: LengthUnit) -> str:
    """A board in the shop's unit, as a yard picks it."""
    written = show if unit is LengthUnit.INCH else show_mm
    return f"{written(width)} x {written(length)} {unit.value}".replace(".0 ", " ")


def _wide(needs: Iterable[BoardsNeeded], unit: LengthUnit) -> str:
    """Wide boards that are no part of a set, counted."""
    return "; ".join(
        f"{need.quantity} of {_picked(need.width_in, need.length_in, unit)}"
        for need in needs
        if not need.matched
    )


def _sets(sets: Iterable[MatchedSet], unit: LengthUnit) -> str:
    return "; ".join(f"{found.sets} of {_set(found, unit)}, {found.name}" for found in sets)


def _set(found: MatchedSet, unit: LengthUnit) -> str:
    """The board of a set, or how many boards of which size for its panel."""
    size = _picked(found.width_in, found.length_in, unit)
    return size if found.boards == 1 else f"{found.boards} boards each {size} for a panel"


def _decimal(value: float) -> str:
    """Six decimals hold every 64th exactly; idle zeros are left out."""
    return f"{value:.6f}".rstrip("0").rstrip(".")


def _file(headings: Sequence[str], rows: Iterable[Sequence[object]]) -> bytes:
    text = StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(headings)
    writer.writerows([_cell(value) for value in row] for row in rows)
    return text.getvalue().encode()


def _cell(value: object) -> str:
    """A cell that no spreadsheet takes for a formula: where it might, an apostrophe stands before it."""
    text = clean_text(str(value))
    return f"'{text}" if text.lstrip(" \n").startswith(FORMULA) else text
