"""Every door of a unit in one go: planned, hung, its parts and the tenons of its frames."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.door_spec import SlabLeaf
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.doors.hanging import Door, hang
from casewright.pieces.doors.hinge_joints import hinge_joints
from casewright.pieces.doors.leaves import plan_doors
from casewright.pieces.doors.parts import door_parts
from casewright.pieces.doors.slab_joints import slab_joints
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.season import Climate
from casewright.pieces.panels.joints import frame_tenons


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorSet:
    """The doors of a unit.

    Attributes:
        doors: one entry for each opening that has doors
        parts: the parts of all leaves
    """

    doors: tuple[Door, ...] = ()
    parts: tuple[Part, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorJoints:
    """The tenons of the doors' frames, or the ends and battens of their slabs; and their hinges, let in.

    Attributes:
        joints: those that can be laid out
        findings: their checks, and a stop for each that cannot
    """

    joints: tuple[PlacedJoint, ...] = ()
    findings: tuple[Finding, ...] = ()


def build_doors(spec: UnitSpec, face: Face, climate: Climate, ledger: Ledger) -> DoorSet:
    """Every door of a unit, and its parts.

    Args:
        spec: what the maker chose
        face: the openings
        climate: the moisture contents between which they move
        ledger: keeps the working

    Returns:
        The doors; nothing where no opening has any.

    Source: common practice of door making.
    """
    plans = plan_doors(spec, face, climate, ledger)
    if not plans:
        return DoorSet()
    parts = tuple(part for plan in plans for part in door_parts(spec, plan, ledger))
    return DoorSet(doors=hang(spec, plans, parts, climate.now, ledger), parts=parts)


def door_joints(
    spec: UnitSpec, doors: Sequence[Door], parts: Sequence[Part], climate: Climate, rack: Rack, ledger: Ledger
) -> DoorJoints:
    """How the leaves are joined, and how their hinges are let in; leaves that are alike together.

    Args:
        spec: what the maker chose
        doors: the doors
        parts: the parts of the unit, with what was measured of them
        climate: the moisture contents between which they move
        rack: the shop's chisels
        ledger: keeps the working

    Returns:
        The joints and their checks; nothing where there are no doors.

    Source: common practice of door making.
    """
    made = _frames(doors, parts, rack, ledger)
    if isinstance(spec.doors.make, SlabLeaf):
        made = _sorted(slab_joints(spec.doors.make, doors, climate, rack, ledger))
    hung = _sorted(hinge_joints(spec, doors, parts, ledger))
    return DoorJoints(joints=(*made.joints, *hung.joints), findings=(*made.findings, *hung.findings))


def _sorted(found: Iterable[PlacedJoint | Finding]) -> DoorJoints:
    held = list(found)
    return DoorJoints(
        joints=tuple(each for each in held if isinstance(each, PlacedJoint)),
        findings=tuple(each for each in held if isinstance(each, Finding)),
    )


def _frames(doors: Sequence[Door], parts: Sequence[Part], rack: Rack, ledger: Ledger) -> DoorJoints:
    """The tenons of the doors' frames, leaves of one size together."""
    alike: dict[tuple[float, float], list[Door]] = {}
    for door in doors:
        if door.plan.frame is not None:
            alike.setdefault((door.plan.width, door.plan.height), []).append(door)
    if not alike:
        return DoorJoints()
    known: Mapping[str, Part] = {part.code: part for part in parts}
    joints: list[PlacedJoint] = []
    findings: list[Finding] = []
    for number, group in enumerate(alike.values(), start=1):
        frame = group[0].plan.frame
        if frame is None:
            continue
        tenons = frame_tenons(
            frame,
            [leaf.code for door in group for leaf in door.plan.leaves],
            known,
            rack,
            ledger,
            key="doors" if len(alike) == 1 else f"doors_{number}",
            working="case.joints",
            title="door",
        )
        joints += tenons.joints
        findings += tenons.findings
    return DoorJoints(joints=tuple(joints), findings=tuple(findings))
