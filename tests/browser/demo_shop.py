"""The demo shop in a service of its own, opened through the set-up form, and the addresses of its pages."""

import re
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any
from urllib.parse import urldefrag, urljoin, urlsplit

from playwright.sync_api import Browser, BrowserContext, Page

from browser.watching import DESKTOP
from casewright.records.engine import open_engine
from casewright.records.people import Role
from casewright.records.sessions import across_shops
from casewright.shop.entering import keep_signed_in
from casewright.web.frame.rooms import roles_of
from casewright.web.routes import ROUTERS
from pages.visitor import Seen
from people import PASSWORD, Clock, new_shop
from serving import Served

ROUTES: dict[str, Any] = {
    route.path: route for router in ROUTERS for route in router.routes if "GET" in route.methods
}
PAPER_OR_FILE = re.compile(r"\.(csv|pdf|json|dxf)$|^/(healthz|robots\.txt|static/.*)?$")
LOOKED_INTO = ("/jobs/{job_id}", "/customers/{customer_id}", "/quotes/{quote_id}")
"""Pages of which the crawl looks at more than one: a job in hand leads to pages that an enquiry does not."""
PAPERS = ("lumber order", "cut list", "joint cards", "caution sheet")
JOB_STATES = ("enquiry", "quoted", "in hand", "delivered", "lost")
QUOTE_STATES = ("draft", "expired", "sent", "accepted", "declined")
UNIT_STATES = {"nested": "front", "section": "section", "plan": "plan", "open": "opened"}
"""A unit with rows in its columns, by the drawing that is looked at."""
DOOR_STATES = {"doors": "front", "doors-cut": "plan", "doors-open": "opened"}
"""A unit with doors, by the drawing that is looked at."""
DRAWER_STATES = {"begun": (1, 3), "half-way": (5, 16), "done": (20, 99)}
"""How far a drawer is, by the least and the most taps that it has had."""
FIRST = ("/jobs", "/board", "/customers", "/shop", "/account", "/help", "/search?q=chest")


def pages_for(role: Role) -> list[str]:
    """The pages that somebody of a role can open, by their templates of an address."""
    return sorted(path for path, route in ROUTES.items() if role in (roles_of(route) or ()) and is_page(path))


def is_page(path: str) -> bool:
    """Whether an address or its template is that of a page, and not of a file or a paper."""
    return not PAPER_OR_FILE.search(path)


def template_of(address: str) -> str:
    """The template of an address; empty for one that has no page."""
    path = urlsplit(address).path
    return next((name for name, route in ROUTES.items() if route.path_regex.match(path)), "")


@dataclass
class DemoShop:
    """A running service with the demo in it.

    Attributes:
        site: the service
        keys: what a browser shows to be let in, by who somebody is
        addresses: an address of each page, by the template of the address and the state that it shows
        dead: links that led nowhere
    """

    site: Served
    keys: dict[str, str] = field(default_factory=dict)
    addresses: dict[tuple[str, str], str] = field(default_factory=dict)
    dead: list[str] = field(default_factory=list)

    def address(self, path: str, state: str) -> str:
        """Where a page is, in a state if it has one; the last word of a state may say what was sent there."""
        for known in (state, state.rpartition(" ")[0], ""):
            if (path, known) in self.addresses:
                return self.addresses[path, known]
        return path

    def ask(self, question: str, *given: str | int) -> list[str]:
        """The answers of the shop's books to a question that is one column wide."""
        with sqlite3.connect(self.site.folder / "casewright.db") as books:
            return [str(row[0]) for row in books.execute(question, given)]


def open_demo_shop(chromium: Browser, shop: DemoShop) -> None:
    """Sets the shop up with the demo, lets a bench hand in, issues papers, and walks through all of it."""
    with _window(chromium, shop.site) as owner:
        owner.goto("/set-up")
        _fill(
            owner, {"Code": shop.site.printed(r"type the code\s+(\S+)"), "Name of the shop": "Marrow Street"}
        )
        _fill(owner, {"Your name": "Ada Marsh", "E-mail address": "ada@example.com", "Sales tax": "6"})
        owner.get_by_label("Password").fill(PASSWORD)
        owner.get_by_label("A demo to look around").check()
        _press(owner, "Open the shop")
        shop.keys["owner"] = _key(owner.context)
        _invite(chromium, shop, owner)
        _issue(shop, owner)
        _design(shop, owner)
        _change(shop, owner)
        _buy(shop, owner)
        _lay_out(shop, owner)
        _walk(shop, owner)
        _name_states(shop, owner)
    shop.keys["newcomer"] = _empty_shop(shop.site)


