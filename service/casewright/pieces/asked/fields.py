"""The kinds of field that a unit file has: sizes, clearances and, of its own, woods."""

from typing import Annotated, Any

from pydantic import BeforeValidator, Field
from pydantic_core import PydanticCustomError

from casewright.measure.fields import (
    NUMBER_LIMIT,
    Clearance,
    Length,
    Size,
    Spec,
    read_length,
    write_size,
)
from casewright.measure.typed import quoted
from casewright.wood.movement import Cut
from casewright.wood.species import UnknownWood, wood

__all__ = (
    "LONGEST_NAME",
    "NUMBER_LIMIT",
    "Clearance",
    "Length",
    "Size",
    "Spec",
    "Timber",
    "WoodField",
    "known_wood",
    "read_length",
    "read_wood",
    "write_size",
)

LONGEST_NAME = 100


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
