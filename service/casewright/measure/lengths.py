"""Lengths as makers write them: read exactly, stored in whole ticks, printed for the rule and the gauge.

One reader serves the command line and every file. It takes inches with fractions, feet and inches, decimals
and metric sizes, and never goes through a float: 13/16 is thirteen sixteenths and 0.1 is one tenth. What it
cannot read with certainty it refuses with a sentence, for a size that is guessed at is a board cut wrong.
"""

import math
import re
import unicodedata
from collections.abc import Iterator
from enum import StrEnum
from fractions import Fraction

from casewright.measure.rounding import TOLERANCE, near_to
from casewright.measure.units import MILLIMETRES_PER_INCH, TICKS_PER_INCH, Count, Inches, Ticks


class LengthUnit(StrEnum):
    """The unit in which a shop thinks, and which a bare number is in."""

    INCH = "in"
    MILLIMETRE = "mm"


class LengthError(ValueError):
    """Text that is not a size, with a sentence that says why and shows one that is.

    Attributes:
        message: the sentence, for the person who typed it
    """

    def __init__(self, message: str) -> None:
        super().__init__(message)
        self.message = message


LONGEST_TEXT = 40
LONGEST_NUMBER = 9
FINEST = 4096
"""The greatest denominator of a typed fraction: thirty-two times finer than any rule is marked."""
LONGEST = Fraction(1200)
"""No size in a furniture shop is above 100 ft [in]; a longer one is a slip of the keys."""

EXAMPLES = {
    LengthUnit.INCH: "Write it as 7-13/32, 7.4 or 188 mm.",
    LengthUnit.MILLIMETRE: "Write it as 188, 188.5 or 7-13/32 in.",
}

INCHES_PER = {
    "in": Fraction(1),
    "mm": Fraction(10, 254),
    "cm": Fraction(100, 254),
    "m": Fraction(10_000, 254),
}
"""Exact by definition: 1 in = 25.4 mm (international inch, 1959)."""

WORDS = {
    **dict.fromkeys(('"', "in", "ins", "inch", "inches"), "in"),
    **dict.fromkeys(("mm", "millimeter", "millimeters", "millimetre", "millimetres"), "mm"),
    **dict.fromkeys(("cm", "centimeter", "centimeters", "centimetre", "centimetres"), "cm"),
    **dict.fromkeys(("m", "meter", "meters", "metre", "metres"), "m"),
}

AROUND = " \t\r\n\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f"
VULGAR = {sign: unicodedata.normalize("NFKC", sign).replace("⁄", "/") for sign in "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"}
PLAIN = {ord(sign): f" {fraction} " for sign, fraction in VULGAR.items()} | {
    **dict.fromkeys(map(ord, AROUND[4:]), " "),
    **dict.fromkeys(map(ord, "’‘‛′ʹ`´"), "'"),
    **dict.fromkeys(map(ord, "”“‟″ʺ"), '"'),
    **dict.fromkeys(map(ord, "⁄∕"), "/"),
    **dict.fromkeys(map(ord, "‐‑–−"), "-"),
}
"""What a word processor, a telephone or a drawing puts in the place of a plain sign."""

NUMBER = r"\d+[ -]\d+/\d+|\d+/\d+|\d*\.\d+|\d+,\d+|\d+"
LENGTH = re.compile(
    rf"(?:(?P<feet>{NUMBER}) ?(?:'|ft\.?|feet|foot)(?![a-z]))?"
    rf"(?: ?-? ?(?P<rest>{NUMBER}) ?(?P<unit>\"|[a-z]+\.?)?)?"
)
TWO_WAYS = re.compile(r"[1-9]\d{0,2},\d{3}")


def parse_length(text: str, unit: LengthUnit = LengthUnit.INCH, *, least: Fraction = Fraction(0)) -> Fraction:
    """The size that a maker wrote, exact.

    A bare number is in the shop's unit. A bare fraction is of an inch in either shop, for nobody marks a
    millimetre in sixteenths. A comma is the decimal comma of a metric size; in inches, and where it could as
    well set thousands apart (1,234 mm), it is refused.

    Args:
        text: what was typed, at most 40 characters
        unit: the shop's unit
        least: the smallest size that can be meant here; below zero, a leading minus is read [in]

    Returns:
        The size [in]

    Raises:
        LengthError: the text is not a size, or not one that can be meant here.

    Source: common practice; 1 in = 25.4 mm by definition (international inch, 1959).
    """
    stripped = text.strip(AROUND)
    if not stripped:
        raise LengthError(f"There is no size here. {EXAMPLES[unit]}")
    try:
        size = _signed(_plain(stripped), unit, minus_is_read=least < 0)
    except LengthError as fault:
        raise LengthError(f"{_quoted(stripped)} {fault.message} {EXAMPLES[unit]}") from None
    if size < least:
        raise LengthError(
            f"{_quoted(stripped)} is too small: {show_in(float(least), unit)} is the least here."
        )
    return size


