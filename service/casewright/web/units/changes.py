"""What one revision of a unit changed against the one before it, in the words of the form."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Any

from casewright.web.units.fields import row_name
from casewright.web.units.form import SEPARATOR, row_count, row_fields, values_of
from casewright.web.units.groups import ROW_FIELDS, SINGLE


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One field that a revision changed."""

    label: str
    before: str
    after: str


def changes_between(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[Change]:
    """The fields that changed, in what both have; a row is compared with itself, wherever it stands now."""
    old, new = values_of(json.dumps(before)), values_of(json.dumps(after))
    if old["unit"] != new["unit"]:
        yield Change(label="Sizes written in", before=old["unit"], after=new["unit"])
    for each in SINGLE:
        yield from _change(each.label, old[each.name], new[each.name])
    for was, is_now in _pairs(old, new):
        if was and is_now:
            for each, there in zip(row_fields(was), row_fields(is_now), strict=True):
                yield from _change(there.label, old[each.name], new[there.name])


def _change(label: str, was: str, is_now: str) -> Iterator[Change]:
    if was != is_now:
        yield Change(label=label, before=was or "as usual", after=is_now or "as usual")


def rows_between(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[str]:
    """The rows that only one of two revisions has, one line for each."""
    old, new = values_of(json.dumps(before)), values_of(json.dumps(after))
    for was, is_now in _pairs(old, new):
        if not is_now:
            yield f"Row {was} taken out ({_row_words(old, was)})"
        if not was:
            yield f"Row {is_now} added ({_row_words(new, is_now)})"


def _pairs(old: Mapping[str, str], new: Mapping[str, str]) -> Iterator[tuple[int, int]]:
    """The rows of both, each with the one that it is now; 0 where it is in one of them only."""
    first, second = _rows(old), _rows(new)
    if len(first) == len(second):
        yield from zip(range(1, len(first) + 1), range(1, len(first) + 1), strict=True)
        return
    for _, i, to_i, j, to_j in SequenceMatcher(None, first, second, autojunk=False).get_opcodes():
        for place in range(max(to_i - i, to_j - j)):
            yield i + place + 1 if i + place < to_i else 0, j + place + 1 if j + place < to_j else 0


def _rows(values: Mapping[str, str]) -> list[tuple[str, ...]]:
    numbers = range(1, row_count(values) + 1)
    return [tuple(values[row_name(number, each)] for each in ROW_FIELDS) for number in numbers]


def _row_words(values: Mapping[str, str], number: int) -> str:
    """A row in a few words, such as `2 drawers, 6 in high`."""
    height, widths = values[f"rows.{number}.height"], values[f"rows.{number}.widths"]
    many = len(widths.split(SEPARATOR)) if widths else int(values[f"rows.{number}.columns"] or 1)
    unit = "" if height[-1:].isalpha() or height.endswith(('"', "'")) else f" {values['unit']}"
    tall = f"{height}{unit} high" if height else "height as usual"
    return f"{many} {'drawer' if many == 1 else 'drawers'}, {tall}"
