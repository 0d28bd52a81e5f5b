"""The numbers that nobody computed: limits, weights and defaults, each with where it comes from.

They are kept as data beside the code, so that a shop can overwrite any of them and a reader can see on what
ground each one stands. The files are read once in a process.
"""

import json
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any

from casewright.measure.units import Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Sourced:
    """One number with its ground.

    Attributes:
        value: the number, in the unit that its name implies; lengths in inches
        source: where it comes from
        basis: `published`, `common practice`, `from memory` or `learned`
    """

    value: Number
    source: str
    basis: str


@cache
def rows(name: str) -> dict[str, Any]:
    """What a data file of the joint room holds.

    Args:
        name: the file's name without its ending

    Returns:
        Its rows by name, each with a value, a source and a basis.

    Source: each row names its own.
    """
    text = resources.files("casewright.joinery").joinpath("data", f"{name}.json").read_text("utf-8")
    return dict(json.loads(text))


@cache
def sourced(name: str) -> dict[str, Sourced]:
    """The plain numbers of a data file of the joint room.

    Args:
        name: the file's name without its ending

    Returns:
        Each number with its source, by name.

    Source: each row names its own.
    """
    return {key: Sourced(**row) for key, row in rows(name).items()}
