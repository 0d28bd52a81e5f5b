"""The arithmetic of drawer fronts before or in the case, and of the boards that their joints shorten."""

from casewright.measure.rounding import floor64, near64
from casewright.measure.units import Count, Inches, Percent, PerPercent


def lipped_size(opening: Inches, lip: Inches, gap: Inches) -> Inches:
    """The width of a lipped front, or its height with a lip at both edges.

    Rule: opening + 2 × (lip - gap)

    Args:
        opening: the opening, across the same way [in]
        lip: width of the lip, which is that of the rabbet [in]
        gap: clearance of the box in the opening, each edge [in]

    Returns:
        The front over its lips [in]

    Source: geometry: the lip begins at the box, a clearance within the opening.
    """
    return opening + 2 * (lip - gap)


def lipped_at_the_top(opening: Inches, bottom_gap: Inches, lip: Inches, gap: Inches) -> Inches:
    """The height of a front with a lip at its top alone.

    Rule: opening - bottom_gap + lip - gap

    Args:
        opening: height of the opening [in]
        bottom_gap: gap under the drawer [in]
        lip: width of the lip [in]
        gap: clearance that the lip covers besides [in]

    Returns:
        The front over its lip [in]

    Source: geometry: its lower edge is that of the box.
    """
    return opening - bottom_gap + lip - gap


def overlaid_size(opening: Inches, overlay: Inches) -> Inches:
    """A front that covers both edges of its opening.

    Rule: opening + 2 × overlay

    Args:
        opening: the opening, across the same way [in]
        overlay: how far the front covers each edge [in]

    Returns:
        The front [in]

    Source: geometry.
    """
    return opening + 2 * overlay


def usual_overlay(divider: Inches, gap: Inches) -> Inches:
    """How far a front covers each edge where nothing else is said: so that a gap stays over the divider.

    Rule: (divider - gap) / 2

    Args:
        divider: the thinner of divider and upright [in]
        gap: what stays between two fronts [in]

    Returns:
        The overlay [in]

    Source: common practice.
    """
    return (divider - gap) / 2


def all_fronts(face: Inches, edge: Inches, gap: Inches, count: Count) -> Inches:
    """What all fronts of a column, or of a row, measure together.

    Rule: face - 2 × edge - (count - 1) × gap, rounded down to 1/64

    Args:
        face: height, or width, of what they cover [in]
        edge: reveal at each end of it [in]
        gap: gap between two of them [in]
        count: how many there are [dimensionless]

    Returns:
        Their sizes added up [in]

    Source: geometry of the case.
    """
    return floor64(face - 2 * edge - (count - 1) * gap)


def opening_behind(front: Inches, above: Inches, below: Inches) -> Inches:
    """The opening behind a front, where nothing but the gaps between the fronts parts two of them.

    Rule: front + above + below

    Args:
        front: height of the front [in]
        above: half the gap above it; under the top, the reveal less the top [in]
        below: half the gap below it; over the bottom, the reveal less the bottom [in]

    Returns:
        The opening, from the middle of one gap to that of the other [in]

    Source: geometry of the case.
    """
    return front + above + below


def shared_front(total: Inches, own: Inches, every: Inches) -> Inches:
    """One front's share of what all of them measure together, in proportion to its opening.

    Rule: total × own / every, to the nearest 1/64

    Args:
        total: all fronts together [in]
        own: its opening, or what of the case it stands for [in]
        every: all of those together [in]

    Returns:
        The front; what rounding leaves goes to the last of them [in]

    Source: common practice.
    """
    return near64(total * own / every)


