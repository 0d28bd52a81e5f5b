"""The first sheet of a set, the boxes on each, and which printed cards a measured size makes wrong."""

from functools import cache

from casewright.papers.card_standing import cards_standing
from casewright.papers.joint_cards import JointCardsPaper, joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_pdf
from casewright.papers.says import WHOLE, part_facts, says_of
from casewright.records.papers import PaperKind
from printed import head, pages_of
from units import built, chest

ALIKE = {"rows": [{"height": "6"}] * 3, "body.opening_total": "18"}
THIN = {"measured.parts": {"R2-1-SL": {"thickness": "15/32"}}}


@cache
def alike() -> JointCardsPaper:
    """Three drawers of one layout."""
    return joint_cards_paper(head(), [built(chest(ALIKE))])


def now(changes):
    """What the cards would say now."""
    return part_facts(joint_cards_paper(head(), [built(chest({**ALIKE, **changes}))], drawn=False))


def test_the_first_sheet_has_each_gauge_once_with_its_parts_and_the_wrong_setting():
    first = " ".join(pages_of(joint_cards_pdf(alike()))[0].split())

    assert first.count("Gauge 1") == first.count("Gauge 2") == 1
    assert "7/16 in 11.1 mm not 1/2" in first
    assert "A-R1-1-SL SR, A-R2-1-SL SR, A-R3-1-SL SR" in first
    assert "None of them is measured yet: set as drawn." in first
    assert "share a setting, that of the thinnest of them" in first


def test_each_front_card_has_a_box_for_what_is_looked_at_before_marking_out():
    pages = pages_of(joint_cards_pdf(alike()))
    card = " ".join(next(page for page in pages if "Serves A-R1-1-F," in page).split())

    assert "left and right marked on every part" in card
    assert "inside face marked on every part" in card
    assert "bottom edge marked on every part" in card
    assert "no knot or run-out within 1 in of the joint: look before marking" in card


def test_sides_a_64th_apart_leave_one_card():
    sides = {
        f"R{row}-1-{side}": {"thickness": "31/64" if row % 2 else "1/2"}
        for row in (1, 2, 3)
        for side in ("SL", "SR")
    }

    paper = joint_cards_paper(head(), [built(chest({**ALIKE, "measured.parts": sides}))])

    assert [card.drawers for card in paper.cards] == [("A-R1-1", "A-R2-1", "A-R3-1")] * 2
    assert (paper.cards[0].gauges[1].wrong_in, paper.cards[0].gauges[1].also_wrong_in) == (1 / 2, (31 / 64,))


def test_a_card_that_was_measured_says_its_rabbet_as_it_came_out():
    parts = {f"R{row}-1-{side}": {"in_rabbet": "27/64"} for row in (1, 2, 3) for side in ("SL", "SR")}

    card = joint_cards_paper(head(), [built(chest({**ALIKE, "measured.parts": parts}))]).cards[0]

    [rabbet] = [size for size in card.sizes if size.name.startswith("Rabbet")]
    assert rabbet.values_in[1] == 1 / 2 - 27 / 64
    assert rabbet.note == "as measured at A-R1-1-SL; drawn 1/16 deep"


def test_a_measured_side_makes_its_card_wrong_and_leaves_the_others():
    causes = {"A-R2-1": ("side A-R2-1-SL measured 15/32",)}

    front, back, *others = cards_standing(alike(), now(THIN), causes)

    assert [str(line) for line in front.wrong] == [
        "side A-R2-1-SL measured 15/32",
        "A-R2-1-SL: gauge 2 is 13/32 now, here 7/16",
    ]
    assert back.wrong == ()
    # The bottom of the drawer follows its thinner side; nothing of the case does.
    assert [card.title for card in others if card.wrong] == ["Drawer bottom in its grooves"]
    assert [card.drawers for card in others if card.wrong] == [("A-R1-1", "A-R2-1", "A-R3-1")]
    assert any("bottom" in str(line) for line in others[-1].wrong)


def test_a_measured_divider_makes_the_card_of_its_housings_wrong_and_no_other():
    thick = now({"measured.parts": {"D1-RF": {"thickness": "49/64"}}})

    wrong = [card for card in cards_standing(alike(), thick, {}) if card.wrong]

    assert [(card.among, card.title) for card in wrong] == [
        ("other", "Divider rails into the sides, housing")
    ]
    assert "A-D1-RF: housing width is 0.770 now, here 0.754" in str(wrong[0].wrong[0])


def test_a_size_as_drawn_makes_no_card_wrong():
    same = now({"measured.parts": {"R2-1-SL": {"thickness": "1/2", "in_rabbet": "7/16"}}})

    assert {card.wrong for card in cards_standing(alike(), same, {})} == {()}


def test_a_measured_front_makes_its_card_wrong_by_its_lap():
    front, *_ = cards_standing(alike(), now({"measured.parts": {"R1-1-F": {"thickness": "51/64"}}}), {})

    assert [str(line) for line in front.wrong] == ["A-R1-1-F\u00a0SL\u00a0SR: lap is 15/64 now, here 3/16"]


def test_a_drawer_that_is_gone_makes_its_card_wrong():
    gone = {code: facts for code, facts in now({}).items() if "R3-1" not in code}

    front, *_ = cards_standing(alike(), gone, {})

    assert "no longer in the design" in str(front.wrong[0])


def test_what_a_paper_says_is_told_part_by_part():
    before = says_of(PaperKind.JOINT_CARDS, alike().model_dump(mode="json"))
    thin = joint_cards_paper(head(number="P-0008"), [built(chest({**ALIKE, **THIN}))], drawn=False)
    after = says_of(PaperKind.JOINT_CARDS, thin.model_dump(mode="json"))

    differs = {code for code in before if before[code] != after[code]}
    assert differs - {f"A-R2-1-{part}" for part in ("SR", "F", "N")} == {WHOLE, "A-R2-1-SL"}
