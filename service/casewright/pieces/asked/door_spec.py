"""How the doors are made: frames with a panel, or slabs; inset in their opening, or over its edges."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.pieces.asked.fields import Clearance, Size, Spec, WoodField
from casewright.pieces.asked.panel_spec import Panelling
from casewright.wood.sheets import Sheet, sheet


class FramedLeaf(Panelling):
    """Stiles and rails, tenoned and grooved, with panels that are free to move in the groove."""

    kind: Literal["frame-and-panel"] = Field(
        "frame-and-panel", description="A frame with its panels.", examples=["frame-and-panel"]
    )
    stile: Size = Field(2.25, description="Width of a stile.", examples=["2-1/4"])
    panel: Size = Field(
        0.5,
        description="Thickness of a solid panel; its edges are thinned to the groove on the outside.",
        examples=["1/2"],
    )


class SlabLeaf(Spec):
    """One board or sheet: solid wood moves over its whole width, plywood does not."""

    kind: Literal["slab"] = Field(description="A slab.", examples=["slab"])
    held: Literal["battens", "breadboard", "plain", "ply"] = Field(
        "battens",
        description=(
            "What keeps it flat: battens behind it, screwed through slots; breadboard ends; nothing; or "
            "it is plywood."
        ),
        examples=["breadboard"],
    )
    batten: Size = Field(2.5, description="Width of a batten or of a breadboard end.", examples=["2-1/2"])
    batten_thickness: Size = Field(0.75, description="Thickness of a batten.", examples=["3/4"])
    tongue: Size = Field(0.5, description="Tongue of the slab in a breadboard end.", examples=["1/2"])
    sheet: str = Field(
        "hardwood plywood",
        min_length=1,
        max_length=80,
        description="Kind of sheet of a plywood slab.",
        examples=["hardwood plywood"],
    )
    nominal: str = Field(
        "3/4", min_length=1, max_length=20, description="Thickness it is sold by.", examples=["3/4"]
    )

    @model_validator(mode="after")
    def in_the_table(self) -> Self:
        if self.held == "ply":
            try:
                sheet(self.sheet, self.nominal)
            except ValueError as error:
                raise PydanticCustomError("choice", "{reason}", {"reason": str(error)}) from None
        return self

    @property
    def bought(self) -> Sheet | None:
        """The sheet of a plywood slab, with what it really measures; None for solid wood."""
        return sheet(self.sheet, self.nominal) if self.held == "ply" else None


Leaf = Annotated[FramedLeaf | SlabLeaf, Field(discriminator="kind")]


class Doors(Spec):
    """Every door of the piece; which openings have doors is said by the rows and columns."""

    make: Leaf = Field(
        default_factory=FramedLeaf,
        description="A frame with a panel, or a slab.",
        examples=[{"kind": "slab", "held": "breadboard"}],
    )
    thickness: Size = Field(0.75, description="Thickness of a leaf, usually 3/4 to 7/8 in.", examples=["7/8"])
    style: Literal["inset", "half overlay", "full overlay"] = Field(
        "inset",
        description="Inset within its opening, over a part of its edges, or over all of them.",
        examples=["full overlay"],
    )
    gap: Clearance = Field(
        0.0625,
        description="Gap left beside and above an inset leaf when it is wettest; below it the same.",
        examples=["1/16"],
    )
    meeting: Clearance = Field(
        0.0625, description="Gap left between two leaves when they are wettest.", examples=["1/16"]
    )
    overlay: Size = Field(
        0.375, description="How far a half-overlay leaf reaches over each edge.", examples=["3/8"]
    )
    reveal: Clearance = Field(
        0.0625,
        description="What a full-overlay leaf leaves of the case outside, or of a divider that two share.",
        examples=["1/16"],
    )
    hinge: str = Field(
        "butt hinge",
        min_length=1,
        max_length=80,
        description="The hinge, by its name in the price list.",
        examples=["butt hinge"],
    )
    hinge_length: Size = Field(2.5, description="Length of a hinge.", examples=["2-1/2"])
    hinge_offset: Size | None = Field(
        None,
        description=(
            "From the end of a leaf to the nearer end of its hinge. Left out: as long as the hinge, or less "
            "on a low door."
        ),
        examples=["2-1/2"],
    )
    hinge_leaf: Size | None = Field(
        None,
        description=(
            "Width of one leaf of the hinge, from its outer edge to the middle of the pin. Left out: all but "
            "1/8 in of the wood that it lies on."
        ),
        examples=["5/8"],
    )
    hinge_closed: Size = Field(
        0.1875,
        description=(
            "Thickness of the closed hinge, measured over both leaves; usually two leaves of 3/32 in."
        ),
        examples=["3/16"],
    )
    hinge_gains: Literal["both", "door", "none"] = Field(
        "both",
        description=(
            "What the hinges are let into: door and case half each, the door alone, or nothing, as hinges "
            "that lie on the surface or are bored for."
        ),
        examples=["door"],
    )
    knob: str = Field(
        "knob",
        min_length=1,
        max_length=80,
        description="The knob, by its name in the price list.",
        examples=["knob"],
    )
    catch: str = Field(
        "door catch",
        min_length=1,
        max_length=80,
        description="The catch, by its name in the price list.",
        examples=["door catch"],
    )
    wood: WoodField | None = Field(
        None, description="Stiles and rails, or slabs; left out, as the case.", examples=["cherry"]
    )
    panel_wood: WoodField | None = Field(
        None, description="Panels; left out, as their frames.", examples=["cherry"]
    )
