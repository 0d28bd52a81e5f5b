"""The first page of a new installation: one code, one owner."""

import re
from concurrent.futures import ThreadPoolExecutor

import pytest
from sqlalchemy import func, select

from casewright.app import create_app, guarded
from casewright.records.people import Person, Role, Shop
from casewright.records.sessions import across_shops
from casewright.shop.entering import new_set_up_code
from casewright.shop.own_figures import held_figures
from pages.commissions import change_figures, commission
from pages.conftest import SECRET
from pages.visitor import Visitor
from people import PASSWORD, Clock, ShopInTest

FIELDS = {
    "name": "Ada Marsh",
    "email": "ada@shop.test",
    "password": PASSWORD,
    "shop": "Marrow Street Furniture",
    "currency": "USD",
    "unit": "in",
    "paper": "letter",
    "time_zone": "America/New_York",
    "tax": "6",
    "start": "empty",
}


@pytest.fixture
def house(fresh_books):
    """A fresh installation: its application, and the code that its start printed."""
    with across_shops(fresh_books, write=True) as db:
        code = new_set_up_code(db)
    return guarded(create_app(fresh_books, secret=SECRET, clock=Clock())), code


def set_up(app, code: str) -> int:
    """One try to set up, as its own visitor."""
    return (
        Visitor(app).browser.post("/set-up", data=FIELDS | {"code": code}, follow_redirects=False).status_code
    )


def count(books, what) -> int:
    with across_shops(books) as db:
        return db.execute(select(func.count()).select_from(what)).scalar_one()


def choices(html: str, name: str) -> list[str]:
    """What a list of a page offers."""
    listed = re.search(rf'<select id="{name}".*?</select>', html, re.S)
    assert listed
    return re.findall(r'<option value="(\w+)"', listed[0])


def test_the_first_visitor_is_led_to_the_set_up_page_and_becomes_owner(house, fresh_books):
    app, code = house
    visitor = Visitor(app)
    visitor.get("/")
    assert visitor.page.address == "/set-up"

    answer = visitor.browser.post("/set-up", data=FIELDS | {"code": code.upper()}, follow_redirects=False)

    assert (answer.status_code, answer.headers["location"]) == (303, "/jobs")
    assert "Ada Marsh, owner" in visitor.get("/account").text
    assert Visitor(app).get("/set-up").address == "/sign-in"
    assert set_up(app, code) == 410
    with across_shops(fresh_books, write=True) as db:
        assert new_set_up_code(db) is None


@pytest.mark.one_database
@pytest.mark.parametrize(
    "typed",
    [
        lambda code: code.replace("-", ""),
        lambda code: code.replace("-", " "),
        lambda code: f" {code.replace('-', ' – ')} ",
        lambda code: " ".join(code.replace("-", "").upper()),
    ],
    ids=["run together", "with spaces", "with dashes", "spelled out"],
)
def test_a_code_counts_by_its_letters_and_digits_alone(house, typed):
    app, code = house

    assert set_up(app, typed(code)) == 303


@pytest.mark.one_database
@pytest.mark.parametrize("typed", [lambda code: code[:-1], lambda code: "", lambda code: "----"])
def test_a_part_of_a_code_is_none(house, typed):
    app, code = house

    assert set_up(app, typed(code)) == 422


def test_a_tax_with_a_fraction_is_told_how_it_is_written(house):
    app, code = house
    visitor = Visitor(app)
    visitor.get("/set-up")

    page = visitor.send("/set-up", status=422, **FIELDS | {"code": code, "tax": "6 1/4"})

    assert "Sales tax: “6 1/4” cannot be used here. Write a number such as 6.25." in page.text


def test_a_wrong_code_is_refused_kept_apart_and_counted(house, fresh_books):
    app, code = house
    visitor = Visitor(app)
    visitor.get("/set-up")

    typed = {name: text for name, text in FIELDS.items() if name != "start"}
    page = visitor.send("/set-up", status=422, code="aaaa-bbbb-cccc-dddd", **typed)
    tries = [visitor.browser.post("/set-up", data=FIELDS | {"code": "x"}).status_code for _ in range(30)]

    assert "Code: This is not the code that the start printed" in page.text
    assert page.form("/set-up").value("shop") == "Marrow Street Furniture"
    assert tries == [422] * 29 + [429]
    assert visitor.browser.post("/set-up", data=FIELDS | {"code": code}).status_code == 429
    assert count(fresh_books, Person) == 0


def test_of_ten_who_set_up_at_once_one_becomes_owner(house, fresh_books):
    app, code = house

    with ThreadPoolExecutor(10) as pool:
        statuses = list(pool.map(lambda _: set_up(app, code), range(10)))

    assert sorted(statuses) == [303] + [410] * 9
    assert (count(fresh_books, Person), count(fresh_books, Shop)) == (1, 1)


def test_two_processes_that_start_at_once_both_start(fresh_books):
    def start(_: int) -> str | None:
        with across_shops(fresh_books, write=True) as db:
            return new_set_up_code(db)

    with ThreadPoolExecutor(4) as pool:
        codes = list(pool.map(start, range(4)))

    assert len(set(codes)) == 4


@pytest.mark.one_database
@pytest.mark.parametrize(
    "place", [{}, {"currency": "EUR", "unit": "mm", "paper": "a4", "time_zone": "Pacific/Auckland"}]
)
def test_a_shop_that_begins_with_the_demo_has_its_jobs_at_once(house, place):
    app, code = house
    visitor = Visitor(app)

    answer = visitor.browser.post("/set-up", data=FIELDS | place | {"code": code, "start": "demo"})

    page = visitor.get("/jobs")
    assert answer.url.path == "/jobs"
    assert "Cabinet for shells" in page.text
    assert "The demo's jobs and customers are made up." in page.text


def test_a_tax_typed_at_set_up_is_right_to_the_cent_on_a_quote(house, fresh_books):
    app, code = house
    visitor = Visitor(app)
    visitor.browser.post("/set-up", data=FIELDS | {"code": code, "tax": "6,85"})
    with across_shops(fresh_books) as db:
        owner = db.scalars(select(Person)).one()
        spec = held_figures(db, db.get_one(Shop, owner.shop_id))
    held = ShopInTest(app, fresh_books, Clock(), owner.shop_id, {Role.OWNER: owner})
    change_figures(held, **spec, minimum="13150.00")  # more than the chest would cost

    page = visitor.get(f"/quotes/{commission(held).draft(visitor)}")

    # 13,150.00 times 0.0685 is 900.775, and half a cent goes up
    assert "Tax, 6.85 % $900.78" in page.text
    assert "$14,050.78" in page.text


HUNDREDTHS = {"AUD", "CAD", "CHF", "DKK", "EUR", "GBP", "NOK", "NZD", "SEK", "USD", "ZAR"}
"""ISO 4217 gives each of these two decimals."""


@pytest.mark.one_database
def test_every_currency_at_set_up_has_hundredths_as_amounts_are_printed(house):
    page = Visitor(house[0]).get("/set-up")

    assert set(choices(page.html, "currency")) == HUNDREDTHS


@pytest.mark.one_database
def test_every_currency_on_the_page_of_the_shop_has_hundredths(owner):
    assert set(choices(owner.get("/shop").html, "currency")) == HUNDREDTHS


def test_a_currency_without_cents_is_refused_at_set_up(house, fresh_books):
    app, code = house
    visitor = Visitor(app)
    visitor.get("/set-up")

    page = visitor.send("/set-up", status=422, **FIELDS | {"code": code, "currency": "JPY"})

    assert "Currency: Choose one of the list." in page.text
    assert count(fresh_books, Shop) == 0
