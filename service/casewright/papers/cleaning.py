"""Text made fit for paper: no signs that control or turn it, no word that runs off the page."""

import re
import unicodedata
from collections.abc import Mapping
from typing import Any

NAME = 120
"""Signs of a name that a heading, a cell or a running head shows; a paper is not the place for more."""
LONG_WORD = 32
BREAK = "\u200b"
"""A space of no width, at which a line may be broken."""
TURNS = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u206f\ufeff\ufff9-\ufffb]")
"""Signs that turn the direction of what follows, so that a sum or a name reads otherwise than it is."""
UNBROKEN = re.compile(rf"[^\s{BREAK}]{{{LONG_WORD + 1},}}")


def clean(value: Any) -> Any:
    """Plain data with every text in it made fit for paper.

    Args:
        value: text, numbers, and lists and tables of them

    Returns:
        The same without control signs, marks of direction and halves of signs.
    """
    match value:
        case str():
            return clean_text(value)
        case Mapping():
            return {key: clean(each) for key, each in value.items()}
        case list() | tuple():
            return [clean(each) for each in value]
        case _:
            return value


def clean_text(text: str) -> str:
    """Text without control signs, marks of direction, halves of signs; line breaks and tabs stay.

    Args:
        text: anything that a person may have typed or pasted

    Returns:
        The text.
    """
    plain = TURNS.sub("", text.replace("\r\n", "\n"))
    return "".join(sign for sign in plain if sign in "\n\t" or unicodedata.category(sign) not in ("Cc", "Cs"))


def breakable(text: str) -> str:
    """Text in which a word too long for a line may be broken.

    Args:
        text: any text

    Returns:
        The same signs, with breaks of no width within words of more than 32.
    """
    return UNBROKEN.sub(lambda word: BREAK.join(word[0]), text)


def name(text: str, most: int = NAME) -> str:
    """A name on one line, shortened where it is longer than anybody's.

    Args:
        text: the name
        most: how many signs are shown

    Returns:
        The name, with … where something was left out.
    """
    line = " ".join(clean_text(text).split())
    return breakable(line if len(line) <= most else line[: most - 1].rstrip() + "…")


def words(text: str) -> str:
    """Running text, whole, with its own line breaks.

    Args:
        text: one or more paragraphs

    Returns:
        The text, ready to be set.
    """
    return breakable(clean_text(text).strip())
