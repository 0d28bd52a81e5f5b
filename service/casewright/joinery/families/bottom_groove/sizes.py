"""The sizes that follow from the groove of a drawer's bottom: bottom, slips and muntin."""

from casewright.measure.units import Inches


def bottom_width(inside: Inches, groove_depth: Inches, play: Inches) -> Inches:
    """The size of a bottom from groove to groove.

    Rule: inside + 2 × groove_depth - 2 × play

    Args:
        inside: clear distance between the two grooved faces [in]
        groove_depth: depth of each groove [in]
        play: left free at each side [in]

    Returns:
        The size of the bottom in that direction [in]

    Source: geometry of the drawer; the play is common practice.
    """
    return inside + 2 * groove_depth - 2 * play


def half_bottom_width(inside: Inches, muntin: Inches, groove_depth: Inches, play: Inches) -> Inches:
    """The width of one half of a bottom that a muntin parts.

    Rule: (inside - muntin) / 2 + 2 × groove_depth - 2 × play

    Args:
        inside: clear width between the sides [in]
        muntin: width of the muntin [in]
        groove_depth: depth of each groove [in]
        play: left free at each side [in]

    Returns:
        The width of each half [in]

    Source: geometry of the drawer.
    """
    return (inside - muntin) / 2 + 2 * groove_depth - 2 * play


def bottom_length(length: Inches, front: Inches, groove_depth: Inches, over: Inches) -> Inches:
    """The size of a bottom front to back, from the groove in the front to the rear of the drawer.

    Rule: length - front + groove_depth + over

    Args:
        length: length of the drawer [in]
        front: thickness of the front [in]
        groove_depth: depth of the groove in the front [in]
        over: how far it reaches past the back [in]

    Returns:
        The size front to back [in]

    Source: common practice.
    """
    return length - front + groove_depth + over


def bottom_held_all_around(inside: Inches, front_depth: Inches, back_depth: Inches, play: Inches) -> Inches:
    """The size of a bottom front to back that stands in a groove in the back too.

    Rule: inside + front_depth + back_depth - 2 × play

    Args:
        inside: clear depth between front and back [in]
        front_depth: depth of the groove in the front [in]
        back_depth: depth of the groove in the back [in]
        play: left free at either end [in]

    Returns:
        The size front to back [in]

    Source: geometry of the drawer; the play is common practice.
    """
    return inside + front_depth + back_depth - 2 * play


def muntin_length(length: Inches, front: Inches, groove_depth: Inches) -> Inches:
    """The length of the muntin, from the groove in the front to the rear of the drawer.

    Rule: length - front + groove_depth

    Args:
        length: length of the drawer [in]
        front: thickness of the front [in]
        groove_depth: depth of the groove in the front [in]

    Returns:
        The length of the muntin [in]

    Source: common practice.
    """
    return length - front + groove_depth


def muntin_place(inside: Inches, muntin: Inches) -> Inches:
    """Where the muntin begins, from the inside of the side or slip.

    Rule: (inside - muntin) / 2

    Args:
        inside: clear width between the sides or slips [in]
        muntin: width of the muntin [in]

    Returns:
        The distance to its nearer edge, which is the clear width of each half [in]

    Source: geometry of the drawer: in the middle, so that both halves are alike.
    """
    return (inside - muntin) / 2


def muntin_lip(thickness: Inches, groove_width: Inches) -> Inches:
    """What a muntin has above its groove, and below it: the groove lies in the middle of its edge.

    Rule: (thickness - groove_width) / 2

    Args:
        thickness: thickness of the muntin [in]
        groove_width: width of the groove [in]

    Returns:
        The wood above the groove; so far its top stands above the groove in the front [in]

    Source: geometry of the drawer.
    """
    return (thickness - groove_width) / 2


def slip_length(length: Inches, front: Inches) -> Inches:
    """The length of a slip: from the inside of the front to the rear of the drawer.

    Rule: length - front

    Args:
        length: length of the drawer [in]
        front: thickness of the front [in]

    Returns:
        The length of each slip [in]

    Source: common practice; its upper part is cut away where the back stands over it.
    """
    return length - front
