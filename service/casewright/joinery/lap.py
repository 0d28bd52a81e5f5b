"""The lap: what is left of a front before the tails, and why it breaks out."""

import math

from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import Words, say
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


def lap_advice(index: Number, limits: Limits = LIMITS, can_be_replaced: bool = True) -> tuple[Words, ...]:
    """What keeps the lap whole while the joint is cut and glued.

    Args:
        index: the lap index [dimensionless]
        limits: what a joint is held to
        can_be_replaced: whether another front of the same look could be had

    Returns:
        One sentence for each precaution, in the order of work.

    Source: common practice.
    """
    advice = (
        "Back the front with a block while the last chops go toward the lap.",
        "Set the baseline of the tails and the depth of the sockets with the same gauge, "
        "and undercut the floor of each socket slightly.",
        say("Leave the tails no more than {:.3} tight across their width.", 0.004),
        "Glue the cheeks of the tails, not the lap: glue shut in behind a tail bursts it.",
        "Notch the clamping cauls over the pins, so that no clamp bears on the lap.",
    )
    if index > limits.lap_index_caution.value + TOLERANCE or not can_be_replaced:
        return (*advice, "Mill one spare front blank in sequence with the others.")
    return advice
