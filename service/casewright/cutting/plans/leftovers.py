"""What is left of a board: what is worth a place on the rack, and how much it is worth."""

from collections.abc import Iterator

from casewright.cutting.asked.cut_file import Keep
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.sawing import Held, Sawn
from casewright.cutting.plans.spots import Spot
from casewright.cutting.plans.values import Left
from casewright.measure.lengths import to_ticks
from casewright.measure.units import Number


def kept(ground: Ground, sawn: Sawn[Held], keep: Keep) -> Iterator[Left]:
    """What is left of a board and large enough to be kept.

    Args:
        ground: the board
        sawn: its cuts
        keep: from which size it is worth it

    Returns:
        Each piece, as it is cut free.

    Source: common practice: 3 × 12 in of clear wood, 2-1/2 × 15 of other.
    """
    for spot in sawn.left():
        taken = any(spot.within(shut) for shut in (*ground.shut, *ground.back, *ground.sap))
        least = keep.inside if taken else keep.show
        along, across = (spot.width, spot.length) if ground.grain_across else (spot.length, spot.width)
        if along >= to_ticks(least.length) and across >= to_ticks(least.width):
            yield Left(spot=spot, is_clear=not taken, grain_across=ground.grain_across)


def worth(ground: Ground, left: Left) -> Number:
    """What a piece that is left is worth against others, in square ticks of a whole board.

    Rule: area times its length as a part of the board's; half where it is not clear

    Args:
        ground: the board it comes from
        left: the piece

    Returns:
        The worth [dimensionless]

    Source: common practice: long and clear is worth most; the weights are this program's own.
    """
    spot: Spot = left.spot
    if left.grain_across:
        spot = spot.flipped()
    whole = ground.outer.width if left.grain_across else ground.outer.length
    return spot.area * spot.length / whole * (1.0 if left.is_clear else 0.5)
