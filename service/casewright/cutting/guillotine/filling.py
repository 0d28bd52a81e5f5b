"""Sheets in a given order filled with given pieces by the beam search, and what that leaves unplaced."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from casewright.cutting.guillotine.beam import Real, Whole, search
from casewright.cutting.guillotine.tables import Layout, Table
from casewright.measure.units import Count, Number

ENOUGH_BYTES = (
    60_000_000  # a search keeps all its layouts until it ends; this keeps a process far below 500 MB
)


@dataclass(frozen=True, slots=True)
class Taste:
    """How part-filled layouts are compared.

    Attributes:
        keep: how many of a group go on [1]
        base: added to the share of waste before it is compared [1]
        power: how much layouts of few large pieces are favoured [1]
        noise: how far comparisons are shaken, as a share [1]
        seed: of the shaking [1]
    """

    keep: Count = 1
    base: Number = 0.0
    power: Number = 0.0
    noise: Number = 0.0
    seed: Count = 0

    @classmethod
    def drawn(cls, random: np.random.Generator) -> "Taste":
        """One by chance, for whoever fills the same sheets again and again."""
        return cls(
            int(random.integers(5, 60)),
            float(random.choice([0.0, 0.03, 0.1])),
            float(random.choice([0.0, 0.5, 1.0])),
            0.1,
            int(random.integers(2**30)),
        )


def filled(
    table: Table,
    counts: Whole,
    stocks: Sequence[Count],
    taste: Taste,
    slack: Number = float("inf"),
    value: Real | None = None,
) -> list[Layout]:
    """Layouts of the stocks in the order given, as many pieces on them as the search could place.

    Args:
        table: the problem's sizes
        counts: how many of each kind of piece are to be placed [1]
        stocks: the stocks to fill, in order; one that takes nothing is left out [1]
        taste: how part-filled layouts are compared
        slack: waste beyond which a part-filled layout is given up, as area [1]
        value: what a piece of each kind is worth; its area if not given [1]

    Returns:
        The layouts of the stocks that were used.
    """
    wanted = int(counts.sum())
    if wanted == 0 or not stocks:
        return []
    some = np.flatnonzero(counts)
    short = np.full(len(counts), -1, dtype=np.int64)
    short[some] = np.arange(len(some))
    poses = np.flatnonzero(counts[table.kind])
    rects, begins = table.rects(stocks)
    sheets = np.array(stocks, dtype=np.int64)
    room = 2 * (2 * len(some) + 112) * (2 * wanted + 1)
    rows = search(
        short[table.kind[poses]],
        table.length[poses],
        table.width[poses],
        counts[some],
        (table.area if value is None else value)[some],
        table.area[some],
        table.stock_length[sheets],
        table.stock_width[sheets],
        table.way[sheets],
        rects,
        begins,
        table.problem.stages,
        max(1, min(taste.keep, ENOUGH_BYTES // room)),
        slack,
        taste.base,
        taste.power,
        taste.noise,
        taste.seed,
    )
    rows[:, 0] = poses[rows[:, 0]]
    return table.layouts(rows, stocks)


def left_over(counts: Whole, layouts: Sequence[Layout]) -> Whole:
    """How many of each kind are not on the layouts [1]."""
    left = counts.copy()
    for layout in layouts:
        left -= layout.counts
    return left
