"""Rough sizes and orders of worked dresser A and worked bedside B, part by part."""

import math

import pytest

from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.rough import boards_in_panel, rough_length, rough_width
from casewright.wood.species import wood
from casewright.wood.tally import board_feet
from casewright.wood.thickness import resaw_class, thickness_class
from casewright.wood.waste import PartUse, order_feet, waste_for

# worked dresser A and worked bedside B: part, pieces, finished thickness, width and length; and what is
# printed: class, boards, rough width and length, rough board feet
PARTS = [
    ("A T1", 1, 7 / 8, 20.5, 41, "5/4", 4, 22, 42, 8.02),
    ("A C1", 2, 3 / 4, 19.75, 39.5, "4/4", 4, 21.25, 40.5, 11.95),
    ("A C2", 1, 3 / 4, 3, 39, "4/4", 1, 3.25, 40, 0.90),
    ("A C3", 4, 3 / 4, 3, 38.5, "4/4", 1, 3.25, 39.5, 3.57),
    ("A C4", 1, 3 / 4, 3, 6, "4/4", 1, 3.25, 7, 0.16),
    ("A C5", 1, 3 / 4, 1.5, 39, "4/4", 1, 1.75, 40, 0.49),
    ("A B1", 1, 3 / 4, 4, 39.5, "4/4", 1, 4.25, 40.5, 1.20),
    ("A B2", 2, 3 / 4, 4, 19.75, "4/4", 1, 4.25, 20.75, 1.22),
    ("A F1", 2, 13 / 16, 5 + 27 / 64, 18.5625, "4/4", 1, 5 + 43 / 64, 19.5625, 1.54),
    ("A F2", 1, 13 / 16, 6 + 11 / 64, 37.9375, "4/4", 1, 6 + 27 / 64, 38.9375, 1.74),
    ("A F3", 1, 13 / 16, 6 + 29 / 32, 37.9375, "4/4", 1, 7 + 5 / 32, 38.9375, 1.94),
    ("A F4", 1, 13 / 16, 7 + 21 / 32, 37.9375, "4/4", 1, 7 + 29 / 32, 38.9375, 2.14),
    ("A F5", 1, 13 / 16, 8 + 13 / 32, 37.9375, "4/4", 1, 8 + 21 / 32, 38.9375, 2.34),
    ("A S1", 4, 1 / 2, 5 + 27 / 64, 18.5625, "4/4", 1, 5 + 43 / 64, 19.5625, 3.08),
    ("A K4", 1, 1 / 2, 6 + 29 / 32, 37.9375, "4/4", 1, 7 + 5 / 32, 38.9375, 1.94),
    ("A M1", 4, 5 / 8, 2, 18.1875, "4/4", 1, 2.25, 19.1875, 1.20),
    ("A N1", 2, 3 / 8, 18.1875, 18, "4/4", 3, 19 + 7 / 16, 19, 5.13),
    ("A N2", 8, 3 / 8, 18.1875, 17 + 29 / 32, "4/4", 3, 19 + 7 / 16, 18 + 29 / 32, 20.42),
    ("A C6", 1, 3 / 4, 17.75, 39, "4/4", 3, 19, 40, 5.28),
    ("A W4", 3, 3 / 4, 2.5, 14.125, "4/4", 1, 2.75, 15.125, 0.87),
    ("B T1", 1, 3 / 4, 16, 20, "4/4", 3, 17.25, 21, 2.52),
    ("B L1", 4, 1.5, 1.5, 25.25, "8/4", 1, 1.75, 26.25, 2.55),
    ("B A1", 2, 3 / 4, 5.5, 13.5, "4/4", 1, 5.75, 14.5, 1.16),
    ("B R1", 1, 3 / 4, 1.5, 16.25, "4/4", 1, 1.75, 17.25, 0.21),
    ("B S1", 2, 3 / 8, 3.9375, 13.0625, "4/4", 1, 4.1875, 14.0625, 0.82),
    ("B X1", 2, 3 / 8, 0.625, 12.5, "4/4", 1, 0.875, 13.5, 0.16),
]
COLUMNS = [
    "part",
    "pieces",
    "thickness",
    "width",
    "length",
    "class_name",
    "boards",
    "over_width",
    "over_length",
    "feet",
]


