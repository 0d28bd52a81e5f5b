"""An opening is chosen in the drawing, changed, undone and compared: by mouse, by keyboard, by finger."""

import pytest
from playwright.sync_api import expect

from browser.shop_at_desk import at_desk, shop_in, unit_in
from browser.watching import SCRIPTLESS, axe_violations

TABLET = {"viewport": {"width": 820, "height": 1180}, "has_touch": True}


@pytest.fixture(scope="module")
def shop(site):
    """A shop in the books of the running service."""
    return shop_in(site)


@pytest.fixture
def desk(chromium, site, shop):
    """The editor of worked dresser A, open on a desk."""
    with at_desk(chromium, site, shop) as page:
        page.goto(unit_in(shop))
        yield page


def pick(page, code):
    """A place in the front elevation."""
    return page.locator(f".drawing.front a[data-pick='{code}']").first


def test_a_drawer_clicked_in_the_drawing_is_split_and_the_split_undone(desk):
    pick(desk, "R3-1").click()
    assert desk.evaluate("document.activeElement.id") == "rows-3-height"
    expect(pick(desk, "R3-1")).to_have_class("picked")

    desk.locator("#edit-across").click()
    expect(desk.locator("#rows-3-columns")).to_have_value("2")
    expect(pick(desk, "R3-2")).to_be_visible()

    desk.locator("#undo").click()
    expect(pick(desk, "R3-2")).to_have_count(0)
    expect(desk.locator("#undo")).to_be_disabled()
    desk.keyboard.press("Control+Shift+Z")
    expect(pick(desk, "R3-2")).to_be_visible()


def test_by_keyboard_alone_a_drawer_is_chosen_and_made_a_pair_of_rows(desk):
    pick(desk, "R5-1").focus()
    desk.keyboard.press("Enter")
    expect(desk.locator("#at")).to_have_value("5-1")

    desk.locator("#edit-rows").focus()
    desk.keyboard.press("Enter")

    expect(desk.locator("#rows-5-across-1-rows-2-height")).to_be_visible()
    expect(pick(desk, "R5-1-2-1")).to_be_visible()
    expect(desk.locator("#edit-rows")).to_be_focused()
    desk.locator("#group-top summary").focus()
    desk.keyboard.press("Control+z")
    expect(desk.locator("#rows-5-across-1-rows-2-height")).to_have_count(0)


def test_what_is_chosen_moves_with_its_row_and_what_cannot_be_done_is_said(desk):
    pick(desk, "R3-1").click()
    desk.locator("#edit-up").click()
    expect(desk.locator("#at")).to_have_value("2-1")
    expect(pick(desk, "R2-1")).to_have_class("picked")

    desk.locator("#edit-join").click()

    said = desk.locator("#tools .note")
    expect(said).to_have_text("It stands alone in its row; there is nothing to join it with.")
    expect(desk.locator("#standing")).to_contain_text("not saved")
    desk.wait_for_load_state("networkidle")
    expect(said).to_be_visible()
    desk.locator("#body-width").fill("41")
    expect(desk.locator("#body-width-said")).to_contain_text("41 in")
    expect(said).to_have_count(0)


def test_what_went_with_an_opening_is_named(desk):
    desk.locator("#group-measured summary").click()
    desk.locator("#measured-R2-1-height").fill("6-1/4")
    expect(desk.locator("#now-measured")).to_have_text("1 size")

    desk.locator("#row-remove-2").click()

    expect(desk.locator("#tools .note")).to_contain_text("R2-1 height 6-1/4. Undo brings it back.")


def test_a_field_of_the_form_marks_its_opening_in_the_drawing(desk):
    desk.locator("#rows-4-height").focus()

    expect(pick(desk, "R4-1")).to_have_class("picked")


@pytest.mark.parametrize("view", ["plan", "opened"])
def test_another_view_takes_the_place_of_the_front(desk, view):
    desk.locator(f"#view-{view}").click()

    expect(desk.locator(f".drawing.{view}").first).to_be_visible()
    expect(desk.locator(".drawing.front")).to_have_count(0)


@pytest.mark.parametrize(("view", "code"), [("section", "R4-1"), ("opened", "R4-1"), ("plan", "R1-2")])
def test_a_drawer_is_chosen_in_every_view(desk, view, code):
    """The plan of worked dresser A is cut through its fullest row, the two drawers at the top."""
    desk.locator(f"#view-{view}").click()
    place = desk.locator(f".drawing.{view} a[data-pick='{code}']").first

    place.click()

    expect(desk.locator("#at")).to_have_value(code.removeprefix("R"))
    expect(place).to_have_class("picked")
    assert desk.evaluate("document.activeElement.id") == f"rows-{code[1]}-height"
    assert axe_violations(desk) == []


def test_on_a_tablet_a_finger_finds_every_drawer_and_tool(chromium, site, shop):
    with at_desk(chromium, site, shop, window=TABLET) as page:
        page.goto(unit_in(shop))
        pick(page, "R2-1").tap()

        expect(page.locator("#at")).to_have_value("2-1")
        places = [pick(page, f"R{row}-1").bounding_box() for row in range(1, 6)]
        tools = [each.bounding_box() for each in page.locator(".tool-set button").all()]
        assert min(min(each["width"], each["height"]) for each in (*places, *tools)) >= 43.9
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_without_script_the_drawing_leads_to_its_fields(chromium, site, shop):
    with at_desk(chromium, site, shop, window=SCRIPTLESS) as page:
        page.goto(unit_in(shop))

        pick(page, "R3-1").click()

        assert page.url.endswith("#rows-3-height")


def test_the_editor_with_an_opening_chosen_and_the_comparison_can_be_used_by_everybody(desk):
    pick(desk, "R1-2").click()
    desk.locator("#edit-doors").click()
    expect(desk.locator("#rows-1-across-2-holds")).to_have_value("doors")
    assert axe_violations(desk) == []

    desk.on("dialog", lambda dialog: dialog.accept())
    desk.get_by_role("link", name="Compare").click()
    desk.locator("#with-start-tall-chest").check()
    desk.get_by_role("button", name="Compare").click()

    expect(desk.get_by_role("columnheader", name="Start: Tall chest of five")).to_be_visible()
    assert axe_violations(desk) == []
