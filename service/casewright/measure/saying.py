"""Sentences that carry their lengths, so that each shop reads them in its own unit.

The core says `say("The lap is {}; it needs {:bare}.", lap, least)` and formats nothing: a ranking lays out
hundreds of joints whose sentences nobody reads. A page, a paper or the command line renders what it shows,
by `in_unit`; `str()` gives inches, for data that machines read.
"""

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

from casewright.measure.lengths import LengthUnit, parse_length, show, show_mm
from casewright.measure.rounding import down_to, up_to
from casewright.measure.units import (
    MILLIMETRES_PER_INCH,
    NEWTON_METRES_PER_INCH_POUND,
    Inches,
    InchPounds,
)

MILLIMETRE_STEPS = {16: 1.0, 32: 0.5}
"""To what a metric maker rounds up or down where one in inches takes so many parts; else to 0.1 mm [mm]."""

MOST_IN_FRACTIONS = 10_000.0
"""A refused size beyond this is no size of a piece, and is told as the number that it is [in]."""

WRITTEN = re.compile(
    r"(?<![\w/:.-])((?:\d+-)?(?:[1-3]/4|\d+/(?:2|8|16|32|64|128))|\d+(?:\.\d+)?(?= in\b))(?: in\b)?(?![\w/])"
)
"""A size in inches within a text: a fraction of the rule, or any number before the word."""


# Not frozen, though nobody changes one: a piece says some five hundred of them, and a frozen one takes twice
# as long to make.
@dataclass(slots=True, unsafe_hash=True)
class Said:
    """Words with lengths in them, not yet in any unit.

    A number is a length in inches unless its place has one of Python's formats for numbers (`d`, `g`, `.1f`,
    `,`). A place for a length is empty, or has any of these words:

    - `16`, `32`, `64` or `128`: how the rule divides an inch; 64 where nothing is said
    - `.3`: decimals of an inch, and one fewer of a millimetre
    - `exact`: the number as it is, for a size that is refused; a fraction where it is one of the rule
    - `up`, `down`: rounded that way, for a size that has to be at least, or at most, so large
    - `bare`: without the unit, where the sentence has just named it
    - `fraction`: without the unit in inches, where a fraction says by itself what it is
    - `moment`: not a length but a moment in inch-pounds, in newton-metres beside millimetres

    Attributes:
        template: the words, with a place in braces for each value
        values: lengths [in], other numbers, text, and words that have lengths in them too
    """

    template: str
    values: "tuple[Value, ...]" = ()

    def in_unit(self, unit: LengthUnit) -> str:
        """The words as a shop reads them.

        Args:
            unit: the shop's unit

        Returns:
            Text with every length in that unit.

        Source: common practice.
        """
        return self.template.format(*(_placed(value, unit) for value in self.values))

    def __str__(self) -> str:
        return self.in_unit(LengthUnit.INCH)

    def __format__(self, place: str) -> str:
        raise TypeError("Words with lengths in them are put into others by `say`; at a door, by `in_unit`.")

    def __add__(self, other: "Words") -> "Said":
        return Said("{}{}", (self, other))

    def __radd__(self, other: str) -> "Said":
        return Said("{}{}", (other, self))


Words: TypeAlias = Said | str
"""What the core says: text, or words with lengths in them."""

Value: TypeAlias = Inches | str | Said


_new = object.__new__


def say(template: str, *values: Value) -> Said:
    """Words with lengths in them, which cost nothing until somebody reads them.

    Args:
        template: the words, with a place in braces for each value; `Said` lists what may stand in a place
        values: lengths [in], other numbers, text, and words that have lengths in them too

    Returns:
        The words.

    Source: common practice.
    """
    said = _new(Said)  # as a call of it, whose own way takes as long again
    said.template, said.values = template, values
    return said


def strung(between: str, words: Iterable[Words]) -> Words:
    """Words one after the other, as `str.join` has it.

    Args:
        between: what stands between two of them
        words: any number of them

    Returns:
        The words; empty text when there are none.

    Source: common practice.
    """
    each = tuple(words)
    return Said(between.join("{}" for _ in each), each) if each else ""


