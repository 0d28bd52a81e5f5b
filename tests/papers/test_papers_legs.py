"""The papers of a piece on legs: its joint cards, its cut list, its loose templates."""

import pytest

from casewright.papers.cut_list import cut_list_paper
from casewright.papers.cut_list_pdf import cut_list_pdf
from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_pdf, joint_templates_pdf
from casewright.papers.kept_strips import story_stick
from printed import head, pages_of, text_of
from units import bedside, bedside_estimate, built

B = "worked bedside B"


def cards():
    return joint_cards_paper(head(), [bedside_estimate().unit])


@pytest.fixture(scope="module")
def printed_cards():
    return pages_of(joint_cards_pdf(cards()))


@pytest.mark.parametrize(
    ("title", "figures"),
    [
        ("Side and back aprons into the back legs", ["Mitre begins", "27/32", "1-1/16"]),
        ("Side aprons into the front legs", ["Mortise begins", "3/4"]),
        ("Upper front rail into the tops of the front legs", ["16-1/4", "5/8"]),
        ("Lower front rail into the front legs", ["16-1/2", "4-3/4"]),
        ("Drawer bottom in its grooves", ["Slip, length", "12-1/2"]),
    ],
)
def test_each_joint_of_the_legs_has_a_card_with_its_settings(printed_cards, title, figures):
    held = [page for page in printed_cards if title in page]

    assert [page for page in held if all(figure in page for figure in figures)], B


def test_the_cut_list_names_legs_aprons_rails_and_slips():
    held = bedside_estimate()

    words = text_of(cut_list_pdf(cut_list_paper(head(), [(held.unit, held.takeoff)])))

    named = ("Leg, square, then tapered", "Side apron", "Back apron", "Lower front rail", "Slip", "Kicker")
    assert [name for name in named if name not in words] == []


def test_the_templates_of_the_legs_are_printed():
    assert len(pages_of(joint_templates_pdf(cards()))) > 1


def test_a_story_stick_for_legs_is_marked_from_the_aprons():
    stick = story_stick(built(bedside({"rows": [{}, {}], "construction.apron_height": "12"})))

    assert stick is not None
    assert stick.serves == "B, both front legs"
    assert stick.foot == "lower edge of the aprons"
