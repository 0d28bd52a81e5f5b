"""How near the cutting layouts come to the best that is known, family by family.

    PYTHONPATH=service:tests .venv/bin/python tests/benchmarks/bench_cutting.py DIR [--family NAME …]
        [--seconds 2] [--cpu] [--each] [--quick]

DIR holds sets of instances, one JSON file each, and best_known.json: a file has `dim`, `objective`, `stages`,
`first`, `rotate` and `instances` of `bins` and `items`. The sets are their authors' and are read where they
lie. Every answer is looked over by code that knows nothing of the engines before it counts. The bound is the
larger of the published one and our own. Beside it stand the plainest layouts: first fit by falling length,
and shelves.

--cpu counts the processor's time instead of the clock's, for a machine that others use, too: of rectangles
twice the seconds, since plan and bound are worked on by a thread each.
"""

import argparse
import json
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from plain_fits import first_fit, shelves

from casewright.cutting.budget import Budget, Progress
from casewright.cutting.guillotine import problem as sheets
from casewright.cutting.guillotine.solving import solve as lay_out
from casewright.cutting.lengths import problem as lengths
from casewright.cutting.lengths.solving import solve as cut
from lengthchecker import faults_of_lengths
from rectchecker import faults_of_sheets

FIRST = {"h": sheets.First.ALONG, "v": sheets.First.ACROSS, "a": sheets.First.EITHER}
OWN: dict[str, Any] = {
    "dim": 1,
    "objective": "bins",
    "family": "own",
    "instances": [
        {
            "name": "threes",
            "bins": [[1000, 1, None]],
            "items": [[470, 1], [280, 1], [250, 2], [460, 1], [290, 1]],
        }
    ],
}
"""What --quick tries: our own."""


@dataclass(frozen=True)
class Target:
    """What a family must reach.

    Attributes:
        share: of the answers that are no worse than the best known [%]
        above: so much may the worst be above the best known, in the unit of the objective
        over: mean over the bound [%]
        beside: mean over the best known [%]; below nothing where it must be better
        seconds: that it is given
    """

    seconds: float
    share: float | None = None
    above: int | None = None
    over: float | None = None
    beside: float | None = None

    def faults(self, rows: Sequence["Row"]) -> list[str]:
        """What of it was not reached."""
        found = []
        reached = 100 * sum(row.ours <= row.best for row in rows) / len(rows)
        if self.share is not None and reached < self.share:
            found.append(f"{reached:.0f} % best, wanted {self.share:g}")
        if self.above is not None and any(row.ours > row.best + self.above for row in rows):
            found.append(f"more than {self.above} above the best")
        if self.over is not None and mean(row.over for row in rows) > self.over:
            found.append(f"wanted {self.over:g} % over the bound")
        if self.beside is not None and mean(row.beside for row in rows) > self.beside:
            found.append(f"wanted {self.beside:g} % beside the best")
        if any(row.plain is not None and row.ours > row.plain for row in rows):
            found.append("worse than the plain layout")
        return found + [f"{row.name}: {fault}" for row in rows for fault in row.faults[:2]]


TARGETS = {
    "bpp_": Target(2, share=98, above=1),
    "vscsp_": Target(2, over=0.2),
    "gcutd_": Target(2, over=0.3),
    "bwmv_": Target(10, share=95, above=2),
    "atp_": Target(10, share=95, above=2),
    "lit_": Target(10, share=95, above=2),
    "shop_sheets": Target(10, over=3),
    "shop_boards": Target(10, over=3.5, beside=-0.5),
}


@dataclass(frozen=True)
class Row:
    """One instance, solved."""

    name: str
    best: int
    ours: int
    bound: int
    plain: int | None
    seconds: float
    first: float
    faults: list[str]

    @property
    def over(self) -> float:
        """How far over the bound [%]."""
        return 100 * (self.ours / self.bound - 1) if self.bound else 0.0

    @property
    def beside(self) -> float:
        """How far over the best known [%]."""
        return 100 * (self.ours / self.best - 1) if self.best else 0.0


def mean(values: Iterator[float]) -> float:
    """The mean of some numbers, of which there is one at least."""
    listed = list(values)
    return sum(listed) / len(listed)


def lengths_of(instance: dict[str, Any], by_count: bool) -> lengths.Problem:
    """An instance of lengths."""
    return lengths.Problem(
        tuple(lengths.Piece(long, count) for long, count in instance["items"]),
        tuple(lengths.Stock(long, 1 if by_count else cost, limit) for long, cost, limit in instance["bins"]),
    )


def sheets_of(instance: dict[str, Any], family: dict[str, Any], by_count: bool) -> sheets.Problem:
    """An instance of rectangles; their first side lies along the length of the stock."""
    pieces = []
    for long, wide, count, *turns in instance["items"]:
        may_turn = bool(turns[0]) if turns else family["rotate"] is True
        pieces.append(sheets.Piece(wide, long, count, may_turn))
    stocks = tuple(
        sheets.Stock(wide, long, 1 if by_count else cost, limit)
        for long, wide, cost, limit in instance["bins"]
    )
    return sheets.Problem(tuple(pieces), stocks, family["stages"], FIRST[family["first"]])


