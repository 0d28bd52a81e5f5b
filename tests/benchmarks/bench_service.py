"""How fast the service is on a shop of three years, beside what a person at the screen can wait for.

    PYTHONPATH=service:tests python tests/benchmarks/bench_service.py [--quick] [--database-url URL]

It starts the real server over a filled database and asks it for the main pages, one after another, as a
person does; counts their statements in this process, over this database and one of a tenth of its rows; and
lays its busiest list beside a bare page of the same stack. Without --quick it ends with status 1 where a bar
is missed; a quick run, on a small shop, judges counts and weights, and only shows times.
"""

import argparse
import statistics
import sys
import tempfile
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from asking import Asked, ask_often, requests_per_second, weight
from main_pages import BENCH, LINK, OFFICE, live_block, main_pages
from shop_of_years import fill
from sqlalchemy import Engine
from statements import Counted, statements
from years import Filled

from casewright.records.engine import migrate, open_engine
from serving import Served, serve

HERE = Path(__file__).parent
SERVICE = HERE.parents[1] / "service"
SECRET = "a key for the benchmark, and for nothing else"  # noqa: S105 - it guards nothing
KILOBYTE = 1024
SLOWEST = {OFFICE: 80, BENCH: 40, LINK: 80}
"""Where 95 of 100 answers may be, at the server [ms]."""
HEAVIEST = {OFFICE: 100, BENCH: 60, LINK: 60}
"""What a page may weigh, packed, with style sheet and scripts [KB]."""
MOST_STATEMENTS = 12
STARTED_IN = 2.0
RATIO = 0.4
"""Answers a second of the list of jobs beside those of a bare page, at the least."""


