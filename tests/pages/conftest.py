"""A shop for each test, on both databases, and its people as visitors."""

from dataclasses import dataclass
from typing import Any

import pytest
from sqlalchemy import Engine

from casewright.app import create_app, guarded
from casewright.records.people import Role
from pages.crawl import Walk, furnish
from pages.visitor import Visitor
from people import Clock, ShopInTest, new_shop

SECRET = b"a key for tests, and for nothing else"


@pytest.fixture(scope="session")
def clock() -> Clock:
    """The clock of the application under test."""
    return Clock()


@pytest.fixture(scope="session")
def app(books: Engine, clock: Clock) -> Any:
    """The application over one of the databases."""
    return guarded(create_app(books, secret=SECRET, clock=clock))


@pytest.fixture
def shop(app: Any, books: Engine, clock: Clock) -> ShopInTest:
    """A shop of this test's own; the clock stands at the beginning."""
    clock.now = Clock().now
    return new_shop(app, books, clock)


@dataclass
class Furnished:
    """A shop with something in every room of it."""

    shop: ShopInTest
    walk: Walk


@pytest.fixture(scope="session")
def furnished(app: Any, books: Engine, clock: Clock) -> Furnished:
    """A shop that was filled by sending every form that makes something; nobody counts on what is in it."""
    clock.now = Clock().now
    held = new_shop(app, books, clock)
    return Furnished(held, furnish(held.visitor(Role.OWNER), "Quillfeather"))


@pytest.fixture
def owner(shop: ShopInTest) -> Visitor:
    """The owner, signed in."""
    return shop.visitor(Role.OWNER)


@pytest.fixture
def maker(shop: ShopInTest) -> Visitor:
    """A maker, signed in."""
    return shop.visitor(Role.MAKER)


@pytest.fixture
def bench(shop: ShopInTest) -> Visitor:
    """Somebody at the bench, signed in."""
    return shop.visitor(Role.BENCH)


@pytest.fixture
def stranger(app: Any) -> Visitor:
    """Somebody who is not signed in."""
    return Visitor(app)
