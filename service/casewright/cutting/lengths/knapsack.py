"""Which pieces pay best on one length: the knapsacks of the column generation, in whole numbers and exact.

A state is a set of pieces: how long they are together, and how much they are worth. States are kept by
length; one that is longer and worth no more than another is dropped, and so is one that could not pay even if
the rest of the stock were filled at the best worth per length that is still to come. Pieces are taken in the
order of that worth, so few states are left once prices are near their end: a fifth of a millisecond for 200
pieces.

Source: Martello, Toth, Knapsack Problems (1990), chapter 2 (states, dominance, Dantzig's bound); from memory.
"""

from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from casewright.cutting.compiled import compiled
from casewright.measure.units import Count

Whole: TypeAlias = NDArray[np.int64]

NOTHING = -(1 << 62)
ROOM = 1_500_000
"""States of one knapsack; 36 MB. Beyond it the search goes on for the best set alone, and may miss it."""


@dataclass(frozen=True, slots=True)
class Found:
    """Sets of pieces that pay.

    Attributes:
        sets: how often each piece is in each set, the best paying first
        on: the stock of each set
        over: no set on a stock is worth more than this, for each stock
        exact: nothing was passed over for want of room
        states: how many were made: what the answer cost
    """

    sets: Whole
    on: Whole
    over: Whole
    exact: bool
    states: Count


@dataclass(frozen=True, slots=True)
class Knapsacks:
    """Pieces and stock for which the same question is asked at many prices.

    Attributes:
        lengths: of each piece
        caps: the lengths of stock, rising
    """

    lengths: Whole
    caps: Whole
    _states: Whole = field(init=False)
    _made: NDArray[np.int32] = field(init=False)

    def __post_init__(self) -> None:
        room = int(min(ROOM, 4_000 + (len(self.lengths) + 1) * 20 * self.caps[-1]))
        object.__setattr__(self, "_states", np.empty((room, 2), np.int64))
        object.__setattr__(self, "_made", np.empty((room, 2), np.int32))

    def paying(
        self, bounds: Whole, worths: Whole, needs: Whole, least: Count, most: Count, *, best: bool = False
    ) -> Found:
        """Sets of pieces that are worth more than the stock they lie on needs.

        Args:
            bounds: how many of each piece there may be
            worths: of one of each piece
            needs: what a set must be worth more than, for each stock
            least: by how much more [1]
            most: no more sets than that [1]
            best: whether it is enough to look for the best one
        """
        order, times = _parts(self.lengths, bounds, worths, int(self.caps[-1]))
        states, exact, least, made = _states(
            self.lengths[order] * times,
            worths[order] * times,
            self.caps,
            needs,
            least,
            best,
            self._states,
            self._made,
        )
        gains, over = _gains(states, self._states, self.caps, needs, least)
        ranked = states[np.argsort(-gains, kind="stable")][: 50 * most]
        sets, on = _read(ranked, self._states, self._made, order, times, self.caps, needs, len(bounds), most)
        return Found(sets, on, over, exact, made)


