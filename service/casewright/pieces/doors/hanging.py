"""How the leaves hang: their weight, their hinges, what pulls at those, and the hardware to buy."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from casewright.joinery.families.hinge.asked import hinge_offset, hinge_place
from casewright.measure.ledger import Ledger
from casewright.measure.units import Count, Inches, Percent, Pounds, PoundsForce
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.doors.leaves import DoorPlan
from casewright.pieces.layout.fitted import HardwareItem
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.weights import density_of, part_weight
from casewright.pieces.rules import door_rules as rules

HINGE_CARRIES = 12.5
"""What one hinge of a pair is trusted with: 25 lb on two (common practice) [lb]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Door:
    """The doors of one opening, with how they hang.

    Attributes:
        plan: their sizes and places
        weight: of one leaf, without its hardware [lb]
        hinges: the middle of each hinge above the lower end of a leaf, the lowest first [in]
        offset: from the end of a leaf to the nearer end of its hinge [in]
        pull: what pulls at the top hinge of a leaf [lbf]
        hinge_gap: gap at the hinges of each leaf, which stays [in]
    """

    plan: DoorPlan
    weight: Pounds
    hinges: tuple[Inches, ...]
    offset: Inches
    pull: PoundsForce
    hinge_gap: Inches

    @property
    def code(self) -> str:
        """Unit and opening, such as `A-R4-1`."""
        return self.plan.code

    @property
    def knob_height(self) -> Inches:
        """The knob above the lower end of a leaf: in the middle of its free stile [in]."""
        return self.plan.height / 2


def hang(
    spec: UnitSpec, plans: Sequence[DoorPlan], parts: Iterable[Part], moisture: Percent, ledger: Ledger
) -> tuple[Door, ...]:
    """The doors with their hinges.

    Args:
        spec: what the maker chose
        plans: the doors, planned
        parts: the parts of the doors
        moisture: moisture content of the wood [%]
        ledger: keeps the working

    Returns:
        The doors, in the order of the plans.

    Source: common practice of hanging doors.
    """
    weights: dict[str, float] = {}
    for part in parts:
        leaf = part.code.rpartition("-")[0]
        weight = part_weight(volume=part.volume, density=density_of(part.wood, float(moisture)))
        weights[leaf] = weights.get(leaf, 0.0) + weight
    return tuple(_hung(spec, plan, weights[plan.leaves[0].code], ledger) for plan in plans)


def _hung(spec: UnitSpec, plan: DoorPlan, weighed: Pounds, ledger: Ledger) -> Door:
    doors, under = spec.doors, ledger.under(f"{plan.opening.code}.door")
    weight = under.given("weight", weighed, "finished volumes × density, of one leaf", Pounds)
    count = under.take("hinges", rules.hinges_for, height=plan.height, weight=weight, carries=HINGE_CARRIES)
    offset = doors.hinge_offset
    if offset is None:
        offset = under.take("hinge_offset", hinge_offset, height=plan.height, length=doors.hinge_length)
    places = tuple(
        under.take(
            f"hinge_{number}",
            hinge_place,
            number=number,
            hinges=count,
            height=plan.height,
            offset=offset,
            length=doors.hinge_length,
        )
        for number in range(1, count + 1)
    )
    apart = places[-1] - places[0]
    pull = under.take("hinge_pull", rules.hinge_pull, weight=weight, width=plan.width, apart=apart)
    return Door(
        plan=plan,
        weight=weight,
        hinges=places,
        offset=offset,
        pull=pull,
        hinge_gap=doors.gap if plan.is_inset else 0.0,
    )


def door_hardware(spec: UnitSpec, doors: Iterable[Door]) -> tuple[HardwareItem, ...]:
    """What is bought by the piece for the doors.

    Args:
        spec: what the maker chose
        doors: the doors

    Returns:
        Hinges, knobs and catches; nothing where there are no doors.

    Source: common practice: a knob and a catch for each leaf.
    """
    chosen = spec.doors
    leaves: Count = 0
    hinges: Count = 0
    for door in doors:
        leaves += len(door.plan.leaves)
        hinges += len(door.plan.leaves) * len(door.hinges)
    if not leaves:
        return ()
    return (
        HardwareItem(item=chosen.hinge, quantity=hinges, note="doors"),
        HardwareItem(item=chosen.knob, quantity=leaves, note="doors, in the middle of the free stile"),
        HardwareItem(item=chosen.catch, quantity=leaves, note="doors"),
    )
