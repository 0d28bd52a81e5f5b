"""Drawers with boxed and with locked corners, from the file to the report and to the cards at the bench."""

import json

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.papers.data import unit_data
from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_pdf
from casewright.papers.unit_report import cut_list_section, joints_section
from casewright.papers.writing import Writing
from casewright.pieces.asked.reading import read_unit, write_unit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct
from printed import head, pages_of, text_of
from units import chest

BOXED = {
    "drawers.front_joint": {"kind": "box joint", "finger": "1/2", "height": "whole fingers"},
    "drawers.back_joint": {"kind": "as the front"},
    "drawers.groove": {"height": "1/2"},
    "drawers.drop": 0,
    "drawers.bottom": {"kind": "ply", "nominal": "1/4"},
    "drawers.style": {"kind": "half overlay"},
}
LOCKED = {
    "drawers.front_joint": {"kind": "lock rabbet", "lip": "1/4"},
    "drawers.back_joint": {"kind": "housing", "set_in": "3/4"},
}


def made(changes):
    """The unit of a file that was written and read again."""
    spec = read_unit(json.dumps(chest(changes)))
    return construct(read_unit(write_unit(spec)), example_shop())


def report(unit):
    return cut_list_section(unit, Writing()) + joints_section(unit, Writing())


@pytest.fixture(scope="module")
def boxed():
    return made(BOXED)


@pytest.fixture(scope="module")
def locked():
    return made(LOCKED)


def test_the_report_of_a_boxed_drawer_gives_its_fingers(boxed):
    text = report(boxed)

    assert "Drawer front, box joint" in text
    assert "Cutter" in text
    assert "Drawer box front, row 1" in text
    assert "box joint, a finger at the bottom" in text


def test_the_card_of_a_boxed_drawer_prints_the_cutter_and_every_finger(boxed):
    paper = joint_cards_pdf(joint_cards_paper(head(), [boxed]))
    [card, *_] = [page for page in pages_of(paper) if "Drawer front, box joint" in page and "Cutter" in page]

    assert "Cutter 1/2" in card
    assert "A-R1-1-BF" in card
    assert "A-R1-1-SL" in card
    assert "Fingers of the front, from the bottom edge" in card


def test_the_report_of_a_locked_drawer_gives_both_its_joints(locked):
    text = report(locked)

    assert "lock rabbet, tongue" in text
    assert "housing for the back" in text
    assert "Drawer back, housing" in text


def test_the_card_of_a_locked_drawer_prints_lengths_that_the_cut_list_has(locked):
    sizes = locked.drawers[0].sizes
    text = text_of(joint_cards_pdf(joint_cards_paper(head(), [locked])))
    words = Writing()

    assert f"Side length {words.size(sizes.side_length)}" in text
    assert f"Back length {words.size(sizes.back_length)}" in text
    assert "Housing from the end of the side 3/4" in text
    side = next(part for part in locked.parts if part.code == "A-R1-1-SL")
    assert side.length == sizes.side_length


def test_machines_read_the_settings_and_the_front_that_is_seen(boxed):
    [first, *_] = unit_data(boxed)["drawers"]

    assert first["front_joint"]["kind"] == "box"
    assert {each["name"] for each in first["front_joint"]["settings"]} >= {"cutter", "key", "side_length"}
    assert first["face_in"]["before_case"] == 0.75
    assert first["face_in"]["width"] > first["width_in"]


def test_a_metric_card_has_no_inches(locked):
    paper = joint_cards_paper(head().model_copy(update={"unit": LengthUnit.MILLIMETRE}), [locked])

    [card, *_] = [each for each in paper.others if each.title == "Drawer back, housing"]
    assert "1/2" not in " ".join(each.note for each in card.settings)
