"""The command line as a person uses it: what it prints, where, and with which exit status."""

import json
import os
import re
import shlex
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import jsonschema
import pytest

from casewright.cli import main

ROOT = Path(__file__).resolve().parents[2]
J1 = (
    "--height 8-13/32 --front 13/16 --lap 3/16 --side 1/2 --rabbet 1/16 "
    "--half-pin 1/8 --pin 1/8 --tails 5 --slope 1:8"
)


@pytest.fixture
def chest(capsys, tmp_path):
    """The example unit file, written where a reader would put it, as a dictionary with a way to save it."""
    main(["example"])
    data = json.loads(capsys.readouterr().out)

    def save(**changes):
        path = tmp_path / "my-chest.json"
        path.write_text(json.dumps(data | changes), encoding="utf-8")
        return str(path)

    return save


def test_the_example_is_a_whole_job_without_a_stop(capsys):
    status = main(["estimate"])

    printed = capsys.readouterr().out
    assert status == 0
    for heading in ("OPENINGS", "CUT LIST", "JOINTS", "CHECKS", "LUMBER ORDER", "HOURS", "PRICE", "CAUTIONS"):
        assert heading in printed


def test_the_printed_example_reads_back_to_the_same_answer(capsys, chest):
    main(["estimate", "--json", "--start", "2027-03-01"])
    example = capsys.readouterr().out
    path = chest()

    main(["estimate", path, "--json", "--start", "2027-03-01"])

    assert capsys.readouterr().out == example


def test_the_second_gauge_is_what_is_left_after_the_rabbet(capsys):
    status = main(["joint", "half-blind", *J1.split()])

    printed = capsys.readouterr().out
    assert status == 0
    assert "7/16  not 1/2" in printed
    assert "1-21/32" in printed


def test_a_joint_is_laid_out_for_the_rack_of_a_shop_file(tmp_path, capsys):
    held = tmp_path / "shop.json"
    held.write_text('{"cutters": ["3/16"], "gauges": 1}', encoding="utf-8")

    main(["joint", "half-blind", *J1.split(), "--shop", str(held), "--checks"])
    half_blind = capsys.readouterr().out
    main(["joint", "housing", "--divider", "3/4", "--case-side", "3/4", "--shop", str(held)])

    assert "First mark every piece with Gauge 1" in " ".join(half_blind.split())
    assert "the 3/16 in cutter, in 5 passes" in capsys.readouterr().out


def test_a_joint_for_machines_has_its_settings_and_verdict(capsys):
    main(["joint", "half-blind", *J1.split(), "--json"])

    joint = json.loads(capsys.readouterr().out)
    assert joint["verdict"] == "pass"
    assert joint["settings"]["gauge_2"]["value"] == pytest.approx(0.4375)
    assert joint["settings"]["gauge_2"]["wrong"] == pytest.approx(0.5)
    assert len(joint["positions"]["Positions from the bottom edge"]) == 5


def test_a_box_joint_has_its_positions_on_both_boards(capsys):
    box = ["joint", "box", "--height", "4", "--side", "1/2"]

    main(box)
    table = capsys.readouterr().out
    main([*box, "--json"])
    positions = json.loads(capsys.readouterr().out)["positions"]

    assert re.search(r"^finger 2 +1 +1-1/2$", table, re.MULTILINE)
    assert positions["Fingers of the side, from the bottom edge"][0] == {"lower_in": 0.5, "upper_in": 1.0}
    assert [len(spans) for spans in positions.values()] == [4, 4]


