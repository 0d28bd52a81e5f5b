"""What a base takes besides its boards: blocks, levelling feet and screws."""

from collections.abc import Iterator

from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.shell_spec import BracketFeet, Plinth, ToeBase
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.fitted import HardwareItem, SmallPart
from casewright.pieces.layout.openings import Face
from casewright.pieces.rules.base_rules import bays

BLOCK = 1.5
"""Side of a corner block (common practice) [in]."""
CORNERS = 4


def base_blocks(spec: UnitSpec, face: Face) -> Iterator[SmallPart]:
    """The blocks that stiffen a base, from offcuts.

    Args:
        spec: what the maker chose
        face: what of the case stands on the floor

    Returns:
        The small parts of one unit.

    Source: common practice.
    """
    base, grounds = spec.stands_on, len(face.pedestals)
    if isinstance(base, Plinth):
        yield SmallPart(
            name="Plinth corner block",
            quantity=CORNERS * grounds,
            size=_size(BLOCK, BLOCK, max(1.0, base.height - 1)),
            note="glued into the corners of the plinth",
        )
    elif isinstance(base, BracketFeet):
        yield SmallPart(
            name="Foot block, upright",
            quantity=CORNERS * grounds,
            size=_size(BLOCK, BLOCK, base.height),
            note="glued into each foot, in two lengths end to end: it carries the case, grain up and down",
        )
        yield SmallPart(
            name="Foot block, under the case",
            quantity=2 * CORNERS * grounds,
            size=_size(1.0, 1.0, max(1.0, base.width - BLOCK - base.thickness)),
            note="along the upper edge of each board, glued to it, screwed to the case through slots",
        )


def base_hardware(spec: UnitSpec, face: Face) -> Iterator[HardwareItem]:
    """What is bought by the piece for a base.

    Args:
        spec: what the maker chose
        face: what of the case stands on the floor

    Returns:
        The items; none but for a toe base that is levelled.

    Source: common practice: a levelling foot at front and rear of each end and cross member.
    """
    base = spec.stands_on
    if isinstance(base, ToeBase) and base.levelling:
        widths = (each.right - each.left for each in face.pedestals)
        count = sum(bays(length=width, board=base.wall, apart=base.apart) + 1 for width in widths)
        yield HardwareItem(
            item="levelling foot", quantity=2 * count, note="ends and cross members of the toe base"
        )


def _size(thickness: Inches, width: Inches, length: Inches) -> Words:
    return say("{:bare} × {:bare} × {:fraction}", thickness, width, length)
