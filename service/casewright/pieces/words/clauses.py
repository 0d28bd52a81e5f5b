"""What stands under a quote: terms, what the price does not include, and what a customer must know."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Literal

from casewright.measure.rounding import near_to
from casewright.measure.units import Fahrenheit, Percent
from casewright.pieces.asked.season_spec import Air
from casewright.pieces.built.construct import Construction
from casewright.wood.moisture import humidity_for

Part = Literal["terms", "not_included", "cautions"]
ROOM: Fahrenheit = 70.0
"""A heated room; the moisture of its wood is read back into humidity at this (common practice) [degF]."""
STEP: Percent = 5.0
"""A customer's hygrometer is no finer (common practice) [%]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clause:
    """One clause that a shop starts with.

    Attributes:
        key: its short name
        text: what the customer reads
        source: where it comes from
        basis: published, common practice or from memory
        note: what the shop should see to before it uses the clause; empty for nothing
        when: which pieces it is for: `free-standing`, `notched` for drawers around pipes, or empty for all
    """

    key: str
    text: str
    source: str
    basis: str
    note: str = ""
    when: str = ""


@cache
def clauses(part: Part) -> tuple[Clause, ...]:
    """The clauses that a shop starts with.

    Args:
        part: terms, what is not included, or cautions

    Returns:
        The clauses, in the order in which they are printed.

    Source: each clause names its own.
    """
    text = files("casewright.pieces").joinpath("data/terms.json").read_text(encoding="utf-8")
    return tuple(Clause(**row) for row in json.loads(text)[part])


def usual_texts(part: Literal["terms", "not_included"]) -> tuple[str, ...]:
    """The texts of the terms, or of what is not included, that a shop starts with.

    Args:
        part: which of the two

    Returns:
        One text for each clause.

    Source: each clause names its own.
    """
    return tuple(clause.text for clause in clauses(part))


def cautions_of(units: Iterable[Construction]) -> tuple[str, ...]:
    """What the customer of these units must know, with the humidity that all of them were made for.

    Args:
        units: the units of the job

    Returns:
        One text for each caution that applies.

    Source: each clause names its own; humidity by the Wood Handbook, FPL-GTR-282 (2021), chapter 4.
    """
    made = tuple(units)
    dry, wet = room_humidity(made)
    applies = {
        "": True,
        "free-standing": any(unit.spec.use.free_standing for unit in made),
        "notched": any(drawer.sizes.notch for unit in made for drawer in unit.drawers),
    }
    return tuple(
        clause.text.format(dry=f"{dry:g}", wet=f"{wet:g}")
        for clause in clauses("cautions")
        if applies[clause.when]
    )


def room_humidity(units: Iterable[Construction]) -> tuple[Percent, Percent]:
    """The range of humidity that suits every one of these units, to the nearest five per cent.

    Args:
        units: the units of the job

    Returns:
        The driest and the dampest that the room should be [%]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, equation of Table 4-2.
    """
    ends = [unit.spec.season.ends for unit in units]
    dry = max((_humidity(driest) for driest, _ in ends), default=0.0)
    wet = min((_humidity(wettest) for _, wettest in ends), default=100.0)
    low, high = sorted((near_to(dry, STEP), near_to(wet, STEP)))
    return low, high


def _humidity(air: Air) -> float:
    if air.humidity is not None:
        return air.humidity
    return humidity_for(ROOM, air.moisture_content)