def test_the_order_of_work_at_a_lap_is_printed_and_a_front_without_another_has_a_spare(capsys):
    main(["joint", "half-blind", *J1.split(), "--can-be-replaced", "no"])
    printed = capsys.readouterr().out
    main(["joint", "half-blind", *J1.split(), "--json"])
    advice = json.loads(capsys.readouterr().out)["advice"]

    assert "1. Mill one spare front blank in sequence with the others" in printed
    assert advice[0].startswith("Set the baseline of the tails")


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        (
            "--tails 2.5",
            "--tails: “2.5” will not do; give a whole number of tails, 1 or more; 5 for example.",
        ),
        ("--tails 0", "The tails cannot be 0; give a whole number of tails, 1 or more; 5 for example."),
        ("--can-be-replaced perhaps", "--can-be-replaced: “perhaps” will not do; give yes or no."),
        ("--slope 1:0", "--slope: “1:0” will not do; give a slope such as 1:8."),
        ("--front-gravity heavy", "“heavy” will not do; give a number of 0.1 or more, up to 1.4; 0.50 for"),
        ("--mm --pin 0", "The pin cannot be 0.0 mm; give a size above 0; 3.2 mm for example."),
    ],
)
def test_what_will_not_do_for_a_joint_is_said_with_what_would(capsys, typed, sentence):
    status = main(
        ["joint", "half-blind", "--height", "8-13/32", "--front", "13/16", "--side", "1/2", *typed.split()]
    )

    assert status == 2
    assert sentence in capsys.readouterr().err


def test_what_is_left_out_of_a_joint_is_chosen_and_said(capsys):
    main(["joint", "half-blind", "--height", "8-13/32", "--front", "13/16", "--side", "1/2"])

    printed = capsys.readouterr().out
    assert "LEFT OUT, SO CHOSEN" in printed
    assert "lap: 3/16" in printed
    assert "tails: 5" in printed


def test_a_check_that_stops_is_the_exit_status(capsys):
    status = main(["joint", "half-blind", *J1.replace("--lap 3/16", "--lap 1/16").split()])

    assert status == 1
    assert "stop     JC1" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["joint", "half-blind", "--height", "8 1/0", "--front", "13/16", "--side", "1/2"], "--height"),
        (["joint", "half-blind", "--front", "13/16", "--side", "1/2"], "height is missing"),
        (["joint", "half-blind", *J1.replace("1:8", "8:0").split()], "--slope"),
        (["joint", "half-blind", *J1.replace("--tails 5", "--tails five").split()], "--tails"),
        (["joint", "finger"], "finger"),
        (["estimate", "nowhere.json"], "nowhere.json cannot be read"),
        (["estimate", "--start", "soon"], "--start"),
        (["estimate", "--fraction", "7"], "--fraction"),
        (["estimate", "--why", "the weather"], "the weather"),
        (["estimat"], "estimat"),
        (["estimate", "."], "cannot be read"),
        (["estimate", "a\0b"], "cannot be read"),
    ],
)
def test_what_cannot_be_used_gets_one_sentence_and_status_2(capsys, arguments, words):
    status = main(arguments)

    said = capsys.readouterr()
    assert status == 2
    assert words in said.err
    assert said.out == ""
    assert "Traceback" not in said.err
    assert len(said.err.splitlines()) == 1


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"bodi": {}}, "bodi: this key is not known; did you mean body?"),
        ({"body": {"width": "36", "depth": "1/0", "overall_height": "39"}}, "body.depth"),
        ({"body": {"width": "36", "depth": "19", "overall_height": "6"}}, "rows do not fit in 6 in"),
        ({"rows": []}, "rows"),
        ({"woods": {"case": "walnot", "drawers": "soft maple", "inside": "poplar"}}, "did you mean walnut"),
        ({"measured": {"openings": {"R9-1": {"height": "8"}}}}, "R9-1"),
        ({"measured": {"parts": {"R1-1-XX": {"width": "8"}}}}, "R1-1-XX"),
        ({"case": {"lap": "1"}}, "case.lap"),
        ({"case": {"side": "9"}}, "thick"),
    ],
)
def test_a_file_that_cannot_be_used_names_the_field(capsys, chest, changes, words):
    path = chest(**changes)

    status = main(["estimate", path])

    said = capsys.readouterr().err
    assert status == 2
    assert words.lower() in said.lower()
    assert "Traceback" not in said


