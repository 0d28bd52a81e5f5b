"""A table of metal slides: what a maker's sheet says of each, as the shop typed it."""

from collections import Counter
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from typing import Literal, Self

from pydantic import Field, TypeAdapter, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Clearance, Size, Spec

MOST_SLIDES = 40
MOST_LENGTHS = 30
GOVERNS = "the maker's sheet governs"


class OwnSlide(Spec):
    """One model of slide, sold in pairs. The maker's sheet governs."""

    name: str = Field(
        min_length=1,
        max_length=80,
        description="What the shop calls it.",
        examples=["side-mount, full travel"],
    )
    kind: Literal["side-mount", "under-mount"] = Field(
        description="At the sides of the box, or under it.", examples=["side-mount"]
    )
    space_least: Clearance = Field(
        description="Side space at each side, the least the maker allows.", examples=["12.9 mm"]
    )
    space_most: Clearance = Field(description="Side space, the most.", examples=["13.2 mm"])
    deduction: Size | None = Field(
        None,
        description="Under-mount: the box's inside width is the opening less this.",
        examples=["42 mm"],
    )
    side_most: Size | None = Field(
        None, description="Under-mount: the thickest side of a box that it takes.", examples=["5/8"]
    )
    lengths: tuple[Size, ...] = Field(
        min_length=1,
        max_length=MOST_LENGTHS,
        description="The lengths it is sold in.",
        examples=[["16", "18", "20"]],
    )
    behind: Clearance = Field(
        description="What must be left of the inside depth behind it, at least.", examples=["1/8"]
    )
    travel: float | None = Field(
        None, gt=0, le=1.2, description="How far it opens, as a share of its length.", examples=[1.0]
    )
    travel_length: Size | None = Field(
        None, description="How far it opens, as a length, in place of a share.", examples=["450 mm"]
    )
    load_lb: float = Field(gt=0, le=2000, description="What a pair carries [lb].", examples=[100])
    headroom: Clearance = Field(
        description="The box is lower than its opening by this, at least.", examples=["3/4"]
    )
    under: Clearance = Field(description="Of that, what lies under the box.", examples=["1/4"])
    tall: Size = Field(description="How tall the slide is on the side of the box.", examples=["46 mm"])
    recess: Clearance = Field(
        0.0,
        description="Under-mount: its bottom lies above the lower edge of its sides by this.",
        examples=["1/2"],
    )
    notch_width: Clearance = Field(
        0.0, description="Under-mount: width of the two notches at the back.", examples=["35 mm"]
    )
    notch_height: Clearance = Field(
        0.0, description="Under-mount: height of the two notches.", examples=["13 mm"]
    )
    pin_hole: Clearance = Field(
        0.0,
        description="Under-mount: hole in the back for each rear hook, across; 0 for none.",
        examples=["6 mm"],
    )
    pin_in: Clearance = Field(
        0.0,
        description="Under-mount: middle of that hole from the inside face of the side.",
        examples=["7 mm"],
    )
    pin_up: Clearance = Field(
        0.0,
        description="Under-mount: middle of that hole above the underside of the bottom.",
        examples=["11 mm"],
    )
    weight_lb: float = Field(
        ge=0, le=100, description="Weight of a pair, for each foot of its length [lb].", examples=[2.0]
    )
    item: str = Field(
        min_length=1, max_length=80, description="Its name in the price list.", examples=["slides"]
    )
    source: str = Field("", max_length=200, description="Where its figures come from.")
    basis: str = Field("", max_length=80, description="How far they can be trusted.")

    @model_validator(mode="after")
    def fits_its_kind(self) -> Self:
        if self.space_least > self.space_most:
            raise PydanticCustomError(
                "choice", "the least side space is more than the most; change one of them", {}
            )
        if (self.travel is None) == (self.travel_length is None):
            raise PydanticCustomError("choice", "say how far it opens: as a share, or as a length", {})
        if self.under > self.headroom:
            raise PydanticCustomError(
                "choice", "what lies under the box is part of the headroom; make the headroom more", {}
            )
        if self.kind == "under-mount" and (self.deduction is None or self.side_most is None):
            missing = "deduction" if self.deduction is None else "side_most"
            raise PydanticCustomError(
                "choice", "an under-mount slide needs its {field} from the maker's sheet", {"field": missing}
            )
        return self

    @property
    def is_under(self) -> bool:
        """Whether it lies under the box."""
        return self.kind == "under-mount"

    @property
    def space(self) -> Inches:
        """Side space to build for: midway between the least and the most [in]."""
        return (self.space_least + self.space_most) / 2

    def opens(self, length: Inches) -> Inches:
        """How far a slide of some length opens [in]."""
        return length * self.travel if self.travel is not None else self.travel_length or 0.0


def names_once(slides: Iterable[OwnSlide]) -> None:
    """Refuses a table in which two slides have one name."""
    counted = Counter(each.name.casefold() for each in slides)
    name = next((name for name, times in counted.items() if times > 1), None)
    if name is not None:
        raise PydanticCustomError(
            "choice", "two slides are called {name}; give one another name", {"name": f"“{name}”"}
        )


@cache
def house_slides() -> tuple[OwnSlide, ...]:
    """Slides of no maker in particular, to be replaced by what the maker's sheet of the shop's own says.

    Returns:
        The table.

    Source: `data/slides.json`; each row names its own.
    """
    text = files("casewright.pieces").joinpath("data/slides.json").read_text(encoding="utf-8")
    return TypeAdapter(tuple[OwnSlide, ...]).validate_json(text)


def no_such_slide(name: str, slides: Iterable[OwnSlide]) -> str:
    """The sentence for a slide that the table does not have."""
    known = ", ".join(f"“{each.name}”" for each in slides)
    return f"drawers.running.slide: there is no slide “{name}” in the table of slides; there are {known}"
