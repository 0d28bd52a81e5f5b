"""How hypothesis looks for cases here, and the two databases on which the service is tried."""

import os
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

if TYPE_CHECKING:
    from sqlalchemy import Engine

# The same cases on every run of the build server, and no stop-watch.
settings.register_profile("bench", deadline=None, max_examples=60)
settings.register_profile("ci", deadline=None, derandomize=True, max_examples=60)
settings.load_profile("ci" if os.environ.get("CI") else "bench")


TOGETHER = {"browser", "package", "benchmarks"}
"""Folders whose tests share what is slow to make: a browser, an installed wheel, a filled shop."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Where two processes share the work, one takes SQLite and one PostgreSQL, each making its books once.

    The files of the browser are shared out, too: each of them takes long.
    """
    for item in items:
        given = getattr(item, "callspec", None)
        database = next((given.params[name] for name in BOOKS if name in given.params), "") if given else ""
        folder = item.path.relative_to(HERE).parts[0]
        if database or folder in TOGETHER:
            alone = f"{folder}/{item.path.stem}" if folder == "browser" else folder
            item.add_marker(pytest.mark.xdist_group(database or alone))


BOOKS = ("books", "fresh_books")
HERE = Path(__file__).parent


@pytest.fixture(scope="session", params=["sqlite", "postgresql"])
def books(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> "Iterator[Engine]":
    """A migrated database, one for the whole run; a test takes a shop of its own in it."""
    from databases import migrated  # noqa: PLC0415 - the core's tests need no database

    with migrated(request.param, tmp_path_factory.mktemp("books")) as engine:
        yield engine


@pytest.fixture(params=["sqlite", "postgresql"])
def fresh_books(request: pytest.FixtureRequest, tmp_path: "os.PathLike[str]") -> "Iterator[Engine]":
    """A migrated database with nothing in it, for one test."""
    from databases import migrated  # noqa: PLC0415

    with migrated(request.param, tmp_path) as engine:  # type: ignore[arg-type]
        yield engine
