"""Measuring, grading and sizes of lumber against the rule books and the trade."""

import pytest

from casewright.wood.grades import (
    Cutting,
    GradeName,
    cheapest_grade,
    cutting_units_needed,
    cuttings_allowed,
    grade,
    meets_grade,
)
from casewright.wood.sheets import sheet, sheet_weight
from casewright.wood.softwood import dressed_size
from casewright.wood.tally import YardBoard, board_feet, surface_measure, tallied_feet, tally
from casewright.wood.thickness import class_named
from casewright.wood.waste import mill_waste, order_feet_from_net


@pytest.mark.parametrize(
    ("width", "length", "expected", "source"),
    [
        (6.25, 96, 4, "American Hardwood Export Council, grading guide, measurement"),
        (6.5, 96, 4, "lumber dealer's page applying the NHLA rules"),
        (8, 144, 8, "lumber dealer's page applying the NHLA rules"),
        (10, 156, 11, "lumber dealer's page applying the NHLA rules"),
        (6.4375, 129, 5, "hardwood grading handbook: a board 10 ft 9 in long counts as 10 ft"),
    ],
)
def test_surface_measure_agrees_with_print(width: float, length: float, expected: int, source: str) -> None:
    assert surface_measure(width, length) == expected, source


@pytest.mark.parametrize(
    ("thickness", "width", "length", "expected", "source"),
    [
        (1, 9, 96, 6.0, "woodworking tip sheet"),
        (1.5, 9, 96, 9.0, "woodworking tip sheet"),
        (1.25, 6, 72, 3.75, "tool dealer's lumber guide: 540 / 144"),
        (1, 6, 120, 5.0, "lumber dealer's page"),
        (1, 12, 12, 1.0, "definition: 144 cubic inches"),
    ],
)
def test_board_feet_agree_with_print(
    thickness: float, width: float, length: float, expected: float, source: str
) -> None:
    assert board_feet(thickness, width, length) == expected, source


def test_two_inch_stock_counts_its_surface_twice() -> None:
    # American Hardwood Export Council, grading guide: 2 in by 6-1/4 in by 8 ft is 4 ft surface, 8 board feet
    assert tallied_feet(surface_measure(6.25, 96), 2) == 8


def test_check_k27_six_boards_are_tallied_as_the_yard_does() -> None:
    sizes = [(6.5, 8), (8, 12), (10, 13), (7.25, 10), (9, 10), (5.5, 12)]

    counted = tally(1, [YardBoard(width=width, length=feet * 12) for width, feet in sizes])

    # 7.5 goes up, 5.5 down
    assert [line.counted for line in counted.lines] == [4, 8, 11, 6, 8, 5]
    assert counted.counted == counted.feet == 42
    # 42.2 is printed to one decimal
    assert counted.surface == pytest.approx(42.2, abs=0.05)


# NHLA Rules Book, standard thickness of surfaced lumber, as two trade tables give it
@pytest.mark.parametrize(
    ("name", "surfaced"),
    [
        ("3/8", 3 / 16),
        ("1/2", 5 / 16),
        ("5/8", 7 / 16),
        ("3/4", 9 / 16),
        ("4/4", 13 / 16),
        ("5/4", 1 + 1 / 16),
        ("6/4", 1 + 5 / 16),
        ("7/4", 1 + 1 / 2),
        ("8/4", 1 + 3 / 4),
        ("10/4", 2 + 1 / 4),
        ("12/4", 2 + 3 / 4),
        ("14/4", 3 + 1 / 4),
        ("16/4", 3 + 3 / 4),
    ],
)
def test_surfaced_thickness_is_the_grading_rules(name: str, surfaced: float) -> None:
    assert class_named(name).surfaced == surfaced


def test_five_quarter_walnut_may_come_out_of_the_kiln_at_one_and_three_sixteenths() -> None:
    # NHLA, Standard Kiln Dried Rule, explained on 28 February 2025
    walnut = class_named("5/4")

    assert walnut.rough - walnut.kiln_scant == 1 + 3 / 16


# NHLA grade chart and the export council's summary: surface measure, cuttings allowed, units needed
@pytest.mark.parametrize(
    ("name", "surface", "cuts", "units"),
    [
        (GradeName.FAS, 4, 1, 40),
        (GradeName.FAS, 8, 2, 80),
        (GradeName.FAS, 12, 3, 120),
        (GradeName.FAS, 16, 4, 160),
        (GradeName.FAS, 30, 4, 300),
        (GradeName.COMMON_1, 1, 1, 12),
        (GradeName.COMMON_1, 2, 1, 18),
        (GradeName.COMMON_1, 5, 2, 40),
        (GradeName.COMMON_1, 8, 3, 64),
        (GradeName.COMMON_1, 14, 5, 112),
        (GradeName.COMMON_1, 20, 5, 160),
        (GradeName.COMMON_2A, 1, 1, 8),
        (GradeName.COMMON_2A, 4, 2, 24),
        (GradeName.COMMON_2A, 14, 7, 84),
        (GradeName.COMMON_3A, 9, None, 36),
        (GradeName.COMMON_3B, 9, None, 27),
    ],
)
def test_a_grade_asks_what_the_chart_prints(
    name: GradeName, surface: int, cuts: int | None, units: int
) -> None:
    assert cuttings_allowed(surface, name) == cuts
    assert cutting_units_needed(surface, name) == units


