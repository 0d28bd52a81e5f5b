"""What closes a case and what it stands on: its top, its base and its back."""

from typing import Annotated, Any, Literal, Self

from pydantic import BeforeValidator, Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Clearance, Size, Spec
from casewright.pieces.asked.panel_spec import Panelling, SheetChoice
from casewright.wood.sheets import Sheet

OVERHANGS = ("overhang_sides", "overhang_front", "overhang_back")
FLUSH = ("dovetails", "none")
"""Without a top of its own a case has no overhang."""


class Top(Spec):
    """The top, and how it is held: by something that lets it move, or as a part of the case."""

    thickness: Size = Field(0.875, description="Thickness of the top.", examples=["7/8"])
    overhang_sides: Clearance = Field(0.75, description="Overhang at each side.", examples=["3/4"])
    overhang_front: Clearance = Field(0.75, description="Overhang at the front.", examples=["3/4"])
    overhang_back: Clearance = Field(0.0, description="Overhang at the back.", examples=["0"])
    fixing: Literal["buttons", "slots", "clips", "dovetails", "none"] = Field(
        "buttons",
        description=(
            "The top of a carcase is held by wooden buttons, by screws in slots of the rails, or by metal "
            "clips; or it is dovetailed between the sides in place of rails; or there is none, where the "
            "piece hangs or stands under a counter. Left out: buttons, or screws in slots of the case top "
            "where the case is plywood."
        ),
        examples=["slots"],
    )
    spacing: Size = Field(
        10.0, description="Fixings along a rail are no further apart (common practice).", examples=["10"]
    )
    slack: Clearance | None = Field(
        None,
        description="How far the rear fixings give. Left out: what the top moves, and 1/32 in more.",
        examples=["1/8"],
    )

    @model_validator(mode="before")
    @classmethod
    def flush_without_a_top(cls, value: Any) -> Any:
        """A case without a top of its own has no overhang, whatever the usual one is."""
        if isinstance(value, dict) and value.get("fixing") in FLUSH:
            return {**dict.fromkeys(OVERHANGS, 0), **value}
        return value

    @model_validator(mode="after")
    def no_overhang_between_sides(self) -> Self:
        if self.fixing in FLUSH and any(getattr(self, name) for name in OVERHANGS):
            raise PydanticCustomError(
                "choice",
                "{which} has no overhang; leave the overhangs out, or write 0",
                {
                    "which": "a top dovetailed between the sides"
                    if self.is_dovetailed
                    else "a case without a top"
                },
            )
        return self

    @property
    def is_dovetailed(self) -> bool:
        """Whether it is a part of the case, between the sides."""
        return self.fixing == "dovetails"

    @property
    def over(self) -> Inches:
        """What it adds to the height of the body; nothing as a part of that, or where there is none [in]."""
        return 0.0 if self.fixing in FLUSH else self.thickness


class Plinth(Spec):
    """A plinth: a closed base of boards on edge."""

    kind: Literal["plinth"] = Field("plinth", description="A closed base of boards.", examples=["plinth"])
    height: Size = Field(4.0, description="Height of the base.", examples=["4"])
    thickness: Size = Field(0.75, description="Thickness of its boards.", examples=["3/4"])
    setback: Clearance = Field(
        0.0, description="How far it stands back from the case, at the front and the sides.", examples=["0"]
    )
    corner: Literal["mitred", "butt"] = Field(
        "mitred",
        description="The front corners: mitred, or the front butted over the ends of the returns.",
        examples=["butt"],
    )


class BracketFeet(Spec):
    """Bracket feet: two boards mitred together at each front corner, one with a plain bracket at the rear."""

    kind: Literal["brackets"] = Field(description="Feet of boards on edge.", examples=["brackets"])
    height: Size = Field(4.0, description="Height of the feet.", examples=["5"])
    thickness: Size = Field(0.75, description="Thickness of their boards.", examples=["13/16"])
    width: Size = Field(6.0, description="Width of a foot each way from its corner.", examples=["6"])
    setback: Clearance = Field(
        0.0, description="How far the feet stand back from the front of the case.", examples=["1/2"]
    )
    forward: Clearance = Field(
        0.0,
        description="How far the front feet stand before the case: that helps against tipping.",
        examples=["3/4"],
    )
    rear: Clearance = Field(
        0.0, description="How far the rear feet stand in from the rear of the case.", examples=["0"]
    )


