"""What a unit weighs, part by part, and where each weight sits."""

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.making import quickly_made
from casewright.measure.units import Percent, Pounds
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.doors.hanging import Door
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.weights import density_of, part_weight

PULL_REACH = 3 / 4
"""A pull's weight hangs about so far before the front (common practice) [in]."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Mass:
    """A weight and where it sits.

    Attributes:
        weight: in pounds [lb]
        x: its centre to the right of the outside of the left case side [in]
        y: its centre behind the front edge of the case; of a drawer, behind its own front [in]
        z: its centre above the floor [in]
    """

    weight: float
    x: float
    y: float
    z: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Masses:
    """The weights of one unit.

    Attributes:
        case: everything but drawers and doors
        drawers: each drawer by its code, with its pulls and its half of the slides
        leaves: each leaf of a door by its code
        total: the whole unit, empty [lb]
        whole: the whole unit, empty and shut, y behind the front edge of the case
    """

    case: Mass
    drawers: dict[str, Mass]
    leaves: dict[str, Mass]
    total: float
    whole: Mass


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """One part, or the pulls of a drawer, with its weight and where that sits in the closed piece.

    Attributes:
        code: its mark
        name: what it is
        wood: of which wood or sheet; empty for what is bought
        weight: in pounds [lb]
        x: centre to the right of the outside of the left case side [in]
        y: centre behind the front edge of the case [in]
        z: centre above the floor [in]
    """

    code: str
    name: str
    wood: str
    weight: float
    x: float
    y: float
    z: float


def total_weight(case: Pounds, drawers: Pounds, doors: Pounds = 0.0) -> Pounds:
    """What the whole unit weighs, empty.

    Rule: case + drawers + doors

    Args:
        case: everything but drawers and doors [lb]
        drawers: all drawers with their pulls [lb]
        doors: all leaves [lb]

    Returns:
        The weight [lb]

    Source: arithmetic.
    """
    return case + drawers + doors


def masses(
    spec: UnitSpec,
    face: Face,
    drawers: tuple[Drawer, ...],
    doors: tuple[Door, ...],
    parts: Iterable[Part],
    moisture: Percent,
    ledger: Ledger,
) -> Masses:
    """What a unit weighs.

    Args:
        spec: what the maker chose
        face: the openings
        drawers: the drawers
        doors: the doors
        parts: every part of the unit
        moisture: moisture content of the wood [%]
        ledger: keeps the working

    Returns:
        The weights, each with its centre.

    Source: finished volumes and the densities of the species table.
    """
    groups: dict[str, list[_Entry]] = {drawer.code: [] for drawer in drawers}
    hung: dict[str, list[_Entry]] = {leaf.code: [] for door in doors for leaf in door.plan.leaves}
    groups |= hung
    case: list[_Entry] = []
    wet = float(moisture)
    for part in parts:
        weight = part_weight(volume=part.volume, density=density_of(part.wood, wet))
        groups.get(part.code.rsplit("-", 1)[0], case).append((weight, *centre_of(part)))
    case.extend(half for drawer in drawers for half in half_slides(face, drawer))
    found = {
        drawer.code: _centre(
            [*groups[drawer.code], *pull_entries(spec, face, drawer), *half_slides(face, drawer)]
        )
        for drawer in drawers
    }
    leaves = {code: _centre(entries) for code, entries in hung.items()}
    in_doors = {"doors": sum(mass.weight for mass in leaves.values())} if leaves else {}
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
        **in_doors,
    )
    bodies = (whole, *found.values(), *leaves.values())
    everything = _centre([(each.weight, each.x, each.y, each.z) for each in bodies])
    return Masses(case=whole, drawers=found, leaves=leaves, total=total, whole=everything)


_Entry = tuple[float, float, float, float]
"""A weight and its centre: to the right, behind the front edge, above the floor."""


def centre_of(part: Part) -> tuple[float, float, float]:
    """The centre of a part where it sits in the closed piece.

    Args:
        part: the part

    Returns:
        To the right, behind the front edge of the case, above the floor [in]

    Source: geometry.
    """
    box, cut = part.box, part.cut_out
    x, y, z = box.x + box.width / 2, box.y + box.depth / 2, box.z + box.height / 2
    if cut is None:
        return x, y, z
    # What is sawn out of the rear edge moves the centre away from it, by moments of areas.
    whole, missing = box.width * box.depth, cut.area
    beside = box.x + cut.along + cut.length / 2 - x
    behind = box.depth / 2 - cut.depth / 2
    left = whole - missing
    return x - missing * beside / left, y - missing * behind / left, z


def pull_entries(spec: UnitSpec, face: Face, drawer: Drawer) -> list[_Entry]:
    """The pulls of a drawer, which hang before its front.

    Args:
        spec: what one weighs
        face: the height of the base
        drawer: the drawer

    Returns:
        Weight and centre of each.

    Source: common practice.
    """
    high = face.base_height + drawer.sizes.face.bottom + drawer.boring.up
    before = -PULL_REACH - drawer.sizes.stand
    return [(spec.pulls.weight_lb, pull, before, high) for pull in drawer.pulls]


def half_slides(face: Face, drawer: Drawer) -> list[_Entry]:
    """Half of a pair of slides: so much moves with the drawer, and as much stays in the case.

    Args:
        face: the height of the base
        drawer: the drawer

    Returns:
        Weight and centre; nothing for a drawer that runs on wood.

    Source: common practice; what a pair weighs is typed from its maker's sheet.
    """
    slides, opening = drawer.run.slides, drawer.sizes.opening
    if slides is None:
        return []
    weight = slides.model.weight_lb * slides.length / 12 / 2
    high = face.base_height + opening.bottom + drawer.sizes.height / 2
    return [(weight, opening.left + opening.width / 2, slides.length / 2, high)]


def _centre(entries: list[_Entry]) -> Mass:
    """The sum of weights, at their common centre."""
    total = along = behind = up = 0.0
    for weight, x, y, z in entries:
        total += weight
        along += weight * x
        behind += weight * y
        up += weight * z
    if not total:
        return Mass(weight=total, x=0.0, y=0.0, z=0.0)
    return Mass(weight=total, x=along / total, y=behind / total, z=up / total)
