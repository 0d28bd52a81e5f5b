"""Planning panels and single parts from boards: a plan at once, then better ones until the time is up."""

from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor

import numpy as np

from casewright.cutting.budget import Budget, Progress
from casewright.cutting.panels.answering import answer_of
from casewright.cutting.panels.arrays import Boards, Ints, Parts, Plan, Rule
from casewright.cutting.panels.bounds import least_cost
from casewright.cutting.panels.clear import clear_across, clear_along
from casewright.cutting.panels.problem import PanelAnswer, PanelProblem
from casewright.cutting.panels.refilling import first_plan, improve
from casewright.measure.units import Count, Number

TRIES = 16
"""So many times a round takes boards out of the plan and fills others; a round is a step of the budget."""
WARMTH = 0.01
"""At the start a plan may cost this share of a board more than the one before it, on average."""
THREADS = 2
FIRST_SAMPLES = 24
SEEDS = 2**31 - 1


def plan_panels(problem: PanelProblem, budget: Budget) -> PanelAnswer:
    """Chooses boards and cuts them up for panels and single parts, at the least cost that it finds.

    Rule: boards are filled by value, crosscut or ripped first; a few are taken out of the plan at a time and
    others filled in their place (destroy and refill), in two threads that take over the better plan after
    each round

    Args:
        problem: what is wanted, and from which boards
        budget: how long; a round of both threads is a step

    Returns:
        The best plan found, with a bound that no plan can go below.

    Source: destroy and refill after Shaw 1998, annealing after Kirkpatrick et al. 1983 (from memory);
        measured in tests/benchmarks.
    """
    desk = Desk(problem)
    bound = least_cost(problem)
    seeds = np.random.default_rng(budget.seed)
    plan, need, short, complete = desk.first(int(seeds.integers(SEEDS)))
    cost = desk.cost(plan)
    budget.tell(Progress(cost=cost, bound=bound, seconds=budget.spent()))
    if complete and desk.used(plan):
        cost, plan = _improved(desk, plan, cost, bound, budget, seeds)
    return answer_of(problem, plan, desk.stock_of, need, short, bound=bound, seconds=budget.spent())


def _improved(
    desk: "Desk", first: Plan, cost: Count, bound: Count, budget: Budget, seeds: np.random.Generator
) -> tuple[Count, Plan]:
    """The best plan found until the budget is used up, with its cost."""
    best = copied(first)
    walks = [copied(first) for _ in range(THREADS)]
    bests = [copied(first) for _ in range(THREADS)]
    step = 0
    with ThreadPoolExecutor(THREADS) as threads:
        while cost > bound and budget.allows(step):
            warmth = WARMTH * _left_of(budget, step)
            found = list(
                threads.map(
                    lambda t, seed, warm=warmth: desk.improve(int(seed), warm, walks[t], bests[t], t),
                    range(THREADS),
                    seeds.integers(SEEDS, size=THREADS),
                )
            )
            step += 1
            winner = min(range(THREADS), key=lambda t: found[t])
            if found[winner] < cost:
                cost, best = found[winner], copied(bests[winner])
                budget.tell(Progress(cost=cost, bound=bound, seconds=budget.spent()))
                for t in range(THREADS):
                    bests[t] = copied(best)
                    walks[t] = copied(best)
    return cost, best


def _left_of(budget: Budget, step: Count) -> Number:
    """Which share of the budget is left, by steps where it counts them, else by time."""
    if budget.steps:
        return 1 - step / budget.steps
    return budget.left() / budget.seconds if 0 < budget.seconds < np.inf else 1.0


def copied(plan: Plan) -> Plan:
    """The same plan over again, so that one of the two may be changed.

    Args:
        plan: the plan

    Returns:
        Its copy.

    Source: arithmetic.
    """
    used, ways, counts, rows = plan
    return used.copy(), ways.copy(), counts.copy(), rows.copy()


