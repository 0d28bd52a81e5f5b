"""The lap: what is left of a front before the tails, and why it breaks out."""

import math

from casewright.joinery.limits import LIMITS, Limits
from casewright.measure.rounding import up_to
from casewright.measure.units import Inches, Number


def lap_left(front: Inches, gauge_1: Inches) -> Inches:
    """What is left of the front before the tails.

    The gauge is locked for a batch: a front that came out thicker or thinner changes its lap only.

    Rule: front - gauge_1

    Args:
        front: thickness of the front, measured if it has been [in]
        gauge_1: depth of the sockets, from the inside face [in]

    Returns:
        The lap [in]

    Source: geometry of the joint.
    """
    return front - gauge_1


def lap_index(side: Inches, lap: Inches) -> Number:
    """How hard the lap is bent when a socket is chopped or a tight tail driven home.

    It is the stress at the root of the lap for one unit of pressure, with the lap as a shelf that stands out
    by the thickness of the side. It ranks laps soundly and promises no strength.

    Rule: 3 * (side / lap) ** 2

    Args:
        side: thickness of the side [in]
        lap: thickness of the lap [in]

    Returns:
        The index: up to 30 safe, above 60 to be redesigned [dimensionless]

    Source: bending of a cantilever under even pressure, moment p l²/2 over section modulus t²/6.
    """
    return 3 * (side / lap) ** 2


def lap_for_index(side: Inches, index: Number) -> Inches:
    """The thinnest lap that keeps the lap index at a limit.

    Rule: side * sqrt(3 / index)

    Args:
        side: thickness of the side [in]
        index: the greatest lap index [dimensionless]

    Returns:
        The lap [in]

    Source: the lap index, solved for the lap.
    """
    return side * math.sqrt(3 / index)


def side_for_index(lap: Inches, index: Number) -> Inches:
    """The thickest side that keeps the lap index at a limit.

    Rule: lap * sqrt(index / 3)

    Args:
        lap: thickness of the lap [in]
        index: the greatest lap index [dimensionless]

    Returns:
        The thickness of the side [in]

    Source: the lap index, solved for the side.
    """
    return lap * math.sqrt(index / 3)


def lap_needed(side: Inches, limits: Limits = LIMITS) -> Inches:
    """The lap that passes both of its checks: thick enough to be chopped against, and for the side.

    Rule: the greater of lap_preferred and the lap for lap_index_caution, up to a 64th

    Args:
        side: thickness of the side [in]
        limits: what a joint is held to

    Returns:
        The lap, as a gauge can be set to it [in]

    Source: Fine Woodworking, 2007 special issue, p. 84; the lap index with limits from shop experience.
    """
    for_side = lap_for_index(side, limits.lap_index_caution.value)
    return up_to(max(limits.lap_preferred.value, for_side), 1 / 64)
