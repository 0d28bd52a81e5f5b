"""How fast the core is, beside what a person at the screen can wait for.

    PYTHONPATH=service python tests/benchmarks/bench_core.py [--quick]

Each figure is the median of many runs on a warm program; the first ones read the data files and do not count.
All but that of the command line are the processor's time: what else the machine does then does not count.
Garbage is collected as seldom as in the service.
What is kept from one run to the next (casewright.measure.remembering) serves only the lines that say so.
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
from itertools import count
from pathlib import Path

from casewright.collecting import seldom_collect
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.family import row_choices
from casewright.joinery.groove import Groove
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.reading import read_unit
from casewright.pieces.asked.shop import Shop, example_shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction, construct
from casewright.pieces.costs.estimate import estimate
from casewright.pieces.drawers.layouts import DrawerEnd, unit_families

DRESSER_FILE = Path(__file__).parents[1] / "outside" / "units" / "dresser_a.json"
TODAY = date(2026, 11, 25)
BANK_ROWS, BANK_COLUMNS = 20, 5
LARGE_ROWS, LARGE_COLUMNS = 40, 12
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


def median_seconds(
    work: Callable[[], object],
    runs: int,
    warm_up: int = 3,
    clock: Callable[[], float] = time.process_time,
) -> float:
    """The median time of a piece of work, by the processor's time where no other clock is named."""
    for _ in range(warm_up):
        work()
    times = []
    for _ in range(runs):
        start = clock()
        work()
        times.append(clock() - start)
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


RUNS = count()


def anew(spec: UnitSpec, shop: Shop) -> Construction:
    """Constructs a unit like none before: every board of it has another thickness."""
    more = next(RUNS) * 1e-7
    changes = {
        "drawers": {"side": spec.drawers.side + more, "front": spec.drawers.front + more},
        "case": {
            each: getattr(spec.case, each) + more for each in ("side", "divider", "sub_top_rail", "bottom")
        },
        "frames": {"tenon": spec.frames.tenon + more},
        "back": {"thickness": spec.back.thickness + more},
    }
    update = {name: getattr(spec, name).model_copy(update=fields) for name, fields in changes.items()}
    return construct(spec.model_copy(update=update), shop)


def edited(spec: UnitSpec, shop: Shop) -> Construction:
    """Constructs a unit as while somebody types: one row has another height each time."""
    height = spec.rows[1].height or 6.0
    row = spec.rows[1].model_copy(update={"height": height + next(RUNS) * 1e-5})
    return construct(spec.model_copy(update={"rows": (spec.rows[0], row, *spec.rows[2:])}), shop)


def eight_drawers() -> UnitSpec:
    """Dresser A with a fifth row in halves: eight drawers in all."""
    data = json.loads(DRESSER_FILE.read_text(encoding="utf-8"))
    data["rows"][1] = {"columns": 2, "height": "6"}
    data["rows"][2] = {"columns": 2}
    return read_unit(json.dumps(data))


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
    return half_blind(asked, Ledger())  # without a prefix nothing is kept from before, and nothing owed


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
    to_price(text)  # reads the data files
    seldom_collect()
    dresser = median_seconds(lambda: to_price(text), runs)
    eight = eight_drawers()
    constructed = median_seconds(lambda: anew(eight, shop), runs)
    typed = median_seconds(lambda: edited(eight, shop), runs)
    of_dresser = median_seconds(lambda: anew(spec, shop), runs)
    hundred, large = read_unit(bank()), read_unit(bank(LARGE_ROWS, LARGE_COLUMNS))
    in_hundred = median_seconds(lambda: anew(hundred, shop), max(1, runs // 20), warm_up=1)
    in_large = median_seconds(lambda: anew(large, shop), max(1, runs // 50), warm_up=1)
    beside = in_hundred / (BANK_ROWS * BANK_COLUMNS)
    share = beside / (of_dresser / DRESSER_DRAWERS)
    larger = in_large / (LARGE_ROWS * LARGE_COLUMNS) / beside
    joint = median_seconds(one_joint, 10 * runs)
    column = construct(read_unit(bank(RANKED_ROWS, 1, "step")), shop)
    ranked = median_seconds(lambda: every_choice(column), runs)
    answered = median_seconds(command_line, max(1, runs // 20), warm_up=1, clock=time.perf_counter)
    return [
        Measured("dresser A from its file to its price", dresser * MILLISECONDS, 10, "ms"),
        Measured("eight drawers constructed, nothing kept from before", constructed * MILLISECONDS, 5, "ms"),
        Measured("eight drawers constructed while one row is typed", typed * MILLISECONDS, 5, "ms"),
        Measured("a drawer of a hundred beside one of the dresser's six", share, 1.5, "times"),
        Measured("a drawer of 480 beside one of a hundred", larger, 1.2, "times"),
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
