"""The cut list as PDF: the rough list for the breakdown, then the finished list for the bench."""

from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.papers.cleaning import name, words
from casewright.papers.cut_list import Breakdown, CutListPaper, FinishedGroup, FinishedRow, RoughRow, UnitCuts
from casewright.papers.head import head_data
from casewright.papers.pdf import Paper, render
from casewright.papers.writing import Writing, several
from casewright.pieces.layout.parts import Grain
from casewright.wood.movement import Cut

ARROWS = {Grain.ACROSS: "↔", Grain.UPRIGHT: "↕", Grain.BACK: "↗", Grain.ANY: ""}
"""The way of the grain as it is drawn on a part, seen from the front of the piece."""
MOST_LINES, MOST_CODES = 2, 4


def cut_list_pdf(cuts: CutListPaper, paper: Paper = Paper.LETTER) -> bytes:
    """The cut list of a job.

    Args:
        cuts: the cut list, as it is kept
        paper: the sheet

    Returns:
        A PDF: rough sizes wood by wood and class by class, then finished sizes unit by unit and drawer by
        drawer, with a place for what was measured.
    """
    return render("cut_list", cut_list_data(cuts), paper)


def cut_list_data(cuts: CutListPaper) -> dict[str, Any]:
    """The cut list as it is read, on paper and on a page.

    Args:
        cuts: the cut list, as it is kept

    Returns:
        Every size and note in words.
    """
    writing = Writing(unit=cuts.head.unit)
    both = ("mm", "in") if writing.unit is LengthUnit.MILLIMETRE else ("in", "mm")
    return head_data(cuts.head, "Cut list") | {
        "summary": _summary(cuts),
        "first_unit": both[0],
        "other_unit": both[1],
        "breakdowns": [_breakdown(each, writing) for each in cuts.breakdowns],
        "cautions": [words(caution) for caution in cuts.cautions],
        "units": [_unit(each, writing) for each in cuts.units],
    }


def _summary(cuts: CutListPaper) -> str:
    units = ", ".join(
        f"{name(unit.code, 20)} {name(unit.name)}" + (f" × {unit.count}" if unit.count > 1 else "")
        for unit in cuts.units
    )
    return f"{units}: {several(cuts.parts, 'part')}, without those from offcuts."


def _breakdown(each: Breakdown, writing: Writing) -> dict[str, Any]:
    wood = name(each.wood)
    title = wood[:1].upper() + wood[1:]
    if each.bought != "sheet":
        title += f" {each.bought}" + ("" if each.cut is Cut.FLAT else f", {each.cut.sawn}")
    feet = f"{each.rough_bd_ft:.1f} bd ft on rough size" if each.rough_bd_ft else "cut to finished size"
    pieces = several(sum(row.quantity for row in each.rows), "piece")
    return {"title": title, "note": f"{pieces}, {feet}", "rows": [_rough(row, writing) for row in each.rows]}


def _rough(row: RoughRow, writing: Writing) -> dict[str, Any]:
    finished = (row.thickness_in, row.finished_width_in, row.finished_length_in)
    notes = [f"panel of {row.boards} boards"] if row.boards > 1 else []
    if row.sawn_from:
        notes.append(f"sawn in two from {several(row.sawn_from, 'blank')}; this is the blank's size")
    if row.two_from:
        notes.append(f"or two from one {row.two_from}")
    return {
        "mark": name(row.mark, 40),
        "name": name(row.name),
        "count": row.quantity,
        "size": writing.sizes(row.width_in, row.length_in),
        "other": " × ".join(writing.other(each) for each in (row.width_in, row.length_in)),
        "finished": writing.sizes(*finished),
        "note": "; ".join(notes),
    }


def _unit(unit: UnitCuts, writing: Writing) -> dict[str, Any]:
    alike = f"Make {unit.count} of each part: {unit.count} units alike." if unit.count > 1 else ""
    return {
        "title": f"{name(unit.code, 20)}: {name(unit.name)}",
        "note": alike,
        "groups": [_group(each, writing) for each in unit.groups],
        "offcuts": [
            [name(each.name), str(each.quantity * unit.count), words(each.size), words(each.note)]
            for each in unit.offcuts
        ],
    }


def _group(group: FinishedGroup, writing: Writing) -> dict[str, Any]:
    if group.height_in is None or group.width_in is None or group.length_in is None:
        return {
            "title": "Case and base",
            "note": "",
            "rows": [_finished(row, writing) for row in group.rows],
        }
    note = f"plane to {writing.sizes(group.height_in, group.width_in)}, {writing.size(group.length_in)} long"
    if group.opening_height_in is not None and group.opening_width_in is not None:
        note += f"; opening {writing.sizes(group.opening_height_in, group.opening_width_in)}"
    return {
        "title": f"Drawer {name(group.code, 40)}",
        "note": note,
        "rows": [_finished(row, writing) for row in group.rows],
    }


def _finished(row: FinishedRow, writing: Writing) -> dict[str, Any]:
    sizes = (row.thickness_in, row.width_in, row.length_in)
    ends = row.ends[0] if row.ends[0] == row.ends[1] else f"{row.ends[0]};\nother end: {row.ends[1]}"
    return {
        "marks": [name(mark, 40) for mark in (row.codes if _are_few(row) else (row.mark,))],
        "name": name(row.name),
        "codes": "" if _are_few(row) else name(_codes(row.codes)),
        "measured": f"measured: {', '.join(row.measured)}" if row.measured else "",
        "wood": name(row.wood) + ("" if row.cut is Cut.FLAT or row.sheet else f", {row.cut.sawn}"),
        "size": writing.sizes(*sizes),
        "other": " × ".join(writing.other(each) for each in sizes),
        "arrow": ARROWS[row.grain],
        "grain": row.grain,
        "face": row.face,
        "ends": words(ends),
        "count": len(row.codes),
    }


def _are_few(row: FinishedRow) -> bool:
    """Whether the codes of the parts, which are written on them, stand in the first column."""
    return len(row.codes) <= MOST_LINES


def _codes(codes: tuple[str, ...]) -> str:
    return ", ".join(codes) if len(codes) <= MOST_CODES else f"{codes[0]} … {codes[-1]}"
