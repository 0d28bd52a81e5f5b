"""What top, base and back of no case can be."""

from collections.abc import Iterator

from casewright.measure.units import Inches
from casewright.pieces.asked.shell_spec import BracketFeet, Plinth, ToeBase, TurnedFeet
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Face

LEAST_LEFT = 1 / 16
"""Wood or room that must be left for a part to be one at all [in]."""


def base_limits(spec: UnitSpec, face: Face) -> Iterator[tuple[str, Inches, Inches, str]]:
    """The sizes of a base that its case sets a limit to.

    Args:
        spec: what the maker chose
        face: what of the case stands on the floor

    Returns:
        Field, value, the most it may be, and why.

    Source: geometry of the base.
    """
    base, body = spec.stands_on, spec.body
    across = min(body.depth, *(each.right - each.left for each in face.pedestals)) / 2 - LEAST_LEFT
    if isinstance(base, Plinth):
        yield "base.setback", base.setback, across / 2, "the case would stand on too little"
        yield "base.thickness", base.thickness, across - base.setback, "two boards must fit front to back"
    elif isinstance(base, BracketFeet):
        room = (body.depth + base.forward - base.setback - base.rear) / 2 - LEAST_LEFT
        yield "base.width", base.width, min(across, room), "two feet must fit side by side"
        yield "base.thickness", base.thickness, base.width / 2, "a foot is wider than its boards are thick"
    elif isinstance(base, TurnedFeet):
        room = (body.depth + base.forward - base.setback - base.rear) / 2 - LEAST_LEFT
        yield "base.diameter", base.diameter, min(across, room), "two feet must fit side by side"
    elif isinstance(base, ToeBase):
        most = body.depth / 2 - base.facing
        yield "base.toe_space", base.toe_space, most, "the box must carry the case"
        yield "base.thickness", base.wall, across / 2, "front and rear must fit in the base"