@contextmanager
def _window(chromium: Browser, site: Served) -> Iterator[Page]:
    context = chromium.new_context(base_url=site.url, locale="en-US", **DESKTOP)
    yield context.new_page()
    context.close()


def _fill(page: Page, fields: dict[str, str]) -> None:
    for label, text in fields.items():
        page.get_by_label(label).fill(text)


def _press(page: Page, name: str) -> None:
    page.get_by_role("button", name=name, exact=True).first.click()
    page.wait_for_load_state()


def _key(context: BrowserContext) -> str:
    return next(each["value"] for each in context.cookies() if each["name"] == "casewright")


def _invite(chromium: Browser, shop: DemoShop, owner: Page) -> None:
    """Somebody at the bench comes in by an invitation; a second one stays open, to be looked at."""
    for stays in (False, True):
        owner.goto("/shop/people")
        owner.get_by_label("Bench").check()
        _press(owner, "Make a link")
        link = owner.locator("#link").input_value()
        if stays:
            shop.addresses["/invitation/{secret}", ""] = link
            continue
        with _window(chromium, shop.site) as guest:
            guest.goto(link)
            _fill(guest, {"Your name": "Cy Roper", "E-mail address": "cy@example.com"})
            guest.get_by_label("Password").fill(PASSWORD)
            _press(guest, "Come in")
            shop.keys["bench"] = _key(guest.context)
    [bench] = shop.ask("select id from person where email = 'cy@example.com'")
    owner.goto(f"/shop/people/{bench}")
    owner.locator("form[action$='/password'] button").click()
    shop.addresses["/password/{secret}", ""] = owner.locator("#link").input_value()


def _issue(shop: DemoShop, owner: Page) -> None:
    """A paper of each kind, a draft, and a quote whose days have passed."""
    [small, *_] = shop.ask("select id from job where state = 'ready'")
    for kind in PAPERS:
        owner.goto(f"/jobs/{small}")
        if kind == "lumber order":
            owner.goto(f"/jobs/{small}/lumber-order")
            owner.locator("form[action$='/papers'] button").click()
        else:
            owner.locator(f"button[name=kind][value='{kind}']").click()
        shop.addresses["/papers/{paper_id}", kind] = urlsplit(owner.url).path
    [designed, *_] = shop.ask(
        "select job.id from job join unit on unit.job_id = job.id where state = 'enquiry' order by number"
    )
    for state in ("expired", "draft"):
        owner.goto(f"/jobs/{designed}")
        _press(owner, "New quote")
        shop.addresses["/quotes/{quote_id}", state] = urlsplit(owner.url).path
        if state == "expired":
            for box in owner.locator("#sure").all():
                box.check()
            _press(owner, "Send the quote")
            _let_expire(shop, owner)


