"""Moisture, movement and weight against the Wood Handbook and other print."""

import pytest

from casewright.wood.moisture import equilibrium_moisture, furniture_moisture, interiors
from casewright.wood.movement import (
    Cut,
    Direction,
    coefficient_from_shrinkage,
    density,
    gravity_at,
    is_extrapolated,
    movement,
    movement_by_shrinkage,
    plywood_coefficient,
)
from casewright.wood.species import wood, woods

# Wood Handbook, FPL-GTR-190 (2010): shrinkage of Table 4-3 beside the coefficients of Table 13-5
PRINTED_PAIRS = [
    ("black walnut", 5.5, 7.8, 0.00190, 0.00274),
    ("black cherry", 3.7, 7.1, 0.00126, 0.00248),
    ("white ash", 4.9, 7.8, 0.00169, 0.00274),
    ("black ash", 5.0, 7.8, 0.00172, 0.00274),
    ("yellow birch", 7.3, 9.5, 0.00256, 0.00338),
    ("paper birch", 6.3, 8.6, 0.00219, 0.00304),
    ("American beech", 5.5, 11.9, 0.00190, 0.00431),
    ("pecan (hickory, pecan)", 4.9, 8.9, 0.00169, 0.00315),
    ("American sycamore", 5.0, 8.4, 0.00172, 0.00296),
    ("American basswood", 6.6, 9.3, 0.00230, 0.00330),
    ("sassafras", 4.0, 6.2, 0.00137, 0.00216),
    ("butternut", 3.4, 6.4, 0.00116, 0.00223),
    ("red alder", 4.4, 7.3, 0.00151, 0.00256),
    ("American elm", 4.2, 9.5, 0.00144, 0.00338),
    ("slippery elm", 4.9, 8.9, 0.00169, 0.00315),
    ("American chestnut", 3.4, 6.7, 0.00116, 0.00234),
    ("sweetgum", 5.3, 10.2, 0.00183, 0.00365),
    ("hackberry", 4.8, 8.9, 0.00165, 0.00315),
    ("quaking aspen", 3.5, 6.7, 0.00119, 0.00234),
    ("eastern cottonwood", 3.9, 9.2, 0.00133, 0.00327),
]


@pytest.mark.parametrize(("name", "radial", "tangential", "per_radial", "per_tangential"), PRINTED_PAIRS)
def test_the_handbooks_shrinkage_gives_its_own_coefficients(
    name: str, radial: float, tangential: float, per_radial: float, per_tangential: float
) -> None:
    each = wood(name)

    assert (each.shrinkage_radial, each.shrinkage_tangential) == (radial, tangential)
    assert (each.radial, each.tangential) == (per_radial, per_tangential)
    # the table prints five decimals, so the last one may differ by rounding
    assert coefficient_from_shrinkage(radial) == pytest.approx(per_radial, abs=1.0e-5)
    assert coefficient_from_shrinkage(tangential) == pytest.approx(per_tangential, abs=1.0e-5)


# Wood Handbook, FPL-GTR-190 (2010), Table 13-5: these are printed for shrinkage that starts at 22 % moisture
@pytest.mark.parametrize(
    ("name", "per_radial", "per_tangential"),
    [
        ("western redcedar", 0.00111, 0.00234),
        ("redwood", 0.00120, 0.00205),
        ("white cedar", 0.00101, 0.00229),
    ],
)
def test_woods_that_shrink_from_twenty_two_percent_obey_the_same_equation(
    name: str, per_radial: float, per_tangential: float
) -> None:
    each = wood(name)

    assert each.saturation == 22
    # five printed decimals
    assert coefficient_from_shrinkage(each.shrinkage_radial, 22) == pytest.approx(per_radial, abs=1.0e-5)
    assert coefficient_from_shrinkage(each.shrinkage_tangential, 22) == pytest.approx(
        per_tangential, abs=1e-5
    )


