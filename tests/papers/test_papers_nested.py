"""The papers and drawings of a piece whose columns have rows of their own: a desk with two pedestals."""

import re
from functools import cache

import pytest

from casewright.drawing.elevation import elevation
from casewright.drawing.section import section
from casewright.drawing.small import small_elevation
from casewright.papers.cut_list import cut_list_paper
from casewright.papers.cut_list_pdf import cut_list_pdf
from casewright.papers.data import unit_data
from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_pdf
from casewright.papers.kept_strips import story_sticks
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.estimate import estimate
from casewright.pieces.words.describe import describe
from printed import head, pages_of, text_of
from units import TODAY, built, chest


@cache
def desk():
    return estimate(preset("desk-pedestals").spec(), example_shop(), TODAY)


@cache
def sideboard():
    return built(preset("sideboard").spec_json)


def lettered(drawn):
    """Everything that is lettered on a drawing."""
    return re.findall(r"<text[^>]*>([^<]*)</text>", drawn.svg())


@pytest.mark.parametrize("made", [lambda: desk().unit, sideboard], ids=["desk", "sideboard"])
def test_every_opening_has_its_code_on_the_front(made):
    unit = made()

    words = " ".join(lettered(elevation(unit)))
    openings = [opening.code for opening in (*unit.face.openings, *unit.face.spaces)]
    assert [code for code in openings if code not in words] == []


def test_each_stack_has_a_chain_of_its_own_heights():
    drawn = elevation(desk().unit)

    words = lettered(drawn)
    # both banks are alike, and share one
    assert "R2-1, R2-3" in words
    assert [size for size in ("3-11/16", "4-7/16", "11") if size not in words] == []
    assert "opening height of row 2-1-3 11" in drawn.description


@pytest.mark.parametrize(("hinged", "at_left"), [("left", True), ("right", False)])
def test_the_dashed_lines_of_a_door_meet_at_its_hinges(hinged, at_left):
    # common practice of technical drawing: the apex lies at the hinge side
    rows = [{"height": "5"}, {"across": [{"holds": "doors", "leaves": 1, "hinged": hinged}]}]
    drawn = elevation(built(chest({"rows": rows})))

    dashed = drawn.svg().partition('class="hidden"')[2].partition("</g>")[0]
    (lower, apex, upper) = re.search(r'points="([^"]+)"', dashed)[1].split()
    across = [float(point.partition(",")[0]) for point in (lower, apex, upper)]
    assert across[0] == across[2]
    assert (across[1] < across[0]) is at_left
    assert f"one door, hinged at the {hinged}" in drawn.description


def test_the_section_is_cut_where_most_drawers_are():
    words = lettered(section(desk().unit))

    assert [code for code in ("R1-1", "R2-1-1-1", "R2-1-2-1", "R2-1-3-1") if code not in words] == []


def test_the_small_front_leaves_the_knee_space_open():
    assert "9 drawers in 7 rows" in small_elevation(desk().unit).description
    assert "3 drawers in 1 row, 3 doors" in small_elevation(sideboard()).description


def test_the_cut_list_and_the_joint_cards_name_partitions_and_their_rails():
    held = desk()

    cut = text_of(cut_list_pdf(cut_list_paper(head(), [(held.unit, held.takeoff)])))
    cards = " ".join(pages_of(joint_cards_pdf(joint_cards_paper(head(), [held.unit]))))
    assert [name for name in ("Partition", "Partition rail", "Case bottom panel") if name not in cut] == []
    assert "Divider rails into the partitions" in cards
    assert "Case bottoms into the partitions" in cards


def test_a_story_stick_of_its_own_is_marked_for_the_stacks_within_columns():
    whole, banks = story_sticks(desk().unit)

    # the underside, a case bottom of 3/4, a drawer of 11, and the divider on it; then 4-7/16 and the next
    edges = [line.start_in[1] for line in banks.lines]
    assert edges == [11.75, 12.5, 16.9375, 17.6875]
    assert banks.serves == "A, R2-1, R2-3"
    assert len(whole.lines) == 2


def test_the_data_has_doors_and_spaces_beside_the_drawers():
    spaces = unit_data(sideboard())["spaces"]

    assert [(each["code"], each["holds"], each["doors"], each["shelves"]) for each in spaces] == [
        ("R2-1", "doors", 1, 1),
        ("R2-2", "doors", 1, 1),
        ("R2-3", "doors", 1, 1),
    ]


def test_it_is_described_as_it_stands():
    drawers = describe(desk().unit)[1]

    assert "from the left, a bank of three drawers, a knee space and a bank of three drawers" in drawers
    assert "below, three doors, with one shelf behind each" in describe(sideboard())[1]