def _buy(shop: DemoShop, owner: Page) -> None:
    """A supplier, an order for a job in hand, and a delivery of it that is half tallied."""
    owner.goto("/stock/suppliers/new")
    owner.locator("#name").fill("Sawyer & Daughters")
    for kind in ("lumber", "hardware", "finish"):
        owner.locator(f"#kinds-{kind}").check()
    _press(owner, "Save")
    [job, *_] = shop.ask("select id from job where state = 'in hand'")
    shop.addresses["/stock/needs", "a job"] = f"/stock/needs?job={job}"
    shop.addresses["/stock/needs/chance", ""] = f"/stock/needs/chance?job={job}"
    owner.goto(f"/stock/needs?job={job}")
    _press(owner, "Issue")
    _press(owner, "Receive it now")
    delivery = urlsplit(owner.url).path
    for width in ("7", "9"):
        owner.locator(f"button[name=tapped][value='{width}']").click()
        owner.wait_for_load_state()
    owner.goto(f"{delivery}/claim")
    owner.locator("#bill-1-quantity").fill("40")
    owner.locator("#bill-1-amount").fill("400")
    _press(owner, "Save the bill")
    [board, *_] = shop.ask("select id from stock_piece order by id desc")
    shop.addresses["/stock/pieces/{piece_id}", ""] = f"/stock/pieces/{board}"
    owner.goto("/stock/deliveries")
    owner.locator("summary").first.click()
    owner.locator("#supplier").select_option(label="Sawyer & Daughters")
    _press(owner, "Begin to tally")
    sheets = "is_sheet=1&material=birch+plywood&size=1/2"
    shop.addresses["/stock/deliveries/{delivery_id}", "sheets"] = f"{urlsplit(owner.url).path}?{sheets}"
    shop.addresses["/stock/deliveries/{delivery_id}", "boards"] = delivery


def _lay_out(shop: DemoShop, owner: Page) -> None:
    """The parts of a job in hand on boards that are typed; what has no board is named."""
    [job, *_] = shop.ask("select id from job where state = 'in hand'")
    owner.goto(f"/jobs/{job}/cutting")
    owner.locator("details.choices summary").click()
    for name, value in {"length": "120", "width": "11", "count": "30"}.items():
        owner.locator(f"#more-0-{name}").fill(value)
    owner.locator("#seconds").fill("1")
    _press(owner, "Lay it out")
    layout = urlsplit(owner.url).path
    shop.addresses["/cutting/{layout_id}", ""] = layout
    shop.addresses["/cutting/{layout_id}/put-away", ""] = f"{layout}/put-away"
    owner.locator("#by-hand").wait_for(timeout=600_000)


def _design(shop: DemoShop, owner: Page) -> None:
    """A desk with rows in its columns, kept as a starting unit and revised, in each view, and compared.

    Beside it a sideboard, for its doors."""
    [job, *_] = shop.ask("select id from job where state = 'enquiry' order by number desc")
    owner.goto(f"/jobs/{job}/units/new")
    owner.locator("button[name=start][value='desk-pedestals']").click()
    unit = urlsplit(owner.url).path
    owner.goto(f"{unit}/starting-units")
    _press(owner, "Keep it")
    owner.goto(unit)
    owner.locator("#body-width").fill("62")
    owner.locator(".keep-bar button.main").click()
    owner.wait_for_load_state()
    for state, view in UNIT_STATES.items():
        shop.addresses["/units/{unit_id}", state] = f"{unit}?view={view}"
    beside = "with=revision-1&with=start-sideboard&with=start-wall-hung-bank"
    shop.addresses["/units/{unit_id}/compare", "four"] = f"{unit}/compare?{beside}"
    shop.addresses["/units/{unit_id}/stability", "a desk"] = f"{unit}/stability"
    shop.addresses["/units/{unit_id}/revisions/{number}/rework", "a desk"] = f"{unit}/revisions/2/rework"
    owner.goto(f"{unit}/revisions/2/change-order")
    _press(owner, "Make the change order")
    shop.addresses["/change-orders/{change_id}", ""] = urlsplit(owner.url).path
    owner.goto(f"/jobs/{job}/units/new")
    owner.locator("button[name=start][value='sideboard']").click()
    unit = urlsplit(owner.url).path
    shop.addresses["/units/{unit_id}/joints/case", "doors"] = f"{unit}/joints/case"
    for state, view in DOOR_STATES.items():
        shop.addresses["/units/{unit_id}", state] = f"{unit}?view={view}"


