"""Jobs with units and quotes for the tests of quotes and papers: taken on by the shop's own verbs."""

import re
from dataclasses import dataclass
from datetime import date
from typing import Any

from casewright.records.papers import Quote
from casewright.records.people import Role, Shop
from casewright.records.sessions import reading, writing
from casewright.shop.customers import CustomerFacts, add_customer
from casewright.shop.figures import figures, save_figures
from casewright.shop.jobs import JobFacts, load_job, take_on_job
from casewright.shop.units import (
    add_unit,
    load_unit,
    revise_unit,
    spec_from,
    spec_text,
    take_out_unit,
    units_of,
)
from pages.visitor import Visitor
from people import ShopInTest
from units import chest, unit


@dataclass(frozen=True)
class Commission:
    """A job in a test's shop."""

    shop: ShopInTest
    job_id: str

    def add(self, **changes: Any) -> str:
        """Adds a small chest of three drawers with some fields changed; gives the unit's id."""
        with writing(self.shop.engine, self.shop.shop_id) as db:
            job = load_job(db, self.job_id)
            own = figures(db, db.get_one(Shop, self.shop.shop_id), job)
            return add_unit(db, job, unit(chest(changes)), own, "Ben Tull", self.shop.clock.now).id

    def revise(self, unit_id: str, **changes: Any) -> None:
        """Saves a new revision of a unit: a small chest with other fields changed."""
        with writing(self.shop.engine, self.shop.shop_id) as db:
            loaded = load_unit(db, unit_id)
            own = figures(db, db.get_one(Shop, self.shop.shop_id), loaded.job)
            spec = spec_from(spec_text(unit(chest(changes))))
            revise_unit(db, loaded, spec, own, loaded.unit.version, "Ben Tull", self.shop.clock.now)

    def unit_ids(self) -> list[str]:
        """The ids of its units, in the order of their codes."""
        with reading(self.shop.engine, self.shop.shop_id) as db:
            return [each.unit.id for each in units_of(db, load_job(db, self.job_id))]

    def take_out(self, unit_id: str) -> None:
        """Takes a unit out of the job."""
        with writing(self.shop.engine, self.shop.shop_id) as db:
            take_out_unit(db, load_unit(db, unit_id), "Ben Tull", self.shop.clock.now)

    def draft(self, who: Visitor) -> str:
        """Draws a quote up; gives its id."""
        return id_in(who.post(f"/jobs/{self.job_id}/quotes").address)

    def send(self, who: Visitor) -> str:
        """Draws a quote up and sends it; gives its id."""
        quote_id = self.draft(who)
        who.post(f"/quotes/{quote_id}/sending", sure="1")
        return quote_id


def commission(shop: ShopInTest, **changes: Any) -> Commission:
    """A job for a customer with one small chest."""
    who, now = shop.people[Role.OWNER].name, shop.clock.now
    facts = CustomerFacts(
        name="Tom <Marsh>", email="tom@marsh.test", phone="802 555 0100", address="7 Orchard Street\nAshbury"
    )
    with writing(shop.engine, shop.shop_id) as db:
        customer = add_customer(db, facts, who, now)
        db.flush()
        job_id = take_on_job(db, JobFacts(name="Chest for the hall", customer_id=customer.id), who, now).id
    held = Commission(shop, job_id)
    held.add(**changes)
    return held


def change_figures(shop: ShopInTest, **given: Any) -> None:
    """Gives the shop figures of its own."""
    with writing(shop.engine, shop.shop_id) as db:
        held = db.get_one(Shop, shop.shop_id)
        save_figures(db, held, given, held.figures, "Ada Marsh", shop.clock.now)


def kept(shop: ShopInTest, quote_id: str) -> Quote:
    """A quote as it stands in the books."""
    with reading(shop.engine, shop.shop_id) as db:
        return db.get_one(Quote, (shop.shop_id, quote_id))


def id_in(address: str) -> str:
    """The id at the end of an address, its query left out."""
    return address.partition("?")[0].rpartition("/")[2]


def link_on(page: Any) -> str:
    """The path of the customer's link on a quote's page."""
    found = re.search(r'value="http://shop\.test(/quote/[^"]+)"', page.html)
    assert found, "no link on the page"
    return found[1]


def days_after(day: date | None, count: int) -> date:
    """A day so many days later."""
    assert day is not None
    return date.fromordinal(day.toordinal() + count)
