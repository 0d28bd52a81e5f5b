"""The checks of a lock rabbet: the end of the side, groove, tongue, cutter and lip."""

from casewright.joinery.cutters import GROUND, in_words, made_by, nearest_cutter
from casewright.joinery.families.lock_rabbet.asked import LockRabbet
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


def short_grain_at_the_end(joint: LockRabbet) -> Finding:
    """Whether the end of the side is long enough not to break off before its groove.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice: the end is held along the grain only, over its length from groove to end.
    """
    least = joint.limits.end_least
    return at_least(
        "short grain at the end",
        joint.from_end,
        least.value,
        say(
            "The end of the side is {} long before its groove; it needs {:bare}, in plywood too.",
            joint.from_end,
            least.value,
        ),
        _longer_end(joint, least.value),
        about=joint.mark,
        source=least.source,
    )


def end_against_the_side(joint: LockRabbet) -> Finding:
    """Whether the end of the side is long enough for its thickness.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    least = joint.side / joint.limits.end_part.value
    return at_least(
        "end of the side",
        joint.from_end,
        least,
        say(
            "The groove is {} from the end of the side; a side of {:bare} needs {:bare}.",
            joint.from_end,
            joint.side,
            least,
        ),
        _longer_end(joint, least),
        about=joint.mark,
        source=joint.limits.end_part.source,
    )


def _longer_end(joint: LockRabbet, least: Inches) -> Words:
    """What makes the end of the side so long: moving the groove, a thinner tongue, or a thicker front."""
    room = joint.front - joint.lip
    if room - joint.tongue >= least - TOLERANCE:
        return say("Put the groove {:up} from the end.", least)
    thicker = joint.lip + least + joint.tongue
    if room - least >= joint.limits.tongue_least.value - TOLERANCE:
        return say(
            "Put the groove {:up} from the end and make the tongue {:down} thick, or the front {:up}.",
            least,
            room - least,
            thicker,
        )
    return say("Make the front {:up} thick, and put the groove {:up} from the end.", thicker, least)


def groove_depth(joint: LockRabbet) -> Finding:
    """Whether the groove leaves enough of the side.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    most = joint.side / joint.limits.reach_part.value
    return at_most(
        "groove depth",
        joint.reach,
        most,
        say("The groove is {} deep; a side of {:bare} takes {:bare}.", joint.reach, joint.side, most),
        say("Make groove and tongue {:down} deep or shallower.", most),
        about=joint.mark,
        source=joint.limits.reach_part.source,
    )


def tongue_thickness(joint: LockRabbet) -> Finding:
    """Whether the tongue is thick enough to hold.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: Lage, “Locking Rabbet Joint”, Woodsmith: a tongue of 1/8 in.
    """
    least = joint.limits.tongue_least
    return at_least(
        "tongue",
        joint.tongue,
        least.value,
        say("The tongue is {} thick; {:up bare} or more holds.", joint.tongue, least.value),
        say("Make tongue and groove {:up}, or try them on scrap first.", least.value),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=least.source,
    )


def cutter_for_the_groove(joint: LockRabbet) -> Finding:
    """Whether a cutter of the rack is as wide as the groove.

    Args:
        joint: the joint

    Returns:
        A pass or a caution: a groove of another width takes two passes or more.

    Source: common practice.
    """
    cutters, wide = joint.rack.cutters, in_words(joint.tongue)
    near, made = nearest_cutter(joint.tongue, cutters), made_by(joint.tongue, cutters)
    fits = near is not None and abs(near - joint.tongue) <= TOLERANCE
    message = say("The groove is {} wide, and no cutter is listed on the rack.", wide)
    remedy: Words = say("List the shop's cutters, or make the groove with a plough plane.")
    if near is not None:
        message = say("The groove is {} wide, as its cutter is.", wide)
        remedy = say("Make tongue and groove {}.", near)
    if near is not None and not fits:
        message = say("The groove is {} wide, and no cutter is; the nearest is {:bare}.", wide, near)
    if made and not fits:
        remedy = say("Make tongue and groove {}, or cut the groove with {}.", near or 0.0, made.words)
    return Finding(
        rule="cutter at hand",
        verdict=Verdict.PASS if fits else Verdict.CAUTION,
        message=message,
        remedy="" if fits else remedy,
        about=joint.mark,
        found=joint.tongue,
        needed=joint.tongue if near is None else near,
        source=GROUND,
    )


def lip_thickness(joint: LockRabbet) -> Finding:
    """Whether the lip is thick enough to stand when the slot is cut behind it.

    Args:
        joint: the joint, with a lip

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    least = joint.limits.lip_least
    return at_least(
        "lip",
        joint.lip,
        least.value,
        say("The lip is {} thick; {:up bare} or more stands.", joint.lip, least.value),
        say("Make the lip {:up}, or back it with a block when the slot is cut.", least.value),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=least.source,
    )
