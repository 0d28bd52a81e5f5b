"""What a maker types, read as an exact size.

It never goes through a float: 13/16 is thirteen sixteenths and 0.1 is one tenth. What cannot be read with
certainty is refused with the reason, for a size that is guessed at is a board cut wrong. The text is held to
forty signs before any pattern is tried on it, so that no text can keep the reader busy.
"""

import re
import unicodedata
from enum import StrEnum
from fractions import Fraction


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
LONGEST_QUOTED = 24
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
    rf"(?:(?P<feet>{NUMBER}) ?(?:'|ft\.?|feet|foot))?"
    rf"(?: ?-? ?(?P<rest>{NUMBER}) ?(?P<unit>\"|[a-z]+\.?)?)?"
)
TWO_WAYS = re.compile(r"[1-9]\d{0,2},\d{3}")


def read_size(text: str, unit: LengthUnit, *, minus_is_read: bool = False) -> Fraction:
    """The size that was typed, exact.

    Args:
        text: what was typed
        unit: the shop's unit
        minus_is_read: whether a size below zero can be meant

    Returns:
        The size [in]

    Raises:
        LengthError: the text is not a size; the sentence quotes it and shows one that is.

    Source: common practice; 1 in = 25.4 mm by definition (international inch, 1959).
    """
    stripped = text.strip(AROUND)
    if not stripped:
        raise LengthError(f"There is no size here. {EXAMPLES[unit]}")
    try:
        return _signed(_plain(stripped), unit, minus_is_read)
    except LengthError as fault:
        raise LengthError(f"{quoted(text)} {fault.message} {EXAMPLES[unit]}") from None


def quoted(text: str) -> str:
    """What was typed, short enough for a sentence, with a mark for every sign in it that cannot be seen.

    Args:
        text: what was typed

    Returns:
        At most 24 signs in quotation marks.

    Source: common practice.
    """
    typed = text.strip(AROUND)
    shown = "".join(sign if sign.isprintable() else "\ufffd" for sign in typed[:LONGEST_QUOTED])
    return f"“{shown}…”" if len(typed) > LONGEST_QUOTED else f"“{shown}”"


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


def _signed(plain: str, unit: LengthUnit, minus_is_read: bool) -> Fraction:
    """The size, below zero if a minus leads it and may."""
    if plain.startswith("-") and not minus_is_read:
        raise LengthError("has a minus, and no size is less than nothing.")
    size = _size(plain.removeprefix("-"), unit)
    if size > LONGEST:
        longest = "100 ft" if unit is LengthUnit.INCH else "30 m"
        raise LengthError(f"is more than {longest}, and nothing here is that long.")
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
