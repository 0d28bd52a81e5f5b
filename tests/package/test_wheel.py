"""The wheel, built and installed where nothing else is: it works without the checkout."""

import json
import os
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
UV = (
    os.environ.get("CASEWRIGHT_UV") or shutil.which("uv") or ROOT / ".tools/uv/bin/uv"
)  # where ./check puts it
CLEAN = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}


def run(*command: object, cwd: Path = ROOT) -> str:
    """What the command prints; one that fails shows why."""
    parts = [str(part) for part in command]
    done = subprocess.run(parts, cwd=cwd, env=CLEAN, capture_output=True, text=True, check=False)
    assert done.returncode == 0, f"{parts}\n{done.stdout}\n{done.stderr}"
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of this checkout, built with the tools at hand."""
    folder = tmp_path_factory.mktemp("dist")
    run(sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", folder, ROOT)
    return next(folder.glob("casewright-*.whl"))


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The programs of a new environment that holds the wheel and the locked packages, nothing else."""
    environment = tmp_path_factory.mktemp("empty") / "venv"
    run(UV, "venv", "--no-project", "--python", sys.executable, environment)
    python = environment / "bin" / "python"
    locked = ("--require-hashes", "--only-binary", ":all:", ROOT / "requirements.txt")
    run(UV, "pip", "sync", "--python", python, *locked)
    run(UV, "pip", "install", "--python", python, "--offline", "--no-deps", wheel)
    run(UV, "pip", "check", "--python", python)
    return environment / "bin"


def test_an_installed_casewright_prices_a_piece_away_from_its_checkout(installed, tmp_path):
    answer = json.loads(run(installed / "casewright", "estimate", "--json", cwd=tmp_path))

    assert answer["price"]


def test_an_installed_casewright_is_the_one_that_was_built(installed, tmp_path):
    where = run(installed / "python", "-c", "import casewright; print(casewright.__file__)", cwd=tmp_path)

    assert Path(where).is_relative_to(installed.parent)


def test_the_wheel_carries_every_data_file_of_the_package(wheel):
    data = {str(file.relative_to(ROOT / "service")) for file in ROOT.glob("service/casewright/**/data/*.*")}

    packed = set(zipfile.ZipFile(wheel).namelist())

    assert data <= packed


def test_the_wheel_holds_the_package_and_its_papers_only(wheel):
    folders = {name.partition("/")[0] for name in zipfile.ZipFile(wheel).namelist()}

    assert folders == {"casewright", wheel.name.removesuffix("-py3-none-any.whl") + ".dist-info"}


@pytest.mark.parametrize("name", ["templates", "static", "migrations"])
def test_an_installed_casewright_brings_its_own_templates_and_migrations(installed, tmp_path, name):
    code = f"from casewright.folders import {name}; print({name}())"

    where = Path(run(installed / "python", "-c", code, cwd=tmp_path).strip())

    assert where.is_relative_to(installed.parent)
    assert any(file.is_file() for file in where.iterdir())
