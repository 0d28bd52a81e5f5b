"""A unit file, in and out: JSON to choices, with a sentence for whatever cannot be used."""

from typing import Any, TypeVar

from pydantic import TypeAdapter

from casewright.measure import json_files
from casewright.measure.json_files import LARGEST_FILE, LONGEST_NUMBER, MOST_DIGITS, CannotRead, FileKind
from casewright.pieces.asked.fields import Spec
from casewright.pieces.asked.sentences import CHOICES, Problem
from casewright.pieces.asked.spec import VERSION, UnitSpec

__all__ = (
    "LARGEST_FILE",
    "LONGEST_NUMBER",
    "MOST_DIGITS",
    "UNIT_FILE",
    "CannotRead",
    "parse_json",
    "read_as",
    "read_unit",
    "unit_schema",
    "write_unit",
)

UNIT_FILE = FileKind(name="unit file", start='{"casewright": 1, "name": "Hall chest", …}')

Read = TypeVar("Read", bound=Spec)


def parse_json(text: str) -> Any:
    """What a JSON file holds.

    Args:
        text: the text of the file

    Returns:
        Whatever the JSON says.

    Raises:
        CannotRead: it is not JSON, it says one key twice, or it is too large

    Source: RFC 8259.
    """
    return json_files.parse_json(text, UNIT_FILE)


def read_unit(text: str) -> UnitSpec:
    """The choices that a unit file holds.

    Args:
        text: the text of the file

    Returns:
        The choices, every default filled in.

    Raises:
        CannotRead: with a sentence for each field that cannot be used

    Source: the schema of `UnitSpec`.
    """
    data = parse_json(text)
    if isinstance(data, dict) and type(version := data.get("casewright")) is int and version != VERSION:
        raise CannotRead(
            Problem("casewright", f"this file is of version {version}; this program reads version {VERSION}")
        )
    return read_as(UnitSpec, data)


def read_as(model: type[Read], data: Any) -> Read:
    """Data from a file as a model of this room, with a sentence for whatever does not fit.

    Args:
        model: the model that the data should fit
        data: what the file held

    Returns:
        The model.

    Raises:
        CannotRead: with a sentence for each field that cannot be used

    Source: the schema of the model.
    """
    return json_files.read_as(model, data, CHOICES, '{"casewright": 1, …}')


def write_unit(spec: UnitSpec) -> str:
    """A unit file that reads back to the same choices; defaults that nobody touched are left out.

    Args:
        spec: the choices

    Returns:
        JSON text, sizes as text that a maker reads.

    Source: the schema of `UnitSpec`.
    """
    return spec.model_dump_json(indent=2, exclude_unset=True, context={"unit": spec.unit})


def unit_schema() -> dict[str, Any]:
    """The JSON Schema of a unit file.

    Returns:
        A JSON Schema, draft 2020-12.

    Source: json-schema.org, draft 2020-12.
    """
    schema = TypeAdapter(UnitSpec).json_schema(mode="validation")
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