def solved(instance: dict[str, Any], family: dict[str, Any], known: dict[str, Any], budget: Budget) -> Row:
    """An instance, solved and looked over; `budget.tell` is asked when the first answer came."""
    by_count = family["objective"] == "bins"
    if family["dim"] == 1:
        bars = lengths_of(instance, by_count)
        answer: lengths.Answer | sheets.Answer = cut(bars, budget)
        faults, plain = faults_of_lengths(bars, answer), first_fit(bars)
    else:
        layout = sheets_of(instance, family, by_count)
        answer = lay_out(layout, budget)
        faults, plain = faults_of_sheets(layout, answer), shelves(layout)
    best = known.get("best") or answer.cost
    if any(answer.unplaced):
        faults = [*faults, f"{sum(answer.unplaced)} found no room"]
    if answer.bound > best:
        faults = [*faults, f"the bound {answer.bound} is above the best known {best}"]
    bound = max(known.get("bound") or 0, known.get("bound_ours") or 0, answer.bound)
    heard = getattr(budget.tell, "first", answer.seconds)
    return Row(instance["name"], best, answer.cost, bound, plain, answer.seconds, heard, faults)


class Ear:
    """Hears when the first answer came."""

    def __init__(self) -> None:
        self.first = 0.0

    def __call__(self, progress: Progress) -> None:
        """Note the first."""
        self.first = self.first or progress.seconds


def files(folder: Path | None, wanted: Sequence[str]) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
    """The families, each with what is known of its instances."""
    if folder is None:
        yield OWN, {}
        return
    best = json.loads((folder / "best_known.json").read_text())
    for path in sorted(folder.glob("*.json")):
        if path.stem in best and (not wanted or any(path.stem.startswith(name) for name in wanted)):
            yield json.loads(path.read_text()), best[path.stem]


def warm_up(now: Callable[[], float], *, quick: bool) -> None:
    """Have the kernels compiled, so that no instance pays for it."""
    cut(lengths_of(OWN["instances"][0], True), Budget(now=now, steps=3))
    if quick:
        return
    small = sheets.Problem(
        (sheets.Piece(30, 40, 9), sheets.Piece(20, 70, 5, True)), (sheets.Stock(100, 200, 9),)
    )
    lay_out(small, Budget(now=now, steps=30))


def main() -> None:
    """Prints the table."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("folder", nargs="?", type=Path, metavar="DIR")
    parser.add_argument("--family", nargs="*", default=[], help="names, or how they begin")
    parser.add_argument("--seconds", type=float, help="for each instance, in place of the target's")
    parser.add_argument("--cpu", action="store_true")
    parser.add_argument("--each", action="store_true", help="a line for each instance, too")
    parser.add_argument("--quick", action="store_true", help="one small instance of our own")
    given = parser.parse_args()
    if given.folder is None and not given.quick:
        parser.error("name the folder with the sets of instances")
    now = time.process_time if given.cpu else time.perf_counter
    warm_up(now, quick=given.quick)
    print(
        "figure                  sets  best  worst over best   over bound   plain   seconds  first   target"
    )
    for family, known in files(None if given.quick else given.folder, given.family):
        name = family["family"]
        target = next((each for start, each in TARGETS.items() if name.startswith(start)), Target(2))
        seconds = given.seconds or (0.5 if given.quick else target.seconds)
        rows = []
        for instance in family["instances"]:
            threads = 2 if given.cpu and family["dim"] == 2 else 1
            budget = Budget(now=now, seconds=seconds * threads, tell=Ear())
            row = solved(instance, family, known.get(instance["name"], {}), budget)
            rows.append(row)
            if given.each or given.quick:
                print(f"  {row.name:24} best {row.best} ours {row.ours} bound {row.bound} plain {row.plain}"
                      f" {row.seconds:.2f} s, first {row.first:.3f} s", flush=True)  # fmt: skip
        faults = target.faults(rows)
        plain = [100 * (row.plain / row.bound - 1) for row in rows if row.plain is not None and row.bound]
        print(
            f"{name:23}{len(rows):5}{sum(row.ours <= row.best for row in rows):6}"
            f"{max(row.ours - row.best for row in rows):17}{mean(row.over for row in rows):11.3f} %"
            f"{sum(plain) / max(1, len(plain)):7.1f}%{mean(row.seconds for row in rows):9.2f}"
            f"{max(row.first for row in rows):8.3f}   {'MISSED: ' + '; '.join(faults) if faults else 'met'}",
            flush=True,
        )
    sys.stdout.flush()


if __name__ == "__main__":
    main()
