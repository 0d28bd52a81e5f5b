"""The tip check of a free-standing piece with drawers, as findings: a design screen, not the test."""

from dataclasses import replace
from math import isfinite

from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import down_to, up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number
from casewright.stability.limits import Limits, house_limits, source_of
from casewright.stability.masses import Piece, total_weight
from casewright.stability.remedies import (
    BEFORE_REAR,
    ballast,
    deeper_body,
    feet_forward,
    greatest_travel,
)
from casewright.stability.scope import RULE, Use, check_restraint, check_scope, is_in_scope, reason_outside
from casewright.stability.situations import situations
from casewright.stability.tipping import Kind, TipCase, tip_case

DONE = {
    Kind.ALL_OPEN: "Every drawer open {0} and full of clothes",
    Kind.ONE_OPEN: "{1} open {0} and full where it has half of the room, the others locked shut",
    Kind.CHILD_LEVEL: "{2:g} lb on the front of {1}, open {0}, the others shut, level floor",
    Kind.CHILD_CARPET: "{2:g} lb on the front of {1}, open {0}, the others shut, on carpet",
    Kind.CHILD_DOOR: "{2:g} lb on the free edge of {1}, open, all else shut, on carpet",
    Kind.PUSH: "Every drawer open {0} and empty, {3:g} lb push at the top",
}
DEEPER_MOST = 0.5
"""Of its depth: by more than this a piece is not made deeper to keep it from tipping (common practice)."""
PUSH_ON_ONE = "{1} open {0} and empty, the others locked shut, {3:g} lb push at the top"
DOORS_OPEN = "; every door open"
DOORS_ALONE = {
    Kind.ALL_OPEN: "Every door open",
    Kind.PUSH: "Every door open, {3:g} lb push at the top",
}
"""What is done to a piece that has doors and no drawer."""

SOURCES = {
    Kind.ALL_OPEN: "fill_density",
    Kind.ONE_OPEN: "fill_density",
    Kind.CHILD_LEVEL: "child_weight",
    Kind.CHILD_CARPET: "block_thickness",
    Kind.CHILD_DOOR: "child_weight",
    Kind.PUSH: "push_force",
}


def tip_findings(
    piece: Piece,
    use: Use,
    limits: Limits | None = None,
    ledger: Ledger = UNKEPT,
    cases: tuple[TipCase, ...] | None = None,
) -> tuple[Finding, ...]:
    """The tip check: is the piece covered, does it stand in every situation, is it fixed to the wall.

    Args:
        piece: where its weight sits
        use: how it stands and what it is for
        limits: what it is held to; None for what a shop starts with
        ledger: where the working is kept
        cases: the situations, where they are worked out already

    Returns:
        Scope, one finding for each kind of situation at its worst drawer, and the wall restraint; for a piece
        that is fixed to the building, the scope only.

    Source: 16 CFR 1261 and ASTM F2057-23; a design screen.
    """
    held = limits or house_limits()
    weight = total_weight(piece)
    covered = is_in_scope(piece.height, weight, use, held)
    outside = "" if covered else reason_outside(piece.height, weight, use, held)
    scope = check_scope(piece, use, held)
    if not use.free_standing:
        return (scope,)
    worst = worst_cases(tip_cases(piece, held, ledger) if cases is None else cases)
    return (
        scope,
        *(check_case(case, piece, held, outside, ledger) for case in worst),
        check_restraint(use.restraint, covered),
    )


def tip_cases(piece: Piece, limits: Limits | None = None, ledger: Ledger = UNKEPT) -> tuple[TipCase, ...]:
    """Every situation of the tip check, worked out: the table of moments.

    Args:
        piece: where its weight sits
        limits: weights, forces and the block; None for what a shop starts with
        ledger: where the working is kept

    Returns:
        All open, a child on each drawer level and on carpet, and the push.

    Source: ASTM F2057-23, 9.2.1 to 9.2.3; a design screen, its geometry from memory.
    """
    return tuple(tip_case(situation, ledger) for situation in situations(piece, limits))


def worst_cases(cases: tuple[TipCase, ...]) -> tuple[TipCase, ...]:
    """Of each kind of situation the one with the least factor.

    Args:
        cases: situations, worked out

    Returns:
        One for each kind, in the order in which the kinds come.

    Source: common practice.
    """
    kinds = dict.fromkeys(case.situation.kind for case in cases)
    return tuple(
        min((case for case in cases if case.situation.kind is kind), key=lambda case: case.factor)
        for kind in kinds
    )


def verdict_on(factor: Number, target: Number, kind: Kind, covered: bool) -> Verdict:
    """How a factor comes out.

    A piece that the rule does not cover is still stopped if its own drawers tip it; that a child's weight
    or a push would tip it is a caution there, as it would be for any light table with a drawer.

    Args:
        factor: holding over tipping [dimensionless]
        target: the factor wanted [dimensionless]
        kind: what was done to the piece
        covered: whether the rule covers the piece

    Returns:
        Pass from the target up, caution from 1, stop below.

    Source: common practice.
    """
    if factor >= target:
        return Verdict.PASS
    if factor >= 1 or (not covered and kind not in (Kind.ALL_OPEN, Kind.ONE_OPEN)):
        return Verdict.CAUTION
    return Verdict.STOP


