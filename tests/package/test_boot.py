"""How the checkout sets itself up: the part that can be tried on a machine where all is there already."""

import os
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize("script", ["run", "check", "service/boot.sh", "service/lock.sh"])
def test_the_scripts_are_plain_shell(script):
    done = subprocess.run(["sh", "-n", ROOT / script], capture_output=True, text=True, check=False)

    assert (done.returncode, done.stderr) == (0, "")


def bring_browser(**variables: str) -> subprocess.CompletedProcess[str]:
    """What ./check does about the browser before it starts any test."""
    boot = 'root=$1; . "$root/service/boot.sh"; bring_browser'
    environment = os.environ | variables
    return subprocess.run(
        ["sh", "-euc", boot, "sh", ROOT], env=environment, capture_output=True, text=True, check=False
    )


def test_a_chromium_that_is_not_there_is_refused_before_any_test_runs():
    done = bring_browser(CASEWRIGHT_CHROMIUM="chrome-of-another-machine")

    assert done.returncode == 2
    assert "CASEWRIGHT_CHROMIUM=chrome-of-another-machine is not a program" in done.stderr


def test_a_browser_that_is_there_already_is_not_spoken_of():
    done = bring_browser()

    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
