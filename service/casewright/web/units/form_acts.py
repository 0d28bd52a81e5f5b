"""What the buttons within a unit's form do: its rows and openings parted otherwise, or the other unit."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from casewright.measure.lengths import LengthError, LengthUnit, parse_length, write_length
from casewright.pieces.asked import edits
from casewright.pieces.asked.edit_change import CannotEdit, Edited, Path, path_of
from casewright.web.units.fields import Kind
from casewright.web.units.follows import FOLLOWS, followed_text
from casewright.web.units.form import asked_fields, unit_in
from casewright.web.units.measured_text import MEASURED, Entry, entries, moved_lines, text_of
from casewright.web.units.rows import SEPARATOR, Values, shape_of, typed_rows, with_rows

OF_A_ROW = re.compile(r"(row|edit)-([a-z]+)-([1-9][0-9]?(?:-[1-9][0-9]?)*)")
Rows = list[dict[str, Any]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Acted:
    """The form after a button.

    Attributes:
        values: the text of every field
        note: what went with it, or why it could not be done; empty where nothing is to be said
        at: the opening that is chosen then, such as `1-2`
    """

    values: Values
    note: str = ""
    at: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pressed:
    """What was pressed.

    Attributes:
        act: the button: `row-add`, `row-up-3`, `unit-mm`; `edit-across` for the opening that is chosen
        at: the opening that is chosen, such as `1-2`
        into: into how many it is to be split
        to: the size that it is to have
    """

    act: str
    at: str = ""
    into: str = ""
    to: str = ""

    @property
    def parts(self) -> int:
        """Into how many; two where nothing can be read."""
        text = self.into.strip()
        return int(text) if text.isascii() and text.isdecimal() and len(text) < 3 else 2


EDITS: dict[str, Callable[[Rows, Path, Pressed], Edited]] = {
    "above": lambda rows, path, _: edits.add_row(rows, path, below=False),
    "below": lambda rows, path, _: edits.add_row(rows, path, below=True),
    "remove": lambda rows, path, _: edits.remove_row(rows, path),
    "up": lambda rows, path, _: edits.move_row(rows, path, -1),
    "down": lambda rows, path, _: edits.move_row(rows, path, 1),
    "across": lambda rows, path, pressed: edits.split_across(rows, path, pressed.parts),
    "rows": lambda rows, path, pressed: edits.split_down(rows, path, pressed.parts),
    "join": lambda rows, path, _: edits.merge_across(rows, path),
    "one": lambda rows, path, _: edits.merge_rows(rows, path),
    "drawer": lambda rows, path, _: edits.hold(rows, path, "drawer"),
    "doors": lambda rows, path, _: edits.hold(rows, path, "doors"),
    "open": lambda rows, path, _: edits.hold(rows, path, "open"),
    "spell": lambda rows, path, _: edits.spell_out(rows, path),
    "height": lambda rows, path, pressed: edits.set_size(rows, path, "height", pressed.to.strip()),
    "width": lambda rows, path, pressed: edits.set_size(rows, path, "width", pressed.to.strip()),
}
"""What can be done to an opening or its row, by the word in the button's name."""


def acted(values: Mapping[str, str], pressed: Pressed) -> Acted:
    """The form after one of its own buttons; anything else changes nothing.

    Args:
        values: the text of every field
        pressed: the button, and what it works on
    """
    act = pressed.act
    if act in {"unit-in", "unit-mm"}:
        return Acted(values=_in_unit(values, LengthUnit(act.removeprefix("unit-"))), at=pressed.at)
    rows = typed_rows(values)
    if act == "row-add":
        act = f"row-below-{len(rows)}"
    elif act.startswith("edit-") and act.count("-") == 1:
        act = f"{act}-{pressed.at}"
    found = OF_A_ROW.fullmatch(act)
    if found is None or found[2] not in EDITS:
        missing = "Choose an opening first." if act.startswith("edit-") else ""
        return Acted(values=dict(values), note=missing, at=pressed.at)
    try:
        edited = EDITS[found[2]](rows, path_of(found[3]), pressed)
    except CannotEdit as refused:
        return Acted(values=dict(values), note=str(refused), at=pressed.at)
    made = with_rows(values, edited.rows)
    measured, gone = moved_lines(values.get(MEASURED, ""), edited.moved)
    made[MEASURED] = measured
    made[FOLLOWS] = followed_text(values.get(FOLLOWS, ""), edited)
    return Acted(values=made, note=_gone(gone), at=_chosen(edited, pressed.at))


def _gone(lines: tuple[str, ...]) -> str:
    """What was measured of openings that are there no more."""
    return f"What was measured there went with it: {'; '.join(lines)}. Undo brings it back." if lines else ""


def _chosen(edited: Edited, at: str) -> str:
    """The opening that is chosen after a change: the same one, or the nearest that took its place."""
    there = edited.moved.get(f"R{at}")
    if there:
        return there.removeprefix("R")
    codes = [code.removeprefix("R") for code in edits.codes_of(edited.rows)]
    return at if at in codes else next((code for code in codes if code.startswith(at.rpartition("-")[0])), "")


def _in_unit(values: Mapping[str, str], unit: LengthUnit) -> Values:
    """The same sizes, written in the other unit; what cannot be read stays as it was typed."""
    before, changed = unit_in(values), dict(values) | {"unit": unit.value}
    for each in asked_fields(shape_of(values)):
        text = values.get(each.name, "")
        if each.kind is Kind.SIZE:
            changed[each.name] = _converted(text, before, unit)
        elif each.kind is Kind.SIZES and text.strip():
            parts = (part.strip() for part in text.split(SEPARATOR))
            changed[each.name] = f"{SEPARATOR} ".join(_converted(part, before, unit) for part in parts)
    if measured := values.get(MEASURED, ""):
        sizes = (Entry(each.code, each.name, _size(each, before, unit)) for each in entries(measured))
        changed[MEASURED] = text_of(sizes)
    return changed


def _size(each: Entry, before: LengthUnit, after: LengthUnit) -> str:
    """A measured size in the other unit; moisture has none."""
    return each.size if each.name == "moisture" else _converted(each.size, before, after)


def _converted(text: str, before: LengthUnit, after: LengthUnit) -> str:
    try:
        return write_length(float(parse_length(text, before)), after) if text.strip() else text
    except LengthError:
        return text
