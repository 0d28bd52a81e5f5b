"""The joint card: what is set on the gauge closes the joint, and the wrong value is struck out."""

from functools import cache

import pytest

from casewright.papers.joint_cards import DividerCard, JointCardsPaper, SizeRow, joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_pdf
from casewright.papers.pdf import Paper
from casewright.pieces.built.gauges_to_set import gauges_to_set
from casewright.pieces.built.joints import other_joints
from printed import (
    METRIC,
    alternatives_of,
    cards,
    head,
    letters_of,
    long_job,
    pages_of,
    printed_cards,
    read,
    tags_of,
    text_of,
)
from units import built, chest, dresser

J1 = "worked joint J1"
SHEET = 2
"""The first sheet of a set has the gauges on its front, cautions and the list of cards on its back."""


@pytest.fixture(scope="module")
def row_5() -> str:
    """The words of the card for the lowest front of worked dresser A."""
    return next(
        page for page in pages_of(printed_cards()) if "Half-blind" in page and "Serves A-R5-1-F" in page
    )


@pytest.mark.parametrize(
    "figure",
    [
        "Gauge 1 5/8 in 15.9 mm",
        "Gauge 2 7/16 in 11.1 mm not 1/2",
        "Tails 5",
        "Half pin 1/8 3.2 mm",
        "Dividers 1-21/32 42.1 mm",
        "Past the mark 1/8 3.2 mm",
        "Slope 1:8 7.1°",
        "Lap 3/16 4.8 mm · index 21.3",
        "Rabbet, wide × deep 5/8 × 1/16",
        "Chisel, sockets 1-1/4 31.8 mm",
        "Chisel, between tails 1/4 6.4 mm",
        "close the dividers by 0.0031 in",
        "Serves A-R5-1-F, A-R5-1-SL, A-R5-1-SR.",
    ],
)
def test_a_card_prints_the_settings_of_the_worked_joint(row_5, figure):
    assert figure in row_5, J1


@pytest.mark.parametrize(
    "tail",
    [
        "1 1/8 3.2 1-21/32 42.1 13/64 5.2 1-37/64 40.1",
        "2 1-25/32 45.2 3-5/16 84.1 1-55/64 47.2 3-15/64 82.2",
        "3 3-7/16 87.3 4-31/32 126.2 3-33/64 89.3 4-57/64 124.2",
        "4 5-3/32 129.4 6-5/8 168.3 5-11/64 131.4 6-35/64 166.3",
        "5 6-3/4 171.5 8-9/32 210.3 6-53/64 173.4 8-13/64 208.4",
    ],
)
def test_a_card_prints_every_tail_of_the_worked_joint_from_the_bottom_edge(row_5, tail):
    assert tail in row_5, J1


def test_a_card_says_what_the_full_thickness_of_the_side_would_do(row_5):
    assert "Struck out is the full thickness. Every socket would be 1/16 in too deep" in row_5


def test_figures_are_large_enough_for_arms_length():
    letters = letters_of(printed_cards())
    sizes = {each.text: each.size for each in letters if each.size >= 24}

    wanted = {"5/8", "7/16", "1/2", "1-21/32", "6-53/64", "8-13/64", "3/16", "1-1/4", "1:8"}
    assert wanted <= sizes.keys()
    assert sizes["7/16"] >= 48


def test_back_cards_are_measured_from_the_side_and_strike_nothing_out_where_there_is_no_rabbet():
    page = next(page for page in pages_of(printed_cards()) if "Through" in page and "Serves A-R5-1-B" in page)

    assert "Gauge for the side 1/2 in 12.7 mm" in page
    assert "Dividers ≈1-31/64 37.6 mm" in page
    assert "13/16 20.6" in page  # worked joint J3: its first tail, 5/8 added for the back's height
    assert "Struck out" not in page


def test_drawers_of_one_joint_share_a_card():
    fronts = [card for card in cards().cards if card.title.startswith("Half-blind")]

    assert fronts[0].drawers == ("A-R1-1", "A-R1-2")
    assert [drawer for card in fronts for drawer in card.drawers] == [
        "A-R1-1",
        "A-R1-2",
        "A-R2-1",
        "A-R3-1",
        "A-R4-1",
        "A-R5-1",
    ]


