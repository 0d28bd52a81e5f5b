"""Lengths as makers write them: read exactly, stored in whole ticks, printed for the rule and the gauge.

One reader serves the command line and every file. A stored length is whole ticks of 1/640 mm, in which 128ths
of an inch and tenths of a millimetre are both exact; a computed one is a float in inches, in which 64ths are.
"""

import math
from collections.abc import Iterator
from fractions import Fraction

from casewright.measure.rounding import TOLERANCE, near_to
from casewright.measure.typed import LONGEST, LengthError, LengthUnit, quoted, read_size
from casewright.measure.units import MILLIMETRES_PER_INCH, TICKS_PER_INCH, Count, Inches, Ticks

__all__ = (
    "LengthError",
    "LengthUnit",
    "from_ticks",
    "parse_length",
    "show",
    "show_both",
    "show_feet",
    "show_in",
    "show_mm",
    "to_ticks",
    "write_length",
)


def parse_length(text: str, unit: LengthUnit = LengthUnit.INCH, *, least: Fraction = Fraction(0)) -> Fraction:
    """The size that a maker wrote, exact.

    A bare number is in the shop's unit. A bare fraction is of an inch in either shop, for nobody marks a
    millimetre in sixteenths. A comma is the decimal comma of a metric size; in inches, and where it could as
    well set thousands apart (1,234 mm), it is refused.

    Args:
        text: what was typed, at most 40 signs
        unit: the shop's unit
        least: the smallest size that can be meant here; below zero, a leading minus is read [in]

    Returns:
        The size [in]

    Raises:
        LengthError: the text is not a size, or not one that can be meant here.

    Source: common practice; 1 in = 25.4 mm by definition (international inch, 1959).
    """
    size = read_size(text, unit, minus_is_read=least < 0)
    if size < least:
        raise LengthError(f"{quoted(text)} is too small: {show_in(float(least), unit)} is the least here.")
    return size


def to_ticks(inches: Inches | Fraction) -> Ticks:
    """The size as it is stored: the nearest whole tick of 1/640 mm.

    Args:
        inches: the size [in]

    Returns:
        Whole ticks; every 1/128 in and every 0.1 mm is met exactly [tick]

    Source: arithmetic: 1 in = 25.4 mm = 16256 ticks.
    """
    return math.floor(inches * TICKS_PER_INCH + 0.5)


def from_ticks(ticks: Ticks) -> Inches:
    """A stored size in inches, in which every 1/128 is exact.

    Args:
        ticks: the stored size [tick]

    Returns:
        The size [in]

    Source: arithmetic: 1 in = 25.4 mm = 16256 ticks.
    """
    return ticks / TICKS_PER_INCH


EXACT = 1e-6
"""A size within a millionth of an inch of a mark is on it."""


def _marks(inches: float, denominator: int) -> tuple[str, int]:
    """A sign for a size that falls between two marks of the rule, and the nearest mark without its minus."""
    if denominator not in (1, 2, 4, 8, 16, 32, 64, 128):
        raise ValueError(
            f"A rule is divided in 16ths, 32nds, 64ths or 128ths, not in parts of 1/{denominator}."
        )
    marks = math.floor(abs(inches) * denominator + 0.5 + TOLERANCE)
    about = "≈" if abs(abs(inches) - marks / denominator) > EXACT else ""
    return about + ("-" if inches < 0 and marks else ""), marks


def _mixed(marks: int, denominator: int) -> str:
    """Marks of the rule as a whole number and a reduced fraction."""
    whole, part = divmod(marks, denominator)
    if not part:
        return str(whole)
    common = math.gcd(part, denominator)  # a Fraction would do the same in four times the time
    fraction = f"{part // common}/{denominator // common}"
    return f"{whole}-{fraction}" if whole else fraction


def show(inches: Inches, denominator: Count = 64) -> str:
    """The size as it is read off a rule: 7-13/32, led by ≈ when it falls between two marks.

    Args:
        inches: the size [in]
        denominator: how many parts the rule divides an inch into: 16, 32, 64 or 128 [dimensionless]

    Returns:
        Whole inches and a reduced fraction, without a unit.

    Raises:
        ValueError: no rule is divided so.

    Source: common practice.
    """
    sign, marks = _marks(inches, denominator)
    return sign + _mixed(marks, denominator)


