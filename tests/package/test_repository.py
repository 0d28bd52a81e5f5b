"""The checkout itself: what lies where, and what must never be written into it."""

import fnmatch
import os
import re
import shutil
import subprocess
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
TOP_LEVEL = {
    *(".ci", ".gitignore", "check", "run", "docker", "migrations", "service", "static", "templates", "tests"),
    *("CHANGELOG.md", "DEVELOPERS.md", "LICENSE", "README.md", "pyproject.toml"),
    *("requirements.txt", "requirements-dev.txt", "requirements-uv.txt"),
}

# Written so that this line does not match itself.
REGISTRY = re.compile(r"pypi\.(org|io)|python[h]osted|npm[j]s|yarn[p]kg|crates\.io|deb\.debian|proxy\.golang")
FOLDER_OF_ONE_MACHINE = re.compile(r"(?<![\w.~)\]}-])/(?:home|root|work|Users)/\w")


def kept_files() -> list[Path]:
    """The files that belong to the project: what git lists, or without git all that .gitignore leaves."""
    if shutil.which("git") and (ROOT / ".git").exists():
        listing = ["git", "-c", "safe.directory=*", "ls-files", "-z"]
        listed = subprocess.run(listing, cwd=ROOT, check=True, capture_output=True, text=True).stdout
        names = listed.rstrip("\0").split("\0")
        return [ROOT / name for name in names if (ROOT / name).is_file()]
    ignored = [".git", *(line.rstrip("/") for line in (ROOT / ".gitignore").read_text().splitlines())]
    return list(files_below(ROOT, ignored))


def files_below(folder: Path, ignored: list[str]) -> list[Path]:
    """Every file in the folder and the folders in it, but for the names that match an ignored pattern."""
    names = [name for name in os.listdir(folder) if not any(fnmatch.fnmatch(name, p) for p in ignored)]
    entries = [folder / name for name in names]
    deeper = [file for entry in entries if entry.is_dir() for file in files_below(entry, ignored)]
    return [entry for entry in entries if entry.is_file()] + deeper


def lines_matching(pattern: re.Pattern[str]) -> list[str]:
    """Each line of a kept text file in which the pattern is found, as `file:line`."""
    return [
        f"{file.relative_to(ROOT)}:{number}"
        for file in kept_files()
        for number, line in enumerate(file.read_text(errors="ignore").splitlines(), 1)
        if pattern.search(line)
    ]


def pins(requirements: str) -> set[str]:
    """The lines `name==version ; marker` of a requirements file, without their hashes."""
    lines = (ROOT / requirements).read_text().splitlines()
    return {line.removesuffix("\\").strip() for line in lines if "==" in line}


def test_the_top_level_holds_what_it_should_and_nothing_more():
    names = {file.relative_to(ROOT).parts[0] for file in kept_files()}

    assert names == TOP_LEVEL


def test_no_file_names_the_address_of_a_package_registry():
    assert lines_matching(REGISTRY) == []


def test_no_file_names_a_folder_of_one_machine():
    assert lines_matching(FOLDER_OF_ONE_MACHINE) == []


@pytest.mark.parametrize("script", ["run", "check", "service/lock.sh", ".ci/run"])
def test_the_commands_can_be_started(script):
    assert os.access(ROOT / script, os.X_OK)


def test_the_change_log_speaks_of_the_present_version():
    version = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["version"]

    changes = (ROOT / "CHANGELOG.md").read_text()

    assert re.search(rf"\b{re.escape(version)}\b", changes)


def test_no_module_is_longer_than_400_lines():
    # A migration is written by a program, and changed by nobody once it has run somewhere.
    modules = [file for file in kept_files() if file.suffix == ".py" and "migrations" not in file.parts]

    long = [str(file.relative_to(ROOT)) for file in modules if len(file.read_text().splitlines()) > 400]

    assert len(modules) > 10
    assert long == []


@pytest.mark.parametrize("requirements", ["requirements.txt", "requirements-dev.txt", "requirements-uv.txt"])
def test_every_locked_package_has_its_hashes(requirements):
    entries = re.split(r"\n(?=\S)", (ROOT / requirements).read_text())

    without = [entry for entry in entries if "==" not in entry or "--hash=sha256:" not in entry]

    assert without == []


def test_the_development_lock_contains_the_one_for_running():
    assert pins("requirements.txt") <= pins("requirements-dev.txt")


@pytest.mark.parametrize(
    ("table", "group", "requirements"),
    [
        ("project", "dependencies", "requirements.txt"),
        ("dependency-groups", "dev", "requirements-dev.txt"),
        ("dependency-groups", "bootstrap", "requirements-uv.txt"),
    ],
)
def test_every_package_asked_for_is_locked(table, group, requirements):
    asked = tomllib.loads((ROOT / "pyproject.toml").read_text())[table][group]

    locked = {pin.partition("==")[0] for pin in pins(requirements)}

    assert {re.match(r"[\w-]+", wish).group() for wish in asked} <= locked