def test_sides_of_uneven_thickness_get_a_card_for_each_gauge_setting():
    sides = {"R5-1-SL": {"in_rabbet": "0.43"}, "R5-1-SR": {"in_rabbet": "0.47"}}
    paper = joint_cards_paper(head(), [built(dresser({"measured.parts": sides}))])

    settings = [
        (card.gauges[1].value_in, card.parts)
        for card in paper.cards
        if card.drawers == ("A-R5-1",) and card.title.startswith("Half-blind")
    ]

    assert settings == [(0.43, ("A-R5-1-F", "A-R5-1-SL")), (0.47, ("A-R5-1-F", "A-R5-1-SR"))]
    assert "Gauge 2 ≈7/16 in 0.430 in · 10.9 mm" in text_of(joint_cards_pdf(of_row_5(paper)))


def of_row_5(paper: JointCardsPaper) -> JointCardsPaper:
    """The cards for the lowest drawer alone: to read one takes as long as to print it."""
    own = tuple(card for card in paper.cards if "A-R5-1" in card.drawers)
    return paper.model_copy(update={"cards": own, "others": ()})


def test_a_check_that_stops_the_joint_is_on_its_card():
    paper = joint_cards_paper(head(), [built(dresser({"drawers.lap": "1/16"}))])

    assert "Stop: The lap" in text_of(joint_cards_pdf(of_row_5(paper)))


def test_every_joint_of_the_case_and_every_bottom_has_a_card():
    paper = cards()
    text = text_of(joint_cards_pdf(paper))

    assert [card.title for card in paper.others] == [each.title for each in other_joints(built(dresser()))]
    for card in paper.others:
        assert card.title in text, card.title
        assert card.drawing
    assert "tail board: A-C-RF, A-C-RB" in text
    assert "Gap at the shoulder" in text


def test_the_card_of_the_dividers_has_the_story_stick():
    unit = built(dresser({"case.divider_end": "sliding dovetail"}))

    [card] = [card for card in joint_cards_paper(head(), [unit]).others if card.kind == "sliding"]

    assert "10, 18-1/2, 26-1/4, 33-1/4, from the underside of the case bottom" in card.advice[0]
    settings = {each.label: each.value for each in card.settings}
    assert settings["Tail at its tip"] == 0.625
    assert settings["Tail at its neck"] == pytest.approx(0.5417, abs=5e-5)


def test_a_paper_from_before_keeps_the_card_of_its_dividers():
    kept = DividerCard(
        unit_code="A",
        sizes=(SizeRow(name="Tail at its tip", values_in=(0.625,)),),
        slope=6,
        tops_in=(10, 18.5),
        warned=(),
    )
    before = cards().model_copy(update={"dividers": (kept,), "others": ()})

    [page] = pages_of(joint_cards_pdf(before), last=1)

    assert "Sliding dovetails of the dividers, unit A" in page
    assert "18-1/2" in page


def test_a_metric_card_prints_millimetres_large():
    letters = letters_of(joint_cards_pdf(of_row_5(cards(**METRIC)), Paper.A4))

    large = {each.text for each in letters if each.size >= 24}
    assert {"15.9", "11.1", "12.7", "42.1", "173.4"} <= large


def test_each_drawing_has_words_for_those_who_cannot_see_it():
    paper = cards()
    pdf = joint_cards_pdf(paper)

    words = alternatives_of(pdf)
    of_drawers = [each for each in words if each.startswith("The walk with the dividers:")]
    of_the_case = [each for each in words if each.startswith("The walk with the dividers, move by move")]
    assert len(of_drawers) == len(paper.cards)
    assert len(of_the_case) == sum(1 for card in paper.others if card.walk)
    drawings = len(paper.cards) + len(of_drawers) + len(paper.others) + len(of_the_case)
    assert len(words) == drawings == tags_of(pdf).count("Figure")


@pytest.mark.parametrize(("changes", "paper"), [({}, Paper.LETTER), (METRIC, Paper.A4)])
def test_the_walk_is_drawn_on_a_card_without_another_sheet(changes, paper):
    drawn = cards(**changes).model_copy(update={"others": ()})
    without = drawn.model_copy(
        update={"cards": tuple(card.model_copy(update={"walk_drawing": ""}) for card in drawn.cards)}
    )
    with_walks, plain = joint_cards_pdf(drawn, paper), joint_cards_pdf(without, paper)

    walks = [each for each in alternatives_of(with_walks) if each.startswith("The walk with the dividers")]
    assert len(walks) == len(drawn.cards)
    assert not any(each.startswith("The walk") for each in alternatives_of(plain))
    assert len(read(with_walks).pages) == len(read(plain).pages)


