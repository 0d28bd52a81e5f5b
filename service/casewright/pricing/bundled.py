"""The data files of this room, and the numbers that are written in them as text."""

import json
from decimal import Decimal, InvalidOperation
from importlib.resources import files
from typing import Any

from casewright.measure.money import from_decimal
from casewright.measure.units import Cents


def bundled(name: str) -> dict[str, Any]:
    """A data file of this room, read.

    Args:
        name: the file's name

    Returns:
        What it holds; every row names its own source and basis.

    Source: common practice.
    """
    text = (files("casewright.pricing") / "data" / name).read_text(encoding="utf-8")
    held: dict[str, Any] = json.loads(text)
    return held


def typed_number(text: str, what: str) -> Decimal:
    """A number that somebody wrote, exactly as written.

    Args:
        text: digits, with a point for the decimals
        what: what it is, for the message

    Returns:
        The number.

    Raises:
        ValueError: it is not a number.

    Source: common practice.
    """
    try:
        number = Decimal(text)
    except InvalidOperation:
        raise ValueError(f"“{text}” is not a number for {what}. Write it like 9.50.") from None
    if not number.is_finite():
        raise ValueError(f"“{text}” is not a number for {what}. Write it like 9.50.")
    return number


def typed_amount(text: str, what: str) -> Cents:
    """An amount of money that somebody wrote in whole currency units.

    Args:
        text: digits, with a point before the cents
        what: what it is for, for the message

    Returns:
        The amount [cent]

    Raises:
        ValueError: it is not a number.

    Source: common practice.
    """
    return from_decimal(typed_number(text, what))
