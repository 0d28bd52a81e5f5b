"""What no plan of panels and single parts can cost less than."""

import math

import highspy
import numpy as np

from casewright.cutting.panels.problem import PanelProblem
from casewright.measure.units import Count

SECONDS = 0.2
TOLERANCE = 1e-6


def least_cost(problem: PanelProblem) -> Count:
    """A cost that no plan of everything goes below.

    Rule: each part takes its area, each panel that of its width and of the fewest strips' allowances; a board
    gives at most its width times the greatest length that parts end to end can take of it; whole boards that
    give enough are chosen at the least cost

    Args:
        problem: parts and boards

    Returns:
        The bound, 0 where nothing is wanted [1]

    Source: arithmetic; a covering knapsack, solved or bounded by HiGHS.
    """
    strips = problem.strips
    wanted = sum(each.count * each.area for each in problem.pieces)
    for panel in problem.panels:
        fewest = -(-panel.width // strips.widest)
        wanted += panel.count * panel.length * (panel.width + fewest * strips.allowance)
    longest = max((stock.length for stock in problem.stocks), default=0)
    reach = _reachable(problem, longest)
    gives = [(stock, stock.width * reach[stock.length]) for stock in problem.stocks]
    useful = [each for each in gives if each[1] > 0]
    if not wanted or not useful:
        return 0
    model = highspy.Highs()  # type: ignore[no-untyped-call]
    model.setOptionValue("output_flag", False)
    model.setOptionValue("time_limit", SECONDS)
    for stock, _ in useful:
        model.addVar(0.0, highspy.kHighsInf if stock.limit is None else float(stock.limit))
    places = np.arange(len(useful), dtype=np.int32)
    model.changeColsCost(len(useful), places, np.array([float(stock.cost) for stock, _ in useful]))
    whole = np.full(len(useful), highspy.HighsVarType.kInteger)
    model.changeColsIntegrality(len(useful), places, whole)
    # All that there is may be too little: then it is no bound of a whole plan, but of what can be made.
    everything = sum(area * (wanted if stock.limit is None else stock.limit) for stock, area in useful)
    shares = np.array([area / wanted for _, area in useful])
    model.addRow(min(1.0, everything / wanted), highspy.kHighsInf, len(useful), places, shares)
    model.run()
    bound = model.getInfo().mip_dual_bound
    return max(0, math.ceil(bound * (1 - TOLERANCE) - TOLERANCE)) if math.isfinite(bound) else 0


def _reachable(problem: PanelProblem, longest: Count) -> list[Count]:
    """For each length, the greatest sum of lengths of parts that is not over it."""
    lengths = {each.length for each in problem.pieces} | {each.length for each in problem.panels}
    sums: list[bool] = [True] + [False] * longest
    for total in range(1, longest + 1):
        sums[total] = any(total >= each and sums[total - each] for each in lengths)
    found, last = [], 0
    for total, made in enumerate(sums):
        last = total if made else last
        found.append(last)
    return found
