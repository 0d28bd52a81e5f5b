"""The joints of the dividers: the rails between two rows into the sides, and into partitions."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from casewright.joinery.families.housing.asked import Housing
from casewright.joinery.families.housing.joint import housing
from casewright.joinery.families.sliding.joint import Sliding, sliding
from casewright.joinery.joint import Joint
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Count, Inches
from casewright.pieces.case.asked_joints import AskedJoint, CaseBench
from casewright.pieces.case.web_frames import frames_of_stack
from casewright.pieces.layout.openings import Stack, Wall
from casewright.pieces.layout.parts import Part

SLIDING = "sliding dovetail"
DIVIDERS = "dividers"
"""Short name of the joint."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Alike:
    """Rails of one thickness in stacks of one width, and how many of their ends one kind of wall takes."""

    stack: Stack
    wall: Wall
    rails: tuple[Part, ...]
    places: Count


def divider_joints(bench: CaseBench) -> Iterator[AskedJoint]:
    """The rails between two rows, in front and at the rear, into the sides and into partitions.

    Args:
        bench: what the joints are worked out from

    Yields:
        A joint for each thickness and length of rail in the sides, then likewise in partitions.

    Source: common practice of solid-wood case making.
    """
    for wall, base in ((Wall.SIDE, DIVIDERS), (Wall.PARTITION, f"{DIVIDERS}_in_partitions")):
        found = list(_alike(bench, wall))
        for number, each in enumerate(found, start=1):
            name = base if len(found) == 1 else f"{base}_{number}"
            yield _divider(bench, name, each)


def _alike(bench: CaseBench, wall: Wall) -> Iterator[_Alike]:
    by_code = {part.code: part for part in bench.of("C3", "W1", "D2")}
    groups: dict[tuple[Inches, Inches], tuple[Stack, list[Part]]] = {}
    places: dict[tuple[Inches, Inches], Count] = {}
    for stack in bench.plan.face.stacks:
        ends = stack.walls.count(wall)
        if not ends:
            continue
        for frame in frames_of_stack(bench.plan, stack):
            for mark in ("RF", "RB", "B"):
                rail = by_code.get(bench.plan.code(f"{frame.mark}-{mark}"))
                if rail is None:
                    continue  # where drawers hang on battens or slides there is a front rail only
                key = (rail.thickness, round(stack.width, 6))
                groups.setdefault(key, (stack, []))[1].append(rail)
                places[key] = places.get(key, 0) + ends
    for key, (stack, rails) in groups.items():
        yield _Alike(stack=stack, wall=wall, rails=tuple(rails), places=places[key])


def _divider(bench: CaseBench, name: str, alike: _Alike) -> AskedJoint:
    kind = bench.spec.case.divider_end
    is_side = alike.wall is Wall.SIDE
    full = bench.spec.case.divider_kind == "solid"
    words, boards = "Dividers" if full else "Divider rails", bench.of("C8")
    if is_side:
        boards = bench.inner_faces if full else bench.pin_boards
    return AskedJoint(
        key=name,
        kind="sliding" if kind == SLIDING else "housing",
        title=f"{words} into the {'sides' if is_side else 'partitions'}, {kind}",
        places=alike.places,
        serves=(("divider", alike.rails), ("case side", boards)),
        solve=partial(_solve, bench, name, alike),
        advice=tuple(_where_they_go(bench, alike.stack)),
    )


def _solve(bench: CaseBench, name: str, alike: _Alike) -> Joint:
    case, is_side = bench.spec.case, alike.wall is Wall.SIDE
    board = bench.side if is_side else min(part.thickness for part in bench.of("C8"))
    depth, mark = bench.plan.housing_in(alike.wall), bench.plan.code("D")
    if case.divider_end == SLIDING:
        return sliding(
            Sliding(
                divider=alike.rails[0].thickness,
                case_side=board,
                depth=depth,
                shoulder=case.divider_shoulder,
                length=bench.plan.face.opening_depth if case.divider_kind == "solid" else case.rail_width,
                mark=mark,
            ),
            bench.ledger(name),
        )
    return housing(
        Housing(
            divider=alike.rails[0].thickness,
            case_side=board,
            depth=depth,
            stop=0.0,
            inside_width=alike.stack.width,
            rack=bench.rack,
            mark=mark,
            into="case side" if is_side else "partition",
        ),
        bench.ledger(name),
    )


def _where_they_go(bench: CaseBench, stack: Stack) -> Iterator[Words]:
    """The marks of the story stick, and how far a housing runs."""
    case = bench.spec.case
    tops = tuple(row.bottom for row in reversed(stack.rows[:-1]))
    yield say(
        "Story stick: upper edges of the dividers at {}, from the underside of the case bottom.",
        strung(", ", (say("{:bare}", top) for top in tops)),
    )
    if case.divider_end == SLIDING:
        return
    yield say(
        "Lower walls of the housings at {}: they carry.",
        strung(", ", (say("{:bare}", top - case.divider) for top in tops)),
    )
    yield _how_far(bench)


def _how_far(bench: CaseBench) -> Words:
    """How far the housing of a divider runs."""
    case, depth = bench.spec.case, bench.plan.face.opening_depth
    if case.divider_kind == "solid":
        return say("Cut each housing through at the front edge of the side, {} long.", depth)
    if case.divider_kind == "rail":
        return say("Cut each housing {} long, from the front edge of the side.", case.rail_width)
    if case.is_framed:
        return say(
            "Cut each housing in the stiles alone: {} from the front edge, {} up to the back.",
            case.rail_width,
            bench.spec.frames.back_rail_width,
        )
    return say(
        "Cut each housing through at the front edge of the side, {} long: front and rear rail lie in one.",
        depth,
    )