def in_unit(words: Words, unit: LengthUnit) -> str:
    """What the core says, as a shop reads it.

    Args:
        words: text, or words with lengths in them
        unit: the shop's unit

    Returns:
        Text with every length in that unit.

    Source: common practice.
    """
    return words.in_unit(unit) if isinstance(words, Said) else words


def refusal(error: Exception, unit: LengthUnit) -> str:
    """Why something was refused, as a shop reads it.

    Args:
        error: an error that was raised with one sentence
        unit: the shop's unit

    Returns:
        The sentence with every length in that unit.

    Source: common practice.
    """
    words = error.args[0] if error.args else ""
    return in_unit(words, unit) if isinstance(words, Said) else str(error)


def written_in(text: str, unit: LengthUnit) -> str:
    """What was written in inches once for all, a hint or a docstring, as a shop reads it.

    Args:
        text: words with inches in them, such as `1/32 in` or `down to 1/64`
        unit: the shop's unit

    Returns:
        The words with every such size in that unit; classes of lumber, such as 5/4, stay.

    Source: common practice.
    """
    if unit is LengthUnit.INCH:
        return text
    return WRITTEN.sub(lambda size: say("{}", float(parse_length(size[1]))).in_unit(unit), text)


def unit_read(shop: LengthUnit, piece: LengthUnit) -> LengthUnit:
    """The unit in which a shop reads a piece: a metric shop reads every one in millimetres.

    Args:
        shop: the unit in which the shop thinks
        piece: the unit in which the piece was drawn

    Returns:
        Millimetres where either is metric: a shop in inches reads a metric piece as it was drawn.

    Source: common practice.
    """
    return shop if shop is LengthUnit.MILLIMETRE else piece


class _Placed:
    """A number in its place, which prints as the place says."""

    __slots__ = ("unit", "value")

    def __init__(self, value: float, unit: LengthUnit) -> None:
        self.value = value
        self.unit = unit

    def __format__(self, place: str) -> str:
        if place.endswith(("d", "f", "g", ",")):
            return format(self.value, place)
        words = place.split()
        if "moment" in words:
            return _moment(self.value, self.unit, words)
        size = _size(self.value, self.unit, words)
        unnamed = "bare" in words or ("fraction" in words and self.unit is LengthUnit.INCH)
        return size if unnamed else f"{size} {self.unit.value}"


def _placed(value: Value, unit: LengthUnit) -> object:
    """A value that formats itself."""
    match value:
        case str():
            return value
        case Said():
            return value.in_unit(unit)
        case _:
            return _Placed(value, unit)


def _size(inches: Inches, unit: LengthUnit, words: list[str]) -> str:
    """A length without its unit. No sign says that a tenth of a millimetre is rounded: no rule shows less."""
    metric = unit is LengthUnit.MILLIMETRE
    if "exact" in words and not metric and 0 < inches < MOST_IN_FRACTIONS and float(inches * 64).is_integer():
        return show(inches)
    if "exact" in words or not math.isfinite(inches):
        return f"{inches * MILLIMETRES_PER_INCH if metric else inches:g}"
    decimals = next((int(word[1:]) for word in words if word.startswith(".")), None)
    if decimals is not None:
        return f"{inches * MILLIMETRES_PER_INCH:.{decimals - 1}f}" if metric else f"{inches:.{decimals}f}"
    parts = next((int(word) for word in words if word.isdecimal()), 64)
    step = MILLIMETRE_STEPS.get(parts, 0.1) / MILLIMETRES_PER_INCH if metric else 1 / parts
    if "up" in words:
        inches = up_to(inches, step)
    elif "down" in words:
        inches = down_to(inches, step)
    return show_mm(inches) if metric else show(inches, parts)


def _moment(inch_pounds: InchPounds, unit: LengthUnit, words: list[str]) -> str:
    """A moment to the whole unit."""
    metric = unit is LengthUnit.MILLIMETRE
    shown = f"{inch_pounds * NEWTON_METRES_PER_INCH_POUND if metric else inch_pounds:,.0f}"
    return shown if "bare" in words else f"{shown} {'N·m' if metric else 'in-lb'}"
