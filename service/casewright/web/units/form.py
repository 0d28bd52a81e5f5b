"""A unit's form: from choices to the text of its fields and back, every problem beside its field."""

import json
import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import accumulate
from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit, say
from casewright.pieces.asked.edits import codes_of
from casewright.pieces.asked.reading import CannotRead, read_as
from casewright.pieces.asked.sentences import Problem
from casewright.pieces.asked.spec import UnitSpec
from casewright.web.units.counting import applies, counts
from casewright.web.units.drawer_groups import SLIPS
from casewright.web.units.fields import Asked, Kind
from casewright.web.units.grain_group import WISHES, is_wish, put_wishes, wish_lines
from casewright.web.units.groups import HEIGHTS, SINGLE
from casewright.web.units.lines import month_lines, month_of
from casewright.web.units.measured_text import (
    CELL,
    HOW,
    MEASURED,
    folded,
    measured_lines,
    measured_of,
    place_in_form,
)
from casewright.web.units.rows import (
    REST,
    SEPARATOR,
    Shape,
    all_lines,
    empty_rows,
    field_of,
    line_fields,
    shape_in,
    shape_of,
    typed_rows,
)
from casewright.web.units.shell_groups import BASE, CLEAT, NO_BASE, USUAL_BASE

MOST_DRAWERS = 150
"""Drawers of one unit that its pages work out: more than any one piece has that can still be carried in. The
time grows with their number: about half a second for these, seconds for 30 rows of 12, at every pause in
typing. The core has no such limit."""
WHOLE = "all"
"""The name under which a problem stands that belongs to no single field."""
ROW = re.compile(r"(rows\.\d+(?:\.across\.\d+\.rows\.\d+)*)(\.widths\.\d+)?")
"""The path of a row, or of one of its widths."""
ROW_WORDS = re.compile(r"\brow \d+(, (column|row) \d+)*")
"""A row or a column as the core speaks of it."""
OPENING = re.compile(r"\bR([1-9]\d?(?:-[1-9]\d?)+)\b")
"""The code of an opening in a sentence of the core."""
PLAIN_WORDS = (
    ("temperature_f", "°F"),
    ("temperature_c", "°C"),
    ("; leave one width out (null)", "; write rest"),
)
"""Words of the file as the form says them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """What was typed into the form of a unit.

    Attributes:
        values: the text of every field
        faults: a sentence for each field that cannot be used
        spec: the choices; None where there is a fault
    """

    values: dict[str, str]
    faults: dict[str, str] = field(default_factory=dict)
    spec: UnitSpec | None = None

    @property
    def unit(self) -> LengthUnit:
        """The unit of bare numbers."""
        return unit_in(self.values)


def unit_in(values: Mapping[str, str]) -> LengthUnit:
    """The unit of bare numbers in a form."""
    return LengthUnit.MILLIMETRE if values.get("unit") == LengthUnit.MILLIMETRE else LengthUnit.INCH


def asked_fields(shape: Shape) -> Iterator[Asked]:
    """Every field of a form, under the name that it has there."""
    yield from SINGLE
    for line in all_lines(shape):
        yield from line_fields(line)


def values_of(text: str) -> dict[str, str]:
    """What stands in the fields of a unit's form.

    Args:
        text: the choices, as JSON text
    """
    data = json.loads(text)
    values = {"unit": data.get("unit", LengthUnit.INCH.value)}
    for each in asked_fields(shape_in(data["rows"])):
        values[each.name] = _written(data, each)
    return values


def _written(data: Mapping[str, Any], asked: Asked) -> str:
    if asked.name in OWN_WAY:
        return OWN_WAY[asked.name](data)
    found = _at(data, asked.name)
    if asked.kind is Kind.TICK:
        return "1" if (asked.usual if found is None else found) else ""
    if asked.kind is Kind.SIZES:
        return f"{SEPARATOR} ".join(each or "rest" for each in found or ())
    if found is None:
        is_listed = asked.kind is Kind.CHOICE and any(asked.usual == value for value, _ in asked.choices)
        return str(asked.usual) if is_listed else ""
    return f"{found:g}" if isinstance(found, float) else str(found)


def _height_name(data: Mapping[str, Any]) -> str:
    return next((name for name in HEIGHTS if name in data["body"]), "overall_height")


def _base_kind(data: Mapping[str, Any]) -> str:
    base = data.get("base", {})
    return NO_BASE if base is None else str(base.get("kind", USUAL_BASE))


OWN_WAY: dict[str, Callable[[Mapping[str, Any]], str]] = {
    "body.height_as": _height_name,
    "body.height": lambda data: str(data["body"].get(_height_name(data), "")),
    BASE: _base_kind,
    SLIPS: lambda data: "" if _at(data, SLIPS) is None else "1",
    CLEAT: lambda data: "" if _at(data, CLEAT) is None else "1",
    "measured": measured_lines,
    "season.months": month_lines,
    WISHES: wish_lines,
}
"""Fields that do not stand in the file as they stand in the form."""


def _at(data: Any, path: str) -> Any:
    """What a file holds at a path; None where it holds nothing."""
    for step in path.split("."):
        if data is None:
            return None
        data = data[int(step) - 1] if isinstance(data, list) else data.get(step)
    return data


def read_values(values: Mapping[str, str], held: UnitSpec | None = None) -> Read:
    """The choices that a form describes.

    Args:
        values: the text of every field
        held: the unit as it is, whose mark is kept
    """
    kept = folded(values)
    if not shape_of(kept):
        kept["rows.1.columns"] = ""
    data = _data(kept)
    if held is not None:
        data["code"] = held.code
    try:
        spec = read_as(UnitSpec, data)
    except CannotRead as refused:
        return Read(values=kept, faults=faults_of(refused.problems, kept))
    number, fault = too_many_drawers(spec)
    if fault:
        return Read(values=kept, faults={_named(kept, f"rows.{number}.columns"): fault})
    return Read(values=kept, spec=spec)


def too_many_drawers(spec: UnitSpec) -> tuple[int, str]:
    """The row, counted from one, with which a unit has more drawers than its pages work out, and what to do.

    Returns:
        Zero and nothing where there are few enough.
    """
    counted = list(accumulate(row.openings for row in spec.rows))
    number = next((at for at, count in enumerate(counted, start=1) if count > MOST_DRAWERS), 0)
    if not number:
        return 0, ""
    asked = f"The rows together ask for {counted[-1]} drawers; one unit has at most {MOST_DRAWERS}."
    return number, f"{asked} Make two units of it, each with some of the drawers."


def _data(values: dict[str, str]) -> dict[str, Any]:
    shape = shape_of(values)
    data: dict[str, Any] = {"casewright": 1, "unit": unit_in(values).value, "body": {}, "woods": {}}
    data["rows"] = empty_rows(shape)
    for asked in asked_fields(shape):
        text = values.get(asked.name, "").strip()
        if asked.name == "body.height":
            if text:
                data["body"][_height_as(values)] = text
        elif not applies(asked, values):
            continue
        elif asked.name in PUT_OWN_WAY:
            PUT_OWN_WAY[asked.name](data, text)
        elif asked.kind is Kind.LINES:
            data |= measured_of(text, unit_in(values))
        elif asked.name != "body.height_as" and counts(asked, values):
            _put(data, asked, text)
    bottom = data.get("drawers", {}).get("bottom")
    if bottom:
        bottom.setdefault("kind", "solid")
    make = data.get("doors", {}).get("make")
    if make:
        make.setdefault("kind", "frame-and-panel")
    if data.get("graduation"):
        data["graduation"].setdefault("rule", "step")
    return data


def _put_base(data: dict[str, Any], text: str) -> None:
    if text == NO_BASE:
        data["base"] = None
    elif text and (text != USUAL_BASE or data.get("construction")):
        # What stands for a base that is left out is a plinth under a carcase, and none under a crate.
        data.setdefault("base", {})["kind"] = text


def _put_months(data: dict[str, Any], text: str) -> None:
    if lines := [line for line in map(str.strip, text.splitlines()) if line]:
        data.setdefault("season", {})["months"] = lines


def _put_slips(data: dict[str, Any], text: str) -> None:
    if text:
        data.setdefault("drawers", {}).setdefault("groove", {})["slips"] = {}


def _put_cleat(data: dict[str, Any], text: str) -> None:
    if text:
        data["cleat"] = {}


PUT_OWN_WAY: dict[str, Callable[[dict[str, Any], str], None]] = {
    BASE: _put_base,
    "season.months": _put_months,
    WISHES: put_wishes,
    SLIPS: _put_slips,
    CLEAT: _put_cleat,
}
"""Fields that go into the file in a way of their own."""


def _height_as(values: Mapping[str, str]) -> str:
    chosen = values.get("body.height_as", "")
    return chosen if chosen in HEIGHTS else "overall_height"


def _put(data: dict[str, Any], asked: Asked, text: str) -> None:
    """Puts one field into the file's data, unless it says what holds anyway."""
    value: Any = text
    if asked.kind is Kind.TICK:
        value = bool(text)
        if value == asked.usual:
            return
    elif not text or (asked.kind is Kind.CHOICE and asked.usual is not None and text == str(asked.usual)):
        return
    elif asked.kind is Kind.SIZES:
        parts = [part.strip() for part in text.split(SEPARATOR)]
        value = [None if part.casefold() in REST else part for part in parts]
    elif asked.kind is Kind.WHOLE and re.fullmatch(r"[0-9]{1,9}", text):
        value = int(text)
    elif asked.kind is Kind.NUMBER and re.fullmatch(r"[0-9]{0,9}[.,]?[0-9]{0,9}", text):
        value = _number(text)
    *way, last = asked.name.split(".")
    place: Any = data
    for step in way:
        place = place[int(step) - 1] if isinstance(place, list) else place.setdefault(step, {})
    place[last] = value


