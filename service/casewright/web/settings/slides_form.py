"""The table of slides as a form: one model after the other, as its maker's sheet says."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from casewright.measure.lengths import LengthUnit, write_length
from casewright.measure.shares import share_of_percent
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.asked.slide_spec import MOST_SLIDES, OwnSlide
from casewright.web.settings.forms import Draft, FigureReader, in_percent, plain_number
from casewright.web.settings.rate_form import rows_of

BLANK = 1
SEPARATOR = ";"
KINDS = (("side-mount", "side-mount"), ("under-mount", "under-mount"))


class Typing(StrEnum):
    """How a field of a slide is typed."""

    TEXT = "text"
    KIND = "kind"
    LENGTH = "length"
    LENGTHS = "lengths"
    TRAVEL = "travel"
    POUNDS = "pounds"


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One thing that a maker's sheet says of a slide.

    Attributes:
        key: its name in a shop file, and the end of its field's name
        label: what it is called
        kind: how it is typed
        hint: a line under the label
        needed: what to do where it is empty; empty where it may be left out
    """

    key: str
    label: str
    kind: Typing = Typing.LENGTH
    hint: str = ""
    needed: str = ""


COLUMNS = (
    Column(
        key="name",
        label="What you call it",
        kind=Typing.TEXT,
        needed="Say what you call it, such as side-mount, full travel.",
    ),
    Column(key="kind", label="Mounted", kind=Typing.KIND),
    Column(
        key="space_least",
        label="Side space, least",
        hint="At each side of the box.",
        needed="Write the least side space of the sheet, such as 12.9 mm.",
    ),
    Column(
        key="space_most",
        label="Side space, most",
        needed="Write the most side space of the sheet, such as 13.2 mm.",
    ),
    Column(
        key="lengths",
        label="Lengths",
        kind=Typing.LENGTHS,
        hint="Each set apart by a semicolon.",
        needed="Write the lengths that it is sold in, such as 16; 18; 20.",
    ),
    Column(
        key="behind",
        label="Left behind it",
        hint="Of the inside depth, at least.",
        needed="Write what must be left behind it, such as 1/8.",
    ),
    Column(
        key="travel",
        label="Opens",
        kind=Typing.TRAVEL,
        hint="Per cent of its length, or a length.",
        needed="Write how far it opens, such as 100 % or 450 mm.",
    ),
    Column(key="load_lb", label="Carries, lb a pair", kind=Typing.POUNDS),
    Column(
        key="headroom",
        label="Box lower than its opening by",
        needed="Write by how much the box is lower, such as 3/4.",
    ),
    Column(
        key="under",
        label="Of that, under the box",
        needed="Write what lies under the box, such as 1/4.",
    ),
    Column(key="tall", label="Slide is tall", needed="Write how tall it is, such as 46 mm."),
    Column(key="weight_lb", label="Weighs, lb a foot of a pair", kind=Typing.POUNDS),
    Column(
        key="deduction",
        label="Inside width deduction",
        hint="Under-mount: opening less the box inside.",
    ),
    Column(key="side_most", label="Sides no thicker than", hint="Under-mount."),
    Column(key="recess", label="Bottom recess", hint="Under-mount: bottom above the sides’ edge."),
    Column(key="notch_width", label="Rear notch, wide", hint="Under-mount."),
    Column(key="notch_height", label="Rear notch, high", hint="Under-mount."),
    Column(key="pin_hole", label="Hook hole, across", hint="Under-mount: in the back, two."),
    Column(key="pin_in", label="Hook hole, from the side", hint="Its middle, from the inside face."),
    Column(key="pin_up", label="Hook hole, up", hint="Its middle, above the bottom’s underside."),
    Column(
        key="item",
        label="In the price list",
        kind=Typing.TEXT,
        needed="Write its name in the price list, such as slides.",
    ),
    Column(key="source", label="From which sheet", kind=Typing.TEXT, hint="Its number and date."),
)
OPTIONAL_ZERO = {"recess", "notch_width", "notch_height", "pin_hole", "pin_in", "pin_up"}
"""Sizes that are nothing where they are left out."""


def slide_values(spec: ShopSpec, unit: LengthUnit) -> dict[str, str]:
    """The fields of the form, from figures."""
    return {
        f"slide.{row}.{column.key}": _shown(slide, column, unit)
        for row, slide in enumerate(figures_of_spec(spec).slides, 1)
        for column in COLUMNS
    }


