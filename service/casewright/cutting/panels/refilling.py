"""Taking boards out of a plan and filling others in their place, compiled."""

import numpy as np

from casewright.cutting.compiled import compiled
from casewright.cutting.panels.arrays import Boards, Flags, Ints, Left, Parts, Plan, Rule
from casewright.cutting.panels.kernels import SINGLE, fill_across, fill_along, takes

MOST_TAKEN_OUT = 4
COMPLETE = 1e6
"""What a board scores that makes all that is left: more than value for its cost ever gives."""
NOISES = np.array([0.1, 0.3, 0.6])
SAMPLES = np.array([8, 16, 32])


@compiled
def still_takes(left: Left, parts: Parts, rule: Rule) -> int:
    """The least area that what is left takes of any boards."""
    need, short = left
    area = 0
    for i in range(need.size):
        area += need[i] * parts[0][i] * parts[1][i]
    for p in range(short.size):
        if short[p] > 0:
            area += takes(short[p], rule) * parts[3][p]
    return int(area)


@compiled
def fill_board(
    board: int,
    way: int,
    boards: Boards,
    parts: Parts,
    left: Left,
    order: Ints,
    rule: Rule,
    noise: float,
    out: Ints,
) -> tuple[float, int]:
    """Fills all clear rectangles of a board; gives value and rows."""
    _, spans, clear = boards
    total, at = 0.0, 0
    for r in range(spans[board, way, 0], spans[board, way, 1]):
        begun = at
        room = clear[r, 2], clear[r, 3]
        if way == 0:
            made, at = fill_across(room, parts, left, order, rule, noise, out, at)
        else:
            made, at = fill_along(room, parts, left, rule, noise, out, at)
        total += made
        for k in range(begun, at):
            out[k, 2] += clear[r, 0]
            out[k, 3] += clear[r, 1]
    return total, at


@compiled
def refill(
    left: Left,
    free: Flags,
    budget: int,
    boards: Boards,
    parts: Parts,
    rule: Rule,
    best_buy: float,
    samples: int,
    noise: float,
    new: Plan,
    picked: Ints,
) -> tuple[int, int, bool]:
    """Fills free boards until all is made, the budget is spent or nothing fits any more.

    `best_buy` is the most area that any board gives for its cost: what takes more is given up at once. Gives
    the cost, how many boards were taken (in `picked`, their layouts in `new` in that order), and whether all
    is made.
    """
    costs = boards[0]
    _, ways, counts, rows = new
    spent, taken = 0, 0
    order = np.arange(left[0].size + left[1].size)
    tried, best_rows = np.zeros_like(rows[0]), np.zeros_like(rows[0])
    while True:
        wanted = still_takes(left, parts, rule)
        if wanted == 0:
            return spent, taken, True
        may = np.flatnonzero(free & (costs <= budget - spent))
        if may.size == 0 or wanted > (budget - spent) * best_buy:
            return spent, taken, False
        best_score, best_board, best_way, best_at = 0.0, -1, 0, 0
        best_left = left
        for turn in range(samples):
            # Where there are few boards each is tried both ways.
            few = 2 * may.size <= samples - turn and turn < 2 * may.size
            which = turn // 2 if few else np.random.randint(may.size)
            board, way = may[which], turn % 2 if few else np.random.randint(2)
            np.random.shuffle(order)
            some = left[0].copy(), left[1].copy()
            value, at = fill_board(board, way, boards, parts, some, order, rule, noise, tried)
            score = value / max(costs[board], 1)
            if value > 0 and still_takes(some, parts, rule) == 0:
                score = COMPLETE * (1 + 1 / max(costs[board], 1))
            if score > best_score:
                best_score, best_board, best_way, best_at = score, board, way, at
                best_left = some
                best_rows[:at] = tried[:at]
        if best_board < 0:
            return spent, taken, False
        left[0][:] = best_left[0]
        left[1][:] = best_left[1]
        free[best_board] = False
        ways[taken], counts[taken] = best_way, best_at
        rows[taken, :best_at] = best_rows[:best_at]
        picked[taken] = best_board
        spent += costs[best_board]
        taken += 1


