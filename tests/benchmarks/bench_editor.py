"""How fast the editor of a unit answers while somebody types, and how fast four variants are compared.

    PYTHONPATH=service:tests python tests/benchmarks/bench_editor.py [--quick]

The service runs in this process, over a database of its own. Each figure is the median of the processor's
time for one request, from the form that is sent to the answer: what else the machine does then does not
count. Garbage is collected as seldom as in the service. Every request is about a unit of eight drawers that
was never worked out before.
"""

import argparse
import json
import statistics
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from typing import Any

from bench_core import MILLISECONDS, Measured, eight_drawers, print_table
from starlette.testclient import TestClient

from casewright.app import create_app, guarded
from casewright.collecting import seldom_collect
from casewright.measure.lengths import parse_length
from casewright.records.base import new_id
from casewright.records.engine import migrate, open_engine
from casewright.records.jobs import Unit, UnitRevision
from casewright.records.people import Role
from casewright.records.sessions import writing
from casewright.shop.units import spec_text
from pages.unit_jobs import EXAMPLE_FIGURES, new_job, new_unit, use_figures
from pages.visitor import Seen
from people import Clock, ShopInTest, new_shop

SECRET = b"a key for the benchmark, and for nothing else"
EDIT, COMPARE = 100.0, 150.0
"""What one request may take [ms]."""
BESIDE = 3
"""So many variants stand beside the unit as it is."""
LIVE = {"hx-request": "true", "x-block": "result"}
VIEWS = ("front", "section", "plan", "opened")
BOARDS = ("drawers.side", "drawers.front", "case.side", "case.divider", "back.thickness")
RUNS = count(1)
WARM_UP = 3


@dataclass(frozen=True)
class Bench:
    """Somebody of the office at the editor of a unit.

    Attributes:
        shop: the shop
        browser: who asks
        unit: the id of the unit
        held: what was chosen, as it is kept
        form: the fields of the editor, as they stand when it is opened
    """

    shop: ShopInTest
    browser: TestClient
    unit: str
    held: dict[str, Any]
    form: dict[str, str]

    def edit(self, *names: str, view: str = "front") -> None:
        """Types sizes that these fields never had, and waits for what comes out."""
        held = {name: float(parse_length(self.form[name] or "3/4")) for name in names}
        more = next(RUNS) * 1e-4
        typed = {name: f"{size + more:.4f}" for name, size in held.items()}
        sent = self.form | typed | {"view": view}
        answer = self.browser.post(f"/units/{self.unit}/working", data=sent, headers=LIVE)
        answer.raise_for_status()

    def look(self, address: str) -> None:
        """Gets a page."""
        self.browser.get(address).raise_for_status()

    def another(self) -> str:
        """A unit with four revisions that were never worked out, beneath the verbs that would try them.

        Returns:
            The address at which it is compared with its other revisions.
        """
        job, unit, at = new_job(self.shop), new_id(), self.shop.clock.now
        with writing(self.shop.engine, self.shop.shop_id) as db:
            db.add(Unit(id=unit, job_id=job, code="A", name="Chest", count=1, revision=1, created_at=at))
            db.flush()
            for number in range(1, BESIDE + 2):
                more = next(RUNS) * 1e-4
                held = {**self.held, "body": {**self.held["body"], "width": f"{40 + more:.4f}"}}
                held["drawers"] = {**held["drawers"], "side": f"{0.5 + more:.4f}"}
                db.add(UnitRevision(unit_id=unit, number=number, spec=held, at=at, who="Ada Marsh"))
        beside = "&".join(f"with=revision-{number}" for number in range(2, BESIDE + 2))
        return f"/units/{unit}/compare?{beside}"


def opened(folder: Path) -> Bench:
    """The editor of a unit of eight drawers, opened in a new shop."""
    engine = open_engine(f"sqlite:///{folder / 'casewright.db'}")
    migrate(engine)
    shop = new_shop(guarded(create_app(engine, secret=SECRET, clock=Clock())), engine, Clock())
    use_figures(shop, EXAMPLE_FIGURES)
    text = spec_text(eight_drawers())
    unit = new_unit(shop, new_job(shop), text)
    held = json.loads(text) | {"code": "A"}
    browser = shop.visitor(Role.MAKER).browser
    page = Seen(browser.get(f"/units/{unit}").text)
    form = next(each for each in page.forms if each.action == f"/units/{unit}")
    return Bench(shop, browser, unit, held, dict(form.sent()))


def processor_time(
    work: Callable[[Any], object], runs: int, given: Callable[[], Any] = lambda: None
) -> float:
    """The median of the processor's time for a piece of work [ms].

    Args:
        work: what is measured
        runs: how often
        given: makes what each run works on, and does not count
    """
    times = []
    for run in range(runs + WARM_UP):
        on = given()
        start = time.process_time()
        work(on)
        if run >= WARM_UP:
            times.append(time.process_time() - start)
    return statistics.median(times) * MILLISECONDS


def measured(bench: Bench, runs: int) -> Iterator[Measured]:
    """Every figure with its target."""
    bench.edit("rows.2.height", view=VIEWS[0])  # reads the data files
    seldom_collect()
    for view in VIEWS:
        took = processor_time(lambda _, view=view: bench.edit("rows.2.height", view=view), runs)
        yield Measured(f"an edit of one row, {view} view", took, EDIT, "ms")
    took = processor_time(lambda _: bench.edit(*BOARDS), runs)
    yield Measured("an edit of every board, front view", took, EDIT, "ms")
    took = processor_time(bench.look, runs, bench.another)
    yield Measured("four variants compared", took, COMPARE, "ms")


def main() -> None:
    """Prints the table."""
    parser = argparse.ArgumentParser(description="Times the editor of a unit against its targets.")
    parser.add_argument("--quick", action="store_true", help="two runs of each, to see that it works")
    runs = 2 if parser.parse_args().quick else 20
    with tempfile.TemporaryDirectory() as folder:
        bench = opened(Path(folder))
        print_table(list(measured(bench, runs)))
        bench.shop.engine.dispose()


if __name__ == "__main__":
    main()
