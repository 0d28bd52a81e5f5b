"""Rounding, once, at the end.

A sum of binary fractions can fall a hair short of the 64th that it truly is, and a bare floor then takes a
whole 64th away. Each function here carries a tolerance far below anything a gauge can show.
"""

import math

from casewright.measure.units import Inches, Number

TOLERANCE = 1e-9
"""In steps of the rounding: a billionth of a 64th is beyond any tool and above any float's error."""


def down_to(value: Number, step: Number) -> Number:
    """The greatest multiple of the step that is not above the value.

    Args:
        value: what is to be rounded [in its own unit]
        step: the multiple wanted, in the same unit as the value [in its own unit]

    Returns:
        The multiple [in its own unit]

    Source: common practice; the tolerance is explained at the head of this module.
    """
    return math.floor(value / step + TOLERANCE) * step


def up_to(value: Number, step: Number) -> Number:
    """The smallest multiple of the step that is not below the value.

    Args:
        value: what is to be rounded [in its own unit]
        step: the multiple wanted, in the same unit as the value [in its own unit]

    Returns:
        The multiple [in its own unit]

    Source: common practice; the tolerance is explained at the head of this module.
    """
    return math.ceil(value / step - TOLERANCE) * step


def near_to(value: Number, step: Number) -> Number:
    """The nearest multiple of the step; a value half way goes up.

    Args:
        value: what is to be rounded [in its own unit]
        step: the multiple wanted, in the same unit as the value [in its own unit]

    Returns:
        The multiple [in its own unit]

    Source: common practice; half goes up because a line is more easily planed off than put back.
    """
    return math.floor(value / step + 0.5 + TOLERANCE) * step


def floor64(value: Inches) -> Inches:
    """A size rounded down to 1/64 in: for whatever must go into an opening, and for safety limits.

    Args:
        value: the exact size [in]

    Returns:
        The greatest whole 64th that is not above it [in]

    Source: common practice.
    """
    return math.floor(value * 64 + TOLERANCE) / 64


def near64(value: Inches) -> Inches:
    """A position rounded to the nearest 1/64 in.

    Args:
        value: the exact position from the reference edge [in]

    Returns:
        The nearest whole 64th [in]

    Source: common practice; never add numbers that were rounded before.
    """
    return math.floor(value * 64 + 0.5 + TOLERANCE) / 64
