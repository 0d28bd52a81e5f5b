"""The tests' own browser: a fault that nobody looks for is still found, and a sound page passes."""

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from browser.page_looks import Scales, look_at
from browser.watching import Watch, axe_violations, find_chromium, open_page
from serving import Served, serve

TINY_SITE = [sys.executable, str(Path(__file__).with_name("tiny_site.py"))]


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A server of pages with known faults."""
    with serve(TINY_SITE, tmp_path_factory.mktemp("tiny")) as served:
        yield served


def test_a_sound_page_passes(desktop):
    desktop.goto("/plain")

    assert desktop.inner_text("h1") == "marked"
    assert axe_violations(desktop) == []


def test_a_page_that_is_not_there_is_an_answer_and_no_fault(desktop):
    answer = desktop.goto("/no-such-job")

    assert answer.status == 404


@pytest.mark.parametrize(
    ("page_name", "words"),
    [
        ("inline", "Content Security Policy"),
        ("throwing", "no such joint"),
        ("complaining", "this board is short"),
        ("elsewhere", "asked another host: http://elsewhere.test/a.png"),
        ("lacking", "answered 404: .*/missing.png"),
        ("broken", "answered 500"),
    ],
)
def test_a_fault_that_no_test_looks_for_is_found(chromium: Browser, site: Served, page_name, words):
    with pytest.raises(AssertionError, match=words), open_page(chromium, site) as page:
        page.goto(f"/{page_name}")


@pytest.mark.parametrize(
    ("page_name", "rules"),
    [("nameless", {"label", "link-name"}), ("cramped", {"target-size"})],
)
def test_what_keeps_people_out_is_found(desktop, page_name, rules):
    desktop.goto(f"/{page_name}")

    assert {violation.partition(":")[0] for violation in axe_violations(desktop)} == rules


@pytest.mark.parametrize(
    ("page_name", "rule"),
    [("folded", "button-name"), ("faint", "color-contrast"), ("small by touch", "target-size")],
)
def test_what_is_wrong_on_a_phone_or_by_night_alone_is_found(desktop, page_name, rule):
    watch = Watch(set())
    look = look_at(desktop, Scales(desktop), watch, lambda page: page.goto(f"/{page_name}").status)

    assert {found.rpartition(" dark: ")[2].partition(":")[0] for found in look.violations} >= {rule}
    assert [found for found in look.violations if found.startswith("1280") and rule in found] == []


def test_a_phone_is_narrow_and_is_touched(phone):
    phone.goto("/plain")

    assert phone.evaluate("[innerWidth, innerHeight]") == [390, 844]
    assert phone.evaluate("matchMedia('(pointer: coarse)').matches")


def test_a_browser_without_script_runs_none(scriptless):
    scriptless.goto("/plain")

    assert scriptless.inner_text("h1") == "plain"


def test_dark_pages_are_asked_for(dark):
    dark.goto("/plain")

    assert dark.evaluate("matchMedia('(prefers-color-scheme: dark)').matches")


def test_the_shop_s_network_is_plain_http_without_a_secure_context(desktop, site: Served):
    desktop.goto(f"{site.lan_url}/plain")

    assert desktop.evaluate("isSecureContext") is False


def test_what_the_service_prints_is_read(site: Served):
    assert site.printed(r"Set-up code: (\S+)") == "13-7-32"


def test_a_service_that_does_not_start_shows_what_it_said(tmp_path):
    command = [sys.executable, "-c", "raise SystemExit('no books here')"]

    with pytest.raises(RuntimeError, match="no books here"), serve(command, tmp_path):
        pass


def test_the_chromium_that_the_environment_names_is_used_and_no_other(monkeypatch):
    monkeypatch.setenv("CASEWRIGHT_CHROMIUM", sys.executable)

    found = find_chromium()

    assert found == sys.executable
    monkeypatch.setenv("CASEWRIGHT_CHROMIUM", "chrome-of-another-machine")
    with pytest.raises(RuntimeError, match="no chrome-of-another-machine to test pages with"):
        find_chromium()
