"""Taps at the bench in a browser: what is typed stays, a bounce counts once, the keyboard keeps its place."""

from collections.abc import Iterator
from datetime import timedelta

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
    look_the_parts_over,
)
from browser.shop_at_desk import at_desk, shop_in
from browser.watching import DESKTOP, PHONE, wait_until
from casewright.records.people import Role, Shop
from casewright.records.sessions import writing
from casewright.shop.time import Work, start_timer
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


def test_a_time_that_is_not_sent_stays_when_the_timer_rests(shop, hand_held, job):
    with writing(shop.engine, shop.shop_id) as db:
        work = Work(job_id=job, operation="D06")
        early = shop.clock.now - timedelta(hours=5)
        start_timer(db, db.get_one(Shop, shop.shop_id), shop.people[Role.BENCH], work, early)
    hand_held.goto(f"/jobs/{job}/hours")
    hand_held.locator("#clock-time").fill("1:30")

    hand_held.get_by_role("button", name="Pause").tap()
    expect(hand_held.locator(".clock")).to_contain_text("resting:")

    assert hand_held.locator("#clock-time").input_value() == "1:30"
    hand_held.get_by_text("Started by mistake").tap()
    hand_held.get_by_role("button", name="Drop it").tap()
    expect(hand_held.locator(".clock")).to_have_count(0)


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


def touch_twice(page: Page, target: str, swapped: str) -> None:
    """Touches the middle of something, and the same place once more as soon as the page has answered."""
    page.locator(target).scroll_into_view_if_needed()
    place = page.locator(target).bounding_box()
    assert place
    at = (place["x"] + place["width"] / 2, place["y"] + place["height"] / 2)
    page.touchscreen.tap(*at)
    wait_until(page, swapped)
    page.touchscreen.tap(*at)
    page.wait_for_timeout(AFTER_A_BOUNCE)


def says(selector: str, words: str) -> str:
    """Whether something says some words, as a browser is asked."""
    return f"document.querySelector('{selector}').textContent.includes('{words}')"


def test_a_touch_that_bounces_moves_a_drawer_one_stage(shop, hand_held, drawer):
    drawer_reaches(shop, drawer, "fitted")
    look_the_parts_over(shop, drawer)
    hand_held.goto(f"/bench/{drawer}")
    for name in ("SL", "SR"):
        hand_held.locator(f"#{name}-thickness").fill("1/2")
    hand_held.get_by_role("button", name="Keep these sizes").tap()
    hand_held.wait_for_url("**saved**")

    touch_twice(hand_held, "#next", says("#next", "Next: dry-fitted"))

    assert kept_stage(shop, drawer) == "joints"
    hand_held.locator("#next").tap()
    expect(hand_held.locator("#next")).to_contain_text("Next: glued up")
    assert kept_stage(shop, drawer) == "dry"


def test_a_touch_that_bounces_moves_a_line_of_the_board_one_stage(shop, hand_held, job):
    case = f"#n-{case_id(shop, job)}"
    hand_held.goto(f"/board?job={job}")

    touch_twice(hand_held, case, says(case, "base, back and top on"))

    expect(hand_held.locator(case)).to_contain_text("base, back and top on")


def test_a_touch_that_bounces_leaves_a_line_of_the_list_ticked(shop, hand_held, drawer):
    drawer_reaches(shop, drawer, "dry")
    hand_held.goto(f"/bench/{drawer}")

    touch_twice(hand_held, "#t-shoulder", "document.getElementById('t-shoulder').ariaPressed === 'true'")

    expect(hand_held.locator("#t-shoulder")).to_have_attribute("aria-pressed", "true")


def test_quick_touches_at_several_lines_all_count(shop, hand_held, drawer):
    drawer_reaches(shop, drawer, "dry")
    hand_held.goto(f"/bench/{drawer}")

    for line in range(3):
        hand_held.locator("#dry-fit button[name=tick]").first.tap()
        expect(hand_held.locator("#dry-fit button[name=untick]")).to_have_count(line + 1)


def press(page: Page, selector: str) -> None:
    """Presses something by the keyboard, long enough after what was pressed before."""
    page.wait_for_timeout(AFTER_A_BOUNCE)
    page.locator(selector).focus()
    page.keyboard.press("Enter")


def stays_at(page: Page, selector: str) -> None:
    """The keyboard is at something, and goes on from there."""
    expect(page.locator(selector)).to_be_focused()


def test_the_keyboard_stays_at_its_line_of_the_board(shop, keyboard, job, drawer):
    keyboard.goto(f"/board?job={job}")

    press(keyboard, f"#n-{drawer}")
    expect(keyboard.locator(f"#d-{drawer}")).to_contain_text("needs the opening measured")
    stays_at(keyboard, f"a#n-{drawer}")
    press(keyboard, f"#u-{drawer}")
    expect(keyboard.locator(f"#d-{drawer}")).to_contain_text("not begun")
    stays_at(keyboard, f"button#n-{drawer}")


def test_the_keyboard_stays_at_a_line_that_has_reached_everything(shop, keyboard, job):
    case_reaches(shop, job, CASE_STAGES[-1])
    drawer = drawer_ids(shop, job)["R1-1"]
    drawer_reaches(shop, drawer, "finished")
    keyboard.goto(f"/board?job={job}")

    press(keyboard, f"#n-{drawer}")
    expect(keyboard.locator(f"#d-{drawer} .is-last")).to_contain_text("in the case")

    stays_at(keyboard, f"#l-{drawer}")


def test_the_keyboard_stays_at_a_case_that_is_taken_back(shop, keyboard, job):
    case = case_id(shop, job)
    keyboard.goto(f"/board?job={job}")

    for _ in range(CASE_STAGES.index("glued") + 1):
        press(keyboard, f"#u-{case}")
        keyboard.wait_for_timeout(AFTER_A_BOUNCE)

    expect(keyboard.locator(f"#c-{case}")).to_contain_text("not begun")
    stays_at(keyboard, f"button#n-{case}")


def test_the_keyboard_stays_at_the_next_step_of_a_drawers_page(keyboard, drawer):
    keyboard.goto(f"/bench/{drawer}")

    press(keyboard, "#next")
    expect(keyboard.locator(".held")).to_be_visible()
    stays_at(keyboard, ".held")
    press(keyboard, "#undo")
    expect(keyboard.locator("#undo")).to_have_count(0)
    stays_at(keyboard, "button#next")
