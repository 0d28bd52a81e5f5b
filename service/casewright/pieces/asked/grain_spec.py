"""What is wished of the wood on the face: which parts match, how, and which class of face each part gets."""

from typing import Literal

from pydantic import Field

from casewright.pieces.asked.fields import Spec

Role = Literal["top", "sides", "rails", "base", "legs", "fronts", "doors", "drawers", "inside", "back"]
"""The kinds of part by which wishes of the face are spoken of."""
ROLES: tuple[Role, ...] = (
    "top",
    "sides",
    "rails",
    "base",
    "legs",
    "fronts",
    "doors",
    "drawers",
    "inside",
    "back",
)
Fronts = Literal["rows and columns", "along each row", "down the case", "one tree", "no"]
Pairing = Literal["book-matched", "slip-matched", "in sequence", "one tree", "no"]
Letter = Literal["A", "B", "C", "D"]


class GivenUp(Spec):
    """A match that is given up, and why: it is named on the drawing and on the quote."""

    name: str = Field(
        min_length=1, max_length=80, description="The set that is not matched.", examples=["fronts of row 1"]
    )
    reason: str = Field(
        min_length=1,
        max_length=200,
        description="Why, as the customer reads it.",
        examples=["one front was remade from another board"],
    )


class GrainWishes(Spec):
    """Which parts match in figure, and which class of face each kind of part gets."""

    fronts: Fronts | None = Field(
        None,
        description=(
            "How the drawer fronts match. Left out: along each row and down the full-width fronts, where "
            "they are in sequence."
        ),
        examples=["rows and columns"],
    )
    doors: Pairing = Field(
        "no", description="How the panels or slabs of two doors match.", examples=["book-matched"]
    )
    sides: Pairing = Field(
        "no", description="How the two sides of the case match.", examples=["slip-matched"]
    )
    top: Literal["book-matched", "slip-matched", "no"] = Field(
        "no", description="How the halves of the top match.", examples=["book-matched"]
    )
    one_tree: tuple[Role, ...] = Field(
        (), description="Parts that come from one tree, all of them.", examples=[["fronts", "top"]]
    )
    quarter: tuple[Role, ...] = Field(
        (), description="Parts that have to be quartersawn.", examples=[["drawers"]]
    )
    no_sap: tuple[Role, ...] = Field(
        (), description="Parts that show no sapwood on their face.", examples=[["fronts", "top"]]
    )
    given_up: tuple[GivenUp, ...] = Field(
        (),
        max_length=40,
        description="Matches that are given up; each is named on the drawing and the quote.",
        examples=[[{"name": "fronts of row 1", "reason": "one was remade"}]],
    )
    faces: dict[Role, Letter] = Field(
        default_factory=dict,
        description=(
            "Class of face of a kind of part: A is seen by daylight, B an edge, C inside a drawer, D hardly "
            "ever. Left out: by what the part is."
        ),
        examples=[{"base": "A"}],
    )
