"""The PostgreSQL that tests bring with them: it starts, copies databases, and leaves nothing behind."""

from collections.abc import Iterator
from pathlib import Path

import psycopg
import pytest
from sqlalchemy import make_url

from pgtemp import copied, database, find_programs, plain, server


@pytest.fixture(scope="module")
def url() -> Iterator[str]:
    """A server for the tests of this file."""
    with server() as address:
        yield address


def answer(url: str, question: str) -> object:
    """The single value that the database answers with."""
    with psycopg.connect(plain(url), autocommit=True) as connection:
        row = connection.execute(question.encode()).fetchone()
    assert row is not None
    return row[0]


def run(url: str, statement: str) -> None:
    """Has the database carry out a statement."""
    with psycopg.connect(plain(url), autocommit=True) as connection:
        connection.execute(statement.encode())


def test_a_copied_database_holds_what_its_template_held_and_goes_its_own_way(url):
    template = database(url, "shop_template")
    run(template, "CREATE TABLE board AS SELECT 13 AS sixteenths")

    copy = database(url, "shop_1", "shop_template")
    run(copy, "UPDATE board SET sixteenths = 12")

    assert answer(copy, "SELECT sixteenths FROM board") == 12
    assert answer(template, "SELECT sixteenths FROM board") == 13


def test_text_is_stored_and_sorted_as_on_every_other_machine(url):
    books = database(url, "books")

    assert answer(books, "SHOW server_encoding") == "UTF8"
    assert (
        answer(books, "SELECT string_agg(v, '' ORDER BY v) FROM (VALUES ('a'), ('é'), ('B')) AS t (v)")
        == "Baé"
    )


def test_nothing_is_left_of_a_server_that_was_stopped(monkeypatch, tmp_path):
    monkeypatch.delenv("CASEWRIGHT_TEST_DATABASE_URL", raising=False)

    with server() as url:
        home = Path(make_url(url).query["host"])
        was_there = home.is_dir()

    assert was_there
    assert not home.parent.exists()
    with pytest.raises(psycopg.OperationalError):
        psycopg.connect(plain(url))


def test_a_server_named_by_the_environment_is_used_as_it_is(monkeypatch):
    monkeypatch.setenv("CASEWRIGHT_TEST_DATABASE_URL", "postgresql+psycopg://books@db.test/first")

    with server() as url:
        assert url == "postgresql+psycopg://books@db.test/first"


def test_programs_that_the_server_s_user_cannot_reach_are_started_from_a_copy(monkeypatch, tmp_path):
    monkeypatch.delenv("CASEWRIGHT_TEST_DATABASE_URL", raising=False)
    barred = tmp_path / "barred"
    barred.mkdir(mode=0o700)
    programs = copied(find_programs(), barred)
    monkeypatch.setattr("pgtemp.find_programs", lambda: programs)

    with server() as url:
        assert answer(url, "SELECT 1") == 1


def test_a_machine_without_postgresql_is_told_what_to_install(monkeypatch, tmp_path):
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None)
    monkeypatch.setattr("pgtemp.Path", lambda *_: tmp_path)
    monkeypatch.setenv("PATH", str(tmp_path))

    with pytest.raises(RuntimeError, match=r"no PostgreSQL to test with: run ./check"):
        find_programs()
