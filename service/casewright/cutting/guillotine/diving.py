"""One sheet fewer, where all are alike: the first sheets by prices, with luck, and the last by a search."""

import numpy as np

from casewright.cutting.guillotine.chain import Chain
from casewright.cutting.guillotine.filling import Taste, filled, left_over
from casewright.cutting.guillotine.generator import Generator
from casewright.cutting.guillotine.plans import plan_of
from casewright.cutting.guillotine.rounding import whole_sheets

LEFT = (2.0, 3.0, 5.0)  # sheets' worth of pieces that are left to the search
TASTES = ((0.03, 0.5), (0.1, 1.0), (0.0, 0.0))
KEEP = 60
MOST_LAYOUTS = 12_000  # that the prices are made of; beyond, each dive would take too long


def dive(generator: Generator, chain: Chain, luck: np.random.Generator) -> None:
    """Try for a plan with a sheet fewer than the best one of the chain, and give it to the chain if found.

    Args:
        generator: whose program is at its end
        chain: what the best plan is so far, and whether there is still time
        luck: other draws make another plan
    """
    table, best = chain.table, chain.best
    if len(generator.layouts) > MOST_LAYOUTS or best.missing:
        return
    few = float(luck.choice(LEFT))
    chosen = whole_sheets(generator, chain.wanted, chain.stock, few, chain.goes_on, luck)
    left = left_over(chain.wanted, chosen)
    row = [0] * (len(best.layouts) - 1 - len(chosen))
    slack = float(len(row) * table.stock_area[0] - left @ table.area)
    for base, power in TASTES:
        if slack < 0 or not chain.goes_on():
            return
        rest = filled(table, left, row, Taste(KEEP, base, power), slack)
        if not left_over(left, rest).any():
            chain.take(plan_of(table, [*chosen, *rest]))
            return
