"""How little any layout of the pieces could cost."""

import numpy as np

from casewright.cutting.guillotine.tables import Table
from casewright.measure.units import Count, Number


def area_bound(table: Table) -> Count:
    """The least cost of stock that has at least the area of the pieces, with parts of sheets allowed [1].

    Args:
        table: the problem's sizes

    Returns:
        A cost that no layout of all pieces that fit some stock can undercut.
    """
    if not len(table.cost):
        return 0
    wanted = float(table.area @ (table.count * table.fits().any(axis=1)))
    cost = 0.0
    for stock in np.argsort(table.cost / table.stock_area, kind="stable"):
        limit = table.problem.stocks[stock].limit
        take = wanted if limit is None else min(wanted, float(limit * table.stock_area[stock]))
        cost += take * table.cost[stock] / table.stock_area[stock]
        wanted -= take
    return whole_cost(table, cost)


def whole_cost(table: Table, cost: Number) -> Count:
    """The least cost of whole sheets that is not below this one [1].

    Args:
        table: the problem's sizes
        cost: what parts of sheets would cost at least [1]
    """
    step = int(np.gcd.reduce(table.cost)) or 1
    return step * int(np.ceil(cost / step * (1.0 - 1e-9) - 1e-7))
