"""Lettering moved apart where sizes stand too close for it."""

from collections.abc import Sequence

from casewright.measure.units import Inches


def spread(wanted: Sequence[Inches], apart: Inches) -> list[Inches]:
    """Places for lettering, each as near as can be to where it is wanted and none closer than it may be.

    Args:
        wanted: where each would stand, in rising order [in]
        apart: the least distance from one to the next [in]

    Returns:
        As many places, in the same order [in]

    Source: isotonic regression by pooling neighbours (Ayer and others, 1955): the least sum of squared moves.
    """
    pools: list[tuple[float, int]] = []
    for number, place in enumerate(wanted):
        total, count = place - number * apart, 1
        while pools and pools[-1][0] / pools[-1][1] > total / count:
            before, members = pools.pop()
            total, count = total + before, count + members
        pools.append((total, count))
    level = [total / count for total, count in pools for _ in range(count)]
    return [place + number * apart for number, place in enumerate(level)]