@pytest.mark.parametrize(
    ("size", "per_percent", "change", "expected", "tolerance", "source"),
    [
        (
            9.15,
            0.00245,
            3,
            0.067,
            0.0005,
            "Wood Handbook, FPL-GTR-190, chapter 13, example under equation 13-2",
        ),
        (5, 0.00129, 3, 0.019, 0.0005, "NWFA technical publication A200, worked example"),
        (8, 0.0026, 6, 0.1248, 0.0001, "WOOD magazine, September 2021, wood movement chart"),
    ],
)
def test_movement_agrees_with_printed_examples(
    size: float, per_percent: float, change: float, expected: float, tolerance: float, source: str
) -> None:
    # each tolerance is half of the last decimal that is printed
    assert movement(size, per_percent, change) == pytest.approx(expected, abs=tolerance), source


# rpwoodwork.com, 5 and 12 August 2012: from 35 to 80 % humidity at 70 °F
@pytest.mark.parametrize(
    ("name", "size", "cut", "direction", "expected", "tolerance"),
    [
        ("hard maple", 4, Cut.FLAT, Direction.WIDTH, 1 / 8, 0.005),
        ("cherry", 4, Cut.FLAT, Direction.WIDTH, 3 / 32, 0.006),
        ("walnut", 4, Cut.FLAT, Direction.WIDTH, 3 / 32, 0.007),
        ("hard maple", 0.375, Cut.QUARTER, Direction.THICKNESS, 0.012, 0.0005),
    ],
)
def test_a_drawer_moves_from_winter_to_summer_as_a_maker_reports(
    name: str, size: float, cut: Cut, direction: Direction, expected: float, tolerance: float
) -> None:
    change = equilibrium_moisture(70, 80) - equilibrium_moisture(70, 35)

    # the report rounds to a 32nd, and says "about"
    assert movement(size, wood(name).coefficient(cut, direction), change) == pytest.approx(
        expected, abs=tolerance
    )


def test_equation_13_3_agrees_with_13_2_inside_its_range() -> None:
    cherry = wood("cherry")

    by_coefficient = movement(20, cherry.tangential, -2)
    by_shrinkage = movement_by_shrinkage(20, cherry.shrinkage_tangential, 10, 8)

    # both are the same line from 10 % on; the coefficient is printed to five decimals
    assert by_shrinkage == pytest.approx(by_coefficient, abs=0.0005)


@pytest.mark.parametrize(
    ("temperature", "humidity", "expected", "tolerance", "source"),
    [
        (70, 30, 6.0, 0.3, "FDMC, Wood Doctor (Wengert), rounds to whole percents"),
        (70, 50, 9.0, 0.3, "FDMC, Wood Doctor (Wengert), rounds to whole percents"),
        (70, 65, 12.0, 0.2, "FDMC, Wood Doctor (Wengert), rounds to whole percents"),
        (70, 80, 16.0, 0.2, "FDMC, Wood Doctor (Wengert), rounds to whole percents"),
        (140, 55, 8.4, 0.05, "liquisearch.com, equilibrium moisture content: result of the equation"),
        (70, 59, 10.9, 0.2, "FPL report R1903-7 (1951), humidity digit uncertain in the scan"),
        (68, 50, 9.3, 0.05, "Simpson 1998, FPL-RN-0268, equation in Celsius at 20 °C"),
        (70, 45, 8.46, 0.005, "worked with a pencil"),
        (70, 35, 6.94, 0.005, "worked with a pencil"),
        (70, 80, 16.0, 0.05, "worked with a pencil"),
    ],
)
def test_equilibrium_moisture_agrees_with_print(
    temperature: float, humidity: float, expected: float, tolerance: float, source: str
) -> None:
    assert equilibrium_moisture(temperature, humidity) == pytest.approx(expected, abs=tolerance), source


