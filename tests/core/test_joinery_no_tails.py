"""Where no number of tails passes, each reason is said once, and every size that is named lets one pass."""

import re
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from casewright.joinery.no_tails import RowSizes, why_no_number
from casewright.measure.lengths import parse_length
from joints import sizes

FRONT = RowSizes(height=8.40625, side=0.5, tail_length=0.625, half_pin=0.125, pin=0.125, slope=8, kerf=1 / 32)
"""The end of the side in worked joint J1."""

NAMED = {
    "pin": r"pins (\S+) in or wider",
    "height": r"board (\S+) in high or higher",
    "half_pin": r"half pins (\S+) in or narrower",
    "side": r"with the tails (\S+) in thick or thinner",
}
"""Where a sentence names a size that would do."""


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        (
            {"pin": 1 / 32},
            "No number of tails passes. A pin of 1/32 in is too narrow. Make the pins 1/16 in or wider.",
        ),
        (
            # one tail: 1/2 at its neck, twice 5/64 of flare, half pins of 1/8
            {"height": 1 / 2},
            "No number of tails passes. A tail would be 3/32 in at the baseline; it needs 1/2. "
            "Make the board 29/32 in high or higher.",
        ),
        (
            {"half_pin": 4.0},
            "No number of tails passes. A tail would be 1/4 in at the baseline; it needs 1/2. "
            "Make the board 9-7/16 in high or higher, or the half pins 3-31/64 in or narrower.",
        ),
        (
            {"half_pin": 5.0},
            "No number of tails passes. Nothing would be left of a tail at the baseline; it needs 1/2 in. "
            "Make the board 11-7/16 in high or higher, or the half pins 3-31/64 in or narrower.",
        ),
        (
            {"half_pin": 4.0, "pin": 1 / 32},
            "No number of tails passes. A pin of 1/32 in is too narrow. A tail would be 1/4 in at the "
            "baseline; it needs 1/2. Make the pins 1/16 in or wider and the board 9-3/8 in high or higher, "
            "or the half pins 3-33/64 in or narrower.",
        ),
    ],
)
def test_each_reason_is_said_once_with_what_would_do(changes, sentence):
    assert str(why_no_number(replace(FRONT, **changes))) == sentence


@given(sizes(0.25, 6), sizes(0.25, 1.5), sizes(0.25, 1), sizes(0, 3), sizes(1 / 64, 0.5), st.floats(4, 12))
def test_every_size_that_is_named_lets_some_number_pass(height, side, tail_length, half_pin, pin, slope):
    row = RowSizes(
        height=height,
        side=side,
        tail_length=tail_length,
        half_pin=half_pin,
        pin=pin,
        slope=slope,
        kerf=1 / 32,
    )
    assume(not row.passes)

    said = str(why_no_number(row))
    named = {
        field: float(parse_length(match[1]))
        for field, pattern in NAMED.items()
        if (match := re.search(pattern, said))
    }
    pins = {field: size for field, size in named.items() if field == "pin"}
    others = [{field: size} for field, size in named.items() if field != "pin"]
    assert named
    assert all(replace(row, **pins, **other).passes for other in others or [{}])
