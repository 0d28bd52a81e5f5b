"""Which whole sheets to take where there are several sizes, or a few boards: cheaper mixes, each by itself.

Emptying and refilling a few sheets finds the cheapest sheets for the pieces that were on them, and so stays
near the mix that it began with. Here a whole mix is chosen first, and all pieces are laid out on just that.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice, product

import numpy as np

from casewright.cutting.guillotine.beam import Whole
from casewright.cutting.guillotine.filling import Taste, filled
from casewright.cutting.guillotine.plans import Plan, plan_of
from casewright.cutting.guillotine.refilling import Refilling
from casewright.cutting.guillotine.tables import Table
from casewright.measure.units import Count, Number

FEW_SIZES = 10
MOST_MIXES = 5000
"""Where more cost less than the plan, none is tried: refilling finds these small steps by itself."""
MOST_LOOKED_AT = 20_000
BATCH = 40  # steps of refilling between two looks at the clock
PATIENCE = 10  # batches without less left over before a mix is given up, the first time
MOST_PATIENT = 40
TIRED = 0.004  # each try makes a mix look so much fuller


@dataclass(slots=True)
class Mix:
    """So many sheets of each size.

    Attributes:
        counts: of each stock [1]
        cost: of all [1]
        full: which share of their area all pieces take [1]
        tries: how often it was tried in vain [1]
    """

    counts: tuple[Count, ...]
    cost: Count
    full: Number
    tries: Count = 0


class Mixing:
    """The mixes that cost less than a plan, tried the emptiest first.

    Args:
        table: the problem's sizes
        wanted: how many of each kind of piece there are to be placed, of those that fit anything [1]
        plan: one for all of these
        bound: what no plan undercuts, as far as is known [1]
        seed: of every choice made [1]
    """

    def __init__(self, table: Table, wanted: Whole, plan: Plan, bound: Count, seed: Count) -> None:
        self.table = table
        self.wanted = wanted
        self.random = np.random.default_rng(seed)
        found = mixes(table, float(self.wanted @ table.area), bound, plan.cost)
        self.mixes = list(islice(found, MOST_MIXES + 1))
        if len(self.mixes) > MOST_MIXES:
            self.mixes = []

    def try_one(self, plan: Plan, bound: Count, goes_on: Callable[[], bool]) -> Plan | None:
        """A plan that is cheaper, from the most promising mix; None where that one does not do it.

        Args:
            plan: the best one so far
            bound: what no plan undercuts [1]
            goes_on: asked between steps whether there is time for another

        Source: destroy and refill on a fixed set of sheets; which mix is next was measured on sheets of four
            sizes.
        """
        self.mixes = [mix for mix in self.mixes if bound <= mix.cost < plan.cost]
        if not self.mixes:
            return None
        mix = min(self.mixes, key=lambda each: each.full + TIRED * each.tries)
        mix.tries += 1
        row = [stock for stock, count in enumerate(mix.counts) for _ in range(count)]
        self.random.shuffle(row)
        taste = Taste.drawn(self.random)
        begun = plan_of(self.table, filled(self.table, self.wanted, row, taste))
        refilling = Refilling(self.table, begun, int(self.random.integers(2**40)), swaps=False)
        idle = 0
        while refilling.reached[0] > 0 and idle < min(PATIENCE * mix.tries, MOST_PATIENT) and goes_on():
            idle = 0 if refilling.steps(BATCH) else idle + 1
        return refilling.best_plan() if refilling.reached[0] == 0 else None


def mixes(table: Table, area: Number, bound: Count, below: Count) -> Iterator[Mix]:
    """Every mix that has the area and costs less; none where there are too many, or sheets of one size only.

    Args:
        table: the problem's sizes
        area: of all pieces [1]
        bound: what a mix costs at least [1]
        below: what it must cost less than [1]

    Yields:
        The mixes.
    """
    stocks = table.problem.stocks
    prices = [max(1, int(cost)) for cost in table.cost]
    limits = [below if stock.limit is None else stock.limit for stock in stocks]
    most = [min(limit, below // price) for limit, price in zip(limits, prices, strict=True)]
    if not 1 < len(stocks) <= FEW_SIZES:
        return
    last = int(np.argmax(most))
    others = [stock for stock in range(len(stocks)) if stock != last]
    if np.prod([float(most[stock] + 1) for stock in others]) > MOST_LOOKED_AT:
        return
    each, price = float(table.stock_area[last]), int(table.cost[last])
    for some in product(*(range(most[stock] + 1) for stock in others)):
        cost = sum(count * int(table.cost[stock]) for count, stock in zip(some, others, strict=True))
        has = sum(count * float(table.stock_area[stock]) for count, stock in zip(some, others, strict=True))
        for count in range(max(0, math.ceil((area - has) / each)), most[last] + 1):
            if cost + count * price >= below:
                break
            if cost + count * price >= bound:
                whole = dict(zip(others, some, strict=True)) | {last: count}
                counts = tuple(whole[stock] for stock in range(len(stocks)))
                yield Mix(counts, cost + count * price, area / (has + count * each))
