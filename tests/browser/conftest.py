"""One browser and one service for all the tests of this folder; a page of its own for each test.

A test module that overrides `site` has its pages from another server.
"""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

from browser.watching import DARK, DESKTOP, PHONE, SCRIPTLESS, launch, open_page
from serving import Served, from_checkout

expect.set_options(timeout=30_000)  # as long as the browser itself waits for what is to be pressed


# For this folder, not the session: while Playwright is there, no other test can run an event loop of its own.
@pytest.fixture(scope="package")
def chromium() -> Iterator[Browser]:
    """The browser."""
    with sync_playwright() as playwright:
        browser = launch(playwright)
        yield browser
        browser.close()


@pytest.fixture(scope="package")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The real service with the empty books of a new shop."""
    with from_checkout(tmp_path_factory.mktemp("shop")) as served:
        yield served


@pytest.fixture
def desktop(chromium: Browser, site: Served) -> Iterator[Page]:
    """A page on a desk: 1280 × 800."""
    with open_page(chromium, site, DESKTOP) as page:
        yield page


@pytest.fixture
def phone(chromium: Browser, site: Served) -> Iterator[Page]:
    """A page on a phone, touched: 390 × 844."""
    with open_page(chromium, site, PHONE) as page:
        yield page


@pytest.fixture
def scriptless(chromium: Browser, site: Served) -> Iterator[Page]:
    """A page on a desk, in a browser that runs no script."""
    with open_page(chromium, site, SCRIPTLESS) as page:
        yield page


@pytest.fixture
def dark(chromium: Browser, site: Served) -> Iterator[Page]:
    """A page on a desk, for someone who asks for dark pages."""
    with open_page(chromium, site, DARK) as page:
        yield page
