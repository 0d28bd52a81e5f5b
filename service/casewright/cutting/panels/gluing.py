"""Putting strips side by side into a panel, so that glue lines keep off joints."""

from collections.abc import Sequence
from itertools import permutations

from casewright.measure.units import Count

ORDERS = 720
"""So many orders are tried: every one of six strips, the first ones of more."""


def put_together(
    strips: Sequence[Count], width: Count, keep_off: Sequence[tuple[Count, Count]]
) -> tuple[tuple[Count, ...], Count, bool]:
    """The order of a panel's strips, and how much is trimmed from its first edge.

    Rule: no glue line lies in a stretch that is kept free, if any order of the strips and any share of the
    trimming allow it; else the order with the fewest lines in such stretches

    Args:
        strips: net widths [1]
        width: of the panel [1]
        keep_off: stretches from and to, measured from the first edge of the finished panel [1]

    Returns:
        The strips in order, what is trimmed from the first edge, and whether every line is clear.

    Source: common practice: a glue line in a half pin or at the edge of a groove opens or breaks out.
    """
    over = max(0, sum(strips) - width)
    best: tuple[int, tuple[Count, ...], Count] | None = None
    for turn, order in enumerate(permutations(sorted(strips, reverse=True))):
        if turn == ORDERS:
            break
        for trimmed in dict.fromkeys((over // 2, 0, over)):
            bad = _lines_within(order, trimmed, keep_off)
            if best is None or bad < best[0]:
                best = bad, order, trimmed
            if bad == 0:
                return order, trimmed, True
    if best is None:
        return (), 0, True
    return best[1], best[2], best[0] == 0


def _lines_within(order: Sequence[Count], trimmed: Count, keep_off: Sequence[tuple[Count, Count]]) -> int:
    """How many glue lines lie where none should."""
    at, bad = -trimmed, 0
    for strip in order[:-1]:
        at += strip
        bad += any(low <= at <= high for low, high in keep_off)
    return bad
