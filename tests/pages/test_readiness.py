"""Whether the process works, and whether the service can do its work, for whoever watches over it."""

import pytest
from sqlalchemy import text

from casewright.app import create_app, guarded
from casewright.records.engine import newest_revision, open_engine
from pages.visitor import Visitor

SECRET = b"a key for tests, and for nothing else"
FINE = {"status": "ok"}


@pytest.fixture
def watcher(fresh_books):
    """Somebody who asks a service with a database of its own."""
    return Visitor(guarded(create_app(fresh_books, secret=SECRET))).browser


def said(watcher):
    """What the two addresses answer."""
    answers = [watcher.get(address) for address in ("/healthz", "/readyz")]
    return [(each.status_code, each.json()) for each in answers]


def test_a_service_in_order_is_healthy_and_ready(watcher):
    assert said(watcher) == [(200, FINE), (200, {"status": "ok", "database": True, "disk": True})]


def test_a_database_of_another_form_makes_it_unready_and_no_less_healthy(watcher, fresh_books):
    for form, status in (("0099", 503), (newest_revision(), 200)):
        with fresh_books.begin() as connection:
            connection.execute(text("UPDATE alembic_version SET version_num = :form"), {"form": form})

        assert [answer[0] for answer in said(watcher)] == [200, status]


@pytest.mark.parametrize(
    "url",
    [
        "postgresql+psycopg://nobody@127.0.0.1:1/nothing",
        "sqlite:////nowhere/at/all.db",
    ],
)
def test_a_database_that_does_not_answer_makes_it_unready_and_no_less_healthy(url):
    engine = open_engine(url)
    watcher = Visitor(guarded(create_app(engine, secret=SECRET))).browser

    assert said(watcher) == [(200, FINE), (503, {"status": "ill", "database": False})]
    engine.dispose()
