"""An even row of tails: it fills the board, whatever its sizes, and says so when it cannot."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.layout import CannotBeLaidOut, TailLayout, lay_out
from casewright.joinery.spacing import (
    fewest_tails,
    half_pin_at_end,
    half_pin_inside,
    most_tails,
    tail_width,
    top_half_pin,
)
from casewright.measure.ledger import Ledger

CLOSE = 1e-9
"""The error of a few sums of floats about 30 in long is some 1e-14; a billionth of an inch is nothing."""


@st.composite
def layouts(draw: st.DrawFn) -> TailLayout:
    """A layout that can be made: the tails are chosen first, and the board is as high as they need."""
    count = draw(st.integers(1, 12))
    tail = draw(st.floats(0.5, 2.5))
    pin = draw(st.floats(1 / 16, 0.5))
    half_pin = draw(st.floats(1 / 16, 0.5))
    return lay_out(
        height=2 * half_pin + count * tail + (count - 1) * pin,
        half_pin=half_pin,
        pin=pin,
        count=count,
        tail_length=draw(st.floats(0.25, 1)),
        slope=draw(st.floats(5, 12)),
    )


@given(layouts())
def test_tails_and_pins_add_up_to_the_height(layout: TailLayout) -> None:
    sum_of_widths = 2 * layout.half_pin + layout.count * layout.tail_width + (layout.count - 1) * layout.pin

    assert sum_of_widths == pytest.approx(layout.height, abs=CLOSE)


@given(layouts())
def test_the_last_tail_leaves_the_upper_half_pin(layout: TailLayout) -> None:
    assert layout.tails[-1].upper_end == pytest.approx(layout.height - layout.half_pin, abs=CLOSE)


@given(layouts())
def test_between_two_tails_there_is_just_a_pin(layout: TailLayout) -> None:
    at_end = [upper.lower_end - lower.upper_end for lower, upper in pairwise(layout.tails)]
    at_baseline = [upper.lower_base - lower.upper_base for lower, upper in pairwise(layout.tails)]

    assert at_end == pytest.approx([layout.pin] * (layout.count - 1), abs=CLOSE)
    assert at_baseline == pytest.approx([layout.pin_inside] * (layout.count - 1), abs=CLOSE)


@given(layouts())
def test_a_tail_narrows_to_its_neck(layout: TailLayout) -> None:
    necks = [tail.upper_base - tail.lower_base for tail in layout.tails]

    assert necks == pytest.approx([layout.neck] * layout.count, abs=CLOSE)
    assert 0 < layout.neck < layout.tail_width


@given(layouts())
def test_the_layout_is_the_same_from_the_top_as_from_the_bottom(layout: TailLayout) -> None:
    from_the_top = [layout.height - tail.upper_end for tail in reversed(layout.tails)]

    assert from_the_top == pytest.approx([tail.lower_end for tail in layout.tails], abs=CLOSE)


@given(layouts())
def test_all_lengths_doubled_double_the_layout(layout: TailLayout) -> None:
    doubled = lay_out(
        2 * layout.height,
        2 * layout.half_pin,
        2 * layout.pin,
        layout.count,
        2 * layout.tail_length,
        layout.slope,
    )

    assert [tail.upper_base for tail in doubled.tails] == pytest.approx(
        [2 * tail.upper_base for tail in layout.tails], abs=CLOSE
    )
    assert doubled.pitch == pytest.approx(2 * layout.pitch, abs=CLOSE)
    assert doubled.bevel_degrees == layout.bevel_degrees


@given(layouts(), st.floats(0.1, 2))
def test_the_most_tails_for_a_neck_are_the_most(layout: TailLayout, least: float) -> None:
    most = most_tails(layout.height, layout.half_pin, layout.pin, layout.flare, least)

    one_more = tail_width(layout.height, layout.half_pin, layout.pin, most + 1) - 2 * layout.flare
    these = tail_width(layout.height, layout.half_pin, layout.pin, max(most, 1)) - 2 * layout.flare
    assert one_more < least
    assert most == 0 or these >= least - CLOSE


@given(layouts(), st.floats(0.25, 3))
def test_the_fewest_tails_for_a_width_are_the_fewest(layout: TailLayout, widest: float) -> None:
    fewest = fewest_tails(layout.height, layout.half_pin, layout.pin, widest)

    these = tail_width(layout.height, layout.half_pin, layout.pin, fewest)
    one_less = tail_width(layout.height, layout.half_pin, layout.pin, max(fewest - 1, 1))
    assert these <= widest + CLOSE
    assert fewest == 1 or one_less > widest


@given(st.floats(0.05, 1), st.floats(0.01, 0.2))
def test_a_half_pin_measured_inside_comes_back_to_the_end(half_pin: float, flare: float) -> None:
    assert half_pin_at_end(half_pin_inside(half_pin, flare), flare) == pytest.approx(half_pin, abs=CLOSE)


def test_a_higher_front_has_all_its_excess_in_the_upper_half_pin():
    assert top_half_pin(0.125, 0.0625) == 0.1875


def test_a_tail_is_raised_whole():
    tail = lay_out(4.0, 0.25, 0.25, 2, 0.5, 8).tails[0]

    raised = tail.raised(0.625)

    # half pin 1/4, tails 1-5/8, flare 1/16; all are binary fractions, so the sums are exact
    assert (raised.lower_end, raised.upper_end) == (0.875, 2.5)
    assert (raised.lower_base, raised.upper_base) == (0.9375, 2.4375)


def test_too_many_tails_are_refused_with_the_most_that_would_do():
    with pytest.raises(CannotBeLaidOut) as refused:
        lay_out(height=4.0, half_pin=0.125, pin=0.125, count=20, tail_length=0.625, slope=8)

    # 4 - 1/4 + 1/8 over 1/8 + 5/32 + 1/64 is 13.05
    assert str(refused.value) == (
        "A board 4 in high has no width left for 20 tails at the baseline; at most 13 would have any."
    )
    assert lay_out(height=4.0, half_pin=0.125, pin=0.125, count=13, tail_length=0.625, slope=8).neck > 0


def test_a_board_too_low_for_one_tail_is_refused_with_the_height_that_would_do():
    with pytest.raises(CannotBeLaidOut, match=r"even one tail needs a board of 37/64 in"):
        lay_out(height=0.5, half_pin=0.25, pin=0.125, count=1, tail_length=0.25, slope=8)


def test_one_tail_without_width_is_said_in_the_singular():
    with pytest.raises(CannotBeLaidOut, match=r"no width left for 1 tail at the baseline"):
        lay_out(height=0.5, half_pin=0.25, pin=0.125, count=1, tail_length=0.25, slope=8)


@pytest.mark.parametrize(
    ("sizes", "sentence"),
    [
        ({"height": 0.0}, "The board cannot be 0 in; give a size above 0."),
        ({"height": float("nan")}, "The board cannot be nan in; give a size above 0."),
        ({"height": float("inf")}, "The board cannot be inf in; give a size above 0."),
        ({"pin": -0.125}, "The pins cannot be -0.125 in; give a size above 0."),
        ({"tail_length": 0.0}, "The tails cannot be 0 in; give a size above 0."),
        ({"half_pin": -0.1}, "A half pin cannot be -0.1 in; 1/8 is usual."),
        ({"slope": 0.0}, "A slope of 1:0 is no slope; 1:8 is usual in hardwood."),
        ({"count": 0}, "A joint with 0 tails has nothing to hold it; give it at least 1."),
    ],
)
def test_a_size_that_cannot_be_meant_is_refused(sizes, sentence):
    good = {"height": 4.0, "half_pin": 0.125, "pin": 0.125, "count": 3, "tail_length": 0.5, "slope": 8}

    with pytest.raises(CannotBeLaidOut) as refused:
        lay_out(**(good | sizes))

    assert str(refused.value) == sentence


def test_the_working_of_every_tail_is_kept():
    ledger = Ledger()

    lay_out(8.40625, 0.125, 0.125, 5, 0.625, 8, ledger.under("front"))

    upper = ledger["front.tail_5_upper_end"]
    assert upper.inputs == {"lower_edge": 6.75, "tail_width": 1.53125}
    assert upper.value == 8.28125
