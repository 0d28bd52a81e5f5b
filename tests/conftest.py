"""How hypothesis looks for cases here, and the two databases on which the service is tried."""

import gc
import os
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import HealthCheck, settings

from casewright.collecting import seldom_collect

if TYPE_CHECKING:
    from sqlalchemy import Engine

# The same cases on every run of the build server, others elsewhere, and no stop-watch: a machine that does
# much else is no fault. `--hypothesis-profile=deep` looks for longer.
USUAL = settings(deadline=None, max_examples=20, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("bench", USUAL)
settings.register_profile("ci", USUAL, derandomize=True)
settings.register_profile("deep", USUAL, max_examples=400)
settings.load_profile("ci" if os.environ.get("CI") else "bench")


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Any:
    """Where processes share the work, one takes SQLite and one PostgreSQL, each making its books once."""
    from sharing import Hours, Sharing  # noqa: PLC0415 - one process alone shares nothing

    config.pluginmanager.register(Hours())
    return Sharing(config, log)


def pytest_configure() -> None:
    """Nothing of what is collected becomes free again, and to look for it takes long."""
    gc.disable()


def pytest_collection_finish() -> None:
    """From now on only what the tests make is looked through, as seldom as in the service."""
    gc.enable()
    seldom_collect()


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """A test of the service is run on both databases, unless it says that storage plays no part in it."""
    both = metafunc.definition.get_closest_marker("one_database") is None
    kinds = ["sqlite", "postgresql"] if both else ["sqlite"]
    for fixture, scope in (("books", "session"), ("fresh_books", "function")):
        if fixture in metafunc.fixturenames:
            metafunc.parametrize(fixture, kinds, indirect=True, scope=scope)  # type: ignore[arg-type]


@pytest.fixture(scope="session")
def books(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> "Iterator[Engine]":
    """A migrated database, one for the whole run; a test takes a shop of its own in it."""
    from databases import migrated  # noqa: PLC0415 - the core's tests need no database

    with migrated(request.param, tmp_path_factory.mktemp("books")) as engine:
        yield engine


@pytest.fixture
def fresh_books(request: pytest.FixtureRequest, tmp_path: "os.PathLike[str]") -> "Iterator[Engine]":
    """A migrated database with nothing in it, for one test."""
    from databases import migrated  # noqa: PLC0415

    with migrated(request.param, tmp_path) as engine:  # type: ignore[arg-type]
        yield engine
