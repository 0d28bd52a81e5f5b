"""The field of a unit's form that holds the home month by month, one month a line."""

import re
from collections.abc import Mapping
from typing import Any

from casewright.wood.year import MONTHS


def month_lines(data: Mapping[str, Any]) -> str:
    """The home month by month, one month a line."""
    held = data.get("season", {}).get("months") or ()
    return "\n".join(f"{month.value} {_air(air)}" for month, air in zip(MONTHS, held, strict=False))


def _air(air: Mapping[str, float]) -> str:
    if "moisture" in air:
        return f"{air['moisture']:g} %"
    scale = "F" if "temperature_f" in air else "C"
    return f"{air[f'temperature_{scale.lower()}']:g} °{scale} {air['humidity']:g} %"


def month_of(path: str) -> str:
    """Which of the twelve months a path means, as the beginning of a sentence; empty for none."""
    found = re.match(r"season\.months\[(\d+)\]", path)
    return f"{MONTHS[int(found[1]) - 1].value}: " if found and int(found[1]) <= len(MONTHS) else ""
