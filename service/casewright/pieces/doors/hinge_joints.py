"""The hinges of the doors let in: places and gains on doors and case, leaves that hang alike once."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from casewright.joinery.families.hinge.asked import Hinged, usual_leaf
from casewright.joinery.families.hinge.joint import HingeJoint, hinged
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.doors.hanging import Door
from casewright.pieces.doors.leaves import LeafPlan
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.parts import Part

NEAR = 1 / 32
"""What stands so near to the edge of an opening is what a door hangs on [in]."""
SIDE, UPRIGHT, LEG = "case side", "upright", "leg"
Hung = tuple[Door, LeafPlan]


def hinge_joints(
    spec: UnitSpec, doors: Sequence[Door], parts: Sequence[Part], ledger: Ledger
) -> Iterator[PlacedJoint | Finding]:
    """Where the hinges go and how they are let in, leaves that hang alike together.

    Args:
        spec: what the maker chose
        doors: the doors
        parts: the parts of the unit
        ledger: keeps the working

    Yields:
        A joint for each size and way to hang, each followed by its checks; nothing where no hinge is let in.

    Source: common practice of hanging doors.
    """
    if spec.doors.hinge_gains == "none":
        return
    alike: dict[tuple[object, ...], list[Hung]] = {}
    for door in doors:
        for leaf in door.plan.leaves:
            alike.setdefault(_alike(spec, door, leaf), []).append((door, leaf))
    for number, hung in enumerate(alike.values(), start=1):
        key = "hinges" if len(alike) == 1 else f"hinges_{number}"
        door, leaf = hung[0]
        under = ledger.under(f"case.joints.{key}")
        try:
            joint = hinged(_asked(spec, door, leaf, under), under)
        except ValueError as error:  # CannotBeLaidOut is one
            yield Finding(
                rule="hinges let in",
                verdict=Verdict.CAUTION,
                message="The gains of the hinges cannot be laid out.",
                remedy=error.args[0],
                about=leaf.code,
            )
            continue
        where = "" if len(alike) == 1 else f" on the {joint.given.hung_on}"
        yield replace(_placed(joint, key, hung, parts), title=f"Hinges of the doors{where}, let in")
        yield from joint.findings


def _alike(spec: UnitSpec, door: Door, leaf: LeafPlan) -> tuple[object, ...]:
    """What decides the places and gains of a leaf."""
    plan = door.plan
    sizes = (plan.height, plan.thickness, over_at_hinges(door, leaf), _foot(spec, door), *door.hinges)
    return (*(round(size, 6) for size in sizes), _hung_on(spec, door, leaf))


def over_at_hinges(door: Door, leaf: LeafPlan) -> Inches:
    """How far a leaf reaches over the edge at which it is hinged.

    Args:
        door: the doors of the opening
        leaf: one of them

    Returns:
        How far; 0 for an inset one [in]

    Source: geometry.
    """
    over = door.plan.over
    return over.left if leaf.hinged == "left" else over.right


def _foot(spec: UnitSpec, door: Door) -> Inches:
    """The lower end of a leaf above the lower edge of its opening [in]."""
    return spec.doors.gap if door.plan.is_inset else -door.plan.over.below


def _hung_on(spec: UnitSpec, door: Door, leaf: LeafPlan) -> str:
    edge = door.plan.around.left if leaf.hinged == "left" else door.plan.around.right
    return UPRIGHT if edge.is_shared else LEG if spec.legs else SIDE


def _asked(spec: UnitSpec, door: Door, leaf: LeafPlan, ledger: Ledger) -> Hinged:
    chosen, plan, wide = spec.doors, door.plan, spec.doors.hinge_leaf
    over = over_at_hinges(door, leaf)
    if wide is None:
        wide = ledger.take("gauge_width", usual_leaf, under=over or plan.thickness)
    return Hinged(
        height=plan.height,
        thickness=plan.thickness,
        over=over,
        gap=door.hinge_gap,
        foot=_foot(spec, door),
        length=chosen.hinge_length,
        leaf=wide,
        closed=chosen.hinge_closed,
        hinges=len(door.hinges),
        offset=door.offset,
        all_in_door=chosen.hinge_gains == "door",
        mark=leaf.code,
        hung_on=_hung_on(spec, door, leaf),
    )


def _placed(joint: HingeJoint, key: str, hung: Sequence[Hung], parts: Sequence[Part]) -> PlacedJoint:
    leaves = tuple(code for door, leaf in hung for code in _hinged_parts(door, leaf, parts))
    stands = dict.fromkeys(code for door, leaf in hung for code in _standing(door, leaf, parts))
    serves = [("door", leaves)]
    if stands and not joint.given.all_in_door:
        serves.append((joint.given.hung_on, tuple(stands)))
    return PlacedJoint(
        key=key,
        kind="hinge",
        title="Hinges of the doors, let in",
        places=sum(len(door.hinges) for door, _ in hung),
        serves=tuple(serves),
        joint=joint,
        working=f"case.joints.{key}",
        advice=(
            "Fit the door to its opening with all its gaps before a hinge is laid on.",
            "Let the leaves into the door first, then carry its places over to the case.",
            "Hang it on one screw in each leaf; set the rest when it swings and closes as it should.",
        ),
    )


def _hinged_parts(door: Door, leaf: LeafPlan, parts: Sequence[Part]) -> list[str]:
    """What carries the hinges of a leaf: its hinged stile, or the slab."""
    at = leaf.x if leaf.hinged == "left" else leaf.x + door.plan.width
    own = [part for part in parts if part.code.startswith((f"{leaf.code}-S", f"{leaf.code}-W"))]
    return [
        part.code for part in own if min(abs(part.box.x - at), abs(part.box.x + part.box.width - at)) < NEAR
    ]


def _standing(door: Door, leaf: LeafPlan, parts: Sequence[Part]) -> list[str]:
    """What a leaf hangs on: the part whose face is the edge of the opening, beside all of its height."""
    opening, plan = door.plan.opening, door.plan
    at, middle = (
        opening.left if leaf.hinged == "left" else opening.left + opening.width,
        plan.z + plan.height / 2,
    )
    own = {each.code for each in plan.leaves}
    return [
        part.code
        for part in parts
        if part.code.rpartition("-")[0] not in own
        and abs((part.box.x + part.box.width if leaf.hinged == "left" else part.box.x) - at) < NEAR
        and part.box.y < NEAR < part.box.y + part.box.depth
        and part.box.z < middle < part.box.z + part.box.height
        and part.box.height > plan.height / 2
    ]