class Desk:
    """A problem as rows of numbers, with room for plans of it."""

    def __init__(self, problem: PanelProblem) -> None:
        strips = problem.strips
        self.rule: Rule = strips.allowance, strips.narrowest, strips.widest
        panels = [each for each in problem.panels for _ in range(each.count)]
        self.short = _ints([each.width for each in panels])
        self.need = _ints([each.count for each in problem.pieces])
        self.parts: Parts = (
            _ints([each.length for each in problem.pieces]),
            _ints([each.width for each in problem.pieces]),
            np.array([float(each.area) for each in problem.pieces], np.float64),
            _ints([each.length for each in panels]),
        )
        self.stock_of = _boards_of(problem)
        self.boards = _clear_boards(problem, self.stock_of)
        areas = [problem.stocks[each].area / max(problem.stocks[each].cost, 1) for each in self.stock_of]
        self.best_buy = max(areas, default=0.0)
        self.rows = _most_rows(problem)
        self.room = [self.plan() for _ in range(THREADS)]

    def plan(self) -> Plan:
        """A plan with nothing on it."""
        count = len(self.stock_of)
        return (
            np.zeros(count, np.bool_),
            np.zeros(count, np.int64),
            np.zeros(count, np.int64),
            np.zeros((count, self.rows, 6), np.int64),
        )

    def first(self, seed: Count) -> tuple[Plan, Ints, Ints, bool]:
        """A plan from nothing, what it could not place, and whether that is nothing."""
        plan, left = self.plan(), (self.need.copy(), self.short.copy())
        complete = first_plan(
            seed, left, self.boards, self.parts, self.rule, FIRST_SAMPLES, plan, self.room[0]
        )
        return plan, *left, complete

    def improve(self, seed: Count, warmth: Number, plan: Plan, best: Plan, thread: Count) -> Count:
        """One round of one thread; gives the cost of its best plan."""
        return improve(
            seed,
            TRIES,
            warmth,
            (self.need, self.short),
            self.boards,
            self.parts,
            self.rule,
            self.best_buy,
            plan,
            best,
            self.room[thread],
        )

    def cost(self, plan: Plan) -> Count:
        """What the boards of a plan cost."""
        return int(self.boards[0][plan[0]].sum())

    def used(self, plan: Plan) -> bool:
        """Is any board used?"""
        return bool(plan[0].any())


def _ints(numbers: Sequence[Count]) -> Ints:
    return np.array(numbers, np.int64)


def _boards_of(problem: PanelProblem) -> tuple[Count, ...]:
    """For each board that could be of use, which stock it is; of endless stock as many as could be needed."""
    found: list[Count] = []
    panels = sum(each.count * (each.width // problem.strips.narrowest + 2) for each in problem.panels)
    most = panels + sum(each.count for each in problem.pieces)
    wanted = _wanted_area(problem)
    for place, stock in enumerate(problem.stocks):
        enough = min(most, 2 + 2 * wanted // stock.area)
        found += [place] * (enough if stock.limit is None else min(stock.limit, most))
    return tuple(found)


def _wanted_area(problem: PanelProblem) -> Count:
    panels = sum(each.count * each.width * each.length for each in problem.panels)
    return panels + sum(each.count * each.area for each in problem.pieces)


def _most_rows(problem: PanelProblem) -> Count:
    """So many parts at most can lie on one board."""
    strip = problem.strips.narrowest + problem.strips.allowance
    least = min(
        [each.area for each in problem.pieces] + [each.length * strip for each in problem.panels], default=1
    )
    return max((each.area for each in problem.stocks), default=0) // least + 2


def _clear_boards(problem: PanelProblem, stock_of: Sequence[Count]) -> Boards:
    """Costs, and the clear rectangles of each board for either way, the largest first."""
    spans = np.zeros((len(stock_of), 2, 2), np.int64)
    clear: list[tuple[Count, Count, Count, Count]] = []
    seen: dict[Count, int] = {}
    for board, place in enumerate(stock_of):
        if place in seen:
            spans[board] = spans[seen[place]]
            continue
        seen[place] = board
        stock = problem.stocks[place]
        for way, rects in enumerate((clear_across(stock), clear_along(stock))):
            spans[board, way, 0] = len(clear)
            for each in sorted(rects, key=lambda one: -one.width * one.length):
                clear.append((each.y, each.x, each.width, each.length))
            spans[board, way, 1] = len(clear)
    costs = _ints([problem.stocks[place].cost for place in stock_of])
    return costs, spans, np.array(clear, np.int64).reshape(-1, 4)
