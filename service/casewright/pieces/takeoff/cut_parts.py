"""From what a unit takes to a cut file: its parts and the sets that match, beside the stock of a shop."""

from collections.abc import Iterator, Mapping
from typing import Any

from casewright.cutting.asked.cut_file import CutFile, cut_file_of
from casewright.measure.lengths import write_with_unit
from casewright.measure.units import Inches
from casewright.pieces.asked.shop import Shop
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.grain_sets import GrainSet, Way, grain_sets
from casewright.pieces.layout.parts import Grain, Part
from casewright.pieces.takeoff.rough import RoughLine, TakeOff
from casewright.wood.movement import Cut
from casewright.wood.rough import usual_allowances

NARROWEST_STRIP = 2.5
"""Narrowest strip of a panel (common practice) [in]."""

HALVES = ("left", "right")
"""What the two matched halves of one part are called behind its mark."""


def cut_file_for(unit: Construction, takeoff: TakeOff, shop: Shop, stock: Mapping[str, Any]) -> CutFile:
    """A cut file with the parts of a unit and the stock of a shop.

    Args:
        unit: one unit, worked out
        takeoff: what all units take
        shop: kerf, trims and widths of boards
        stock: a cut file without parts, as its JSON held it; what it says of the saw goes before the shop's

    Returns:
        The cut file.

    Raises:
        CannotRead: with a sentence for each field of the stock that cannot be used

    Source: common practice.
    """
    data = cut_data_for(unit, takeoff, shop)
    said = stock.get("saw")
    saw = {**data["saw"], **said} if isinstance(said, dict) else said or data["saw"]
    return cut_file_of({**data, **stock, "saw": saw, "parts": data["parts"], "sets": data["sets"]})


def cut_data_for(unit: Construction, takeoff: TakeOff, shop: Shop) -> dict[str, Any]:
    """The parts of a unit as the JSON of a cut file holds them, still without stock.

    Args:
        unit: one unit, worked out
        takeoff: what all units take
        shop: kerf, trims and widths of boards

    Returns:
        Plain values, sizes with their unit.

    Source: common practice.
    """
    spec = shop.spec
    return {
        "cut_file": 1,
        "unit": unit.spec.unit.value,
        "name": unit.spec.name,
        "saw": {
            "kerf": write_with_unit(spec.kerf),
            "end_trim": write_with_unit(spec.end_trim),
            "edge": write_with_unit(spec.edge_trim),
            "jointing": write_with_unit(usual_allowances().board),
        },
        "parts": [*_solid(takeoff, shop), *_sheets(unit, takeoff)],
        "sets": list(_sets(unit, takeoff, shop)),
    }


def wood_name(part: Part) -> str:
    """What boards of a part's wood and cut are called in a cut file.

    Args:
        part: the part

    Returns:
        Such as `cherry`, or `white oak, quartersawn`.

    Source: common practice: flat-sawn goes without saying.
    """
    return part.wood if part.cut is Cut.FLAT or part.sheet else f"{part.wood}, {part.cut.sawn}"


def _solid(takeoff: TakeOff, shop: Shop) -> Iterator[dict[str, Any]]:
    for line in takeoff.lines:
        for code in line.of.codes:
            for mark in [f"{code} {half}" for half in HALVES] if line.halves else [code]:
                yield _of_board(mark, line, takeoff.count, shop)


def _of_board(mark: str, line: RoughLine, count: int, shop: Shop) -> dict[str, Any]:
    part = line.of.part
    data: dict[str, Any] = {
        "code": mark,
        "name": part.name,
        "wood": wood_name(part),
        "class": line.bought.name,
        "thickness": write_with_unit(part.thickness),
        "length": write_with_unit(line.length),
        "width": write_with_unit(_width(line)),
        "count": count,
        "face": part.face.value,
        "resaw": line.resaw is not None and not line.is_matched,
    }
    if line.boards > 1:
        data["glue_up"] = _glue_up(line, shop)
    return data


def _width(line: RoughLine) -> Inches:
    """The width of a part as it is broken out; of a panel without what each of its boards takes."""
    return line.width - (line.boards * usual_allowances().board if line.boards > 1 else 0.0)


def _glue_up(line: RoughLine, shop: Shop) -> dict[str, str]:
    widest = shop.board_width(line.of.part.wood) + usual_allowances().board
    return {"narrowest": write_with_unit(NARROWEST_STRIP), "widest": write_with_unit(widest)}


def _sheets(unit: Construction, takeoff: TakeOff) -> Iterator[dict[str, Any]]:
    for line in unit.lines:
        if line.part.sheet:
            for code in line.codes:
                # What is cut out of it is cut out of a whole blank.
                whole = " (saw it whole)" if line.part.cut_out else ""
                yield {
                    "code": code,
                    "name": f"{line.part.name}{whole}",
                    "wood": line.part.wood,
                    "thickness": write_with_unit(line.part.thickness),
                    "length": write_with_unit(line.part.length),
                    "width": write_with_unit(line.part.width),
                    "count": takeoff.count,
                    "face": line.part.face.value,
                    "grain": "any" if line.part.grain is Grain.ANY else "along",
                }


def _sets(unit: Construction, takeoff: TakeOff, shop: Shop) -> Iterator[dict[str, Any]]:
    lines = {code: line for line in takeoff.lines for code in line.of.codes}
    for found in grain_sets(unit.spec, unit.face, unit.parts):
        if not all(part.code in lines for part in found.parts):
            continue
        alike = {(wood_name(part), lines[part.code].bought.name) for part in found.parts}
        for number in range(1, takeoff.count + 1) if found.way is not Way.ONE_TREE else (1,):
            for place, (wood, bought) in enumerate(sorted(alike), 1):
                rows = _rows(found, wood, bought, lines)
                if sum(map(len, rows)) > 1:
                    several = "" if takeoff.count == 1 or found.way is Way.ONE_TREE else f" ({number})"
                    part_of = f", {bought}" if len(alike) > 1 and place else ""
                    first = lines[found.parts[0].code]
                    yield {
                        "name": f"{found.name}{part_of}{several}",
                        "way": found.way.value,
                        "rows": rows,
                        "glue_up": _glue_up(first, shop),
                    }


def _rows(found: GrainSet, wood: str, bought: str, lines: dict[str, RoughLine]) -> list[list[str]]:
    """The codes of a set, those of one wood and class: a set of several cannot come from one piece."""
    kept = [
        [part.code for part in row if (wood_name(part), lines[part.code].bought.name) == (wood, bought)]
        for row in found.rows
    ]
    if found.halves:
        return [[f"{code} {half}" for half in HALVES] for row in kept for code in row]
    return [row for row in kept if row]
