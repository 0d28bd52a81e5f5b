"""An egg crate of crossing strips in a dovetailed case, as a bank of small drawers hangs on a wall."""

from typing import Any, Literal

from pydantic import Field

from casewright.pieces.asked.fields import Size, Spec

CRATE = "crate"


class Crate(Spec):
    """Strips over the full length and height of the case, notched over each other where they cross.

    Top, bottom and sides are dovetailed to each other; the strips are housed in them, and the drawers run on
    the strips: what `frames` says does not count. Every row has the same columns.
    """

    kind: Literal["crate"] = Field(description="A crate of crossing strips.", examples=["crate"])
    strip: Size = Field(0.5, description="Thickness of the strips.", examples=["1/2"])


USUAL: dict[str, dict[str, Any]] = {
    "top": {"fixing": "dovetails"},
    "case": {"corner": "through", "lipping": 0},
}
"""What a crate has where nothing else is said: a case of four boards, dovetailed through."""


def with_crate_usual(value: Any) -> Any:
    """The choices of a crate with what it has where nothing else is said; any others as they are."""
    if not isinstance(value, dict):
        return value
    built = value.get("construction")
    if not isinstance(built, dict) or built.get("kind") != CRATE:
        return value
    filled = {"base": None, **value}
    for group, usual in USUAL.items():
        typed = filled.get(group, {})
        if isinstance(typed, dict):
            filled[group] = {**usual, **typed}
    return filled
