"""How the fronts of the drawers sit in, or before, the front of the case."""

from typing import Annotated, Any, Literal

from pydantic import Discriminator, Field, Tag

from casewright.pieces.asked.fields import Clearance, Size, Spec


class Inset(Spec):
    """A front in its opening, flush with the case."""

    kind: Literal["inset"] = Field(
        "inset", description="In its opening, flush with the case.", examples=["inset"]
    )


class CockBeaded(Spec):
    """A front in its opening with a bead around it that stands a little proud."""

    kind: Literal["cock-beaded"] = Field(
        description="In its opening, with a bead around it.", examples=["cock-beaded"]
    )
    bead: Size = Field(0.125, description="Thickness of the bead.", examples=["1/8"])
    projection: Size = Field(
        0.0625, description="How far the bead stands before the front.", examples=["1/16"]
    )
    rabbet: Size | None = Field(
        None,
        description="How far the bead goes in from the face at ends and bottom; left out, as far as the lap.",
        examples=["3/16"],
    )


class Lipped(Spec):
    """A front that is rabbeted around, so that its lips cover the edges of the opening."""

    kind: Literal["lipped"] = Field(
        description="Rabbeted around, its lips before the case.", examples=["lipped"]
    )
    lip: Size = Field(0.375, description="Width of the rabbet, which is the lip.", examples=["3/8"])
    thick: Size = Field(
        0.375, description="Thickness of the lip: so far the front stands before the case.", examples=["3/8"]
    )
    bottom: bool = Field(False, description="Has it a lip at the bottom too?", examples=[False])


class FullOverlay(Spec):
    """Fronts before the case that cover all of it but a reveal."""

    kind: Literal["full overlay"] = Field(
        description="Before the case, covering all of it.", examples=["full overlay"]
    )
    edge: Clearance = Field(
        0.0625, description="Edge reveal: from the outer fronts to the edges of the case.", examples=["1/16"]
    )
    gap: Size = Field(0.125, description="Gap between two fronts.", examples=["1/8"])
    share: Literal["as the openings", "over the dividers"] | None = Field(
        None,
        description=(
            "Fronts in proportion to their openings, or with their gaps over the middle of the dividers. "
            "Left out: in proportion where each then covers its opening, else over the dividers."
        ),
        examples=["over the dividers"],
    )


class HalfOverlay(Spec):
    """Fronts before the case that cover the edges of their openings by an overlay."""

    kind: Literal["half overlay"] = Field(
        description="Before the case, over the edges of the opening.", examples=["half overlay"]
    )
    overlay: Size | None = Field(
        None,
        description="How far a front covers each edge of its opening; left out, half a divider less 1/16 in.",
        examples=["5/16"],
    )


class AppliedFront(Spec):
    """A box with a front of its own, in the opening behind a show front that is screwed to it from inside."""

    kind: Literal["applied front"] = Field(
        description="In its opening, screwed to a box with a front of its own.", examples=["applied front"]
    )


def _kind_of(given: Any) -> Any:
    return given.get("kind", "inset") if isinstance(given, dict) else getattr(given, "kind", None)


FrontStyle = Annotated[
    Annotated[Inset, Tag("inset")]
    | Annotated[CockBeaded, Tag("cock-beaded")]
    | Annotated[Lipped, Tag("lipped")]
    | Annotated[FullOverlay, Tag("full overlay")]
    | Annotated[HalfOverlay, Tag("half overlay")]
    | Annotated[AppliedFront, Tag("applied front")],
    Discriminator(_kind_of),
]
STYLES: tuple[type[Spec], ...] = (Inset, CockBeaded, Lipped, FullOverlay, HalfOverlay, AppliedFront)
"""Every style of front."""
