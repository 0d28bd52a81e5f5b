"""Sizes at the bench in a browser: stepped by buttons, and never thrown away."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand
from browser.shop_at_desk import at_desk, shop_in
from browser.watching import PHONE
from casewright.measure.lengths import LengthUnit, parse_length
from casewright.records.people import Role
from people import ShopInTest
from serving import Served

STEP = 1 / 64
HALF_MILLIMETRE = 0.5 / 25.4
METRIC = {"unit": "mm", "body": {"width": 610, "depth": 406, "opening_total": 457}}


@pytest.fixture(scope="module")
def shop(site: Served) -> ShopInTest:
    """A shop in the books of the running service."""
    return shop_in(site)


@pytest.fixture(scope="module")
def drawers(shop: ShopInTest) -> dict[str, str]:
    """Drawers that wait for their openings, in a case that is glued up; id by code."""
    return waiting_drawers(shop)


@pytest.fixture(scope="module")
def metric(shop: ShopInTest) -> dict[str, str]:
    """The same in millimetres."""
    return waiting_drawers(shop, METRIC)


def waiting_drawers(shop: ShopInTest, changes: dict | None = None) -> dict[str, str]:
    job = job_in_hand(shop, changes=changes)
    case_reaches(shop, job, "glued")
    ids = drawer_ids(shop, job)
    for drawer in ids.values():
        drawer_reaches(shop, drawer, "milled")
    return ids


@pytest.fixture
def phone_at(chromium: Browser, site: Served, shop: ShopInTest) -> Iterator[Page]:
    """A phone at the bench."""
    with at_desk(chromium, site, shop, Role.BENCH, PHONE) as page:
        yield page


@pytest.mark.parametrize(
    "typed",
    [
        "8",
        "8.5",
        ".5",
        "15/32",
        "8-15/32",
        "8 15/32 in",
        "8½",
        "8 ⅞",
        "1' 3-5/8\"",
        "1’3⅝”",
        "2 ft",
        "39.7 cm",
        "215.1 mm",
    ],
)
def test_a_button_steps_a_size_from_what_is_typed_in_whatever_notation(phone_at, drawers, typed):
    phone_at.goto(f"/bench/{drawers['R2-1']}")
    field = phone_at.locator("#opening-height")
    field.fill(typed)

    phone_at.get_by_role("button", name="+ 1/64: opening, height").tap()

    steps = round(float(parse_length(typed)) / STEP) + 1
    assert float(parse_length(field.input_value())) == pytest.approx(steps * STEP)


@pytest.mark.parametrize("typed", ["215", "215,5", "39.7 cm", "8-15/32", "15/32", "1' 3\""])
def test_a_button_steps_a_size_in_millimetres(phone_at, metric, typed):
    phone_at.goto(f"/bench/{metric['R2-1']}")
    field = phone_at.locator("#opening-height")
    field.fill(typed)

    phone_at.get_by_role("button", name="− 0.5: opening, height").tap()

    steps = round(float(parse_length(typed, LengthUnit.MILLIMETRE)) / HALF_MILLIMETRE) - 1
    kept = float(parse_length(field.input_value(), LengthUnit.MILLIMETRE))
    assert kept == pytest.approx(steps * HALF_MILLIMETRE)


@pytest.mark.parametrize("typed", ["a hair over 8", "8,5", "8 9/8", "8 1/0", "81 mm 3", "1' 14\"", "-"])
def test_a_button_leaves_what_it_cannot_read_as_it_stands(phone_at, drawers, typed):
    phone_at.goto(f"/bench/{drawers['R2-1']}")
    field, said = phone_at.locator("#opening-height"), phone_at.locator("#opening-height-told")
    field.fill(typed)

    phone_at.get_by_role("button", name="+ 1/64: opening, height").tap()

    assert field.input_value() == typed
    expect(said).to_contain_text("it stays as it is")
    field.fill("8")
    expect(said).to_be_empty()


def test_a_button_steps_an_empty_field_from_the_drawn_size(phone_at, drawers):
    phone_at.goto(f"/bench/{drawers['R2-1']}")

    phone_at.get_by_role("button", name="+ 1/64: opening, height").tap()

    assert phone_at.locator("#opening-height").input_value() == "6-1/64"
