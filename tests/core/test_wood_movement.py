"""Moisture, movement and weight: how they behave, whatever the wood."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.moisture import equilibrium_moisture, furniture_moisture, interiors
from casewright.wood.movement import (
    Cut,
    Direction,
    coefficient,
    density,
    is_extrapolated,
    movement,
    movement_by_shrinkage,
    plywood_coefficient,
)

sizes = st.floats(0.25, 60)
coefficients = st.floats(0.0005, 0.005)
moistures = st.floats(0, 30)
shrinkages = st.floats(1, 14)
temperatures = st.floats(30, 270)


@pytest.mark.parametrize(
    ("cut", "direction", "expected"),
    [
        (Cut.FLAT, Direction.WIDTH, 0.004),
        (Cut.FLAT, Direction.THICKNESS, 0.002),
        (Cut.QUARTER, Direction.WIDTH, 0.002),
        (Cut.QUARTER, Direction.THICKNESS, 0.004),
        (Cut.RIFT, Direction.WIDTH, 0.003),
        (Cut.RIFT, Direction.THICKNESS, 0.003),
        (Cut.FLAT, Direction.LENGTH, 0.0),
        (Cut.QUARTER, Direction.LENGTH, 0.0),
    ],
)
def test_the_rings_decide_which_way_a_board_moves_most(
    cut: Cut, direction: Direction, expected: float
) -> None:
    assert coefficient(0.002, 0.004, cut, direction) == pytest.approx(expected, abs=1e-12)


@given(sizes, coefficients, st.floats(-10, 10))
def test_a_board_twice_as_wide_moves_twice_as_far(size: float, each: float, change: float) -> None:
    # 1e-15 in is below the last digit of any movement that can be seen
    assert movement(2 * size, each, change) == pytest.approx(2 * movement(size, each, change), abs=1e-15)


@given(sizes, coefficients, st.floats(-10, 10))
def test_what_a_board_gains_in_the_wet_it_loses_in_the_dry(size: float, each: float, change: float) -> None:
    assert movement(size, each, -change) == -movement(size, each, change)


@given(sizes, shrinkages, moistures, moistures)
def test_by_shrinkage_a_board_comes_back_to_its_size(
    size: float, shrinkage: float, first: float, last: float
) -> None:
    wet = size + movement_by_shrinkage(size, shrinkage, first, last)

    back = wet + movement_by_shrinkage(wet, shrinkage, last, first)

    # floats lose a few units in the sixteenth digit
    assert back == pytest.approx(size, rel=1e-12)


@given(sizes, shrinkages)
def test_from_green_to_ovendry_a_board_shrinks_by_its_whole_shrinkage(size: float, shrinkage: float) -> None:
    assert movement_by_shrinkage(size, shrinkage, 30, 0) == pytest.approx(-size * shrinkage / 100, rel=1e-12)


@pytest.mark.parametrize(
    ("first", "last", "beyond"),
    [(8.5, 11, False), (6, 14, False), (14, 6, False), (6.94, 16, True), (5.9, 8, True), (8, 5.9, True)],
)
def test_movement_beyond_the_range_of_the_coefficients_is_labelled(
    first: float, last: float, beyond: bool
) -> None:
    assert is_extrapolated(first, last) is beyond


@pytest.mark.parametrize(("first", "last"), [(-1, 8), (8, 31), (31, 8)])
def test_wood_is_not_moved_beyond_saturation(first: float, last: float) -> None:
    with pytest.raises(ValueError, match="Wood moves between 0 and 30 % moisture"):
        movement_by_shrinkage(10, 7, first, last)


@pytest.mark.parametrize("shrinkage", [0, -3, 100])
def test_a_shrinkage_that_no_wood_has_is_refused(shrinkage: float) -> None:
    with pytest.raises(ValueError, match="Wood shrinks by some percent"):
        movement_by_shrinkage(10, shrinkage, 8, 10)


@given(temperatures, st.floats(0, 98.9), st.floats(0.05, 1))
def test_damper_air_makes_damper_wood(temperature: float, humidity: float, more: float) -> None:
    assert equilibrium_moisture(temperature, humidity + more) > equilibrium_moisture(temperature, humidity)


def test_wood_in_bone_dry_air_is_bone_dry() -> None:
    assert equilibrium_moisture(70, 0) == 0


@pytest.mark.parametrize(
    ("temperature", "humidity", "said"),
    [
        (29, 50, "30 to 270 °F"),
        (271, 50, "30 to 270 °F"),
        (float("nan"), 50, "30 to 270 °F"),
        (70, -1, "between 0 and 100 %"),
        (70, 100, "between 0 and 100 %"),
        (70, float("nan"), "between 0 and 100 %"),
    ],
)
def test_air_outside_the_table_is_refused_with_its_range(
    temperature: float, humidity: float, said: str
) -> None:
    with pytest.raises(ValueError, match=said):
        equilibrium_moisture(temperature, humidity)


def test_a_reading_is_held_against_the_furniture_range() -> None:
    dry = furniture_moisture()

    assert [dry.holds(reading) for reading in (5.9, 6, 8, 8.1)] == [False, True, True, False]


def test_the_interiors_start_with_the_usual_one() -> None:
    assert [each.moisture for each in interiors()] == [8, 6, 11]


@given(st.floats(0.2, 1), moistures, st.floats(0.1, 5))
def test_damper_wood_weighs_more(gravity: float, moisture: float, more: float) -> None:
    assert density(gravity, moisture + more) > density(gravity, moisture)


def test_plywood_hardly_moves_beside_any_solid_board() -> None:
    each, evidence = plywood_coefficient()

    assert each < 0.0005
    assert "Wood Handbook" in evidence.source
