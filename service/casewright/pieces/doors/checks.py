"""Checks of the doors: gaps through the year, panels, width, hinges, and how they swing."""

from collections.abc import Iterator, Sequence

from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import say
from casewright.pieces.asked.door_spec import SlabLeaf
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.doors.hanging import HINGE_CARRIES, Door
from casewright.pieces.layout.season import Climate
from casewright.pieces.panels.checks import frame_checks
from casewright.pieces.rules import door_rules as rules

HANDBOOK = "Wood Handbook, FPL-GTR-282 (2021), chapter 13"
LEAST_GAP = 1 / 32
"""What is left at the free edge of a leaf when it is wettest (common practice) [in]."""
WIDEST_GAP = 3 / 16
"""A wider gap when it is driest shows what is behind the doors (common practice) [in]."""
THIN, THICK = 3 / 4, 7 / 8
"""Usual thicknesses of a door of a case (common practice) [in]."""
PLAIN_WIDE = 8.0
"""A slab with nothing to keep it flat cups when it is wider than a board (common practice) [in]."""
BESIDE = {"left": "at its left", "right": "at its right", "above": "above it", "below": "below it"}


def door_checks(spec: UnitSpec, doors: Sequence[Door], climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    """The checks of every door.

    Args:
        spec: what the maker chose
        doors: the doors
        climate: the moisture contents between which they move
        ledger: keeps the working

    Yields:
        The findings, passes too.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    for door in doors:
        yield from _gaps(door, climate, ledger)
        if door.plan.frame is not None:
            name = f"{door.plan.opening.code}.door.frame"
            yield from frame_checks(door.plan.frame, climate, ledger, name, door.code)
        yield _shape(door)
        yield _hinges(door)
        yield from _swing(door)
        yield from _beside_doors(door, climate, ledger)
    if doors:
        yield _thickness(doors)
        yield from _flat(spec, doors, climate, ledger)


def _gaps(door: Door, climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    plan = door.plan
    if not plan.is_inset and len(plan.leaves) == 1:
        return  # a single leaf over its edges has nothing to bind on but what its reveal keeps clear
    under = ledger.under(f"{plan.opening.code}.door")
    found = {
        name: under.take(
            f"gap_{name}",
            rules.free_gap,
            room=plan.room,
            hinge_gaps=len(plan.leaves) * door.hinge_gap,
            leaves=len(plan.leaves),
            width=plan.width,
            moving=plan.moving,
            coefficient=plan.moves,
            change=change,
        )
        for name, change in (("wettest", climate.swelling), ("driest", -climate.drying))
    }
    where = "Between the leaves" if len(plan.leaves) == 2 else "At its free edge"
    yield at_least(
        "door gap",
        found["wettest"],
        LEAST_GAP,
        say("{} the gap is {:.3} at the wettest.", where, found["wettest"]),
        say("It needs {}: make each leaf narrower, or the gap {:up} wider.", LEAST_GAP, LEAST_GAP),
        about=door.code,
        source=HANDBOOK,
    )
    yield at_most(
        "door gap when dry",
        found["driest"],
        WIDEST_GAP,
        say("{} the gap opens to {:.3} at the driest.", where, found["driest"]),
        "Hide it by a rabbet where the leaves meet, use quartersawn stiles, or a frame in place of a slab.",
        about=door.code,
        verdict=Verdict.CAUTION,
        source=HANDBOOK,
    )


def _shape(door: Door) -> Finding:
    """A leaf that is wider than high racks on its hinges."""
    plan = door.plan
    return at_most(
        "door width",
        plan.width,
        plan.height,
        say("A leaf is {:bare} wide and {} high.", plan.width, plan.height),
        "A leaf wider than it is high sags from its hinges: hang two, or divide the opening.",
        about=door.code,
        verdict=Verdict.CAUTION,
    )


def _hinges(door: Door) -> Finding:
    count = len(door.hinges)
    return at_most(
        "door hinges",
        door.weight / count,
        HINGE_CARRIES,
        say(
            "A leaf of {:.1f} lb hangs on {:d} hinges: {:.1f} lb each; the top one is pulled with {:.1f} lb.",
            door.weight,
            count,
            door.weight / count,
            door.pull,
        ),
        "Hang it on one hinge more, or make it lighter.",
        about=door.code,
    )


def _swing(door: Door) -> Iterator[Finding]:
    """An overlay leaf stands its thickness beside its hinged edge when it is open."""
    plan = door.plan
    if plan.is_inset:
        return
    for leaf in plan.leaves:
        edge = plan.around.left if leaf.hinged == "left" else plan.around.right
        if not edge.is_shared:
            continue
        reach = plan.over.left if leaf.hinged == "left" else plan.over.right
        clear = edge.thickness - reach
        blocks = clear < plan.thickness - TOLERANCE
        yield Finding(
            rule="door swing",
            verdict=Verdict.CAUTION if blocks else Verdict.PASS,
            message=say(
                "Open, the leaf stands {} past its hinged edge, where the neighbour begins after {}.",
                plan.thickness,
                clear,
            ),
            remedy="Hinge it at the other side, inset it, or open the neighbour only while it is closed."
            if blocks
            else "",
            about=leaf.code,
            found=float(clear),
            needed=float(plan.thickness),
            source="geometry: a leaf on butt hinges turns about its inner edge",
        )


def _beside_doors(door: Door, climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    """Doors over one divider share it: each keeps to its half of the gap, even when it has swollen."""
    plan = door.plan
    if plan.is_inset:
        return
    under = ledger.under(f"{plan.opening.code}.door")
    for name in ("left", "right", "above", "below"):
        edge, over = getattr(plan.around, name), getattr(plan.over, name)
        if not edge.meets_doors:
            continue
        is_free = len(plan.leaves) == 1 and name in ("left", "right") and plan.leaves[0].hinged != name
        left = under.take(
            f"half_gap_{name}",
            rules.half_of_gap,
            edge=edge.thickness,
            over=over,
            moving=plan.moving if is_free else 0.0,
            coefficient=plan.moves,
            change=climate.swelling,
        )
        yield at_least(
            "door beside door",
            left,
            LEAST_GAP / 2,
            say("Of the gap to the doors {} its half is {:.3} at the wettest.", BESIDE[name], left),
            say(
                "It needs {}: let the doors reach {:up} less over the divider.",
                LEAST_GAP / 2,
                LEAST_GAP / 2 - left,
            ),
            about=door.code,
            source=HANDBOOK,
        )


def _thickness(doors: Sequence[Door]) -> Finding:
    thick = doors[0].plan.thickness
    usual = THIN - 1 / 16 <= thick <= THICK + TOLERANCE
    return Finding(
        rule="door thickness",
        verdict=Verdict.PASS if usual else Verdict.CAUTION,
        message=say("The doors are {} thick.", thick),
        remedy=""
        if usual
        else say(
            "Doors of a case are usually {:bare} to {}: hinges and tenons are made for that.", THIN, THICK
        ),
        about=doors[0].code,
        found=float(thick),
        needed=THIN if thick < THIN else THICK,
    )


def _flat(spec: UnitSpec, doors: Sequence[Door], climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    """What keeps a slab flat, and how it moves past that."""
    make, plan = spec.doors.make, max((door.plan for door in doors), key=lambda each: each.width)
    if not isinstance(make, SlabLeaf) or make.held == "ply":
        return
    if make.held == "plain":
        yield at_most(
            "door slab flat",
            plan.width,
            PLAIN_WIDE,
            say("A slab {} wide has nothing behind it.", plan.width),
            say(
                "Wider than {} it cups: put battens behind it, breadboard ends on it, or make a frame.",
                PLAIN_WIDE,
            ),
            about=plan.code,
            verdict=Verdict.CAUTION,
        )
        return
    under = ledger.under(f"{plan.opening.code}.door")
    grows, shrinks = (
        under.take(name, rules.leaf_grows, moving=plan.moving, coefficient=plan.moves, change=change)
        for name, change in (("grows", climate.swelling), ("shrinks", climate.drying))
    )
    what = "battens" if make.held == "battens" else "breadboard ends"
    yield Finding(
        rule="door slab flat",
        verdict=Verdict.PASS,
        message=say(
            "The slab grows {:.3} and shrinks {:.3} past its {}: fix them tight in the middle, with slots "
            "{:up 16} long each way at the ends.",
            grows,
            shrinks,
            what,
            max(grows, shrinks) / 2,
        ),
        about=plan.code,
        found=float(max(grows, shrinks)),
        source=HANDBOOK,
    )
