"""How little any layout of the pieces could cost."""

import numpy as np

from casewright.cutting.guillotine.tables import Table
from casewright.measure.units import Count


def area_bound(table: Table) -> Count:
    """The least cost of stock that has at least the area of the pieces, with parts of sheets allowed [1].

    Args:
        table: the problem's sizes

    Returns:
        A cost that no layout of all pieces that fit some stock can undercut.
    """
    wanted = float(table.area @ (table.count * table.fits().any(axis=1)))
    cost = 0.0
    for stock in np.argsort(table.cost / table.stock_area, kind="stable"):
        limit = table.problem.stocks[stock].limit
        take = wanted if limit is None else min(wanted, float(limit * table.stock_area[stock]))
        cost += take * table.cost[stock] / table.stock_area[stock]
        wanted -= take
    return int(np.ceil(cost - 1e-6 * max(1.0, cost)))
