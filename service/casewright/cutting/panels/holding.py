"""Whether some boards hold all panels and single parts, for whoever only wants to know that."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from casewright.cutting.panels.problem import PanelProblem
from casewright.cutting.panels.solving import SEEDS, WARMTH, Desk, copied
from casewright.measure.units import Count, Number

DEAR = 50
"""What a spare board costs for its area, so that it is used only where nothing else helps."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lacking:
    """What some boards do not hold.

    Attributes:
        panels: how many of each panel [1]
        pieces: how many of each single part [1]
    """

    panels: tuple[Count, ...]
    pieces: tuple[Count, ...]

    def __bool__(self) -> bool:
        """Is anything lacking?"""
        return any(self.panels) or any(self.pieces)


def lacking(problem: PanelProblem, own: Count, *, rounds: Count, seed: Count) -> Lacking:
    """What a problem's first boards do not hold, as far as a short search finds.

    Where a first plan lacks something, spare boards are lent to it, and some rounds of improvement try to do
    without them. No bound is asked for, which makes this many times quicker than a plan.

    Args:
        problem: what is wanted, and from which boards; each stock is one board
        own: how many of its boards count; those after them are lent [1]
        rounds: of improvement [1]
        seed: the same seed finds the same [1]

    Returns:
        What the first plan lacks, and nothing where a plan without spare boards was found.

    Raises:
        ValueError: a stock is not just one board

    Source: destroy and refill, as `plan_panels` has it.
    """
    if any(stock.limit != 1 for stock in problem.stocks):
        raise ValueError("each stock must be just one board")
    seeds = np.random.default_rng(seed)
    _, need, short, complete = Desk(replace(problem, stocks=problem.stocks[:own])).first(_drawn(seeds))
    if complete:
        return Lacking(panels=(0,) * len(problem.panels), pieces=(0,) * len(problem.pieces))
    if rounds and len(problem.stocks) > own and _does_without(problem, own, rounds, seeds):
        return Lacking(panels=(0,) * len(problem.panels), pieces=(0,) * len(problem.pieces))
    return Lacking(panels=_by_panel(problem, short.tolist()), pieces=tuple(need.tolist()))


def _does_without(problem: PanelProblem, own: Count, rounds: Count, seeds: np.random.Generator) -> bool:
    """Is there a plan of everything that leaves the spare boards alone?"""
    lent = tuple(
        replace(stock, cost=stock.area * (1 if place < own else DEAR))
        for place, stock in enumerate(problem.stocks)
    )
    desk = Desk(replace(problem, stocks=lent))
    walk, _, _, complete = desk.first(_drawn(seeds))
    if not complete:
        return False
    best = copied(walk)
    for place in range(rounds):
        if not best[0][own:].any():
            return True
        warmth: Number = WARMTH * (1 - place / rounds)
        desk.improve(_drawn(seeds), warmth, walk, best, 0)
    return not best[0][own:].any()


def _by_panel(problem: PanelProblem, short: Sequence[Count]) -> tuple[Count, ...]:
    """How many of each panel lack width, from the width that each of them lacks, one by one."""
    still = iter(short)
    return tuple(sum(next(still) > 0 for _ in range(panel.count)) for panel in problem.panels)


def _drawn(seeds: np.random.Generator) -> Count:
    return int(seeds.integers(SEEDS))
