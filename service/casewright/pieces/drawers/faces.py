"""The front of a drawer as it is seen: in its opening, over its edges, or before the whole case."""

from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import CockBeaded, Lipped
from casewright.pieces.drawers.ends import SLIDING
from casewright.pieces.drawers.make import DrawerMake
from casewright.pieces.drawers.sizes import FrontFace
from casewright.pieces.layout.openings import Opening
from casewright.pieces.rules import front_rules as rules
from casewright.pieces.rules.drawer_rules import drawer_width


def front_face(
    opening: Opening,
    shared: DrawerMake,
    thickness: Inches,
    box: tuple[Inches, Inches],
    side_gap: Inches,
    foot: Inches,
    under: Ledger,
) -> FrontFace:
    """The front of a drawer as it is seen.

    Args:
        opening: the hole that the drawer goes into
        shared: what all drawers of the unit share
        thickness: thickness of the front, as measured or as drawn [in]
        box: width and height of the drawer in its opening [in]
        side_gap: clearance at each side [in]
        foot: thickness of a bottom that is screwed under the box, and shows under a front of its own [in]
        under: keeps the working of this drawer

    Returns:
        Its size and its place.

    Source: geometry of the front; each rule names its own.
    """
    drawers, style = shared.drawers, shared.drawers.style
    width, height = box
    left, bottom = opening.left + (opening.width - width) / 2, opening.bottom + drawers.clearances.bottom
    if cover := shared.covers.get(opening.code):
        return FrontFace(
            thickness=thickness,
            width=cover.width,
            height=cover.height,
            left=cover.left,
            bottom=cover.bottom,
        )
    if isinstance(style, Lipped):
        return _lipped(opening, shared, style, thickness, side_gap, under)
    if shared.slide is not None and (drawers.has_box_front or shared.at_front.family == SLIDING):
        width = under.take("front_width", drawer_width, opening=opening.width, side_gap=side_gap)
        left = opening.left + (opening.width - width) / 2
    if isinstance(style, CockBeaded):
        height = under.take("front_height", rules.below_the_bead, height=height, bead=style.bead)
    if foot and not drawers.has_box_front:
        height, bottom = height - foot, bottom + foot
    return FrontFace(thickness=thickness, width=width, height=height, left=left, bottom=bottom)


def _lipped(
    opening: Opening, shared: DrawerMake, style: Lipped, thickness: Inches, gap: Inches, under: Ledger
) -> FrontFace:
    below = shared.drawers.clearances.bottom
    width = under.take("front_width", rules.lipped_size, opening=opening.width, lip=style.lip, gap=gap)
    if style.bottom:
        height = under.take("front_height", rules.lipped_size, opening=opening.height, lip=style.lip, gap=gap)
        bottom = opening.bottom - (style.lip - gap)
    else:
        height = under.take(
            "front_height",
            rules.lipped_at_the_top,
            opening=opening.height,
            bottom_gap=below,
            lip=style.lip,
            gap=gap,
        )
        bottom = opening.bottom + below
    return FrontFace(
        thickness=thickness,
        width=width,
        height=height,
        left=opening.left - (style.lip - gap),
        bottom=bottom,
    )
