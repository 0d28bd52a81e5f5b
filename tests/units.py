"""Units for the tests: worked dresser A from its file, and any file with a few of its fields changed."""

import json
from collections.abc import Mapping
from copy import deepcopy
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from casewright.pieces.asked.reading import read_as, read_unit
from casewright.pieces.asked.shop import Shop, example_shop, shop
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction, construct
from casewright.pieces.costs.estimate import Estimate, estimate

DRESSER_FILE = Path(__file__).parent / "outside" / "units" / "dresser_a.json"
BEDSIDE_FILE = DRESSER_FILE.with_name("bedside_b.json")
TODAY = date(2026, 11, 25)


def dresser_text() -> str:
    """The unit file of worked dresser A."""
    return DRESSER_FILE.read_text(encoding="utf-8")


def dresser(changes: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """What the file of worked dresser A holds, with some fields changed: `{"drawers.lap": "1/8"}`."""
    return changed(json.loads(dresser_text()), changes or {})


def chest(changes: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """What the file of a small chest of three drawers holds, every size of it left to the defaults."""
    plain = {
        "casewright": 1,
        "name": "Small chest",
        "body": {"width": "24", "depth": "16", "opening_total": "18"},
        "rows": [{}, {}, {}],
        "woods": {"case": "cherry", "drawers": "soft maple", "inside": "poplar"},
    }
    return changed(plain, changes or {})


def changed(data: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    """A copy of a file's data with some fields put in; a number in a path counts list entries from nought."""
    copy = deepcopy(dict(data))
    for path, value in changes.items():
        *way, last = path.split(".")
        place: Any = copy
        for step in way:
            place = place[int(step)] if isinstance(place, list) else place.setdefault(step, {})
        place[int(last) if isinstance(place, list) else last] = value
    return copy


def unit(data: Mapping[str, Any]) -> UnitSpec:
    """The choices that a file with this data holds."""
    return read_unit(json.dumps(data))


def built(data: Mapping[str, Any], own: Shop | None = None) -> Construction:
    """The unit of a file, worked out."""
    return construct(unit(data), own or example_shop())


def own_shop(**figures: Any) -> Shop:
    """A shop whose file holds these figures and nothing else."""
    return shop(read_as(ShopSpec, figures))


def estimated(data: Mapping[str, Any], own: Shop | None = None) -> Estimate:
    """The estimate of a file, by the example shop or by another."""
    return estimate(unit(data), own or example_shop(), TODAY)


@cache
def dresser_estimate() -> Estimate:
    """The estimate of worked dresser A by the example shop, made once."""
    return estimate(read_unit(dresser_text()), example_shop(), TODAY)


def bedside(changes: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """What the file of worked bedside B holds, with some fields changed."""
    return changed(json.loads(BEDSIDE_FILE.read_text(encoding="utf-8")), changes or {})


@cache
def bedside_estimate() -> Estimate:
    """The estimate of worked bedside B by the example shop, made once."""
    return estimated(bedside())
