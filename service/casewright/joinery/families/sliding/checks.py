"""What a sliding dovetail is held to."""

from casewright.joinery.families.sliding.limits import SLIDING, SlidingLimits
from casewright.joinery.families.sliding.rules import (
    deepest_socket,
    depth_for_neck,
    neck_wanted,
    shoulder_for_neck,
    side_for_socket,
)
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.rounding import down_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number


def socket_depth(depth: Inches, case_side: Inches, limits: Limits = LIMITS, about: str = "") -> Finding:
    """Whether the socket is shallow enough not to weaken the case side.

    Args:
        depth: depth of the socket [in]
        case_side: thickness of the case side [in]
        limits: what a joint is held to
        about: code of the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    most = case_side / limits.sliding_depth_part.value
    return at_most(
        "socket depth",
        depth,
        most,
        say("The socket is {} deep; a case side of {:bare} takes {:bare}.", depth, case_side, most),
        _shallower(depth, case_side, limits),
        about=about,
        source=limits.sliding_depth_part.source,
    )


def wood_behind_socket(
    left: Inches, depth: Inches, case_side: Inches, limits: Limits = LIMITS, about: str = ""
) -> Finding:
    """Whether enough of the case side is left behind the socket.

    Args:
        left: what is left of the case side [in]
        depth: depth of the socket [in]
        case_side: thickness of the case side [in]
        limits: what a joint is held to
        about: code of the joint

    Returns:
        A pass or a stop, with the same answer as the check of the depth.

    Source: common practice.
    """
    least = limits.sliding_left_least.value
    return at_least(
        "wood behind the socket",
        left,
        least,
        say("Behind the socket {} of the case side is left; it needs {:bare}.", left, least),
        _shallower(depth, case_side, limits),
        about=about,
        source=limits.sliding_left_least.source,
    )


def _shallower(depth: Inches, case_side: Inches, limits: Limits) -> Words:
    """One answer for the depth and for what is left: a socket that passes both, and holds."""
    hold = SLIDING.depth_least.value
    most = down_to(deepest_socket(case_side, limits), 1 / 64)
    if most < hold - TOLERANCE:
        thick = side_for_socket(hold, limits)
        return say("Make the case side {:up} thick, and the socket {:bare} deep.", thick, hold)
    return say(
        "Make the socket {:down} deep or shallower, or the case side {:up} thick.",
        most,
        side_for_socket(depth, limits),
    )


def depth_that_holds(
    depth: Inches,
    case_side: Inches,
    limits: Limits = LIMITS,
    about: str = "",
    own: SlidingLimits = SLIDING,
) -> Finding:
    """Whether the socket is deep enough for its slope to hold.

    Args:
        depth: depth of the socket [in]
        case_side: thickness of the case side [in]
        limits: what a joint is held to
        about: code of the joint
        own: what only a sliding dovetail is held to

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    least = own.depth_least
    thick = side_for_socket(least.value, limits)
    thin = case_side < thick - TOLERANCE
    return at_least(
        "socket holds",
        depth,
        least.value,
        say("The socket is {} deep; {:up bare} or more holds a divider.", depth, least.value),
        say("Make the case side {:up} thick, and the socket {:bare} deep.", thick, least.value)
        if thin
        else say("Make the socket {:up} deep or deeper.", least.value),
        about=about,
        verdict=Verdict.CAUTION,
        source=least.source,
    )


def shoulder_bears(shoulder: Inches, about: str = "", own: SlidingLimits = SLIDING) -> Finding:
    """Whether the shoulders hide the edges of the socket, and take the racking of the case.

    Args:
        shoulder: what is cut off each face of the divider at the tail's tip [in]
        about: code of the joint
        own: what only a sliding dovetail is held to

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    least = own.shoulder_least
    return at_least(
        "shoulder",
        shoulder,
        least.value,
        say(
            "The shoulder is {} on each face; from {:bare} it hides the socket's edges and takes racking.",
            shoulder,
            least.value,
        ),
        say("Cut {:up} or more off each face of the divider at the tip.", least.value),
        about=about,
        verdict=Verdict.CAUTION,
        source=least.source,
    )


def neck_strength(
    neck: Inches,
    divider: Inches,
    shoulder: Inches,
    depth: Inches,
    slope: Number,
    about: str = "",
    own: SlidingLimits = SLIDING,
) -> Finding:
    """Whether the tail is wide enough at its neck not to snap.

    Args:
        neck: the tail at its shoulders [in]
        divider: thickness of the divider [in]
        shoulder: what is cut off each face at the tip [in]
        depth: how far the tail reaches into the case side [in]
        slope: how far along for one across, 6 for 1:6 [dimensionless]
        about: code of the joint
        own: what only a sliding dovetail is held to

    Returns:
        A pass, a caution, or a stop where it would snap.

    Source: common practice; where it snaps is from memory.
    """
    wanted = neck_wanted(divider, own)
    third = divider / own.neck_stop_part.value
    verdict, source = Verdict.PASS, own.neck_part.source
    if neck < max(third, own.neck_least.value) - TOLERANCE:
        verdict = Verdict.STOP
        source = own.neck_least.source if third < own.neck_least.value else own.neck_stop_part.source
    elif neck < wanted - TOLERANCE:
        verdict = Verdict.CAUTION
    return Finding(
        rule="neck of the tail",
        verdict=verdict,
        message=say(
            "The tail is {} wide at its neck; in a divider of {:bare} it needs {:bare}{}.",
            neck,
            divider,
            wanted,
            ", or it snaps" if verdict is Verdict.STOP else "",
        ),
        remedy="" if verdict is Verdict.PASS else wider_neck(divider, shoulder, depth, slope, own),
        about=about,
        found=neck,
        needed=wanted,
        source=source,
    )


def wider_neck(
    divider: Inches, shoulder: Inches, depth: Inches, slope: Number, own: SlidingLimits = SLIDING
) -> Words:
    """What gives a tail a neck that is wide enough.

    Args:
        divider: thickness of the divider [in]
        shoulder: what is cut off each face at the tip [in]
        depth: how far the tail reaches into the case side [in]
        slope: how far along for one across, 6 for 1:6 [dimensionless]
        own: what only a sliding dovetail is held to

    Returns:
        The shoulder, the depth, or both; a thicker divider where neither would do.

    Source: geometry of the joint.
    """
    wanted = neck_wanted(divider, own)
    least, hold = own.shoulder_least.value, own.depth_least.value
    narrower = down_to(shoulder_for_neck(divider, depth, slope, wanted), 1 / 64)
    shallower = down_to(depth_for_neck(divider, shoulder, slope, wanted), 1 / 64)
    if narrower >= least and shallower >= hold:
        return say(
            "Make each shoulder {:down} or less, or the socket {:down bare} deep.", narrower, shallower
        )
    if narrower >= least:
        return say("Make each shoulder {:down} or less.", narrower)
    if shallower >= hold:
        return say("Make the socket {:down} deep or shallower.", shallower)
    both = down_to(min(depth, depth_for_neck(divider, least, slope, wanted)), 1 / 64)
    if both >= hold:
        return say("Make each shoulder {:up} and the socket {:down bare} deep.", least, both)
    thick = max(
        2 * (least + hold / slope) * own.neck_part.value, 2 * (least + hold / slope) + own.neck_least.value
    )
    return say(
        "Make the divider {:up} thick, each shoulder {:up bare} and the socket {:up bare} deep.",
        thick,
        least,
        hold,
    )