# Wood Handbook, chapter 4: rows of a table computed separately from the equation of Table 4-2, to one decimal
TABLE = [
    (
        30,
        (
            1.4,
            2.6,
            3.7,
            4.6,
            5.5,
            6.3,
            7.1,
            7.9,
            8.7,
            9.5,
            10.4,
            11.3,
            12.4,
            13.6,
            14.9,
            16.5,
            18.5,
            21.0,
            24.3,
        ),
    ),
    (
        70,
        (
            1.3,
            2.5,
            3.5,
            4.5,
            5.4,
            6.2,
            6.9,
            7.7,
            8.5,
            9.2,
            10.1,
            11.0,
            12.0,
            13.1,
            14.4,
            16.0,
            18.0,
            20.5,
            23.9,
        ),
    ),
    (
        100,
        (
            1.2,
            2.3,
            3.3,
            4.2,
            5.0,
            5.8,
            6.5,
            7.2,
            7.9,
            8.7,
            9.5,
            10.3,
            11.2,
            12.3,
            13.6,
            15.1,
            17.0,
            19.5,
            22.9,
        ),
    ),
    (
        140,
        (
            0.9,
            1.9,
            2.8,
            3.6,
            4.3,
            5.0,
            5.7,
            6.3,
            7.0,
            7.7,
            8.4,
            9.1,
            10.0,
            11.0,
            12.2,
            13.6,
            15.4,
            17.7,
            21.0,
        ),
    ),
    (
        200,
        (0.5, 1.1, 1.8, 2.4, 3.0, 3.5, 4.1, 4.7, 5.2, 5.8, 6.4, 7.1, 7.8, 8.7, 9.7, 10.9, 12.5, 14.6, 17.5),
    ),
    (270, (0.1, 0.1, 0.2, 0.3, 0.4, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.2, 1.4, 1.6, 2.0, 2.5, 3.3, 4.5)),
]


@pytest.mark.parametrize(("temperature", "row"), TABLE)
def test_equilibrium_moisture_agrees_with_the_handbooks_table(
    temperature: float, row: tuple[float, ...]
) -> None:
    computed = [equilibrium_moisture(temperature, humidity) for humidity in range(5, 100, 5)]

    # one printed decimal
    assert computed == pytest.approx(row, abs=0.051)


def in_celsius(celsius: float, humidity: float) -> float:
    """Simpson 1998, FPL-RN-0268: the same equation with its own coefficients for Celsius."""
    weight = 349 + 1.29 * celsius + 0.0135 * celsius**2
    x = (0.805 + 0.000736 * celsius - 0.00000273 * celsius**2) * humidity / 100
    one = (6.27 - 0.00938 * celsius - 0.000303 * celsius**2) * x
    two = one * (1.91 + 0.0407 * celsius - 0.000293 * celsius**2) * x
    return 1800 / weight * (x / (1 - x) + (one + 2 * two) / (1 + one + two))


@pytest.mark.parametrize("celsius", [0, 10, 20, 30, 60, 90, 120])
@pytest.mark.parametrize("humidity", [5, 35, 50, 65, 80, 95])
def test_the_coefficients_for_celsius_give_the_same_moisture(celsius: float, humidity: float) -> None:
    # the two published sets were fitted apart, and agree within 0.05 percentage points
    assert equilibrium_moisture(celsius * 1.8 + 32, humidity) == pytest.approx(
        in_celsius(celsius, humidity), abs=0.05
    )


def test_check_k9_a_flat_sawn_maple_front_from_winter_to_summer() -> None:
    first, last = equilibrium_moisture(70, 35), equilibrium_moisture(70, 80)

    grown = movement(4, wood("hard maple").coefficient(Cut.FLAT), last - first)

    # 4 * 0.00353 * 9.06 = 0.128, to the last printed digit; 16 % lies above the range
    assert grown == pytest.approx(0.128, abs=0.0005)
    assert is_extrapolated(first, last)


