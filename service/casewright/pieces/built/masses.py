"""What a unit weighs, part by part, and where each weight sits."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from casewright.measure.ledger import Ledger
from casewright.measure.units import CubicInches, Percent, Pounds, PoundsPerCubicFoot
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Part
from casewright.wood.movement import density
from casewright.wood.sheets import sheets
from casewright.wood.species import wood

CUBIC_INCHES = 1728
PULL_REACH = 3 / 4
"""A pull's weight hangs about so far before the front (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mass:
    """A weight and where it sits.

    Attributes:
        weight: in pounds [lb]
        y: its centre behind the front edge of the case; of a drawer, behind its own front [in]
        z: its centre above the floor [in]
    """

    weight: float
    y: float
    z: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Masses:
    """The weights of one unit.

    Attributes:
        case: everything but the drawers
        drawers: each drawer by its code, with its pulls
        total: the whole unit, empty [lb]
    """

    case: Mass
    drawers: dict[str, Mass]
    total: float


def part_weight(volume: CubicInches, density: PoundsPerCubicFoot) -> Pounds:
    """What a part weighs.

    Rule: volume / 1728 × density

    Args:
        volume: finished volume [cu in]
        density: weight of its wood at the moisture it has [lb per cu ft]

    Returns:
        The weight [lb]

    Source: arithmetic; a cubic foot is 1728 cubic inches.
    """
    return volume / CUBIC_INCHES * density


def total_weight(case: Pounds, drawers: Pounds) -> Pounds:
    """What the whole unit weighs, empty.

    Rule: case + drawers

    Args:
        case: everything but the drawers [lb]
        drawers: all drawers with their pulls [lb]

    Returns:
        The weight [lb]

    Source: arithmetic.
    """
    return case + drawers


@cache
def density_of(material: str, moisture: Percent) -> PoundsPerCubicFoot:
    """The density of a wood or sheet by its name.

    Args:
        material: shop name of a wood, or the name of a sheet
        moisture: moisture content of the wood [%]

    Returns:
        The density [lb per cu ft]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, from the gravity of its table 5-3b.
    """
    for bought in sheets():
        if str(bought) == material:
            return bought.density
    return density(gravity=wood(material).gravity or wood(material).gravity_green, moisture=moisture)


def masses(
    spec: UnitSpec,
    face: Face,
    drawers: tuple[Drawer, ...],
    parts: Iterable[Part],
    moisture: Percent,
    ledger: Ledger,
) -> Masses:
    """What a unit weighs.

    Args:
        spec: what the maker chose
        face: the openings
        drawers: the drawers
        parts: every part of the unit
        moisture: moisture content of the wood [%]
        ledger: keeps the working

    Returns:
        The weights, each with its centre.

    Source: finished volumes and the densities of the species table.
    """
    groups: dict[str, list[tuple[float, float, float]]] = {drawer.code: [] for drawer in drawers}
    case: list[tuple[float, float, float]] = []
    for part in parts:
        weight = part_weight(volume=part.volume, density=density_of(part.wood, float(moisture)))
        entry = (weight, part.box.y + part.box.depth / 2, part.box.z + part.box.height / 2)
        groups.get(part.code.rsplit("-", 1)[0], case).append(entry)
    found = {drawer.code: _with_pulls(spec, face, drawer, groups[drawer.code]) for drawer in drawers}
    whole = _centre(case)
    total = ledger.take(
        "masses.total",
        total_weight,
        case=ledger.given(
            "masses.case", whole.weight, "finished volumes × density, every part but the drawers'"
        ),
        drawers=ledger.given(
            "masses.drawers",
            sum(mass.weight for mass in found.values()),
            "finished volumes × density, and the pulls",
        ),
    )
    return Masses(case=whole, drawers=found, total=total)


def _with_pulls(
    spec: UnitSpec, face: Face, drawer: Drawer, entries: list[tuple[float, float, float]]
) -> Mass:
    opening = drawer.sizes.opening
    middle = face.base_height + opening.bottom + drawer.sizes.height / 2
    pulls = (spec.pulls.weight_lb * len(drawer.pulls), -PULL_REACH, middle)
    return _centre([*entries, pulls])


def _centre(entries: list[tuple[float, float, float]]) -> Mass:
    """The sum of weights, at their common centre."""
    weight = sum(entry[0] for entry in entries)
    return Mass(
        weight=weight,
        y=sum(entry[0] * entry[1] for entry in entries) / weight if weight else 0.0,
        z=sum(entry[0] * entry[2] for entry in entries) / weight if weight else 0.0,
    )
