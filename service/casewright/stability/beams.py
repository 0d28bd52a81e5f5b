"""How far a shelf, a rail or a top hangs down: a board on two supports, evenly loaded or under single loads.

What is fixed at its ends hangs less than this, so the screen errs to the safe side. Wood that is loaded for
years creeps: it comes to hang about twice as far (Wood Handbook, chapter 5, from memory).
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import TOLERANCE, down_to, up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number, Pounds, PoundsPerFoot, PoundsPerSquareInch
from casewright.stability.limits import source_of

PLY_ALONG = 1.1e6
"""Stiffness of plywood where nobody measured it: the middle of 1.01 to 1.24 million (published: Wood
Handbook, FPL-GTR-190, table 12-1) [psi]."""
HANDBOOK = "Wood Handbook, FPL-GTR-282 (2021), chapter 9"


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """A board that spans between two supports.

    Attributes:
        span: between its supports [in]
        width: across the span, level [in]
        thickness: from its upper to its lower face [in]
        modulus: of elasticity along the span [psi]
        weight: of the board itself [lb]
    """

    span: Inches
    width: Inches
    thickness: Inches
    modulus: PoundsPerSquareInch
    weight: Pounds = 0.0

    def __post_init__(self) -> None:
        if min(self.span, self.width, self.thickness, self.modulus) <= 0:
            raise ValueError("A board has a span, a section and a stiffness above 0; give all of them.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """A load at one place of a board.

    Attributes:
        weight: how heavy [lb]
        near: from the left support [in]
    """

    weight: Pounds
    near: Inches


def shelf_load(length: Inches, per_foot: PoundsPerFoot) -> Pounds:
    """What lies on a shelf.

    Rule: length / 12 * per_foot

    Args:
        length: of the shelf [in]
        per_foot: load of each foot of it [pound/foot]

    Returns:
        The load [lb]

    Source: arithmetic.
    """
    return length / 12 * per_foot


def second_moment(width: Inches, thickness: Inches) -> Number:
    """How stiff the section of a board is.

    Rule: width * thickness ** 3 / 12

    Args:
        width: of the board [in]
        thickness: of the board [in]

    Returns:
        The second moment of its area, in inches to the fourth [in its own unit]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 9.
    """
    return width * thickness**3 / 12


def even_sag(load: Pounds, span: Inches, modulus: PoundsPerSquareInch, inertia: Number) -> Inches:
    """How far a board hangs down in its middle under a load that is spread evenly.

    Rule: 5 * load * span ** 3 / (384 * modulus * inertia)

    Args:
        load: all of it [lb]
        span: between the supports [in]
        modulus: of elasticity along the span [psi]
        inertia: second moment of the section, in inches to the fourth [in its own unit]

    Returns:
        The sag [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 9, equation 9-2 and table 9-1: ends that rest.
    """
    return 5 * load * span**3 / (384 * modulus * inertia)


def point_sag(
    load: Pounds, near: Inches, span: Inches, modulus: PoundsPerSquareInch, inertia: Number
) -> Inches:
    """How far a board hangs down in its middle under a load at one place.

    Rule: load * a * (3 * span ** 2 - 4 * a ** 2) / (48 * modulus * inertia); a = the shorter way to a support

    Args:
        load: at that place [lb]
        near: from one support [in]
        span: between the supports [in]
        modulus: of elasticity along the span [psi]
        inertia: second moment of the section, in inches to the fourth [in its own unit]

    Returns:
        The sag in the middle; none where the load lies on a support [in]

    Source: beam on two supports; Wood Handbook, FPL-GTR-282 (2021), chapter 9, table 9-1 for a load in the
        middle.
    """
    short = max(0.0, min(near, span - near))
    return load * short * (3 * span**2 - 4 * short**2) / (48 * modulus * inertia)


def both_sags(even: Inches, points: Inches) -> Inches:
    """The sag under everything that lies on a board.

    Rule: even + points

    Args:
        even: under what is spread evenly [in]
        points: under single loads [in]

    Returns:
        The sag [in]

    Source: statics: sags of one board add up.
    """
    return even + points


def thick_enough(thickness: Inches, sag: Inches, limit: Inches) -> Inches:
    """How thick a board would have to be to hang no further than it may.

    Rule: thickness * (sag / limit) ** (1/3), up to 1/16 in

    Args:
        thickness: as it is [in]
        sag: at that thickness [in]
        limit: the sag allowed [in]

    Returns:
        The thickness, rounded up [in]

    Source: the sag goes with the cube of the thickness.
    """
    return up_to(thickness * (sag / limit) ** (1 / 3), 1 / 16)


def short_enough(span: Inches, sag: Inches, limit: Inches) -> Inches:
    """How far a board may span to hang no further than the same share of its span.

    Rule: span * (limit / sag) ** (1/3), down to 1/16 in

    Args:
        span: as it is [in]
        sag: over that span, under a load that goes with it [in]
        limit: the sag allowed over that span [in]

    Returns:
        The span, rounded down [in]

    Source: under an even load the sag goes with the fourth power of the span, the limit with the span.
    """
    return down_to(span * (limit / sag) ** (1 / 3), 1 / 16)


def beam_sag(board: Board, even: Pounds, points: Iterable[Load], ledger: Ledger) -> Inches:
    """How far a board hangs down under its own weight, an even load and single loads.

    Args:
        board: the board
        even: spread over it [lb]
        points: loads at single places
        ledger: where the working is kept

    Returns:
        The sag in the middle [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 9.
    """
    inertia = ledger.take("inertia", second_moment, width=board.width, thickness=board.thickness)
    held = {"span": board.span, "modulus": board.modulus, "inertia": inertia}
    spread = ledger.take("even_sag", even_sag, load=even + board.weight, **held)
    single = [
        ledger.take(f"point_sag_{number}", point_sag, load=load.weight, near=load.near, **held)
        for number, load in enumerate(points, start=1)
    ]
    if not single:
        return spread
    return ledger.take("sag", both_sags, even=spread, points=math.fsum(single))


def check_beam(
    rule: str,
    what: Words,
    board: Board,
    sag: Inches,
    limit: Inches,
    *,
    limit_name: str,
    about: str = "",
    remedy: Words = "",
    lasting: bool = True,
) -> Finding:
    """Whether a board hangs down no further than it may.

    Args:
        rule: the short name of the check
        what: the board and its load, in words
        board: the board
        sag: how far it hangs [in]
        limit: how far it may [in]
        limit_name: the limit's name, for its source
        about: the code of the part or opening
        remedy: what helps beside a thicker board; empty for nothing
        lasting: whether the load stays for years, under which wood creeps

    Returns:
        Pass, or a caution with the thickness that would pass.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 9; limits by common practice.
    """
    passes = sag <= limit + TOLERANCE
    thicker = say("Make it {:up} thick{}.", thick_enough(board.thickness, sag, limit), remedy) if sag else ""
    return new_finding(
        rule=rule,
        verdict=Verdict.PASS if passes else Verdict.CAUTION,
        message=say(
            "{} hangs {:.3} over {}; {:.3} is allowed{}.",
            what,
            sag,
            board.span,
            limit,
            "; years of load about double it" if lasting else "",
        ),
        remedy="" if passes else thicker,
        about=about,
        found=float(sag),
        needed=float(limit),
        source=f"{HANDBOOK}; limit: {source_of(limit_name)}",
    )
