"""The lap: how hard it is bent, and what is done about it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.lap import lap_for_index, lap_index, lap_needed, side_for_index

sides = st.floats(0.25, 0.75)
laps = st.floats(0.0625, 0.4)


@given(sides, laps)
def test_a_joint_twice_as_large_has_the_same_index(side: float, lap: float) -> None:
    assert lap_index(2 * side, 2 * lap) == pytest.approx(lap_index(side, lap), rel=1e-12)  # float error only


@given(sides, laps)
def test_half_the_lap_is_bent_four_times_as_hard(side: float, lap: float) -> None:
    assert lap_index(side, lap / 2) == pytest.approx(4 * lap_index(side, lap), rel=1e-12)  # float error only


@given(sides, st.floats(5, 100))
def test_the_lap_for_an_index_has_that_index(side: float, index: float) -> None:
    assert lap_index(side, lap_for_index(side, index)) == pytest.approx(index, rel=1e-9)  # float error only


@given(laps, st.floats(5, 100))
def test_the_side_for_an_index_has_that_index(lap: float, index: float) -> None:
    assert lap_index(side_for_index(lap, index), lap) == pytest.approx(index, rel=1e-9)  # float error only


@pytest.mark.parametrize(
    ("side", "expected"),
    [
        (1 / 4, 1 / 8),  # by its index 5/64 would do: the lap of show work is more
        (1 / 2, 11 / 64),  # 1/2 × √(3/30) = 0.158
        (3 / 4, 1 / 4),  # 0.237
    ],
)
def test_the_lap_that_is_needed_passes_both_of_its_checks(side, expected):
    assert lap_needed(side) == expected
