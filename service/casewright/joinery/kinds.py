"""The kinds of joint that can be solved from plain numbers.

A joint's module is found by its `KIND`, so that a new family needs its module, its fields and its test, and
no line elsewhere.
"""

import importlib
import pkgutil
from dataclasses import replace
from functools import cache

from casewright.joinery import families
from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.joint import JointKind, Measured, Solved, Tool, Values
from casewright.joinery.tools_kept import kept_settings, tools_at_hand
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import say


@cache
def kinds() -> dict[str, JointKind]:
    """Every kind of joint, by its name.

    Returns:
        The kinds, in the order of their rooms' names.

    Source: the rooms of `families/`.
    """
    rooms = sorted(room.name for room in pkgutil.iter_modules(families.__path__, f"{families.__name__}."))
    found = (importlib.import_module(f"{room}.joint").KIND for room in rooms)
    return {kind.name: kind for kind in found if isinstance(kind, JointKind)}


def solve(
    kind: str, values: Values, measured: Measured = (), rack: Rack = RACK, ledger: Ledger = UNKEPT
) -> Solved:
    """A joint of any kind, worked out from plain numbers; what is left out is chosen and reported.

    Args:
        kind: the joint's name, such as `half-blind`
        values: the numbers by the names of the kind's fields: lengths in inches, a slope of 1:8 as 8
        measured: marks of sides with their thickness in the rabbet, for a kind that groups them [in]
        rack: the shop's chisels, saws, cutters and gauges
        ledger: where the working is kept

    Returns:
        The joint, and each number that was chosen for it.

    Raises:
        ValueError: the kind or a field is not known, a number is missing or cannot be meant, or the joint
            cannot be laid out (`CannotBeLaidOut`).

    Source: each joint's module names its own.
    """
    if kind not in kinds():
        raise ValueError(f"“{kind}” is not a joint known here; it can be {', '.join(kinds())}.")
    family = kinds()[kind]
    _refuse_what_cannot_be_meant(family, values)
    if measured and not family.takes_measured_sides:
        raise ValueError(f"A {kind} joint takes no measured sides; leave them out.")
    solved = family.solve(values, measured, rack, ledger)
    owned = {Tool.GAUGE: rack.gauges, Tool.DIVIDERS: rack.dividers}
    settings = solved.joint.settings
    kept = (
        tools_at_hand(settings, tool, own) for tool, own in owned.items() if kept_settings(settings, tool)
    )
    return replace(solved, kept=tuple(kept))


def _refuse_what_cannot_be_meant(family: JointKind, values: Values) -> None:
    known = {field.name: field for field in family.fields}
    strange = [name for name in values if name not in known]
    if strange:
        raise ValueError(f"A {family.name} joint has no “{strange[0]}”; it takes {', '.join(known)}.")
    for name, field in known.items():
        value = values.get(name)
        words = name.replace("_", " ")
        if value is None:
            if field.required:
                raise ValueError(
                    say("The {} is missing; give it as {} {}.", words, field.option, field.typed_example)
                )
            continue
        if not field.allows(value):
            shown = say("{}" if field.measure.is_length else "{:g}", value)
            raise ValueError(say("The {} cannot be {}; give {}.", words, shown, field.wanted))
