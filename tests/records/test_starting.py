"""Starting the service: it listens before anybody is sent to it, and says an address that can be opened."""

import shlex
import sys
import time
from pathlib import Path

import pytest

from casewright.serving import address_of
from casewright.settings import read_settings
from serving import SERVICE, TO_START, serve

BROWSER = """
import os, sys, time, urllib.request
service = os.getppid()
with urllib.request.urlopen(sys.argv[1], timeout=60) as answer:
    held = answer.read().decode()
open(sys.argv[2], "w").write(f"{answer.status} {sys.argv[1]}\\n{held}")
while os.getppid() == service:  # as some browsers, it does not return by itself
    time.sleep(0.05)
"""


def test_the_browser_is_opened_when_there_is_an_answer_and_waited_for_by_nobody(tmp_path: Path):
    script, seen, data = tmp_path / "browser.py", tmp_path / "seen", tmp_path / "shop"
    script.write_text(BROWSER)
    data.mkdir(mode=0o700)
    browser = shlex.join([sys.executable, str(script), "%s", str(seen)])
    command = [sys.executable, "-P", "-m", "casewright", "serve", "--open", "--data", str(data)]

    with serve(command, data, PYTHONPATH=str(SERVICE), BROWSER=browser) as served:
        code = served.printed(r"the code  (\S+)")
        ends = time.monotonic() + TO_START
        while not seen.exists() and time.monotonic() < ends:
            time.sleep(0.05)

        assert seen.exists(), served.last_words()
        assert seen.read_text().startswith(f"200 http://localhost:{served.port}/set-up?code={code}\n")


@pytest.mark.parametrize(
    ("host", "address"),
    [
        ("127.0.0.1", "http://localhost:8000"),
        ("0.0.0.0", "http://localhost:8000"),  # noqa: S104 - said, not bound
        ("::", "http://localhost:8000"),
        ("::1", "http://[::1]:8000"),
        ("fd00::2", "http://[fd00::2]:8000"),
        ("shop.test", "http://shop.test:8000"),
    ],
)
def test_the_address_can_be_written_into_a_browser(tmp_path: Path, host: str, address: str):
    assert address_of(read_settings({}, data=tmp_path, host=host), 8000) == address


def test_an_address_that_was_set_is_said_as_it_is(tmp_path: Path):
    held = read_settings({"CASEWRIGHT_ADDRESS": "https://shop.example"}, data=tmp_path, host="::1")

    assert address_of(held, 8000) == "https://shop.example"
