"""The prices of the linear programme in whole numbers, and the bound that they prove."""

from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from casewright.cutting.lengths.knapsack import Whole
from casewright.cutting.lengths.master import Reals
from casewright.cutting.lengths.task import Task
from casewright.measure.units import Count

SCALE = 1 << 30
"""The dearest stock in whole numbers of the knapsacks."""
LEAST = 200
"""What pays less than this, of `SCALE`, is not told from the solver's own rounding."""


@dataclass(frozen=True)
class Prices:
    """What pieces are worth and stock costs, in whole numbers of the knapsacks.

    Attributes:
        worths: of one of each piece
        needs: what one of each stock costs, with its rent
        factor: so many of these whole numbers are one of the unit of the costs [1]
    """

    worths: Whole
    needs: Whole
    factor: Count


def whole_prices(task: Task, worths: Reals, rents: Reals) -> Prices:
    """Prices of the linear programme in whole numbers, rounded down so that none is above what it may be."""
    factor = max(1, SCALE // int(max(1, task.costs.max())))
    return Prices(
        np.minimum((worths * factor).astype(np.int64), task.left_over * factor),
        task.costs * factor + np.ceil(rents * factor).astype(np.int64),
        factor,
    )


def proven(task: Task, prices: Prices, over: Whole, demand: Whole, limits: Whole) -> Fraction:
    """What no way to cut all that is wanted can cost less than.

    Any worths are a proof if no set is worth more than its stock costs. If one is, then either all worths are
    taken down by the same share, or a stock with a limit pays the difference as often as there is one of it.
    """
    factor = prices.factor
    costs = [int(c) * factor for c in task.costs]
    share = Fraction(1)
    for k in np.flatnonzero(task.unlimited):
        if over[k] > costs[k]:
            share = min(share, Fraction(costs[k], int(over[k])))
    value = share * sum(int(d) * int(w) for d, w in zip(demand, prices.worths, strict=True))
    for k in np.flatnonzero(~task.unlimited):
        value -= int(limits[k]) * max(Fraction(0), share * int(over[k]) - costs[k])
    return max(Fraction(0), value / factor)
