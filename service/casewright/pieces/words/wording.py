"""Numbers, sizes and lists as a customer reads them."""

import json
import math
from collections.abc import Sequence
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.measure.lengths import LengthUnit, show
from casewright.measure.units import MILLIMETRES_PER_INCH, Count, Inches

WORDS = (
    *("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    *("eleven", "twelve"),
)
SIXTEENTHS = 16
"""A customer's tape shows no finer marks (common practice)."""
HISSING = ("s", "x", "z", "ch", "sh")


@cache
def known_words() -> dict[str, Any]:
    """What a customer reads beside a word of the trade.

    Source: usage of the trade.
    """
    text = files("casewright.pieces").joinpath("data/words.json").read_text(encoding="utf-8")
    held: dict[str, Any] = json.loads(text)
    return held


def number_word(number: Count) -> str:
    """A small number in words, a large one in digits.

    Args:
        number: nought or more [dimensionless]

    Returns:
        Such as `four`, or `14`.

    Source: usage in print: words up to twelve.
    """
    return WORDS[number] if number < len(WORDS) else str(number)


def several(number: Count, noun: str) -> str:
    """A number with its noun, in the singular or the plural.

    Args:
        number: nought or more [dimensionless]
        noun: one plain English noun in the singular

    Returns:
        Such as `one drawer`, `four drawers`.

    Source: usage.
    """
    return f"{number_word(number)} {noun if number == 1 else plural(noun)}"


def plural(noun: str) -> str:
    """The plural of a plain English noun.

    Args:
        noun: in the singular

    Returns:
        The plural.

    Source: usage.
    """
    if noun.endswith("y") and noun[-2:-1] not in ("", *"aeiou"):
        return f"{noun[:-1]}ies"
    if noun.endswith("lf"):
        return f"{noun[:-1]}ves"
    return f"{noun}es" if noun.endswith(HISSING) else f"{noun}s"


def plural_of_part(noun: str) -> str:
    """The plural of what a part is called, whose first words may be followed by where it belongs.

    Args:
        noun: such as `drawer front` or `upright between drawers`

    Returns:
        Such as `drawer fronts`, `uprights between drawers`.

    Source: usage.
    """
    places = [noun.find(f" {word} ") for word in ("between", "of", "to", "under", "beside", "for")]
    cut = min((place for place in places if place > 0), default=len(noun))
    return f"{plural(noun[:cut])}{noun[cut:]}"


def plain_size(inches: Inches, unit: LengthUnit) -> str:
    """A size as a customer's tape shows it: to 1/16 in, or to the millimetre.

    Args:
        inches: the size [in]
        unit: the shop's unit

    Returns:
        Without its unit.

    Source: common practice.
    """
    if unit is LengthUnit.INCH:
        return show(inches, SIXTEENTHS).removeprefix("≈")
    return str(math.floor(inches * MILLIMETRES_PER_INCH + 0.5 + 1e-9))


def sized(inches: Inches, unit: LengthUnit) -> str:
    """A size as a customer's tape shows it, with its unit.

    Args:
        inches: the size [in]
        unit: the shop's unit

    Returns:
        Such as `44-3/8 in` or `1127 mm`.

    Source: common practice.
    """
    return f"{plain_size(inches, unit)} {unit.value}"


def joined(words: Sequence[str]) -> str:
    """A list in a sentence.

    Args:
        words: the members

    Returns:
        Such as `top, case and fronts`.

    Source: usage.
    """
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def sentence(text: str) -> str:
    """Text that begins with a capital and ends with a stop.

    Args:
        text: one sentence, without its stop

    Returns:
        The sentence.

    Source: usage.
    """
    return f"{text[:1].upper()}{text[1:]}."
