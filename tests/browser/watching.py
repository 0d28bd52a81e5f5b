"""Pages in a real Chromium, each watched: whatever goes wrong in one unseen fails the test."""

import os
import shutil
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import urlsplit

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, Playwright, Request, Response

from serving import Served

Window = dict[str, Any]
DESKTOP: Window = {"viewport": {"width": 1280, "height": 800}}
PHONE: Window = {
    "viewport": {"width": 390, "height": 844},
    "device_scale_factor": 3,
    "has_touch": True,
    "is_mobile": True,
}
SCRIPTLESS: Window = DESKTOP | {"java_script_enabled": False}
DARK: Window = DESKTOP | {"color_scheme": "dark"}

FLAGS = (
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    # No name leads out of this machine; shop.test is this machine seen from the shop's network.
    "--host-resolver-rules=MAP shop.test 127.0.0.1, MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
)
AXE_OPTIONS = {
    "runOnly": {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa"]},
    "rules": {"target-size": {"enabled": True}, "label-content-name-mismatch": {"enabled": True}},
    "resultTypes": ["violations"],
}
PAGE_OR_PART = {"document", "fetch", "xhr"}  # what a 404 or a 422 may answer: the test itself reads those


def launch(playwright: Playwright) -> Browser:
    """A Chromium without a window; only root, who cannot have its sandbox, goes without."""
    flags = [*FLAGS, "--no-sandbox"] if os.geteuid() == 0 else [*FLAGS]
    return playwright.chromium.launch(executable_path=find_chromium(), args=flags)


def find_chromium() -> str:
    """The program to start: the one that CASEWRIGHT_CHROMIUM names, else the system's."""
    wanted = os.environ.get("CASEWRIGHT_CHROMIUM") or "chromium"
    found = shutil.which(wanted, path=os.pathsep.join([os.environ.get("PATH", ""), "/usr/bin"]))
    if found is None:
        raise RuntimeError(
            f"There is no {wanted} to test pages with: install it, or name a Chromium in CASEWRIGHT_CHROMIUM."
        )
    return found


@contextmanager
def open_page(chromium: Browser, site: Served, window: Window = DESKTOP) -> Iterator[Page]:
    """A page of its own, without anyone's cookies, in such a window; addresses may leave out the host."""
    context = chromium.new_context(base_url=site.url, locale="en-US", **window)
    try:
        with watched(context, site):
            yield context.new_page()
    finally:
        context.close()


@contextmanager
def watched(context: BrowserContext, site: Served) -> Iterator["Watch"]:
    """Fails at its end if anything went wrong in any page of the context."""
    watch = Watch({urlsplit(site.url).netloc, urlsplit(site.lan_url).netloc})
    context.on("console", watch.hear)
    context.on("weberror", lambda fault: watch.faults.append(f"script failed: {fault.error}"))
    context.on("request", watch.see_request)
    context.on("response", watch.see_response)
    yield watch
    for page in context.pages:
        page.wait_for_load_state()
    faults = watch.all_faults()
    if faults:
        raise AssertionError("\n".join([*faults, "The service said:", site.last_words()]))


@dataclass
class Watch:
    """What went wrong in the pages of one context."""

    own_hosts: set[str]
    faults: list[str] = field(default_factory=list)
    console: list[ConsoleMessage] = field(default_factory=list)
    refusals: set[str] = field(default_factory=set)

    def hear(self, message: ConsoleMessage) -> None:
        """Keeps errors and warnings; the browser also writes there what the content policy stopped."""
        if message.type in {"error", "warning"}:
            self.console.append(message)

    def see_request(self, request: Request) -> None:
        """Another host is asked for something: a shop's pages need nobody else."""
        address = urlsplit(request.url)
        if address.scheme not in {"data", "blob", "about"} and address.netloc not in self.own_hosts:
            self.faults.append(f"asked another host: {request.url}")

    def see_response(self, response: Response) -> None:
        """The service failed, or lacks a file that a page asks for."""
        if response.status >= 500 or (response.status >= 400 and not answers_a_page(response)):
            self.faults.append(f"answered {response.status}: {response.url}")
        elif response.status >= 400:
            self.refusals.add(response.url)

    def all_faults(self) -> list[str]:
        """Every fault, but for the console's echo of a refusal such as 404 or 422, which is an answer."""
        return self.faults + [
            f"console {message.type}: {message.text} ({message.location.get('url')})"
            for message in self.console
            if not (message.location.get("url") in self.refusals and "status of 4" in message.text)
        ]


def answers_a_page(response: Response) -> bool:
    """Whether a page or a part of one was asked for, and not a file that belongs to it."""
    return response.request.resource_type in PAGE_OR_PART


def wait_until(page: Page, expression: str) -> None:
    """Returns when something holds in a page; Playwright's own waiting needs an eval, which is forbidden."""
    ends = time.monotonic() + 30
    while not page.evaluate(expression):
        assert time.monotonic() < ends, f"it never came to {expression}"
        page.wait_for_timeout(20)


def axe_violations(page: Page) -> list[str]:
    """What axe finds against WCAG 2.2, levels A and AA: one line an element, with what would be right."""
    answer = Axe().run(page, options=AXE_OPTIONS).response
    return [
        f"{rule['id']}: {' '.join(map(str, node['target']))}: {node['failureSummary']}"
        for rule in answer["violations"]
        for node in rule["nodes"]
    ]
