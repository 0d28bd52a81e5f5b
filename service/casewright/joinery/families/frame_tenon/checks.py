"""What a frame's tenon is held to: shoulders, thickness, the groove, the wood around it, a dry rear joint."""

from collections.abc import Iterator

from casewright.joinery.families.frame_tenon.asked import FrameTenon
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import (
    across_grain,
    chisel_of,
    tenon_not_a_peg,
    wood_above_mortise,
)
from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


def frame_findings(joint: FrameTenon, left: Inches, reach: Inches) -> tuple[Finding, ...]:
    """Every check of a frame's tenon.

    Args:
        joint: the joint
        left: what is left of the stile behind the mortise [in]
        reach: how far the tenon reaches into the stile [in]

    Returns:
        Each finding, passes too.

    Source: each check names its own.
    """
    return tuple(_findings(joint, left, reach))


def _findings(joint: FrameTenon, left: Inches, reach: Inches) -> Iterator[Finding]:
    limits, mark = joint.limits, joint.mark
    yield shoulders(joint)
    yield tenon_thickness(joint)
    if joint.groove:
        yield tenon_and_groove(joint)
    yield tenon_not_a_peg(joint.width, joint.tenon, joint.haunch, mark)
    yield behind_mortise(left, joint)
    if not joint.is_stub:
        # A stub tenon has no mortise but the groove, which runs out at the end anyway.
        yield wood_above_mortise(joint.haunch + joint.beyond, limits.end_least, "stile", mark)
        yield chisel_of(joint.tenon, joint.rack, mark)
    yield tenon_reach(reach, joint)
    if not joint.slack:
        yield across_grain(joint.width, limits.width_most, mark)
    if joint.shrinkage is not None:
        yield rear_slack(joint.shrinkage, joint)


def shoulders(joint: FrameTenon) -> Finding:
    """Whether the shoulders before and behind the tenon are wide enough to bear.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    limit = joint.limits.shoulder_least
    least, narrower = limit.value, min(joint.face, joint.back)
    where = "front" if joint.face <= joint.back + TOLERANCE else "back"
    return at_least(
        "shoulders",
        narrower,
        least,
        say("The narrower shoulder, at the {}, is {}; it needs {:bare}.", where, narrower, least),
        _wider_shoulders(joint, least),
        about=joint.mark,
        source=limit.source,
    )


def _wider_shoulders(joint: FrameTenon, least: Inches) -> Words:
    middle = (joint.thickness - joint.tenon) / 2
    if middle >= least - TOLERANCE:
        return say("Put the tenon in the middle, {} from the face.", middle)
    thicker = joint.tenon + 2 * least
    if joint.thickness - 2 * least <= TOLERANCE:
        return say("Make the rail and the stile {:up} thick.", thicker)
    both = "tenon and the groove" if joint.groove else "tenon"
    return say(
        "Make the {} {:down} thick or thinner, in the middle, or the rail and the stile {:up} thick.",
        both,
        joint.thickness - 2 * least,
        thicker,
    )


def tenon_thickness(joint: FrameTenon) -> Finding:
    """Whether the tenon is as thick as the groove is wide, or about a third of the rail.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    limits, thickness, tenon = joint.limits, joint.thickness, joint.tenon
    third = thickness / limits.part.value
    if joint.groove and abs(tenon - joint.groove.width) <= TOLERANCE:
        message = say("The tenon is {} thick, as the groove is wide.", tenon)
        return new_finding(
            rule="tenon thickness",
            verdict=Verdict.PASS,
            message=message,
            about=joint.mark,
            found=tenon,
            needed=tenon,
            source=limits.part.source,
        )
    thin, thick = thickness / limits.thin_part.value, thickness / limits.thick_part.value
    off = not thin - TOLERANCE <= tenon <= thick + TOLERANCE
    return new_finding(
        rule="tenon thickness",
        verdict=Verdict.CAUTION if off else Verdict.PASS,
        message=say("The tenon is {} thick; about a third of the rail would be {:bare}.", tenon, third),
        remedy=say("Make it from {:up} to {:down} thick.", thin, thick) if off else "",
        about=joint.mark,
        found=tenon,
        needed=min(max(tenon, thin), thick),
        source=(limits.thin_part if tenon < third else limits.thick_part).source,
    )


def tenon_and_groove(joint: FrameTenon) -> Finding:
    """Whether the tenon fills the groove of the stile.

    Args:
        joint: the joint, with a groove

    Returns:
        A pass or a stop.

    Source: geometry of the joint: a groove wider than the tenon stays open beside it.
    """
    groove = joint.groove.width if joint.groove else 0.0
    return at_least(
        "tenon and groove",
        joint.tenon,
        groove,
        say(
            "The groove is {} wide and the tenon {:bare} thick; a thinner one leaves it open.",
            groove,
            joint.tenon,
        ),
        say("Make the tenon {} thick, as the groove is wide.", groove),
        about=joint.mark,
        source="geometry of the joint",
    )


def behind_mortise(left: Inches, joint: FrameTenon) -> Finding:
    """Whether enough of the stile is left behind the mortise.

    Args:
        left: what is left of the stile [in]
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    limit = joint.limits.left_least
    return at_least(
        "wood behind the mortise",
        left,
        limit.value,
        say("Behind the mortise {} of the stile is left; it needs {:bare}.", left, limit.value),
        _shorter(joint, limit.value - left),
        about=joint.mark,
        source=limit.source,
    )


def _shorter(joint: FrameTenon, by: Inches) -> Words:
    length, wider = joint.length - by, joint.stile + by
    if length < max(joint.groove_depth, joint.limits.reach_least.value) - TOLERANCE:
        return say("Make the stile {:up} wide or wider.", wider)
    return say("Make the tenon {:down} long or shorter, or the stile {:up} wide.", length, wider)


def tenon_reach(reach: Inches, joint: FrameTenon) -> Finding:
    """Whether the tenon reaches far enough into the stile to stay there.

    Args:
        reach: how far it reaches in, without the gap of a rear joint [in]
        joint: the joint

    Returns:
        A pass or a stop.

    Source: from memory.
    """
    limit = joint.limits.reach_least
    return at_least(
        "reach of the tenon",
        reach,
        limit.value,
        say("The tenon reaches {} into the stile; it needs {:bare}.", reach, limit.value),
        say("Make the tenon {:up} long or longer.", limit.value + joint.slack),
        about=joint.mark,
        source=limit.source,
    )


def rear_slack(shrinkage: Inches, joint: FrameTenon) -> Finding:
    """Whether the gap of a web frame's rear joint lets the case shrink.

    Args:
        shrinkage: how much shallower the case is when it is driest [in]
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice: sides shrink in depth and the frame does not, so that its rear joint is left dry.
    """
    step = joint.limits.slack_step
    return at_least(
        "slack of the rear joint",
        joint.slack,
        shrinkage,
        say(
            "The rear joint is left dry with a gap of {}; the case loses {:.3} in depth.",
            joint.slack,
            shrinkage,
        ),
        say("Leave a gap of {:up 32} or more, and cut the runner shorter by it.", shrinkage),
        about=joint.mark,
        source=step.source,
    )
