"""The usual cautions, at the place where the work is planned."""

import json
from collections.abc import Iterable, Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.papers.bench import tools_for
from casewright.papers.writing import section, wrapped
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.joints import other_joints
from casewright.pieces.layout.grain_sets import grain_sets, is_sawn_in_two
from casewright.pieces.takeoff.rough import TakeOff


@cache
def _cautions() -> list[dict[str, Any]]:
    text = files("casewright.papers").joinpath("data/cautions.json").read_text(encoding="utf-8")
    held: list[dict[str, Any]] = json.loads(text)["cautions"]
    return held


LAST = "These are reminders; the tools' manuals, local codes and licensed practice come first."


def cautions_at(place: str, woods: Iterable[str], resawn: bool = False) -> tuple[str, ...]:
    """The cautions that belong on one kind of paper, each with its source.

    Args:
        place: `saw` or `order`
        woods: the woods that are worked
        resawn: are boards sawn in two through their thickness, or may they be?

    Returns:
        One sentence or two for each, and last what comes before them all.
    """
    worked = set(woods)
    return _said(each for each in _cautions() if place in each.get("at", ()) and _is_of(each, worked, resawn))


def joint_cautions(kinds: Iterable[str]) -> tuple[str, ...]:
    """The cautions for the tools that joints are cut with, each with its source.

    Args:
        kinds: names of the kinds of joints, such as `half-blind`

    Returns:
        One sentence or two for each, and last what comes before them all.
    """
    tools = tools_for(kinds)
    return _said(each for each in _cautions() if tools & set(each.get("tools", ())))


def joint_cautions_text(kind: str) -> str:
    """The cautions for one joint, as a part of a report.

    Args:
        kind: the joint's name

    Returns:
        A list.
    """
    return _listed(joint_cautions([kind]))


def caution_lines(unit: Construction, resawn: bool = False) -> tuple[str, ...]:
    """The cautions that a unit asks for, each with its source, and last what comes before them all.

    Args:
        unit: the unit
        resawn: may boards be sawn in two to save wood? Those of parts that match are anyway

    Returns:
        One or two sentences for each.
    """
    woods = {line.part.wood for line in unit.lines}
    tools = tools_for(joint_kinds(unit))
    resawn = resawn or any(is_sawn_in_two(found) for found in grain_sets(unit.spec, unit.face, unit.parts))
    return _said(
        each
        for each in _cautions()
        if _is_of(each, woods, resawn) and ("tools" not in each or "at" in each or tools & set(each["tools"]))
    )


def may_be_resawn(takeoff: TakeOff) -> bool:
    """Is any line of the cut list sawn in two from one thickness, or said to save wood if it were?

    Args:
        takeoff: what all units take

    Returns:
        Whether the band saw's caution belongs beside it.
    """
    return any(line.resaw is not None for line in takeoff.lines)


def joint_kinds(unit: Construction) -> tuple[str, ...]:
    """The kinds of joints that are cut by a unit's cards.

    Args:
        unit: the unit

    Returns:
        Their names, such as `half-blind`.
    """
    drawers = ("half-blind",) if any(each.joints.half_blind for each in unit.drawers) else ()
    if any(each.joints.through for each in unit.drawers):
        drawers = (*drawers, "through")
    return tuple(dict.fromkeys((*drawers, *(placed.kind for placed in other_joints(unit)))))


def _is_of(caution: Mapping[str, Any], woods: set[str], resawn: bool) -> bool:
    """Whether a caution is of every wood, or of one that is worked; of resawing only where boards are."""
    if caution.get("resawn") and not resawn:
        return False
    return not caution.get("woods") or bool(woods & set(caution["woods"]))


def _said(cautions: Iterable[Mapping[str, Any]]) -> tuple[str, ...]:
    return (*(f"{each['text']} ({each['source']})" for each in cautions), LAST)


def _listed(lines: tuple[str, ...]) -> str:
    *cautions, last = lines
    return section(
        "Cautions", "\n".join(wrapped(line, 2) for line in (*(f"- {each}" for each in cautions), last))
    )


def cautions_for(unit: Construction, resawn: bool = False) -> str:
    """The cautions that a unit asks for, as a part of a report.

    Args:
        unit: the unit
        resawn: may boards be sawn in two to save wood?

    Returns:
        A list; the tools' own manuals, the law of the place and licensed practice come before it.
    """
    return _listed(caution_lines(unit, resawn))
