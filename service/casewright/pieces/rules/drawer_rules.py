"""The arithmetic of an inset drawer on wooden runners: each size from the opening it goes into."""

from casewright.measure.rounding import down_to, floor64, up_to
from casewright.measure.units import Inches, Number, Percent, PerPercent, SquareInches

QUARTER = 1 / 4


def drawer_height(
    opening: Inches, bottom_gap: Inches, top_gap: Inches, coefficient: PerPercent, swelling: Percent
) -> Inches:
    """The height to plane a drawer to now, so that it still clears when it is wettest.

    Rule: (opening - bottom_gap - top_gap) / (1 + coefficient × swelling), rounded down to 1/64

    Args:
        opening: height of the opening [in]
        bottom_gap: gap under the drawer [in]
        top_gap: gap to be left above it when it is wettest [in]
        coefficient: the greater of the movement coefficients of front and side, in height [1 per % moisture]
        swelling: moisture content at the wettest less that of the wood now, never below nothing [%]

    Returns:
        The height of front and sides [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2, solved for the size now.
    """
    return floor64((opening - bottom_gap - top_gap) / (1 + coefficient * swelling))


def gap_above(
    opening: Inches, bottom_gap: Inches, height: Inches, coefficient: PerPercent, change: Percent
) -> Inches:
    """The gap above a drawer at some moisture content.

    Rule: opening - bottom_gap - height × (1 + coefficient × change)

    Args:
        opening: height of the opening [in]
        bottom_gap: gap under the drawer [in]
        height: height of the drawer now [in]
        coefficient: movement coefficient of the part, in height [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The gap; below nothing the drawer binds [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return opening - bottom_gap - height * (1 + coefficient * change)


def drawer_width(opening: Inches, side_gap: Inches) -> Inches:
    """The width of a drawer over its sides.

    Rule: opening - 2 × side_gap, rounded down to 1/64

    Args:
        opening: width of the opening [in]
        side_gap: clearance at each side [in]

    Returns:
        The width of the drawer, and the length of its front and back [in]

    Source: common practice; long grain sets the width of an opening, so it hardly moves.
    """
    return floor64(opening - 2 * side_gap)


def drawer_length(depth: Inches, back_gap: Inches, shrinkage: Inches) -> Inches:
    """The length of a drawer, front to back, that still closes when the case is shallowest.

    Rule: depth - back_gap - shrinkage, rounded down to 1/4

    Args:
        depth: depth of the opening [in]
        back_gap: clearance behind the drawer [in]
        shrinkage: how much shallower the case side gets when driest [in]

    Returns:
        The length over front and sides [in]

    Source: common practice.
    """
    return down_to(depth - back_gap - shrinkage, QUARTER)


def side_length(length: Inches, lap: Inches) -> Inches:
    """The length of a side whose tails stop short of the face of the front.

    Rule: length - lap

    Args:
        length: length of the drawer [in]
        lap: wood left in front of the tails [in]

    Returns:
        The length of the side [in]

    Source: geometry of the joint.
    """
    return length - lap


def back_height(height: Inches, groove_height: Inches, groove_width: Inches, drop: Inches) -> Inches:
    """The height of a back that stands on the bottom, so that the bottom slides in under it.

    Rule: height - groove_height - groove_width - drop

    Args:
        height: height of the sides [in]
        groove_height: bottom edge of the side up to the groove [in]
        groove_width: width of the groove [in]
        drop: top of the back below the top of the sides [in]

    Returns:
        The height of the back [in]

    Source: common practice.
    """
    return height - groove_height - groove_width - drop


def full_back_height(height: Inches, drop: Inches) -> Inches:
    """The height of a back that is grooved for the bottom like the sides.

    Rule: height - drop

    Args:
        height: height of the sides [in]
        drop: top of the back below the top of the sides [in]

    Returns:
        The height of the back [in]

    Source: common practice.
    """
    return height - drop


def width_inside(width: Inches, left_side: Inches, right_side: Inches) -> Inches:
    """The width between the sides of a drawer.

    Rule: width - left_side - right_side

    Args:
        width: width of the drawer [in]
        left_side: thickness of the left side [in]
        right_side: thickness of the right side [in]

    Returns:
        The clear width [in]

    Source: geometry of the drawer.
    """
    return width - left_side - right_side


def slip_height(groove_height: Inches, groove_width: Inches, above: Inches) -> Inches:
    """The height of a slip: up to its groove, the groove, and the wood above it.

    Rule: groove_height + groove_width + above

    Args:
        groove_height: bottom edge of the slip up to the groove [in]
        groove_width: width of the groove [in]
        above: wood above the groove [in]

    Returns:
        The height of the slip [in]

    Source: common practice.
    """
    return groove_height + groove_width + above


def between_slips(inside: Inches, slip: Inches) -> Inches:
    """The width between the slips, which the bottom bridges.

    Rule: inside - 2 × slip

    Args:
        inside: width between the sides [in]
        slip: thickness of a slip [in]

    Returns:
        The clear width [in]

    Source: geometry of the drawer.
    """
    return inside - 2 * slip


def depth_inside(length: Inches, front: Inches, back: Inches) -> Inches:
    """The depth between front and back of a drawer.

    Rule: length - front - back

    Args:
        length: length of the drawer [in]
        front: thickness of the front [in]
        back: thickness of the back [in]

    Returns:
        The clear depth [in]

    Source: geometry of the drawer.
    """
    return length - front - back


def height_inside(opening: Inches, groove_height: Inches, groove_width: Inches, headroom: Inches) -> Inches:
    """The height above a drawer's bottom that can be filled.

    Rule: opening - groove_height - groove_width - headroom

    Args:
        opening: height of the opening [in]
        groove_height: bottom edge of the side up to the groove [in]
        groove_width: width of the groove [in]
        headroom: kept free under the obstruction above [in]

    Returns:
        The clear height [in]

    Source: US CPSC business guidance on clothing storage units: from the drawer bottom to the lowest
        obstruction, less 1/8 in.
    """
    return opening - groove_height - groove_width - headroom


def inside_area(depth: Inches, side: Inches, width: Inches, back: Inches) -> SquareInches:
    """The faces inside a drawer that are prepared and sealed: both sides, the back, and the bottom.

    Rule: 2 × depth × side + width × back + width × depth

    Args:
        depth: clear depth [in]
        side: height of the sides [in]
        width: clear width [in]
        back: height of the back [in]

    Returns:
        The area [sq in]

    Source: common practice; the inside of the front is left bare.
    """
    return 2 * depth * side + width * back + width * depth


def front_over_side(side: Inches, over: Inches, least: Inches, step: Inches) -> Inches:
    """How thick a front is at least that such sides are joined to.

    Rule: the greater of side + over and least, up to a multiple of step

    Args:
        side: thickness of the sides [in]
        over: by how much a front is thicker [in]
        least: no front is thinner than this [in]
        step: to what it is rounded up [in]

    Returns:
        The thickness [in]

    Source: common practice: a front is thicker than its sides.
    """
    return up_to(max(side + over, least), step)


def groove_that_leaves(board: Inches, least: Inches, part: Number, step: Inches) -> Inches:
    """How deep a groove for a bottom may be that leaves enough of a board.

    Rule: board - the greater of least and board × part, down to a multiple of step

    Args:
        board: thickness of the thinnest board that it is cut into [in]
        least: what it leaves at least [in]
        part: and at least this part of the board [dimensionless]
        step: to what it is rounded down [in]

    Returns:
        The depth; below nothing where the board has no room for one [in]

    Source: common practice: a groove takes no more than half of a board.
    """
    return down_to(board - max(least, board * part), step)


def least_opening(
    groove_height: Inches, groove_width: Inches, foot: Inches, back: Inches, drop: Inches, gap: Inches
) -> Inches:
    """The lowest opening in which a drawer of such a make has any height left.

    Rule: the greatest of 2 × groove_height, 2 × groove_width and foot + back + drop + gap

    Args:
        groove_height: lower edge of the groove for the bottom, above that of the sides [in]
        groove_width: width of that groove [in]
        foot: how far the back stands above the lower edge of the sides [in]
        back: how high the back is at least [in]
        drop: how far it stays below their upper edge [in]
        gap: above and below the drawer [in]

    Returns:
        The height; an opening of less has no room for a drawer in any season [in]

    Source: geometry of the drawer.
    """
    return max(2 * groove_height, 2 * groove_width, foot + back + drop + gap)
