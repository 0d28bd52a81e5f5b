"""Looks at a layout of lengths with its own eyes: nothing here is shared with what made it."""

from collections import Counter

from casewright.cutting.lengths.problem import Answer, Problem


def faults_of_lengths(problem: Problem, answer: Answer) -> list[str]:
    """All that is wrong with an answer: too long, too many bars, pieces made too often, a false sum."""
    found = []
    used: Counter[int] = Counter()
    made: Counter[int] = Counter()
    for bar in answer.bars:
        stock = problem.stocks[bar.stock]
        long = sum(problem.pieces[piece].length for piece in bar.pieces)
        if long > stock.length:
            found.append(f"{long} lie on a stock of {stock.length}")
        if not bar.pieces or bar.copies < 1:
            found.append(f"a bar with {len(bar.pieces)} pieces is cut {bar.copies} times")
        used[bar.stock] += bar.copies
        for piece in bar.pieces:
            made[piece] += bar.copies
    for k, stock in enumerate(problem.stocks):
        if stock.limit is not None and used[k] > stock.limit:
            found.append(f"stock {k} is used {used[k]} times, and there are {stock.limit}")
    for i, piece in enumerate(problem.pieces):
        if made[i] + answer.unplaced[i] != piece.count:
            found.append(f"piece {i}: {made[i]} made, {answer.unplaced[i]} not, {piece.count} wanted")
    cost = sum(problem.stocks[k].cost * count for k, count in used.items())
    if cost != answer.cost:
        found.append(f"the stock costs {cost} and not {answer.cost}")
    if answer.bound > answer.cost:
        found.append(f"the bound {answer.bound} is above the cost {answer.cost}")
    return found
