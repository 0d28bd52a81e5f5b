"""A plan: which sheets are filled how, what found no room, and which of two plans is the better."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from casewright.cutting.guillotine.beam import Whole
from casewright.cutting.guillotine.filling import Taste, filled, left_over
from casewright.cutting.guillotine.tables import Layout, Table
from casewright.measure.units import Count, Number


@dataclass(frozen=True, slots=True, eq=False)
class Plan:
    """Layouts and what is not on them.

    Attributes:
        layouts: one for each sheet or board that is cut
        unplaced: how many of each kind of piece found no room [1]
        missing: area of those [1]
        cost: of the stock used [1]
        spread: sum of the squares of what is free on each, as shares of the stock: the larger, the more of it
            lies together [1]
    """

    layouts: tuple[Layout, ...]
    unplaced: Whole
    missing: Number
    cost: Count
    spread: Number

    @property
    def key(self) -> tuple[float, int, float]:
        """The smaller, the better: place all, at the least cost, with what is left over in few places."""
        return (self.missing, self.cost, -self.spread)


def plan_of(table: Table, layouts: Iterable[Layout]) -> Plan:
    """A plan of these layouts for all the pieces of the problem."""
    layouts = tuple(layout for layout in layouts if layout.moves)
    unplaced = left_over(table.count, layouts)
    free = [1.0 - float(layout.counts @ table.area) / table.stock_area[layout.stock] for layout in layouts]
    return Plan(
        layouts=layouts,
        unplaced=unplaced,
        missing=float(unplaced @ table.area),
        cost=sum(int(table.cost[layout.stock]) for layout in layouts),
        spread=sum(share * share for share in free),
    )


def orders(table: Table) -> list[list[int]]:
    """Orders in which the stocks may be used up: limited ones first or last, by size and by price."""
    stocks = range(len(table.cost))
    priced = table.cost / np.maximum(table.stock_area, 1)
    limited = [s for s in stocks if table.problem.stocks[s].limit is not None]
    endless = [s for s in stocks if table.problem.stocks[s].limit is None]
    endless.sort(key=lambda s: (priced[s], -table.stock_area[s]))
    keys = [
        lambda s: (-table.stock_area[s], s),
        lambda s: (priced[s], -table.stock_area[s]),
        lambda s: (table.stock_area[s], s),
        lambda s: (-table.stock_length[s], s),
        lambda s: (-table.stock_width[s], s),
    ]
    found: list[list[int]] = []
    for key in keys if limited else keys[:1]:
        ordered = sorted(limited, key=key)
        for lead in range(max(1, len(endless))):
            tail = endless[lead : lead + 1] + endless[:lead] + endless[lead + 1 :]
            for order in (ordered + tail, tail + ordered):
                if order not in found:
                    found.append(order)
    return found


def sequence(table: Table, order: Sequence[Count], wanted: Count) -> list[int]:
    """Each stock of the order as often as there is of it, never more often than there are pieces [1]."""
    row: list[int] = []
    for stock in order:
        limit = table.problem.stocks[stock].limit
        row += [stock] * (wanted if limit is None else min(limit, wanted))
    return row


def quick_plan(table: Table) -> Plan:
    """A plan within some hundredths of a second: every order of the stocks, filled greedily."""
    wanted = int(table.count.sum())
    best: Plan | None = None
    for order in orders(table):
        for taste in (Taste(), Taste(base=0.1, power=0.5)):
            plan = plan_of(table, filled(table, table.count, sequence(table, order, wanted), taste))
            if best is None or plan.key < best.key:
                best = plan
    return best or plan_of(table, ())
