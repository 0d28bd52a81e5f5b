"""The usual cautions, at the place where the work is planned."""

import json
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.papers.writing import section, wrapped
from casewright.pieces.construct import Construction


@cache
def _cautions() -> list[dict[str, Any]]:
    text = files("casewright.papers").joinpath("data/cautions.json").read_text(encoding="utf-8")
    held: list[dict[str, Any]] = json.loads(text)["cautions"]
    return held


def cautions_for(unit: Construction) -> str:
    """The cautions that a unit asks for, each with its source.

    Args:
        unit: the unit

    Returns:
        A list; the tools' own manuals, the law of the place and licensed practice come before it.
    """
    woods = {line.part.wood for line in unit.lines}
    lines = [
        f"- {caution['text']} ({caution['source']})"
        for caution in _cautions()
        if not caution.get("woods") or woods & set(caution["woods"])
    ]
    lines.append("These are reminders; the tools' manuals, local codes and licensed practice come first.")
    return section("Cautions", "\n".join(wrapped(line, 2) for line in lines))
