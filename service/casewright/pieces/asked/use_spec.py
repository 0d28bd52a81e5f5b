"""Where and how a piece will stand: what the screens of stability and strength ask."""

from typing import Literal

from pydantic import Field

from casewright.pieces.asked.fields import Spec


class Use(Spec):
    """Where and how the piece will stand: what the stability screen asks."""

    clothing: bool = Field(True, description="Is it meant for clothing?", examples=[True])
    free_standing: bool = Field(
        True, description="Does it stand free, not fixed to the building?", examples=[True]
    )
    travel_share: float = Field(
        2 / 3,
        gt=0,
        le=1,
        description="How far a drawer opens to its outstop, as a share of its length (usually two thirds).",
        examples=[0.6667],
    )
    jam_friction: float = Field(
        0.3, gt=0, le=1, description="Friction of drawer on case, for the jam check.", examples=[0.3]
    )
    interlock: Literal["none", "one at a time"] = Field(
        "none",
        description="Does a lock in the case let one drawer open at a time?",
        examples=["one at a time"],
    )
    fixing_lb: float = Field(
        100,
        gt=0,
        le=5000,
        description=(
            "What one wall fixing holds before it fails, in pounds, along the wall or out of it. A number "
            "12 screw 1-1/2 in into a sound stud holds more (from memory); put in what yours hold."
        ),
        examples=[100],
    )
    fixing_factor: float = Field(
        2,
        ge=1,
        le=10,
        description="By how much a wall fixing is to be stronger than its load (common practice).",
        examples=[2],
    )
    lift_lb: float = Field(
        50,
        gt=0,
        le=200,
        description=(
            "What one person is asked to carry, in pounds (common practice; the lifting equation of NIOSH "
            "starts from 51 lb, from memory)."
        ),
        examples=[50],
    )
    shelf_load_lb: float = Field(
        20,
        ge=0,
        le=200,
        description="Load of a shelf for each foot of it, in pounds; books 20 to 25 (common practice).",
        examples=[20],
    )

    @property
    def locks_one_at_a_time(self) -> bool:
        """Whether the drawers are tied to one another so that one opens at a time."""
        return self.interlock == "one at a time"
