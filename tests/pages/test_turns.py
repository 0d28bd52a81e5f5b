"""Many at once: they take turns, nobody is turned away who can be served, and nothing stands still."""

import asyncio
import time
from collections import Counter
from dataclasses import dataclass, field
from urllib.parse import urlencode

import pytest
from sqlalchemy import func, select, text

from casewright.records.engine import migrate, open_engine
from casewright.records.jobs import Job
from casewright.records.people import Role, Shop
from casewright.records.sessions import in_passing, reading, writing
from casewright.web.frame import turns
from casewright.web.frame.turns import Crowded, Turns
from pages.commissions import commission, link_on

MANY = 90  # more than there are threads and connections together
CROWD = turns.INSIDE + turns.WAITING
FORM = b"application/x-www-form-urlencoded"


@dataclass
class Asked:
    """One request put to the application as its server puts it, beside others in the same event loop."""

    method: str
    path: str
    cookie: str
    fields: dict[str, str] = field(default_factory=dict)
    status: int = 0

    async def put_to(self, app) -> int:
        """The status of the answer."""
        body = urlencode(self.fields).encode()
        headers = [(b"host", b"shop.test"), (b"origin", b"http://shop.test"), (b"content-type", FORM)]
        headers += [(b"cookie", self.cookie.encode()), (b"content-length", str(len(body)).encode())]
        scope = {
            "type": "http",
            "asgi": {"version": "3.0"},
            "http_version": "1.1",
            "method": self.method,
            "scheme": "http",
            "path": self.path,
            "raw_path": self.path.encode(),
            "root_path": "",
            "query_string": b"",
            "headers": headers,
            "client": ("10.9.9.9", 50_000),
            "server": ("shop.test", 80),
        }

        async def receive():
            return {"type": "http.request", "body": body, "more_body": False}

        async def send(message):
            self.status = message.get("status", self.status)

        await app(scope, receive, send)
        return self.status


def all_at_once(app, asked: list[Asked]) -> Counter[int]:
    """How often each status was answered to requests that come in the same moment."""

    async def put() -> list[int]:
        return await asyncio.gather(*(each.put_to(app) for each in asked))

    return Counter(asyncio.run(put()))


def cookie_of(shop) -> str:
    return "; ".join(f"{each.name}={each.value}" for each in shop.visitor(Role.OWNER).browser.cookies.jar)


@pytest.fixture
def patient(shop, monkeypatch):
    """Everybody waits as long as it takes: how fast this machine is just now is not what is tried."""
    monkeypatch.setattr(turns, "PATIENCE", 120.0)
    monkeypatch.setattr("casewright.records.engine.PATIENCE", 120_000)
    shop.engine.dispose()  # a connection keeps the patience with which it was made
    yield
    shop.engine.dispose()


@pytest.mark.usefixtures("patient")
def test_of_many_who_take_jobs_on_at_once_everybody_is_served_and_no_number_is_twice(shop):
    cookie = cookie_of(shop)
    asked = [
        Asked("POST", "/jobs", cookie, {"name": f"Chest {number}", "new.name": "Ada", "once": f"m{number}"})
        for number in range(MANY)
    ]

    statuses = all_at_once(shop.app, asked)

    assert statuses == {303: MANY}
    with reading(shop.engine, shop.shop_id) as db:
        numbers = func.count(Job.number.distinct()), func.max(Job.number)
        assert db.execute(select(*numbers)).one() == (MANY, MANY)


@pytest.mark.usefixtures("patient")
def test_many_who_look_at_once_are_all_served(shop):
    cookie = cookie_of(shop)

    statuses = all_at_once(shop.app, [Asked("GET", "/customers", cookie) for _ in range(CROWD)])

    assert statuses == {200: CROWD}


def test_while_somebody_writes_the_others_read_on(shop, owner, stranger):
    job = commission(shop)
    link = link_on(owner.get(f"/quotes/{job.send(owner)}"))
    shop.clock.pass_by(minutes=30)  # long enough that it is to be noted who is here

    with writing(shop.engine, shop.shop_id):
        began = time.perf_counter()
        owner.get("/customers")
        stranger.get(link)
        taken = time.perf_counter() - began

    stranger.get(link)
    history = owner.get(f"/jobs/{job.job_id}/history").text
    assert taken < 5  # whoever waited for a turn to write would have waited so long
    assert "was opened for the first time" in history


def test_neither_a_note_in_passing_nor_a_migration_takes_patience_from_writers(shop):
    engine = open_engine(shop.engine.url.render_as_string(hide_password=False))  # of one connection, so far
    asked = "PRAGMA busy_timeout" if engine.dialect.name == "sqlite" else "SHOW lock_timeout"

    migrate(engine)
    in_passing(engine, shop.shop_id, lambda db: db.get(Shop, shop.shop_id))

    with engine.connect() as connection:
        assert connection.execute(text(asked)).scalar_one() in {5000, "5s"}
    engine.dispose()


async def _hold(line: Turns, let_go: asyncio.Event, *, writes: bool) -> None:
    async with line.take(writes=writes, looks=not writes):
        await let_go.wait()


async def _readers_pass(writes: bool) -> float:
    line, let_go = Turns(), asyncio.Event()
    others = [asyncio.create_task(_hold(line, let_go, writes=writes)) for _ in range(turns.INSIDE * 2)]
    await asyncio.sleep(0)
    began = time.perf_counter()
    async with line.take(writes=False):
        waited = time.perf_counter() - began
    let_go.set()
    await asyncio.gather(*others)
    return waited


@pytest.mark.parametrize("writes", [True, False], ids=["writers wait", "many have units worked out"])
def test_whoever_only_reads_passes_those_who_wait(writes):
    assert asyncio.run(_readers_pass(writes)) < 0.5


async def _come_too_late() -> None:
    line, let_go = Turns(), asyncio.Event()
    inside = [asyncio.create_task(_hold(line, let_go, writes=True)) for _ in range(turns.WRITERS)]
    await asyncio.sleep(0)
    with pytest.raises(Crowded):
        await _hold(line, let_go, writes=True)
    let_go.set()
    await asyncio.gather(*inside)
    await _hold(line, let_go, writes=True)


@pytest.mark.parametrize(("waiting", "patience"), [(0, 5.0), (150, 0.05)])
def test_who_cannot_be_served_in_time_is_told_so_and_keeps_no_place(monkeypatch, waiting, patience):
    monkeypatch.setattr(turns, "WAITING", waiting)
    monkeypatch.setattr(turns, "PATIENCE", patience)

    asyncio.run(_come_too_late())
