"""The egg crate of a bank of drawers: strips over the whole length and height, crossing each other."""

from collections.abc import Iterator
from typing import Any

from casewright.joinery.families.cross_lap.asked import LIMITS, half_notch, other_notch
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.crate_spec import Crate
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.layout.season import across
from casewright.pieces.rules import case_rules, crate_rules
from casewright.pieces.rules.corner_rules import free_depth
from casewright.wood.movement import movement
from casewright.wood.waste import PartUse

LEVEL, UPRIGHT = "G1", "G2"
"""Lines of the strips."""


def strip_depth(case: CasePlan) -> Inches:
    """How deep the strips are: as the openings, less room to grow between sides that do not grow with them.

    Args:
        case: what the case is worked out from

    Returns:
        The depth [in]

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    depth = case.face.opening_depth
    if case.spec.case.sides == "solid":
        return depth
    grows = case.ledger.take(
        "strip_growth",
        movement,
        size=depth,
        coefficient=across(case.spec.woods.case, case.ledger.root),
        change=case.climate.swelling,
    )
    return case.ledger.take("strip_depth", free_depth, depth=depth, growth=grows)


def level_places(case: CasePlan, crate: Crate) -> tuple[Inches, ...]:
    """The lower face of each level strip, from the underside of the case bottom, lowest first [in]."""
    return tuple(sorted(row.bottom - crate.strip for row in case.face.rows[:-1]))


def level_marks(case: CasePlan) -> tuple[Inches, ...]:
    """Where the notches of a level strip begin, from its left end [in].

    Args:
        case: what the case is worked out from

    Returns:
        The left wall of each notch, from the left.

    Source: geometry of the joint.
    """
    start = case.spec.frame.side - case.spec.case.housing
    return tuple(
        case.ledger.take(f"level_notch_{number}", crate_rules.notch_at, place=place, start=start)
        for number, place in enumerate(case.face.rows[0].uprights, start=1)
    )


def upright_marks(case: CasePlan, crate: Crate) -> tuple[Inches, ...]:
    """Where the notches of an upright strip begin, from its lower end [in].

    Args:
        case: what the case is worked out from
        crate: the strips

    Returns:
        The lower wall of each notch, from below.

    Source: geometry of the joint.
    """
    start = case.spec.frame.lower - case.spec.case.housing
    return tuple(
        case.ledger.take(f"upright_notch_{number}", crate_rules.notch_at, place=place, start=start)
        for number, place in enumerate(level_places(case, crate), start=1)
    )


def strip_parts(case: CasePlan, crate: Crate) -> Iterator[Part]:
    """The strips: level ones between the sides, upright ones between bottom and top, each housed there.

    Args:
        case: what the case is worked out from
        crate: the strips

    Returns:
        The parts, the level strips from the lowest up, then the upright ones from the left.

    Source: common practice of crossing strips.
    """
    spec, face, take = case.spec, case.face, case.ledger.take
    frame, housing, depth = spec.frame, spec.case.housing, strip_depth(case)
    length = take("level_strip", case_rules.housed_length, opening=face.clear_width, housing=housing)
    clear = take(
        "crate_clear_height",
        case_rules.between,
        whole=face.body_height,
        one_end=frame.upper,
        other_end=frame.lower,
    )
    height = take("upright_strip", case_rules.housed_length, opening=clear, housing=housing)
    levels, uprights = level_places(case, crate), face.rows[0].uprights
    notch = take("strip_notch", half_notch, depth=depth, part=LIMITS.part.value)
    rest = take("strip_other_notch", other_notch, depth=depth, notch=notch)
    cut = {"depth": depth, "width": crate.strip}
    end: Words = say("housing, {:fraction} deep", housing)
    if spec.case.sides != "solid":
        end = say("housing, {:fraction} deep, glued at the front", housing)
    shared: dict[str, Any] = {
        **timber(spec.woods.case),
        "thickness": crate.strip,
        "width": depth,
        "face": FaceClass.EDGE,
        "use": PartUse.CASE,
        "ends": (end, end),
    }
    solid = crate_rules.share_left(length=length, notches=len(uprights), notch=notch, **cut)
    for number, z in enumerate(levels, start=1):
        yield new_part(
            code=case.code(f"G-L{number}"),
            line=LEVEL,
            name="Level strip of the crate",
            length=length,
            grain=Grain.ACROSS,
            solid=solid,
            box=Box(frame.side - housing, 0.0, face.base_height + z, length, depth, crate.strip),
            **shared,
        )
    solid = crate_rules.share_left(length=height, notches=len(levels), notch=rest, **cut)
    foot = face.base_height + frame.lower - housing
    for number, x in enumerate(uprights, start=1):
        yield new_part(
            code=case.code(f"G-U{number}"),
            line=UPRIGHT,
            name="Upright strip of the crate",
            length=height,
            grain=Grain.UPRIGHT,
            solid=solid,
            box=Box(x, 0.0, foot, crate.strip, depth, height),
            **shared,
        )
