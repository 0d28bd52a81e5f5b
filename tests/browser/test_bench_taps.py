"""Taps at the bench in a browser: what is typed stays, a bounce counts once, the keyboard keeps its place."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from benchwork import (
    CASE_STAGES,
    case_id,
    case_reaches,
    drawer_ids,
    drawer_reaches,
    job_in_hand,
    kept_stage,
)
from browser.shop_at_desk import at_desk, shop_in
from browser.watching import DESKTOP, PHONE, wait_until
from casewright.records.people import Role
from people import ShopInTest
from serving import Served

AFTER_A_BOUNCE = 900  # ms: from then on a press is meant


@pytest.fixture(scope="module")
def shop(site: Served) -> ShopInTest:
    """A shop in the books of the running service."""
    return shop_in(site)


@pytest.fixture
def job(shop: ShopInTest) -> str:
    """A job of this test's own, its case glued up."""
    made = job_in_hand(shop)
    case_reaches(shop, made, "glued")
    return made


@pytest.fixture
def drawer(shop: ShopInTest, job: str) -> str:
    """The middle drawer of its chest."""
    return drawer_ids(shop, job)["R2-1"]


@pytest.fixture
def hand_held(chromium: Browser, site: Served, shop: ShopInTest) -> Iterator[Page]:
    """A phone at the bench."""
    with at_desk(chromium, site, shop, Role.BENCH, PHONE) as page:
        yield page


@pytest.fixture
def keyboard(chromium: Browser, site: Served, shop: ShopInTest) -> Iterator[Page]:
    """A screen with a keyboard at the bench."""
    with at_desk(chromium, site, shop, Role.BENCH, DESKTOP) as page:
        yield page


def test_a_size_that_is_typed_and_not_sent_stays_when_a_line_is_ticked(shop, hand_held, drawer):
    drawer_reaches(shop, drawer, "milled")
    hand_held.goto(f"/bench/{drawer}")
    hand_held.locator("#opening-height").fill("6-1/64")
    hand_held.locator("#measured summary").tap()
    hand_held.locator("#SL-in_rabbet").fill("7/16")

    hand_held.locator("#dry-fit summary").tap()
    hand_held.locator("#t-shoulder").tap()
    expect(hand_held.locator("#t-shoulder")).to_have_attribute("aria-pressed", "true")

    assert hand_held.locator("#opening-height").input_value() == "6-1/64"
    expect(hand_held.locator("#SL-in_rabbet")).to_be_visible()
    assert hand_held.locator("#SL-in_rabbet").input_value() == "7/16"


def test_a_size_that_is_not_sent_goes_with_the_sizes_to_their_new_place(hand_held, drawer):
    hand_held.goto(f"/bench/{drawer}")
    hand_held.locator("#opening-height").fill("6-1/64")

    hand_held.locator("#next").tap()
    expect(hand_held.locator(".held")).to_contain_text("It needs the opening measured.")

    assert hand_held.locator("#opening-height").input_value() == "6-1/64"
    expect(hand_held.locator("#measured")).to_contain_text("needed")


def test_a_size_that_is_not_sent_stays_when_the_timer_is_started_and_stopped(shop, hand_held, drawer):
    drawer_reaches(shop, drawer, "milled")
    hand_held.goto(f"/bench/{drawer}")
    hand_held.locator("#opening-height").fill("6-1/64")

    hand_held.get_by_role("button", name="other work").tap()
    expect(hand_held.locator(".clock")).to_be_visible()
    started = hand_held.locator("#opening-height").input_value()
    hand_held.get_by_role("button", name="Stop").tap()
    expect(hand_held.locator(".clock")).to_have_count(0)

    assert (started, hand_held.locator("#opening-height").input_value()) == ("6-1/64", "6-1/64")


def test_what_was_kept_is_not_brought_back_over_what_was_sent(shop, hand_held, drawer):
    drawer_reaches(shop, drawer, "milled")
    hand_held.goto(f"/bench/{drawer}")
    hand_held.locator("#note").fill("Curly grain")
    hand_held.locator("#opening-height").fill("6-1/64")

    hand_held.get_by_role("button", name="Keep these sizes").tap()
    hand_held.wait_for_url("**saved**")

    assert hand_held.locator("#opening-height").input_value() == "6-1/64"
    assert hand_held.locator("#note").input_value() == "Curly grain"
    hand_held.reload()
    assert hand_held.locator("#note").input_value() == ""
