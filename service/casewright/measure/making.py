"""Frozen values that are made as quickly as open ones."""

from collections.abc import Callable
from dataclasses import MISSING, Field, fields
from typing import Any, TypeVar, cast

Kind = TypeVar("Kind")


OPENED: dict[type, type] = {}
"""For each kind that is quickly made the open kind that its values are of while they are made."""


def quickly_made(kind: type[Kind]) -> type[Kind]:
    """A frozen dataclass whose values are made in half of the time, for kinds of which a piece has many.

    The library sets each field of a frozen value by a call past its lock, and these calls were 30 % of
    constructing a piece. Here a value is of an open kind while it is made, and of its own kind, locked, from
    then on. A kind derived from it must be a dataclass too, with a maker of its own.

    Args:
        kind: a frozen dataclass with slots

    Returns:
        The same kind: fields, defaults, what it refuses and its lock stay.

    Source: common practice.
    """
    OPENED[kind] = type(
        f"{kind.__name__}BeingMade",
        (kind,),
        # Both, or Python looks for the lock at every field all the same.
        {"__slots__": (), "__setattr__": object.__setattr__, "__delattr__": object.__delattr__},
    )
    made = _written(kind, "__init__", "self", "_is_now(self, _opened)")
    made.__qualname__ = f"{kind.__qualname__}.__init__"
    made.__annotations__ = {**kind.__init__.__annotations__}
    kind.__init__ = made  # type: ignore[method-assign] # that is the point
    return kind


def maker(kind: type[Kind]) -> type[Kind]:
    """What makes the values of a kind as a call of it does, in half of the time once more.

    Python hands what a kind is called with to its maker in a dictionary, which is as long again as all the
    rest; to a function it hands it as it is. So the few kinds of which a piece has fifty and more values are
    made by a function, with a name such as `new_part`.

    Args:
        kind: a kind that is quickly made

    Returns:
        A function. It passes for the kind itself where types are checked, so that each call of it is held to
        the fields that the kind has.

    Source: common practice.
    """
    made = _written(kind, "make", "", "self = _new(_opened)", "return self")
    made.__qualname__ = made.__name__ = f"new_{kind.__name__}"
    return cast(type[Kind], made)


def changer(kind: type[Kind]) -> Callable[..., Kind]:
    """What makes a value like another of its kind but for some fields, in a fifth of the library's time.

    Args:
        kind: a kind that is quickly made

    Returns:
        A function of a value, and of the fields that differ by name.

    Source: common practice.
    """
    each = [field.name for field in fields(kind)]  # type: ignore[arg-type] # a dataclass
    known = {"_new": object.__new__, "_opened": OPENED[kind], "_kind": kind, "_KEPT": MISSING}
    lines = [
        f"def change(value, *, {', '.join(f'{name}=_KEPT' for name in each)}):",
        "    self = _new(_opened)",
        *(f"    self.{name} = value.{name} if {name} is _KEPT else {name}" for name in each),
        "    self.__class__ = _kind",
        *(["    self.__post_init__()"] if hasattr(kind, "__post_init__") else []),
        "    return self",
    ]
    exec("\n".join(lines), known)  # noqa: S102 - as above
    return cast(Callable[..., Kind], known["change"])


def _written(kind: type[Any], name: str, first: str, begin: str, *end: str) -> Any:
    """A function that makes a value of a kind, written for the fields that it has."""
    each = fields(kind)
    known = {
        "_is_now": object.__dict__["__class__"].__set__,
        "_new": object.__new__,
        "_opened": OPENED[kind],
        "_kind": kind,
        "_MISSING": MISSING,
    }
    known |= {f"_default_{field.name}": _default(field) for field in each}
    in_order = [_asked_for(field) for field in each if not field.kw_only]
    by_name = [_asked_for(field) for field in each if field.kw_only]
    asked = ", ".join([*([first] if first else []), *in_order, *(["*", *by_name] if by_name else [])])
    lines = [
        f"def {name}({asked}):",
        f"    {begin}",
        *(f"    self.{field.name} = {_given(field)}" for field in each),
        "    self.__class__ = _kind",
        *(["    self.__post_init__()"] if hasattr(kind, "__post_init__") else []),
        *(f"    {line}" for line in end),
    ]
    exec("\n".join(lines), known)  # noqa: S102 - as dataclasses does: a call for each field is what costs
    return known[name]


def _default(field: "Field[Any]") -> object:
    """What stands in a field that was left out, or what makes it; a mark where it may not be left out."""
    return field.default if field.default_factory is MISSING else field.default_factory


def _asked_for(field: "Field[Any]") -> str:
    if field.default_factory is not MISSING:
        return f"{field.name}=_MISSING"
    return field.name if field.default is MISSING else f"{field.name}=_default_{field.name}"


def _given(field: "Field[Any]") -> str:
    if field.default_factory is MISSING:
        return field.name
    return f"_default_{field.name}() if {field.name} is _MISSING else {field.name}"
