"""The command that lays parts out, as it is typed."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

import casewright
from casewright.cli import main
from casewright.terminal import package_text
from cutchecker import complaints

PLANK = {"length": "120", "width": "10", "count": 40}
EXAMPLE = json.loads(package_text("example_cut.json", "casewright.cutting"))


def write(folder, name, data):
    path = folder / name
    path.write_text(json.dumps(data))
    return str(path)


def test_the_answer_for_machines_stands_up_to_the_checker(tmp_path, capsys):
    status = main(["cut", write(tmp_path, "job.json", EXAMPLE), "--seconds", "0.5", "--json"])

    assert status == 0
    assert complaints(EXAMPLE, json.loads(capsys.readouterr().out)) == []


def test_the_report_says_how_good_the_layout_is_and_in_which_order_it_is_cut(capsys):
    assert main(["cut", "--seconds", "0.2"]) == 0

    out = capsys.readouterr().out
    assert "becomes parts" in out
    assert "Straighten the near edge of the board" in out
    assert "Left to keep" in out
    assert "Proven best" in out or "could save more than" in out


def test_a_part_without_a_place_is_said_by_the_exit_status(tmp_path, capsys):
    part = {"code": "A", "wood": "oak", "class": "4/4", "length": "20", "width": "9"}
    board = {"code": "B", "wood": "oak", "class": "4/4", "length": "30", "width": "6"}
    name = write(tmp_path, "job.json", {"cut_file": 1, "parts": [part], "boards": [board]})

    assert main(["cut", name]) == 1
    assert "NO PLACE for 1 × A: it is 9 in wide" in capsys.readouterr().out


@pytest.mark.parametrize("name", ["gone.json", "photo.json"])
def test_a_file_that_cannot_be_read_leads_to_what_a_cut_file_holds(name, tmp_path, capsys):
    (tmp_path / "photo.json").write_bytes(b"\xff\xd8\xff\xe0")

    status = main(["cut", str(tmp_path / name)])

    assert status == 2
    assert "`casewright cut --schema` says what a cut file holds" in capsys.readouterr().err


def test_too_many_parts_are_refused_in_plain_words(tmp_path, capsys):
    parts = [
        {**PLANK, "code": f"P{number}", "wood": "ash", "class": "4/4", "count": 1} for number in range(5001)
    ]

    status = main(["cut", write(tmp_path, "huge.json", {"cut_file": 1, "parts": parts})])

    assert status == 2
    assert "parts: this holds 5001 entries; at most 5000" in capsys.readouterr().err


def test_stock_may_stand_in_a_file_of_its_own(tmp_path, capsys):
    parts = write(tmp_path, "parts.json", {key: EXAMPLE[key] for key in ("cut_file", "parts", "sets")})
    stock = write(
        tmp_path, "rack.json", {key: EXAMPLE[key] for key in ("cut_file", "boards", "sheets", "lengths")}
    )

    assert main(["cut", parts, "--stock", stock, "--seconds", "0.2", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["complete"]


def test_a_unit_file_is_cut_from_the_stock_beside_it(tmp_path, capsys):
    unit = tmp_path / "chest.json"
    unit.write_text(package_text("example_unit.json"))
    stock = write(
        tmp_path,
        "rack.json",
        {
            "cut_file": 1,
            "boards": [
                {
                    "code": f"{wood}{bought}",
                    "wood": wood,
                    "class": bought,
                    "length": "120",
                    "width": "10",
                    "count": 40,
                }
                for wood in ("walnut", "soft maple, quartersawn", "poplar")
                for bought in ("4/4", "5/4", "8/4")
            ],
            "sheets": [
                {"code": "P", "wood": "1/4 in birch plywood", "length": "96", "width": "48"},
                {"code": "Q", "wood": "1/4 in hardwood plywood", "length": "96", "width": "48"},
            ],
        },
    )

    assert main(["cut", str(unit), "--stock", stock, "--seconds", "1", "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert sum(len(board["parts"]) for lot in answer["lots"] for board in lot["layouts"]) > 40


def test_a_unit_file_alone_is_told_what_it_lacks(tmp_path, capsys):
    unit = tmp_path / "chest.json"
    unit.write_text(package_text("example_unit.json"))

    assert main(["cut", str(unit)]) == 2
    assert "give --stock FILE" in capsys.readouterr().err


def test_every_board_is_drawn_and_every_length_that_is_cut_otherwise(tmp_path, capsys):
    assert main(["cut", "--seconds", "0.2", "--json", "--svg", str(tmp_path / "drawn")]) == 0

    lots = json.loads(capsys.readouterr().out)["lots"]
    boards = [board for lot in lots for board in lot["layouts"]]
    bars = {
        (bar["stock"], tuple(part["code"] for part in bar["parts"])) for lot in lots for bar in lot["lengths"]
    }
    files = list((tmp_path / "drawn").glob("*.svg"))
    assert len(files) == len(boards) + len(bars)
    assert min(len(boards), len(bars)) > 0
    assert all(path.read_text().startswith("<?xml") for path in files)


def test_the_schema_is_printed_alone(capsys):
    assert main(["cut", "--schema"]) == 0

    assert json.loads(capsys.readouterr().out)["title"] == "CutFile"


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        (["--seconds", "-1"], "give 0 to 600 seconds"),
        (["--seconds", "soon"], "give 0 to 600 seconds"),
        (["nowhere.json"], "nowhere.json cannot be read"),
    ],
)
def test_what_cannot_be_used_is_said_in_one_sentence(typed, words, capsys):
    assert main(["cut", *typed]) == 2

    assert words in capsys.readouterr().err


def test_other_commands_do_not_wait_for_the_compiler_of_this_one():
    heavy = "{'numba', 'highspy', 'numpy'}"
    code = f"import casewright.cli, sys; casewright.cli.parser(); print({heavy} & {{*sys.modules}})"

    surroundings = os.environ | {"PYTHONPATH": str(Path(casewright.__file__).parents[1])}
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, env=surroundings
    )

    assert done.stdout.strip() == "set()"
