"""The checks of a housing: its depth, its stop and its play."""

from casewright.joinery.families.housing.asked import Housing
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.stopped import stop_before_the_front
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import say


def depth_in_the_side(joint: Housing) -> Finding:
    """Whether the housing leaves enough of the case side.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: “Cutting housing joints”, The Woodworker.
    """
    most = joint.case_side / joint.limits.depth_part.value
    return at_most(
        "housing depth",
        joint.depth,
        most,
        say(
            "The housing is {} deep; a {} of {:bare} takes {:bare}.",
            joint.depth,
            joint.into,
            joint.case_side,
            most,
        ),
        say(
            "Make the housing {:down} deep or shallower, or the {} {:up} thick.",
            most,
            joint.into,
            joint.depth * joint.limits.depth_part.value,
        ),
        about=joint.mark,
        source=joint.limits.depth_part.source,
    )


def depth_that_carries(joint: Housing) -> Finding:
    """Whether the housing is deep enough to carry a divider and to keep it flat.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    least = joint.limits.depth_least
    # A case side too thin for that depth has to be thicker first, or the other limit stops the joint.
    thick = least.value * joint.limits.depth_part.value
    thin = joint.case_side < thick - TOLERANCE
    return at_least(
        "housing carries",
        joint.depth,
        least.value,
        say("The housing is {} deep; {:up bare} or more carries one.", joint.depth, least.value),
        say("Make the {} {:up} thick and the housing {:up} deep.", joint.into, thick, least.value)
        if thin
        else say("Make the housing {:up} deep or deeper.", least.value),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=least.source,
    )


def stop_at_the_front(joint: Housing) -> Finding:
    """Whether a stopped housing leaves enough wood before it.

    Args:
        joint: the joint

    Returns:
        A pass or a caution; a housing that runs through passes.

    Source: “Cutting housing joints”, The Woodworker: 8 to 12 mm.
    """
    limits = joint.limits
    return stop_before_the_front(
        "housing",
        joint.stop,
        limits.stop_least,
        limits.stop.value,
        "The housing runs through, and shows at the front edge.",
        joint.mark,
    )


def play_for_glue(joint: Housing) -> Finding:
    """Whether the housing is wider than the divider by as much as glue needs, and no more.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    least, most = joint.limits.play_least, joint.limits.play_most
    tight, loose = joint.play < least.value - TOLERANCE, joint.play > most.value + TOLERANCE
    return new_finding(
        rule="play for the glue",
        verdict=Verdict.CAUTION if tight or loose else Verdict.PASS,
        message=say(
            "The housing is {:.4} wider than its {}; {:.3 bare} to {:.3} is usual.",
            joint.play,
            joint.housed,
            least.value,
            most.value,
        ),
        remedy=say(
            "Make the housing {:.3} wide: try it on scrap with an offcut of the {}.",
            joint.divider + joint.limits.play.value,
            joint.housed,
        )
        if tight or loose
        else "",
        about=joint.mark,
        found=joint.play,
        needed=min(max(joint.play, least.value), most.value),
        source=least.source if tight else most.source,
    )
