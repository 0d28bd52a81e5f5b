"""What was measured at the bench. A measured size beats the designed one, and all else follows."""

from typing import Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.units import Percent
from casewright.pieces.asked.fields import Size, Spec


class MeasuredOpening(Spec):
    """An opening of the case as it came out of the clamps."""

    height: Size | None = Field(None, description="Height, at its least.", examples=["8-15/32"])
    width: Size | None = Field(None, description="Width, at its least.", examples=["37-31/32"])
    depth: Size | None = Field(None, description="Depth, front edge to back.", examples=["19-7/32"])


class MeasuredPart(Spec):
    """A part as it came from the plane."""

    thickness: Size | None = Field(None, description="Thickness.", examples=["51/64"])
    width: Size | None = Field(None, description="Width, across the grain.", examples=["8-3/8"])
    length: Size | None = Field(None, description="Length, along the grain.", examples=["18-9/16"])
    in_rabbet: Size | None = Field(
        None, description="Of a drawer side: what is left of its thickness in the rabbet.", examples=["27/64"]
    )

    moisture: Percent | None = Field(
        None, ge=2, le=30, description="Moisture content before it is cut, in percent.", examples=[8.5]
    )
    tail_length: Size | None = Field(
        None,
        description="Of a drawer side: length of its tails at the front, as cut.",
        examples=["9/16"],
    )
    socket_depth: Size | None = Field(
        None, description="Of a drawer front: depth of its sockets, at their least.", examples=["9/16"]
    )

    @model_validator(mode="after")
    def rabbet_takes_something(self) -> Self:
        if self.in_rabbet and self.thickness and self.in_rabbet > self.thickness:
            raise PydanticCustomError(
                "in_rabbet", "what is left in the rabbet cannot be thicker than the side itself", {}
            )
        return self


class Measured(Spec):
    """Measured openings by code (`R5-1`: row 5, first from the left) and parts by theirs (`R5-1-SL`)."""

    openings: dict[str, MeasuredOpening] = Field(
        default_factory=dict, description="Openings by code.", examples=[{"R5-1": {"height": "8-15/32"}}]
    )
    parts: dict[str, MeasuredPart] = Field(
        default_factory=dict, description="Parts by code.", examples=[{"R5-1-SL": {"thickness": "31/64"}}]
    )