def _parts(lengths: Whole, bounds: Whole, worths: Whole, longest: int) -> tuple[Whole, Whole]:
    """The pieces in the order in which they are taken, several of one as 1, 2, 4 … and the rest."""
    left = np.where(worths > 0, np.minimum(bounds, longest // lengths), 0)
    which, times, some = [], [], 1
    while True:
        there = np.flatnonzero(left > 0)
        if not len(there):
            break
        taken = np.minimum(left[there], some)
        which.append(there)
        times.append(taken)
        left[there] -= taken
        some *= 2
    if not which:
        return np.zeros(0, np.int64), np.zeros(0, np.int64)
    order = np.concatenate(which)
    by_worth = np.argsort(-(worths[order] / lengths[order]), kind="stable")
    return order[by_worth], np.concatenate(times)[by_worth]


@compiled
def _states(  # noqa: PLR0912, PLR0915 - one loop, in machine code
    lengths: Whole,
    worths: Whole,
    caps: Whole,
    needs: Whole,
    least: int,
    only_best: bool,
    pool: Whole,
    made: NDArray[np.int32],
) -> tuple[Whole, bool, int, int]:
    """The last states by length; whether none was passed over; what they pay over; how many there were."""
    stocks = caps.shape[0]
    longest = caps[stocks - 1]
    lowest = np.empty(stocks, np.int64)
    reach = np.empty(stocks, np.float64)
    for k in range(stocks - 1, -1, -1):
        lowest[k] = needs[k]
        if k + 1 < stocks:
            lowest[k] = min(lowest[k], lowest[k + 1])
    now = np.zeros(1, np.int64)
    pool[0, 0] = 0
    pool[0, 1] = 0
    made[0, 0] = -1
    made[0, 1] = -1
    used = 1
    exact = True
    top = least
    if only_best:
        least = max(least, _greedy(lengths, worths, caps, needs) - 1)
    for at in range(lengths.shape[0]):
        size = now.shape[0]
        if used + size > pool.shape[0]:
            exact = False
            break
        if not only_best and used + 40 * size > pool.shape[0]:
            only_best = True
            least = max(least, top)
        long = lengths[at]
        worth = worths[at]
        dense = 0.0
        if at + 1 < lengths.shape[0]:
            dense = worths[at + 1] / lengths[at + 1]
        for k in range(stocks - 1, -1, -1):
            reach[k] = needs[k] - caps[k] * dense
            if k + 1 < stocks:
                reach[k] = min(reach[k], reach[k + 1])
        kept = np.empty(2 * size, np.int64)
        count = 0
        best = -1
        a = 0
        b = 0
        k = 0
        while a < size or b < size:
            with_it = False
            w = longest + 1
            p = 0
            if a < size:
                w = pool[now[a], 0]
                p = pool[now[a], 1]
            if b < size:
                w_with = pool[now[b], 0] + long
                if w_with > longest:
                    b = size
                    continue
                if w_with < w or (w_with == w and pool[now[b], 1] + worth > p):
                    with_it = True
                    w = w_with
                    p = pool[now[b], 1] + worth
            if with_it:
                b += 1
            else:
                a += 1
            if p <= best:
                continue
            while caps[k] < w:
                k += 1
            # One more than the bound, since it is reckoned in floats.
            if p - w * dense + 1.0 <= reach[k] + least:
                continue
            best = p
            state = used
            if with_it:
                pool[used, 0] = w
                pool[used, 1] = p
                made[used, 0] = now[b - 1]
                made[used, 1] = at
                used += 1
                top = max(top, p - lowest[k] - 1)
                if only_best:
                    least = max(least, top)
            else:
                state = now[a - 1]
            kept[count] = state
            count += 1
        now = kept[:count]
    return now, exact, least, used


@compiled
def _greedy(lengths: Whole, worths: Whole, caps: Whole, needs: Whole) -> int:
    """By how much the best of some sets pays that take whatever still fits, from one part on."""
    top = NOTHING
    for k in range(caps.shape[0]):
        for first in range(min(64, lengths.shape[0])):
            left = caps[k]
            worth = -needs[k]
            for at in range(first, lengths.shape[0]):
                if lengths[at] <= left:
                    left -= lengths[at]
                    worth += worths[at]
            top = max(top, worth)
    return top


@compiled
def _gains(states: Whole, pool: Whole, caps: Whole, needs: Whole, least: int) -> tuple[Whole, Whole]:
    """By how much each state pays where it pays most; what no set on each stock is worth more than."""
    stocks = caps.shape[0]
    over = needs + least
    gains = np.empty(states.shape[0], np.int64)
    k = 0
    for s in range(states.shape[0]):
        w = pool[states[s], 0]
        p = pool[states[s], 1]
        while caps[k] < w:
            k += 1
        gains[s] = p - needs[k]
        for j in range(k, stocks):
            over[j] = max(over[j], p)
            gains[s] = max(gains[s], p - needs[j])
    return gains, over


@compiled
def _read(
    ranked: Whole,
    pool: Whole,
    made: NDArray[np.int32],
    order: Whole,
    times: Whole,
    caps: Whole,
    needs: Whole,
    pieces: int,
    most: int,
) -> tuple[Whole, Whole]:
    """The sets behind the first states, each with a piece that is in none before it, and their stock."""
    sets = np.zeros((most, pieces), np.int64)
    on = np.zeros(most, np.int64)
    seen = np.zeros(pieces, np.bool_)
    found = 0
    for s in range(ranked.shape[0]):
        if found == most:
            break
        fresh = False
        state = ranked[s]
        while made[state, 0] >= 0:
            i = order[made[state, 1]]
            fresh = fresh or not seen[i]
            sets[found, i] += times[made[state, 1]]
            state = made[state, 0]
        if not fresh:
            sets[found, :] = 0
            continue
        for i in range(pieces):
            seen[i] = seen[i] or sets[found, i] > 0
        on[found] = -1
        for k in range(caps.shape[0]):
            if caps[k] >= pool[ranked[s], 0] and (on[found] < 0 or needs[k] < needs[on[found]]):
                on[found] = k
        found += 1
    return sets[:found], on[:found]
