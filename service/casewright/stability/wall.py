"""What pulls at the fixings of a piece that is fixed to a wall: its weight down, and its lever out."""

import math

from casewright.measure.units import Count, Inches, InchPounds, Number, Pounds

LEAST_FIXINGS = 2
"""Nothing is hung from one point: it would turn (common practice)."""


def hung_weight(dead: Pounds, contents: Pounds) -> Pounds:
    """What the wall carries.

    Rule: dead + contents

    Args:
        dead: the piece, empty [lb]
        contents: what is in it [lb]

    Returns:
        The weight [lb]

    Source: statics.
    """
    return dead + contents


def wall_moment(weight: Pounds, depth: Inches, opened: Pounds, travel: Inches) -> InchPounds:
    """The moment with which a hung piece turns away from its wall.

    Rule: weight * depth / 2 + opened * travel

    Args:
        weight: of the piece and what is in it, its centre taken in the middle of its depth [lb]
        depth: of the piece [in]
        opened: of the drawers that can be open at once, with what is in them [lb]
        travel: how far they come out [in]

    Returns:
        The moment about the lower edge at the wall [in-lb]

    Source: statics.
    """
    return weight * depth / 2 + opened * travel


def pull_out(moment: InchPounds, lever: Inches) -> Pounds:
    """How hard the upper fixings are pulled out of the wall, all together.

    Rule: moment / lever

    Args:
        moment: with which the piece turns away from the wall [in-lb]
        lever: from the lower edge, which bears on the wall, up to the fixings [in]

    Returns:
        The pull [lb]

    Raises:
        ValueError: the fixings are not above the edge that bears.

    Source: statics.
    """
    if lever <= 0:
        raise ValueError("The fixings lie above the lower edge of the piece; give their height above it.")
    return moment / lever


def fixing_load(shear: Pounds, pull: Pounds, fixings: Count) -> Pounds:
    """What one fixing carries: its share of the weight along the wall, and of the pull out of it.

    Rule: sqrt(shear² + pull²) / fixings

    Args:
        shear: the weight that the wall carries [lb]
        pull: out of the wall [lb]
        fixings: how many share it

    Returns:
        The load of one, aslant [lb]

    Source: statics.
    """
    return math.hypot(shear, pull) / fixings


def fixings_needed(shear: Pounds, pull: Pounds, holds: Pounds, factor: Number) -> Count:
    """How many fixings a piece asks for.

    Rule: factor * sqrt(shear² + pull²) / holds, rounded up; two at the least

    Args:
        shear: the weight that the wall carries [lb]
        pull: out of the wall [lb]
        holds: what one fixing holds before it fails [lb]
        factor: by how much it is to be stronger than its load [dimensionless]

    Returns:
        The fixings

    Source: statics; what a fixing holds is its maker's to say, and the wall's.
    """
    return max(LEAST_FIXINGS, math.ceil(factor * math.hypot(shear, pull) / holds - 1e-9))


def pull_at_wall(holding: InchPounds, tipping: InchPounds, target: Number, lever: Inches) -> Pounds:
    """How hard a piece that stands on the floor pulls at its wall fixings when it would tip.

    Rule: max(0, target * tipping - holding) / lever

    Args:
        holding: the moments that hold it [in-lb]
        tipping: the moments that tip it [in-lb]
        target: the factor wanted [dimensionless]
        lever: from the floor up to the fixings [in]

    Returns:
        The pull [lb]

    Raises:
        ValueError: the fixings are not above the floor.

    Source: statics.
    """
    if lever <= 0:
        raise ValueError("The fixings lie above the floor; give their height above it.")
    return max(0.0, target * tipping - holding) / lever
