"""The kinds of field that a unit file has: sizes, clearances, shares, woods.

A size is written as text in any notation that makers use (`"13/16"`, `"397 mm"`), or as a number in the unit
that the file names. It is held in inches.
"""

from fractions import Fraction
from typing import Annotated, Any

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PlainSerializer,
    SerializationInfo,
    ValidationInfo,
)
from pydantic_core import PydanticCustomError

from casewright.measure.lengths import (
    LengthError,
    LengthUnit,
    parse_length,
    write_length,
)
from casewright.measure.typed import quoted
from casewright.measure.units import MILLIMETRES_PER_INCH, Unit
from casewright.wood.movement import Cut
from casewright.wood.species import UnknownWood, wood

LONGEST_NAME = 100
NUMBER_LIMIT = 100_000
"""A bare number beyond this is no size in any unit; it is refused before any arithmetic."""


class Spec(BaseModel):
    """The base of every part of a unit file: it cannot be changed, and knows no keys but its own."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", str_strip_whitespace=True, ser_json_inf_nan="strings"
    )


def read_length(value: Any, info: ValidationInfo) -> float:
    """A length in inches from what the file holds: text in any notation, or a number in the file's unit."""
    unit = (info.context or {}).get("unit", LengthUnit.INCH)
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise PydanticCustomError(
            "length",
            "a size is text such as {example} or a number",
            {"example": '"13/16"' if unit is LengthUnit.INCH else '"397"'},
        )
    if isinstance(value, str):
        try:
            return float(parse_length(value, unit))
        except LengthError as error:
            raise PydanticCustomError("length", "{reason}", {"reason": str(error)}) from None
    if not -NUMBER_LIMIT < value < NUMBER_LIMIT:
        raise PydanticCustomError(
            "length", "a size is below 100,000, such as {example}", {"example": "15.625"}
        )
    if unit is LengthUnit.INCH:
        return float(value)
    return float(Fraction(repr(value)) / Fraction(repr(MILLIMETRES_PER_INCH)))


def write_size(inches: float, info: SerializationInfo) -> str:
    """A size as text that reads back in the unit of the file that it is written to."""
    return write_length(inches, (info.context or {}).get("unit", LengthUnit.INCH))


Length = Annotated[
    float,
    BeforeValidator(read_length, json_schema_input_type=str | float),
    PlainSerializer(write_size, return_type=str, when_used="json"),
    Unit("inch"),
]
Size = Annotated[Length, Field(gt=0, le=1200)]
"""A length that a part can have: above nothing, up to a hundred feet [in]."""
Clearance = Annotated[Length, Field(ge=0, le=12)]
"""A gap or allowance: nothing, or more [in]."""


def read_wood(value: Any) -> Any:
    """A wood by its name alone stands for that wood, flat-sawn."""
    return {"wood": value} if isinstance(value, str) else value


def known_wood(value: Any) -> str:
    """The shop name of a wood that the species table has."""
    if not isinstance(value, str):
        raise PydanticCustomError(
            "wood", "a wood is named in text, such as {example}", {"example": '"cherry"'}
        )
    try:
        return wood(value[:LONGEST_NAME]).name
    except UnknownWood as error:
        reason = f"{quoted(value)} is not a wood in the table; "
        near = f"did you mean {' or '.join(error.nearest)}?" if error.nearest else "cherry is one that is"
        raise PydanticCustomError("wood", "{reason}", {"reason": reason + near}) from None


class Timber(Spec):
    """A wood, and how it was sawn: that decides by how much it moves."""

    wood: Annotated[str, BeforeValidator(known_wood)] = Field(
        description="A wood of the species table, by its shop name or its common name.", examples=["cherry"]
    )
    cut: Cut = Field(
        Cut.FLAT,
        description="Flat-sawn moves by the tangential figure, quartersawn the radial, rift between.",
        examples=["quarter"],
    )


WoodField = Annotated[Timber, BeforeValidator(read_wood, json_schema_input_type=str | Timber)]
