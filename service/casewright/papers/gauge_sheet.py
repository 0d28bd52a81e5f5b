"""The sheet before the joint cards: every gauge that is set, once, with the parts that it serves."""

from collections.abc import Iterable, Iterator
from typing import Any

from casewright.joinery.tools_kept import KEPT_RULES
from casewright.measure.findings import Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.papers.cleaning import name, words
from casewright.papers.writing import Writing
from casewright.pieces.asked.fields import Spec
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.gauges_to_set import gauges_to_set

RULE = (
    "Sides that differ by {} at most where they are rabbeted share a setting, that of the thinnest of them, "
    "so that none sinks below the end of the front; the others stand proud by as much and are planed flush."
)
"""Source: common practice."""

TOGETHER = "\u00a0"
"""A space at which no line is broken."""


class GaugeLine(Spec):
    """One setting of one gauge."""

    unit_code: str
    name: str
    value_in: float
    wrong_in: tuple[float, ...] = ()
    wrong_text: str = ""
    serves: tuple[str, ...]
    unmeasured: tuple[str, ...] = ()
    where: str


def gauge_lines(unit: Construction, shown: LengthUnit) -> Iterator[GaugeLine]:
    """The gauges of a unit as they are kept.

    Args:
        unit: the unit, worked out
        shown: in which their words are kept

    Yields:
        Each setting once.
    """
    for each in gauges_to_set(unit):
        yield GaugeLine(
            unit_code=unit.spec.code,
            name=each.name,
            value_in=each.setting,
            wrong_in=each.wrong,
            wrong_text=in_unit(each.wrong_text, shown),
            serves=each.serves,
            unmeasured=each.unmeasured,
            where=each.where,
        )


def too_few_to_keep(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    """In which order gauges and dividers are used again, where the shop has too few to keep them set.

    Args:
        unit: the unit, worked out
        shown: in which sizes are said

    Yields:
        For gauges and for dividers a sentence, where the rack holds fewer than are set.
    """
    for found in unit.findings:
        if found.rule in KEPT_RULES and found.verdict is not Verdict.PASS:
            where = found.about or unit.spec.code
            yield f"{where}: {in_unit(found.message, shown)} {in_unit(found.remedy, shown)}"


def gauge_sheet_data(lines: Iterable[GaugeLine], writing: Writing) -> list[dict[str, Any]]:
    """The gauges as they are read, on paper and on a page.

    Args:
        lines: the gauges as they are kept
        writing: the unit in which they are read

    Returns:
        For each its setting, what is struck out, the parts that it serves and those not measured yet.
    """
    return [
        {
            "unit": name(line.unit_code, 20),
            "name": name(line.name),
            "value": writing.size(line.value_in),
            "other": _other(line.value_in, writing),
            "wrong": [writing.size(size) for size in line.wrong_in],
            "wrong_text": words(line.wrong_text),
            "serves": words(parts_text(line.serves)),
            "count": len(line.serves),
            "unmeasured": words(_unmeasured(line)),
            "where": words(line.where),
        }
        for line in lines
    ]


def _other(inches: float, writing: Writing) -> str:
    """The setting in the other unit; one that was rounded by the caliper, too."""
    other = writing.other(inches)
    if writing.size(inches).startswith("≈"):
        return f"{writing.fine(inches)} {writing.unit.value} · {other}"
    return other


def _unmeasured(line: GaugeLine) -> str:
    if not line.unmeasured:
        return ""
    if len(line.unmeasured) == len(line.serves):
        return "None of them is measured yet: set as drawn."
    return f"Not measured yet, set as drawn: {parts_text(line.unmeasured)}."


def parts_text(codes: Iterable[str]) -> str:
    """Parts by their codes; of one drawer together, as `A-R1-1-SL SR`.

    Args:
        codes: the codes of the parts

    Returns:
        The drawers in the order of their first parts, with a comma between them.
    """
    found: dict[str, list[str]] = {}
    for code in codes:
        where, _, mark = code.rpartition("-")
        found.setdefault(where, []).append(mark)
    return ", ".join(f"{where}-{TOGETHER.join(marks)}" for where, marks in found.items())
