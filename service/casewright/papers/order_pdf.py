"""The order as PDF: the yard's copy, and the shop's with the sums and the parts behind each line."""

import json
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.papers.cleaning import name, words
from casewright.papers.head import day, head_data
from casewright.papers.order import (
    BoardsNeeded,
    ConsumableLine,
    FeetBehind,
    FinishLine,
    HardwareLine,
    LumberLine,
    MatchedSet,
    OrderPaper,
)
from casewright.papers.order import SheetLine as Sheets
from casewright.papers.pdf import Paper, render
from casewright.papers.writing import Writing, several
from casewright.wood.movement import Cut

USES = {
    "case": "case, top and base",
    "drawer": "drawer sides and backs",
    "inside": "inside parts",
    "sequence": "fronts in sequence",
    "leg": "legs",
}

STEPS = {LengthUnit.INCH: "1/4 in", LengthUnit.MILLIMETRE: "5 mm"}
"""To what `yard_size` rounds up, in words."""


BY_THE_LOT = "one lot"
"""How the note of hardware begins that is counted once for a job, such as its screws."""


@cache
def order_words() -> dict[str, str]:
    """What is asked of every yard, in words; `surfacing` is how boards usually come."""
    text = files("casewright.papers").joinpath("data/order.json").read_text(encoding="utf-8")
    held: dict[str, str] = json.loads(text)["order"]
    return held


def lumber_order_pdf(order: OrderPaper, paper: Paper = Paper.LETTER, *, for_shop: bool = False) -> bytes:
    """The order of a job, under its number alone: the yard is not told the customer's name.

    Args:
        order: the order, as it is kept
        paper: the sheet
        for_shop: the copy that stays, with the sums and the parts behind each line, what each thing is for,
            and what is used up at the bench

    Returns:
        A PDF without any price.
    """
    return render("order", order_data(order, for_shop=for_shop), paper)


def order_data(order: OrderPaper, *, for_shop: bool = False) -> dict[str, Any]:
    """The order as it is read, on paper and on a page.

    Args:
        order: the order, as it is kept
        for_shop: with the sums and the parts behind each line

    Returns:
        Every size and note in words.
    """
    writing = Writing(unit=order.head.unit)
    copy = "our copy" if for_shop else ""
    return head_data(order.head, "Lumber order", copy=copy, shows_job_name=False) | {
        "parties": [[label, text] for label, text in _parties(order) if text],
        "lumber": [_lumber(line, writing) for line in order.lumber],
        "total": f"{sum(line.feet_bd_ft for line in order.lumber):,} bd ft in all",
        "sizes": f"Least sizes are rounded up to the next {STEPS[order.head.unit]}, as boards are picked.",
        "working": [_working(line) for line in order.lumber] if for_shop else [],
        "sheets": [_sheet(line, writing) for line in order.sheets],
        **(_for_shop(order) if for_shop else _for_yard(order)),
        "remarks": [words(remark) for remark in order.remarks],
        "cautions": [words(caution) for caution in order.cautions] if for_shop else [],
        "asked": [order_words()[key] for key in ("tally", "sets", "colour", "substitution", "refused")],
    }


def lumber_words(line: LumberLine, unit: LengthUnit) -> dict[str, Any]:
    """One line of lumber as it is read.

    Args:
        line: the line, as it is kept
        unit: in which sizes are written

    Returns:
        Every size and note in words.
    """
    return _lumber(line, Writing(unit=unit))


def used_up_words(order: OrderPaper) -> list[list[str]]:
    """Finish and what is used up at the bench, each with how much of it, for whoever sells it.

    Args:
        order: the order, as it is kept

    Returns:
        Count and name of each.
    """
    return [
        *(_finish(line)[:2] for line in order.finishes),
        *(_sold(line) for line in order.consumables),
    ]


def _for_shop(order: OrderPaper) -> dict[str, Any]:
    """All that the job takes beside wood, with what it is for and how it was counted."""
    return {
        "for_shop": True,
        "hardware": [_hardware(line) for line in order.hardware],
        "used_up": [*map(_finish, order.finishes), *map(_consumable, order.consumables)],
    }


def _for_yard(order: OrderPaper) -> dict[str, Any]:
    """What is sold by the piece and by the quart: no yard sells glue by the unit or screws by the job."""
    return {
        "for_shop": False,
        "hardware": [
            [str(line.quantity + line.spare), name(line.item)]
            for line in order.hardware
            if not line.note.startswith(BY_THE_LOT)
        ],
        "used_up": [_finish(line)[:2] for line in order.finishes],
    }


