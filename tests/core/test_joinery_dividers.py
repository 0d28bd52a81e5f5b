"""Stepping out with dividers lands where it should, and one move corrects it when it does not."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.dividers import (
    corrected_setting,
    correction_lines,
    correction_per_64th,
    one_move_correction,
    stepping,
    stepping_of,
)
from casewright.joinery.layout import lay_out

heights = st.floats(3, 30)
half_pins = st.floats(1 / 16, 0.5)
pins = st.floats(1 / 16, 0.5)
counts = st.integers(1, 12)

CLOSE = 1e-9
"""A dozen steps of a few inches lose some 1e-14 in floats; a billionth of an inch is nothing."""


@given(heights, half_pins, pins, counts)
def test_as_many_steps_as_tails_overshoot_the_upper_mark_by_one_pin(
    height: float, half_pin: float, pin: float, count: int
) -> None:
    steps = stepping(height, half_pin, pin, count)

    landed = half_pin + steps.steps * steps.setting - (height - half_pin)
    assert landed == pytest.approx(pin, abs=CLOSE)
    assert steps.overshoot == pin


@given(heights, half_pins, pins, counts, st.floats(-0.05, 0.05))
def test_one_move_corrects_any_error_of_the_setting(
    height: float, half_pin: float, pin: float, count: int, error: float
) -> None:
    wrong = stepping(height, half_pin, pin, count).setting + error
    landed = half_pin + count * wrong - (height - half_pin)

    corrected = wrong + one_move_correction(landed, pin, count)

    again = half_pin + count * corrected - (height - half_pin)
    assert again == pytest.approx(pin, abs=CLOSE)


@pytest.mark.parametrize(("landed", "turns"), [(9 / 64, "close"), (7 / 64, "open")])
def test_a_long_landing_closes_the_dividers_and_a_short_one_opens_them(landed, turns):
    correction = one_move_correction(landed, 1 / 8, 4)

    assert ("close" if correction < 0 else "open") == turns
    assert abs(correction) == pytest.approx(correction_per_64th(4), abs=CLOSE)


def test_the_correction_for_a_64th_is_shared_among_the_steps():
    # 1/64 over 5 steps is 1/320
    assert correction_per_64th(5) == pytest.approx(1 / 320, abs=1e-15)  # float error only


def test_a_layout_is_stepped_out_as_its_sizes_are():
    layout = lay_out(8.40625, 0.125, 0.125, 5, 0.625, 8)

    assert stepping_of(layout) == stepping(8.40625, 0.125, 0.125, 5)


def test_the_card_says_each_move_of_the_dividers():
    lines = tuple(map(str, stepping(8.40625, 0.125, 0.125, 5).lines()))

    assert lines == (
        "Mark a half pin of 1/8 in at both edges.",
        "Set the dividers to 1-21/32 in.",
        "From the lower mark step up 5×: each step but the last marks the lower edge of the next tail, "
        "and the last lands 1/8 in past the upper mark.",
        "From the upper mark step down 5×: the steps mark the upper edges of the tails.",
        "If the last step lands long by 1/64, close the dividers by 0.0031 in, if short, open them as much; "
        "then step again.",
    )


@given(heights, half_pins, pins, counts, st.floats(-0.5, 0.5))
def test_dividers_set_as_the_card_says_come_by_the_one_move_to_the_setting_of_the_board_as_it_is(
    height: float, half_pin: float, pin: float, count: int, higher: float
) -> None:
    card = stepping(height, half_pin, pin, count)
    landed = half_pin + count * card.setting - (height + higher - half_pin)

    found = corrected_setting(card.setting, landed, pin, count)

    assert found == pytest.approx(stepping(height + higher, half_pin, pin, count).setting, abs=CLOSE)


J1 = stepping(8.40625, 1 / 8, 1 / 8, 5)
"""Worked joint J1: dividers at 1-21/32, 5 steps, landing 1/8 past the mark."""


def test_a_long_landing_is_answered_with_the_move_and_with_both_of_its_causes():
    # 1/16 too long over 5 steps is 0.0125; 1.65625 less that is 1.64375
    assert [str(line) for line in correction_lines(J1, 3 / 16)] == [
        "It lands 1/16 in too long: close the dividers by 0.0125 in, which is that divided by the steps, 5.",
        "If the board is as high as drawn, they were not quite at 1-21/32 in: the move brings them there.",
        "If they were just at 1-21/32 in, the board is 1/16 in lower than drawn, so measure it: the move "
        "brings them to 1.6438 in.",
        "Then step again: the last step must land 1/8 in past the mark.",
    ]


def test_a_landing_short_of_the_mark_is_answered_by_opening():
    first, _, third, _ = map(str, correction_lines(J1, -1 / 8))

    assert first.startswith("It lands 1/4 in too short: open the dividers by 0.0500 in")
    assert "the board is 1/4 in higher than drawn" in third
    assert third.endswith("brings them to 1.7063 in.")


def test_a_landing_that_is_right_moves_nothing():
    assert [str(line) for line in correction_lines(J1, 1 / 8)] == [
        "It lands just where it must, 1/8 in past the mark: leave the dividers alone."
    ]


@pytest.mark.parametrize("landed", [1 / 8 + 1.7, 1 / 8 - 1.7])
def test_a_miss_of_a_whole_step_is_a_step_miscounted(landed):
    (line,) = map(str, correction_lines(J1, landed))

    assert "more than half a step of 1-21/32 in: count the steps again; there are 5." in line
