"""Starting units: pieces of usual make and size, to be changed into the one that is wanted."""

from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.measure.units import Count
from casewright.pieces.asked.reading import parse_json, read_as
from casewright.pieces.asked.spec import UnitSpec


@dataclass(frozen=True, slots=True, kw_only=True)
class Preset:
    """One starting unit.

    Attributes:
        key: its short name, that of its file
        name: what it is called
        words: what it is, in a sentence
        place: where it stands in the list
        source: where its sizes come from
        basis: common practice, or the shop's own
        held: the unit file, as JSON gives it
    """

    key: str
    name: str
    words: str
    place: Count
    source: str
    basis: str
    held: dict[str, Any]

    @property
    def spec_json(self) -> dict[str, Any]:
        """A copy of the unit file, to be changed at will."""
        return deepcopy(self.held)

    def spec(self) -> UnitSpec:
        """The choices that the unit file holds."""
        return read_as(UnitSpec, self.spec_json)


@cache
def presets() -> tuple[Preset, ...]:
    """Every starting unit, in the order of the list.

    Returns:
        The presets.

    Source: common practice; each names the ground of its sizes.
    """
    folder = files("casewright.pieces") / "data" / "presets"
    found = [
        _preset(each.name.removesuffix(".json"), parse_json(each.read_text(encoding="utf-8")))
        for each in folder.iterdir()
        if each.name.endswith(".json")
    ]
    return tuple(sorted(found, key=lambda preset: preset.place))


def preset(key: str) -> Preset:
    """A starting unit by its key.

    Args:
        key: such as `dresser`

    Returns:
        The preset.

    Raises:
        ValueError: there is none of that key, with those that there are

    Source: common practice.
    """
    for each in presets():
        if each.key == key:
            return each
    known = ", ".join(each.key for each in presets())
    raise ValueError(f"There is no starting unit “{key[:40]}”; there are {known}.")


def _preset(key: str, row: dict[str, Any]) -> Preset:
    unit = row.pop("unit")
    return Preset(key=key, held=unit, **row)
