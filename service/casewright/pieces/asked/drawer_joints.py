"""How the corners of the drawers are joined: front to sides, sides to back."""

from typing import Annotated, Any, Literal

from pydantic import Discriminator, Field, Tag

from casewright.pieces.asked.fields import Clearance, Size, Spec


class Joint(Spec):
    """How a dovetail is set out. What is left out is chosen, and the choice is named."""

    slope: float | None = Field(
        None, gt=1, le=20, description="Slope of the tails, one in this many.", examples=[8]
    )
    half_pin: Size | None = Field(
        None, description="Half pin at the end of the tail board.", examples=["1/8"]
    )
    pin: Size | None = Field(None, description="Pin at the end of the tail board.", examples=["1/8"])


class HalfBlindDovetail(Joint):
    """Tails on the sides, sockets in the front, which keeps a lap before them."""

    kind: Literal["half-blind dovetail"] = Field(
        "half-blind dovetail",
        description="Half-blind dovetail: the front keeps a lap.",
        examples=["half-blind dovetail"],
    )


class ThroughDovetail(Joint):
    """Tails that go through: they show at the face, unless another front covers it."""

    kind: Literal["through dovetail"] = Field(
        "through dovetail", description="Through dovetail.", examples=["through dovetail"]
    )


class SlidingDovetail(Spec):
    """A tail along the end of each side, in a socket across a front that is wider than its box."""

    kind: Literal["sliding dovetail"] = Field(
        description="Sliding dovetail: the front is wider than its box.", examples=["sliding dovetail"]
    )
    depth: Size | None = Field(
        None, description="Depth of the socket; left out, a third of the front.", examples=["1/4"]
    )
    shoulder: Clearance | None = Field(
        None, description="Cut off each face of the side at the tail's tip.", examples=["1/16"]
    )
    slope: float | None = Field(
        None, gt=1, le=20, description="Slope of the tail, one in this many.", examples=[6]
    )
    stop: Clearance = Field(
        0.0,
        description="How far below the side's upper edge the socket ends; 0 where it is open there.",
        examples=["1/2"],
    )


class LockRabbet(Spec):
    """A groove across each side, and a tongue on the front that goes into it."""

    kind: Literal["lock rabbet"] = Field(description="Lock rabbet.", examples=["lock rabbet"])
    lip: Clearance = Field(
        0.0,
        description="What of the front covers the ends of the sides; 0 where they show or are covered.",
        examples=["1/4"],
    )
    tongue: Size | None = Field(
        None, description="Thickness of the tongue, which is the width of the groove.", examples=["1/4"]
    )
    reach: Size | None = Field(
        None, description="Depth of the groove; left out, half the side.", examples=["1/4"]
    )
    from_end: Size | None = Field(
        None,
        description="From the end of the side to its groove; left out, as far as the front allows.",
        examples=["1/4"],
    )


class BoxJoint(Spec):
    """Square fingers all alike, cut by machine."""

    kind: Literal["box joint"] = Field(description="Box joint.", examples=["box joint"])
    finger: Size | None = Field(
        None,
        description=(
            "Width of a finger, which is its cutter's; left out, that of a cutter near the thinner board in "
            "thickness, where there is one in a finger of which the groove lies."
        ),
        examples=["1/2"],
    )
    play: Clearance | None = Field(
        None, description="How much wider a space is than a finger.", examples=["0.004"]
    )
    height: Literal["as fitted", "whole fingers"] | None = Field(
        None,
        description=(
            "As high as the opening lets it be, its top finger with what is left, or lower, so that all "
            "fingers come out whole. Left out: whole fingers behind a show front of its own, else as fitted."
        ),
        examples=["whole fingers"],
    )


class PinnedRabbet(Spec):
    """A rabbet in the front, in which the side lies, held by wooden pins through the side."""

    kind: Literal["rabbet and pins"] = Field(description="Rabbet and pins.", examples=["rabbet and pins"])
    lip: Size | None = Field(
        None,
        description="What of the front is left before the ends of the sides; left out, about a third.",
        examples=["1/4"],
    )
    thick: Size | None = Field(None, description="Thickness of a pin.", examples=["3/16"])
    long: Size | None = Field(
        None, description="Length of a pin; left out, three times the side's thickness.", examples=["1-1/2"]
    )
    edge: Size | None = Field(
        None, description="From the edges to the first pins; left out, 1/2 in.", examples=["1/2"]
    )
    spacing: Size | None = Field(
        None, description="From pin to pin at the most; left out, 1-1/2 in.", examples=["1-1/2"]
    )


class HousedBack(Spec):
    """A back between the sides, in housings that stand in from their ends."""

    kind: Literal["housing"] = Field(description="Housing, which is a dado.", examples=["housing"])
    depth: Size | None = Field(
        None, description="Depth of the housing; left out, a third of the side.", examples=["1/8"]
    )
    set_in: Clearance = Field(
        0.5,
        description="From the ends of the sides to the back: they run on behind it (common practice).",
        examples=["1/2"],
    )
    play: Clearance | None = Field(
        None, description="How much wider the housing is than the back is thick.", examples=["0.004"]
    )


class AsFrontBack(Spec):
    """A back that is joined to the sides as the front is."""

    kind: Literal["as the front"] = Field(description="As the front.", examples=["as the front"])


def _kind(usual: str) -> Discriminator:
    """Tells the joints apart by their kind; one that names none is of the usual kind."""

    def kind_of(given: Any) -> Any:
        return given.get("kind", usual) if isinstance(given, dict) else getattr(given, "kind", None)

    return Discriminator(kind_of)


FrontJoint = Annotated[
    Annotated[HalfBlindDovetail, Tag("half-blind dovetail")]
    | Annotated[ThroughDovetail, Tag("through dovetail")]
    | Annotated[SlidingDovetail, Tag("sliding dovetail")]
    | Annotated[LockRabbet, Tag("lock rabbet")]
    | Annotated[BoxJoint, Tag("box joint")]
    | Annotated[PinnedRabbet, Tag("rabbet and pins")],
    _kind("half-blind dovetail"),
]
BackJoint = Annotated[
    Annotated[ThroughDovetail, Tag("through dovetail")]
    | Annotated[HousedBack, Tag("housing")]
    | Annotated[AsFrontBack, Tag("as the front")],
    _kind("through dovetail"),
]
JOINTS: tuple[type[Spec], ...] = (
    HalfBlindDovetail,
    ThroughDovetail,
    SlidingDovetail,
    LockRabbet,
    BoxJoint,
    PinnedRabbet,
    HousedBack,
    AsFrontBack,
)
"""Every joint of a drawer's corner."""