def _shown(slide: OwnSlide, column: Column, unit: LengthUnit) -> str:
    if column.kind is Typing.TRAVEL:
        if slide.travel is not None:
            return f"{in_percent(slide.travel)} %"
        return write_length(slide.travel_length or 0.0, unit)
    value: Any = getattr(slide, column.key)
    if value is None or (column.key in OPTIONAL_ZERO and not value):
        return ""
    if column.kind is Typing.LENGTHS:
        return f"{SEPARATOR} ".join(write_length(each, unit) for each in value)
    if column.kind is Typing.LENGTH:
        return write_length(value, unit)
    return plain_number(value) if column.kind is Typing.POUNDS else str(value)


def slide_rows(values: Mapping[str, str], blank: int = BLANK) -> range:
    """The models to show, and an empty one behind them; how a model is mounted is never empty."""
    found = rows_of(
        {name: text for name, text in values.items() if not name.endswith(".kind")}, "slide", blank
    )
    return range(found.start, min(found.stop, MOST_SLIDES + 1))


@cache
def field_names() -> Mapping[str, str]:
    """What each field is called in a list of faults."""
    return {
        f"slide.{row}.{column.key}": f"Slide {row}, {column.label.lower()}"
        for row in range(1, MOST_SLIDES + 1)
        for column in COLUMNS
    }


def read_slides(read: FigureReader, spec: ShopSpec, unit: LengthUnit) -> Draft:
    """The changes that the form asks for."""
    draft, held = Draft(), figures_of_spec(spec).slides
    found: list[dict[str, Any]] = []
    for row in slide_rows(read.typed.values(), 0):
        if read.ticked(f"slide.{row}.out") or not _is_begun(read, row):
            continue
        place = f"slides[{len(found) + 1}]"
        found.append(_read_slide(read, row, unit))
        draft.fields |= {f"{place}.{column.key}": f"slide.{row}.{column.key}" for column in COLUMNS}
        draft.fields |= {place: f"slide.{row}.name", f"{place}.travel_length": f"slide.{row}.travel"}
    draft.fields["slides"] = "slide.1.name"
    if found != [_as_read(each) for each in held]:
        draft.spec["slides"] = [_with_ground(each, held) for each in found] or None
    return draft


def _with_ground(found: dict[str, Any], held: Iterable[OwnSlide]) -> dict[str, Any]:
    """A slide with the ground on which it stands, where nothing of it was changed."""
    basis = next((each.basis for each in held if _as_read(each) == found), "")
    return found | ({"basis": basis} if basis else {})


def _is_begun(read: FigureReader, row: int) -> bool:
    return any(
        read.typed.get(f"slide.{row}.{column.key}").strip()
        for column in COLUMNS
        if column.kind is not Typing.KIND
    )


def _as_read(slide: OwnSlide) -> dict[str, Any]:
    """A slide of the table in the form in which it is read from the fields."""
    held = slide.model_dump(exclude_none=True, exclude={"basis"})
    held["lengths"] = list(held["lengths"])
    return {key: value for key, value in held.items() if key not in OPTIONAL_ZERO or value}


def _read_slide(read: FigureReader, row: int, unit: LengthUnit) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for column in COLUMNS:
        name = f"slide.{row}.{column.key}"
        if column.needed and not read.typed.get(name).strip():
            read.fault(name, column.needed)
            continue
        found |= _read_column(read, column, name, unit)
    return found


def _read_column(read: FigureReader, column: Column, name: str, unit: LengthUnit) -> dict[str, Any]:
    match column.kind:
        case Typing.TEXT:
            return {column.key: read.line(name, most=200 if column.key == "source" else 80)}
        case Typing.KIND:
            return {column.key: read.choice(name, [value for value, _ in KINDS], default="side-mount")}
        case Typing.POUNDS:
            least = 0.0 if column.key == "weight_lb" else 1.0
            return {column.key: read.number(name, least=least, most=2000, example="100", unit=" lb")}
        case Typing.TRAVEL:
            return _travel(read, name, unit)
        case Typing.LENGTHS:
            return {column.key: _lengths(read, name, unit)}
    length = read.length(name, unit, needed=False)
    return {} if length is None else {column.key: length}


def _travel(read: FigureReader, name: str, unit: LengthUnit) -> dict[str, Any]:
    typed = read.typed.get(name).strip()
    if typed.endswith("%"):
        percent = read.number(name, least=10, most=120, example="100 %", unit=" %")
        return {"travel": share_of_percent(percent)}
    length = read.length(name, unit)
    return {} if length is None else {"travel_length": length}


def _lengths(read: FigureReader, name: str, unit: LengthUnit) -> list[float]:
    """Every length of a list, the shortest first."""
    found: set[float] = set()
    for word in filter(None, map(str.strip, read.typed.get(name).split(SEPARATOR))):
        part = FigureReader(type(read.typed)(((name, word),)))
        length = part.length(name, unit)
        if length is None:
            read.fault(name, part.faults[name])
        else:
            found.add(length)
    return sorted(found)
