"""Sizes as they are written to files and shown to people: plainest form, marks where rounded, both units."""

import pytest

from casewright.measure.lengths import (
    LengthError,
    LengthUnit,
    show,
    show_both,
    show_feet,
    show_in,
    show_mm,
    write_length,
)

INCH, MM = LengthUnit.INCH, LengthUnit.MILLIMETRE


@pytest.mark.parametrize(
    ("inches", "shop", "written"),
    [
        (7 + 13 / 32, INCH, "7-13/32"),
        (7 + 13 / 128, INCH, "7-13/128"),
        (39.5, INCH, "39-1/2"),
        (0.0, INCH, "0"),
        (-0.25, INCH, "-1/4"),
        (397 / 25.4, INCH, "397 mm"),
        (188.3 / 25.4, INCH, "188.3 mm"),
        (7.123, INCH, "7.123"),
        (7.12346, INCH, "7.12346"),
        (188.35 / 25.4, MM, "188.35"),
        (397 / 25.4, MM, "397"),
        (7 + 13 / 32, MM, "7-13/32 in"),
        (7.123, MM, "7.123 in"),
    ],
)
def test_a_size_is_written_to_a_file_in_its_plainest_form(inches, shop, written):
    assert write_length(inches, shop) == written


def test_a_size_that_could_not_be_read_again_is_not_written():
    with pytest.raises(LengthError, match="more than 100 ft"):
        write_length(1200.5)


@pytest.mark.parametrize(
    ("inches", "denominator", "shown"),
    [
        (7 + 13 / 32, 64, "7-13/32"),
        (13 / 16, 64, "13/16"),
        (0.0, 64, "0"),
        (-0.25, 64, "-1/4"),
        (-7.25, 64, "-7-1/4"),
        (8.0, 64, "8"),
        (8.0 + 4e-7, 64, "8"),
        (8.41, 64, "≈8-13/32"),
        (8.41, 16, "≈8-7/16"),
        (8.41, 32, "≈8-13/32"),
        (8 + 1 / 128, 128, "8-1/128"),
        (8 + 1 / 128, 64, "≈8-1/64"),
        (7.999, 64, "≈8"),
        (0.001, 64, "≈0"),
        (-0.001, 64, "≈0"),
        (-0.26, 64, "≈-17/64"),
    ],
)
def test_a_size_is_shown_as_it_is_read_off_the_rule(inches, denominator, shown):
    assert show(inches, denominator) == shown


@pytest.mark.parametrize("denominator", [0, -16, 3, 10, 60, 100, 256])
def test_no_rule_is_divided_in_odd_parts(denominator):
    with pytest.raises(ValueError, match=r"16ths, 32nds, 64ths or 128ths"):
        show(1.5, denominator)


@pytest.mark.parametrize(
    ("inches", "shown"),
    [
        (39.5, "3' 3-1/2\""),
        (11.5, '11-1/2"'),
        (12.0, "1' 0\""),
        (11.999, "≈1' 0\""),
        (23.5 / 32, '47/64"'),
        (0.0, '0"'),
        (-39.5, "-3' 3-1/2\""),
    ],
)
def test_a_long_size_is_shown_in_feet_and_inches(inches, shown):
    assert show_feet(inches) == shown


@pytest.mark.parametrize(
    ("inches", "shown"),
    [(8 + 13 / 32, "213.5"), (1.0, "25.4"), (0.0, "0.0"), (-0.25, "-6.4"), (0.25, "6.4"), (-0.001, "0.0")],
)
def test_a_size_is_shown_in_millimetres_to_one_decimal(inches, shown):
    assert show_mm(inches) == shown


def test_both_units_are_shown_side_by_side():
    assert show_both(8 + 13 / 32) == "8-13/32 in (213.5 mm)"


@pytest.mark.parametrize(
    ("inches", "shop", "shown"),
    [
        (8 + 13 / 32, INCH, "8-13/32 in"),
        (8.41, INCH, "≈8-13/32 in"),
        (397 / 25.4, MM, "397.0 mm"),
        (8 + 13 / 32, MM, "≈213.5 mm"),
    ],
)
def test_a_size_is_shown_in_the_unit_of_the_shop_and_marked_where_it_was_rounded(inches, shop, shown):
    assert show_in(inches, shop) == shown
