"""A shop in the books of a running service, and a browser in which its people are signed in."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime

from playwright.sync_api import Browser, Page

from browser.watching import DESKTOP, Window, watched
from casewright.records.engine import open_engine
from casewright.records.people import Role
from casewright.records.sessions import across_shops
from casewright.shop.entering import keep_signed_in
from pages.unit_jobs import EXAMPLE_FIGURES, new_job, new_unit, use_figures
from people import Clock, ShopInTest, new_shop
from serving import Served


def shop_in(site: Served) -> ShopInTest:
    """A fresh shop in the books of the service, with the figures that priced worked dresser A."""
    clock = Clock(datetime.now(UTC))  # the service keeps the time of the world
    shop = new_shop(None, open_engine(f"sqlite:///{site.folder / 'casewright.db'}"), clock)
    use_figures(shop, EXAMPLE_FIGURES)
    return shop


def unit_in(shop: ShopInTest, text: str = "") -> str:
    """A unit of a new job; its address."""
    return f"/units/{new_unit(shop, new_job(shop), text)}"


@contextmanager
def at_desk(
    chromium: Browser, site: Served, shop: ShopInTest, role: Role = Role.MAKER, window: Window = DESKTOP
) -> Iterator[Page]:
    """A page in which somebody of the shop is signed in; it is watched."""
    with across_shops(shop.engine, write=True) as db:
        person = db.merge(shop.people[role], load=False)
        secret = keep_signed_in(db, person, shop.clock.now, device="a test", address="127.0.0.1")
    context = chromium.new_context(base_url=site.url, locale="en-US", **window)
    try:
        context.add_cookies([{"name": "casewright", "value": secret, "url": site.url}])
        with watched(context, site):
            yield context.new_page()
    finally:
        context.close()