@dataclass(frozen=True)
class Size:
    """How large a run is."""

    jobs: int
    customers: int
    quotes: int
    times: int
    seconds: float

    @property
    def tenth(self) -> "Size":
        """A shop of a tenth of the rows."""
        return Size(self.jobs // 10, self.customers // 10, self.quotes // 10, self.times, self.seconds)


FULL = Size(250, 400, 600, 60, 4.0)
QUICK = Size(60, 60, 60, 2, 0.2)


@dataclass(frozen=True)
class Measured:
    """One line of the table.

    Attributes:
        what: what was measured
        found: the figure
        bar: where it may be, at the most; at the least for a ratio; None where there is no bar
        unit: of both
        is_time: whether it hangs on the machine, so that a quick run does not judge it
        at_least: whether the bar is the least
    """

    what: str
    found: float
    bar: float | None
    unit: str
    is_time: bool = True
    at_least: bool = False

    @property
    def is_met(self) -> bool:
        """Was the bar met?"""
        if self.bar is None:
            return True
        return self.found >= self.bar if self.at_least else self.found <= self.bar

    @property
    def row(self) -> tuple[str, str, str, str]:
        """The line as it is printed."""
        bar = "" if self.bar is None else f"{'≥' if self.at_least else '≤'} {self.bar:g}"
        verdict = "" if self.bar is None else ("ok" if self.is_met else "MISSED")
        return self.what, f"{self.found:,.1f} {self.unit}", bar, verdict


def counted(size: Size, folder: Path, secret: bytes) -> Iterator[Measured]:
    """Whether each page answers, how many statements it takes, and whether ten times the rows take more."""
    few = _statements_of(size.tenth, f"sqlite:///{folder / 'few.db'}", secret)
    many = _statements_of(size, f"sqlite:///{folder / 'many.db'}", secret)
    for name, found in many.items():
        if found.status != 200:
            yield Measured(f"{name}: status", found.status, 200, "", is_time=False)
        yield Measured(f"{name}: statements", found.statements, MOST_STATEMENTS, "", is_time=False)
        more = found.statements - few[name].statements
        if more:
            yield Measured(f"{name}: more of them for ten times the rows", more, 0, "", is_time=False)


def _statements_of(size: Size, url: str, secret: bytes) -> dict[str, Counted]:
    engine = open_engine(url)
    migrate(engine)
    filled = fill_shop(engine, size, secret)
    pages = [page for room in main_pages(filled).values() for page in room]
    found = statements(engine, pages, secret)
    unit = next(page for page in pages if page.name == "a unit")
    found |= statements(engine, [live_block(unit, found[unit.name].text)], secret)
    engine.dispose()
    return found


def fill_shop(engine: Engine, size: Size, secret: bytes) -> Filled:
    """Fills a migrated database with a shop of this size."""
    return fill(
        engine,
        jobs=size.jobs,
        customers=size.customers,
        quotes=size.quotes,
        now=datetime.now(UTC),
        secret=secret,
    )


@contextmanager
def running(folder: Path, url: str) -> Iterator[tuple[Served, float]]:
    """A server over a filled database, and how long it took to its first page [s]."""
    serving = (sys.executable, "-P", "-m", "casewright", "serve")
    variables = {"PYTHONPATH": f"{SERVICE}:{HERE.parent}", "CASEWRIGHT_SECRET": SECRET}
    start = time.perf_counter()
    with serve([*serving, "--data", str(folder), "--database-url", url], folder, **variables) as served:
        ask_often(served, Asked("the door", "/sign-in"), 1, warm_up=0)
        yield served, time.perf_counter() - start


def timed(served: Served, pages: dict[str, list[Asked]], size: Size) -> Iterator[Measured]:
    """Times and weights of the pages, room by room."""
    for room, each_page in pages.items():
        for page in each_page:
            answers, at_server = ask_often(served, page, size.times)
            if {answer.status for answer in answers} != {200}:
                continue  # a line above says how it answers
            here = [answer.here for answer in answers]
            yield Measured(f"{page.name}: at the server, p50", statistics.median(at_server), None, "ms")
            yield Measured(f"{page.name}: at the server, p95", p95(at_server), SLOWEST[room], "ms")
            yield Measured(f"{page.name}: as felt here, p95", p95(here), SLOWEST[room], "ms")
            if page.form is None:
                heavy = weight(served, page) / KILOBYTE
                yield Measured(f"{page.name}: weight", heavy, HEAVIEST[room], "KB", is_time=False)


def p95(times: list[float]) -> float:
    """The time within which 95 of 100 are."""
    return sorted(times)[min(len(times) - 1, int(len(times) * 0.95))]


def beside_bare(served: Served, filled: Filled, url: str, folder: Path, seconds: float) -> Iterator[Measured]:
    """The list of jobs beside a bare page of the same stack, in turns, the better turn of each."""
    jobs = Asked("jobs", "/jobs", filled.owner)
    command = [sys.executable, str(HERE / "bare_page.py"), url, filled.shop_id]
    with serve(command, folder, PYTHONPATH=str(SERVICE)) as bare_server:
        bare = Asked("bare", "/bare")
        turns = [
            (
                requests_per_second(served.port, jobs, seconds),
                requests_per_second(bare_server.port, bare, seconds),
            )
            for _ in range(3)
        ]
    ours, theirs = (max(turn[place] for turn in turns) for place in (0, 1))
    yield Measured("the list of jobs, four at once", ours, None, "a second")
    yield Measured("a bare page, four at once", theirs, None, "a second")
    yield Measured("the list of jobs beside the bare page", ours / theirs, RATIO, "times", at_least=True)


def memory(served: Served) -> float:
    """What the server holds [MB]."""
    status = Path(f"/proc/{served.process.pid}/status").read_text(encoding="ascii")
    line = next(each for each in status.splitlines() if each.startswith("VmRSS"))
    return int(line.split()[1]) / KILOBYTE


def measured(size: Size, database_url: str, folder: Path) -> Iterator[Measured]:
    """Every figure with its bar."""
    secret = SECRET.encode()
    yield from counted(size, folder, secret)
    url = database_url or f"sqlite:///{folder / 'casewright.db'}"
    engine = open_engine(url)
    migrate(engine)
    filled = fill_shop(engine, size, secret)
    engine.dispose()
    with running(folder, url) as (served, started):
        yield Measured("from start to the first page", started, STARTED_IN, "s")
        pages = main_pages(filled)
        unit = next(page for page in pages[OFFICE] if page.name == "a unit")
        answers, _ = ask_often(served, unit, 1)
        pages[OFFICE].append(live_block(unit, answers[0].text))
        yield from timed(served, pages, size)
        yield from beside_bare(served, filled, url, folder, size.seconds)
        yield Measured("memory of the server", memory(served), None, "MB")


def print_lines(lines: Iterable[Measured], *, is_quick: bool) -> int:
    """Prints each line as it is found.

    Returns:
        1 where a bar was missed, else 0; a quick run judges no times.
    """
    missed = 0
    print(f"{'figure':<58} {'measured':>18} {'bar':>8}")
    for line in lines:
        what, found, bar, verdict = line.row
        print(f"{what:<58} {found:>18} {bar:>8}  {verdict}".rstrip(), flush=True)
        missed += not line.is_met and not (is_quick and line.is_time)
    return 1 if missed else 0


def main() -> int:
    """Prints the table, line by line as it is found."""
    parser = argparse.ArgumentParser(description="Times the service against its bars.")
    parser.add_argument("--quick", action="store_true", help="a small shop and a few requests")
    parser.add_argument("--database-url", default="", help="an empty database; else SQLite in a folder")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        size = QUICK if given.quick else FULL
        return print_lines(measured(size, given.database_url, Path(folder)), is_quick=given.quick)


if __name__ == "__main__":
    sys.exit(main())
