"""The editor of a unit in a browser: it answers while one types, and it works without script."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from browser.shop_at_desk import at_desk, shop_in, unit_in
from browser.watching import DARK, PHONE, SCRIPTLESS, axe_violations, wait_until
from people import ShopInTest
from serving import Served


@pytest.fixture(scope="module")
def shop(site: Served) -> ShopInTest:
    """A shop in the books of the running service."""
    return shop_in(site)


@pytest.fixture
def unit(shop: ShopInTest) -> str:
    """Worked dresser A in a job of its own; its address."""
    return unit_in(shop)


@pytest.fixture
def desk(chromium: Browser, site: Served, shop: ShopInTest, unit: str) -> Iterator[Page]:
    """The editor, open on a desk."""
    with at_desk(chromium, site, shop) as page:
        page.goto(unit)
        yield page


def price(page: Page):
    """The price before tax."""
    return page.locator("#worked .tile dd").first


def test_a_size_is_worked_out_while_it_is_typed_and_the_caret_stays(desk):
    width = desk.locator("#body-width")
    width.click()
    width.press("End")
    width.press_sequentially(" ")
    width.fill("3' 9-1/2\"")
    width.press("Home")

    expect(desk.locator("#body-width-said")).to_have_text("3' 9-1/2\" = 45-1/2 in = 1155.7 mm")
    expect(price(desk)).not_to_have_text("$16,150.00")
    expect(desk.locator("#told")).to_contain_text("Worked out:")
    assert desk.evaluate("document.activeElement.id") == "body-width"
    assert desk.evaluate("document.activeElement.selectionStart") == 0
    assert width.input_value() == "3' 9-1/2\""


def test_what_cannot_be_worked_out_is_said_beside_its_field_and_the_last_price_stays(desk):
    desk.locator("#body-width").fill("40")
    expect(price(desk)).not_to_have_text("$16,150.00")
    before = price(desk).inner_text()

    desk.locator("#body-width").fill("39 1/0")

    expect(desk.locator("#body-width-said")).to_contain_text("nothing can be divided by 0")
    expect(desk.locator("#body-width")).to_have_attribute("aria-invalid", "true")
    expect(desk.locator("#said")).to_contain_text("Not worked out with what is typed now")
    assert price(desk).inner_text() == before
    desk.locator("#body-width").fill("39-1/2")
    expect(price(desk)).to_have_text("$16,150.00")
    expect(desk.locator("#body-width")).not_to_have_attribute("aria-invalid", "true")


def test_rows_are_added_and_removed_in_place_with_what_was_typed(desk):
    desk.locator("#rows-2-height").fill("6")
    desk.locator("#name").fill("Tall dresser")

    desk.locator("#row-add").click()

    expect(desk.locator("#rows-6-height")).to_be_visible()
    expect(desk.locator("#result")).to_contain_text("R6-1")
    assert desk.locator("#rows-2-height").input_value() == "6"
    assert desk.locator("#name").input_value() == "Tall dresser"
    desk.locator("#row-remove-1").click()
    expect(desk.locator("#rows-6-height")).to_have_count(0)
    assert desk.locator("#rows-1-height").input_value() == "6"


def test_price_and_checks_stay_in_view_and_lead_to_where_they_stand(desk):
    expect(desk.locator("#standing")).to_have_text(
        re.compile(r"Saved\. \$16,150\.00 before tax \d+ cautions?")
    )
    desk.locator("#body-width").fill("42")
    expect(desk.locator("#standing")).to_contain_text("Worked out, not saved.")
    for place in ("#rows-title", "#note"):
        desk.locator(place).scroll_into_view_if_needed()
        expect(desk.locator("#standing")).to_be_in_viewport()

    desk.locator("#standing a[href='#checks']").click()

    expect(desk.locator("#checks")).to_be_in_viewport()


def test_enter_in_a_field_works_it_out_in_place(desk, unit):
    desk.locator("#rows-3-height").fill("7")
    desk.locator("#rows-3-height").press("Enter")

    expect(desk.locator("#standing")).to_contain_text("not saved")
    assert desk.url.endswith(unit)
    assert desk.evaluate("document.activeElement.id") == "rows-3-height"


def test_what_was_measured_of_an_opening_is_typed_into_its_own_fields(desk):
    desk.locator(".drawing.front a[data-pick='R5-1']").first.click()
    desk.locator("#to-measured").click()
    assert desk.evaluate("document.activeElement.id") == "measured-R5-1-height"

    desk.keyboard.type("8-1/4, 8-3/16")
    expect(desk.locator("#measured-R5-1-height-said")).to_have_text("the least of 2: 8-3/16 in = 208.0 mm")
    expect(desk.locator("#now-measured")).to_have_text("1 size")
    desk.keyboard.press("Tab")
    desk.keyboard.type("tall")

    expect(desk.locator("#measured-R5-1-width-said")).to_contain_text("“tall” is not a size")
    expect(desk.locator("#standing")).to_have_text("Not worked out")
    desk.locator("#measured-R5-1-width").fill("")
    desk.locator("#body-width").fill("41-1/2")
    # 38 drawn between sides of 3/4; the case is 2 wider than it was.
    expect(desk.locator("#measured-R5-1-width")).to_have_attribute("placeholder", "40")


def test_a_save_that_is_refused_does_not_offer_what_stands_on_the_page(desk):
    desk.on("dialog", lambda dialog: dialog.accept())
    desk.locator("#body-width").fill("39 1/0")
    desk.locator(".keep-bar button.main").click()
    expect(desk.locator("#faults")).to_be_visible()

    expect(desk.get_by_role("button", name="Bring it back")).to_have_count(0)
    desk.get_by_role("link", name="Design").click()
    desk.get_by_role("button", name="Bring it back").click()
    expect(desk.locator("#body-width")).to_have_value("39 1/0")
    expect(desk.get_by_role("button", name="Bring it back")).to_have_count(0)


def test_only_the_fields_of_the_chosen_rule_are_shown(desk):
    expect(desk.locator("#graduation-ratio")).to_be_hidden()

    desk.locator("#graduation-rule").select_option("ratio")
    desk.locator("#graduation-ratio").fill("1.12")

    expect(desk.locator("#graduation-step")).to_be_hidden()
    expect(desk.locator("#result")).to_contain_text("5-1/2")


def test_what_a_field_is_called_follows_the_style_of_the_drawers_without_a_reload(desk):
    height = desk.locator("#rows-1-height")
    expect(desk.locator("#drawers-front-label")).to_have_text("Front")
    expect(desk.locator("#heights-called")).to_have_text("Opening height")
    desk.locator("#drawers-style-kind").evaluate("list => { list.value = 'full overlay' }")
    desk.locator("#case-divider_kind").evaluate("list => { list.value = 'none' }")
    desk.locator("#body-width").fill("38")

    expect(desk.locator("#drawers-front-label")).to_have_text("Show front")
    expect(desk.locator("#drawers-front_joint-kind-label")).to_have_text("Sides and the box’s front")
    expect(desk.locator("#heights-called")).to_have_text("Height of the front")
    expect(height).to_have_attribute("aria-label", "Row 1: height of the front")
    expect(desk.locator("td", has=height)).to_have_attribute("data-label", "Height of the front")
    desk.locator("#drawers-style-kind").evaluate("list => { list.value = 'inset' }")
    desk.locator("#body-width").fill("39")
    expect(desk.locator("#drawers-front-label")).to_have_text("Front")
    expect(height).to_have_attribute("aria-label", "Row 1: height")
    expect(desk.locator("td", has=height)).to_have_attribute("data-label", "Height")


def test_a_notch_asks_for_the_rest_once_its_width_is_typed(desk):
    desk.locator("#more-5 summary").click()
    expect(desk.locator("#rows-5-notch-width")).to_be_visible()
    expect(desk.locator("#rows-4-notch-width")).to_be_hidden()
    expect(desk.locator("#rows-5-notch-depth")).to_be_hidden()

    desk.locator("#rows-5-notch-width").fill("9")
    expect(desk.locator("#rows-5-notch-depth")).to_be_visible()
    expect(desk.locator("#rows-4-notch-depth")).to_be_hidden()
    desk.locator("#drawers-bottom-kind").evaluate("list => { list.value = 'ply' }")
    desk.locator("#rows-5-notch-depth").fill("7")

    expect(desk.locator("#result")).to_contain_text("Pipes stand in A-R5-1")
    assert axe_violations(desk) == []


def test_the_section_takes_the_place_of_the_front(desk):
    desk.get_by_role("button", name="Section", exact=True).click()

    expect(desk.locator(".drawing.section").first).to_be_visible()
    expect(desk.locator(".drawing.front")).to_have_count(0)
    desk.locator("#body-width").fill("42")
    expect(desk.locator("#standing")).to_contain_text("not saved")
    expect(desk.locator(".drawing.section").first).to_be_visible()


def test_saving_from_the_keyboard_keeps_a_revision(desk, unit):
    desk.locator("#body-width").fill("40")
    desk.locator(".keep-bar button.main").focus()
    desk.keyboard.press("Enter")

    expect(desk.locator(".note.good")).to_have_text("Saved.")
    assert desk.locator("#body-width").input_value() == "40"


def test_without_script_a_row_is_added_and_the_price_worked_out(chromium, site, shop, unit):
    with at_desk(chromium, site, shop, window=SCRIPTLESS) as page:
        page.goto(unit)
        page.locator("#body-width").fill("40")
        page.locator("#row-add").click()
        page.locator("#rows-6-columns").fill("2")
        page.get_by_role("button", name="Work it out").last.click()

        assert page.locator("#rows-6-columns").input_value() == "2"
        assert "Worked out, not saved." in page.inner_text("#standing")
        assert "R6-2" in page.inner_text("#result")


def test_what_was_typed_comes_back_after_a_reload_rows_and_all(desk):
    desk.on("dialog", lambda dialog: dialog.accept())
    desk.locator("#row-add").click()
    desk.locator("#rows-6-height").fill("5")
    desk.locator("#body-width").fill("40")
    expect(desk.locator("#body-width-said")).to_contain_text("40 in")
    wait_until(desk, "sessionStorage.length > 0")
    desk.reload()

    desk.get_by_role("button", name="Bring it back").click()

    expect(desk.locator("#rows-6-height")).to_have_value("5")
    expect(desk.locator("#body-width")).to_have_value("40")


def test_what_was_typed_after_a_save_comes_back_after_a_reload(desk):
    desk.on("dialog", lambda dialog: dialog.accept())
    desk.locator("#body-width").fill("40")
    desk.locator(".keep-bar button.main").click()
    expect(desk.locator(".note.good")).to_have_text("Saved.")
    desk.locator("#body-width").fill("41")
    wait_until(desk, "sessionStorage.length > 0")

    desk.reload()

    desk.get_by_role("button", name="Bring it back").click()
    expect(desk.locator("#body-width")).to_have_value("41")


def test_whoever_is_signed_out_meanwhile_is_told_and_keeps_the_text(desk):
    desk.context.clear_cookies()

    desk.locator("#name").fill("A dresser for the hall")

    expect(desk.locator("#trouble")).to_contain_text("You are not signed in any more")
    assert desk.locator("#name").input_value() == "A dresser for the hall"
    expect(price(desk)).to_have_text("$16,150.00")


@pytest.mark.parametrize("window", [PHONE, DARK], ids=["phone", "dark"])
def test_the_editor_of_a_large_piece_keeps_nobody_out_and_does_not_scroll_sideways(
    chromium, site, shop, unit, window
):
    """The pages around it are looked at with all the others; this piece is larger than the demo's."""
    with at_desk(chromium, site, shop, window=window) as page:
        page.goto(unit)

        assert axe_violations(page) == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_everything_opened_in_the_form_can_be_reached_by_everybody(desk):
    for each in desk.locator("details.choices summary:visible").all():
        each.click()
    desk.locator("#graduation-rule").select_option("contents")
    desk.evaluate("scrollTo(0, document.body.scrollHeight)")  # where the bar lies over no field

    assert axe_violations(desk) == []
