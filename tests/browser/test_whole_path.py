"""From an empty folder to a drawer that is glued up, as somebody who has never seen it would go."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from browser.watching import DESKTOP, PHONE, SCRIPTLESS, Window, watched
from serving import Served, from_checkout

AFTER_A_BOUNCE = 900  # ms: a press that comes sooner at the same place is taken for a bounce


@pytest.fixture(params=["desk", "phone on the shop's own network", "no script"])
def way(request: pytest.FixtureRequest) -> tuple[Window, bool]:
    """A window, and whether the page is reached by a name on plain http."""
    return {
        "desk": (DESKTOP, False),
        "phone on the shop's own network": (PHONE, True),
        "no script": (SCRIPTLESS, False),
    }[request.param]


@pytest.fixture
def fresh_site(tmp_path: Path) -> Iterator[Served]:
    """A service of this test's own, with nobody in it."""
    with from_checkout(tmp_path) as served:
        yield served


def test_a_newcomer_gets_from_an_empty_folder_to_a_drawer_that_is_glued_up(
    chromium: Browser, fresh_site: Served, way: tuple[Window, bool]
) -> None:
    window, by_name = way
    base = fresh_site.lan_url if by_name else fresh_site.url
    context = chromium.new_context(base_url=base, locale="en-US", **window)
    page = context.new_page()

    with watched(context, fresh_site):
        set_up(page, fresh_site.printed(r"type the code\s+(\S+)"))
        job = take_on_job(page)
        enter_dresser(page)
        link = send_quote(page, job)
        accept(chromium, fresh_site, link, window)
        see_it_accepted(page, job)
        print_the_order(page, fresh_site, job)
        tap_to_glued_up(page)
    context.close()


def press(page: Page, name: str) -> None:
    """Presses a button, or follows a link, by its name."""
    page.get_by_role("button", name=name).or_(page.get_by_role("link", name=name)).first.click()
    page.wait_for_load_state()


def fits(page: Page) -> None:
    """The page does not run off sideways."""
    wide = page.locator("html").evaluate("page => page.scrollWidth - page.clientWidth")
    assert wide <= 0, f"{page.url} is {wide} px too wide"


def set_up(page: Page, code: str) -> None:
    page.goto("/")
    page.get_by_label("Code").fill(code)
    page.get_by_label("Your name").fill("Ada Marsh")
    page.get_by_label("E-mail address").fill("ada@example.com")
    page.get_by_label("Password").fill("grain of old walnut")
    page.get_by_label("Name of the shop").fill("Marrow Street Furniture")
    page.get_by_label("Sales tax").fill("6")
    page.get_by_label("An empty shop").check()
    press(page, "Open the shop")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Jobs")
    fits(page)


def take_on_job(page: Page) -> str:
    press(page, "Take on a job")
    page.get_by_label("What is it?").fill("Dresser for the north room")
    page.get_by_label("Name", exact=True).fill("Tom & Ida Fell")
    press(page, "Take it on")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Dresser for the north room")
    fits(page)
    return re.sub(r"[?#].*", "", page.url)


def enter_dresser(page: Page) -> None:
    press(page, "Describe the first unit")
    fits(page)
    page.get_by_role("button", name="Dresser, two over four").click()
    page.get_by_label("Name", exact=True).fill("Fell dresser")
    page.get_by_label("Width of the case").fill("3' 1-1/2\"")
    page.get_by_role("button", name="Save", exact=True).first.click()
    page.wait_for_load_state()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Fell dresser")
    expect(page.locator("main")).to_contain_text("37-1/2")
    fits(page)


def send_quote(page: Page, job: str) -> str:
    page.goto(job)
    press(page, "New quote")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Quote Q-0001")
    sure = page.get_by_label("I have looked at what says stop")
    for box in sure.all():
        box.check()
    page.get_by_role("button", name="Send the quote").click()
    page.wait_for_load_state()
    fits(page)
    return page.get_by_label("Address to copy").input_value()