def _number(text: str) -> Any:
    try:
        return float(text.replace(",", "."))
    except ValueError:
        return text


def faults_of(problems: tuple[Problem, ...], values: Mapping[str, str]) -> dict[str, str]:
    """A sentence for each field that cannot be used, in the order of the form."""
    order = [each.name for each in asked_fields(shape_of(values))]
    unit = unit_in(values)
    found: dict[str, str] = {}
    if not values.get("body.height", "").strip():
        found["body.height"] = say("This is missing; write a height, such as {:bare}.", 44.375).in_unit(unit)
    for each in problems:
        name, said = place_of(each.field, order), sentence(each.message)
        if name == MEASURED:
            name, said = measured_fault(each, openings_of(values), unit)
        found.setdefault(name, f"{month_of(each.field)}{said}")
    cells = [name for name in found if CELL.fullmatch(name)]
    return {name: found[name] for name in (WHOLE, *order, *cells) if name in found}


def openings_of(values: Mapping[str, str]) -> tuple[str, ...]:
    """The code of every opening of a form, from the top."""
    return codes_of(typed_rows(values))


def measured_fault(problem: Problem, openings: Collection[str], unit: LengthUnit) -> tuple[str, str]:
    """What is wrong with a measured size, and beside which field: its own, or that of the lines."""
    name, size = place_in_form(problem.field, openings)
    if not problem.message.casefold().startswith("this key is not known"):
        return name, sentence(f"{size}: {problem.message}" if size else problem.message)
    lone = " " not in size
    wrong = f"“{size}” is not followed by a size." if lone else f"“{size}”: no such size is measured."
    kind = "openings" if problem.field.startswith("measured.openings.") else "parts"
    return name, f"{wrong} {in_unit(HOW[kind], unit)}"


