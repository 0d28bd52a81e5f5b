"""Sizes that cannot be meant, refused with a sentence."""

import math

from casewright.measure.saying import say
from casewright.measure.units import Inches


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
