"""The doors of a unit: leaves, and where their hinges go, as text and for machines."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from casewright.joinery.families.hinge.joint import HingeJoint
from casewright.measure.units import Inches
from casewright.papers.writing import Writing, section, table
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door
from casewright.pieces.doors.leaves import LeafPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """One leaf with its hinges.

    Attributes:
        door: the doors of its opening
        plan: where it hangs
        gains: how its hinges are let in; None where they are not
    """

    door: Door
    plan: LeafPlan
    gains: HingeJoint | None

    @property
    def from_below(self) -> tuple[Inches, ...]:
        """The middle of each hinge above the lower end of the leaf, the lowest first [in]."""
        return self.door.hinges

    @property
    def from_above(self) -> tuple[Inches, ...]:
        """The middle of each hinge below the upper end of the leaf, the lowest first [in]."""
        return tuple(self.door.plan.height - place for place in self.door.hinges)


def leaves_of(unit: Construction) -> Iterator[Leaf]:
    """Every leaf of a unit.

    Args:
        unit: the unit, worked out

    Yields:
        The leaves, opening by opening from the left.
    """
    gains = {
        code: placed.joint
        for placed in unit.case_joints
        if isinstance(placed.joint, HingeJoint)
        for code in placed.cut_on("door")
    }
    for door in unit.doors:
        for plan in door.plan.leaves:
            own = (joint for code, joint in gains.items() if code.startswith(f"{plan.code}-"))
            yield Leaf(door=door, plan=plan, gains=next(own, None))


def doors_section(unit: Construction, writing: Writing) -> str:
    """The leaves and their hinges.

    Args:
        unit: the unit
        writing: how sizes are written

    Returns:
        The section; empty where there are no doors.
    """
    leaves = list(leaves_of(unit))
    if not leaves:
        return ""
    rows = [
        (
            leaf.plan.code,
            writing.size(leaf.door.plan.height),
            writing.size(leaf.door.plan.width),
            writing.size(leaf.door.plan.thickness),
            leaf.plan.hinged,
            _written(leaf.from_below, writing),
            _written(leaf.from_above, writing),
            _gain(leaf, writing),
        )
        for leaf in leaves
    ]
    heads = ("Leaf", "Height", "Width", "Thick", "Hinged", "Hinges from below", "from above", "Gain, each")
    note = (
        f"Hinges are {writing.size(unit.spec.doors.hinge_length)} long; their middles are measured from the "
        "lower and the upper end of the leaf.\nA gain is long × wide × deep; their places on the case stand "
        "with the joints below."
    )
    return section("Doors", table(heads, rows, right=range(1, 4)), note)


def _written(places: Sequence[Inches], writing: Writing) -> str:
    return ", ".join(writing.size(place) for place in places)


def _gain(leaf: Leaf, writing: Writing) -> str:
    if leaf.gains is None:
        return "not let in"
    given = leaf.gains.given
    where = " in the door alone" if given.all_in_door else ""
    return f"{writing.sizes(given.length, given.leaf, leaf.gains.depth)}{where}"


def doors_data(unit: Construction) -> list[dict[str, Any]]:
    """The leaves of a unit for machines.

    Args:
        unit: the unit

    Returns:
        Lengths in inches; places of hinges from the lower and the upper end of the leaf, and on the case.
    """
    return [
        {
            "code": leaf.plan.code,
            "opening": leaf.door.plan.opening.code,
            "hinged": leaf.plan.hinged,
            "height_in": float(leaf.door.plan.height),
            "width_in": float(leaf.door.plan.width),
            "thickness_in": float(leaf.door.plan.thickness),
            "left_in": float(leaf.plan.x),
            "above_floor_in": float(leaf.door.plan.z),
            "weight_lb": float(leaf.door.weight),
            "hinge_length_in": float(unit.spec.doors.hinge_length),
            "hinges_from_below_in": [float(place) for place in leaf.from_below],
            "hinges_from_above_in": [float(place) for place in leaf.from_above],
            "gains": _gains_data(leaf.gains),
        }
        for leaf in leaves_of(unit)
    ]


def _gains_data(gains: HingeJoint | None) -> dict[str, Any] | None:
    if gains is None:
        return None
    return {
        "length_in": float(gains.given.length),
        "width_in": float(gains.given.leaf),
        "depth_in": float(gains.depth),
        "in_case": not gains.given.all_in_door,
        "lower_ends_on_door_in": [float(place) for place in gains.on_door],
        "lower_ends_above_opening_in": [float(place) for place in gains.on_case],
    }
