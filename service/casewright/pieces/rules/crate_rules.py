"""The arithmetic of crossing strips."""

from casewright.measure.units import Count, Inches, Number


def notch_at(place: Inches, start: Inches) -> Inches:
    """Where a notch begins on its strip.

    Rule: place - start

    Args:
        place: face of the strip that crosses, from the edge of the case [in]
        start: end of the notched strip, from the same edge [in]

    Returns:
        From the end of the strip to the near wall of the notch [in]

    Source: geometry of the joint: every place is counted from the end, none from the notch before.
    """
    return place - start


def share_left(length: Inches, depth: Inches, notches: Count, width: Inches, notch: Inches) -> Number:
    """The share of a strip that its notches leave.

    Rule: 1 - notches × width × notch / (length × depth)

    Args:
        length: length of the strip [in]
        depth: its depth, front to back [in]
        notches: how many there are
        width: width of each [in]
        notch: depth of each [in]

    Returns:
        The share [1]

    Source: geometry of the joint.
    """
    return 1 - notches * width * notch / (length * depth)
