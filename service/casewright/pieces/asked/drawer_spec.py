"""How the drawers are made: inset, on wooden runners, dovetailed at all four corners."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.remembering import of_the_same
from casewright.pieces.asked.drawer_fronts import (
    AppliedFront,
    FrontStyle,
    FullOverlay,
    HalfOverlay,
    Inset,
    Lipped,
)
from casewright.pieces.asked.drawer_joints import (
    BackJoint,
    FrontJoint,
    HalfBlindDovetail,
    SlidingDovetail,
    ThroughDovetail,
)
from casewright.pieces.asked.fields import Clearance, Size, Spec
from casewright.pieces.asked.panel_spec import measured_sheet
from casewright.pieces.asked.running_spec import OnRunners, Running, Stops
from casewright.wood.sheets import Sheet, sheet


class SolidBottom(Spec):
    """A solid bottom, grain side to side, in a groove, slid in under the back and free to move there."""

    kind: Literal["solid"] = Field("solid", description="Solid wood.", examples=["solid"])
    thickness: Size = Field(
        0.375, description="Thickness; its edges are raised to fit the groove.", examples=["3/8"]
    )
    edges: Literal["raised", "plain"] = Field(
        "raised",
        description="Edges raised or bevelled to fit the groove, or plain, the groove as wide as the bottom.",
        examples=["plain"],
    )
    screwed_under: bool = Field(
        False,
        description="Screwed under front, sides and back, without grooves, as in work drawers.",
        examples=[True],
    )
    over: Clearance = Field(
        0.0, description="How far it reaches past the back, up to 1/4 in.", examples=["1/4"]
    )


class PlyBottom(Spec):
    """A plywood bottom, from a sheet."""

    kind: Literal["ply"] = Field(description="Plywood.", examples=["ply"])
    sheet: str = Field(
        "hardwood plywood",
        min_length=1,
        max_length=80,
        description="Kind of sheet.",
        examples=["birch plywood"],
    )
    nominal: str = Field(
        "1/4", min_length=1, max_length=20, description="Nominal thickness it is sold by.", examples=["1/4"]
    )
    measures: Size | None = Field(
        None, description="What the sheet measures. Left out, as the table has it.", examples=["12 mm"]
    )
    hold: Literal["four grooves", "under the back", "screwed under"] = Field(
        "four grooves",
        description="Grooved into all four sides, slid in under the back, or screwed under all of them.",
        examples=["four grooves"],
    )
    over: Clearance = Field(
        0.0, description="How far it reaches past the back when it slides under.", examples=["0"]
    )

    @model_validator(mode="after")
    def in_the_table(self) -> Self:
        try:
            sheet(self.sheet, self.nominal)
        except ValueError as error:
            raise PydanticCustomError("choice", "{reason}", {"reason": str(error)}) from None
        return self

    @property
    def bought(self) -> Sheet:
        """The sheet, with what it really measures."""
        return measured_sheet(self.sheet, self.nominal, self.measures)


Bottom = Annotated[SolidBottom | PlyBottom, Field(discriminator="kind")]


class Slips(Spec):
    """Strips inside the sides that carry the groove, where a side is too thin for one."""

    thickness: Size = Field(0.375, description="Thickness of a slip.", examples=["3/8"])
    height: Size | None = Field(
        None,
        description="Height of a slip. Left out: 1/8 in above its groove.",
        examples=["5/8"],
    )
    depth: Size = Field(
        0.1875, description="Depth of the groove in a slip; the front keeps its own.", examples=["3/16"]
    )


class BottomGroove(Spec):
    """The groove that holds the bottom."""

    height: Size = Field(
        0.375, description="From the bottom edge of the side up to the groove.", examples=["3/8"]
    )
    width: Size = Field(0.25, description="Width of the groove.", examples=["1/4"])
    depth: Size = Field(
        0.25,
        description="Depth of the groove. Left out: 1/4 in, or half of the thinnest board that has it.",
        examples=["1/4"],
    )
    slips: Slips | None = Field(
        None,
        description="Slips that carry the groove in place of the sides; null for a groove in the sides.",
        examples=[{"thickness": "3/8", "height": "5/8", "depth": "3/16"}],
    )

    @property
    def side_depth(self) -> float:
        """Depth of the groove at the sides: in the slips where there are any [in]."""
        return self.slips.depth if self.slips else self.depth

    @property
    def slip_height(self) -> float:
        """Height of a slip, once it is chosen; 0 without any [in]."""
        return (self.slips.height or 0.0) if self.slips else 0.0

    @property
    def slip(self) -> float:
        """Thickness of a slip; 0 without any [in]."""
        return self.slips.thickness if self.slips else 0.0


class Muntin(Spec):
    """The bar under the middle of a wide bottom."""

    use: Literal["auto", "always", "never"] = Field(
        "auto",
        description=(
            "auto: where the clear width is over the limit below, or the bottom would sag too far; never for "
            "the width of plywood of 3/8 in or more."
        ),
        examples=["auto"],
    )
    over: Size = Field(
        24.0, description="Clear width over which a muntin is used (common practice).", examples=["24"]
    )
    width: Size = Field(2.0, description="Width of the muntin.", examples=["2"])
    thickness: Size = Field(0.625, description="Thickness of the muntin.", examples=["5/8"])


class Clearances(Spec):
    """The gaps that let a drawer run. Left out, they follow from the opening (common practice)."""

    side: Clearance | None = Field(
        None,
        description="At each side: 1/32 in, or 1/64 in for openings up to 12 in wide.",
        examples=["1/32"],
    )
    top: Clearance = Field(
        0.03125, description="Left above the drawer when it is wettest.", examples=["1/32"]
    )
    bottom: Clearance = Field(0.0, description="Under the drawer: nothing on runners.", examples=["0"])
    back: Clearance | None = Field(
        None,
        description="Behind the drawer: 1/4 in, or 1/8 in for openings up to 12 in wide and deep.",
        examples=["1/4"],
    )


NO_BACK_LIKE_IT = ("half-blind dovetail", "sliding dovetail")
"""Joints of a front that keeps a lap, or is wider than its box: a back has none such."""


class Drawers(Spec):
    """The drawer construction, the same through the unit."""

    style: FrontStyle = Field(
        default_factory=Inset, description="How the fronts sit in, or before, the case."
    )
    front: Size = Field(
        0.75,
        description="Thickness of a front. Left out: 3/4 in, or 1/8 in more than sides joined to it.",
        examples=["13/16"],
    )
    box_front: Size | None = Field(
        None,
        description=(
            "Thickness of the box's own front where another is screwed to it; left out, as the side, or "
            "1/8 in more where it keeps a lap."
        ),
        examples=["1/2"],
    )
    side: Size = Field(0.5, description="Thickness of a side.", examples=["1/2"])
    back: Size | None = Field(
        None, description="Thickness of a back; left out, as the side.", examples=["1/2"]
    )
    lap: Size | None = Field(
        None,
        description=(
            "Wood left in front of the tails; left out, about a quarter of the front, or more before thick "
            "sides."
        ),
        examples=["3/16"],
    )
    rabbet: Clearance | None = Field(
        None,
        description="Depth of the registration rabbet on the inside of the tails; 0 for none.",
        examples=["1/16"],
    )
    proud: Clearance = Field(
        0.0, description="How far a side is to stand proud of the front's end for planing.", examples=["0"]
    )
    drop: Clearance = Field(
        0.125, description="How far the back stands below the top of the sides.", examples=["1/8"]
    )
    groove: BottomGroove = Field(default_factory=BottomGroove, description="The groove for the bottom.")
    bottom: Bottom = Field(default_factory=SolidBottom, description="The bottom.")
    bottom_play: Clearance = Field(0.03125, description="Play of a bottom at each side.", examples=["1/32"])
    muntin: Muntin = Field(default_factory=Muntin, description="The bar under a wide bottom.")
    front_joint: FrontJoint = Field(
        default_factory=HalfBlindDovetail, description="How the sides are joined to the front."
    )
    back_joint: BackJoint = Field(
        default_factory=ThroughDovetail, description="How the sides are joined to the back."
    )
    clearances: Clearances = Field(default_factory=Clearances, description="Running clearances.")
    running: Running = Field(default_factory=OnRunners, description="What the drawers run on.")
    stops: Stops = Field(default_factory=Stops, description="Where the drawers stop, in and out.")
    lining: Clearance = Field(
        0.0,
        description="Thickness of a lining of felt or leather, at the bottom and all around; 0 for none.",
        examples=["1/16"],
    )
    load_lb: float | None = Field(
        None,
        gt=0,
        le=2000,
        description="What a full drawer holds, in pounds. Left out: clothing, by the room in it.",
        examples=[60],
    )

    @property
    def on_frames(self) -> bool:
        """Whether frames and runners carry the drawers from below."""
        return self.running.kind in {"runners", "centre guide", "full-length runners"}

    @property
    def back_kind(self) -> str:
        """How the back is joined: through, where it is asked to be as a front that it cannot be like."""
        if self.back_joint.kind == "as the front" and self.front_joint.kind in NO_BACK_LIKE_IT:
            return "through dovetail"
        return self.back_joint.kind

    @property
    def has_box_front(self) -> bool:
        """Whether the box has a front of its own, to which the show front is screwed."""
        return _has_box_front(self)

    @property
    def joined_front(self) -> float:
        """Thickness of the board in front that the sides are joined to [in]."""
        if not self.has_box_front:
            return self.front
        return self.side if self.box_front is None else self.box_front

    @property
    def fronts_outside(self) -> bool:
        """Whether the fronts stand before the case, with nothing of them in their openings."""
        return isinstance(self.style, FullOverlay | HalfOverlay)

    @property
    def stands_before(self) -> float:
        """How far a front stands before the front edge of the case [in]."""
        if isinstance(self.style, Lipped):
            return self.style.thick
        return self.front if self.fronts_outside else 0.0

    @property
    def screwed_under(self) -> bool:
        """Whether the bottom is screwed under the box, without a groove."""
        bottom = self.bottom
        return bottom.screwed_under if isinstance(bottom, SolidBottom) else bottom.hold == "screwed under"

    @property
    def bottom_thickness(self) -> float:
        """Thickness of the bottoms, a sheet as it measures [in]."""
        bottom = self.bottom
        return bottom.thickness if isinstance(bottom, SolidBottom) else bottom.bought.thickness


@of_the_same(8)  # asked for some ninety times while a unit is worked out
def _has_box_front(drawers: Drawers) -> bool:
    slid = isinstance(drawers.front_joint, SlidingDovetail)
    return isinstance(drawers.style, AppliedFront) or (drawers.fronts_outside and not slid)