class TurnedFeet(Spec):
    """Turned feet, each tenoned into a block under the case."""

    kind: Literal["turned"] = Field(description="Feet turned on a lathe.", examples=["turned"])
    height: Size = Field(4.0, description="Height from the floor to the case.", examples=["5"])
    diameter: Size = Field(3.0, description="Greatest diameter of a foot.", examples=["3"])
    pad: Size | None = Field(
        None,
        description="Diameter of what stands on the floor. Left out: half of the greatest.",
        examples=["1-1/2"],
    )
    number: int | None = Field(
        None,
        ge=4,
        le=5,
        description="Four, or five with one under the middle. Left out: five under a case over 48 in wide.",
        examples=[4],
    )
    layers: int | None = Field(
        None,
        ge=1,
        le=8,
        description="Boards glued up for the square of a foot. Left out: as many as 8/4 boards make.",
        examples=[2],
    )
    block: Size = Field(
        1.0,
        description="Thickness of the block under the case that each foot is tenoned into.",
        examples=["1"],
    )
    tenon: Size = Field(1.0, description="Diameter of the round tenon on a foot.", examples=["1"])
    setback: Clearance = Field(
        0.0, description="How far the feet stand back from the front of the case.", examples=["1/2"]
    )
    forward: Clearance = Field(
        0.0,
        description="How far the front feet stand before the case: that helps against tipping.",
        examples=["3/4"],
    )
    rear: Clearance = Field(
        0.0, description="How far the rear feet stand in from the rear of the case.", examples=["0"]
    )

    @property
    def on_floor(self) -> Inches:
        """Diameter of what stands on the floor [in]."""
        return self.diameter / 2 if self.pad is None else self.pad

    @model_validator(mode="after")
    def smaller_inside(self) -> Self:
        for name in ("pad", "tenon"):
            size = getattr(self, name)
            if size is not None and size > self.diameter:
                raise PydanticCustomError(
                    "choice", "a foot is thicker than its {name}; make the diameter more", {"name": name}
                )
        if self.block >= self.height:
            raise PydanticCustomError(
                "choice", "the block is as high as the feet; make the feet higher or the block thinner"
            )
        return self


class ToeBase(SheetChoice):
    """A box of its own under a built-in, set back at the front for the toes."""

    kind: Literal["toe"] = Field(description="A low box, set back for the toes.", examples=["toe"])
    height: Size = Field(4.0, description="Floor to the underside of the case.", examples=["4"])
    toe_space: Clearance = Field(
        3.0, description="How far its face stands back from the front of the case.", examples=["3"]
    )
    made_of: Literal["sheet", "solid"] = Field(
        "sheet", description="Plywood, or solid wood.", examples=["solid"]
    )
    nominal: str = Field(
        "3/4", min_length=1, max_length=20, description="Nominal thickness it is sold by.", examples=["3/4"]
    )
    thickness: Size = Field(0.75, description="Thickness of solid boards.", examples=["3/4"])
    apart: Size = Field(
        24.0, description="Cross members are no further apart (common practice).", examples=["24"]
    )
    facing: Clearance = Field(
        0.25,
        description="Thickness of the show-wood face in front of the box; 0 for none.",
        examples=["1/4"],
    )
    levelling: Clearance = Field(
        0.5,
        description="What is left under the box for levelling feet or wedges: floors are not flat.",
        examples=["1/2"],
    )

    @property
    def board(self) -> Sheet | None:
        """The sheet that it is cut from; None for solid wood."""
        return self.bought if self.made_of == "sheet" else None

    @property
    def wall(self) -> Inches:
        """Thickness of its boards [in]."""
        return self.board.thickness if self.board else self.thickness

    @model_validator(mode="after")
    def can_be_made(self) -> Self:
        if self.levelling >= self.height / 2:
            raise PydanticCustomError(
                "choice", "more than half of the base is left for levelling; make it higher"
            )
        return self


def kind_of_base(value: Any) -> Any:
    """A base that does not say its kind is a plinth: so it was in files written before there were others."""
    return {"kind": "plinth", **value} if isinstance(value, dict) and "kind" not in value else value


Base = Annotated[
    Annotated[Plinth | BracketFeet | TurnedFeet | ToeBase, Field(discriminator="kind")],
    BeforeValidator(kind_of_base),
]


