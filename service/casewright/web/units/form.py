"""A unit's form: from choices to the text of its fields and back, every problem beside its field."""

import json
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import accumulate
from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit, say
from casewright.pieces.asked.reading import CannotRead, read_as
from casewright.pieces.asked.sentences import Problem
from casewright.pieces.asked.spec import UnitSpec
from casewright.web.units.drawer_groups import SLIPS
from casewright.web.units.fields import Asked, Kind
from casewright.web.units.grain_group import WISHES, is_wish, put_wishes, wish_lines
from casewright.web.units.groups import BUILT_AS, HEIGHTS, RULE, SINGLE
from casewright.web.units.lines import MEASURED_LINES, measured_lines, measured_of, month_lines, month_of
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
    kept = dict(values)
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
            data |= measured_of(text)
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


def counts(asked: Asked, values: Mapping[str, str]) -> bool:
    """Whether a field counts with what is chosen elsewhere in the form."""
    if asked.name.endswith(".contents"):  # of a row: whichever rule of the form asks for it
        return any(name.endswith(RULE) and text == "contents" for name, text in values.items())
    return applies(asked, values) and (not asked.when or _is_chosen(asked.when, values))


def applies(asked: Asked, values: Mapping[str, str]) -> bool:
    """Whether a field belongs to what the piece is built as."""
    built = BUILT_AS.get(asked.name)
    return built is None or _is_chosen(built, values)


def _is_chosen(when: tuple[str, ...], values: Mapping[str, str]) -> bool:
    switch, *by = when
    if switch.startswith("rows."):  # a column's own rule, or a size without which there is no notch
        text = values.get(switch, "").strip()
        return text in by if by else bool(text)
    if switch in (SLIPS, CLEAT):
        return bool(values.get(switch, "").strip())
    usual = next(each.usual for each in SINGLE if each.name == switch)
    return (values.get(switch, "").strip() or usual) in by


def is_replaced(asked: Asked, values: Mapping[str, str]) -> bool:
    """Whether an end of the year, left empty, follows from a year that is given elsewhere in the form."""
    if values.get(asked.name, "").strip():
        return False
    year = any(values.get(f"season.{name}", "").strip() for name in ("climate", "months"))
    fitted = bool(values.get("season.fitted", "").strip())
    return (year and asked.name.startswith(("season.driest.", "season.wettest."))) or (
        fitted and asked.name.startswith("season.shop.")
    )


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
        name = place_of(each.field, order)
        said = measured_fault(each, unit) if name == "measured" else sentence(each.message)
        found.setdefault(name, f"{month_of(each.field)}{said}")
    return {name: found[name] for name in (WHOLE, *order) if name in found}


def measured_fault(problem: Problem, unit: LengthUnit) -> str:
    """What is wrong with a line of measured sizes, in the words in which such a line is written."""
    _, kind, code, name = (*problem.field.split(".", 3), "", "", "")[:4]
    if not problem.message.casefold().startswith("this key is not known"):
        return sentence(f"{code} {name}: {problem.message}" if name else problem.message)
    wrong = f"“{code}” is no line with a size." if not name else f"“{code} {name}”: no such size is measured."
    how = MEASURED_LINES["openings" if kind == "openings" else "parts"]
    return f"{wrong} {in_unit(how, unit)}"


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
    if colon and (place := place_of(path, [each.name for each in asked_fields(shape_of(values))])) != WHOLE:
        return {place: sentence(rest)}
    if message.startswith("measured."):
        return {"measured": sentence(message.removeprefix("measured."))}
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
