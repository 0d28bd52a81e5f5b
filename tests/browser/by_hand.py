"""A page gone through by hand: with the Tab key, and with a finger that is not quite steady."""

from random import Random

from playwright.sync_api import Page

from browser.page_looks import LOOKS

MOST_STOPS = 600
SAME_STOP = 6  # a day has a stop for each of its parts; one that is left for nothing else is a trap


def walk_with_tab(page: Page) -> list[str]:
    """What is wrong on the way through a page with Tab: one line for each fault.

    Every stop must have a ring of 3 px and lie free. None may come twice, hold the walker, or be left out.
    """
    page.evaluate(LOOKS)
    faults, stops = [], 0
    for _ in range(MOST_STOPS):
        page.keyboard.press("Tab")
        stop = page.evaluate("looks.stop()")
        if stop is None or (stop["again"] and stop["is_first"]):
            break
        stops += 1
        faults += [f"comes twice: {stop['name']}"] * stop["again"]
        faults += [f"no ring: {stop['name']}"] * (not stop["ring"])
        faults += [f"something lies over it: {stop['name']}"] * (not stop["free"])
        if stop["again"] or stop["same"] > SAME_STOP:
            return [*faults, f"no way on from {stop['name']}"]
    return [*faults, *page.evaluate("looks.unreached()")] if stops else ["nothing is reached"]


def tap_about(page: Page, taps: int, off: int) -> list[str]:
    """Taps on so many targets of a page, each up to `off` pixels beside its middle; gives the misses."""
    page.evaluate(LOOKS)
    chance = Random(1)  # noqa: S311 - the same unsteady hand each time
    count = page.evaluate("looks.catchTaps()")
    misses = []
    for number in range(taps):
        place = page.evaluate("index => looks.aim(index)", chance.randrange(count) if number else 0)
        page.touchscreen.tap(place["x"] + chance.uniform(-off, off), place["y"] + chance.uniform(-off, off))
        if not page.evaluate("looks.isHit()"):
            misses.append(place["name"])
    return misses
