"""The wheel, built and installed where nothing else is: it works without the checkout."""

import json
import re
import zipfile
from pathlib import Path
from urllib.request import urlopen

import pytest
from building import ROOT, UV, run

from serving import serve


def test_an_installed_casewright_prices_a_piece_away_from_its_checkout(installed, tmp_path):
    answer = json.loads(run(installed / "casewright", "estimate", "--json", cwd=tmp_path))

    assert answer["price"]


def test_an_installed_casewright_is_the_one_that_was_built(installed, tmp_path):
    where = run(installed / "python", "-c", "import casewright; print(casewright.__file__)", cwd=tmp_path)

    assert Path(where).is_relative_to(installed.parent)


def test_an_installed_casewright_names_its_commands_as_they_are_typed_there(installed, tmp_path):
    ask = "from casewright.folders import called; print(called('doctor'))"

    assert run(installed / "python", "-c", ask, cwd=tmp_path).strip() == "casewright doctor"


def test_an_installed_casewright_serves_its_pages(installed, tmp_path):
    with serve([str(installed / "casewright"), "serve", "--data", str(tmp_path)], tmp_path) as served:
        page = urlopen(served.url).read().decode()  # noqa: S310 - our own address
        styles = re.findall(r'<link rel="stylesheet" href="([^"]+)"', page)
        sheet = urlopen(served.url + styles[0]).read()  # noqa: S310

    assert "<h1" in page
    assert sheet


def test_the_locked_packages_suit_one_another(installed):
    run(UV, "pip", "check", "--python", installed / "python")


def test_the_wheel_carries_every_data_file_of_the_package(wheel):
    data = {str(file.relative_to(ROOT / "service")) for file in ROOT.glob("service/casewright/**/data/*.*")}

    packed = set(zipfile.ZipFile(wheel).namelist())

    assert data <= packed


@pytest.mark.parametrize("folder", ["templates", "static", "migrations"])
def test_the_wheel_carries_what_stands_beside_the_package(wheel, folder):
    kept = [file for file in (ROOT / folder).rglob("*") if file.is_file() and "__pycache__" not in file.parts]

    packed = set(zipfile.ZipFile(wheel).namelist())

    assert {f"casewright/{file.relative_to(ROOT)}" for file in kept} <= packed


def test_the_wheel_holds_the_package_and_its_papers_only(wheel):
    folders = {name.partition("/")[0] for name in zipfile.ZipFile(wheel).namelist()}

    assert folders == {"casewright", wheel.name.removesuffix("-py3-none-any.whl") + ".dist-info"}
