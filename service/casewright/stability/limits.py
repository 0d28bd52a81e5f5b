"""The limits that the screens hold a design to, each with where it comes from."""

import json
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from casewright.measure.making import quickly_made
from casewright.measure.units import (
    CubicFeet,
    Inches,
    Number,
    Pounds,
    PoundsForce,
    PoundsPerCubicFoot,
)


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What a design is held to.

    Attributes:
        scope_height: clothing storage as high as this comes under the rule [in]
        scope_weight: and as heavy as this, empty [lb]
        scope_volume: and with as much room as this in its drawers [cu ft]
        volume_allowance: taken off a drawer's clear height before its volume is counted [in]
        fill_density: of clothes in a drawer [lb per cu ft]
        child_weight: hung over the front of an open drawer [lb]
        block_thickness: under the rear edge, for the slope of a carpet [in]
        push_force: outward, near the top [force_pound]
        push_height: the highest point at which it acts [in]
        target_factor: holding over tipping moment that a design should have [dimensionless]
        sag_ratio: span over sag of a bottom that still looks straight [dimensionless]
        shelf_ratio: the same of a shelf [dimensionless]
        friction: of wood on wood [dimensionless]
    """

    scope_height: Inches
    scope_weight: Pounds
    scope_volume: CubicFeet
    volume_allowance: Inches
    fill_density: PoundsPerCubicFoot
    child_weight: Pounds
    block_thickness: Inches
    push_force: PoundsForce
    push_height: Inches
    target_factor: Number
    sag_ratio: Number
    shelf_ratio: Number
    friction: Number


@cache
def rows() -> dict[str, dict[str, object]]:
    """Every limit by its name, with value, unit, source and basis.

    Source: each row names its own.
    """
    text = (files("casewright.stability") / "data" / "limits.json").read_text(encoding="utf-8")
    return {row["name"]: row for row in json.loads(text)["limits"]}


@cache
def house_limits() -> Limits:
    """The limits that a shop starts with.

    Source: ASTM F2057-23 and 16 CFR 1261 for tipping, some figures from memory; common practice for the rest.
    """
    return Limits(**{name: row["value"] for name, row in rows().items()})  # type: ignore[arg-type]


def source_of(name: str) -> str:
    """Where a limit comes from, and how sure that is.

    Args:
        name: the limit's name

    Returns:
        Source and basis.

    Source: common practice.
    """
    row = rows()[name]
    return f"{row['source']} ({row['basis']})"
