"""What ties a piece to the building: a cleat to hang it on, strips scribed to the walls, the way in."""

from typing import Literal

from pydantic import Field

from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Clearance, Size, Spec


class Cleat(Spec):
    """A pair of cleats, bevelled at 45 degrees: one on the case hooks over the other on the wall."""

    height: Size = Field(3.0, description="Height of each cleat at its long face.", examples=["3"])
    thickness: Size = Field(0.75, description="Thickness of the cleats.", examples=["3/4"])
    room: Literal["within", "behind"] = Field(
        "within",
        description=(
            "Within: the back is set forward, so that the sides reach the wall. Behind: the case stands off "
            "the wall by the thickness of the cleat."
        ),
        examples=["behind"],
    )
    studs: Size = Field(
        16.0, description="From stud to stud: 16 or 24 in are usual (common practice).", examples=["16"]
    )
    screws: int = Field(
        2, ge=1, le=6, description="Screws through the cleat into each stud (common practice).", examples=[2]
    )

    @property
    def depth_taken(self) -> Inches:
        """What it takes of the depth of the case [in]."""
        return self.thickness if self.room == "within" else 0.0


class Site(Spec):
    """The way in, and the walls between which a piece is built in."""

    door_width: Size | None = Field(None, description="Clear width of the narrowest door.", examples=["30"])
    door_height: Size | None = Field(None, description="Clear height of that door.", examples=["80"])
    turn_width: Size | None = Field(
        None, description="Width of the narrowest corridor or landing with a square turn.", examples=["36"]
    )
    scribe: Clearance = Field(
        0.0,
        description="Width of the strip at each side that is scribed to the wall; 0 for none.",
        examples=["1-1/2"],
    )
    recess: Size | None = Field(
        None, description="Between the walls, where they are nearest to each other.", examples=["49"]
    )
    out_of_plumb: Clearance = Field(
        0.0, description="How far the walls lean or bulge over the height of the piece.", examples=["3/8"]
    )
