"""Cautions stand where the work is planned, and only those for the tools that it asks for."""

import pytest

from casewright.cli import main
from casewright.joinery.kinds import kinds
from casewright.papers.bench import Tool, benches, tools_for
from casewright.papers.cautions import LAST, cautions_at, joint_cautions
from joints import example
from printed import cards

FIRST_WORDS = {
    Tool.CHISEL: "Chisels:",
    Tool.HAND_SAW: "Hand saws:",
    Tool.PLANE: "Planes:",
    Tool.ROUTER: "Router or shaper:",
    Tool.GROOVING_BLADE: "Grooving blade at a saw:",
    Tool.DRILL: "Drills:",
    Tool.MORTISER: "Mortisers:",
}
MACHINES = {Tool.ROUTER, Tool.GROOVING_BLADE, Tool.DRILL, Tool.MORTISER}


def test_every_kind_of_joint_says_which_tools_it_asks_for():
    assert set(benches()) == set(kinds())
    assert all(bench.tools for bench in benches().values())


@pytest.mark.parametrize("kind", sorted(kinds()))
def test_what_is_printed_large_is_a_setting_of_that_kind(kind):
    names = {setting.name for setting in example(kind).joint.settings}

    assert set(benches()[kind].large) <= names


@pytest.mark.parametrize("kind", sorted(kinds()))
def test_a_joint_has_the_cautions_for_its_tools_and_no_others(kind):
    tools, said = tools_for([kind]), joint_cautions([kind])

    for tool, words in FIRST_WORDS.items():
        assert any(line.startswith(words) for line in said) == (tool in tools), (kind, tool)
    assert any(line.startswith("Machines:") for line in said) == bool(tools & MACHINES)
    assert said[-1] == LAST
    assert all(line.endswith(")") for line in said[:-1]), "each names its source"


def test_a_dovetail_is_cut_by_hand_and_a_box_joint_by_machine():
    assert tools_for(["through"]) == {Tool.CHISEL, Tool.HAND_SAW}
    assert tools_for(["box"]) == {Tool.ROUTER, Tool.GROOVING_BLADE}


def test_the_command_line_prints_the_cautions_of_a_joint(capsys):
    main(["joint", "box", "--height", "4", "--side", "1/2", "--front", "1/2"])

    said = " ".join(capsys.readouterr().out.split())
    assert "CAUTIONS" in said
    assert "Grooving blade at a saw: only in a saw made for it and where local rules allow it" in said
    assert "manuals, local codes and licensed practice come first" in said
    assert "Chisels" not in said


def test_the_cards_of_a_job_have_the_cautions_for_all_its_joints():
    said = cards().cautions

    kinds_cut = ("half-blind", "through", "carcase", "housing", "frame-tenon", "edge-joint", "bottom-groove")
    assert said == joint_cautions(kinds_cut)
    assert {"Chisels", "Hand saws", "Mortisers"} <= {line.partition(":")[0] for line in said}


def test_the_other_papers_keep_their_own():
    assert [line.partition(":")[0] for line in cautions_at("saw", ["cherry"])[:-1]] == [
        "Machines",
        "Wood dust",
    ]
    assert any("A1" in line for line in cautions_at("order", ["white oak"]))
    assert not any("A1" in line for line in cautions_at("order", ["cherry"]))
