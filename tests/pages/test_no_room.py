"""A disk that is full: whoever writes is told so in plain words and keeps what they typed; others read on."""

import sqlite3

import pytest
from psycopg.errors import DiskFull, LockNotAvailable
from sqlalchemy.exc import OperationalError

from casewright.records.engine import is_disk_full
from casewright.web.frame import plain
from casewright.web.jobs import customers


def what_sqlite_says() -> sqlite3.Error:
    """The refusal of a database that may not grow."""
    connection = sqlite3.connect(":memory:")
    connection.execute("PRAGMA max_page_count = 3")
    with pytest.raises(sqlite3.OperationalError) as refused:
        connection.executescript("CREATE TABLE note (text); INSERT INTO note VALUES (zeroblob(100000));")
    connection.close()
    return refused.value


FULL = {"sqlite": what_sqlite_says, "postgresql": DiskFull}


@pytest.mark.parametrize("kind", FULL)
def test_a_full_disk_is_told_from_a_busy_database(kind):
    assert is_disk_full(FULL[kind]())
    assert not is_disk_full(LockNotAvailable())
    assert not is_disk_full(None)


@pytest.mark.parametrize("kind", FULL)
def test_whoever_writes_on_a_full_disk_reads_why_and_keeps_what_they_typed(owner, monkeypatch, kind):
    def refuse(*_: object) -> None:
        raise OperationalError("INSERT", {}, FULL[kind]())

    monkeypatch.setattr(customers, "add_customer", refuse)
    owner.get("/customers/new")

    page = owner.send("/customers", status=507, name="Tom Marsh", note="Wants it in cherry, not in ash.")

    assert "no room left on the disk" in page.text
    assert "Wants it in cherry, not in ash." in page.text
    assert page.headers["retry-after"] == "60"
    owner.get("/customers")


def test_a_disk_that_is_nearly_full_is_a_warning_and_no_reason_to_go_out_of_service(
    stranger, monkeypatch, shop
):
    monkeypatch.setattr(plain, "LEAST_ROOM", 10**18)

    answer = stranger.browser.get("/readyz")

    fine = {"status": "ok", "database": True, "disk": True}
    short = {"status": "degraded", "database": True, "disk": False, "warning": plain.NO_ROOM}
    assert answer.status_code == 200
    assert answer.json() == {"sqlite": short, "postgresql": fine}[shop.engine.dialect.name]
