"""What the tenons of a leg are held to: walls of the mortises, two that meet, thickness, shoulders, size."""

from collections.abc import Iterator

from casewright.joinery.families.leg_tenon.asked import LegTenon
from casewright.joinery.families.leg_tenon.rules import clear_length, longest_tenon
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import (
    across_grain,
    chisel_of,
    tenon_not_a_peg,
    wood_above_mortise,
)
from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


def leg_findings(joint: LegTenon, left: Inches) -> tuple[Finding, ...]:
    """Every check of a leg's tenons.

    Args:
        joint: the joint
        left: what is left of the leg behind the mortise [in]

    Returns:
        Each finding, passes too.

    Source: each check names its own.
    """
    return tuple(_findings(joint, left))


def _findings(joint: LegTenon, left: Inches) -> Iterator[Finding]:
    limits, mark = joint.limits, joint.mark
    yield wall_outside(joint)
    yield wall_inside(joint)
    yield wall_behind(left, joint)
    if joint.aprons == 2:
        yield two_mortises(joint)
    yield leg_tenon_thickness(joint)
    yield apron_shoulders(joint)
    yield length_of_tenon(joint)
    yield tenon_not_a_peg(joint.tenon_width, joint.tenon, joint.haunch, mark)
    yield wood_above_mortise(joint.haunch + joint.beyond, limits.end_least, "leg", mark)
    yield chisel_of(joint.tenon, joint.rack, mark)
    yield across_grain(joint.tenon_width, limits.width_most, mark)


def _wall(rule: str, where: Words, wall: Inches, remedy: Words, joint: LegTenon) -> Finding:
    limit = joint.limits.wall_least
    return at_least(
        rule,
        wall,
        limit.value,
        say("{} the mortise {} of the leg is left; it needs {:bare}.", where, wall, limit.value),
        remedy,
        about=joint.mark,
        source=limit.source,
    )


def wall_outside(joint: LegTenon) -> Finding:
    """Whether the wall between the mortise and the leg's outside face is thick enough.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    limits, least = joint.limits, joint.limits.wall_least.value
    face = least - joint.setback
    setback = least - joint.face
    shoulder, inside = limits.shoulder_least.value, joint.inner_wall - (least - joint.outer_wall)
    if inside < least - TOLERANCE:
        remedy = say("Make the leg {:up} thick.", 2 * least + joint.tenon)
    elif joint.apron - joint.tenon - face >= shoulder - TOLERANCE:
        remedy = say("Cut {:up} off the apron before the tenon.", face)
    elif setback + joint.apron <= joint.leg + TOLERANCE:
        remedy = say("Set the apron back {:up}.", setback)
    else:
        remedy = say(
            "Set the apron back {:up}, and make the leg {:up} thick.", setback, setback + joint.apron
        )
    return _wall("wall outside the mortise", "Outside", joint.outer_wall, remedy, joint)


def wall_inside(joint: LegTenon) -> Finding:
    """Whether the wall between the mortise and the leg's inside face is thick enough.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    least = joint.limits.wall_least.value
    short = least - joint.inner_wall
    face = joint.face - short
    if (
        joint.outer_wall - short >= least - TOLERANCE
        and face >= joint.limits.shoulder_least.value - TOLERANCE
    ):
        remedy = say("Cut {:down} off the apron before the tenon, and no more.", face)
    else:
        remedy = say("Make the leg {:up} thick.", joint.leg + short)
    return _wall("wall inside the mortise", "Inside", joint.inner_wall, remedy, joint)


