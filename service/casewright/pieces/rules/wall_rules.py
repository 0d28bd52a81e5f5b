"""The arithmetic of cleats and scribe strips."""

from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import Count, Inches

SHIFT = 0.5
"""Room at each end of the cleat on the wall (common practice) [in]."""
INSET = 1.0
"""How far a cleat behind the case stays inside its sides, so that it is not seen (common practice) [in]."""


def cleat_length(width: Inches, clear: Inches, within: Count) -> Inches:
    """The length of the cleat on the case.

    Rule: clear where it lies within the sides, else width - 2 × 1 in

    Args:
        width: width of the case [in]
        clear: between its sides [in]
        within: 1 where it lies between the sides, 0 where it lies behind the case

    Returns:
        The length [in]

    Source: geometry; a cleat behind the case is not to be seen (common practice).
    """
    return clear if within else width - 2 * INSET


def studs_met(length: Inches, apart: Inches) -> Count:
    """How many studs a cleat meets wherever it is put.

    Rule: length / apart, rounded down

    Args:
        length: length of the cleat on the wall [in]
        apart: from stud to stud [in]

    Returns:
        The studs that it is sure to meet; one more with luck

    Source: geometry; studs 16 or 24 in apart are common practice.
    """
    return int(length / apart + TOLERANCE)


def cleat_screws(studs: Count, each: Count) -> Count:
    """How many screws hold the cleat on the wall.

    Rule: studs × each

    Args:
        studs: studs that it meets
        each: screws into each

    Returns:
        The screws

    Source: common practice.
    """
    return studs * each


def hooked(height: Inches, thickness: Inches) -> Inches:
    """How far below the cleat of the case that of the wall begins, once it is hooked in.

    Rule: height - thickness

    Args:
        height: height of the cleat at its long face [in]
        thickness: its thickness, which the bevel of 45 degrees rises over [in]

    Returns:
        From the foot of the one to that of the other [in]

    Source: geometry of the bevel.
    """
    return height - thickness


def with_cleat(back: Inches, cleat: Inches) -> Inches:
    """What back and cleat take of the depth together.

    Rule: back + cleat

    Args:
        back: what the back takes, with the wood behind a groove [in]
        cleat: what the cleat takes behind it [in]

    Returns:
        What is lost to the drawers [in]

    Source: geometry of the case.
    """
    return back + cleat


def wall_cleat(length: Inches, shift: Inches) -> Inches:
    """The length of the cleat on the wall: shorter, so that the case can be shifted to its place.

    Rule: length - 2 × shift

    Args:
        length: length of the cleat on the case [in]
        shift: room at each end [in]

    Returns:
        The length [in]

    Source: common practice.
    """
    return length - 2 * shift


def scribe_needed(out_of_plumb: Inches, least: Inches) -> Inches:
    """How wide a strip must be that is scribed to a wall.

    Rule: out_of_plumb + least

    Args:
        out_of_plumb: how far the wall leans or bulges [in]
        least: what stays of the strip where the wall comes nearest [in]

    Returns:
        The width [in]

    Source: common practice.
    """
    return out_of_plumb + least
