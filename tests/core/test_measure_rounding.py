"""Rounding to the marks of a rule: whole 64ths survive, everything else goes the way that it was told."""

import math
from fractions import Fraction
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.rounding import down_to, floor64, near64, near_to, up_to

sizes = st.floats(-1200, 1200, allow_nan=False)
steps = st.sampled_from([1 / 128, 1 / 64, 1 / 32, 1 / 16, 1 / 8, 1.0, 0.1, 0.05, 5.0])


def sums_that_are_whole_64ths() -> list[tuple[float, int]]:
    """20,000 openings less a part and its movement, each with the whole 64th that is truly left.

    The opening is what makes the exact sum a whole 64th, so the sum in floats misses it only by their error.
    """
    chance = Random(64)  # noqa: S311 - a fixed series of sums, not a secret
    made = []
    for _ in range(20_000):
        sixty_fourths = chance.randint(1, 20 * 64)
        width = Fraction(chance.randint(1000, 24_000), 1000)
        movement = width * Fraction(chance.randint(100, 400), 100_000) * Fraction(chance.randint(1, 80), 10)
        opening = Fraction(sixty_fourths, 64) + width + movement
        made.append((float(opening) - float(width) - float(movement), sixty_fourths))
    return made


def test_a_whole_64th_is_never_lost_by_rounding_down():
    sums = sums_that_are_whole_64ths()

    lost = [total for total, sixty_fourths in sums if floor64(total) != sixty_fourths / 64]

    assert lost == []


def test_a_bare_floor_would_lose_some_of_them():
    sums = sums_that_are_whole_64ths()

    lost = [total for total, sixty_fourths in sums if math.floor(total * 64) != sixty_fourths]

    # The sums are worth testing only if the trap is in them: more than a quarter fall in.
    assert 4_000 < len(lost) < 10_000


@given(
    st.integers(0, 64 * 480),
    st.integers(1, 480 * 64).map(lambda mark: Fraction(mark, 64)),
    st.fractions(0, 1, max_denominator=10_000),
)
def test_a_sum_whose_true_answer_is_a_whole_64th_stays_there(mark, width, share):
    movement = width * share
    opening = Fraction(mark, 64) + movement

    left = float(opening) - float(movement)

    assert floor64(left) == near64(left) == mark / 64


@given(st.integers(-64 * 480, 64 * 480))
def test_a_size_on_the_rule_is_left_alone(mark):
    assert floor64(mark / 64) == near64(mark / 64) == mark / 64


@given(sizes)
def test_rounding_down_takes_less_than_one_64th_and_adds_none(size):
    rounded = floor64(size)

    # A billionth of a 64th is the tolerance that the function promises.
    assert -1e-9 / 64 <= size - rounded < 1 / 64


@given(sizes)
def test_the_nearest_64th_is_at_most_half_of_one_away(size):
    # Half of 1/64 in, and the billionth of a 64th by which the function leans upwards.
    assert abs(near64(size) - size) <= (0.5 + 2e-9) / 64


@given(sizes, steps)
def test_a_value_lies_between_its_roundings(value, step):
    below, nearest, above = down_to(value, step), near_to(value, step), up_to(value, step)

    # A millionth of the step covers the floats' error in multiplying by it.
    assert below - step * 1e-6 <= value <= above + step * 1e-6
    assert nearest in (below, above)


@pytest.mark.parametrize(
    ("rounding", "value", "step", "expected"),
    [
        (down_to, 8.41, 0.125, 8.375),
        (down_to, -8.41, 0.125, -8.5),
        (down_to, 0.3, 0.1, 0.3),
        (up_to, 8.41, 0.125, 8.5),
        (up_to, 8.5, 0.125, 8.5),
        (up_to, 0.3 / 0.1 / 10, 0.1, 0.3),
        (near_to, 8.0625, 0.125, 8.125),
        (near_to, 8.06, 0.125, 8.0),
        (near_to, -8.0625, 0.125, -8.0),
    ],
)
def test_each_way_of_rounding_goes_its_way(rounding, value, step, expected):
    # The answer is a whole number of steps, multiplied once: one float's error is allowed.
    assert rounding(value, step) == pytest.approx(expected, rel=1e-15)


def test_half_a_64th_goes_up():
    assert near64(7 + 1 / 128) == 7 + 1 / 64
