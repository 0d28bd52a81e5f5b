"""How the service stands a busy hour in a shop of three years.

    PYTHONPATH=service:tests python tests/benchmarks/bench_load.py [--quick] [--database-url URL]

Requests leave at a fixed beat whether the ones before have been answered or not, as those of many people do,
and each is timed from the moment at which it was due, so that a service that stands still for a second is not
let off. One in ten saves something: a customer, or a drawer's stage and its taking back. Then a quote's link
is opened by two hundred customers within ten seconds, while somebody guesses links. Without --quick it ends
with status 1 where a bar is missed; a quick run judges the answers, and only shows times.
"""

import argparse
import http.client
import secrets
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from queue import SimpleQueue

from asking import MILLISECONDS, Answer, Asked, ask
from bench_service import FULL, QUICK, SECRET, Measured, Size, fill_shop, p95, print_lines, running
from main_pages import BENCH, OFFICE, main_pages
from years import Filled

from casewright.labour.stages import drawer_stages
from casewright.records.engine import migrate, open_engine
from casewright.records.jobs import JobState

AT_ONCE = 64
"""Requests that are under way at a time, at the most."""
BEAT = 40.0
"""Requests a second."""
SAVES_EVERY = 10
SLOWEST_95, SLOWEST_99 = 150.0, 400.0
"""Where 95 and 99 of 100 answers may be [ms]."""
CUSTOMERS, WITHIN, LINK_95 = 200, 10.0, 300.0
"""Customers who open one quote's link, within this many seconds, and where 95 of 100 answers may be [ms]."""
GUESSES_A_SECOND = 500 / 60


@dataclass
class Load:
    """What was asked and what came.

    Attributes:
        times: of the answers, each from the moment at which its request was due [ms]
        answers: how often each status came; 0 stands for no answer
    """

    times: list[float] = field(default_factory=list)
    answers: dict[int, int] = field(default_factory=dict)

    def note(self, answer: Answer | None, took: float) -> None:
        """Keeps one answer."""
        status = answer.status if answer else 0
        self.answers[status] = self.answers.get(status, 0) + 1
        self.times.append(took)

    def count(self, *statuses: int) -> int:
        """How many answers had one of these statuses."""
        return sum(self.answers.get(each, 0) for each in statuses)


def at_a_beat(port: int, beat: float, seconds: float, ask_for: Callable[[int], Asked]) -> Load:
    """Sends requests at a fixed beat, whether those before are answered or not.

    Args:
        port: where the service answers
        beat: requests a second
        seconds: for how long
        ask_for: the request of each number
    """
    due: SimpleQueue[tuple[float, Asked] | None] = SimpleQueue()
    load, lock = Load(), threading.Lock()
    askers = [threading.Thread(target=_answer_calls, args=(port, due, load, lock)) for _ in range(AT_ONCE)]
    for each in askers:
        each.start()
    start = time.perf_counter()
    for number in range(round(beat * seconds)):
        moment = start + number / beat
        time.sleep(max(0.0, moment - time.perf_counter()))
        due.put((moment, ask_for(number)))
    for _ in askers:
        due.put(None)
    for each in askers:
        each.join()
    return load


def _answer_calls(
    port: int, due: "SimpleQueue[tuple[float, Asked] | None]", load: Load, lock: threading.Lock
) -> None:
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=30)
    while (call := due.get()) is not None:
        moment, asked = call
        try:
            answer = ask(connection, asked)
        except (OSError, http.client.HTTPException):
            connection.close()
            answer = None
        with lock:
            load.note(answer, (time.perf_counter() - moment) * MILLISECONDS)
    connection.close()


def busy_hour(filled: Filled) -> Callable[[int], Asked]:
    """The requests of a busy hour: the main pages in turn, and one in ten that saves something."""
    rooms = main_pages(filled)
    pages = [*rooms[OFFICE], *rooms[BENCH]]
    first = drawer_stages()[0].code
    in_hand = {row["id"] for row in filled.rows["job"] if row["state"] is JobState.IN_HAND}
    units = {row["id"] for row in filled.rows["unit"] if row["job_id"] in in_hand}
    drawers = [row["id"] for row in filled.rows["drawer"] if row["unit_id"] in units and not row["stage"]]

    def request(number: int) -> Asked:
        if number % SAVES_EVERY:
            return pages[number % len(pages)]
        turn = number // SAVES_EVERY
        once = ("once", secrets.token_urlsafe(16))
        if turn % 2:
            return Asked("a customer", "/customers", filled.owner, (("name", f"Customer {number}"), once))
        act = "stage/undo" if turn % 4 else "stage"
        path = f"/drawers/{drawers[turn // 4 % len(drawers)]}/{act}"
        return Asked("a tap", path, filled.bench, (("stage", first), once))

    return request


def measured(size: Size, database_url: str, folder: Path) -> Iterator[Measured]:
    """Every figure with its bar."""
    quick = size is QUICK
    url = database_url or f"sqlite:///{folder / 'casewright.db'}"
    engine = open_engine(url)
    migrate(engine)
    filled = fill_shop(engine, size, SECRET.encode())
    engine.dispose()
    with running(folder, url) as (served, _):
        load = at_a_beat(served.port, BEAT, 2 if quick else 60, busy_hour(filled))
        answered = load.count(200, 303)
        yield Measured("busy hour: requests", len(load.times), None, "", is_time=False)
        yield Measured("busy hour: saved", load.count(303), None, "", is_time=False)
        yield Measured("busy hour: errors", len(load.times) - answered, 0, "", is_time=False)
        yield Measured("busy hour: p95", p95(load.times), SLOWEST_95, "ms")
        yield Measured("busy hour: p99", share(load.times, 0.99), SLOWEST_99, "ms")
        yield from one_link(served.port, filled, quick=quick)


def one_link(port: int, filled: Filled, *, quick: bool) -> Iterator[Measured]:
    """A quote's link, opened by many at a time while somebody guesses links."""
    seconds = 1.0 if quick else WITHIN
    guessed: list[Load] = []
    door = filled.link.rpartition("/")[0]

    def guess(_: int) -> Asked:
        return Asked("a guess", f"{door}/{secrets.token_urlsafe(32)}")

    guesser = threading.Thread(
        target=lambda: guessed.append(at_a_beat(port, GUESSES_A_SECOND, seconds, guess))
    )
    guesser.start()
    load = at_a_beat(port, CUSTOMERS / WITHIN, seconds, lambda _: Asked("a quote's link", filled.link))
    guesser.join()
    yield Measured("a quote's link, 200 in 10 s: errors", len(load.times) - load.count(200), 0, "")
    yield Measured("a quote's link, 200 in 10 s: p95", p95(load.times), LINK_95, "ms")
    yield Measured("wrong links answered", len(guessed[0].times), None, "", is_time=False)
    yield Measured("wrong links made to wait", guessed[0].count(429), None, "", is_time=False)


def share(times: list[float], part: float) -> float:
    """The time within which this share of them are."""
    return sorted(times)[min(len(times) - 1, int(len(times) * part))]


def main() -> int:
    """Prints the table, line by line as it is found."""
    parser = argparse.ArgumentParser(description="Puts the service under load, against its bars.")
    parser.add_argument("--quick", action="store_true", help="a small shop and a few requests")
    parser.add_argument("--database-url", default="", help="an empty database; else SQLite in a folder")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        size = QUICK if given.quick else FULL
        return print_lines(measured(size, given.database_url, Path(folder)), is_quick=given.quick)


if __name__ == "__main__":
    sys.exit(main())