def check_case(
    case: TipCase, piece: Piece, limits: Limits, outside: Words, ledger: Ledger = UNKEPT
) -> Finding:
    """One situation as a finding, with what would make it pass.

    Args:
        case: the situation, worked out
        piece: for the place of added weight
        limits: the factor wanted
        outside: why the rule does not cover the piece; empty where it does
        ledger: where the working is kept

    Returns:
        Pass from the target factor up, caution from 1, stop below.

    Source: 16 CFR 1261 and ASTM F2057-23; a design screen.
    """
    situation = case.situation
    verdict = verdict_on(case.factor, limits.target_factor, situation.kind, not outside)
    safe = greatest_travel(situation, limits.target_factor, ledger) if situation.moving else None
    reach = "" if safe is None else say("; greatest safe travel {:down}", safe)
    why: Words = f"Screen for {RULE}; the test decides."
    if outside:
        why = say(
            "{}, does not ask for this, as {}; its case is looked at as common practice.", RULE, outside
        )
    return new_finding(
        rule=f"tip {situation.kind}",
        verdict=verdict,
        message=say(
            "{}: {:moment} hold against {:moment bare} that tip, a factor of {}{}. {}",
            what_is_done(case, piece, limits),
            case.holding,
            case.tipping,
            factor_shown(case.factor),
            reach,
            why,
        ),
        remedy="" if verdict is Verdict.PASS else remedy_for(case, piece, limits, safe),
        about=situation.about,
        found=case.factor if isfinite(case.factor) else None,
        needed=limits.target_factor,
        source=source_of(SOURCES[situation.kind]),
    )


def what_is_done(case: TipCase, piece: Piece, limits: Limits) -> Words:
    """What a situation does to a piece, in words.

    Args:
        case: the situation, worked out
        piece: what it is done to
        limits: the child's weight and the push

    Returns:
        A part of a sentence, with the travel of the drawers that are open.

    Source: ASTM F2057-23, 9.2.1 to 9.2.3; a design screen.
    """
    situation = case.situation
    words = DONE[situation.kind]
    if situation.kind is Kind.PUSH and situation.about:
        words = PUSH_ON_ONE
    if not piece.drawers and not piece.leaves:
        words = "Standing as it is, {3:g} lb push at the top"
    elif not piece.drawers:
        words = DOORS_ALONE.get(situation.kind, words)
    elif piece.leaves and situation.kind in (Kind.ALL_OPEN, Kind.ONE_OPEN, Kind.PUSH):
        words += DOORS_OPEN
    travel = max((one.travel for one in situation.moving), default=0.0)
    return say(words, travel, situation.about, limits.child_weight, limits.push_force)


def factor_shown(factor: Number) -> str:
    """A factor to two decimals, rounded down so that it never looks safer than it is.

    Args:
        factor: holding over tipping [dimensionless]

    Returns:
        Text such as 1.53; “no limit” where nothing tips.

    Source: common practice.
    """
    return "no limit" if factor > 1000 else f"{down_to(factor, 0.01):.2f}"


LOCKED = {Kind.ALL_OPEN: Kind.ONE_OPEN, Kind.PUSH: Kind.PUSH}
"""What becomes of a situation where an interlock lets one drawer open; in the others one is open as it is."""


def interlock_suffices(case: TipCase, piece: Piece, limits: Limits) -> bool:
    """Would an interlock that opens one drawer at a time make a situation pass by itself?

    Args:
        case: the situation, worked out
        piece: the piece, as it is
        limits: the factor wanted

    Returns:
        No where it has one already, or one drawer, or only one is open in that situation anyway.

    Source: ASTM F2057-23, 4.6 and 9.2.1; a design screen.
    """
    kind = LOCKED.get(case.situation.kind)
    if kind is None or piece.one_at_a_time or len(piece.drawers) < 2:
        return False
    locked = replace(piece, one_at_a_time=True)
    tried = (each for each in situations(locked, limits) if each.kind is kind)
    return min(tip_case(each).factor for each in tried) >= limits.target_factor


def remedy_for(case: TipCase, piece: Piece, limits: Limits, safe: Inches | None) -> Words:
    """What would make a situation pass, each by itself.

    Args:
        case: the situation, worked out
        piece: for the place of added weight
        limits: the factor wanted
        safe: the greatest safe travel; None where nothing is drawn out [in]

    Returns:
        Stops, an interlock, a deeper body, weight at the back, feet forward, each with its figure.

    Source: statics.
    """
    target, locked = limits.target_factor, interlock_suffices(case, piece, limits)
    stops: Words = ""
    if safe:
        stops = say("Stop the drawers at {:down}; or ", safe)
    elif safe is not None:
        stops = "No travel is safe, so " + (
            "open one drawer at a time by an interlock; or " if locked else ""
        )
    added = up_to(ballast(case, piece.support_depth - BEFORE_REAR, target), 0.5)
    forward = feet_forward(case, target)
    deeper = up_to(deeper_body(case, piece.support_depth, target), 1 / 4)
    wider: Words = ""
    if deeper <= piece.support_depth * DEEPER_MOST:
        wider = say("; or make the body {:up 16} deeper, with drawers that open no further", deeper)
    locks = "; or let an interlock open one drawer at a time" if locked and safe else ""
    return say(
        "{}add {:g} lb at the bottom of the back; or bring the front feet {:up 16} forward{}{}. Fit the wall "
        "restraint whatever you do.",
        stops,
        added,
        forward,
        wider,
        locks,
    )
