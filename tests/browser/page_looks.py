"""One visit to a page, and what can be seen of it: wide and narrow, by day and by night, on paper."""

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import CDPSession, Page

from browser.watching import AXE_OPTIONS, Watch

LOOKS = Path(__file__).with_name("looks.js").read_text(encoding="utf-8")
AXE = Axe().axe_script
WIDE = {"width": 1280, "height": 800}
NARROW = {"width": 390, "height": 844}
NARROWEST = {"width": 320, "height": 640}
SPACED = """
* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important; }
p { margin-bottom: 2em !important; }"""
"""The spacing of WCAG 2.2, success criterion 1.4.12."""
EVERY_RULE_BUT_CONTRAST = {
    "runOnly": {"type": "tag", "values": [*AXE_OPTIONS["runOnly"]["values"], "best-practice"]},
    "rules": AXE_OPTIONS["rules"] | {"color-contrast": {"enabled": False}},
    "resultTypes": ["violations"],
    "preload": False,
}
CONTRAST, STRICT_CONTRAST = "color-contrast", "color-contrast-enhanced"
"""4.5 : 1 and 7 : 1."""
BY_WIDTH = ["target-size", "scrollable-region-focusable"]
"""What depends on how wide a window is, besides what is seen in it at all."""
LONG_TABLES = {"exclude": [["tbody tr:nth-child(n+9)"]]}
"""Left out where contrast is tried, which takes long: the ninth row of a table is as black as the eighth."""
NEW = {"include": [["[data-new]"]]}
"""What is seen on a phone alone."""
FINGER, GLOVE, BETWEEN_GLOVES, ARM_S_LENGTH = 44, 56, 8, 18  # px: heights, a gap, and the size of letters


@dataclass(kw_only=True)
class Look:
    """What was seen on a page: lists have one line for each fault.

    Attributes:
        status: what the service answered
        watched: what the browser complained of
        violations: what axe found, with the window and the scheme
        sideways: what makes the page run off sideways
        clipped: text that leaves its box when letters are doubled or spaced out
        torn: amounts, sizes and codes that an end of a line breaks
        shifted: cells of tables that do not stand in their column
        paper: what is wrong when it is printed
        fingers: targets too low to be touched on a phone
        glove: what is too small, too near or too faint on a page of the bench
        weight: bytes that came over the line, packed, with nothing kept from before
        requests: how often the service was asked
        is_bench: whether it is a page of the bench
    """

    status: int = 0
    watched: list[str] = field(default_factory=list)
    violations: list[str] = field(default_factory=list)
    sideways: list[str] = field(default_factory=list)
    clipped: list[str] = field(default_factory=list)
    torn: list[str] = field(default_factory=list)
    shifted: list[str] = field(default_factory=list)
    paper: list[str] = field(default_factory=list)
    fingers: list[str] = field(default_factory=list)
    glove: list[str] = field(default_factory=list)
    weight: int = 0
    requests: int = 0
    is_bench: bool = False


class Scales:
    """Weighs what comes over the line."""

    def __init__(self, page: Page) -> None:
        self.bytes, self.requests = 0, 0
        self.line: CDPSession = page.context.new_cdp_session(page)
        self.line.send("Network.enable")
        self.line.send("Network.setCacheDisabled", {"cacheDisabled": True})
        self.line.on("Network.loadingFinished", self._weigh)

    def _weigh(self, event: dict[str, Any]) -> None:
        self.bytes += int(event["encodedDataLength"])
        self.requests += 1

    def touch(self, on: bool) -> None:
        """Makes the page one that is touched, or pointed at."""
        self.line.send("Emulation.setTouchEmulationEnabled", {"enabled": on})


def look_at(page: Page, scales: Scales, watch: Watch, arrive: Callable[[Page], int]) -> Look:
    """Goes to a page and looks at it from every side."""
    page.set_viewport_size(WIDE)
    page.emulate_media(color_scheme="light", media="screen")
    watch.faults, watch.console = [], []
    scales.bytes, scales.requests = 0, 0
    look = Look(status=arrive(page))
    look.weight, look.requests = scales.bytes, scales.requests
    page.evaluate(LOOKS)
    page.evaluate(AXE)
    page.evaluate("looks.settle()")
    look.is_bench = page.locator("main.bench").count() > 0
    _look_wide(page, look)
    _look_narrow(page, scales, look)
    look.watched = watch.all_faults()
    return look