def _change(shop: DemoShop, owner: Page) -> None:
    """Two cases in hand become wider after their approval: saved, priced, signed, and made again in part."""
    [unit, *_] = shop.ask(
        "select unit.id from unit join job on job.id = job_id where state = 'in hand' and count = 2"
    )
    [job, *_] = shop.ask("select job_id from unit where id = ?", unit)
    [drawer, *_] = shop.ask("select id from drawer where unit_id = ? order by position", unit)
    owner.goto(f"/units/{unit}")
    owner.locator("#body-width").fill("21")
    owner.locator("#note").fill("The wall is wider.")
    owner.locator(".keep-bar button.main").click()
    owner.get_by_role("link", name="What the change does").click()
    shop.addresses["/units/{unit_id}/revisions/{number}/rework", "in hand"] = urlsplit(owner.url).path
    owner.get_by_role("link", name="Price this change").click()
    shop.addresses["/units/{unit_id}/revisions/{number}/change-order", "in hand"] = urlsplit(owner.url).path
    _press(owner, "Make the change order")
    shop.addresses["/change-orders/{change_id}", "agreed"] = urlsplit(owner.url).path
    owner.locator("#name").fill("Ines Cole")
    _press(owner, "Take it down")
    shop.addresses["/jobs/{job_id}", "remaking"] = f"/jobs/{job}"
    shop.addresses["/board", "remaking"] = f"/board?job={job}"
    shop.addresses["/bench/{drawer_id}", "remaking"] = f"/bench/{drawer}"


def _let_expire(shop: DemoShop, owner: Page) -> None:
    quote = urlsplit(owner.url).path.rpartition("/")[2]
    with sqlite3.connect(shop.site.folder / "casewright.db") as books:
        books.execute("update quote set valid_until = '2020-01-31' where id = ?", [quote])


def _walk(shop: DemoShop, owner: Page) -> None:
    """Follows the owner's links until every kind of page has been seen; notes an address of each."""
    waiting, seen = [*FIRST], set(FIRST)
    looked: dict[str, int] = {}
    while waiting:
        address = waiting.pop(0)
        kind, most = template_of(address), 20 if template_of(address) in LOOKED_INTO else 1
        if not is_page(urlsplit(address).path) or looked.get(kind, 0) >= most:
            continue
        looked[kind] = looked.get(kind, 0) + 1
        answer = owner.request.get(f"{shop.site.url}{address}")
        if not answer.ok:
            shop.dead.append(f"{answer.status} {address}")
            continue
        shop.addresses.setdefault((kind, ""), address)
        for link in Seen(answer.text()).links:
            there = urldefrag(urljoin(f"{shop.site.url}{address}", link)).url
            path = there.removeprefix(shop.site.url)
            if there.startswith(f"{shop.site.url}/") and path not in seen:
                seen.add(path)
                waiting.append(path)


def _name_states(shop: DemoShop, owner: Page) -> None:
    """The addresses of the states in which a page looks different, and of pages that hold much or little."""
    for state in JOB_STATES:
        [job, *_] = shop.ask("select id from job where state = ?", state)
        shop.addresses["/jobs/{job_id}", state] = f"/jobs/{job}"
    for state in QUOTE_STATES[2:]:
        [quote, *_] = shop.ask("select id from quote where state = ? and valid_until > '2021'", state)
        shop.addresses["/quotes/{quote_id}", state] = f"/quotes/{quote}"
    for state in QUOTE_STATES[1:]:
        owner.goto(shop.addresses["/quotes/{quote_id}", state])
        shop.addresses["/quote/{secret}", state] = owner.locator("#link-address").input_value()
    [busy, *_] = shop.ask("select job_id from time_entry group by job_id order by count(*) desc")
    shop.addresses["/jobs/{job_id}/hours", ""] = f"/jobs/{busy}/hours"
    for state, taps in DRAWER_STATES.items():
        [drawer, *_] = shop.ask(
            "select drawer_id from bench_event join job on job.id = job_id where state = 'in hand' "
            "and drawer_id is not null group by drawer_id having count(*) between ? and ? order by drawer_id",
            *taps,
        )
        shop.addresses["/bench/{drawer_id}", state] = f"/bench/{drawer}"


def _empty_shop(site: Served) -> str:
    """The key of the owner of a second shop in the same books, in which there is nothing yet."""
    engine = open_engine(f"sqlite:///{site.folder / 'casewright.db'}")
    shop = new_shop(None, engine, Clock(datetime.now(UTC)))
    with across_shops(engine, write=True) as db:
        person = db.merge(shop.people[Role.OWNER], load=False)
        return keep_signed_in(db, person, shop.clock.now, device="a test", address="127.0.0.1")
