"""Where the keyboard is after a form was refused: at the list of what is wrong, with script and without."""

import pytest
from playwright.sync_api import expect

from browser.shop_at_desk import at_desk, shop_in, unit_in
from browser.watching import DESKTOP, PHONE, SCRIPTLESS, axe_violations
from pages.unit_jobs import new_job

WINDOWS = pytest.mark.parametrize("window", [DESKTOP, PHONE, SCRIPTLESS], ids=["desk", "phone", "no script"])


@pytest.fixture(scope="module")
def shop(site):
    """A shop in the books of the running service."""
    return shop_in(site)


def save(page):
    """Sends the page's form."""
    with page.expect_navigation():
        page.get_by_role("button", name="Save").or_(page.locator("main button.main")).first.click()


@WINDOWS
@pytest.mark.parametrize("path", ["/jobs/new", "/customers/new"])
def test_the_list_of_what_is_wrong_has_the_keyboard(chromium, site, shop, window, path):
    with at_desk(chromium, site, shop, window=window) as page:
        page.goto(path)

        save(page)

        expect(page.locator("#faults")).to_be_focused()
        page.keyboard.press("Tab")
        expect(page.locator("#faults a").first).to_be_focused()


@WINDOWS
def test_the_editor_of_a_unit_does_as_the_other_forms(chromium, site, shop, window):
    with at_desk(chromium, site, shop, window=window) as page:
        page.goto(unit_in(shop))
        page.locator("#body-width").fill("8 1/0")

        save(page)

        expect(page.locator("#faults")).to_be_focused()


@WINDOWS
def test_whoever_saved_second_has_the_keyboard_at_the_notice(chromium, site, shop, window):
    address = f"/jobs/{new_job(shop)}/change"
    with at_desk(chromium, site, shop, window=window) as mine, at_desk(chromium, site, shop) as theirs:
        mine.goto(address)
        theirs.goto(address)
        theirs.locator("#note").fill("Walnut.")
        save(theirs)
        mine.locator("#note").fill("Cherry.")

        save(mine)

        expect(mine.locator("#saved-meanwhile")).to_be_focused()


@pytest.mark.parametrize("window", [DESKTOP, PHONE], ids=["desk", "phone"])
def test_nobody_is_kept_out_of_a_form_that_was_refused(chromium, site, shop, window):
    with at_desk(chromium, site, shop, window=window) as page:
        page.goto("/jobs/new")
        save(page)

        assert axe_violations(page) == []


def test_a_form_that_was_not_sent_leaves_the_keyboard_where_it_is(chromium, site, shop):
    with at_desk(chromium, site, shop) as page:
        page.goto("/jobs/new")

        assert page.evaluate("document.activeElement === document.body")
