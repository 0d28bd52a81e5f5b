"""The parts of a leaf: a frame with its panels, or a slab with what keeps it flat."""

from collections.abc import Iterator
from dataclasses import replace

from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.door_spec import SlabLeaf
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.doors.leaves import DoorPlan, LeafPlan, door_timber
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.panels.parts import FramePlace, frame_parts
from casewright.pieces.rules import door_rules as rules
from casewright.wood.movement import Cut
from casewright.wood.waste import PartUse

LINES = {"D1": "DS#", "D2": "DR#", "D3": "DM#", "D4": "DP#"}
"""The lines of the cut list: stiles, rails, muntins and panels of doors, numbered by size."""
SHORT_OF_EDGE = 1.0
"""A batten ends so far before the edge of its slab, clear of stop and hinge (common practice) [in]."""
BATTEN_AT = 6
"""The middle of each batten lies a sixth of the height from the end (common practice)."""


def door_parts(spec: UnitSpec, door: DoorPlan, ledger: Ledger) -> Iterator[Part]:
    """The parts of every leaf of an opening, where they sit when it is closed.

    Args:
        spec: what the maker chose
        door: the doors, planned
        ledger: keeps the working

    Yields:
        The parts, leaf by leaf from the left.

    Source: common practice of door making.
    """
    y = 0.0 if door.is_inset else -door.thickness
    for leaf in door.leaves:
        if door.frame is not None:
            place = FramePlace(code=leaf.code, line="D", name="Door", x=leaf.x, y=y, z=door.z, is_side=False)
            for part in frame_parts(door.frame, place):
                yield replace(part, line=LINES[part.line])
        elif isinstance(spec.doors.make, SlabLeaf):
            yield from _slab(spec, spec.doors.make, door, leaf, y, ledger)


def _slab(
    spec: UnitSpec, make: SlabLeaf, door: DoorPlan, leaf: LeafPlan, y: Inches, ledger: Ledger
) -> Iterator[Part]:
    is_capped = make.held == "breadboard"
    length, foot = door.height, door.z
    if is_capped:
        length = ledger.under(f"{door.opening.code}.door").take(
            "slab_length", rules.capped_length, height=door.height, cap=make.batten, tongue=make.tongue
        )
        foot = door.z + make.batten - make.tongue
    wood_of = {"wood": str(make.bought), "cut": Cut.FLAT} if make.bought else timber(door_timber(spec))
    yield new_part(
        code=f"{leaf.code}-W",
        line="DW#",
        name="Door slab",
        **wood_of,
        thickness=door.thickness,
        width=door.width,
        length=length,
        face=FaceClass.SHOW,
        grain=Grain.UPRIGHT,
        use=PartUse.CASE,
        ends=(say("tongue, {:fraction} long", make.tongue),) * 2 if is_capped else ("square", "square"),
        sheet=make.bought is not None,
        box=Box(leaf.x, y, foot, door.width, door.thickness, length),
    )
    if is_capped:
        yield from _caps(spec, make, door, leaf, y)
    elif make.held == "battens":
        yield from _battens(spec, make, door, leaf, y, ledger)


def _caps(spec: UnitSpec, make: SlabLeaf, door: DoorPlan, leaf: LeafPlan, y: Inches) -> Iterator[Part]:
    for number, z in ((1, door.z + door.height - make.batten), (2, door.z)):
        yield new_part(
            code=f"{leaf.code}-E{number}",
            line="DE#",
            name="Door breadboard end",
            **timber(door_timber(spec)),
            thickness=door.thickness,
            width=make.batten,
            length=door.width,
            face=FaceClass.SHOW,
            grain=Grain.ACROSS,
            use=PartUse.CASE,
            ends=("square", "square"),
            box=Box(leaf.x, y, z, door.width, door.thickness, make.batten),
        )


def _battens(
    spec: UnitSpec, make: SlabLeaf, door: DoorPlan, leaf: LeafPlan, y: Inches, ledger: Ledger
) -> Iterator[Part]:
    length = ledger.under(f"{door.opening.code}.door").take(
        "batten_length", rules.batten_length, width=door.width, short=SHORT_OF_EDGE
    )
    for number, share in ((1, 1 - 1 / BATTEN_AT), (2, 1 / BATTEN_AT)):
        yield new_part(
            code=f"{leaf.code}-B{number}",
            line="DB#",
            name="Door batten",
            **timber(door_timber(spec)),
            thickness=make.batten_thickness,
            width=make.batten,
            length=length,
            face=FaceClass.EDGE,
            grain=Grain.ACROSS,
            use=PartUse.CASE,
            ends=("screwed tight in the middle, through slots beside it",) * 2,
            box=Box(
                leaf.x + (door.width - length) / 2,
                y + door.thickness,
                door.z + share * door.height - make.batten / 2,
                length,
                make.batten_thickness,
                make.batten,
            ),
        )
