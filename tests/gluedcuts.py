"""Panels, for whoever checks a layout: are all strips there, and do glue lines keep off joints?"""

import math
from collections import defaultdict
from collections.abc import Iterator
from typing import Any

from askedcuts import Asked
from straightcuts import HAIR


def glued_faults(asked: Asked, answer: dict[str, Any]) -> Iterator[str]:
    panels: dict[tuple[str, int], list[dict[str, Any]]] = defaultdict(list)
    for lot in answer["lots"]:
        for board in lot["layouts"]:
            for laid in board["parts"]:
                if laid["strip"]:
                    panels[laid["code"], laid["number"]].append(laid)
    for (code, number), strips in panels.items():
        if sorted(each["strip"] for each in strips) != list(range(1, strips[0]["strips"] + 1)):
            yield f"panel {code} no. {number} lacks a strip"
        glue = _glue_of(asked, code)
        narrowest, widest = (
            asked.size(glue.get(name, usual))
            for name, usual in (("narrowest", "2-1/2 in"), ("widest", "6 in"))
        )
        yield from _glue_lines(asked, answer, code, number, strips)
        length, width = _set_size(asked, code) if code in asked.sets else asked.part_size(code)
        net = sum(each["width_in"] - (asked.saw["jointing"] if len(strips) > 1 else 0) for each in strips)
        if net < width - HAIR:
            yield f"the strips of {code} come to {net:g}, not {width:g}"
        if any(abs(each["length_in"] - length) > HAIR for each in strips):
            yield f"a strip of {code} has another length"
        if any(not narrowest - HAIR <= each["width_in"] <= widest + HAIR for each in strips):
            yield f"a strip of {code} is too narrow or too wide"


def _glue_lines(
    asked: Asked, answer: dict[str, Any], code: str, number: int, strips: list[dict[str, Any]]
) -> Iterator[str]:
    """Do the strips in their order give the lines that are told, and do these keep off as is told?"""
    told = [
        each
        for lot in answer["lots"]
        for each in lot["panels"]
        if (each["code"], each["number"]) == (code, number)
    ]
    if len(strips) < 2:
        return
    if len(told) != 1:
        yield f"nobody says how the strips of {code} no. {number} are put together"
        return
    widths = {each["strip"]: each["width_in"] - asked.saw["jointing"] for each in strips}
    place, lines = -told[0]["off_first_edge_in"], []
    for strip in told[0]["strips_in_order"][:-1]:
        place += widths.get(strip, math.nan)
        lines.append(place)
    if not all(abs(one - other) < HAIR for one, other in zip(lines, told[0]["glue_lines_in"], strict=True)):
        yield f"the glue lines of {code} do not lie where it is said"
    kept_off = [
        (asked.size(each["start"]), asked.size(each["end"]))
        for each in _glue_of(asked, code).get("keep_off", [])
    ]
    is_clear = not any(start - HAIR <= line <= end + HAIR for line in lines for start, end in kept_off)
    if is_clear != told[0]["clear_of_joints"]:
        yield f"the glue lines of {code} are said to be clear and are not, or the other way round"


def _glue_of(asked: Asked, code: str) -> dict[str, Any]:
    if code in asked.parts:
        return asked.parts[code].get("glue_up") or {}
    held = asked.sets[code]
    return held.get("glue_up") or asked.parts[held["rows"][0][0]].get("glue_up") or {}


def _set_size(asked: Asked, name: str) -> tuple[float, float]:
    """How long and wide the blank of a set is: its parts and the kerfs between them."""
    held = asked.sets[name]
    rows = [[code] for code in held["rows"][0]] if held["way"] == "across" else held["rows"]
    sizes = [[asked.part_size(code) for code in row] for row in rows]
    length = max(sum(each[0] for each in row) + asked.kerf * (len(row) - 1) for row in sizes)
    return length, sum(max(each[1] for each in row) for row in sizes) + asked.kerf * (len(rows) - 1)
