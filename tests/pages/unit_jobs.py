"""Jobs and units for the tests of their pages, put into a test's own shop without going through pages."""

import json
from typing import Any

from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.spec import UnitSpec
from casewright.records.people import Role, Shop
from casewright.records.sessions import writing
from casewright.shop.customers import CustomerFacts, add_customer
from casewright.shop.figures import figures, save_figures
from casewright.shop.jobs import JobFacts, load_job, take_on_job
from casewright.shop.units import add_unit
from pages.visitor import Shown
from people import ShopInTest
from units import dresser_text

EXAMPLE_FIGURES = {
    "ratios": [1.02, 0.95, 1.10, 1.22, 0.98, 1.15, 1.30],
    "queue_weeks": 6,
    "miles": 60,
    "tax_rate": 0.06,
}
"""Past ratios, queue and way of the shop that priced worked dresser A."""


def new_job(shop: ShopInTest, name: str = "A dresser for the Marshes") -> str:
    """A job of the shop; gives its id."""
    who, now = shop.people[Role.OWNER].name, shop.clock.now
    with writing(shop.engine, shop.shop_id) as db:
        customer = add_customer(db, CustomerFacts(name="Ada & Tom Marsh"), who, now)
        db.flush()
        return take_on_job(db, JobFacts(name=name, customer_id=customer.id), who, now).id


def use_figures(shop: ShopInTest, given: dict[str, Any]) -> None:
    """Gives the shop figures of its own."""
    with writing(shop.engine, shop.shop_id) as db:
        held = db.get(Shop, shop.shop_id)
        assert held is not None
        save_figures(db, held, given, held.figures, "Ada Marsh", shop.clock.now)


def new_unit(shop: ShopInTest, job_id: str, text: str = "") -> str:
    """A unit of a job, from a unit file, worked dresser A where none is given; gives its id."""
    spec = read_as(UnitSpec, json.loads(text or dresser_text()))
    with writing(shop.engine, shop.shop_id) as db:
        held, job = db.get(Shop, shop.shop_id), load_job(db, job_id)
        assert held is not None
        own = figures(db, held, job)
        return add_unit(db, job, spec, own, "Ada Marsh", shop.clock.now).id


def filled(page: Shown, action: str, typed: dict[str, str]) -> dict[str, str]:
    """The fields of a form as they stand on a page, with some typed anew."""
    return dict(page.form(action).sent()) | typed