@pytest.mark.parametrize(COLUMNS, PARTS, ids=[row[0] for row in PARTS])
def test_a_part_is_cut_and_counted_as_printed(
    part: str,
    pieces: int,
    thickness: float,
    width: float,
    length: float,
    class_name: str,
    boards: int,
    over_width: float,
    over_length: float,
    feet: float,
) -> None:
    bought = thickness_class(thickness)

    wide, long = rough_width(width, boards), rough_length(length)

    assert (bought.name, wide, long) == (class_name, over_width, over_length), part
    # two printed decimals
    assert pieces * board_feet(bought.rough, wide, long) == pytest.approx(feet, abs=0.006)


# worked dresser A and worked bedside B: panels and the boards that they are glued up from
@pytest.mark.parametrize(
    ("part", "name", "width", "boards"),
    [
        ("A T1", "cherry", 20.5, 4),
        ("A C1", "cherry", 19.75, 4),
        ("A N1", "poplar", 18.1875, 3),
        ("A C6", "poplar", 17.75, 3),
        ("B T1", "walnut", 16, 3),
    ],
)
def test_a_panel_is_glued_up_from_as_many_boards_as_printed(
    part: str, name: str, width: float, boards: int
) -> None:
    assert boards_in_panel(width, wood(name).average_board_width) == boards, part


def test_check_k24_two_case_sides_of_four_boards_each() -> None:
    boards = boards_in_panel(19.75, wood("cherry").average_board_width)

    feet = board_feet(1, rough_width(19.75, boards), rough_length(39.5))

    # 21.25 * 40.5 / 144 = 5.977 each
    assert boards == 4
    assert feet == pytest.approx(5.977, abs=0.0005)


def test_check_k25_a_top_of_five_quarter_stock() -> None:
    bought = thickness_class(7 / 8)

    feet = board_feet(bought.rough, rough_width(20.5, 4), rough_length(41))

    # 1.25 * 22 * 42 / 144 = 8.02
    assert bought.name == "5/4"
    assert feet == pytest.approx(8.02, abs=0.005)


# worked dresser A, worked bedside B and rough feet, and what is ordered
@pytest.mark.parametrize(
    ("name", "use", "rough", "ordered"),
    [
        ("cherry", PartUse.CASE, 19.49, 24.36),
        ("cherry", PartUse.SEQUENCE, 9.69, 13.84),
        ("cherry", PartUse.CASE, 8.02, 10.03),
        ("poplar", PartUse.INSIDE, 51.47, 60.55),
        ("soft maple", PartUse.DRAWER, 21.15, 24.88),
        ("hard maple", PartUse.DRAWER, 2.21, 2.60),
        ("walnut", PartUse.CASE, 4.81, 6.41),
        ("walnut", PartUse.SEQUENCE, 0.46, 0.66),
        ("walnut", PartUse.LEG, 2.55, 3.40),
    ],
)
def test_an_order_is_the_rough_feet_over_what_waste_leaves(
    name: str, use: PartUse, rough: float, ordered: float
) -> None:
    waste = waste_for(wood(name), GradeName.FAS, use, Cut.FLAT)

    # the printed feet have two decimals
    assert order_feet(rough, waste) == pytest.approx(ordered, abs=0.006)


def test_check_k26_waste_is_not_added_on() -> None:
    ordered = order_feet(19.49, waste_for(wood("cherry"), GradeName.FAS, PartUse.CASE))

    # 19.49 / 0.80 = 24.36; 19.49 * 1.20 = 23.39 is the common slip
    assert ordered == pytest.approx(24.36, abs=0.005)
    assert ordered > 23.39


def test_the_cherry_of_the_dresser_is_ordered_in_whole_feet() -> None:
    case = order_feet(19.49, waste_for(wood("cherry"), GradeName.FAS, PartUse.CASE))
    fronts = order_feet(9.69, waste_for(wood("cherry"), GradeName.FAS, PartUse.SEQUENCE))

    # worked dresser A: 24.36 + 13.84 = 38.20, so 39
    assert math.ceil(case + fronts) == 39


def test_half_inch_sides_come_two_from_one_six_quarter_board() -> None:
    # worked dresser A: the other way to buy its sides and backs
    resaw = resaw_class(1 / 2)

    assert resaw.bought.name == "6/4"
    assert resaw.saves
