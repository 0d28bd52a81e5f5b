"""How many people a piece asks for when it is carried."""

import math

from casewright.measure.units import Count, Pounds


def people_needed(weight: Pounds, each: Pounds) -> Count:
    """How many people carry a weight.

    Rule: weight / each, rounded up; one at the least

    Args:
        weight: what is carried [lb]
        each: what one person is asked to carry [lb]

    Returns:
        The people

    Source: common practice; the lifting equation of NIOSH starts from 51 lb close to the body and takes off
        for reach, height and twisting (from memory).
    """
    return max(1, math.ceil(weight / each - 1e-9))