def place_of(path: str, order: list[str]) -> str:
    """The name of the field that a problem's path means."""
    name = re.sub(r"\[(\d+)\]", r".\1", path)
    if name in {"body", *(f"body.{each}" for each in HEIGHTS)}:
        return "body.height"
    if row := ROW.fullmatch(name):
        name = f"{row[1]}.widths"
    if name.endswith(".widths") and name not in order:
        name = f"{name.removesuffix('widths')}across.1.width"  # they are spelled out
    if is_wish(name):
        return WISHES if WISHES in order else WHOLE
    if name == "drawers.bottom":
        name = "drawers.bottom.sheet"
    while name and name not in order:
        below = next((each for each in order if each.startswith(f"{name}.")), "")
        if below:
            return below
        name = name.rpartition(".")[0]
    return name or WHOLE


def refusal_fault(message: str, values: Mapping[str, str]) -> dict[str, str]:
    """What the core says against choices that can be read: beside the row it names, else for the whole."""
    path, colon, rest = message.partition(": ")
    if path.startswith("measured."):
        name, size = place_in_form(path, openings_of(values))
        return {name: sentence(f"{size}: {rest}" if size else rest)}
    if colon and (place := place_of(path, [each.name for each in asked_fields(shape_of(values))])) != WHOLE:
        return {place: sentence(rest)}
    code = OPENING.search(message)
    if code and (name := field_of(shape_of(values), code[1])):
        return {name: sentence(message)}
    if row := ROW_WORDS.search(message):
        name = (
            row[0].replace(", ", ".").replace(" ", ".").replace("row.", "rows.").replace("column.", "across.")
        )
        inner = f"{name}.rows.1" if ROW.fullmatch(f"{name}.rows.1") else name
        return {_named(values, f"{inner}.{_about(message.replace(row[0], ''))}"): sentence(message)}
    return {WHOLE: sentence(message)}


def _named(values: Mapping[str, str], name: str) -> str:
    """The field of a name, or the nearest that the form has."""
    return place_of(name, [each.name for each in asked_fields(shape_of(values))])


def _about(message: str) -> str:
    """The field of a row that a sentence is about."""
    if "contents" in message:
        return "contents"
    return "widths" if "width" in message or "column" in message else "height"


def sentence(message: str) -> str:
    """A message of the core as a sentence on a page, with the quotation marks of print."""
    text = re.sub(r'"([^"]*)"', r"“\1”", message.strip())
    for written, said in PLAIN_WORDS:
        text = text.replace(written, said)
    text = text[:1].upper() + text[1:]
    return text if text.endswith((".", "!", "?", "…")) else f"{text}."
