"""Which pieces the tip-over rule for clothing storage covers, and the restraint that it asks for."""

from dataclasses import dataclass

from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import CubicFeet, Inches, Pounds
from casewright.stability.limits import Limits, source_of
from casewright.stability.masses import Piece, total_weight

RULE = "16 CFR 1261, which adopts ASTM F2057-23"
SCREEN = "This is a design screen; only the test of the standard decides."


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """How a piece will stand and what it is for, which decides whether the rule covers it.

    Attributes:
        free_standing: it is not fixed to the building for good
        clothing: it is meant for clothes, as bedroom furniture is
        volume: the enclosed room: in its drawers, and half of that behind its doors [cu ft]
        restraint: a wall restraint goes with it
    """

    free_standing: bool
    clothing: bool
    volume: CubicFeet
    restraint: bool


def is_in_scope(height: Inches, weight: Pounds, use: Use, limits: Limits) -> bool:
    """Whether the tip-over rule for clothing storage covers a piece.

    Args:
        height: of the piece [in]
        weight: of the empty piece [lb]
        use: how it stands and what it is for
        limits: 27 in, 30 lb and 3.2 cu ft

    Returns:
        True when it is free-standing, for clothing, and reaches all three limits.

    Source: ASTM F2057-23, 1.1, required by 16 CFR 1261.2.
    """
    large = (
        height >= limits.scope_height and weight >= limits.scope_weight and use.volume >= limits.scope_volume
    )
    return use.free_standing and use.clothing and large


def check_scope(piece: Piece, use: Use, limits: Limits) -> Finding:
    """Whether the tip-over rule covers the piece. Being covered is no fault; it means a test and papers.

    Args:
        piece: its height and weight
        use: how it stands and what it is for
        limits: the three limits

    Returns:
        A pass either way, with what the rule asks for.

    Source: ASTM F2057-23, 1.1, required by 16 CFR 1261.2.
    """
    weight = total_weight(piece)
    size = say("{} high, {:.1f} lb empty, {:.2f} cu ft of enclosed room", piece.height, weight, use.volume)
    limit = say("{}, {:g} lb and {:g} cu ft", limits.scope_height, limits.scope_weight, limits.scope_volume)
    if is_in_scope(piece.height, weight, use, limits):
        message = say(
            "Free-standing, for clothing, {}: all reach {}, so {}, covers it. It needs the tests of the "
            "standard, the warning label and a wall restraint. {}",
            size,
            limit,
            RULE,
            SCREEN,
        )
    else:
        why = reason_outside(piece.height, weight, use, limits)
        message = say("Outside {}: {}. {}", RULE, why, SCREEN)
    return new_finding(
        rule="tip scope",
        verdict=Verdict.PASS,
        message=message,
        found=piece.height,
        needed=limits.scope_height,
        source=source_of("scope_height"),
    )


def reason_outside(height: Inches, weight: Pounds, use: Use, limits: Limits) -> Words:
    """Why the rule does not cover a piece.

    Args:
        height: of the piece [in]
        weight: of the empty piece [lb]
        use: how it stands and what it is for
        limits: the three limits

    Returns:
        Every reason that there is, as part of a sentence.

    Source: ASTM F2057-23, 1.1 and 1.2.
    """
    reasons: list[tuple[bool, Words]] = [
        (not use.free_standing, "it is fixed to the building"),
        (not use.clothing, "it is not for clothing"),
        (height < limits.scope_height, say("{} is below {}", height, limits.scope_height)),
        (weight < limits.scope_weight, f"{weight:.1f} lb is below {limits.scope_weight:g} lb"),
        (use.volume < limits.scope_volume, f"{use.volume:.2f} cu ft is below {limits.scope_volume:g} cu ft"),
    ]
    *first, last = (words for holds, words in reasons if holds)
    return say("{} and {}", strung(", ", first), last) if first else last


def check_restraint(planned: bool, covered: bool) -> Finding:
    """Whether a wall restraint goes with the piece. Every free-standing piece with drawers should have one.

    Args:
        planned: the restraint is on the list
        covered: whether the tip-over rule covers the piece

    Returns:
        A pass with the restraint; without it a stop where the rule asks for it, else a caution.

    Source: ASTM F2057-23, 4.4 and 4.5, which names ASTM F3096.
    """
    asked = (
        "The rule asks for one with each piece" if covered else "Every free-standing chest should have one"
    )
    missing = Verdict.STOP if covered else Verdict.CAUTION
    return new_finding(
        rule="tip restraint",
        verdict=Verdict.PASS if planned else missing,
        message=(
            "A wall restraint goes with the piece. Fix it at delivery; the screen does not count it."
            if planned
            else f"No wall restraint goes with the piece. {asked}."
        ),
        remedy=""
        if planned
        else "Add a wall restraint to ASTM F3096 to the hardware, and fix it at delivery.",
        source="ASTM F2057-23, 4.4 and 4.5, which names ASTM F3096",
    )
