"""What suppliers quote: noted by the owner, taken by orders, set beside what another would ask."""

import pytest
from sqlalchemy import select

from casewright.records.jobs import History
from casewright.records.people import Role
from casewright.records.sessions import reading
from pages.stock_room import accepted, issue, supplier
from pages.test_stock_orders import lumber
from printed import text_of

CHERRY = {"kind": "lumber", "item": "Cherry", "size": "4/4"}


def quote(owner, of, price, **more):
    """Notes a price of cherry 4/4."""
    return owner.post(f"/stock/suppliers/{of}/prices", **(CHERRY | {"price": price} | more))


def field(page, name):
    return page.form("/stock/orders").value(name)


def test_a_price_is_noted_replaced_and_taken_out_and_the_history_names_no_amount(shop, owner):
    yard = supplier(owner)

    first = quote(owner, yard, "9.25", on="2027-02-01")
    second = quote(owner, yard, "9.75")
    taken = owner.send(ending(second))

    assert "Cherry 4/4" in first.text
    assert ("$9.25" in first.text, "2027-02-01" in first.text) == (True, True)
    assert ("$9.25" in second.text, "$9.75" in second.text) == (False, True)
    assert "No price yet" in taken.text
    with reading(shop.engine, shop.shop_id) as db:
        said = " ".join(db.scalars(select(History.what)))
    assert "Noted a price of Sawyer & Daughters: cherry 4/4." in said
    assert "9.75" not in said


def ending(page):
    """The address that takes the only price out."""
    return page.html.partition('<td><form method="post" action="')[2].partition('"')[0]


def test_an_order_takes_the_price_of_whom_it_goes_to_and_else_the_price_book(shop, owner):
    job, yard, other = accepted(shop), supplier(owner, "Yard"), supplier(owner, "Zeal Lumber")
    quote(owner, other, "7.10", grade="FAS")
    page = owner.get(f"/stock/needs?job={job.job_id}")
    line = lumber(page, "cherry/flat/4/4")
    book = field(page, f"buy.{line}.price")
    assert field(page, f"buy.{line}.supplier") == yard
    assert "Zeal Lumber $7.10" in page.text

    page = owner.send("/stock/orders", **{f"buy.{line}.supplier": other})

    owner.get("/stock/orders")
    orders = [owner.get(address).text for address in sorted(set(links(owner.page.html)))]
    there = next(each for each in orders if "to Zeal Lumber" in each)
    assert "$7.10" in there
    assert f"${book}" not in there


def links(html):
    return [f"/stock/orders/{part.partition(chr(34))[0]}" for part in html.split('href="/stock/orders/')[1:]]


def test_a_price_that_the_owner_types_stands_whoever_quotes_what(shop, owner):
    job, yard = accepted(shop), supplier(owner)
    quote(owner, yard, "7.10")
    page = owner.get(f"/stock/needs?job={job.job_id}")
    line = lumber(page, "cherry/flat/4/4")
    assert field(page, f"buy.{line}.price") == "7.10"

    page = owner.send("/stock/orders", **{f"buy.{line}.price": "6.66"})

    assert "$6.66" in page.text
    assert "$7.10" not in page.text


def test_the_supplier_is_held_to_what_it_quoted_on_its_own_copy(shop, owner):
    job, yard = accepted(shop), supplier(owner)
    quote(owner, yard, "7.10", on="2027-02-01")

    address = issue(owner, job.job_id).address.partition("?")[0]

    theirs = text_of(owner.browser.get(f"{address}/order.pdf").content)
    assert "$7.10 for one bd ft, as quoted on 1 February 2027" in " ".join(theirs.split())


def test_an_order_says_what_another_would_ask_for_the_lines_it_quotes(shop, owner):
    """Worked by hand from the page's own feet: feet times the difference of the two prices."""
    job, yard, other = accepted(shop), supplier(owner, "Yard"), supplier(owner, "Zeal Lumber")
    quote(owner, yard, "9.00")
    quote(owner, other, "8.50")
    page = owner.get(f"/stock/needs?job={job.job_id}")
    feet = int(field(page, f"buy.{lumber(page, 'cherry/flat/4/4')}.quantity"))

    page = owner.send("/stock/orders")

    beside = page.text.partition("What others would ask")[2]
    assert "Zeal Lumber" in beside
    assert f"${feet * 8.5:,.2f}" in beside
    assert f"${feet * 0.5:,.2f} less" in beside


def test_a_maker_orders_at_the_price_that_is_quoted_and_sees_none(shop, owner, maker):
    job, yard = accepted(shop), supplier(owner)
    quote(owner, yard, "7.10")

    page = issue(maker, job.job_id)

    assert "7.10" not in page.text
    assert "$7.10" in owner.get(page.address.partition("?")[0]).text
    assert "Their prices" not in maker.get(f"/stock/suppliers/{yard}").text


@pytest.mark.parametrize("role", [Role.MAKER, Role.BENCH])
def test_only_the_owner_sees_what_suppliers_quote(shop, owner, role):
    yard = supplier(owner)

    assert "This page is for" in shop.visitor(role).get(f"/stock/suppliers/{yard}/prices", status=403).text


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ({"item": "wood of dreams"}, "wood of dreams"),
        ({"item": ""}, "Say what it is a price of"),
        ({"size": "4"}, "Write the class that it is sold by"),
        ({"price": "much"}, "Write an amount such as"),
        ({"on": "2031-01-01"}, "still to come"),
        ({"kind": "sheet", "item": "birch plywood", "size": ""}, "Write the thickness"),
    ],
)
def test_what_cannot_be_a_price_is_refused_beside_its_field_and_kept(shop, owner, typed, words):
    yard = supplier(owner)
    owner.get(f"/stock/suppliers/{yard}/prices")

    page = owner.send(f"/stock/suppliers/{yard}/prices", status=422, **(CHERRY | {"price": "9"} | typed))

    assert words in page.text
    for name, value in typed.items():
        assert page.form(f"/stock/suppliers/{yard}/prices").value(name) == value
