"""Money: none at the bench, and no cost, wage or profit for a maker, on any page that the owner can find."""

import re

import pytest

from casewright.records.people import Role
from pages.crawl import kind_of
from people import Clock

pytestmark = pytest.mark.one_database

AMOUNT = re.compile(r"[$€£]\s?\d[\d,.]*")
OWNERS = re.compile(r"\b(wages?|overheads?|profits?|break-even)\b", re.IGNORECASE)


@pytest.fixture(autouse=True)
def at_the_start(clock):
    clock.now = Clock().now


@pytest.mark.parametrize(("role", "unseen"), [(Role.BENCH, AMOUNT), (Role.MAKER, OWNERS)])
def test_nobody_reads_what_is_not_for_them(furnished, role, unseen):
    one_of_each = {kind_of(address): address for address in sorted(furnished.walk.pages)}
    visitor = furnished.shop.visitor(role)

    told = []
    for address in sorted(set(one_of_each.values()) - {"/help"}):
        answer = visitor.browser.get(address, follow_redirects=False)
        text = (
            visitor.seen_as(answer).text if answer.headers.get("content-type", "").startswith("text/") else ""
        )
        told += [(address, found.group()) for found in unseen.finditer(text)]

    assert told == []


def test_the_owner_does_read_amounts(furnished):
    assert [address for address, shown in furnished.walk.pages.items() if AMOUNT.search(shown.text)]
