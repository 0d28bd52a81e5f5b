"""An egg crate of crossing strips in a dovetailed case, as a bank of small drawers hangs on a wall."""

from typing import Any, Literal

from pydantic import Field

from casewright.pieces.asked.fields import Size, Spec

CRATE = "crate"


class Crate(Spec):
    """Strips over the full length and height of the case, notched over each other where they cross.

    The strips are housed in the sides, in the bottom and in what closes the case above: boards dovetailed to
    each other, plywood, or frames with their rails. The drawers run on the strips: what `frames` says counts
    for nothing. Every row has the same columns.
    """

    kind: Literal["crate"] = Field(description="A crate of crossing strips.", examples=["crate"])
    strip: Size = Field(0.5, description="Thickness of the strips.", examples=["1/2"])


USUAL: dict[str, dict[str, dict[str, Any]]] = {
    "solid": {"top": {"fixing": "dovetails"}, "case": {"corner": "through", "lipping": 0}},
    "plywood": {"top": {"fixing": "none"}, "case": {"corner": "housing"}},
    "framed": {"case": {"corner": "tenon", "lipping": 0}},
}
"""What a crate has where nothing else is said, by its sides: of boards, a case of four, dovetailed through;
of plywood, one housed around, closed by its own top; framed, rails tenoned into the stiles."""


def with_crate_usual(value: Any) -> Any:
    """The choices of a crate with what it has where nothing else is said; any others as they are."""
    if not isinstance(value, dict):
        return value
    built = value.get("construction")
    if not isinstance(built, dict) or built.get("kind") != CRATE:
        return value
    filled = {"base": None, **value}
    case = value.get("case")
    sides = case.get("sides", "solid") if isinstance(case, dict) else "solid"
    for group, usual in USUAL.get(sides if isinstance(sides, str) else "solid", USUAL["solid"]).items():
        typed = filled.get(group, {})
        if isinstance(typed, dict):
            filled[group] = {**usual, **typed}
    return filled
