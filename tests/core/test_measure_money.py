"""Money: every line is multiplied exactly, rounded once, and sums to what is on the paper."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.money import (
    as_decimal,
    exact,
    from_decimal,
    in_proportion,
    round_half_up,
    share,
    show_money,
    times,
)

amounts = st.integers(-10_000_000, 10_000_000)
written = st.decimals(-1000, 1000, places=4)
parts_of_a_whole = st.lists(st.integers(0, 100), min_size=1, max_size=6).filter(any)


@given(amounts, st.lists(written, max_size=4))
def test_a_line_is_the_exact_product_rounded_once_with_half_a_cent_up(amount, factors):
    # An independent sum: decimal arithmetic with digits to spare, and the library's own half-up.
    product = Decimal(amount)
    for factor in factors:
        product *= factor
    expected = int(product.quantize(Decimal(1), rounding=ROUND_HALF_UP))

    assert times(amount, *factors) == expected
    assert times(amount, *map(float, factors)) == expected
    assert times(amount, *map(Fraction, factors)) == expected


@pytest.mark.parametrize(
    ("amount", "factors", "expected"),
    [
        (1000, (0.145,), 145),
        (9500, (1.15,), 10925),
        (100, (1.005,), 101),
        (-100, (1.005,), -101),
        (850, (63.7, 1.15), 62267),
        (1_315_000, (6.85 / 100,), 90078),
        (12, (), 12),
        (5, (0.1,), 1),
        (4, (0.1,), 0),
    ],
)
def test_a_factor_is_the_decimal_that_was_typed_and_not_its_binary_neighbour(amount, factors, expected):
    assert times(amount, *factors) == expected


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (Fraction(1, 2), 1),
        (Fraction(-1, 2), -1),
        (Fraction(3, 2), 2),
        (Fraction(5, 2), 3),
        (Fraction(49, 100), 0),
        (Fraction(-249, 100), -2),
        (Fraction(0), 0),
    ],
)
def test_a_half_goes_away_from_zero(value, expected):
    assert round_half_up(value) == expected


def test_a_typed_tenth_is_one_tenth():
    assert exact(0.1) == exact(Decimal("0.1")) == Fraction(1, 10)
    assert exact(7) == 7


@given(amounts, parts_of_a_whole)
def test_the_parts_of_an_amount_add_up_to_it(amount, weights):
    shares = tuple(Fraction(weight, sum(weights)) for weight in weights)

    parts = share(amount, shares)

    assert sum(parts) == amount


@given(amounts, parts_of_a_whole)
def test_each_part_but_the_last_is_its_share_to_the_half_cent(amount, weights):
    shares = tuple(Fraction(weight, sum(weights)) for weight in weights)

    parts = share(amount, shares)

    assert all(
        abs(part - amount * each) <= Fraction(1, 2) for part, each in zip(parts[:-1], shares, strict=False)
    )
    # The last takes the half cents of the others, and no more.
    assert abs(parts[-1] - amount * shares[-1]) <= Fraction(len(parts) - 1, 2)


@given(amounts, st.sampled_from([0, 2, 3]))
def test_an_amount_in_whole_units_comes_back_to_the_cent(amount, digits):
    assert from_decimal(as_decimal(amount, digits), digits) == amount


@pytest.mark.parametrize(
    ("typed", "digits", "cents"),
    [
        (9.5, 2, 950),
        (0.29, 2, 29),
        (1.005, 2, 101),
        (Decimal("12058.21"), 2, 1205821),
        (120, 0, 120),
        (8, 2, 800),
    ],
)
def test_what_was_typed_becomes_whole_cents(typed, digits, cents):
    assert from_decimal(typed, digits) == cents


@pytest.mark.parametrize(
    ("amount", "symbol", "digits", "shown"),
    [
        (1205821, "$", 2, "$12,058.21"),
        (-5, "$", 2, "-$0.05"),
        (0, "$", 2, "$0.00"),
        (120, "¥", 0, "¥120"),
        (1234567, "€", 2, "€12,345.67"),
        (1500, "BD ", 3, "BD 1.500"),
    ],
)
def test_an_amount_is_printed_with_its_cents(amount, symbol, digits, shown):
    assert show_money(amount, symbol, digits) == shown


@pytest.mark.parametrize(
    ("amount", "weights", "parts"),
    [
        (100, (1, 1, 1), (34, 33, 33)),
        (100, (0, 0), (50, 50)),
        (101, (0, 0), (51, 50)),
        (10, (6, 3, 1), (6, 3, 1)),
        # 3.5, 2.1, 1.4: one cent is left, and the first part lost most
        (7, (5, 3, 2), (4, 2, 1)),
        (5, (0, 1), (0, 5)),
        (0, (3, 4), (0, 0)),
    ],
)
def test_an_amount_is_divided_in_proportion_to_the_cent(amount, weights, parts):
    assert in_proportion(amount, weights) == parts


@given(st.integers(0, 10**9), st.lists(st.integers(0, 10**7), min_size=1, max_size=12))
def test_what_is_divided_adds_up_and_no_part_is_a_cent_off(amount, weights):
    parts = in_proportion(amount, tuple(weights))

    total = sum(weights) or len(weights)
    assert sum(parts) == amount
    assert all(
        abs(part * total - amount * (weight if any(weights) else 1)) < total
        for part, weight in zip(parts, weights, strict=True)
    )


@pytest.mark.parametrize(("amount", "weights"), [(1, ()), (1, (-1, 2)), (-1, (1,))])
def test_nothing_is_divided_between_nobody(amount, weights):
    with pytest.raises(ValueError, match="between weights of 0 or more"):
        in_proportion(amount, weights)