def gap_when_wettest(
    gap: Inches, front: Inches, other: Inches, coefficient: PerPercent, swelling: Percent
) -> Inches:
    """The gap between two fronts when both are at their wettest.

    Rule: gap - (front + other) / 2 × coefficient × swelling

    Args:
        gap: as it is set now [in]
        front: the one front, across its grain [in]
        other: the other front, likewise [in]
        coefficient: movement coefficient of the fronts in height [1 per % moisture]
        swelling: moisture content at the wettest less that of the wood now [%]

    Returns:
        The gap; each front, held in its middle, takes half of its growth of it [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return gap - (front + other) / 2 * coefficient * swelling


def slot_of_a_front(apart: Inches, coefficient: PerPercent, change: Percent, screw: Inches) -> Inches:
    """How long the slots are through which a show front is screwed from inside.

    Rule: screw + apart × coefficient × change

    Args:
        apart: from the row of screws that holds fast to the other, across the grain [in]
        coefficient: movement coefficient of the front in height [1 per % moisture]
        change: moisture content at the wettest less that at the driest [%]
        screw: thickness of a screw [in]

    Returns:
        The length of a slot [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return screw + apart * coefficient * change


def bead_width(rabbet: Inches, projection: Inches) -> Inches:
    """The width of a bead at the ends and the bottom of a front.

    Rule: rabbet + projection

    Args:
        rabbet: how far it goes in from the face [in]
        projection: how far it stands before the face [in]

    Returns:
        The width of the strip [in]

    Source: geometry.
    """
    return rabbet + projection


def below_the_bead(height: Inches, bead: Inches) -> Inches:
    """The height of a front whose upper edge carries a bead over its whole thickness.

    Rule: height - bead

    Args:
        height: height of the drawer [in]
        bead: thickness of the bead [in]

    Returns:
        The height of the front, and that at which its joint is laid out [in]

    Source: common practice of cock beading.
    """
    return height - bead


def above_the_bottom(height: Inches, bottom: Inches) -> Inches:
    """The height of the boards of a box that stands on its bottom.

    Rule: height - bottom

    Args:
        height: height of the drawer [in]
        bottom: thickness of the bottom [in]

    Returns:
        The height of front, sides and back [in]

    Source: geometry of the drawer.
    """
    return height - bottom


def whole_fingers(height: Inches, finger: Inches, number: Count) -> Inches:
    """The height of a box whose fingers come out whole.

    Rule: finger × number

    Args:
        height: as high as the opening lets it be [in]
        finger: width of a finger, which is that of its cutter [in]
        number: how many fingers and spaces go into that height [dimensionless]

    Returns:
        The height of the box [in]

    Source: common practice: what the cutter leaves is the space, so that a finger is as wide as it.
    """
    return min(height, finger * number)


def whole_length(length: Inches, stand: Inches) -> Inches:
    """The length of a drawer whose front stands before the case.

    Rule: length + stand

    Args:
        length: length behind the front edge of the case [in]
        stand: how far the front stands before that edge [in]

    Returns:
        The length over the front and the sides [in]

    Source: geometry of the drawer.
    """
    return length + stand


def behind_the_show_front(length: Inches, front: Inches) -> Inches:
    """The length of a box behind a show front in the same opening.

    Rule: length - front

    Args:
        length: length of the drawer [in]
        front: thickness of the show front [in]

    Returns:
        The length of the box [in]

    Source: geometry of the drawer.
    """
    return length - front


def taken_by_the_socket(front: Inches, depth: Inches) -> Inches:
    """By how much a side that slides into its front is shorter than the drawer.

    Rule: front - depth

    Args:
        front: thickness of the front [in]
        depth: depth of the socket, which is the length of the tail [in]

    Returns:
        What is taken off the length [in]

    Source: geometry of the joint.
    """
    return front - depth


def side_between(length: Inches, at_front: Inches, at_back: Inches) -> Inches:
    """The length of a side by what its joints take of the box's length.

    Rule: length - at_front - at_back

    Args:
        length: length of the box [in]
        at_front: what the joint takes in front: a lip, or what a socket leaves; 0 where the side shows [in]
        at_back: what it takes at the rear, likewise [in]

    Returns:
        The length of the side, tails and rabbets included [in]

    Source: geometry of the joint: what stays before the side is the front less the depth engaged in it.
    """
    return length - at_front - at_back


def between_the_sides(width: Inches, left: Inches, right: Inches, reach: Inches) -> Inches:
    """The length of a board between the sides that reaches into both.

    Rule: width - left - right + 2 × reach

    Args:
        width: width of the box [in]
        left: thickness of the left side [in]
        right: thickness of the right side [in]
        reach: how far its tongues, or its ends, go into a side [in]

    Returns:
        The length, tongues included [in]

    Source: geometry of the joint.
    """
    return width - left - right + 2 * reach


def clear_depth(length: Inches, front: Inches, back: Inches, set_in: Inches) -> Inches:
    """The depth between a front and a back that stands in from the ends of the sides.

    Rule: length - front - back - set_in

    Args:
        length: length of the box [in]
        front: thickness of its front [in]
        back: thickness of the back [in]
        set_in: from the ends of the sides to the back [in]

    Returns:
        The clear depth [in]

    Source: geometry of the drawer.
    """
    return length - front - back - set_in


def height_over_the_bottom(opening: Inches, bottom: Inches, headroom: Inches) -> Inches:
    """The height above a bottom screwed under the box that can be filled.

    Rule: opening - bottom - headroom

    Args:
        opening: height of the opening [in]
        bottom: thickness of the bottom [in]
        headroom: kept free under the obstruction above [in]

    Returns:
        The clear height [in]

    Source: US CPSC business guidance on clothing storage units: from the drawer bottom to the lowest
        obstruction, less 1/8 in.
    """
    return opening - bottom - headroom


def under_the_box(length: Inches, over: Inches) -> Inches:
    """The depth of a bottom that is screwed under the box, front to back.

    Rule: length + over

    Args:
        length: length of the box [in]
        over: how far it reaches past the back [in]

    Returns:
        The depth of the bottom [in]

    Source: geometry of the drawer.
    """
    return length + over
