"""The linear programme over ways to cut: which sets of pieces, how often, so that everything wanted is made.

HiGHS solves it; sets come in as they are found. The same programme serves when part of the work is already
decided: then less is wanted, and sets with more of a piece than is still wanted stay out.
"""

from dataclasses import dataclass

import highspy
import numpy as np
from numpy.typing import NDArray

from casewright.cutting.lengths.knapsack import Whole
from casewright.cutting.lengths.task import Task

Reals = NDArray[np.float64]
Rows = NDArray[np.int32]

DUAL, PRIMAL = 1, 4
"""HiGHS's numbers for the two simplex methods."""


@dataclass(frozen=True, slots=True)
class Solved:
    """One solution of the programme.

    Attributes:
        often: how often each set is cut
        left: how many of each piece are left over
        worths: what one of each piece is worth, in the unit of the costs
        rents: what one of each stock with a limit costs beyond its price
        value: of all, with what is left over
    """

    often: Reals
    left: Reals
    worths: Reals
    rents: Reals
    value: float


class Master:
    """The programme, and all sets that were ever found.

    Attributes:
        task: what is to be cut
        sets: how often each piece is in each set, a row for each set
        on: the stock of each set
    """

    def __init__(self, task: Task) -> None:
        self.task = task
        pieces, stocks = len(task.lengths), len(task.caps)
        self.sets: Whole = np.zeros((256, pieces), np.int64)
        self.on: Whole = np.zeros(256, np.int64)
        self.count = 0
        self._known: set[bytes] = set()
        self._asked_anew = False
        self._unit = float(max(1, task.costs.max()))
        self._limited = np.flatnonzero(~task.unlimited)
        self._row_of = np.full(stocks, -1, np.int32)
        self._row_of[self._limited] = pieces + np.arange(len(self._limited), dtype=np.int32)
        self._highs = _quiet()
        rows = pieces + len(self._limited)
        low = np.concatenate([task.demand.astype(float), np.full(len(self._limited), -highspy.kHighsInf)])
        high = np.concatenate([np.full(pieces, highspy.kHighsInf), task.limits[self._limited].astype(float)])
        nothing = np.zeros(0, np.int32)
        self._highs.addRows(rows, low, high, 0, np.zeros(rows, np.int32), nothing, np.zeros(0))
        self._add_columns(
            task.left_over / self._unit, np.arange(pieces, dtype=np.int32), np.arange(pieces, dtype=np.int32)
        )

    def _add_columns(self, costs: Reals, starts: Rows, rows: Rows, values: Reals | None = None) -> None:
        """New columns of the programme; ones where no values are given."""
        many = len(costs)
        self._highs.addCols(
            many,
            costs,
            np.zeros(many),
            np.full(many, highspy.kHighsInf),
            len(rows),
            starts,
            rows,
            np.ones(len(rows)) if values is None else values,
        )

    def add(self, sets: Whole, on: Whole) -> int:
        """Take in those sets that are new, and say how many they were."""
        fresh = []
        for s in range(len(sets)):
            key = sets[s].astype(np.int32).tobytes() + int(on[s]).to_bytes(4, "little")
            if key not in self._known:
                self._known.add(key)
                fresh.append(s)
        if not fresh:
            return 0
        first, self.count = self.count, self.count + len(fresh)
        while self.count > len(self.on):
            self.sets = np.concatenate([self.sets, np.zeros_like(self.sets)])
            self.on = np.concatenate([self.on, np.zeros_like(self.on)])
        self.sets[first : self.count] = sets[fresh]
        self.on[first : self.count] = on[fresh]
        starts: list[int] = []
        rows: list[int] = []
        values: list[int] = []
        for s in fresh:
            starts.append(len(rows))
            there = np.flatnonzero(sets[s])
            rows.extend(there.tolist())
            values.extend(sets[s][there].tolist())
            if self._row_of[on[s]] >= 0:
                rows.append(int(self._row_of[on[s]]))
                values.append(1)
        self._add_columns(
            self.task.costs[on[fresh]] / self._unit,
            np.array(starts, np.int32),
            np.array(rows, np.int32),
            np.array(values, float),
        )
        return len(fresh)

    def want(self, demand: Whole, limits: Whole, barred: Whole) -> None:
        """Ask for less: sets that hold too much, or that are barred, stay out.."""
        pieces = len(demand)
        rows = pieces + len(self._limited)
        low = np.full(rows, -highspy.kHighsInf)
        high = np.full(rows, highspy.kHighsInf)
        low[:pieces] = demand
        high[pieces:] = limits[self._limited]
        changed = self._highs.changeRowsBounds  # type: ignore[attr-defined] # the stubs forget it
        changed(rows, np.arange(rows, dtype=np.int32), low, high)
        self._asked_anew = True
        fits = (self.sets[: self.count] <= demand).all(axis=1) & (limits[self.on[: self.count]] > 0)
        fits[barred] = False
        self._highs.changeColsBounds(
            self.count,
            np.arange(pieces, pieces + self.count, dtype=np.int32),
            np.zeros(self.count),
            np.where(fits, highspy.kHighsInf, 0.0),
        )

    def solve(self) -> Solved:
        """The best mixture of the sets that may be used."""
        # What was asked for less leaves the old prices right, what came in new leaves the old mixture right.
        self._highs.setOptionValue("simplex_strategy", DUAL if self._asked_anew else PRIMAL)
        self._asked_anew = False
        self._highs.run()
        found = self._highs.getSolution()
        pieces = len(self.task.lengths)
        columns = np.array(found.col_value)
        duals = np.array(found.row_dual) * self._unit
        rents = np.zeros(len(self.task.caps))
        rents[self._limited] = -duals[pieces:]
        return Solved(
            columns[pieces:],
            columns[:pieces],
            np.maximum(duals[:pieces], 0.0),
            np.maximum(rents, 0.0),
            self._highs.getInfo().objective_function_value * self._unit,
        )


def _quiet() -> highspy.Highs:
    """A solver that says nothing and takes one core."""
    highs = highspy.Highs()  # type: ignore[no-untyped-call]
    highs.setOptionValue("output_flag", False)
    highs.setOptionValue("threads", 1)
    highs.setOptionValue("presolve", "off")
    return highs
