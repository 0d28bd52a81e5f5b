"""Shares of one and per cent: what was typed is what is kept, and what is printed."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.shares import share_of_percent, show_part, show_percent

typed = st.decimals(0, 100, places=6)


@given(typed)
def test_a_share_is_the_decimal_that_was_typed(percent):
    # An independent sum: the decimal point moved by two places, as text.
    expected = float(f"{percent}e-2")

    assert share_of_percent(percent) == share_of_percent(float(percent)) == expected


@pytest.mark.parametrize(("percent", "share"), [(6.85, 0.0685), (Decimal("8.1875"), 0.081875), (100, 1.0)])
def test_a_rate_keeps_its_last_digit(percent, share):
    assert share_of_percent(percent) == share


@given(typed)
def test_what_was_typed_is_printed_digit_for_digit(percent):
    shown = show_percent(share_of_percent(percent))

    assert Decimal(shown.removesuffix(" %")) == percent


@pytest.mark.parametrize(
    ("share", "shown"),
    [
        (0.081875, "8.1875 %"),
        (0.06849999999999999, "6.85 %"),
        (0.2, "20 %"),
        (1.0, "100 %"),
        (0, "0 %"),
        (1 / 3, "33.333333 %"),
    ],
)
def test_a_share_is_printed_in_per_cent(share, shown):
    assert show_percent(share) == shown


@pytest.mark.parametrize(
    ("share", "shown"), [(1 / 3, "33.3 %"), (0.4, "40 %"), (0.125, "12.5 %"), (1.0, "100 %"), (0, "0 %")]
)
def test_a_part_of_a_whole_is_printed_to_three_digits(share, shown):
    assert show_part(share) == shown
