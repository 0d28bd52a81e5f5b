"""A shop of its own for a test, with an owner, a maker and somebody at the bench, all signed in."""

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from functools import cache
from typing import Any
from unittest.mock import patch

from argon2 import PasswordHasher
from sqlalchemy import Engine

from casewright.records.base import new_id
from casewright.records.people import Person, Role
from casewright.records.sessions import across_shops
from casewright.shop import entering
from casewright.shop.entering import NewPerson, NewShop, keep_signed_in, open_shop
from pages.visitor import Visitor

hashed_once = cache(PasswordHasher(time_cost=1, memory_cost=8, parallelism=1).hash)
"""What a hash costs stands in it, and whoever signs in pays it: here the least that there is."""
START = datetime(2027, 3, 1, 15, 0, tzinfo=UTC)
PASSWORD = "grain of old walnut"  # noqa: S105 - of people who do not exist


@dataclass
class Clock:
    """The moment in a test; it moves when it is told to."""

    now: datetime = START

    def __call__(self) -> datetime:
        return self.now

    def pass_by(self, **span: float) -> None:
        """Lets time pass."""
        self.now += timedelta(**span)


@dataclass
class ShopInTest:
    """A shop with its people.

    Attributes:
        app: the application, with its guards
        engine: its database
        clock: the moment
        shop_id: the shop
        people: who works there, by role
    """

    app: Any
    engine: Engine
    clock: Clock
    shop_id: str
    people: dict[Role, Person] = field(default_factory=dict)

    def visitor(self, role: Role = Role.OWNER) -> Visitor:
        """Somebody of this shop, signed in."""
        with across_shops(self.engine, write=True) as db:
            person = db.merge(self.people[role], load=False)
            secret = keep_signed_in(db, person, self.clock.now, device="a test", address="testclient")
        visitor = Visitor(self.app)
        visitor.browser.cookies.set("casewright", secret, domain="shop.test")
        return visitor


def new_shop(app: Any, engine: Engine, clock: Clock, **facts: Any) -> ShopInTest:
    """A fresh shop with one person of each role."""
    given: dict[str, Any] = {
        "name": "Marrow Street Furniture",
        "currency": "USD",
        "symbol": "$",
        "unit": "in",
        "time_zone": "America/New_York",
        "paper": "letter",
        "tax_rate": 0.06,
    } | facts
    mark = new_id()
    # Thousands of tests begin with a shop, and one hash takes as long as many of them.
    with (
        across_shops(engine, write=True) as db,
        patch.object(entering, "hash_password", hashed_once),
    ):
        owner = open_shop(db, NewShop(**given), _new("Ada Marsh", mark), clock.now)
        held = ShopInTest(app, engine, clock, owner.shop_id, {Role.OWNER: owner})
        for name, role in (("Ben Tull", Role.MAKER), ("Cy Roper", Role.BENCH)):
            person = Person(
                shop_id=owner.shop_id,
                id=new_id(),
                name=name,
                email=f"{name.split()[0].lower()}.{mark}@shop.test",
                role=role,
                password_hash=owner.password_hash,
                created_at=clock.now,
            )
            db.add(person)
            held.people[role] = person
        db.flush()
    return held


def _new(name: str, mark: str) -> NewPerson:
    return NewPerson(
        name=name, email=f"{name.split(maxsplit=1)[0].lower()}.{mark}@shop.test", password=PASSWORD
    )
