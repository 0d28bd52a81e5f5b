"""Sizes measured at the bench, as they are typed into a unit's form: opening by opening, or in lines.

In lines, several may stand in one: `R5-1 height 8-15/32, width 37-3/4; R5-1-SL thickness 31/64`. In the form
as it is kept, and through undo and redo, all of it is one text; on the page each opening has its own fields.
"""

import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from casewright.measure.lengths import LengthError, LengthUnit, parse_length
from casewright.measure.saying import say
from casewright.measure.typed import WORDS
from casewright.pieces.asked.measured import MeasuredOpening, MeasuredPart

MEASURED = "measured"
"""The field of the form that holds all of it."""
SIDES = tuple(MeasuredOpening.model_fields)
"""What is measured of an opening: height, width and depth."""
SIZES = frozenset((*SIDES, *MeasuredPart.model_fields))
HOW = {
    "openings": say(
        "Write the opening, then height, width or depth, then the size, such as R5-1 height {:bare}.",
        8 + 15 / 32,
    ),
    "parts": say(
        "Write an opening, such as R5-1 height {:bare}, or a part, such as R5-1-SL thickness {:bare}; "
        "several in one line with a comma between them. Of a part: thickness, width, length or in_rabbet.",
        *(8 + 15 / 32, 31 / 64),
    ),
}
"""How measured sizes are written, by what they are about."""
OPENING = re.compile(r"[Rr]?[0-9]+(-[0-9]+)+")
"""The code of an opening: numbers all the way, through the columns that have rows of their own."""
SHORT = re.compile(r"[0-9]+(-[0-9]+)+")
"""The same without its R."""
CODE = re.compile(r"[A-Za-z][A-Za-z0-9]*(-[A-Za-z0-9]+)*")
UNIT_WORDS = frozenset((*WORDS, "ft", "feet", "foot"))
CELL = re.compile(r"measured\.(R[0-9]{1,2}(?:-[0-9]{1,2}){1,7})\.(height|width|depth)")
"""The name of an opening's field."""
APART = re.compile(r";|,(?!\d)|(?<!\d),")
"""What stands between two sizes: a comma within a number may be a decimal one."""
METRIC = re.compile(r"[mM]\b|[cm]m\b", re.IGNORECASE)
Values = dict[str, str]


@dataclass(frozen=True, slots=True)
class Entry:
    """One measured size as it was typed: any of it may be empty, or make no sense."""

    code: str
    name: str = ""
    size: str = ""

    def __str__(self) -> str:
        return " ".join(filter(None, (self.code, self.name, self.size)))


def entries(text: str) -> Iterator[Entry]:
    """Every size that a text holds, one or several in a line.

    Args:
        text: such as `R5-1 height 8-15/32, width 37-3/4`
    """
    for line in text.splitlines():
        last: Entry | None = None
        for statement in APART.split(line):
            for words in _apart(statement.split()):
                last = _entry(words, last)
                yield last


def _apart(words: list[str]) -> Iterator[list[str]]:
    """Words parted where the next size begins without a sign before it: `R5-1 height 8 1/2 width 12`."""
    begun: list[str] = []
    for place, word in enumerate(words):
        has_size = any(each[0].isdigit() and not SHORT.fullmatch(each) for each in begun)
        if has_size and (word.casefold() in SIZES or _is_code(word, words[place + 1 :])):
            yield begun
            begun = []
        begun.append(word)
    if begun:
        yield begun


def _is_code(word: str, after: list[str]) -> bool:
    is_one = OPENING.fullmatch(word) if not CODE.fullmatch(word) else word.casefold() not in UNIT_WORDS
    return bool(is_one) and bool(after) and after[0].casefold() in SIZES


def _entry(words: list[str], last: Entry | None) -> Entry:
    """One size; what is left out is as of the one before it in the line."""
    first, rest = words[0], words[1:]
    if last is not None and last.name and first.casefold() in SIZES:
        return Entry(last.code, first.casefold(), " ".join(rest))
    if last is not None and last.size and first[0].isdigit() and not (SHORT.fullmatch(first) and rest):
        return Entry(last.code, last.name, " ".join(words))
    name = rest[0] if rest else ""
    known = name.casefold()
    return Entry(_code(first), known if known in SIZES else name, " ".join(rest[1:]))


def _code(word: str) -> str:
    """A code as the papers print it; of an opening the R may be left out."""
    code = f"R{word}" if SHORT.fullmatch(word) else word
    return f"{code[:1].upper()}{code[1:]}" if OPENING.fullmatch(code) else code


def text_of(found: Iterable[Entry]) -> str:
    """Sizes as the form keeps them: one a line."""
    return "\n".join(map(str, found))


