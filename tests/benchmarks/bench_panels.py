"""How much less wood glued-up panels take when their strips are as wide as the boards allow.

    PYTHONPATH=service:tests .venv/bin/python tests/benchmarks/bench_panels.py [--jobs 40] [--seconds 2]

Random jobs of 5 to 30 panels from random boards. Beside the plan stands the same job with each panel ripped
into the fewest equal strips, laid out by the engine for single parts in the same time; plans are checked by
code that knows nothing of the planner. --cpu counts processor time, for a machine that others use, too.
"""

import argparse
import statistics
import time

from casewright.cutting.budget import Budget
from casewright.cutting.guillotine.problem import Problem
from casewright.cutting.guillotine.solving import solve
from casewright.cutting.panels.solving import plan_panels
from panelwork import equal_strips, random_job, wrong_with

TARGET = 5.0
THREADS = 2


def budget(seconds: float, cpu: bool) -> Budget:
    """So many seconds, of the processor's time for both threads if that is asked for."""
    if cpu:
        return Budget(now=time.process_time, seconds=seconds * THREADS)
    return Budget(now=time.perf_counter, seconds=seconds)


def main() -> None:
    """Prints the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--jobs", type=int, default=40)
    parser.add_argument("--seconds", type=float, default=2.0)
    parser.add_argument("--cpu", action="store_true")
    parser.add_argument("--quick", action="store_true", help="two jobs, to see that it runs")
    given = parser.parse_args()
    if given.quick:
        given.jobs, given.seconds = 2, 0.1
    plan_panels(random_job(0, panels=2, pieces=1), Budget(now=time.perf_counter, steps=1))
    print(
        "figure{:>8}{:>8}{:>12}{:>12}{:>9}{:>14}".format(
            "panels", "boards", "equal", "together", "less %", "over bound %"
        )
    )
    gains, gaps = [], []
    for seed in range(given.jobs):
        problem = random_job(seed)
        fixed = equal_strips(problem)
        equal = solve(Problem(pieces=fixed.pieces, stocks=fixed.stocks), budget(given.seconds, given.cpu))
        answer = plan_panels(problem, budget(given.seconds, given.cpu))
        wrong = wrong_with(problem, answer)
        if wrong or any(answer.unplaced_panels) or any(equal.unplaced):
            raise SystemExit(f"job {seed}: {wrong or 'not everything was placed'}")
        gains.append(100 * (1 - answer.cost / equal.cost))
        gaps.append(100 * (answer.cost / answer.bound - 1))
        print(
            f"{seed:>6}{len(problem.panels):>8}{len(problem.stocks):>8}{equal.cost:>12}{answer.cost:>12}"
            f"{gains[-1]:>9.2f}{gaps[-1]:>14.2f}"
        )
    mean = statistics.mean(gains)
    print(
        f"mean {mean:.2f} % less board area (target {TARGET:.2f}: {'met' if mean >= TARGET else 'MISSED'}), "
        f"at most {statistics.mean(gaps):.2f} % above the best possible"
    )


if __name__ == "__main__":
    main()
