"""What a sliding dovetail is held to."""

from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.rounding import up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


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
        say("Make the socket {:down} deep or shallower.", most),
        about=about,
        source=limits.sliding_depth_part.source,
    )


def wood_behind_socket(left: Inches, depth: Inches, limits: Limits = LIMITS, about: str = "") -> Finding:
    """Whether enough of the case side is left behind the socket.

    Args:
        left: what is left of the case side [in]
        depth: depth of the socket [in]
        limits: what a joint is held to
        about: code of the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    least = limits.sliding_left_least.value
    thin = left < least - TOLERANCE
    remedy: Words = ""
    if thin:
        less = up_to(least - left, 1 / 64)
        remedy = say("Make the socket {:up} shallower, or the case side {:up bare} thicker.", less, less)
        if less >= depth:
            remedy = say("Make the case side {} thicker: it is too thin for any socket.", less)
    return Finding(
        rule="wood behind the socket",
        verdict=Verdict.STOP if thin else Verdict.PASS,
        message=say("Behind the socket {} of the case side is left; it needs {:bare}.", left, least),
        remedy=remedy,
        about=about,
        found=left,
        needed=least,
        source=limits.sliding_left_least.source,
    )