def _see(page: Page, what: str, *given: Any) -> list[str]:
    found: list[str] = page.evaluate(f"given => looks.{what}(...given)", list(given))
    return found


def _look_wide(page: Page, look: Look) -> None:
    """On a desk: by day, on paper, with large letters, with letters wide apart."""
    look.violations += _axe(page, "1280, light", EVERY_RULE_BUT_CONTRAST)
    _try_rules(page, "1280, light", look, [])
    if look.is_bench:
        look.glove += _glove(page, "1280")
    look.torn += _at("1280", _see(page, "torn"))
    look.shifted += _see(page, "shifted")
    _see(page, "noteUnshown")
    tables = page.evaluate("looks.tables()")
    page.emulate_media(media="print")
    look.paper += _see(page, "onPaper", tables)
    page.emulate_media(media="screen")
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    look.sideways += _at("1280, letters doubled", _see(page, "sideways"))
    look.clipped += _at("1280, letters doubled", _see(page, "clipped"))
    page.evaluate("document.documentElement.style.fontSize = ''")
    look.clipped += _spaced(page, "1280, spaced out")


def _look_narrow(page: Page, scales: Scales, look: Look) -> None:
    """On a phone: by night, with letters wide apart, on the smallest one."""
    scales.touch(True)
    page.set_viewport_size(NARROW)
    page.emulate_media(color_scheme="dark")
    if page.evaluate("looks.markNew()"):
        look.violations += _axe(page, "390, dark", EVERY_RULE_BUT_CONTRAST, NEW)
    _try_rules(page, "390, dark", look, BY_WIDTH)
    if look.is_bench:
        look.glove += _glove(page, "390")
    look.torn += _at("390", _see(page, "torn"))
    look.fingers += _at("390", _see(page, "smallTargets", FINGER))
    look.clipped += _spaced(page, "390, spaced out")
    page.set_viewport_size(NARROWEST)
    look.sideways += _at("320", _see(page, "sideways"))
    look.clipped += _at("320", [*_see(page, "clipped"), *_see(page, "spilled")])
    look.torn += _at("320", _see(page, "torn"))
    scales.touch(False)


def _try_rules(page: Page, name: str, look: Look, more: list[str]) -> None:
    """Contrast, and rules besides. The bench's pages are held to 7 : 1, which holds 4.5 : 1 too."""
    found = look.glove if look.is_bench else look.violations
    rules = [STRICT_CONTRAST if look.is_bench else CONTRAST, *more]
    options = {"runOnly": {"type": "rule", "values": rules}, "resultTypes": ["violations"], "preload": False}
    found += _axe(page, name, options, LONG_TABLES)


def _glove(page: Page, name: str) -> list[str]:
    return [
        *_at(name, _see(page, "smallTargets", GLOVE)),
        *_at(name, _see(page, "crampedTargets", BETWEEN_GLOVES)),
        *_at(name, _see(page, "smallText", ARM_S_LENGTH)),
    ]


def _spaced(page: Page, name: str) -> list[str]:
    _see(page, "space", SPACED)
    found = _at(name, [*_see(page, "clipped"), *_see(page, "sideways")])
    _see(page, "space", "")
    return found


def _at(name: str, found: list[str]) -> list[str]:
    return [f"{name}: {each}" for each in found]


def _axe(page: Page, name: str, options: dict[str, Any], where: dict[str, Any] | None = None) -> list[str]:
    found = page.evaluate("([where, options]) => axe.run(where || document, options)", [where, options])
    return [
        " ".join([f"{name}: {rule['id']}:", *map(str, node["target"]), *node["failureSummary"].split()])
        for rule in found["violations"]
        for node in rule["nodes"]
    ]
