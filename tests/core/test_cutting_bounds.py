"""On jobs so small that every layout can be tried, none is below the bound nor better than the answer."""

import random
from functools import cache
from itertools import combinations

import pytest

from cutfiles import planned

TRIED = 150


def tiny(seed):
    """A job of up to four parts and three boards, in whole inches."""
    rng = random.Random(seed)  # noqa: S311 - no secret is made of it
    parts = [(rng.randint(2, 9), rng.randint(2, 6)) for _ in range(rng.randint(1, 4))]
    boards = [(rng.randint(6, 16), rng.randint(4, 9), rng.randint(10, 99)) for _ in range(rng.randint(1, 3))]
    return parts, boards, rng.choice([0, 1])


def least(parts, boards, kerf):
    """The least cost of boards from which straight cuts get all parts; None where none do."""

    @cache
    def fits(some, length, width):
        if not some:
            return True
        if len(some) == 1:
            part = parts[next(iter(some))]
            return part[0] <= length and part[1] <= width
        # Whatever the first cut is, it leaves one part on either side, and can be moved up to a part's edge.
        return any(
            (fits(one, cut, width) and fits(some - one, length - cut - kerf, width))
            or (fits(one, length, cut) and fits(some - one, length, width - cut - kerf))
            for number in range(1, len(some))
            for one in map(frozenset, combinations(sorted(some), number))
            for cut in range(1, max(length, width) - kerf)
        )

    @cache
    def cost(some, place):
        if not some:
            return 0
        if place == len(boards):
            return None
        length, width, price = boards[place]
        costs = [cost(some, place + 1)]
        for number in range(1, len(some) + 1):
            for one in map(frozenset, combinations(sorted(some), number)):
                rest = cost(some - one, place + 1)
                if rest is not None and fits(one, length, width):
                    costs.append(rest + price)
        return min((each for each in costs if each is not None), default=None)

    return cost(frozenset(range(len(parts))), 0)


def as_file(parts, boards, kerf):
    return {
        "cut_file": 1,
        "saw": {"kerf": str(kerf), "end_trim": "0", "edge": "0"},
        "parts": [
            {"code": f"P{n}", "wood": "oak", "class": "4/4", "length": str(length), "width": str(width)}
            for n, (length, width) in enumerate(parts)
        ],
        "boards": [
            {
                "code": f"B{n}",
                "wood": "oak",
                "class": "4/4",
                "length": str(a),
                "width": str(b),
                "cost": str(c),
            }
            for n, (a, b, c) in enumerate(boards)
        ],
    }


@cache
def tried(seed):
    """The best cost of a tiny job in dollars, and its layout."""
    parts, boards, kerf = tiny(seed)
    return least(tuple(parts), tuple(boards), kerf), planned(as_file(parts, boards, kerf), 30).lots[0]


@pytest.mark.parametrize("seed", range(TRIED))
def test_no_layout_is_below_the_bound_and_none_better_than_the_answer(seed):
    best, lot = tried(seed)

    assert (best is None) == bool(lot.unplaced)
    assert best is None or lot.bound <= best * 100 <= lot.cost
    assert not lot.proven or lot.cost == best * 100


def without_place():
    """The seeds of those tiny jobs of which some part finds no place and some part does."""
    return [seed for seed in range(TRIED) if tried(seed)[0] is None and tried(seed)[1].boards]


def test_where_a_part_has_no_place_the_bound_holds_for_those_that_have_one():
    seeds = without_place()
    wrong = []
    for seed in seeds:
        parts, boards, kerf = tiny(seed)
        lot = tried(seed)[1]
        placed = {int(laid.mark.code[1:]) for board in lot.boards for laid in board.laid}
        best = least(tuple(part for n, part in enumerate(parts) if n in placed), tuple(boards), kerf)
        if not (0 < lot.bound <= best * 100 <= lot.cost) or lot.bounds_all or lot.proven:
            wrong.append(seed)

    assert len(seeds) > 10
    assert wrong == []


def test_of_so_small_jobs_nearly_all_are_answered_with_the_best():
    """Four parts always come out in three stages; an engine that misses one in twenty would be noticed."""
    missed = [
        seed for seed in range(0, TRIED, 3) if (best := tried(seed)[0]) and tried(seed)[1].cost != best * 100
    ]

    assert len(missed) <= TRIED // 3 // 20
