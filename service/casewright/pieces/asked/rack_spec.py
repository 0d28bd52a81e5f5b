"""What a shop file says of the shop's rack, and of the numbers that are usual in its joints."""

from typing import Annotated

from pydantic import Field

from casewright.joinery.saws import WIDEST, SawUse
from casewright.pieces.asked.fields import Size, Spec

WIDEST_TOOL = 6.0
"""No chisel, cutter or pin is wider [in]."""
MOST_TOOLS = 60
MOST_KEPT = 20

ToolWidth = Annotated[Size, Field(le=WIDEST_TOOL)]
Kerf = Annotated[Size, Field(le=WIDEST)]
Slope = Annotated[float, Field(gt=1, le=20)]
Points = Annotated[float, Field(ge=0, le=1000)]


class OwnSaw(Spec):
    """A saw of the shop's, for joints."""

    name: str = Field(
        min_length=1, max_length=60, description="What the shop calls it.", examples=["dovetail saw"]
    )
    use: SawUse = Field(
        SawUse.DOVETAIL,
        description="What it is for: cutting tails, or turning in the gap between thin pins.",
        examples=["fret"],
    )
    kerf: Kerf = Field(description="How wide it cuts.", examples=["1/32"])


class OwnUsual(Spec):
    """The shop's own usual numbers for dovetails; what it leaves out stays as the house has it."""

    half_pin_front: ToolWidth | None = Field(
        None, description="Half pin at a drawer's front.", examples=["1/8"]
    )
    half_pin_back: ToolWidth | None = Field(
        None, description="Half pin at a drawer's back.", examples=["3/16"]
    )
    pin: ToolWidth | None = Field(None, description="A pin at its narrow side.", examples=["1/8"])
    pin_in_thin_sides: ToolWidth | None = Field(
        None, description="A pin where the sides are thin.", examples=["3/32"]
    )
    thin_side: ToolWidth | None = Field(
        None, description="Sides so thick, or thinner, are thin.", examples=["3/8"]
    )
    slope_hardwood: Slope | None = Field(None, description="Slope in hardwood, 8 for 1:8.", examples=[8])
    slope_softwood: Slope | None = Field(None, description="Slope in softwood, 6 for 1:6.", examples=[6])
    lap_part: float | None = Field(
        None, ge=2, le=12, description="The lap is the front divided by this.", examples=[4]
    )
    rabbet_part: float | None = Field(
        None, ge=4, le=32, description="The rabbet is the side divided by this.", examples=[8]
    )


class OwnLooks(Spec):
    """The shop's own taste in tails; what it leaves out stays as the house has it."""

    tail_sides: float | None = Field(
        None, ge=0.5, le=10, description="A tail is best so many sides' thicknesses wide.", examples=[3]
    )
    width_weight: Points | None = Field(
        None, description="Points off for a tail twice, or half, as wide as that.", examples=[25]
    )
    family_weight: Points | None = Field(
        None, description="Points off for twice the spacing of the other drawers.", examples=[40]
    )
    family_free: float | None = Field(
        None, ge=0, le=1, description="So much of the spacing may differ at no cost.", examples=[0.1]
    )
    wide_tail: ToolWidth | None = Field(None, description="A wider tail loses points.", examples=["2"])
    wide_points: Points | None = Field(None, description="How many it loses.", examples=[15])
    tail_pins: float | None = Field(
        None, ge=1, le=20, description="A tail is at least so many pins wide.", examples=[3]
    )
    slim_points: Points | None = Field(None, description="Points off when it is not.", examples=[10])
    single_tail_height: ToolWidth | None = Field(
        None, description="One tail holds a board up to this high.", examples=["2"]
    )
