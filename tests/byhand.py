"""Pieces worked by hand: their unit files, and their cut lists as plain rows to compare line for line."""

import json
import math
from functools import cache
from pathlib import Path

from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.estimate import Estimate, estimate
from units import TODAY, unit

FILES = Path(__file__).parent / "outside" / "units"


@cache
def estimate_of(name: str) -> Estimate:
    """The estimate of a unit file by the example shop, made once."""
    data = json.loads((FILES / f"{name}.json").read_text(encoding="utf-8"))
    return estimate(unit(data), example_shop(), TODAY)


def cut_list(name: str) -> list[tuple[str, int, str, float, float, float]]:
    """What the cut list has: part, quantity, wood, thickness, width and length [in]."""
    lines = estimate_of(name).unit.lines
    return row_order(
        (
            line.part.name,
            line.quantity,
            line.part.wood,
            line.part.thickness,
            line.part.width,
            line.part.length,
        )
        for line in lines
    )


def row_order(rows):
    """Rows in one order, their sizes to a thousandth, so that two lists compare line for line."""
    return sorted(
        (name, count, wood, *(round(float(size), 3) for size in sizes)) for name, count, wood, *sizes in rows
    )


def down64(size):
    """Down to 1/64 in, as clearances are."""
    return math.floor(size * 64 + 1e-9) / 64


def near(size, parts):
    """To the nearest of so many parts of an inch."""
    return round(size * parts) / parts


def quarter_down(size):
    """Down to 1/4 in, as the length of a drawer is."""
    return math.floor(size * 4 + 1e-9) / 4


def drawer(name, code):
    """One drawer of a piece, by the code of its opening."""
    made = estimate_of(name).unit
    return made.drawer(f"{made.spec.code}-{code}")


def findings(name, rule):
    """What a rule found."""
    return [each for each in estimate_of(name).findings if each.rule == rule]


def rough_line(name, part, quantity):
    """The line of the cut list as it is broken out."""
    (found,) = {
        line.line: line
        for line in estimate_of(name).takeoff.lines
        if (line.of.part.name, line.quantity) == (part, quantity)
    }.values()
    return found
