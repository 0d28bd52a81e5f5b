"""The kinds of field that every file has: sizes, clearances and money.

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
from casewright.measure.money import from_decimal
from casewright.measure.units import MILLIMETRES_PER_INCH, Cents, Inches, Unit

NUMBER_LIMIT = 100_000
"""A bare number beyond this is no size in any unit; it is refused before any arithmetic."""


class Spec(BaseModel):
    """The base of every part of a file: it cannot be changed, and knows no keys but its own."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", str_strip_whitespace=True, ser_json_inf_nan="strings"
    )


def read_length(value: Any, info: ValidationInfo) -> Inches:
    """A length in inches from what the file holds: text in any notation, or a number in the file's unit.

    Args:
        value: what the file holds
        info: the validation's context, which names the unit of the file

    Returns:
        The length [in]

    Raises:
        PydanticCustomError: no length can be read from it; the message is a whole sentence

    Source: 1 in = 25.4 mm by definition (international inch, 1959).
    """
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


def write_size(inches: Inches, info: SerializationInfo) -> str:
    """A size as text that reads back in the unit of the file that it is written to.

    Args:
        inches: the size [in]
        info: the context of the writing, which names the unit of the file

    Returns:
        The text.

    Source: common practice.
    """
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


def read_money(value: Any) -> Cents:
    """Whole cents from an amount in currency units, as text or as a number.

    Args:
        value: what the file holds

    Returns:
        The amount [cent]

    Raises:
        PydanticCustomError: no amount can be read from it; the message is a whole sentence

    Source: common practice.
    """
    try:
        if isinstance(value, bool) or not isinstance(value, int | float | str):
            raise ValueError
        return from_decimal(float(value) if isinstance(value, str) else value)
    except (ValueError, OverflowError, ArithmeticError):
        raise PydanticCustomError("price", "an amount is written like 9.50", {}) from None


def write_money(cents: Cents) -> str:
    """An amount as text that reads back to the same cents.

    Args:
        cents: the amount [cent]

    Returns:
        Text such as `9.50`.

    Source: common practice.
    """
    return f"{cents // 100}.{cents % 100:02d}"


Money = Annotated[
    int,
    BeforeValidator(read_money, json_schema_input_type=str | float),
    PlainSerializer(write_money, return_type=str, when_used="json"),
    Field(ge=0, le=10**12),
]
"""An amount in the shop's currency [cent]."""
