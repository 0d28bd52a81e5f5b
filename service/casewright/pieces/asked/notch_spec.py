"""A recess in the drawers of a row, open at the rear, around pipes that stand behind them."""

from typing import Annotated, Literal

from pydantic import Field

from casewright.pieces.asked.fields import Length, Size, Spec

Aside = Annotated[Length, Field(ge=0, le=1200)]
"""How far from the middle: nothing, or more [in]."""


class Notch(Spec):
    """A recess from the back of a drawer, open at the rear: the drawer is made in the shape of a U."""

    width: Size = Field(
        description="Clear width of the recess, between the faces that the pipes see.", examples=["10"]
    )
    depth: Size = Field(
        description="How deep it reaches in, from the rear end of the drawer.", examples=["8"]
    )
    off: Aside = Field(
        0.0,
        description="How far its middle stands from the middle of the drawer; 0 for the middle.",
        examples=["2"],
    )
    toward: Literal["left", "right"] = Field(
        "left", description="To which side it stands off the middle.", examples=["right"]
    )
    pipes: Size | None = Field(
        None,
        description="Width over all that stands in it: trap, pipes and valves, measured at the place.",
        examples=["8"],
    )
    reach: Size | None = Field(
        None,
        description="How far that stands before the back of the case, measured at the place.",
        examples=["6"],
    )
