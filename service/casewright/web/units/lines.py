"""Fields of a unit's form that hold one thing a line: sizes measured at the bench, and the months at home."""

import re
from collections.abc import Mapping
from typing import Any

from casewright.measure.saying import say
from casewright.wood.year import MONTHS

MEASURED_LINES = {
    "openings": say(
        "Write the opening, then height, width or depth, then the size, such as R5-1 height {:bare}.",
        8 + 15 / 32,
    ),
    "parts": say(
        "Write one line for each size: an opening, such as R5-1 height {:bare}, or a part, such as "
        "R5-1-SL thickness {:bare}. Of a part: thickness, width, length or in_rabbet.",
        *(8 + 15 / 32, 31 / 64),
    ),
}
"""How a line of measured sizes is written, by what it is about."""
OPENING = re.compile(r"[Rr]?[0-9]+(-[0-9]+)+")
"""The code of an opening: numbers all the way, through the columns that have rows of their own."""


def moved_lines(text: str, moved: Mapping[str, str | None]) -> tuple[str, tuple[str, ...]]:
    """Measured sizes under the codes that their openings have after a change.

    Args:
        text: one a line
        moved: every opening that there was, and where it is now; None for one that is gone

    Returns:
        The lines, and those that went with their openings.
    """
    kept, gone = [], []
    for line in text.splitlines():
        code, _, rest = line.strip().partition(" ")
        own = max(
            (each for each in moved if code == each or code.startswith(f"{each}-")), key=len, default=""
        )
        there = moved.get(own, own)
        if there is None:
            gone.append(line.strip())
        else:
            kept.append(f"{there}{code[len(own) :]} {rest}".strip() if own else line)
    return "\n".join(kept), tuple(gone)


def measured_lines(data: Mapping[str, Any]) -> str:
    """What was measured, one size a line."""
    held = data.get("measured", {})
    return "\n".join(
        f"{code} {name} {size}"
        for kind in ("openings", "parts")
        for code, sizes in held.get(kind, {}).items()
        for name, size in sizes.items()
    )


def measured_of(text: str) -> dict[str, Any]:
    """The measured sizes of a unit file, from one a line; what is none is left for the core to refuse."""
    found: dict[str, dict[str, dict[str, str]]] = {}
    for line in filter(None, map(str.strip, text.splitlines())):
        code, name, size = (*line.split(None, 2), "", "")[:3]
        is_meant = code.count("-") == 1 and name in ("height", "depth")  # a slip in an opening's code
        kind = "openings" if is_meant or OPENING.fullmatch(code) else "parts"
        found.setdefault(kind, {}).setdefault(code, {})[name] = size
    return {"measured": found} if found else {}


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
