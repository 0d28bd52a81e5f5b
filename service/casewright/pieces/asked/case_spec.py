"""What a piece is built as: a carcase with its web frames, or legs with aprons between them."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field, ValidationInfo, field_validator
from pydantic_core import PydanticCustomError

from casewright.measure.units import Inches
from casewright.pieces.asked.crate_spec import Crate
from casewright.pieces.asked.fields import Clearance, Size, Spec
from casewright.pieces.asked.panel_spec import DustPanel, Panelling, PlySides

Sides = Literal["solid", "framed", "plywood"]
CornerJoint = Literal["half-blind", "through", "housing", "tenon", "dowels", "loose-tenons"]
CORNERS: dict[str, tuple[CornerJoint, ...]] = {
    "solid": ("half-blind", "through", "housing", "tenon", "dowels", "loose-tenons"),
    "framed": ("tenon", "half-blind", "through", "housing", "dowels", "loose-tenons"),
    "plywood": ("dowels", "loose-tenons", "housing"),
}
"""The corners that each kind of side can have, the usual one first (common practice)."""
DOVETAILS = ("half-blind", "through")
FOOT = 5 / 8
"""What a taper leaves of a leg at the floor, where nothing is said (common practice) [1]."""


class Case(Spec):
    """The carcase: its sides, how rails and bottom are joined to them, and what divides its rows."""

    sides: Sides = Field(
        "solid",
        description=(
            "What the sides are: boards glued up, stiles and rails around a panel, or plywood with a solid "
            "lipping, with a plywood top and bottom."
        ),
        examples=["framed"],
    )
    panelling: Panelling = Field(
        default_factory=Panelling, description="Frame-and-panel sides; counts for no others."
    )
    ply: PlySides = Field(default_factory=PlySides, description="Plywood sides; counts for no others.")
    corner: CornerJoint | None = Field(
        None,
        description=(
            "How rails and bottom meet the sides. Left out: half-blind dovetails in solid sides, tenons in "
            "frames, dowels in plywood."
        ),
        examples=["through"],
    )
    corner_tenon: Size | None = Field(
        None,
        description=(
            "Length of tenoned rails' tenons in the sides. Left out: two thirds of the side, as far as its "
            "wall allows."
        ),
        examples=["7/16"],
    )
    divider_kind: Literal["web-frame", "rail", "dust-frame", "solid", "none"] = Field(
        "web-frame",
        description=(
            "What lies between two rows: a web frame, a front rail alone, a web frame with a thin panel, "
            "a board over the full depth, or nothing, where drawers hang one right above the other."
        ),
        examples=["dust-frame"],
    )
    dust: DustPanel = Field(
        default_factory=DustPanel, description="The panel of a dust frame; counts for no others."
    )
    side: Size = Field(0.75, description="Thickness of a case side.", examples=["3/4"])
    sub_top_rail: Size = Field(
        0.75,
        description=(
            "Thickness of the rails under the top; plywood has none: its case top is of the sheet, whatever "
            "is typed here."
        ),
        examples=["3/4"],
    )
    bottom: Size = Field(0.75, description="Thickness of the case bottom.", examples=["3/4"])
    divider: Size = Field(0.75, description="Thickness of the frame between two rows.", examples=["3/4"])
    upright: Size = Field(0.75, description="Thickness of the upright between two drawers.", examples=["3/4"])
    rail_width: Size = Field(
        3.0,
        description="Width, front to back, of sub-top rails, divider rails and uprights.",
        examples=["3"],
    )
    lipping: Clearance = Field(
        1.5,
        description="Width of the show-wood lipping on the case bottom; 0 for none.",
        examples=["1-1/2"],
    )
    lap: Size = Field(0.25, description="Lap of the carcase dovetails at the outside.", examples=["1/4"])
    housing: Size = Field(
        0.25,
        description="Depth of the housing, or of the sliding dovetail, of a divider in the side.",
        examples=["1/4"],
    )
    upright_housing: Size | None = Field(
        None,
        description=(
            "Depth of the housing of an upright in the rails. Left out, as the divider's, or a third of the "
            "thinner rail where that is less."
        ),
        examples=["1/4"],
    )
    divider_end: Literal["housing", "sliding dovetail"] = Field(
        "housing", description="How a divider meets the side.", examples=["sliding dovetail"]
    )
    divider_shoulder: Clearance = Field(
        0.0625,
        description="Shoulder on each face of a sliding-dovetailed divider.",
        examples=["1/16"],
    )
    corner_half_pin: Size = Field(
        0.375,
        description="Half pin of the dovetailed corners, wider than a drawer's (common practice).",
        examples=["3/8"],
    )
    corner_pin: Size = Field(
        0.25, description="Pin of the dovetailed corners (common practice).", examples=["1/4"]
    )
    carcase_slope: float = Field(
        8, gt=1, le=20, description="Slope of the carcase dovetails, one in this many.", examples=[8]
    )

    @field_validator("corner")
    @classmethod
    def corner_suits_the_sides(cls, corner: CornerJoint | None, info: ValidationInfo) -> CornerJoint | None:
        """Refuses a corner that such sides have no wood for."""
        sides = info.data.get("sides", "solid")
        if corner is not None and corner not in CORNERS[sides]:
            raise PydanticCustomError(
                "choice",
                "{sides} sides take no {corner} corners, which break out between the plies; write {others}",
                {
                    "sides": sides,
                    "corner": corner,
                    "others": " or ".join(f'"{each}"' for each in CORNERS[sides]),
                },
            )
        return corner

    @property
    def joined(self) -> CornerJoint:
        """How rails and bottom meet the sides, whether chosen or not."""
        return self.corner or CORNERS[self.sides][0]

    @property
    def is_framed(self) -> bool:
        """Whether the sides are frames with panels."""
        return self.sides == "framed"

    @property
    def is_ply(self) -> bool:
        """Whether sides, top and bottom are plywood."""
        return self.sides == "plywood"

    @property
    def has_webs(self) -> bool:
        """Whether frames with runners lie between the rows."""
        return self.divider_kind in ("web-frame", "dust-frame")


class Frames(Spec):
    """The web frame under each row but the lowest, which runs on the case bottom."""

    runner_width: Size = Field(2.5, description="Width of a side runner or kicker.", examples=["2-1/2"])
    centre_runner_width: Size = Field(
        3.5,
        description="Width of a runner under an upright: it carries two drawers.",
        examples=["3-1/2"],
    )
    back_rail_width: Size = Field(2.5, description="Width of the frame's rear rail.", examples=["2-1/2"])
    tenon: Size = Field(0.5, description="Length of the frame tenons.", examples=["1/2"])
    slack: Clearance | None = Field(
        None,
        description=(
            "Gap left dry at the rear tenon so that a solid side can shrink. Left out: 1/8 in, or the "
            "shrinkage of the side rounded up to 1/16 in where that is more."
        ),
        examples=["1/8"],
    )


class Carcase(Spec):
    """A solid carcase: `case`, `frames`, `base` and `back` say how it is made."""

    kind: Literal["carcase"] = Field("carcase", description="A solid carcase.", examples=["carcase"])


class LegsAndAprons(Spec):
    """Four legs with aprons at sides and back, and rails in front.

    What `case`, `frames`, `base` and `back` say does not count. The overall height is given; the openings lie
    between the rails.
    """

    kind: Literal["legs"] = Field(
        description="Legs and aprons: no plinth, no back boards.", examples=["legs"]
    )
    leg: Size = Field(1.5, description="Thickness of a leg, square at the aprons.", examples=["1-1/2"])
    tapered: bool = Field(
        True, description="Are the legs tapered below the aprons, on their two inside faces?", examples=[True]
    )
    foot: Size | None = Field(
        None,
        description="What a tapered leg measures at the floor, square. Left out: 5/8 of the leg.",
        examples=["7/8"],
    )
    apron: Size = Field(0.75, description="Thickness of an apron.", examples=["3/4"])
    apron_height: Size = Field(
        5.5,
        description="Height of the aprons: the front rails and the openings between them add up to it.",
        examples=["5-1/2"],
    )
    setback: Clearance = Field(
        0.125, description="How far an apron is set back from the leg's outside face.", examples=["1/8"]
    )
    tenon: Size | None = Field(
        None,
        description=(
            "Length of the aprons' tenons. Left out: two thirds of the leg, as far as its walls allow. Two "
            "that meet in a leg are mitred."
        ),
        examples=["1"],
    )
    rail: Size = Field(0.75, description="Thickness of a front rail.", examples=["3/4"])
    rail_width: Size | None = Field(
        None,
        description="Width of a front rail, front to back. Left out, as the leg; no more than the leg.",
        examples=["1-1/2"],
    )
    dovetail: Size | None = Field(
        None,
        description=(
            "Length of the upper rail's dovetail, let into the top of each leg. Left out: 5/8 in, or what "
            "stays clear of the side aprons' mortises."
        ),
        examples=["5/8"],
    )
    rail_tenon: Size | None = Field(
        None,
        description=(
            "Length of the tenons of the lower rail, and of rails between rows. Left out: 3/4 in, or what "
            "stays clear of the side aprons' mortises."
        ),
        examples=["3/4"],
    )
    runner_width: Size | None = Field(
        None,
        description=(
            "Width of a runner or kicker, from the apron inwards. Left out: 3/4 in beyond the leg's inside."
        ),
        examples=["1-3/8"],
    )
    tongue: Size = Field(
        0.25, description="Tongue of a runner or kicker in the rail in front of it.", examples=["1/4"]
    )
    guide_height: Size = Field(
        1.0, description="Height of the side guide on a runner, flush with the legs.", examples=["1"]
    )
    fixing: Literal["buttons", "slots"] = Field(
        "buttons",
        description="The top is held by buttons in the aprons, or by screws in slots in the kickers.",
        examples=["slots"],
    )

    @property
    def at_the_floor(self) -> Inches:
        """What a leg measures at the floor, square [in]."""
        if not self.tapered:
            return self.leg
        return min(self.leg, self.leg * FOOT if self.foot is None else self.foot)


Construction = Annotated[Carcase | LegsAndAprons | Crate, Field(discriminator="kind")]


@dataclass(frozen=True, slots=True, kw_only=True)
class Skeleton:
    """The thicknesses between which the openings lie.

    Attributes:
        side: what stands at each side: a case side, or a leg [in]
        upper: the rail over the top row [in]
        lower: what lies under the lowest row: the case bottom, or the lower rail [in]
        divider: what lies between two rows [in]
        upright: what stands between two drawers [in]
    """

    side: Inches
    upper: Inches
    lower: Inches
    divider: Inches
    upright: Inches


def skeleton(case: Case, legs: LegsAndAprons | None) -> Skeleton:
    """The thicknesses between which the openings lie.

    Args:
        case: those of a carcase
        legs: the legs and rails that stand in its place; None for a carcase

    Returns:
        The thicknesses.

    Source: geometry of the case.
    """
    if legs is None:
        return Skeleton(
            side=case.side,
            upper=case.sub_top_rail,
            lower=case.bottom,
            divider=case.divider,
            upright=case.upright,
        )
    return Skeleton(side=legs.leg, upper=legs.rail, lower=legs.rail, divider=legs.rail, upright=legs.rail)