def test_cards_that_were_kept_before_walks_were_drawn_are_printed_as_they_were():
    kept = of_row_5(cards()).model_dump(mode="json")
    for card in kept["cards"]:
        del card["walk_drawing"]
    old = JointCardsPaper.model_validate(kept)

    assert "step up 5×" in text_of(joint_cards_pdf(old))


def test_the_usual_caution_for_chisels_is_on_the_cards():
    assert "Chisels: both hands behind the edge" in text_of(printed_cards())


def test_a_joint_of_very_many_tails_runs_on_with_its_head_repeated():
    wide = chest({"rows": [{"height": "40", "front_tails": 30}], "body.opening_total": "40"})
    pages = pages_of(joint_cards_pdf(joint_cards_paper(head(), [built(wide)])))

    assert [page.count("Tail Lower, at the end") for page in pages[SHEET:][:2]] == [1, 1]


@cache
def of_three_to_nine_tails():
    """A unit of seven drawers, whose fronts and backs have three to nine tails."""
    heights = ("4", "5", "6", "7", "8", "9-1/4", "10-1/4")
    rows = [
        {"height": height, "front_tails": tails, "back_tails": tails}
        for tails, height in enumerate(heights, start=3)
    ]
    return built(chest({"rows": rows, "body.opening_total": "49-1/2"}))


@pytest.mark.parametrize("unit", [{}, METRIC], ids=["inches", "millimetres"])
@pytest.mark.parametrize("paper", list(Paper))
def test_each_card_is_one_sheet_with_words_and_a_drawing_on_its_back(paper, unit):
    held = joint_cards_paper(head(**unit), [of_three_to_nine_tails()])
    assert [len(card.tails) for card in held.cards] == [*range(3, 10), *range(3, 10)]

    pages = pages_of(joint_cards_pdf(held, paper))[SHEET:][: 2 * len(held.cards)]

    fronts = [page.partition("Serves")[2].partition(",")[0].strip() for page in pages[::2]]
    assert fronts == [card.parts[0] for card in held.cards]
    assert [page for page in pages[1::2] if "put together and drawn apart" not in page] == []


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("tails", [10, 14, 20, 30])
def test_no_side_of_a_card_of_many_tails_is_blank(paper, tails):
    rows = [{"height": "40", "front_tails": tails, "back_tails": tails}]
    wide = built(chest({"rows": rows, "body.opening_total": "40"}))

    pages = pages_of(joint_cards_pdf(joint_cards_paper(head(), [wide]), paper))[SHEET:]

    assert min(map(len, pages)) > 300  # the foot alone has 80


def test_no_side_of_a_card_of_the_case_is_blank():
    units = [built(dresser({"case.divider_end": "sliding dovetail"}))]

    pages = pages_of(joint_cards_pdf(joint_cards_paper(head(), units)))

    assert min(map(len, pages)) > 150  # the foot alone has 80


def test_kept_cards_print_the_same_bytes_years_later():
    held = cards(long_job())

    again = JointCardsPaper.model_validate_json(held.model_dump_json())

    assert joint_cards_pdf(again) == joint_cards_pdf(held)


def test_behind_a_show_front_the_joint_is_cut_on_the_front_of_the_box():
    made = built(chest({"drawers.style": {"kind": "full overlay"}}))

    paper = joint_cards_paper(head(), [made])

    fronts = [card for card in paper.cards if card.title.endswith("drawer front")]
    assert {code.rpartition("-")[2] for card in fronts for code in card.parts} == {"BF", "SL", "SR"}
    served = " ".join(strip.serves for strip in paper.strips if "front" in strip.title)
    assert "A-R1-1-BF" in served
    gauges = {each.name: each.serves for each in gauges_to_set(made)}
    assert "A-R1-1-BF" in gauges["Gauge 1"]
    all_served = {code for codes in gauges.values() for code in codes}
    assert not {each.code + "-F" for each in made.drawers} & all_served
