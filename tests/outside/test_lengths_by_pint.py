"""Our conversions against pint, which has its own definitions of every unit."""

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure import units
from casewright.measure.lengths import LengthUnit, from_ticks, parse_length, show_mm, to_ticks
from casewright.measure.printing import unit_of
from casewright.measure.typed import INCHES_PER
from casewright.measure.units import (
    MILLIMETRES_PER_INCH,
    TICKS_PER_INCH,
    TICKS_PER_MILLIMETRE,
    convert,
    registry,
)

ALIASES = {name: unit_of(alias) for name, alias in vars(units).items() if unit_of(alias)}
EXACT = pint.UnitRegistry(non_int_type=Fraction)
"""A registry of its own that reckons in fractions, so that nothing here is hidden by a float."""

thousandths = st.integers(0, 30_000)


@pytest.mark.parametrize(
    ("word", "unit"), [("mm", "mm"), ("cm", "cm"), ("m", "m"), ("ft", "foot"), ("in", "inch")]
)
@given(thousandths)
def test_a_typed_size_is_what_pint_makes_of_the_number_and_the_unit(word, unit, number):
    size = parse_length(f"{number / 1000:.3f} {word}")

    assert size == EXACT.Quantity(Fraction(number, 1000), unit).to("inch").magnitude


@pytest.mark.parametrize("unit", INCHES_PER)
def test_each_unit_that_is_read_is_as_long_as_pint_says(unit):
    assert EXACT.Quantity(Fraction(1), unit).to("inch").magnitude == INCHES_PER[unit]


def test_a_tick_is_a_640th_of_a_millimetre_and_goes_whole_into_an_inch():
    tick = EXACT.Quantity(Fraction(1, TICKS_PER_MILLIMETRE), "mm")

    assert tick.to("inch").magnitude == Fraction(1, TICKS_PER_INCH)
    assert (1 / registry().Quantity(1, "tick").to("inch").magnitude) == pytest.approx(
        TICKS_PER_INCH, rel=1e-14
    )
    assert float(EXACT.Quantity(Fraction(1), "inch").to("mm").magnitude) == MILLIMETRES_PER_INCH


@given(st.integers(0, 19_507_200))
def test_a_stored_size_is_as_many_millimetres_as_pint_says(ticks):
    millimetres = registry().Quantity(from_ticks(ticks), "inch").to("mm").magnitude

    # Ticks are whole; a float carries a size under 100 ft to better than a millionth of one.
    assert millimetres * TICKS_PER_MILLIMETRE == pytest.approx(ticks, abs=1e-6)
    assert to_ticks(from_ticks(ticks)) == ticks


@given(st.integers(0, 480 * 64))
def test_a_size_shown_in_millimetres_is_pints_to_the_nearest_tenth(mark):
    millimetres = EXACT.Quantity(Fraction(mark, 64), "inch").to("mm").magnitude

    assert abs(Fraction(show_mm(mark / 64)) - millimetres) <= Fraction(1, 20)


def test_a_board_foot_is_144_cubic_inches():
    # A board one foot long, one foot wide and one inch thick.
    assert EXACT.Quantity(Fraction(1), "board_foot").to("inch**3").magnitude == 144
    # pint multiplies binary floats on the way; the answer is right to the last few digits of one.
    assert convert(1, "board_foot", "inch**3") == pytest.approx(144, rel=1e-12)


@pytest.mark.parametrize(
    ("celsius", "fahrenheit"),
    [(0, 32), (100, 212), (-40, -40), (20, 68), (37, 98.6)],
)
def test_temperatures_are_converted_with_their_zero(celsius, fahrenheit):
    # Degrees are added to an absolute zero in floats, hence a millionth of a degree.
    assert convert(celsius, "degC", "degF") == pytest.approx(fahrenheit, abs=1e-6)
    assert convert(fahrenheit, "degF", "degC") == pytest.approx(celsius, abs=1e-6)


@pytest.mark.parametrize(
    ("quantity", "source", "target", "expected"),
    [
        (1, "kilogram", "pound", 2.2046226),
        (1, "pound", "gram", 453.59237),
        (1, "liter", "quart", 1.0566882),
        (1, "week", "hour", 168),
        (25, "percent", "dimensionless", 0.25),
        (1, "foot**2", "inch**2", 144),
        (1, "psi", "kilopascal", 6.8947573),
    ],
)
def test_the_doors_convert_as_the_tables_of_nist_say(quantity, source, target, expected):
    # NIST SP 811 (2008), appendix B.8, to the eight figures that are written here.
    assert convert(quantity, source, target) == pytest.approx(expected, rel=1e-7)


@pytest.mark.parametrize("unit", ALIASES.values(), ids=ALIASES)
def test_pint_knows_the_unit_of_every_alias(unit):
    assert registry().Unit(unit.name) is not None


def test_a_size_is_not_converted_to_a_weight():
    with pytest.raises(pint.DimensionalityError):
        convert(1, "inch", "pound")


def test_a_bare_number_in_a_metric_shop_is_pints_millimetre():
    assert (
        parse_length("397", LengthUnit.MILLIMETRE) == EXACT.Quantity(Fraction(397), "mm").to("inch").magnitude
    )
