"""What the demo has bought: an order, what came of it, and its yard, which stays where one buys there."""

from collections import Counter
from typing import Any

import pytest

from pages.test_demo import everything, take_out, with_demo

pytestmark = pytest.mark.one_database


@pytest.fixture
def demo(shop: Any) -> Any:
    """The shop, with the demo in it."""
    return with_demo(shop)


def test_the_demo_has_an_order_that_came_and_boards_on_the_rack(demo):
    owner = demo.visitor()

    orders, deliveries, rack = (owner.get(f"/stock{each}").text for each in ("/orders", "/deliveries", ""))

    assert "The yard at Sallow Mill" in orders
    assert "P-0001" in orders
    assert "D-0001" in deliveries
    assert "walnut" in rack.casefold()
    [order] = everything(demo)["supply_order"]
    page = owner.get(f"/stock/orders/{order['id']}")
    assert "$11.40" in page.text
    assert "What it takes otherwise now" not in page.text
    [delivery] = everything(demo)["delivery"]
    assert "2218" in owner.get(f"/stock/deliveries/{delivery['id']}/claim").html
    states = Counter(row["state"] for row in everything(demo)["stock_piece"] if row["delivery_id"])
    assert states == {"used": 3, "in stock": 2}


def test_a_supplier_of_the_demo_of_whom_one_bought_stays_and_is_ones_own(demo, owner):
    [yard] = everything(demo)["supplier"]
    owner.post("/stock/deliveries", supplier=yard["id"], order="", arrived_on="2027-03-01")

    take_out(owner)

    [left] = everything(demo)["supplier"]
    assert (left["name"], left["demo"]) == ("The yard at Sallow Mill", False)
    assert len(everything(demo)["supplier_price"]) == 2
