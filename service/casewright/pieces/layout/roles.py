"""What kind of part each part is, as wishes of the face speak of it."""

from collections.abc import Iterable
from dataclasses import replace

from casewright.pieces.asked.grain_spec import Role
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.parts import FaceClass, Part

BY_LETTER: dict[str, Role] = {
    "T": "top",
    "B": "base",
    "L": "legs",
    "A": "legs",
    "F": "fronts",
    "P": "back",
    "W": "inside",
    "R": "rails",
    "S": "drawers",
    "K": "drawers",
    "N": "drawers",
    "M": "drawers",
    "X": "drawers",
}
"""By the first letter of the line in the cut list."""
SIDES = ("C1", "E1", "V1", "V2", "V3", "V4")
"""The lines of case sides: whole, with their lipping, or framed."""

TOP, TOP_OF_CASE = "T1", "C11"
"""The lines of a top, and of a board between the sides: plywood there lies under a top of its own."""


def role_of(part: Part) -> Role:
    """What kind of part a part is.

    Args:
        part: the part

    Returns:
        Its role.

    Source: the cut list.
    """
    line = TOP if part.line == TOP_OF_CASE and not part.sheet else part.line
    if line in SIDES:
        return "sides"
    if line[:1] == "D" and line[1:2].isalpha():
        return "doors"
    if line.startswith("J#"):
        return "fronts"
    if part.name.startswith("Drawer box front"):
        return "drawers"
    known = BY_LETTER.get(line[:1])
    if known is not None:
        return known
    return "inside" if part.face is FaceClass.INSIDE else "rails"


def with_faces(spec: UnitSpec, parts: Iterable[Part]) -> tuple[Part, ...]:
    """The parts with the class of face that was asked for.

    Args:
        spec: what the maker chose
        parts: every part of the unit

    Returns:
        The parts; as they were where nothing was asked.

    Source: common practice.
    """
    faces = spec.grain.faces
    if not faces:
        return tuple(parts)
    roles = ((part, role_of(part)) for part in parts)
    return tuple(
        replace(part, face=FaceClass(faces[role])) if role in faces else part for part, role in roles
    )
