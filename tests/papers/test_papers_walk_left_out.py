"""Every dovetail card of a drawer has the walk drawn, or says that there was no room for it."""

import pytest

from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_pdf
from printed import alternatives_of, head, text_of
from units import built, chest, dresser

LEFT_OUT = "The walk is not drawn: there is no room to read it here."


@pytest.mark.parametrize("tails", [8, 14])
def test_a_walk_is_drawn_or_said_to_be_left_out(tails):
    rows = [{"height": "40", "front_tails": tails, "back_tails": tails}]
    paper = joint_cards_paper(head(), [built(chest({"rows": rows, "body.opening_total": "40"}))])
    pdf = joint_cards_pdf(paper)

    drawn = [each for each in alternatives_of(pdf) if each.startswith("The walk with the dividers")]
    walks = len(paper.cards) + sum(1 for card in paper.others if card.walk)
    assert len(drawn) + text_of(pdf).count(LEFT_OUT) == walks


def test_the_worked_dresser_leaves_no_walk_of_its_drawers_out():
    paper = joint_cards_paper(head(), [built(dresser())])
    pdf = joint_cards_pdf(paper)

    drawn = [each for each in alternatives_of(pdf) if each.startswith("The walk with the dividers:")]
    assert len(drawn) == len(paper.cards)
