"""A unit's choices, each entered in the ledger, so that every size can be followed back to who typed it."""

from functools import cache, lru_cache
from typing import Annotated, TypeVar, cast

from casewright.measure.ledger import Ledger
from casewright.measure.printing import unit_of
from casewright.measure.units import Unit
from casewright.pieces.asked.fields import Spec

Chosen = TypeVar("Chosen", bound=Spec)

TYPED = "typed in the unit file"
DEFAULT = "default (common practice); type your own in the unit file"
MEASURED = "measured at the bench"


def traced(owner: Chosen, ledger: Ledger, path: str = "") -> Chosen:
    """The same choices, with every size entered in the ledger under the path by which the unit file names it.

    Args:
        owner: a unit spec, or a part of one
        ledger: where each size is entered
        path: the path of the owner within the unit file, with a dot at the end; empty for the whole

    Returns:
        A copy whose sizes remember their path.

    Source: the unit file, and the defaults written in its schema.
    """
    if not owner.model_fields_set:
        made, entries = _left_as_it_is(type(owner), ledger.named(path))
        ledger.repeat(entries)
        return cast(Chosen, made)
    return _entered(owner, ledger, path)


@lru_cache(maxsize=1024)
def _left_as_it_is(model: type[Spec], path: str) -> tuple[Spec, Ledger]:
    """A part of a unit spec in which nothing was typed, traced; most parts of most units are like that."""
    ledger = Ledger()
    return _entered(model(), ledger, path), ledger


def _entered(owner: Chosen, ledger: Ledger, path: str) -> Chosen:
    kinds = _kinds(type(owner))
    typed = owner.model_fields_set
    values = {
        name: value
        if value.__class__ in PLAIN
        else _traced(value, ledger, f"{path}{name}", name in typed, kinds.get(name))
        for name, value in owner.__dict__.items()
    }
    # They stay valid: numbers that remember their names take the place of the numbers.
    return _holding(owner, values)


def _holding(owner: Chosen, values: dict[str, object]) -> Chosen:
    """A copy that holds other values, made as the library makes one; a spec has nothing more than these."""
    made = owner.__class__.__new__(owner.__class__)
    put = object.__setattr__  # past its lock
    put(made, "__dict__", values)
    put(made, "__pydantic_fields_set__", owner.model_fields_set)
    put(made, "__pydantic_extra__", None)
    put(made, "__pydantic_private__", None)
    return made


@cache
def _kinds(model: type[Spec]) -> dict[str, object]:
    """The alias of each field that has a unit, for the fields of one model."""
    found: dict[str, object] = {}
    for name, field in model.model_fields.items():
        unit = next((mark for mark in field.metadata if isinstance(mark, Unit)), unit_of(field.annotation))
        if unit is not None:
            found[name] = Annotated[float, unit]
    return found


PLAIN = frozenset({bool, int, str, type(None)})
"""What nothing is entered for; the greater part of all choices."""


def _traced(value: object, ledger: Ledger, path: str, typed: bool, kind: object) -> object:
    if value.__class__ in PLAIN:
        return value
    if isinstance(value, float):
        basis = MEASURED if path.startswith("measured.") else TYPED if typed else DEFAULT
        return ledger.given(path, value, basis, kind)
    if isinstance(value, Spec):
        return traced(value, ledger, f"{path}.")
    if isinstance(value, tuple):
        return tuple(
            _traced(item, ledger, f"{path}.{number}", typed, kind)
            for number, item in enumerate(value, start=1)
        )
    if isinstance(value, dict):
        return {key: _traced(item, ledger, f"{path}.{key}", typed, kind) for key, item in value.items()}
    return value