def _quoted(text: str) -> str:
    """What was typed, short enough for a sentence, with nothing in it that cannot be seen."""
    shown = "".join(sign if sign.isprintable() else "\ufffd" for sign in text[:24])
    return f"“{shown}…”" if len(text) > 24 else f"“{shown}”"


def _plain(text: str) -> str:
    """The text in plain signs, lower case and single spaces."""
    if len(text) > LONGEST_TEXT:
        raise LengthError("is too long to be a size.")
    plain = text.translate(PLAIN).lower()
    if not (plain.isascii() and plain.isprintable()):
        raise LengthError("has a sign in it that no size has.")
    if re.search(rf"\d{{{LONGEST_NUMBER + 1}}}", plain):
        raise LengthError("has too many digits to be a size.")
    plain = " ".join(plain.split()).replace("''", '"').replace("- ", "-")
    return plain.replace(" /", "/").replace("/ ", "/")


def _signed(plain: str, unit: LengthUnit, *, minus_is_read: bool) -> Fraction:
    """The size, below zero if a minus leads it and may."""
    if plain.startswith("-") and not minus_is_read:
        raise LengthError("has a minus, and no size is less than nothing.")
    size = _size(plain.removeprefix("-"), unit)
    if size > LONGEST:
        raise LengthError("is more than 100 ft, and nothing here is that long.")
    return -size if plain.startswith("-") else size


def _size(plain: str, unit: LengthUnit) -> Fraction:
    """The size without its sign: feet, or feet and inches, or a number with or without a unit."""
    parts = LENGTH.fullmatch(plain)
    if not parts or plain.startswith((" ", "-")) or not (parts["feet"] or parts["rest"]):
        raise LengthError("is not a size.")
    word = WORDS.get((parts["unit"] or "").removesuffix("."))
    if parts["unit"] and not word:
        raise LengthError("is in no unit that is read here: they are in, ft, mm, cm and m.")
    if not parts["feet"]:
        bare = "in" if "/" in parts["rest"] else unit.value
        return _number(parts["rest"], word or bare) * INCHES_PER[word or bare]
    feet = _number(parts["feet"], "ft")
    return feet * 12 + (_beside(feet, parts["rest"], word or "in") if parts["rest"] else 0)


def _beside(feet: Fraction, written: str, unit: str) -> Fraction:
    """The inches that stand beside whole feet."""
    if unit != "in":
        raise LengthError("has feet and metric in one size.")
    if feet.denominator != 1:
        raise LengthError("has a part of a foot and inches too: give whole feet with the inches.")
    inches = _number(written, unit)
    if inches >= 12 or re.match(r"\d{3}", written):
        raise LengthError("is not feet and inches: beside feet stand 0 to 11 inches, in one or two digits.")
    return inches


def _number(written: str, unit: str) -> Fraction:
    """A whole number, a decimal, a fraction, or a whole number with a fraction."""
    if "," in written:
        return _with_comma(written, unit)
    if "/" not in written:
        return Fraction(written)
    whole, _, fraction = written.replace("-", " ").rpartition(" ")
    above, below = map(int, fraction.split("/"))
    if below == 0:
        raise LengthError("is not a size: nothing can be divided by 0.")
    if below > FINEST:
        raise LengthError("is a finer fraction than can be marked or measured.")
    if whole and above >= below:
        raise LengthError("is not a size: beside a whole number the fraction is less than one.")
    return int(whole or 0) + Fraction(above, below)


def _with_comma(written: str, unit: str) -> Fraction:
    """A metric decimal with a comma."""
    if unit in ("in", "ft"):
        raise LengthError("has a comma, which can mean two things in inches: use a point, or nothing.")
    if unit != "m" and TWO_WAYS.fullmatch(written):
        joined, pointed = written.replace(",", ""), written.replace(",", ".")
        raise LengthError(f"can be read as {joined} or as {pointed}: write the one that is meant.")
    return Fraction(written.replace(",", "."))


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
    fraction = Fraction(part, denominator)
    return f"{whole}-{fraction}" if whole else str(fraction)


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
