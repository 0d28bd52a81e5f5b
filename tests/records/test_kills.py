"""The service is killed while people save: whatever it confirmed is there, once, and nobody is signed out."""

import http.client
import os
import random
import secrets
import signal
import sqlite3
import subprocess
import sys
import threading
from collections import Counter
from collections.abc import Iterator
from contextlib import closing, suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from urllib.parse import urlencode

import pytest
from test_upkeep_backup import customers_in

from casewright.cli import main
from casewright.shop.entering import NewPerson, NewShop
from casewright.upkeep.place import Place
from casewright.upkeep.users import create_shop
from databases import migrated
from serving import SERVICE, Served, free_port, wait_until_healthy

ROUNDS = 20
CLIENTS = 4
PASSWORD = "grain of old walnut"  # noqa: S105 - of nobody who exists
CHANCE = random.Random(20270301)  # noqa: S311 - the same moments on every run
READY = """
import os, sys
import casewright.commands
from casewright.cli import main
for _ in sys.stdin:
    child = os.fork()
    if child == 0:
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        raise SystemExit(main())
    print(child, flush=True)
    os.waitpid(child, 0)
"""
"""The command line, loaded once: each line that comes in starts it in a process of its own."""


@dataclass
class Client:
    """Somebody who saves one customer after another, and remembers what was confirmed."""

    name: str
    cookie: str
    confirmed: list[str] = field(default_factory=list)
    open: tuple[str, str] | None = None
    """The form that was sent and not confirmed, with its mark."""
    refused: list[int] = field(default_factory=list)

    def save_until_it_ends(self, port: int, enough: threading.Event) -> None:
        """Sends forms until told to stop, or until the service is gone."""
        gone = (OSError, http.client.HTTPException)
        with suppress(*gone), closing(http.client.HTTPConnection("127.0.0.1", port, timeout=60)) as line:
            while not enough.is_set():
                self.save(line, port)

    def save(self, line: http.client.HTTPConnection, port: int) -> None:
        """Sends one form; one that was not confirmed before is sent again, with its mark."""
        number = len(self.confirmed) + len(self.refused)
        name, mark = self.open or (f"{self.name} {number}", secrets.token_urlsafe(16))
        self.open = name, mark
        status = post(line, port, "/customers", self.cookie, name=name, once=mark)[0]
        self.open = None
        if status == 303:
            self.confirmed.append(name)
        else:
            self.refused.append(status)


def post(
    line: http.client.HTTPConnection, port: int, path: str, cookie: str, **fields: str
) -> tuple[int, str]:
    """Sends a form; the status and the cookie that came back."""
    headers = {
        "Content-Type": "application/x-www-form-urlencoded",
        "Origin": f"http://127.0.0.1:{port}",
        "Cookie": cookie,
    }
    line.request("POST", path, urlencode(fields), headers)
    answer = line.getresponse()
    answer.read()
    return answer.status, (answer.getheader("set-cookie") or "").partition(";")[0]


class House:
    """A service that is started, killed, and started again on the same data."""

    def __init__(self, data: Path) -> None:
        self.data = data
        self.port = free_port()
        self.child = 0
        command = [sys.executable, "-c", READY, "serve", "--data", str(data), "--port", str(self.port)]
        variables = {name: text for name, text in os.environ.items() if not name.startswith("CASEWRIGHT_")}
        self.starter = subprocess.Popen(
            command,
            env=variables | {"PYTHONPATH": str(SERVICE)},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
        )

    def start(self) -> None:
        """Starts it, and waits until it answers."""
        assert self.starter.stdin is not None
        assert self.starter.stdout is not None
        self.starter.stdin.write("\n")
        self.starter.stdin.flush()
        self.child = int(self.starter.stdout.readline())
        wait_until_healthy(Served(self.port, self.data, self.starter))

    def kill(self) -> None:
        """Takes it away in the middle of whatever it does."""
        os.kill(self.child, signal.SIGKILL)

    def close(self) -> None:
        """Takes everything away."""
        self.kill()
        self.starter.communicate()