def _parties(order: OrderPaper) -> list[tuple[str, str]]:
    return [
        ("To", name(order.supplier)),
        ("Needed by", day(order.needed_by)),
        ("Delivery", name(order.delivery)),
    ]


def _lumber(line: LumberLine, writing: Writing) -> dict[str, Any]:
    return {
        "wood": _wood(line),
        "bought": line.bought,
        "grade": line.grade.value,
        "feet": str(line.feet_bd_ft),
        "surfacing": f"{words(line.surfacing)}; must plane to {_size(line.must_plane_to_in, writing)}",
        "longest": _picked(line.longest_in, writing),
        "needs": [_need(need, writing) for need in line.needs if not need.matched]
        + [_set(found, writing) for found in line.sets],
    }


def _wood(line: LumberLine) -> str:
    wood = name(line.wood)
    return wood[:1].upper() + wood[1:] + ("" if line.cut is Cut.FLAT else f", {line.cut.sawn}")


def _size(inches: float, writing: Writing) -> str:
    return f"{writing.size(inches)} {writing.unit.value}"


def _picked(inches: float, writing: Writing) -> str:
    """A size that was rounded up for the yard: whole millimetres, or quarters of an inch."""
    return f"{writing.size(inches).removesuffix('.0')} {writing.unit.value}"


def _need(need: BoardsNeeded, writing: Writing) -> str:
    boards = several(need.quantity, "board")
    width, length = _picked(need.width_in, writing), _picked(need.length_in, writing)
    return f"At least {boards} {width} wide and {length} long, not glued up"


def _set(found: MatchedSet, writing: Writing) -> str:
    size = f"{_picked(found.width_in, writing)} wide and {_picked(found.length_in, writing)} long"
    what = f"for {several(found.pieces, 'piece')} ({name(found.name)})"
    if found.way == "along" and found.boards == 1:
        blank = f"one board, at least {size}, {what}"
    elif found.way == "along":
        blank = f"{found.boards} boards from one log for a panel, each at least {size}, {what}"
    elif found.way in ("book", "slip"):
        thick = _picked(found.thickness_in, writing)
        blank = f"one board {thick} thick, {size}, to be sawn in two, {what}"
    elif found.way == "one tree":
        blank = f"all from one log, boards up to {size}, {what}"
    else:
        blank = f"boards from one log that make up a panel {size}, {what}"
    each = "Set" if found.sets == 1 else f"{found.sets} sets, each"
    return f"{each}: {blank}"


def _working(line: LumberLine) -> dict[str, Any]:
    return {
        "title": f"{_wood(line)} {line.bought}",
        "sum": f"{line.exact_bd_ft:.2f} bd ft, ordered as {line.feet_bd_ft}",
        "rows": [_behind(each) for each in line.behind],
        "note": words(line.grade_note),
    }


def _behind(each: FeetBehind) -> list[str]:
    return [
        USES[each.use],
        f"{each.rough_bd_ft:.2f}",
        f"{each.waste * 100:g} %",
        f"{each.order_bd_ft:.2f}",
        words(", ".join(each.lines)),
    ]


def _sheet(line: Sheets, writing: Writing) -> list[str]:
    return [
        str(line.sheets),
        name(f"{line.nominal} in {line.kind}"),
        f"{writing.sizes(line.width_in, line.length_in)} {writing.unit.value}",
        f"{_size(line.thickness_in, writing)} measured",
        words(line.note),
    ]


def _hardware(line: HardwareLine) -> list[str]:
    spare = f"and {line.spare} spare" if line.spare else ""
    return [str(line.quantity), spare, name(line.item), words(line.note)]


def _finish(line: FinishLine) -> list[str]:
    return [several(line.quarts, "quart"), name(line.product), f"{line.exact_quarts:.2f} with losses"]


def _sold(line: ConsumableLine) -> list[str]:
    """What is counted by anything but the piece says so: nobody shall send 96 abrasives for 96 sq ft."""
    count, item, counted = _consumable(line)
    return [count, item if line.unit in {"unit", "each"} else f"{item}, {counted}"]


def _consumable(line: ConsumableLine) -> list[str]:
    count = f"{line.quantity:.1f}".removesuffix(".0")
    return [count, name(line.item), f"counted by the {name(line.unit)}"]
