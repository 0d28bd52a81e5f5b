"""Will a drawer jam when it is pulled at one side.

Pulled off its centre line, a drawer turns until it bears on one side in front and on the other at the back.
While enough of it is still between the guides it slides all the same; below that length it locks.
"""

from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import say
from casewright.measure.units import Inches, Number
from casewright.stability.limits import Limits, house_limits, source_of


def jam_length(off_centre: Inches, friction: Number) -> Inches:
    """The length that must still be between the guides for a drawer to slide.

    Rule: 2 * friction * off_centre

    Args:
        off_centre: of the pull, from the drawer's centre line [in]
        friction: between drawer and guides; 0.3 for dry wood [dimensionless]

    Returns:
        The length below which it jams [in]

    Source: statics of a drawer that turns in its guides, bearing at two corners.
    """
    return 2 * friction * off_centre


def engaged_length(length: Inches, travel: Inches) -> Inches:
    """The length of a drawer that is still in the case when it is open.

    Rule: length - travel

    Args:
        length: of the drawer, front to back [in]
        travel: how far it is open [in]

    Returns:
        The length still engaged, never below zero [in]

    Source: geometry.
    """
    return max(0.0, length - travel)


def off_centre(width: Inches, pull: Inches) -> Inches:
    """How far a pull is from the centre line.

    Rule: abs(width / 2 - pull)

    Args:
        width: of the drawer or opening, side to side [in]
        pull: centre of the pull, from one edge of it [in]

    Returns:
        The distance [in]

    Source: geometry.
    """
    return abs(width / 2 - pull)


def check_jam(
    length: Inches,
    travel: Inches,
    pull_off_centre: Inches,
    *,
    about: str = "",
    limits: Limits | None = None,
    ledger: Ledger = UNKEPT,
) -> Finding:
    """Whether a drawer still slides at full travel when it is pushed by one pull.

    Args:
        length: of the drawer, front to back [in]
        travel: how far it comes out [in]
        pull_off_centre: of the pull furthest from the centre line [in]
        about: the drawer's code
        limits: friction; None for what a shop starts with
        ledger: where the working is kept

    Returns:
        Pass, or a caution with the travel and the place of the pull that would pass.

    Source: statics; friction by common practice.
    """
    held = limits or house_limits()
    jam = ledger.take("jam_length", jam_length, off_centre=pull_off_centre, friction=held.friction)
    engaged = ledger.take("engaged_length", engaged_length, length=length, travel=travel)
    passes = engaged >= jam - TOLERANCE
    nearer = engaged / (2 * held.friction)
    shorter = max(0.0, length - jam)
    return new_finding(
        rule="jam",
        verdict=Verdict.PASS if passes else Verdict.CAUTION,
        message=say(
            "Pulled {} off centre it jams with less than {} engaged; {} is engaged at {} travel.",
            pull_off_centre,
            jam,
            engaged,
            travel,
        ),
        remedy=(
            ""
            if passes
            else say("Stop it at {:down}, or set the pull within {:down} of the centre.", shorter, nearer)
        ),
        about=about,
        found=engaged,
        needed=jam,
        source=source_of("friction"),
    )


def check_shape(length: Inches, width: Inches, *, about: str = "") -> Finding:
    """Whether a drawer is long enough for its width to run straight.

    Args:
        length: front to back [in]
        width: side to side [in]
        about: the drawer's code

    Returns:
        Pass, or a caution below half the width.

    Source: common practice: a drawer should be at least half as long as it is wide.
    """
    passes = length >= width / 2 - TOLERANCE
    return new_finding(
        rule="drawer shape",
        verdict=Verdict.PASS if passes else Verdict.CAUTION,
        message=say("{} long and {} wide; half the width is {}.", length, width, width / 2),
        remedy=(
            ""
            if passes
            else say("Make it {:up} long or split the row in two; see also the jam length.", width / 2)
        ),
        about=about,
        found=length,
        needed=width / 2,
        source="common practice",
    )
