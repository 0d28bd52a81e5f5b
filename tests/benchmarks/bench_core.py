"""How fast the core is, beside what a person at the screen can wait for.

    PYTHONPATH=service python tests/benchmarks/bench_core.py [--quick]

Each figure is the median of many runs on a warm program; the first ones read the data files and do not count.
"""

import argparse
import json
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.family import row_choices
from casewright.joinery.groove import Groove
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.reading import read_unit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import Construction, construct
from casewright.pieces.costs.estimate import estimate
from casewright.pieces.drawers.layouts import DrawerEnd, unit_families

DRESSER_FILE = Path(__file__).parents[1] / "outside" / "units" / "dresser_a.json"
TODAY = date(2026, 11, 25)
BANK_ROWS, BANK_COLUMNS = 20, 5
RANKED_ROWS = 12
DRESSER_DRAWERS = 6
MILLISECONDS = 1000


@dataclass(frozen=True)
class Measured:
    """One line of the table."""

    what: str
    found: float
    target: float
    unit: str

    @property
    def verdict(self) -> str:
        """Was the target met?"""
        return "met" if self.found <= self.target else "MISSED"


def median_seconds(work: Callable[[], object], runs: int, warm_up: int = 3) -> float:
    """The median time of a piece of work."""
    for _ in range(warm_up):
        work()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def bank(rows: int = BANK_ROWS, columns: int = BANK_COLUMNS, rule: str = "equal") -> str:
    """A unit file of so many drawers, a hundred where nothing is said."""
    return json.dumps(
        {
            "casewright": 1,
            "name": "Bank of drawers",
            "body": {"width": "80", "depth": "19-3/4", "opening_total": 6 * rows},
            "graduation": {"rule": rule},
            "rows": [{"columns": columns}] * rows,
            "woods": {"case": "cherry", "drawers": "soft maple", "inside": "poplar"},
            "drawers": {"front": "13/16"},
        }
    )


def to_price(text: str) -> object:
    """From the text of a unit file to its price."""
    return estimate(read_unit(text), example_shop(), TODAY).price


def one_joint() -> object:
    """Worked joint J1 with its checks, its working kept."""
    asked = HalfBlind(
        height=8.40625,
        front=0.8125,
        lap=0.1875,
        side=0.5,
        rabbet=0.0625,
        half_pin=0.125,
        pin=0.125,
        tails=5,
        groove=Groove(height=0.375, width=0.25, depth=0.25),
    )
    return half_blind(asked, Ledger())


def every_choice(unit: Construction) -> object:
    """Every count with every pin, front and back, for each row of a unit, and the families of all rows."""
    found = [unit_families(unit.spec, unit.drawers, end) for end in DrawerEnd]
    return [row_choices(each, number) for each in found for number in range(len(unit.spec.rows))]


def command_line() -> None:
    """A new process, from its start to the whole estimate on its output."""
    command = [sys.executable, "-m", "casewright", "estimate", str(DRESSER_FILE)]
    subprocess.run(command, check=True, capture_output=True)


def measured(runs: int) -> list[Measured]:
    """Every figure with its target."""
    text = DRESSER_FILE.read_text(encoding="utf-8")
    spec, shop = read_unit(text), example_shop()
    dresser = median_seconds(lambda: to_price(text), runs)
    constructed = median_seconds(lambda: construct(spec, shop), runs)
    hundred = bank()
    in_bank = median_seconds(lambda: to_price(hundred), max(1, runs // 10), warm_up=1)
    share = (in_bank / (BANK_ROWS * BANK_COLUMNS)) / (dresser / DRESSER_DRAWERS)
    joint = median_seconds(one_joint, 10 * runs)
    column = construct(read_unit(bank(RANKED_ROWS, 1, "step")), shop)
    ranked = median_seconds(lambda: every_choice(column), runs)
    answered = median_seconds(command_line, max(1, runs // 20), warm_up=1)
    return [
        Measured("dresser A from its file to its price", dresser * MILLISECONDS, 10, "ms"),
        Measured("dresser A constructed", constructed * MILLISECONDS, 5, "ms"),
        Measured("a drawer of a hundred beside one of the dresser's six", share, 1.5, "times"),
        Measured("one joint with its checks", joint * MILLISECONDS, 0.2, "ms"),
        Measured("every choice for a unit of twelve drawers ranked", ranked * MILLISECONDS, 30, "ms"),
        Measured("the command line, from its start to its answer", answered, 0.7, "s"),
    ]


def print_table(lines: Sequence[Measured]) -> None:
    """Prints each line beside its target."""
    width = max(len(line.what) for line in lines)
    print(f"{'figure':<{width}}  {'median':>10}  {'target':>10}")
    for line in lines:
        print(
            f"{line.what:<{width}}  {line.found:>10.3f}  {line.target:>10.3f}  {line.unit:<5}  {line.verdict}"
        )


def main() -> None:
    """Prints the table."""
    parser = argparse.ArgumentParser(description="Times the core against its targets.")
    parser.add_argument("--quick", action="store_true", help="two runs of each, to see that it works")
    runs = 2 if parser.parse_args().quick else 200
    print_table(measured(runs))


if __name__ == "__main__":
    main()