@compiled
def put_in(plan: Plan, new: Plan, picked: Ints, taken: int) -> None:
    """Takes newly filled boards into a plan."""
    used, ways, counts, rows = plan
    for k in range(taken):
        board = picked[k]
        used[board] = True
        ways[board], counts[board] = new[1][k], new[2][k]
        rows[board, : counts[board]] = new[3][k, : counts[board]]


@compiled
def first_plan(
    seed: int, left: Left, boards: Boards, parts: Parts, rule: Rule, samples: int, plan: Plan, new: Plan
) -> bool:
    """Writes a plan from nothing; changes `left` to what found no board; says whether that is nothing."""
    np.random.seed(seed)
    picked = np.zeros(boards[0].size, np.int64)
    free = np.ones(boards[0].size, np.bool_)
    _, taken, complete = refill(
        left, free, boards[0].sum(), boards, parts, rule, np.inf, samples, NOISES[0], new, picked
    )
    put_in(plan, new, picked, taken)
    return complete


@compiled
def wasteful(used: Ints, taken_out: Flags, plan: Plan, boards: Boards) -> int:
    """The worse filled of two boards drawn at random; -1 where both are out already."""
    worst, found = 0.0, -1
    for _ in range(2):
        board = used[np.random.randint(used.size)]
        if taken_out[board]:
            continue
        area = 0
        for k in range(plan[2][board]):
            area += plan[3][board, k, 4] * plan[3][board, k, 5]
        waste = 1 - area / max(boards[0][board], 1)
        if found < 0 or waste > worst:
            worst, found = waste, board
    return found


@compiled
def left_without(plan: Plan, out: Flags, asked: Left, allowance: int) -> Left:
    """What is to be made if these boards are taken out of the plan."""
    used, _, counts, rows = plan
    need, short = asked[0].copy(), asked[1].copy()
    for board in range(used.size):
        if used[board] and not out[board]:
            for k in range(counts[board]):
                if rows[board, k, 0] == SINGLE:
                    need[rows[board, k, 1]] -= 1
                else:
                    short[rows[board, k, 1]] -= rows[board, k, 4] - allowance
    return need, np.maximum(short, 0)


@compiled
def improve(
    seed: int,
    tries: int,
    warmth: float,
    asked: Left,
    boards: Boards,
    parts: Parts,
    rule: Rule,
    best_buy: float,
    plan: Plan,
    best: Plan,
    new: Plan,
) -> int:
    """Takes a few boards out of the plan and fills others for less, so many times; gives the least cost.

    A plan that costs a little more is taken, too, the less often the more it costs and the colder it is.
    """
    np.random.seed(seed)
    costs = boards[0]
    picked = np.zeros(costs.size, np.int64)
    cost, least = int(costs[plan[0]].sum()), int(costs[best[0]].sum())
    for _ in range(tries):
        ids = np.flatnonzero(plan[0])
        out = np.zeros(costs.size, np.bool_)
        for _ in range(1 + np.random.randint(MOST_TAKEN_OUT)):
            board = wasteful(ids, out, plan, boards)
            if board >= 0:
                out[board] = True
        removed = int(costs[out].sum())
        left = left_without(plan, out, asked, rule[0])
        more = int(-warmth * np.log(1 - np.random.random()) * costs.mean())
        noise = NOISES[np.random.randint(NOISES.size)]
        samples = SAMPLES[np.random.randint(SAMPLES.size)]
        spent, taken, complete = refill(
            left, out | ~plan[0], removed + more, boards, parts, rule, best_buy, samples, noise, new, picked
        )
        if not complete:
            continue
        plan[0][out] = False
        put_in(plan, new, picked, taken)
        cost += spent - removed
        if cost < least:
            least = cost
            best[0][:] = plan[0]
            best[1][:] = plan[1]
            best[2][:] = plan[2]
            best[3][:] = plan[3]
    return least
