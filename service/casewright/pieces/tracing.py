"""A unit's choices, each entered in the ledger, so that every size can be followed back to who typed it."""

from typing import Any, TypeVar

from casewright.measure.ledger import Ledger
from casewright.pieces.fields import Spec

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
    values: dict[str, Any] = {
        name: _traced(value, ledger, f"{path}{name}", name in owner.model_fields_set)
        for name, value in owner.__dict__.items()
    }
    made: Chosen = type(owner).model_construct(_fields_set=owner.model_fields_set, **values)
    return made


def _traced(value: object, ledger: Ledger, path: str, typed: bool) -> object:
    if isinstance(value, float):
        basis = MEASURED if path.startswith("measured.") else TYPED if typed else DEFAULT
        return ledger.given(path, value, basis)
    if isinstance(value, Spec):
        return traced(value, ledger, f"{path}.")
    if isinstance(value, tuple):
        return tuple(
            _traced(item, ledger, f"{path}.{number}", typed) for number, item in enumerate(value, start=1)
        )
    if isinstance(value, dict):
        return {key: _traced(item, ledger, f"{path}.{key}", typed) for key, item in value.items()}
    return value