def test_a_file_that_is_no_text_is_refused(capsys, tmp_path):
    path = tmp_path / "photo.json"
    path.write_bytes(b"\xff\xd8\xff\xe0")

    status = main(["estimate", str(path)])

    assert status == 2
    assert "is not text" in capsys.readouterr().err


def test_the_schema_accepts_the_example_and_refuses_a_slip(capsys, chest):
    main(["estimate", "--schema"])
    schema = json.loads(capsys.readouterr().out)
    example = json.loads(Path(chest()).read_text(encoding="utf-8"))
    checker = jsonschema.Draft202012Validator(schema)

    assert checker.is_valid(example)
    assert not checker.is_valid(example | {"bodi": {}})


def test_why_follows_a_line_to_what_was_typed(capsys):
    main(["estimate", "--why", "F4"])

    printed = capsys.readouterr().out
    assert "R4-1.height" in printed
    assert "rounded down to 1/64" in printed
    assert "Wood Handbook" in printed
    assert "typed in the unit file" in printed


@pytest.mark.parametrize("name", ["T1", "H-R1-1-SL", "H-R2-1", "R4-1.height", "P04", "price.asked", "C3"])
def test_why_answers_for_lines_parts_drawers_operations_and_figures(capsys, name):
    status = main(["estimate", "--why", name])

    assert status == 0
    assert "source:" in capsys.readouterr().out


def test_the_drawings_are_written_as_whole_files(capsys, tmp_path):
    folder = tmp_path / "new" / "drawings"

    main(["unit", "--svg", str(folder)])

    names = {path.name for path in folder.iterdir()}
    assert {"elevation.svg", "section.svg", "plan.svg", "opened.svg"} <= names
    assert any(name.startswith("joint-") for name in names)
    for path in folder.iterdir():
        assert ElementTree.parse(path).getroot().tag.endswith("svg")  # noqa: S314 - our own file


def test_millimetres_are_printed_when_asked_for(capsys):
    main(["unit", "--mm"])

    printed = capsys.readouterr().out
    assert "Sizes in millimetres" in printed
    assert "914.4 × 482.6" in printed


def test_a_shop_file_changes_the_price(capsys, tmp_path):
    path = tmp_path / "shop.json"
    path.write_text('{"profit": 0.2, "ratios": [1.0, 1.1, 1.2]}', encoding="utf-8")
    main(["estimate", "--json"])
    usual = json.loads(capsys.readouterr().out)["price"]

    main(["estimate", "--json", "--shop", str(path)])

    own = json.loads(capsys.readouterr().out)["price"]
    assert own["rate_cents"] == 12188  # 97.50 / 0.80
    assert own["asked_cents"] > usual["asked_cents"]


def test_a_reader_that_leaves_early_is_no_fault():
    environment = os.environ | {"PYTHONPATH": str(ROOT / "service")}
    command = f"{shlex.quote(sys.executable)} -m casewright estimate | head -n 1"

    done = subprocess.run(  # noqa: S602 - a pipe is the point
        command, shell=True, capture_output=True, text=True, env=environment, check=False
    )

    assert done.returncode == 0
    assert done.stderr == ""


def test_the_readme_s_commands_work(capsys, tmp_path, monkeypatch):
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    from_a_file = text.partition("## From a file")[2]
    lines = [line.split("#")[0].strip() for line in from_a_file.splitlines() if line.startswith("    ./run")]
    monkeypatch.chdir(tmp_path)

    for line in lines:
        command, _, target = line.removeprefix("./run ").partition(" > ")
        status = main(command.split())
        printed = capsys.readouterr()
        assert status == 0, (line, printed.err)
        if target:
            Path(target).write_text(printed.out, encoding="utf-8")
    assert len(lines) >= 10


def test_a_name_cannot_command_the_terminal(capsys, chest):
    path = chest(name="Red \x1b[31m chest \u202e turned")

    main(["unit", path])

    printed = capsys.readouterr().out
    assert "Red \ufffd[31m chest \ufffd turned" in printed
    assert not {"\x1b", "\u202e"} & set(printed)
