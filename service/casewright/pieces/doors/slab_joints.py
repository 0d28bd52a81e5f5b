"""The breadboard ends and battens of slab doors, each kind of leaf worked out once."""

from collections.abc import Iterator, Sequence

from casewright.joinery.chisels import Rack
from casewright.joinery.families.batten.asked import LIMITS, Batten, peg_count
from casewright.joinery.families.batten.joint import BattenJoint, batten_joint
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.door_spec import SlabLeaf
from casewright.pieces.doors.hanging import Door
from casewright.pieces.doors.parts import SHORT_OF_EDGE
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.season import Climate
from casewright.pieces.rules import door_rules as rules

HELD = ("breadboard", "battens")


def slab_joints(
    make: SlabLeaf, doors: Sequence[Door], climate: Climate, rack: Rack, ledger: Ledger
) -> Iterator[PlacedJoint | Finding]:
    """What keeps the leaves flat: a joint for each size of leaf, or a stop where it cannot be laid out.

    Args:
        make: how the slabs are made
        doors: the doors
        climate: the moisture contents between which they move
        rack: the shop's cutters
        ledger: keeps the working

    Yields:
        The joints, each followed by its checks; nothing for slabs with neither ends nor battens.

    Source: common practice of door making; movement by the Wood Handbook, chapter 13.
    """
    if make.held not in HELD or make.bought is not None:
        return
    alike: dict[tuple[float, float], list[Door]] = {}
    for door in doors:
        alike.setdefault((door.plan.width, door.plan.height), []).append(door)
    for number, group in enumerate(alike.values(), start=1):
        key = "door_ends" if len(alike) == 1 else f"door_ends_{number}"
        codes = [leaf.code for door in group for leaf in door.plan.leaves]
        try:
            joint = _joint(make, group[0], climate, rack, ledger.under(f"case.joints.{key}"), codes[0])
        except ValueError as error:  # CannotBeLaidOut is one
            yield Finding(
                rule="joint of the frame",
                verdict=Verdict.STOP,
                message="The ends or battens of the doors cannot be laid out.",
                remedy=error.args[0],
                about=codes[0],
            )
            continue
        yield _placed(make, joint, key, codes)
        yield from joint.findings


def _joint(
    make: SlabLeaf, door: Door, climate: Climate, rack: Rack, ledger: Ledger, mark: str
) -> BattenJoint:
    plan, is_capped = door.plan, make.held == "breadboard"
    short = 0.0 if is_capped else SHORT_OF_EDGE
    moves = {"moving": plan.moving, "coefficient": plan.moves}
    return batten_joint(
        Batten(
            width=plan.width,
            thickness=plan.thickness,
            end=make.batten,
            tongue=make.tongue if is_capped else 0.0,
            batten=make.batten_thickness,
            short=short,
            grows=ledger.take("grows", rules.leaf_grows, **moves, change=climate.swelling),
            shrinks=ledger.take("shrinks", rules.leaf_grows, **moves, change=climate.drying),
            pegs=peg_count(plan.width - 2 * short, LIMITS.margin.value, LIMITS.spacing.value),
            rack=rack,
            mark=mark,
        ),
        ledger,
    )


def _placed(make: SlabLeaf, joint: BattenJoint, key: str, codes: Sequence[str]) -> PlacedJoint:
    is_capped = make.held == "breadboard"
    mark, what = ("E", "Breadboard ends on") if is_capped else ("B", "Battens behind")
    ends = tuple(f"{code}-{mark}{number}" for code in codes for number in (1, 2))
    glue = "glue the middle two inches of the tongue only" if is_capped else "no glue"
    return PlacedJoint(
        key=key,
        kind="batten",
        title=f"{what} the doors, slotted",
        places=len(ends),
        serves=(("slab", tuple(f"{code}-W" for code in codes)), (joint.given.name, ends)),
        joint=joint,
        working=f"case.joints.{key}",
        advice=(f"Fix the middle tight, all else through its slot: {glue}.",),
    )
