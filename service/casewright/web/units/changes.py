"""What one revision of a unit changed against the one before it, in the words of the form."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import zip_longest
from typing import Any

from casewright.web.units.form import values_of
from casewright.web.units.groups import SINGLE
from casewright.web.units.rows import SEPARATOR, Line, all_lines, line_fields, shape_of


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
            yield from _in_row(old, was, new, is_now)


def _in_row(old: Mapping[str, str], was: Line, new: Mapping[str, str], is_now: Line) -> Iterator[Change]:
    """What changed in a row, with its columns and their rows where they are spelled out alike."""
    before, after = _fields(was), _fields(is_now)
    if [name.removeprefix(was.name) for name in before] != [name.removeprefix(is_now.name) for name in after]:
        yield from _change(f"{is_now.words}: parted into", _parted(old, was), _parted(new, is_now))
        return
    for name, (there, label) in zip(before, after.items(), strict=True):
        yield from _change(label, old[name], new[there])


def _fields(row: Line) -> dict[str, str]:
    """The fields of a row and of all within it, with their labels."""
    return {each.name: each.label for line in all_lines((row,)) for each in line_fields(line)}


def _parted(values: Mapping[str, str], row: Line) -> str:
    """How a row is parted, such as `2 columns, the first of 3 rows`."""
    if not row.inner:
        many = _columns(values, row)
        return f"{many} {'column' if many == 1 else 'columns'}"
    inner = [f"column {each.mark} of {len(each.inner)} rows" for each in row.inner if each.inner]
    return ", ".join([f"{len(row.inner)} columns spelled out", *inner])


def _change(label: str, was: str, is_now: str) -> Iterator[Change]:
    if was != is_now:
        yield Change(label=label, before=was or "as usual", after=is_now or "as usual")


def rows_between(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[str]:
    """The rows that only one of two revisions has, one line for each."""
    old, new = values_of(json.dumps(before)), values_of(json.dumps(after))
    for was, is_now in _pairs(old, new):
        if was and not is_now:
            yield f"Row {was.mark} taken out ({_row_words(old, was)})"
        if is_now and not was:
            yield f"Row {is_now.mark} added ({_row_words(new, is_now)})"


def _pairs(old: Mapping[str, str], new: Mapping[str, str]) -> Iterator[tuple[Line | None, Line | None]]:
    """The rows of both, each with the one that it is now; None where it is in one of them only."""
    before, after = shape_of(old), shape_of(new)
    if len(before) == len(after):
        yield from zip(before, after, strict=True)
        return
    first, second = [_texts(old, row) for row in before], [_texts(new, row) for row in after]
    for _, i, to_i, j, to_j in SequenceMatcher(None, first, second, autojunk=False).get_opcodes():
        yield from zip_longest(before[i:to_i], after[j:to_j])


def _texts(values: Mapping[str, str], row: Line) -> tuple[tuple[str, str], ...]:
    return tuple((name.removeprefix(row.name), values[name]) for name in _fields(row))


def _columns(values: Mapping[str, str], row: Line) -> int:
    if row.inner:
        return len(row.inner)
    widths = values[f"{row.name}.widths"]
    return len(widths.split(SEPARATOR)) if widths else int(values[f"{row.name}.columns"] or 1)


def _row_words(values: Mapping[str, str], row: Line) -> str:
    """A row in a few words, such as `2 drawers, 6 in high`."""
    height, many = values[f"{row.name}.height"], _columns(values, row)
    what = "drawer" if not row.inner and values[f"{row.name}.holds"] == "drawer" else "column"
    unit = "" if height[-1:].isalpha() or height.endswith(('"', "'")) else f" {values['unit']}"
    tall = f"{height}{unit} high" if height else "height as usual"
    return f"{many} {what if many == 1 else f'{what}s'}, {tall}"
