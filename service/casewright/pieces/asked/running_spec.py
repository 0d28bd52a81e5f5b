"""How drawers run, how they are stopped, and what they are pulled by."""

from typing import Annotated, Literal

from pydantic import Field

from casewright.pieces.asked.fields import Clearance, Size, Spec


class OnRunners(Spec):
    """Runners under the sides, kickers above them; the case, or guides on legs, keep the drawer straight."""

    kind: Literal["runners"] = Field("runners", description="Runners and kickers.", examples=["runners"])


class SideHung(Spec):
    """A batten at each side of the opening, in a groove in the drawer's side: no frame is needed."""

    kind: Literal["side-hung"] = Field(description="Hung on battens at its sides.", examples=["side-hung"])
    batten: Size = Field(
        0.5, description="Thickness of a batten, up and down (common practice).", examples=["1/2"]
    )
    projection: Size = Field(
        0.25,
        description="How far a batten projects from the side of the opening (common practice).",
        examples=["1/4"],
    )
    height: Size | None = Field(
        None,
        description="Bottom edge of the drawer's side up to its groove. Left out: its middle at half height.",
        examples=["2-1/2"],
    )


class CentreGuide(Spec):
    """Runners and kickers, and one guide under the middle of the bottom that keeps the drawer straight."""

    kind: Literal["centre guide"] = Field(
        description="Led by a guide under its middle.", examples=["centre guide"]
    )
    guide_width: Size = Field(1.0, description="Width of the guide (common practice).", examples=["1"])
    guide_height: Size | None = Field(
        None,
        description="Height of the guide. Left out: what the room under the bottom allows, less 1/32 in.",
        examples=["3/16"],
    )


class FullRunners(Spec):
    """Runners from the front rail to the back, fixed to the sides of the case: for heavy drawers."""

    kind: Literal["full-length runners"] = Field(
        description="Runners from the front rail to the back.", examples=["full-length runners"]
    )


class OnSlides(Spec):
    """Metal slides, from the shop's table of slides. The maker's sheet governs."""

    kind: Literal["slides"] = Field(description="Metal slides.", examples=["slides"])
    slide: str | None = Field(
        None,
        min_length=1,
        max_length=80,
        description="The slide, by its name in the table of slides. Left out: the first of the table.",
        examples=["side-mount, full travel"],
    )
    length: Size | None = Field(
        None,
        description="Length of the slides. Left out: the longest of the table that goes in.",
        examples=["18"],
    )


Running = Annotated[OnRunners | SideHung | CentreGuide | FullRunners | OnSlides, Field(discriminator="kind")]


class Stops(Spec):
    """What a closed drawer comes to stand against, and what keeps it from coming right out."""

    blocks: bool = Field(
        True, description="Stop blocks on the rail, behind the front; slides need none.", examples=[True]
    )
    inset: Clearance = Field(
        0.0,
        description="How far a front stands behind the face of the rails; 0 where it is flush.",
        examples=["1/32"],
    )
    outstop: Literal["turn-button", "pin", "none"] | None = Field(
        None,
        description=(
            "What keeps a drawer from coming right out: a button on its back that is turned up, a pin in the "
            "kicker, or nothing. Left out: one of the maker's own, of which no part is counted."
        ),
        examples=["turn-button"],
    )
    travel: Size | None = Field(
        None,
        description=(
            "How far a drawer opens to its outstop. Left out: the share of its length under `use`, or the "
            "travel of its slides."
        ),
        examples=["12-1/2"],
    )


class Pulls(Spec):
    """The pulls, on the centre lines of the half-width drawers."""

    item: str = Field(
        "pull",
        min_length=1,
        max_length=80,
        description="The pull, by its name in the price list.",
        examples=["pull"],
    )
    count: Literal["by width", "one", "two"] = Field(
        "by width",
        description="How many on a drawer: by the width of its opening, always one, or always two.",
        examples=["by width"],
    )
    one_up_to: Size = Field(
        24.0,
        description="A drawer gets one pull when its opening is no wider, else two (common practice).",
        examples=["24"],
    )
    holes: Literal["one", "two"] = Field(
        "one", description="A knob with one screw, or a pull with two.", examples=["two"]
    )
    centres: Size = Field(
        3.0,
        description="From screw to screw of a pull with two, centre to centre (common practice).",
        examples=["96 mm"],
    )
    screw: Size = Field(
        0.1875, description="Diameter of the hole for a screw (common practice).", examples=["3/16"]
    )
    height: Literal["middle", "upper third", "from the top"] = Field(
        "middle",
        description="How high on the front: in its middle, a third of it down, or a fixed way down.",
        examples=["middle"],
    )
    down: Size = Field(
        2.0,
        description="The fixed way: top edge of the front down to the screws (common practice).",
        examples=["2"],
    )
    spare_per: int = Field(
        8, ge=1, le=1000, description="One spare pull is ordered for each so many fitted.", examples=[8]
    )
    weight_lb: float = Field(0.3, ge=0, le=20, description="Weight of one pull in pounds.", examples=[0.3])
