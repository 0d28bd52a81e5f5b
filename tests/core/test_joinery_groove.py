"""The groove for the bottom: whether the lowest tail hides it, and what hides it when it does not."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from casewright.joinery.front_checks import groove_hidden
from casewright.joinery.groove import Groove, groove_fit, groove_move, half_pin_that_hides
from casewright.joinery.layout import lay_out
from casewright.measure.findings import Verdict

heights = st.floats(0.05, 3)
widths = st.floats(0.125, 0.5)
counts = st.integers(1, 6)

CLOSE = 1e-9
"""Float error of a few sums of inches is some 1e-15; a billionth of an inch is nothing."""


def dresser(count: int = 5):
    """The front of the worked dresser, with any number of tails."""
    return lay_out(8.40625, 0.125, 0.125, count, 0.625, 8)


def groove(height: float, width: float = 0.25) -> Groove:
    """A groove a quarter deep."""
    return Groove(height=height, width=width, depth=0.25)


@given(counts, heights, widths)
def test_moving_the_groove_as_far_as_asked_hides_it(count: int, height: float, width: float) -> None:
    layout = dresser(count)
    fit = groove_fit(layout, groove(height, width))
    assume(fit.move is not None)

    moved = groove_fit(layout, groove(height + fit.move, width))

    assert moved.hidden
    assert moved.spare >= -CLOSE


@given(counts, heights, widths)
def test_the_height_that_is_offered_hides_the_groove(count: int, height: float, width: float) -> None:
    layout = dresser(count)
    offered = groove_fit(layout, groove(height, width)).height
    assume(offered is not None)

    assert groove_fit(layout, groove(offered, width)).hidden


@given(counts, st.floats(0.09, 0.19) | heights, widths)  # most that can be helped lie just below
def test_a_half_pin_that_is_offered_hides_the_groove_where_it_is(
    count: int, height: float, width: float
) -> None:
    asked = groove(height, width)
    half_pin = half_pin_that_hides(dresser(count), asked)
    assume(half_pin is not None)

    assert groove_fit(lay_out(8.40625, half_pin, 0.125, count, 0.625, 8), asked).hidden


def test_a_groove_across_the_half_pin_is_raised():
    fit = groove_fit(dresser(), groove(0.125))

    # 13/64 - 1/8; the lowest tail begins at 1/8 + 5/64
    assert fit.move == pytest.approx(5 / 64, abs=CLOSE)
    assert fit.height == 13 / 64
    # and a half pin of 1/8 - 5/64 would hide it where it is
    assert fit.half_pin == pytest.approx(3 / 64, abs=CLOSE)


def test_a_groove_across_the_first_pin_is_lowered():
    fit = groove_fit(dresser(), groove(1.5))

    # the lowest tail ends at 1-37/64: 1-37/64 - 1-3/4 = -11/64, and 1-21/64 is left for the groove
    assert fit.move == pytest.approx(-11 / 64, abs=CLOSE)
    assert fit.height == pytest.approx(1 + 21 / 64, abs=CLOSE)
    # with five tails the upper edge rises by 3/5 of what the half pin gains: 1/8 + 11/64 · 5/3 = 79/192
    assert fit.half_pin == pytest.approx(79 / 192, abs=CLOSE)


def test_between_two_tails_no_half_pin_hides_a_groove_that_is_too_high():
    # with two tails the upper edge of the lower one stays where it is, whatever the half pins
    assert half_pin_that_hides(dresser(2), groove(4.0)) is None


def test_a_groove_wider_than_the_tail_cannot_be_moved():
    fit = groove_fit(dresser(10), groove(0.25, width=0.6))

    assert fit.move is None
    assert fit.height is None
    assert not fit.hidden


def test_a_height_in_64ths_is_offered_where_one_lies_within_the_tail():
    # the bedside's lowest tail begins at 1/8 + 9/128, between 12 and 13 64ths
    layout = lay_out(3.9375, 0.125, 0.09375, 3, 0.5625, 8)

    assert groove_fit(layout, groove(0.125)).height == 13 / 64


def test_a_hidden_groove_stays_where_it_is():
    fit = groove_fit(dresser(), groove(0.375))

    assert (fit.move, fit.height, fit.half_pin) == (0.0, 0.375, None)


@pytest.mark.parametrize(
    ("height", "width", "expected"),
    [(0.2, 0.25, 0.0), (0.2, 1.3, 0.0), (0.1, 0.25, 0.1), (1.4, 0.25, -0.15), (0.2, 1.4, None)],
)
def test_a_groove_just_inside_the_tail_is_hidden(height, width, expected):
    """The tail covers 0.2 to 1.5 in."""
    assert groove_move(height, width, 0.2, 1.5) == pytest.approx(expected, abs=CLOSE)


@pytest.mark.parametrize(
    ("height", "remedy"),
    [
        (0.125, "Raise the groove by 5/64 in, to 13/64, or stop"),
        (1.5, "Lower the groove by 11/64 in, to 1-21/64, or make the half pins ≈13/32 in, or stop"),
    ],
)
def test_a_groove_that_shows_is_stopped_with_how_far_to_move_it(height, remedy):
    asked = groove(height)

    found = groove_hidden(asked, groove_fit(dresser(), asked))

    assert found.verdict is Verdict.STOP
    assert str(found.remedy).startswith(remedy)


def test_a_groove_wider_than_the_tail_is_stopped_with_fewer_tails():
    asked = groove(0.25, width=0.6)

    found = groove_hidden(asked, groove_fit(dresser(10), asked))

    assert found.verdict is Verdict.STOP
    assert str(found.remedy).startswith(
        "The groove is wider than the tail: use 9 tails at most, or make it 35/64 in wide or narrower"
    )


@pytest.mark.parametrize(
    ("height", "width", "depth", "sentence"),
    [
        (0.0, 0.25, 0.25, "leaves no wood below it"),
        (0.375, 0.0, 0.25, "is no groove"),
        (0.375, 0.25, -0.25, "is no groove"),
    ],
)
def test_a_groove_that_cannot_be_meant_is_refused(height, width, depth, sentence):
    with pytest.raises(ValueError, match=sentence):
        Groove(height=height, width=width, depth=depth)


def test_a_half_pin_that_does_not_split_is_offered_too():
    # the groove ends 3/8 above the lowest of five tails: half pins of 1/8 + 3/8 · 5/3 = 3/4 would hide it
    asked = groove(1 + 45 / 64)

    found = groove_hidden(asked, groove_fit(dresser(), asked))

    assert "or make the half pins 3/4 in," in str(found.remedy)
