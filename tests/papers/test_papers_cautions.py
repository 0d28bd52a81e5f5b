"""Cautions stand where the work is planned, and only those for the tools that it asks for."""

import re

import pytest

from casewright.cli import main
from casewright.joinery.kinds import kinds
from casewright.papers.bench import Tool, benches, tools_for
from casewright.papers.cautions import LAST, cautions_at, joint_cautions
from casewright.papers.joint_cards_pdf import joint_cards_pdf
from joints import example
from printed import cards, pages_of, printed_cards

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


def pointed_at(page):
    """The tools that a card points to the cautions for, and the page that they are said to stand on."""
    found = re.search(r"Cautions for ([a-z, ]+): page (\d+)", page)
    return (found[1].split(", "), int(found[2])) if found else None


def test_each_card_of_a_set_names_its_own_tools_and_the_page_with_their_cautions():
    pages = pages_of(printed_cards())

    on = next(number for number, page in enumerate(pages, start=1) if "Chisels: both hands" in page)
    heads = {card.title: card.kind for card in (*cards().cards, *cards().others)}
    for title, kind in heads.items():
        page = next(each for each in pages if title in each and "Cautions for" in each)
        tools, where = pointed_at(page)
        assert where == on
        assert set(tools) == tools_for([kind]), title
    assert sum("Cautions for" in page for page in pages) == len(cards().cards) + len(cards().others)


def test_dovetails_print_no_machine():
    pages = pages_of(printed_cards())

    held = [page for page in pages if "dovetail, drawer" in page and "Cautions for" in page]
    assert held
    for page in held:
        assert not {"router", "grooving blade", "mortiser"} & set(pointed_at(page)[0])


def test_a_set_without_drawers_points_to_its_last_page():
    paper = cards()
    case_only = paper.model_copy(update={"cards": (), "gauges": ()})

    pages = pages_of(joint_cards_pdf(case_only))

    assert "Chisels: both hands" in pages[-1]
    assert {pointed_at(page)[1] for page in pages if "Cautions for" in page} == {len(pages)}


def test_cards_from_before_that_say_their_cautions_themselves_point_nowhere():
    before = [card.model_copy(update={"kind": ""}) for card in cards().cards]
    paper = cards().model_copy(update={"cards": tuple(before), "gauges": ()})

    pages = pages_of(joint_cards_pdf(paper))

    assert "Chisels: both hands" in " ".join(pages)
    assert not any("Cautions for" in page for page in pages)


def test_the_other_papers_keep_their_own():
    assert [line.partition(":")[0] for line in cautions_at("saw", ["cherry"])[:-1]] == [
        "Machines",
        "Wood dust",
    ]
    assert any("A1" in line for line in cautions_at("order", ["white oak"]))
    assert not any("A1" in line for line in cautions_at("order", ["cherry"]))
