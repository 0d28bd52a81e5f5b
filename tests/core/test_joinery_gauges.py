"""The two gauge settings, and how sides of uneven thickness share the second one."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.gauges import (
    first_gauge,
    gauge_groups,
    second_gauge,
    second_gauge_as_measured,
    what_a_wrong_gauge_does,
)
from casewright.joinery.lap import lap_left

sides = st.lists(st.floats(0.25, 0.625), min_size=1, max_size=20).map(
    lambda sizes: tuple((f"S{number}", size) for number, size in enumerate(sizes))
)

CLOSE = 1e-9
"""A billionth of an inch, as in the grouping itself."""


@given(sides)
def test_every_side_is_in_just_one_group(measured) -> None:
    grouped = [mark for group in gauge_groups(measured) for mark in group.marks]

    assert sorted(grouped) == sorted(mark for mark, _ in measured)


@given(sides)
def test_the_sides_of_a_group_agree_within_a_64th_and_the_groups_do_not(measured) -> None:
    groups = gauge_groups(measured)

    assert all(group.thickest - group.thinnest <= 1 / 64 + CLOSE for group in groups)
    starts = [group.thinnest for group in groups]
    assert all(later - earlier > 1 / 64 for earlier, later in pairwise(starts))


@given(sides)
def test_no_side_of_a_group_sinks_below_the_end_of_the_front(measured) -> None:
    thickness = dict(measured)

    sunk = [
        mark for group in gauge_groups(measured) for mark in group.marks if thickness[mark] < group.setting
    ]

    assert sunk == []


def test_three_sides_of_two_thicknesses_take_two_settings():
    groups = gauge_groups((("1L", 0.4375), ("1R", 0.46875), ("2L", 0.4453125)), proud=1 / 64)

    # 7/16 and 57/128 agree within 1/64, 15/32 does not; each setting leaves 1/64 proud
    assert [(group.marks, group.setting) for group in groups] == [
        (("1L", "2L"), 0.421875),
        (("1R",), 0.453125),
    ]


def test_without_measured_sides_there_are_no_groups():
    assert gauge_groups(()) == ()


@given(st.floats(0.5, 1.5), st.floats(0.05, 0.4))
def test_the_lap_and_the_first_gauge_make_up_the_front(front: float, lap: float) -> None:
    assert lap_left(front, first_gauge(front, lap)) == pytest.approx(lap, abs=CLOSE)


@given(st.floats(0.25, 1), st.floats(0, 0.1), st.floats(0, 0.05))
def test_a_side_measured_as_designed_changes_nothing(side: float, rabbet: float, proud: float) -> None:
    as_measured = second_gauge_as_measured(side - rabbet, proud)

    assert as_measured == pytest.approx(second_gauge(side, rabbet, proud), abs=CLOSE)


def test_without_a_rabbet_the_second_gauge_is_the_side():
    assert second_gauge(0.5, 0.0) == 0.5


def test_what_the_wrong_gauge_does_is_said_with_its_sizes():
    text = what_a_wrong_gauge_does(1 / 16)

    assert str(text) == (
        "Every socket would be 1/16 in too deep: flush, the side leaves an open slot of 1/16 behind each "
        "tail; pushed in until it bears, both ends of the front stand 1/16 proud, and planed flush the "
        "drawer is 1/8 narrower than its opening wants."
    )


def test_without_a_rabbet_there_is_no_wrong_gauge():
    assert what_a_wrong_gauge_does(0.0) == ""