def wall_behind(left: Inches, joint: LegTenon) -> Finding:
    """Whether enough of the leg is left behind the mortise.

    Args:
        left: what is left of the leg behind the mortise [in]
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    limits = joint.limits
    thicker = joint.leg + limits.wall_least.value - left
    shorter = joint.leg - limits.clearance.value - limits.wall_least.value
    remedy = (
        say("Make the tenon {:down} long or shorter, or the leg {:up} thick.", shorter, thicker)
        if shorter >= limits.length_least.value - TOLERANCE
        else say("Make the leg {:up} thick.", thicker)
    )
    return _wall("wall behind the mortise", "Behind", left, remedy, joint)


def two_mortises(joint: LegTenon) -> Finding:
    """Whether two mortises stay clear of each other, or meet so far that their tenons are mitred.

    Args:
        joint: the joint, with two aprons

    Returns:
        A pass or a stop.

    Source: common practice; where two tenons meet is geometry of the joint.
    """
    limit = joint.limits.clear_least
    apart = joint.inner_wall - joint.mortise
    message: Words = "The two mortises meet, and the tenons are too short to be mitred."
    if joint.is_mitred:
        message = say(
            "The two mortises meet, and the tenons are mitred: {} long outside and {} inside.",
            joint.length,
            joint.inner_length,
        )
    elif apart > TOLERANCE:
        message = say("The two mortises stay {} clear of each other; they need {:bare}.", apart, limit.value)
    passes = joint.is_mitred or apart >= limit.value - TOLERANCE
    return Finding(
        rule="two mortises",
        verdict=Verdict.PASS if passes else Verdict.STOP,
        message=message,
        remedy="" if passes else _clear_or_mitred(joint),
        about=joint.mark,
        found=None if joint.is_mitred else apart,
        needed=None if joint.is_mitred else limit.value,
        source=limit.source,
    )


def _clear_or_mitred(joint: LegTenon) -> Words:
    clear = clear_length(joint.inner_wall, joint.limits)
    mitred = min(joint.longest_mitred, longest_tenon(joint.leg, joint.limits))
    longer = say("{:down} long and mitre them", mitred)
    if mitred <= joint.inner_length + TOLERANCE:
        return say("Make the tenons {:down} long or shorter.", clear)
    if clear < joint.limits.length_least.value - TOLERANCE:
        return say("Make the tenons {}.", longer)
    return say("Make the tenons {:down} long or shorter, or {}.", clear, longer)


def leg_tenon_thickness(joint: LegTenon) -> Finding:
    """Whether the tenon is from a third of the apron to 1/2 in thick.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    limits, tenon = joint.limits, joint.tenon
    most = limits.tenon_most.value
    third = min(joint.apron / limits.part.value, most)
    off = not third - TOLERANCE <= tenon <= most + TOLERANCE
    return Finding(
        rule="tenon thickness",
        verdict=Verdict.CAUTION if off else Verdict.PASS,
        message=say(
            "The tenon is {} thick; on an apron of {} it is {:bare} to {}.", tenon, joint.apron, third, most
        ),
        remedy=say("Make it from {:up} to {:down} thick.", third, most) if off else "",
        about=joint.mark,
        found=tenon,
        needed=min(max(tenon, third), most),
        source=(limits.tenon_most if tenon > third else limits.part).source,
    )


def apron_shoulders(joint: LegTenon) -> Finding:
    """Whether the shoulders before and behind the tenon are wide enough.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    limit = joint.limits.shoulder_least
    least, narrower = limit.value, min(joint.face, joint.back)
    narrow = narrower < least - TOLERANCE
    most = joint.apron - 2 * least
    remedy: Words = ""
    if narrow and joint.tenon <= most + TOLERANCE:
        low, high = least, joint.apron - joint.tenon - least
        remedy = say("Put the tenon from {} to {} from the apron's outside face.", low, high)
    elif narrow and most > TOLERANCE:
        remedy = say("Make the tenon {:down} thick or thinner.", most)
    elif narrow:
        remedy = say("Make the apron {:up} thick.", joint.tenon + 2 * least)
    return Finding(
        rule="shoulders",
        verdict=Verdict.CAUTION if narrow else Verdict.PASS,
        message=say(
            "The narrower shoulder, at the {}, is {}; it needs {:bare}.",
            "outside" if joint.face <= joint.back + TOLERANCE else "inside",
            narrower,
            least,
        ),
        remedy=remedy,
        about=joint.mark,
        found=narrower,
        needed=least,
        source=limit.source,
    )


def length_of_tenon(joint: LegTenon) -> Finding:
    """Whether the tenon is long enough to hold a leg.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    limit = joint.limits.length_least
    short = joint.length < limit.value - TOLERANCE
    fits = longest_tenon(joint.leg, joint.limits) >= limit.value - TOLERANCE
    thicker = limit.value + joint.limits.clearance.value + joint.limits.wall_least.value
    remedy: Words = ""
    if short:
        remedy = (
            say("Make it {:up} long or longer.", limit.value)
            if fits
            else say("Make the leg {:up} thick, for a tenon of {}.", thicker, limit.value)
        )
    return Finding(
        rule="length of the tenon",
        verdict=Verdict.CAUTION if short else Verdict.PASS,
        message=say("The tenon is {} long; a leg asks for {:bare}.", joint.length, limit.value),
        remedy=remedy,
        about=joint.mark,
        found=joint.length,
        needed=limit.value,
        source=limit.source,
    )
