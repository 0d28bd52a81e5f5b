"""A newcomer's first chest, from the list of jobs to a saved design: by keyboard alone, and by finger."""

import re

import pytest
from playwright.sync_api import Page, expect

from browser.shop_at_desk import at_desk, shop_in

TABLET = {"viewport": {"width": 820, "height": 1180}, "has_touch": True}
MOST_TABS = 60
"""So many presses of Tab to the next thing that is wanted are a search; less is a way."""


@pytest.fixture(scope="module")
def shop(site):
    """A shop in the books of the running service."""
    return shop_in(site)


def tab_to(page: Page, what: str) -> int:
    """Presses Tab until something has the focus; gives how often."""
    for presses in range(1, MOST_TABS + 1):
        page.keyboard.press("Tab")
        if page.evaluate("what => document.activeElement.matches(what)", what):
            return presses
    raise AssertionError(f"{MOST_TABS} presses of Tab do not come to {what}")


def test_by_keyboard_alone_a_first_chest_is_described_and_saved(chromium, site, shop):
    with at_desk(chromium, site, shop) as page:
        page.goto("/jobs")
        presses = tab_to(page, "main a[href='/jobs/new']")
        page.keyboard.press("Enter")
        expect(page).to_have_title(re.compile("Take on a job"))
        presses += tab_to(page, "#name")
        page.keyboard.type("Chest for the landing")
        presses += tab_to(page, "#new-name")
        page.keyboard.type("Ida Wren")
        page.keyboard.press("Enter")
        expect(page).to_have_title(re.compile("Chest for the landing"))
        presses += tab_to(page, "a[href$='/units/new']")
        page.keyboard.press("Enter")
        expect(page).to_have_title(re.compile("New unit"))
        presses += tab_to(page, ".start button")
        page.keyboard.press("Enter")
        expect(page).to_have_title(re.compile("^Unit A"))
        presses += tab_to(page, "#body-width")
        page.keyboard.type("38")
        presses += tab_to(page, "#rows-2-columns")
        page.keyboard.type("2")
        expect(page.locator(".drawing.front a[data-pick='R2-2']").first).to_be_visible()
        page.keyboard.press("Control+s")

        expect(page.locator(".note.good")).to_have_text("Saved.")
        assert page.locator("#body-width").input_value() == "38"
        assert presses < 200


def test_by_finger_on_a_tablet_a_first_chest_takes_eight_taps_and_three_fields(chromium, site, shop):
    with at_desk(chromium, site, shop, window=TABLET) as page:
        page.goto("/jobs/new")
        page.get_by_label("What is it?").fill("Chest for the hall")
        page.get_by_label("Name", exact=True).fill("Ida Wren")
        page.locator("main button.main").tap()
        page.locator("a[href$='/units/new']").first.tap()
        page.locator(".start button").first.tap()
        page.locator("#body-width").fill("38")
        place = page.locator(".drawing.front a[data-pick='R2-1']").first
        place.tap()
        expect(page.locator("#edit-across")).to_be_visible()
        expect(page.locator(".drawing.front")).to_be_in_viewport()
        page.locator("#edit-across").tap()
        expect(page.locator(".drawing.front a[data-pick='R2-2']").first).to_be_visible()
        expect(page.locator("#standing")).to_contain_text("Worked out, not saved.")
        page.locator(".keep-bar button.main").tap()

        expect(page.locator(".note.good")).to_have_text("Saved.")
        assert page.locator("#rows-2-columns").input_value() == "2"
