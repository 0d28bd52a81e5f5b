"""Slopes as they are typed, and sizes and slopes that cannot be meant, refused with a sentence."""

import math

from casewright.joinery.limits import LIMITS, Limits
from casewright.measure.saying import say
from casewright.measure.units import Inches, Number


def refuse_unless_above_zero(**sizes: Inches) -> None:
    """Refuses a size that is zero, negative, infinite or not a number.

    Args:
        sizes: each size by its name in a maker's words, with `_` for a space [in]

    Raises:
        ValueError: a size cannot be meant.

    Source: common practice.
    """
    for name, size in sizes.items():
        if not 0 < size < math.inf:
            raise ValueError(
                say("The {} cannot be {:exact}; give a size above 0.", name.replace("_", " "), size)
            )


def refuse_below_zero(**sizes: Inches) -> None:
    """Refuses a size that is negative, infinite or not a number; zero means that there is none.

    Args:
        sizes: each size by its name in a maker's words, with `_` for a space [in]

    Raises:
        ValueError: a size cannot be meant.

    Source: common practice.
    """
    for name, size in sizes.items():
        if not 0 <= size < math.inf:
            raise ValueError(
                say("The {} cannot be {:exact}; give 0 when there is none.", name.replace("_", " "), size)
            )


def refuse_no_dovetail(slope: Number, usual: str, limits: Limits = LIMITS) -> None:
    """Refuses a slope that makes no dovetail.

    Args:
        slope: how far along for one across, 8 for 1:8 [dimensionless]
        usual: which slope is usual for what, in words
        limits: what a joint is held to

    Raises:
        ValueError: the slope is none, or its corners would break off.

    Source: common practice.
    """
    if not 0 < slope < math.inf:
        raise ValueError(f"A slope of 1:{slope:g} is no slope; {usual}.")
    if slope < limits.slope_least.value:
        steepest = limits.slope_steepest.value
        raise ValueError(
            f"A slope of 1:{slope:g} makes no dovetail: its corners break off. "
            f"Make it 1:{steepest:g} or slighter; {usual}."
        )


def slope_typed(typed: str) -> Number:
    """How far along for one across, as somebody types a slope: 8 from 1:8, or from 8.

    Args:
        typed: what was typed

    Returns:
        The slope [dimensionless]

    Raises:
        ValueError: it is no slope, or steeper or flatter than any dovetail could be.

    Source: common practice.
    """
    across, colon, along = typed.partition(":")
    slope = float(along) / float(across) if colon else float(across)
    if not 1 / 100 < slope < 100:  # never NaN either
        raise ValueError(typed)
    return slope
