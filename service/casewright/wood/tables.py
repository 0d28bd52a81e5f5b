"""The room's own data files, each read once."""

import csv
import json
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any


def _text(name: str) -> str:
    return (files("casewright.wood") / "data" / name).read_text(encoding="utf-8")


@cache
def document(name: str) -> Mapping[str, Any]:
    """One JSON file of reference figures. It is shared: read it, do not change it.

    Args:
        name: the file's name, without its ending

    Returns:
        What is in the file.

    Source: each file names its own.
    """
    return MappingProxyType(json.loads(_text(f"{name}.json")))


@cache
def rows(name: str) -> tuple[Mapping[str, str], ...]:
    """One CSV file of reference figures, row by row. They are shared: read them, do not change them.

    Args:
        name: the file's name, without its ending

    Returns:
        A row for each line, by the names of the columns.

    Source: each file, or the grounds file beside it, names its own.
    """
    return tuple(MappingProxyType(row) for row in csv.DictReader(_text(f"{name}.csv").splitlines()))
