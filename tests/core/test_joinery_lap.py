"""The lap: how hard it is bent, and what is done about it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.lap import lap_advice, lap_for_index, lap_index, side_for_index

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
    ("index", "can_be_replaced", "spare"),
    [(21.3, True, False), (30.0, True, False), (30.1, True, True), (21.3, False, True)],
)
def test_a_spare_front_is_advised_when_the_lap_is_weak_or_cannot_be_had_again(index, can_be_replaced, spare):
    advice = lap_advice(index, can_be_replaced=can_be_replaced)

    assert ("Mill one spare front blank in sequence with the others." in advice) is spare


def test_the_front_is_always_backed_while_it_is_chopped():
    assert lap_advice(5.0)[0] == "Back the front with a block while the last chops go toward the lap."