def accept(chromium: Browser, site: Served, link: str, window: Window) -> None:
    context = chromium.new_context(**window)
    with watched(context, site):
        customer = context.new_page()
        customer.goto(link)
        fits(customer)
        customer.get_by_label("Your name").fill("Ida Fell")
        for box in customer.get_by_role("checkbox").all():
            box.check()
        press(customer, "Accept the quote")
        expect(customer.locator("main")).to_contain_text("Ida Fell")
        customer.goto(link)
        expect(customer.get_by_role("button", name="Accept the quote")).to_have_count(0)
    context.close()


def see_it_accepted(page: Page, job: str) -> None:
    page.goto(job)
    expect(page.locator("main")).to_contain_text("accepted")
    expect(page.locator("main")).to_contain_text("Ida Fell")


def print_the_order(page: Page, site: Served, job: str) -> None:
    page.goto(job)
    page.get_by_role("link", name="Lumber order", exact=True).click()
    fits(page)
    page.locator("#supplier").fill("Sawyer & Daughters")
    page.get_by_label("Needed by").fill("2027-01-15")
    press(page, "Issue the order")
    fits(page)
    expect(page.locator("main")).to_contain_text("15 January 2027")
    address = page.get_by_role("link", name="PDF").first.get_attribute("href")
    assert address is not None
    # Asked for by number: the client beside the browser does not know the name of the shop's machine.
    cookies = "; ".join(f"{each['name']}={each['value']}" for each in page.context.cookies())
    paper = page.request.get(f"{site.url}{address}", headers={"cookie": cookies})
    assert paper.headers["content-type"] == "application/pdf"
    assert paper.body().startswith(b"%PDF")


def tap_to_glued_up(page: Page) -> None:
    page.goto("/board")
    fits(page)
    for stage in ("panels ready", "joints cut", "glued up"):
        page.wait_for_timeout(AFTER_A_BOUNCE)
        button = page.get_by_role("button", name=re.compile(f"^next: {stage} – tap when the case"))
        button.click()
        expect(button).to_have_count(0)
    page.get_by_role("link", name=re.compile(r"^(.*\b)?R2-1\b")).first.click()
    fits(page)
    next_stage(page, "milled")
    measure(page)
    next_stage(page, "fitted")
    tick_through(page, "#marking")
    for stage in ("joints cut", "dry-fitted"):
        next_stage(page, stage)
    tick_through(page, "#dry-fit")
    next_stage(page, "glued up")
    page.goto("/board")
    expect(page.locator("main")).to_contain_text(re.compile(r"Glued up:\s*1\s*of\s*6"))


def tick_through(page: Page, part: str) -> None:
    """Ticks every line of a list that is open."""
    lines = page.locator(f"{part} button[name=tick]")
    page.wait_for_timeout(AFTER_A_BOUNCE)
    for line in range(lines.count(), 0, -1):
        lines.first.click()
        expect(lines).to_have_count(line - 1)


def next_stage(page: Page, stage: str) -> None:
    """Taps the one big button and waits until it speaks of another stage."""
    button = page.locator("#next")
    expect(button).to_contain_text(stage)
    page.wait_for_timeout(AFTER_A_BOUNCE)
    button.click()
    expect(page.get_by_role("button", name=re.compile(f"Next: {stage}"))).to_have_count(0)


def measure(page: Page) -> None:
    """Writes down what the rule says, and sees the second gauge follow."""
    page.get_by_role("textbox", name="Opening, height").fill("6-3/16")
    page.get_by_role("textbox", name="Opening, width").fill("36")
    page.get_by_role("textbox", name="Left side, thickness").fill("31/64")
    page.get_by_role("textbox", name="Right side, thickness").fill("31/64")
    expect(page.locator("#numbers + dl")).not_to_contain_text("27/64")
    page.get_by_role("button", name="Keep these sizes").click()
    expect(page.locator("#numbers + dl")).to_contain_text("27/64")