def test_check_k10_the_thickness_of_a_quartersawn_side_moves_by_the_tangential_figure() -> None:
    maple = wood("hard maple")

    grown = movement(0.375, maple.coefficient(Cut.QUARTER, Direction.THICKNESS), 9.06)

    # 0.375 * 0.00353 * 9.06 = 0.0120
    assert grown == pytest.approx(0.012, abs=0.00005)


def test_check_k33_a_cherry_case_side_shrinks_less_than_the_runners_slack() -> None:
    shrunk = -movement(19.75, wood("cherry").coefficient(Cut.FLAT), 6.2 - 8.5)

    # 19.75 * 0.00248 * 2.3 = 0.113
    assert shrunk == pytest.approx(0.113, abs=0.0005)
    assert shrunk <= 1 / 8


# worked dresser A: weight at 8.5 % moisture, printed to one decimal
@pytest.mark.parametrize(
    ("name", "pounds"),
    [
        ("cherry", 33.9),
        ("walnut", 37.2),
        ("hard maple", 42.7),
        ("soft maple", 36.6),
        ("white oak", 46.0),
        ("red oak", 42.7),
        ("white ash", 40.6),
        ("poplar", 28.4),
        ("white pine", 23.7),
    ],
)
def test_furniture_woods_weigh_what_the_worked_dresser_reckons(name: str, pounds: float) -> None:
    assert wood(name).density(8.5) == pytest.approx(pounds, abs=0.06)


def test_walnut_at_twelve_percent_weighs_thirty_eight_pounds() -> None:
    # Wood Handbook, chapter 4: gravity 0.55 on volume at 12 %; 62.4 * 0.55 * 1.12 = 38.4
    assert density(0.55, 12) == pytest.approx(38.4, abs=0.05)


@pytest.mark.parametrize(
    "each", [each for each in woods() if "imported" not in each.common_name], ids=lambda each: each.name
)
def test_gravity_at_twelve_percent_follows_from_green_gravity(each: object) -> None:
    # Simpson 1993, FPL-GTR-76, is a mean over all woods: single ones of Table 5-3b lie within 0.05 of it
    computed = gravity_at(each.gravity_green, 12)  # type: ignore[attr-defined]

    assert computed == pytest.approx(each.gravity, abs=0.05)  # type: ignore[attr-defined]


# Wood Handbook, FPL-GTR-282 (2021), Table 5-3b: modulus of elasticity at 12 %; imported woods Table 5-5b
@pytest.mark.parametrize(
    ("name", "million_psi"),
    [
        ("poplar", 1.58),
        ("cherry", 1.49),
        ("walnut", 1.68),
        ("hard maple", 1.83),
        ("soft maple", 1.64),
        ("white oak", 1.78),
        ("red oak", 1.82),
        ("white ash", 1.74),
        ("white pine", 1.24),
        ("western redcedar", 1.11),
        ("sapele", 1.82),
        ("teak", 1.55),
    ],
)
def test_stiffness_is_the_handbooks(name: str, million_psi: float) -> None:
    assert wood(name).elasticity == pytest.approx(million_psi * 1e6)


def test_a_four_foot_plywood_panel_moves_a_fiftieth_of_an_inch() -> None:
    # Wood Handbook, chapter 12: 0.0002 per percent; 48 in over 2 percent is 0.019 in
    each, _ = plywood_coefficient()

    assert movement(48, each, 2) == pytest.approx(0.0192, abs=0.00005)


def test_interiors_and_lumber_are_the_handbooks() -> None:
    # Wood Handbook, FPL-GTR-190 (2010), chapter 13, Table 13-2 and the text on furniture
    assert {each.region: each.moisture for each in interiors()} == {
        "most of the United States": 8,
        "dry southwest": 6,
        "humid south and coast": 11,
    }
    assert (furniture_moisture().least, furniture_moisture().most) == (6, 8)
