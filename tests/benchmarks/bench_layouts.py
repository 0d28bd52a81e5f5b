"""How good and how quick whole layouts are, from the cut file on: boards cut up at random, put together.

PYTHONPATH=service:tests .venv/bin/python tests/benchmarks/bench_layouts.py [--seconds 2] [--cpu] [--spare]
    [--quick]

Each job is boards that were cut up without waste, so that all of the wood can become parts. The first answer
is the one with no time to look for better. Every answer goes through the checker.
"""

import argparse
import json
import resource
import time
from collections.abc import Callable

from casewright.cutting.asked.cut_file import cut_file_of
from casewright.cutting.budget import Budget
from casewright.cutting.plans.plan import plan_cuts
from casewright.papers.cutting_data import cutting_data
from cutchecker import complaints
from cutfiles import without_waste

PARTS = (20, 50, 100, 300, 1000)
SEEDS = (1, 2, 3)
FIRST_LIMIT, MEMORY_LIMIT = 0.3, 500


def main() -> None:
    """Prints the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds", type=float, default=2.0)
    parser.add_argument("--cpu", action="store_true", help="count processor time, for a busy machine")
    parser.add_argument("--parts", type=int, nargs="*", default=PARTS)
    parser.add_argument("--spare", action="store_true", help="three boards more than were cut up")
    parser.add_argument("--quick", action="store_true", help="one size of job, to see that it runs")
    given = parser.parse_args()
    if given.quick:
        given.parts, given.seconds = PARTS[:1], 0.1
    now = time.process_time if given.cpu else time.monotonic
    plan_cuts(cut_file_of(without_waste(9, 10)), Budget(now=now, seconds=0.5))  # kernels are compiled here
    print("figure  boards  without a place  waste %  above best %  first s  seconds  MB    wrong")
    for number in given.parts:
        for seed in SEEDS:
            row(without_waste(seed, number), given.seconds, now, spare=given.spare)


def row(data: dict, seconds: float, now: Callable[[], float], *, spare: bool) -> None:
    """One line of the table."""
    if spare:
        more = [{**board, "code": f"S{number}"} for number, board in enumerate(data["boards"][:3])]
        data = {**data, "boards": [*data["boards"], *more]}
    file = cut_file_of(data)
    start = now()
    plan_cuts(file, Budget(now=now, seconds=0.0))
    first = now() - start
    start = now()
    plan = plan_cuts(file, Budget(now=now, seconds=seconds))
    took = now() - start
    wrong = complaints(data, json.loads(json.dumps(cutting_data(plan))))
    lot = plan.lots[0]
    lacking = sum(each.count for each in lot.unplaced)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    count = len(file.parts)
    met = "" if memory <= MEMORY_LIMIT and (first <= FIRST_LIMIT or count > 320) else "MISSED"
    print(
        f"{count:6}  {len(lot.boards):3}/{len(data['boards']):<3} {lacking:15}  {100 - lot.share * 100:7.1f}"
        f"  {lot.above * 100:12.1f}  {first:7.2f}  {took:7.2f}  {memory:4.0f}  {len(wrong):5} {met}"
    )


if __name__ == "__main__":
    main()
