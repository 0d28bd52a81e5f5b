"""Stock to cut from: boards as they came, sheets, and stock sold by length."""

from typing import Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.cutting.asked.parts_spec import Code, ThicknessName, Words
from casewright.measure.fields import Clearance, Length, Money, Size, Spec

MOST_ALIKE = 5_000


class Defect(Spec):
    """A rectangle on a board that no part may have: a knot, a check, wane."""

    kind: Words = Field("", description="What it is.", examples=["knot"])
    from_end: Length = Field(ge=0, le=1200, description="From the first end of the board.", examples=["30"])
    from_edge: Length = Field(ge=0, le=1200, description="From its near edge.", examples=["2"])
    length: Size = Field(description="Along the board.", examples=["2"])
    width: Size = Field(description="Across the board.", examples=["1-1/2"])
    face: Literal["front", "back", "both"] = Field(
        "both", description="The face that it is on.", examples=["back"]
    )


class Stock(Spec):
    """What boards, sheets and lengths have in common."""

    code: Code = Field(description="Its mark.", examples=["B3"])
    wood: Code = Field(
        description="What it is, in the words of the parts: a wood, or a kind of sheet.", examples=["cherry"]
    )
    length: Size = Field(description="From end to end.", examples=["96"])
    cost: Money | None = Field(
        None, description="Of one; left out, it counts by its size.", examples=["38.50"]
    )
    offcut: bool = Field(False, description="Is it left from another job?", examples=[True])
    place: Words = Field("", description="Where it lies.", examples=["rack 2"])
    spare: bool = Field(
        False,
        description="Is it not to be cut up for this, but named as a way out where parts find no place?",
        examples=[True],
    )


class Board(Stock):
    """A board, or several that are alike."""

    thickness_class: ThicknessName = Field(
        alias="class", description="The class that it was bought in.", examples=["4/4"]
    )
    thickness: Size | None = Field(
        None, description="As it measures; left out, that of its class.", examples=["1"]
    )
    width: Size = Field(description="At its first end.", examples=["7-1/2"])
    width_middle: Size | None = Field(
        None, description="Half way; left out, between its ends.", examples=["7-1/4"]
    )
    width_end: Size | None = Field(
        None, description="At its other end; left out, as at the first.", examples=["7"]
    )
    count: int = Field(1, ge=1, le=MOST_ALIKE, description="How many are alike.", examples=[1])
    sap_near: Clearance = Field(0.0, description="Sapwood along the near edge.", examples=["1"])
    sap_far: Clearance = Field(0.0, description="Sapwood along the far edge.", examples=["1-1/2"])
    defects: tuple[Defect, ...] = Field(
        (),
        max_length=60,
        description="Rectangles that no part may have.",
        examples=[[{"from_end": "30", "from_edge": "2", "length": "2", "width": "1-1/2"}]],
    )
    log: Words = Field("", description="Mark of the log that it came from.", examples=["7"])

    @property
    def narrowest(self) -> float:
        """The least of its widths [in]."""
        return min(width for _, width in self.outline)

    @property
    def widest(self) -> float:
        """The greatest of its widths [in]."""
        return max(width for _, width in self.outline)

    @property
    def outline(self) -> tuple[tuple[float, float], ...]:
        """Its width at places along it: how far from the first end, and how wide [in]."""
        end = self.width if self.width_end is None else self.width_end
        middle = () if self.width_middle is None else ((self.length / 2, self.width_middle),)
        return (0.0, self.width), *middle, (self.length, end)

    @model_validator(mode="after")
    def _defects_on_it(self) -> Self:
        for number, defect in enumerate(self.defects, 1):
            if defect.from_end >= self.length or defect.from_edge >= self.widest:
                raise PydanticCustomError(
                    "choice",
                    "defects[{number}] lies beyond the board {code}; measure it from the first end and the "
                    "near edge",
                    {"number": number, "code": self.code},
                )
        return self


class SheetStock(Stock):
    """A kind of sheet, or an offcut of one."""

    width: Size = Field(description="From edge to edge, across its length.", examples=["48"])
    thickness: Size | None = Field(None, description="As it measures.", examples=["18 mm"])
    count: int | None = Field(
        None,
        ge=1,
        le=MOST_ALIKE,
        description="How many there are; left out, as many as it takes.",
        examples=[3],
    )
    grain: Literal["length", "width", "none"] = Field(
        "length", description="Which way the grain of its face runs.", examples=["none"]
    )
    trim: Clearance = Field(
        0.25, description="Taken off each of its edges (common practice).", examples=["1/4"]
    )


class LengthStock(Stock):
    """Stock that is only cut to length: rods, mouldings, edging."""

    count: int | None = Field(
        None,
        ge=1,
        le=MOST_ALIKE,
        description="How many there are; left out, as many as it takes.",
        examples=[8],
    )
    trim: Clearance = Field(0.0, description="Cut off each of its ends.", examples=["1/2"])
