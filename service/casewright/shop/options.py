"""Options: other ways to make a unit, each kept as what it changes in the unit's file."""

import json
from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import construct
from casewright.records.base import new_id
from casewright.records.jobs import UnitOption
from casewright.records.quotes import options_of
from casewright.records.sessions import Fenced
from casewright.shop.keeping import note_history
from casewright.shop.refusals import NotFound, Refused
from casewright.shop.units import LoadedUnit, spec_text

NOT_AN_OPTION = {"code", "measured", "casewright"}
CHOSEN = {"kind", "rule", "wood"}
"""Where a group has one of these, it decides which other fields there are."""
MOST_OPTIONS = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherWay:
    """What a unit could be made of, or like, instead; what is left empty stays as it is.

    Attributes:
        case: wood of the case, and of what follows it
        fronts: wood of the drawer fronts
        drawers: wood of the drawer sides and backs
        bottom: `solid`, or the kind of sheet
        dividers: how the dividers meet the sides
        finish: a finish
        coats: coats on the outside
        pulls: the pull, by its name in the price list
        count: how many are made
    """

    case: str = ""
    fronts: str = ""
    drawers: str = ""
    bottom: str = ""
    dividers: str = ""
    finish: str = ""
    coats: int | None = None
    pulls: str = ""
    count: int | None = None


def other_spec(loaded: LoadedUnit, way: OtherWay) -> UnitSpec:
    """The choices of a unit, made the other way.

    Raises:
        CannotRead: with a sentence for what cannot be used
    """
    return read_as(UnitSpec, with_changes(_file(loaded), {"set": dict(_set(loaded.spec, way)), "drop": []}))


def _set(spec: UnitSpec, way: OtherWay) -> Iterator[tuple[str, Any]]:
    woods = {"case": way.case, "fronts": way.fronts, "drawers": way.drawers}
    for role, name in woods.items():
        held = getattr(spec.woods, role) or spec.woods.case
        if name:
            yield f"woods.{role}", {"wood": name, "cut": held.cut.value}
    if way.bottom:
        kind = {"kind": "solid"} if way.bottom == "solid" else {"kind": "ply", "sheet": way.bottom}
        yield "drawers.bottom", kind
    plain = {
        "case.divider_end": way.dividers,
        "finish.product": way.finish,
        "finish.show_coats": way.coats,
        "pulls.item": way.pulls,
        "count": way.count,
    }
    yield from ((path, value) for path, value in plain.items() if value not in {"", None})


def changes_between(base: Mapping[str, Any], other: Mapping[str, Any]) -> dict[str, Any]:
    """What has to be done to one unit file to make it another: places to set, and places to drop."""
    found: dict[str, Any] = {"set": {}, "drop": []}
    _compare(base, other, "", found)
    return found


def _compare(base: Mapping[str, Any], other: Mapping[str, Any], way: str, found: dict[str, Any]) -> None:
    for name in sorted({*base, *other}):
        path = f"{way}{name}"
        if path in NOT_AN_OPTION:
            continue
        was, is_now = base.get(name, {}), other.get(name, {})
        if name not in other:
            found["drop"].append(path)
        elif _is_group(was) and _is_group(is_now):
            _compare(was, is_now, f"{path}.", found)
        elif name not in base or was != is_now:
            found["set"][path] = is_now


def _is_group(value: Any) -> bool:
    """Whether fields are changed one by one; a choice such as a wood with its cut changes as a whole."""
    return isinstance(value, Mapping) and not CHOSEN & value.keys()


def with_changes(base: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    """A unit file with changes made to it."""
    made = deepcopy(dict(base))
    for path in changes["drop"]:
        place, last = _place(made, path)
        place.pop(last, None)
    for path, value in changes["set"].items():
        place, last = _place(made, path)
        place[last] = deepcopy(value)
    return made


def _place(made: dict[str, Any], path: str) -> tuple[dict[str, Any], str]:
    *way, last = path.split(".")
    place = made
    for step in way:
        if not isinstance(place.get(step), dict):
            place[step] = {}
        place = place[step]
    return place, last


def add_option(
    db: Fenced,
    loaded: LoadedUnit,
    label: str,
    other: UnitSpec,
    figures: Figures,
    who: str,
    now: datetime,
    *,
    base: UnitSpec | None = None,
) -> UnitOption:
    """Adds another way to make a unit.

    Args:
        db: the session
        loaded: the unit
        label: what the customer reads, such as “In walnut”
        other: the unit's choices, made the other way
        figures: the shop's figures, to try whether it can be built
        who: who adds it
        now: the moment
        base: the unit as it stood before the change, where that is written otherwise than in its file

    Raises:
        CannotBuild, CannotGraduate, CannotBeLaidOut …: it cannot be built, with a sentence that says why
        Refused: nothing is different, or there are enough
    """
    file = _file(loaded) if base is None else json.loads(spec_text(base))
    changes = changes_between(file, json.loads(spec_text(other)))
    if not changes["set"] and not changes["drop"]:
        raise Refused("Nothing is different from the unit as it is; change at least one thing.", 422)
    if len(options_of(db, (loaded.unit.id,))) >= MOST_OPTIONS:
        raise Refused(f"A unit has {MOST_OPTIONS} options at most; take one out first.", 422)
    construct(other, figures)
    made = UnitOption(id=new_id(), unit_id=loaded.unit.id, label=label, changes=changes, created_at=now)
    db.add(made)
    what = f"Added the option “{label}” to unit {loaded.unit.code}."
    note_history(db, who, now, what, job_id=loaded.job.id)
    return made


def remove_option(db: Fenced, option_id: str, units: list[LoadedUnit], who: str, now: datetime) -> None:
    """Takes an option out of what is offered; quotes that were sent with it keep it.

    Raises:
        NotFound: none of these units has such an option
    """
    held = db.get(UnitOption, (db.shop_id, option_id))
    loaded = next((each for each in units if held is not None and each.unit.id == held.unit_id), None)
    if held is None or loaded is None:
        raise NotFound("option")
    db.delete(held)
    what = f"Took the option “{held.label}” of unit {loaded.unit.code} out."
    note_history(db, who, now, what, job_id=loaded.job.id, before=held.changes)


def option_text(loaded: LoadedUnit, option: UnitOption) -> str:
    """The unit's choices with an option's changes, as JSON text.

    Raises:
        CannotRead: the unit has changed so that the option fits it no more
    """
    return spec_text(read_as(UnitSpec, with_changes(_file(loaded), option.changes)))


def _file(loaded: LoadedUnit) -> dict[str, Any]:
    held: dict[str, Any] = json.loads(loaded.text)
    return held
