"""The rules of an even row of tails: widths, spacing and edges, each a closed form.

A pin and a half pin are measured at the end of the tail board, where dividers are walked; there a tail is
widest and a pin narrowest. Nothing here is rounded.
"""

import math

from casewright.measure.units import Count, Degrees, Inches, Number

TOLERANCE = 1e-9
"""A billionth of an inch: above any float's error and far below what a gauge can show."""


def tail_width(height: Inches, half_pin: Inches, pin: Inches, count: Count) -> Inches:
    """The width of each tail at the end of the board.

    Rule: (height - 2 * half_pin - (count - 1) * pin) / count

    Args:
        height: height of the board's end [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        count: number of tails

    Returns:
        The width of a tail at its widest [in]

    Source: geometry of the joint.
    """
    return (height - 2 * half_pin - (count - 1) * pin) / count


def divider_setting(height: Inches, half_pin: Inches, pin: Inches, count: Count) -> Inches:
    """What the dividers are set to: one tail and one pin.

    Rule: (height - 2 * half_pin + pin) / count

    Args:
        height: height of the board's end [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        count: number of tails

    Returns:
        The distance from one tail to the next [in]

    Source: geometry of the joint.
    """
    return (height - 2 * half_pin + pin) / count


def flare(tail_length: Inches, slope: Number) -> Inches:
    """How much a tail narrows on each edge from its end to the baseline.

    Rule: tail_length / slope

    Args:
        tail_length: from the end of the board to the baseline [in]
        slope: how far along for one across, 8 for 1:8 [dimensionless]

    Returns:
        The narrowing on one edge of a tail [in]

    Source: geometry of the joint.
    """
    return tail_length / slope


def bevel_degrees(slope: Number) -> Degrees:
    """The angle of a tail's edge from a line square to the end.

    Rule: atan(1 / slope)

    Args:
        slope: how far along for one across, 8 for 1:8 [dimensionless]

    Returns:
        The angle to which a bevel is set [degree]

    Source: geometry of the joint.
    """
    return math.degrees(math.atan(1 / slope))


def neck(tail_width: Inches, flare: Inches) -> Inches:
    """The width of a tail at the baseline, where it is narrowest.

    Rule: tail_width - 2 * flare

    Args:
        tail_width: a tail at the end of the board [in]
        flare: the narrowing on each edge [in]

    Returns:
        The width at the baseline, which is a socket's mouth [in]

    Source: geometry of the joint.
    """
    return tail_width - 2 * flare


def pin_inside(pin: Inches, flare: Inches) -> Inches:
    """The width of a pin at the inside face, where it is widest.

    Rule: pin + 2 * flare

    Args:
        pin: a pin at the end of the tails [in]
        flare: the narrowing of a tail on each edge [in]

    Returns:
        The width of a pin at the baseline of the tails [in]

    Source: geometry of the joint.
    """
    return pin + 2 * flare


def half_pin_inside(half_pin: Inches, flare: Inches) -> Inches:
    """The width of a half pin at the inside face.

    Rule: half_pin + flare

    Args:
        half_pin: a half pin at the end of the tails [in]
        flare: the narrowing of a tail on each edge [in]

    Returns:
        The width of a half pin at the baseline of the tails [in]

    Source: geometry of the joint.
    """
    return half_pin + flare


def top_half_pin(half_pin: Inches, front_excess: Inches) -> Inches:
    """The upper half pin on a front that is higher than its side.

    Rule: half_pin + front_excess

    Args:
        half_pin: half pin at the end of the tails [in]
        front_excess: how much higher the front is, all of it at the top [in]

    Returns:
        The half pin to be laid out on the front [in]

    Source: geometry of the joint; both are measured from the bottom edge.
    """
    return half_pin + front_excess


def half_pin_at_end(half_pin_inside: Inches, flare: Inches) -> Inches:
    """A half pin at the end of the tails, for a maker who measures it at the inside face.

    Rule: half_pin_inside - flare

    Args:
        half_pin_inside: the half pin at the baseline of the tails [in]
        flare: the narrowing of a tail on each edge [in]

    Returns:
        The half pin as this layout counts it [in]

    Source: geometry of the joint.
    """
    return half_pin_inside - flare


def lower_edge(number: Count, half_pin: Inches, pitch: Inches) -> Inches:
    """Where a tail begins, at the end of the board.

    Rule: half_pin + (number - 1) * pitch

    Args:
        number: which tail, counted from 1 at the bottom
        half_pin: half pin at the bottom edge [in]
        pitch: from one tail to the next [in]

    Returns:
        The height of its lower edge above the bottom edge [in]

    Source: geometry of the joint; from the reference edge and unrounded, so that no error adds up.
    """
    return half_pin + (number - 1) * pitch


def upper_edge(lower_edge: Inches, tail_width: Inches) -> Inches:
    """Where a tail stops, at the end of the board.

    Rule: lower_edge + tail_width

    Args:
        lower_edge: where it begins [in]
        tail_width: a tail at the end of the board [in]

    Returns:
        The height of its upper edge above the bottom edge [in]

    Source: geometry of the joint.
    """
    return lower_edge + tail_width


def lower_edge_at_baseline(lower_edge: Inches, flare: Inches) -> Inches:
    """Where a tail begins, at the baseline.

    Rule: lower_edge + flare

    Args:
        lower_edge: where it begins at the end of the board [in]
        flare: the narrowing on each edge [in]

    Returns:
        The height of its lower edge above the bottom edge [in]

    Source: geometry of the joint.
    """
    return lower_edge + flare


def upper_edge_at_baseline(upper_edge: Inches, flare: Inches) -> Inches:
    """Where a tail stops, at the baseline.

    Rule: upper_edge - flare

    Args:
        upper_edge: where it stops at the end of the board [in]
        flare: the narrowing on each edge [in]

    Returns:
        The height of its upper edge above the bottom edge [in]

    Source: geometry of the joint.
    """
    return upper_edge - flare


def most_tails(height: Inches, half_pin: Inches, pin: Inches, flare: Inches, least_neck: Inches) -> Count:
    """The greatest number of tails that keeps every neck at least so wide.

    Rule: whole part of (height - 2 * half_pin + pin) / (least_neck + 2 * flare + pin)

    Args:
        height: height of the board's end [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        flare: the narrowing on each edge [in]
        least_neck: the least width of a tail at the baseline [in]

    Returns:
        The count; 0 when not even one tail has that width.

    Source: geometry of the joint.
    """
    return max(0, math.floor((height - 2 * half_pin + pin) / (least_neck + 2 * flare + pin) + TOLERANCE))


def fewest_tails(height: Inches, half_pin: Inches, pin: Inches, widest: Inches) -> Count:
    """The smallest number of tails that keeps every tail at most so wide.

    Rule: next whole number from (height - 2 * half_pin + pin) / (widest + pin)

    Args:
        height: height of the board's end [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        widest: the greatest width of a tail at the end of the board [in]

    Returns:
        The count, at least 1.

    Source: geometry of the joint.
    """
    return max(1, math.ceil((height - 2 * half_pin + pin) / (widest + pin) - TOLERANCE))
