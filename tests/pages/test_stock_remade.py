"""Wood that went into parts which a change scraps is bought again: what was ordered for it serves no more."""

import re

import pytest

from benchwork import case_reaches, job_in_hand, unit_address
from pages.stock_room import issue, supplier
from pages.unit_jobs import filled

pytestmark = pytest.mark.one_database


@pytest.fixture
def job(shop, owner):
    """A chest in hand, its wood ordered, the parts of its case cut."""
    made = job_in_hand(shop)
    supplier(owner)
    issue(owner, made)
    shop.clock.pass_by(days=3)
    case_reaches(shop, made, "panels")
    return made


def widened(shop, owner, job):
    """The chest made wider after its approval, as the customer signs."""
    unit = unit_address(shop, job)
    owner.get(unit)
    owner.send(f"{unit}/approval")
    owner.post(unit, **filled(owner.get(unit), unit, {"body.width": "26", "note": "Wider."}))
    address = f"{unit}/revisions/2/change-order"
    page = owner.post(address, **filled(owner.get(address), address, {"act": "make it"}))
    order = page.address.partition("?")[0]
    owner.send(f"{order}/agreement", name="Ines Cole", way="signed")


def line(page, wood):
    """Of a line of lumber: feet ordered before, feet of them that are lost, exact feet, feet to buy."""
    row = page.html.partition(f'<th scope="row">{wood}')[2].partition("</tr>")[0]
    said = re.search(r"([\d.]+) bd ft in order P-0001(?:; ([\d.]+) bd ft of it)?", row)
    exact = float(re.search(r"([\d.]+) bd ft", row)[1])
    return float(said[1]), float(said[2] or 0), exact, to_buy_of(row)


def to_buy_of(row):
    """The feet that are proposed."""
    return float(re.search(r'quantity"[^>]*value="(\d+)"', row)[1])


def test_what_is_lost_is_no_longer_counted_as_ordered(shop, owner, job):
    widened(shop, owner, job)
    shop.clock.pass_by(days=1)

    page = owner.get(f"/stock/needs?job={job}")

    ordered, lost, exact, to_buy = line(page, "Cherry 4/4")
    assert lost > 0
    assert "went into parts that CO-0001 scraps" in page.text
    assert to_buy == -(-(exact - (ordered - lost)) // 1)  # whole feet, rounded up


def test_what_is_ordered_afterwards_serves_in_full(shop, owner, job):
    widened(shop, owner, job)
    shop.clock.pass_by(days=1)
    issue(owner, job)
    shop.clock.pass_by(days=1)

    row = (
        owner.get(f"/stock/needs?job={job}")
        .html.partition('<th scope="row">Cherry 4/4')[2]
        .partition("</tr>")[0]
    )

    assert re.search(r'value="(\d+)"', row)[1] == "0"


def test_nothing_is_lost_while_the_customer_has_not_agreed(shop, owner, job):
    page = owner.get(f"/stock/needs?job={job}")

    assert "went into parts" not in page.text
