"""The usual cautions, at the place where the work is planned."""

import json
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.papers.writing import section, wrapped
from casewright.pieces.built.construct import Construction


@cache
def _cautions() -> list[dict[str, Any]]:
    text = files("casewright.papers").joinpath("data/cautions.json").read_text(encoding="utf-8")
    held: list[dict[str, Any]] = json.loads(text)["cautions"]
    return held


LAST = "These are reminders; the tools' manuals, local codes and licensed practice come first."


def cautions_at(place: str, woods: Iterable[str]) -> tuple[str, ...]:
    """The cautions that belong on one kind of paper, each with its source.

    Args:
        place: `joint`, `saw` or `order`
        woods: the woods that are worked

    Returns:
        One sentence or two for each, and last what comes before them all.
    """
    worked = set(woods)
    found = [
        f"{caution['text']} ({caution['source']})"
        for caution in _cautions()
        if place in caution.get("at", ()) and (not caution.get("woods") or worked & set(caution["woods"]))
    ]
    return (*found, LAST)


def caution_lines(unit: Construction) -> tuple[str, ...]:
    """The cautions that a unit asks for, each with its source, and last what comes before them all.

    Args:
        unit: the unit

    Returns:
        One or two sentences for each.
    """
    woods = {line.part.wood for line in unit.lines}
    found = [
        f"{caution['text']} ({caution['source']})"
        for caution in _cautions()
        if not caution.get("woods") or woods & set(caution["woods"])
    ]
    return (*found, LAST)


def cautions_for(unit: Construction) -> str:
    """The cautions that a unit asks for, as a part of a report.

    Args:
        unit: the unit

    Returns:
        A list; the tools' own manuals, the law of the place and licensed practice come before it.
    """
    *cautions, last = caution_lines(unit)
    return section(
        "Cautions", "\n".join(wrapped(line, 2) for line in (*(f"- {each}" for each in cautions), last))
    )