@pytest.fixture
def house(tmp_path: Path) -> Iterator[House]:
    """A service over the data of a new shop."""
    with migrated("sqlite", tmp_path) as engine:
        shop = NewShop(
            name="Marrow Street",
            currency="USD",
            symbol="$",
            unit="in",
            time_zone="UTC",
            paper="a4",
            tax_rate=0,
        )
        owner = NewPerson(name="Ada Marsh", email="ada@shop.test", password=PASSWORD)
        create_shop(Place(engine=engine, data=tmp_path), shop, owner, datetime.now(UTC))
    held = House(tmp_path)
    held.start()
    yield held
    held.close()


@pytest.fixture
def clients(house: House) -> list[Client]:
    """Several people, each signed in."""
    with closing(http.client.HTTPConnection("127.0.0.1", house.port, timeout=60)) as line:
        cookies = [
            post(line, house.port, "/sign-in", "", email="ada@shop.test", password=PASSWORD)[1]
            for _ in range(CLIENTS)
        ]
    return [Client(f"client {number}", cookie) for number, cookie in enumerate(cookies)]


def confirmed_by(clients: list[Client]) -> int:
    return sum(len(client.confirmed) for client in clients)


def save_at_once(clients: list[Client], port: int, enough: threading.Event) -> list[threading.Thread]:
    """Lets all of them save, each on a line of their own."""
    threads = [threading.Thread(target=client.save_until_it_ends, args=(port, enough)) for client in clients]
    for thread in threads:
        thread.start()
    return threads


def wait_for(clients: list[Client], count: int) -> None:
    """Returns when so many saves are confirmed."""
    while confirmed_by(clients) < count:
        threading.Event().wait(0.002)


def kept(data: Path) -> tuple[Counter[str], int, list[str], int]:
    """The customers' names, how many sentences tell of them, and what SQLite's own checks say."""
    with closing(sqlite3.connect(f"file:{data / 'casewright.db'}?mode=ro", uri=True)) as books:
        names = Counter(row[0] for row in books.execute("SELECT name FROM customer"))
        told = books.execute(
            "SELECT count(*) FROM history WHERE what LIKE 'Added the customer %'"
        ).fetchone()[0]
        whole = [row[0] for row in books.execute("PRAGMA integrity_check")]
        return names, told, whole, len(books.execute("PRAGMA foreign_key_check").fetchall())


def signed_in(client: Client, port: int) -> bool:
    with closing(http.client.HTTPConnection("127.0.0.1", port, timeout=60)) as line:
        line.request("GET", "/customers", headers={"Cookie": client.cookie})
        return line.getresponse().status == 200


def test_twenty_kills_lose_nothing_that_was_confirmed(house: House, clients: list[Client]):
    for _ in range(ROUNDS):
        threads = save_at_once(clients, house.port, threading.Event())
        wait_for(clients, confirmed_by(clients) + CHANCE.randrange(5, 60))
        house.kill()
        for thread in threads:
            thread.join()
        house.start()
        names, told, whole, dangling = kept(house.data)
        promised = {name for client in clients for name in client.confirmed}

        assert promised <= names.keys(), "a save that was confirmed is gone"
        assert set(names.values()) == {1}, "a save is there twice"
        assert told == len(names), "half an act"
        assert (whole, dangling) == (["ok"], 0)
        assert all(signed_in(client, house.port) for client in clients)
    assert [client.refused for client in clients] == [[]] * CLIENTS


def test_a_backup_while_people_save_refuses_nobody_and_holds_all_that_was_confirmed(
    house: House, clients: list[Client], tmp_path: Path
):
    enough = threading.Event()
    threads = save_at_once(clients, house.port, enough)
    wait_for(clients, 50)
    before = {name for client in clients for name in client.confirmed}

    status = main(["backup", str(tmp_path / "during.zip"), "--data", str(house.data)])

    wait_for(clients, confirmed_by(clients) + 20)
    enough.set()
    for thread in threads:
        thread.join()
    names, told = customers_in(tmp_path / "during.zip")
    assert status == 0
    assert before <= set(names)
    assert len(names) == len(set(names)) == told
    assert [client.refused for client in clients] == [[]] * CLIENTS