# NHLA grade chart: one cutting more, for a higher yield
@pytest.mark.parametrize(
    ("name", "surface", "cuts", "units"),
    [
        (GradeName.FAS, 8, 3, 88),
        (GradeName.COMMON_1, 8, 4, 72),
        (GradeName.COMMON_2A, 4, 3, 32),
    ],
)
def test_an_extra_cutting_costs_a_higher_yield(name: GradeName, surface: int, cuts: int, units: int) -> None:
    assert cuttings_allowed(surface, name, extra_cut=True) == cuts
    assert cutting_units_needed(surface, name, extra_cut=True) == units


def test_an_eight_foot_board_is_graded_by_its_cuttings() -> None:
    # by hand: 12 in by 8 ft has 8 ft surface; FAS takes 80 units in two cuttings, or 88 in three
    halves = (Cutting(width=5.5, length=96), Cutting(width=4.5, length=96))
    thirds = (Cutting(width=4, length=96), Cutting(width=4, length=96), Cutting(width=4, length=72))

    assert meets_grade(8, halves, GradeName.FAS)
    assert meets_grade(8, thirds, GradeName.FAS)
    assert not meets_grade(8, thirds[:2], GradeName.FAS)
    assert meets_grade(8, thirds[:2], GradeName.COMMON_1)


# NHLA grade chart and the export council's summary
@pytest.mark.parametrize(
    ("name", "width", "feet"),
    [("FAS", 6, 8), ("F1F", 6, 8), ("Selects", 4, 6), ("No. 1 Common", 3, 4), ("No. 2A Common", 3, 4)],
)
def test_a_grade_has_the_least_board_that_the_chart_prints(name: str, width: float, feet: float) -> None:
    assert (grade(name).min_width, grade(name).min_length) == (width, feet * 12)


@pytest.mark.parametrize(
    ("length", "expected", "source"),
    [
        (
            18 + 9 / 16,
            GradeName.COMMON_1,
            "worked dresser A: a drawer side comes out of No. 1 Common cuttings",
        ),
        (39.5, GradeName.SELECTS, "worked dresser A: a case side is longer than 36 in"),
    ],
)
def test_parts_of_the_worked_dresser_get_their_grade(length: float, expected: GradeName, source: str) -> None:
    choice = cheapest_grade(length)

    assert choice.grade is not None
    assert choice.grade.name is expected, source


# American Softwood Lumber Standard, PS 20: dry and green minimum dressed sizes
@pytest.mark.parametrize(
    ("name", "dry", "green"),
    [
        ("1x12", (3 / 4, 11.25), (25 / 32, 11.5)),
        ("1 x 6", (3 / 4, 5.5), (25 / 32, 5.625)),
        ("2x4", (1.5, 3.5), (1 + 9 / 16, 3 + 9 / 16)),
        ("5/4x6", (1, 5.5), (1 + 1 / 32, 5.625)),
        ("1-1/4×6", (1, 5.5), (1 + 1 / 32, 5.625)),
        ("2X10", (1.5, 9.25), (1 + 9 / 16, 9.5)),
        ("4x4", (3.5, 3.5), (3 + 9 / 16, 3 + 9 / 16)),
    ],
)
def test_a_softwood_board_measures_what_the_standard_prints(
    name: str, dry: tuple[float, float], green: tuple[float, float]
) -> None:
    size = dressed_size(name)

    assert (size.thickness, size.width) == dry
    assert (size.green_thickness, size.green_width) == green


def test_a_softwood_board_is_billed_on_its_name() -> None:
    # American Softwood Lumber Standard: a 1x6 of 8 ft is 4 board feet, though it measures 3/4 by 5-1/2
    size = dressed_size("1x6")

    assert board_feet(size.nominal_thickness, size.nominal_width, 96) == 4


# Gene Wengert, FDMC, April 2018: board feet to buy for a hundred of clear parts
@pytest.mark.parametrize(
    ("name", "bought"),
    [
        (GradeName.FAS, 142.9),
        (GradeName.COMMON_1, 169.5),
        (GradeName.COMMON_2A, 232.6),
        (GradeName.COMMON_3A, 333.3),
    ],
)
def test_a_mills_yield_is_a_waste_on_net_feet(name: GradeName, bought: float) -> None:
    # the printed multipliers have three decimals
    assert order_feet_from_net(100, mill_waste(name)) == pytest.approx(bought, abs=0.05)


@pytest.mark.parametrize(
    ("kind", "nominal", "pounds", "source"),
    [
        ("mdf", "3/4", 94.0, "4 by 8 ft at 47 lb per cubic foot, by hand: 32 * 0.0625 * 47"),
        ("birch plywood", "3/4", 62.7, "5 by 5 ft of 18 mm at 680 kg per cubic metre, by hand: 28.5 kg"),
    ],
)
def test_a_sheet_weighs_what_two_people_lift(kind: str, nominal: str, pounds: float, source: str) -> None:
    each = sheet(kind, nominal)

    # 60 in stands for 1525 mm, which is 0.1 % on the weight
    assert sheet_weight(each.width, each.length, each.thickness, each.density) == pytest.approx(
        pounds, abs=0.2
    ), source