def moved_lines(text: str, moved: Mapping[str, str | None]) -> tuple[str, tuple[str, ...]]:
    """Measured sizes under the codes that their openings have after a change.

    Args:
        text: what is typed
        moved: every opening that there was, and where it is now; None for one that is gone

    Returns:
        The sizes one a line, and those that went with their openings.
    """
    kept, gone = [], []
    for each in entries(text):
        own = max(
            (code for code in moved if each.code == code or each.code.startswith(f"{code}-")),
            key=len,
            default="",
        )
        there = moved.get(own, own)
        if there is None:
            gone.append(str(each))
        else:
            kept.append(Entry(f"{there}{each.code[len(own) :]}", each.name, each.size))
    return text_of(kept), tuple(gone)


def measured_lines(data: Mapping[str, Any]) -> str:
    """What a unit file holds of measured sizes, one a line."""
    held = data.get(MEASURED, {})
    return "\n".join(
        f"{code} {name} {size}"
        for kind in ("openings", "parts")
        for code, sizes in held.get(kind, {}).items()
        for name, size in sizes.items()
    )


def measured_of(text: str, unit: LengthUnit = LengthUnit.INCH) -> dict[str, Any]:
    """The measured sizes of a unit file; what is none is left for the core to refuse.

    Args:
        text: what is typed
        unit: the unit of bare numbers
    """
    found: dict[str, dict[str, dict[str, str]]] = {}
    for each in entries(text):
        is_meant = each.code.count("-") == 1 and each.name in (
            "height",
            "depth",
        )  # a slip in an opening's code
        kind = "openings" if is_meant or OPENING.fullmatch(each.code) else "parts"
        of = found.setdefault(kind, {}).setdefault(each.code, {})
        of[each.name] = f"{of[each.name]}; {each.size}" if each.name in of else each.size
    for sizes in found.get("openings", {}).values():
        for name, size in sizes.items():
            sizes[name] = least_of(size, unit)
    return {MEASURED: found} if found else {}


def several(text: str, unit: LengthUnit) -> list[str]:
    """The sizes that were measured at several places of one opening, as they were typed.

    Args:
        text: such as `8-15/32, 8-1/2`
        unit: the unit of bare numbers; in inches no comma is a decimal one
    """
    apart = re.compile("[;,]") if unit is LengthUnit.INCH and not METRIC.search(text) else APART
    return [each.strip() for each in apart.split(text) if each.strip()]


def least_of(text: str, unit: LengthUnit) -> str:
    """The least of them, which is what a drawer has to go through; one that is no size comes first.

    Args:
        text: one size, or several
        unit: the unit of bare numbers
    """
    sizes = several(text, unit)
    if len(sizes) < 2:
        return text
    read = []
    for each in sizes:
        try:
            read.append((parse_length(each, unit), each))
        except LengthError:
            return each
    return min(read)[1]


def spread(values: Mapping[str, str], openings: Collection[str]) -> Values:
    """A form with a field for each size of its openings, and the rest in its lines.

    Args:
        values: the text of every field, as the form is kept
        openings: the codes of its openings
    """
    cells: dict[str, list[str]] = {}
    rest = []
    for each in entries(values.get(MEASURED, "")):
        if each.code in openings and each.name in SIDES and each.size:
            cells.setdefault(f"{MEASURED}.{each.code}.{each.name}", []).append(each.size)
        else:
            rest.append(each)
    return {
        **values,
        MEASURED: text_of(rest),
        **{name: "; ".join(sizes) for name, sizes in cells.items()},
    }


def folded(values: Mapping[str, str]) -> Values:
    """A form as it is kept: what stands in the fields of its openings is with the rest, one size a line.

    Args:
        values: the text of every field, as it was sent
    """
    cells = {name: found for name in values if (found := CELL.fullmatch(name))}
    typed = {name: values[name].strip() for name in cells}
    lines = [f"{cells[name][1]} {cells[name][2]} {text}" for name, text in typed.items() if text]
    kept = {name: text for name, text in values.items() if name not in cells}
    if lines or MEASURED in values:
        kept[MEASURED] = text_of(entries("\n".join((values.get(MEASURED, ""), *lines))))
    return kept


def place_in_form(path: str, openings: Collection[str]) -> tuple[str, str]:
    """Where a path of the file stands in the form: the field, and which size it is where the field has many.

    Args:
        path: such as `measured.openings.R5-1.height`
        openings: the codes of the form's openings
    """
    _, kind, code, name = (*path.split(".", 3), "", "", "")[:4]
    if kind == "openings" and code in openings and name in SIDES:
        return f"{MEASURED}.{code}.{name}", ""
    return MEASURED, " ".join(filter(None, (code, name)))
