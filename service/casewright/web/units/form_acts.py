"""What the buttons within a unit's form do: a row more, fewer or elsewhere, or the other unit."""

import re
from collections.abc import Mapping

from casewright.measure.lengths import LengthError, LengthUnit, parse_length, write_length
from casewright.web.units.fields import Kind, row_name
from casewright.web.units.form import MOST_ROWS, ROW, SEPARATOR, asked_fields, row_count, unit_in
from casewright.web.units.groups import ROW_FIELDS

ACT = re.compile(r"row-(remove|up|down)-([1-9][0-9]?)")


def acted(values: Mapping[str, str], act: str) -> dict[str, str]:
    """The form after one of its own buttons: a row more, fewer or elsewhere, or the other unit.

    Args:
        values: the text of every field
        act: such as `row-add`, `row-remove-2`, `row-up-3`, `unit-mm`; anything else changes nothing
    """
    if act in {"unit-in", "unit-mm"}:
        return _in_unit(values, LengthUnit(act.removeprefix("unit-")))
    rows = [_row(values, number) for number in range(1, row_count(values) + 1)]
    found = ACT.fullmatch(act)
    if act == "row-add" and len(rows) < MOST_ROWS:
        rows.append({each.name: "" for each in ROW_FIELDS})
    elif found and 1 <= int(found[2]) <= len(rows):
        place = int(found[2]) - 1
        row = rows.pop(place)
        if found[1] != "remove" or not rows:
            there = place + {"up": -1, "down": 1}.get(found[1], 0)
            rows.insert(min(max(there, 0), len(rows)), row)
    left = {name: value for name, value in values.items() if not ROW.fullmatch(name)}
    for number, row in enumerate(rows, start=1):
        left |= {row_name(number, each): row[each.name] for each in ROW_FIELDS}
    return left


def _row(values: Mapping[str, str], number: int) -> dict[str, str]:
    return {each.name: values.get(row_name(number, each), "") for each in ROW_FIELDS}


def _in_unit(values: Mapping[str, str], unit: LengthUnit) -> dict[str, str]:
    """The same sizes, written in the other unit; what cannot be read stays as it was typed."""
    before, changed = unit_in(values), dict(values) | {"unit": unit.value}
    for each in asked_fields(row_count(values)):
        text = values.get(each.name, "")
        if each.kind is Kind.SIZE:
            changed[each.name] = _converted(text, before, unit)
        elif each.kind is Kind.SIZES and text.strip():
            parts = (part.strip() for part in text.split(SEPARATOR))
            changed[each.name] = f"{SEPARATOR} ".join(_converted(part, before, unit) for part in parts)
    return changed


def _converted(text: str, before: LengthUnit, after: LengthUnit) -> str:
    try:
        return write_length(float(parse_length(text, before)), after) if text.strip() else text
    except LengthError:
        return text
