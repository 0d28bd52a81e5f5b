"""Any value of the core as a maker reads it: a size off the rule, money, a list by its first few members."""

import math
import re
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, fields, is_dataclass
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from functools import cache
from itertools import chain, islice, repeat
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from casewright.measure.lengths import LengthUnit, show_in
from casewright.measure.money import show_money
from casewright.measure.units import MILLIMETRES_PER_INCH, NEWTON_METRES_PER_INCH_POUND, Number, Unit

WRITTEN = {
    "inch": " in",
    "inch**2": " sq in",
    "inch**3": " cu in",
    "foot": " ft",
    "foot**2": " sq ft",
    "foot**3": " cu ft",
    "millimetre": " mm",
    "tick": " ticks",
    "board_foot": " bd ft",
    "pound": " lb",
    "pound/foot": " lb/ft",
    "pound/foot**3": " lb/cu ft",
    "psi": " psi",
    "force_pound": " lbf",
    "inch*force_pound": " in-lb",
    "percent": "%",
    "1/percent": " per % moisture",
    "degF": "°F",
    "degree": "°",
    "minute": " min",
    "second": " s",
    "hour": " h",
    "week": " weeks",
    "quart": " qt",
    "foot**2/quart": " sq ft per qt",
    "dimensionless": "",
    "cent": " cents",
}
"""How each unit of the core is written behind a number; any other is written by its own name."""

FEW = 6
LONGEST_TEXT = 160


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """How one shop writes.

    Attributes:
        length: the unit of its sizes
        symbol: what stands before its money
        digits: how many decimals its money has
    """

    length: LengthUnit = LengthUnit.INCH
    symbol: str = "$"
    digits: int = 2


SHOP = Style()


@cache
def hints(annotated: Callable[..., object]) -> dict[str, Any]:
    """The annotations of a function or class with the units in them.

    Args:
        annotated: a function or a class

    Returns:
        An annotation for each argument or attribute, and for `return`; none where they cannot be read.

    Source: common practice.
    """
    try:
        return get_type_hints(annotated, include_extras=True)
    except (NameError, TypeError):
        return {}


def unit_of(kind: object) -> Unit | None:
    """The unit that an annotation names, at its top or in one arm of a union.

    Args:
        kind: an annotation, such as `Inches` or `Inches | None`

    Returns:
        The unit, or None where the annotation has none.

    Source: common practice.
    """
    if get_origin(kind) is Annotated:
        return next((mark for mark in get_args(kind)[1:] if isinstance(mark, Unit)), None)
    if _is_union(kind):
        return next(filter(None, map(unit_of, get_args(kind))), None)
    return None


def show_value(value: object, kind: object = None, style: Style = SHOP) -> str:
    """A value as a maker reads it, on one line and shortened.

    Args:
        value: a quantity, text, a choice, a value of the core, or a collection of these
        kind: the annotation that it goes by, which names the unit
        style: how the shop writes sizes and money

    Returns:
        The value with its unit.

    Source: common practice.
    """
    text = _text(value, kind, style)
    return text if len(text) <= LONGEST_TEXT else text[: LONGEST_TEXT - 1].rstrip() + "…"


def _text(value: object, kind: object, style: Style) -> str:
    """The value by what it is."""
    match value:
        case bool():
            text = "yes" if value else "no"
        case Enum():
            text = str(value.value)
        case int() | float() | Fraction() | Decimal():
            text = _quantity(value, unit_of(kind), style)
        case None | "":
            text = "none"
        case _ if is_dataclass(value) and not isinstance(value, type):
            text = _record(value, style)
        case Mapping():
            text = _mapping(value, kind, style)
        case Collection() if not isinstance(value, str | bytes | type):
            text = _collection(value, kind, style)
        case _:
            text = _words(value.__name__) if hasattr(value, "__name__") else " ".join(str(value).split())
    return text


def _quantity(value: int | float | Fraction | Decimal, unit: Unit | None, style: Style) -> str:
    """A number with its unit."""
    name = unit.name if unit else "dimensionless"
    if name == "inch" and math.isfinite(value):
        return _length(float(value), style)
    if name == "inch*force_pound" and style.length is LengthUnit.MILLIMETRE:
        return f"{show_number(float(value) * NEWTON_METRES_PER_INCH_POUND)} N·m"
    if name == "cent" and float(value).is_integer():
        return show_money(int(value), style.symbol, style.digits)
    return show_number(float(value)) + WRITTEN.get(name, f" {name}")


def _length(inches: float, style: Style) -> str:
    """A size, with its decimal value beside it where the rule cannot show it."""
    shown = show_in(inches, style.length)
    if not shown.startswith("≈"):
        return shown
    exact = inches if style.length is LengthUnit.INCH else inches * MILLIMETRES_PER_INCH
    return f"{shown} ({show_number(round(exact, 4))})"


def show_number(value: Number) -> str:
    """A bare number to six figures, without idle zeros or powers of ten.

    Args:
        value: any number [dimensionless]

    Returns:
        Text such as `0.00245` or `1,234.5`.

    Source: common practice.
    """
    return f"{value:,.0f}" if abs(value) >= 1e6 else f"{Decimal(f'{value:.6g}'):,f}"


def _mapping(value: Mapping[Any, object], kind: object, style: Style) -> str:
    """The first few entries of a table."""
    names, kinds = (*_member_kinds(kind), None, None)[:2]
    shown = [f"{_text(key, names, style)}: {_text(value[key], kinds, style)}" for key in islice(value, FEW)]
    return _listed(shown, len(value))


def _collection(value: Collection[object], kind: object, style: Style) -> str:
    """The first few members of a list."""
    said = [member for member in _member_kinds(kind) if member is not ...] or [None]
    kinds = chain(said, repeat(said[-1]))
    shown = [_text(member, kinded, style) for member, kinded in zip(islice(value, FEW), kinds, strict=False)]
    return _listed(shown, len(value))


def _listed(shown: list[str], count: int) -> str:
    """The members that are shown, and how many are not."""
    more = f" and {count - len(shown)} more" if count > len(shown) else ""
    return ", ".join(shown) + more if shown else "none"


def _record(value: Any, style: Style) -> str:
    """A value of the core by its name, or by its code, or by what is in it."""
    for known_by in ("name", "code"):
        if isinstance(getattr(value, known_by, None), str):
            return str(getattr(value, known_by))
    kinds = hints(value.__class__)
    shown = [
        f"{_words(member.name)} {_text(getattr(value, member.name), kinds.get(member.name), style)}"
        for member in fields(value)[:FEW]
    ]
    return f"{_words(type(value).__name__)} ({_listed(shown, len(fields(value)))})"


def _words(name: str) -> str:
    """A name of the code in plain words."""
    return re.sub(r"(?<=[a-z0-9])(?=[A-Z])", " ", name).replace("_", " ").strip().lower()


def _is_union(kind: object) -> bool:
    """Whether an annotation leaves a choice."""
    return get_origin(kind) in (Union, UnionType)


def _member_kinds(kind: object) -> tuple[Any, ...]:
    """What an annotation says of the members of a collection."""
    if _is_union(kind):
        return next(filter(None, map(_member_kinds, get_args(kind))), ())
    origin = get_origin(kind)
    return get_args(kind) if isinstance(origin, type) and issubclass(origin, Iterable) else ()
