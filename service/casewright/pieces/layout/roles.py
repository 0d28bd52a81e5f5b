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
    "J": "fronts",
    "D": "doors",
    "P": "back",
    "W": "inside",
    "R": "rails",
}
"""By the first letter of the line in the cut list."""


def role_of(part: Part) -> Role:
    """What kind of part a part is.

    Args:
        part: the part

    Returns:
        Its role.

    Source: the cut list.
    """
    if part.face is FaceClass.DRAWER:
        return "drawers"
    if part.line == "C1" or part.name.startswith(("Case side", "Side ")):
        return "sides"
    known = BY_LETTER.get(part.line[:1])
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
