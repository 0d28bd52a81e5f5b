"""How frame-and-panel work is made, wherever it stands: a case side, a door, a back."""

from dataclasses import replace
from typing import Any, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Clearance, Size, Spec
from casewright.wood.movement import Cut
from casewright.wood.sheets import Sheet, sheet


def measured_sheet(kind: str, nominal: str, measures: Inches | None) -> Sheet:
    """A sheet of the table, as thick as it was measured.

    Args:
        kind: such as `birch plywood`
        nominal: the thickness that it is sold by, such as `1/4`
        measures: what it measures; None for what the table says [in]

    Returns:
        The sheet.

    Raises:
        ValueError: the table has no such sheet

    Source: the table of sheets; what was measured beats it.
    """
    found = sheet(kind, nominal)
    return found if measures is None else replace(found, thickness=measures)


class SheetChoice(Spec):
    """A sheet of the sheet table, by its kind and the thickness that it is sold by."""

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
        None, description="What the sheet measures. Left out, as the table has it.", examples=["18 mm"]
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

    @property
    def material(self) -> dict[str, Any]:
        """Its name and kind, ready to be handed to a part."""
        return {"wood": str(self.bought), "cut": Cut.FLAT, "sheet": True}


class Panelling(Spec):
    """Stiles and rails around panels that lie loose in grooves."""

    stile: Size = Field(3.0, description="Width of a stile.", examples=["3"])
    top_rail: Size | None = Field(
        None, description="Width of the top rail. Left out, as the stiles.", examples=["3"]
    )
    bottom_rail: Size | None = Field(
        None, description="Width of the bottom rail. Left out, as the stiles.", examples=["4"]
    )
    middle_rails: int = Field(0, ge=0, le=6, description="Rails between the two.", examples=[1])
    middle_rail: Size | None = Field(
        None, description="Width of a middle rail. Left out, as the stiles.", examples=["3"]
    )
    muntins: int | None = Field(
        0,
        ge=0,
        le=12,
        description="Uprights between panels side by side; null for as many as keep each panel within 14 in.",
        examples=[1],
    )
    muntin: Size | None = Field(
        None, description="Width of a muntin. Left out, as the stiles.", examples=["2-1/2"]
    )
    panel: Size = Field(
        0.5,
        description="Thickness of a solid panel; its edges are thinned to the groove on the outside.",
        examples=["1/2"],
    )
    ply: SheetChoice | None = Field(
        None,
        description="The sheet of plywood panels; null for solid ones.",
        examples=[{"sheet": "hardwood plywood", "nominal": "1/4"}],
    )
    groove_depth: Size = Field(0.375, description="Depth of the grooves for the panel.", examples=["3/8"])
    groove_width: Size | None = Field(
        None,
        description=(
            "Width of the grooves. Left out: 1/4 in, less in a frame under 5/8 in, or what the sheet of a "
            "plywood panel measures."
        ),
        examples=["1/4"],
    )
    play: Clearance | None = Field(
        None,
        description=(
            "Play of the panel in each groove at its sides. Left out: half of what it swells, and 1/32 in "
            "more."
        ),
        examples=["3/32"],
    )
    tenon: Size | None = Field(
        None,
        description=(
            "Length of the rails' tenons. Left out: two thirds of the stile, as far as its walls allow."
        ),
        examples=["1-1/4"],
    )


class PlySides(SheetChoice):
    """The sheet that a case of plywood is made of, and the solid lipping on its front edges."""

    nominal: str = Field(
        "3/4", min_length=1, max_length=20, description="Nominal thickness it is sold by.", examples=["3/4"]
    )
    lipping: Clearance = Field(
        0.25,
        description="Width of the solid lipping on the front edges; 0 for none.",
        examples=["1/4"],
    )


class DustPanel(SheetChoice):
    """The thin panel that closes a web frame against dust, in grooves of its rails and runners."""

    groove: Size = Field(0.25, description="Depth of the grooves for the panel.", examples=["1/4"])