def stands_from(base: Base | None) -> Inches:
    """Where the front of what stands on the floor lies.

    Args:
        base: what the case stands on; None where it stands on its own sides

    Returns:
        From the front edge of the case back to the line over which the piece would tip forwards; below
        nothing where the feet stand before the case [in]

    Source: geometry; a turned foot bears on its pad, the face of a toe base does not bear.
    """
    if isinstance(base, Plinth):
        return base.setback
    if isinstance(base, ToeBase):
        return base.toe_space + base.facing
    if isinstance(base, BracketFeet):
        return base.setback - base.forward
    if isinstance(base, TurnedFeet):
        return base.setback - base.forward + (base.diameter - base.on_floor) / 2
    return 0.0


def stands_to(base: Base | None, depth: Inches) -> Inches:
    """Where the rear of what stands on the floor lies.

    Args:
        base: what the case stands on; None where it stands on its own sides
        depth: depth of the case [in]

    Returns:
        From the front edge of the case back to the line over which the piece would tip backwards [in]

    Source: geometry; a turned foot bears on its pad.
    """
    if isinstance(base, BracketFeet):
        return depth - base.rear
    if isinstance(base, TurnedFeet):
        return depth - base.rear - (base.diameter - base.on_floor) / 2
    return depth


class BackPanelling(Panelling):
    """The frame and the panels of a panelled back: slimmer than those of a side."""

    stile: Size = Field(2.5, description="Width of a stile.", examples=["2-1/2"])
    muntins: int | None = Field(
        None,
        ge=0,
        le=12,
        description=(
            "Uprights between panels side by side. Left out: as many as keep each solid panel within 14 in."
        ),
        examples=[1],
    )
    panel: Size = Field(
        0.3125,
        description="Thickness of a solid panel; its edges are thinned to the groove on the outside.",
        examples=["5/16"],
    )


BackKind = Literal["shiplap", "tongued", "panelled", "rabbeted-ply", "grooved-ply", "none"]
BOARDED = ("shiplap", "tongued")


class Back(Spec):
    """The back of a carcase: boards or a frame in rabbets, plywood in rabbets or grooves."""

    kind: BackKind = Field(
        "shiplap",
        description=(
            "Boards lapped or tongued, a frame with panels, plywood in rabbets or in grooves, or none."
        ),
        examples=["tongued"],
    )
    thickness: Size = Field(0.5, description="Thickness of the boards, or of the frame.", examples=["1/2"])
    rabbet: Size = Field(0.375, description="How far the back reaches into each side.", examples=["3/8"])
    lap: Size = Field(0.375, description="Width of the shiplap, or length of the tongue.", examples=["3/8"])
    tongue: Size | None = Field(
        None, description="Thickness of the tongue. Left out: a third of the board.", examples=["3/16"]
    )
    gap: Clearance = Field(0.0625, description="Gap left at each lap for swelling.", examples=["1/16"])
    boards: int | None = Field(
        None,
        ge=1,
        le=60,
        description="How many boards; left out, no more than the widest allows.",
        examples=[7],
    )
    widest: Size = Field(
        6.0,
        description="Widest back board: up to this it lies flat and stays in its laps (common practice).",
        examples=["6"],
    )
    panelling: BackPanelling = Field(
        default_factory=BackPanelling, description="A panelled back; counts for no others."
    )
    ply: SheetChoice = Field(
        default_factory=SheetChoice, description="The sheet of a plywood back; counts for no others."
    )
    groove: Size = Field(
        0.25, description="How far a plywood back reaches into each of its grooves.", examples=["1/4"]
    )
    play: Clearance = Field(
        0.03125,
        description="How much deeper a groove or rabbet is cut than plywood reaches into it.",
        examples=["1/32"],
    )
    behind: Clearance = Field(
        0.5,
        description="Wood left behind the grooves of a plywood back, for scribing or a hanging rail.",
        examples=["1/2"],
    )

    @property
    def is_boarded(self) -> bool:
        """Whether it is of boards that move in their laps."""
        return self.kind in BOARDED

    @property
    def sheet(self) -> Sheet | None:
        """The sheet of a plywood back; None for another one."""
        return self.ply.bought if self.kind.endswith("ply") else None

    @property
    def wall(self) -> Inches:
        """Its thickness; nothing where there is none [in]."""
        if self.kind == "none":
            return 0.0
        return self.sheet.thickness if self.sheet else self.thickness

    @property
    def room(self) -> Inches:
        """What it takes of the depth, with the wood behind it [in]."""
        return self.wall + (self.behind if self.kind == "grooved-ply" else 0.0)