def show_feet(inches: Inches, denominator: Count = 64) -> str:
    """A long size in feet and inches: 3' 3-1/2".

    Args:
        inches: the size [in]
        denominator: how many parts the rule divides an inch into: 16, 32, 64 or 128 [dimensionless]

    Returns:
        Feet and inches with their marks; inches alone below one foot.

    Raises:
        ValueError: no rule is divided so.

    Source: common practice.
    """
    sign, marks = _marks(inches, denominator)
    feet, rest = divmod(marks, 12 * denominator)
    return sign + (f"{feet}' " if feet else "") + f'{_mixed(rest, denominator)}"'


def show_mm(inches: Inches) -> str:
    """The size in millimetres to one decimal: 213.5.

    Args:
        inches: the size [in]

    Returns:
        Millimetres, without a unit.

    Source: 1 in = 25.4 mm by definition (international inch, 1959).
    """
    shown = near_to(abs(inches) * MILLIMETRES_PER_INCH, 0.1)
    return f"{-shown if inches < 0 and shown else shown:.1f}"


def show_both(inches: Inches, denominator: Count = 64) -> str:
    """The size in inches with millimetres beside it: 8-13/32 in (213.5 mm).

    Args:
        inches: the size [in]
        denominator: how many parts the rule divides an inch into: 16, 32, 64 or 128 [dimensionless]

    Returns:
        Both sizes with their units.

    Source: common practice.
    """
    return f"{show(inches, denominator)} in ({show_mm(inches)} mm)"


def show_in(inches: Inches, unit: LengthUnit, denominator: Count = 64) -> str:
    """The size in the shop's unit: 8-13/32 in, or 213.5 mm, led by ≈ when it was rounded.

    Args:
        inches: the size [in]
        unit: the shop's unit
        denominator: how many parts the rule divides an inch into: 16, 32, 64 or 128 [dimensionless]

    Returns:
        The size with its unit.

    Source: common practice.
    """
    if unit is LengthUnit.INCH:
        return f"{show(inches, denominator)} in"
    shown = show_mm(inches)
    about = "≈" if abs(inches - float(shown) / MILLIMETRES_PER_INCH) > EXACT else ""
    return f"{about}{shown} mm"


def write_length(inches: Inches, unit: LengthUnit = LengthUnit.INCH) -> str:
    """The size as a file keeps it: the plainest text that is read back to the same tick.

    In inches it tries 128ths, tenths of a millimetre, thousandths, hundredths of a millimetre; in a shop that
    works in millimetres the metric scales come first. So what was typed on any of these scales comes back in
    the same form, but for the rare size that is on two. Hundred-thousandths of an inch tell all ticks apart.

    Args:
        inches: the size [in]
        unit: the shop's unit, in which the text will be read again

    Returns:
        Text for `parse_length`; whatever is not in the shop's unit carries its own.

    Raises:
        LengthError: the size is more than 100 ft, and would not be read again.

    Source: common practice.
    """
    ticks = to_ticks(inches)
    texts = _inch_scales(ticks) if unit is LengthUnit.INCH else _metric_scales(ticks)
    return next(text for text in texts if to_ticks(parse_length(text, unit, least=-LONGEST)) == ticks)


def write_with_unit(inches: Inches) -> str:
    """The size with its unit, so that it is read back whatever the unit of the file is.

    Args:
        inches: the size [in]

    Returns:
        Text for `parse_length`, such as `38-7/8 in` or `12.7 mm`.

    Raises:
        LengthError: the size is more than 100 ft, and would not be read again.

    Source: common practice.
    """
    text = write_length(inches, LengthUnit.INCH)
    return text if text.endswith("mm") else f"{text} in"


def _inch_scales(ticks: int) -> Iterator[str]:
    """The size on each scale that a shop in inches writes, the plainest first."""
    inches = from_ticks(ticks)
    yield show(inches, 128).removeprefix("≈")
    yield f"{_decimal(inches * MILLIMETRES_PER_INCH, 1)} mm"
    yield _decimal(inches, 3)
    yield f"{_decimal(inches * MILLIMETRES_PER_INCH, 2)} mm"
    yield _decimal(inches, 5)


def _metric_scales(ticks: int) -> Iterator[str]:
    """The size on each scale that a shop in millimetres writes, the plainest first."""
    inches = from_ticks(ticks)
    yield _decimal(inches * MILLIMETRES_PER_INCH, 2)
    yield f"{show(inches, 128).removeprefix('≈')} in"
    yield f"{_decimal(inches, 3)} in"
    yield f"{_decimal(inches, 5)} in"


def _decimal(value: float, digits: int) -> str:
    """A decimal without idle zeros."""
    return f"{value:.{digits}f}".rstrip("0").rstrip(".")
