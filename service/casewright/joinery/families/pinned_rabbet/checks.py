"""The checks of a pinned rabbet: rabbet and lip, pins, and the groove for the bottom."""

from casewright.joinery.families.pinned_rabbet.asked import (
    PinnedRabbet,
    clear_of,
    least_pin,
    pin_count,
    pin_places,
    usual_margin,
)
from casewright.joinery.groove import Groove
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import Words, say


def rabbet_depth(joint: PinnedRabbet) -> Finding:
    """Whether the rabbet takes a fair part of the front.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: Fine Woodworking, 2007 special issue: half to two thirds.
    """
    limits = joint.limits
    least = joint.front * limits.rabbet_least_part.value
    most = joint.front * limits.rabbet_most_part.value
    off = not least - TOLERANCE <= joint.rabbet <= most + TOLERANCE
    return Finding(
        rule="rabbet depth",
        verdict=Verdict.CAUTION if off else Verdict.PASS,
        message=say(
            "The rabbet is {} deep; a front of {:bare} takes {:bare} to {:bare}.",
            joint.rabbet,
            joint.front,
            least,
            most,
        ),
        remedy=say("Make the lip {:up bare} to {:down}.", joint.front - most, joint.front - least)
        if off
        else "",
        about=joint.mark,
        found=joint.rabbet,
        needed=min(max(joint.rabbet, least), most),
        source=limits.rabbet_least_part.source if joint.rabbet < least else limits.rabbet_most_part.source,
    )


def lip_hides_the_pins(joint: PinnedRabbet) -> Finding:
    """Whether the lip is thick enough that neither the side nor its pins tell on the front.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    least = joint.limits.lip_least
    return at_least(
        "lip before the pins",
        joint.lip,
        least.value,
        say("The lip is {} thick; {:bare} hides the side and its pins.", joint.lip, least.value),
        say("Make the lip {:up}, or the front {:up} thicker.", least.value, least.value - joint.lip),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=least.source,
    )


def pins_from_the_edge(joint: PinnedRabbet) -> Finding:
    """Whether the row of pins ends far enough from the edges.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice, read as from where the row ends; from the end of the side the pins stand half the
    rabbet, by geometry.
    """
    least = joint.limits.margin_least
    return at_least(
        "pins from the edge",
        joint.margin,
        least.value,
        say(
            "The first and the last pin stand {} from the edges; they need {:bare}.",
            joint.margin,
            least.value,
        ),
        say("Put them {:up} from the edges.", least.value),
        about=joint.mark,
        source=least.source,
    )


def pins_apart(joint: PinnedRabbet) -> Finding:
    """Whether the pins stand near enough to each other.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    most = joint.limits.spacing_most
    return at_most(
        "pins apart",
        joint.spacing,
        most.value,
        say("The pins stand {} apart; {:bare} is the most.", joint.spacing, most.value),
        say("Take {:d} pins.", pin_count(joint.height, joint.margin, most.value)),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=most.source,
    )


def pin_thickness(joint: PinnedRabbet) -> Finding:
    """Whether a pin is thick enough to be driven, and thin enough to leave wood beside it.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: from memory; that it stands in the middle of the rabbet is geometry.
    """
    limits = joint.limits
    least, most = least_pin(joint.rabbet, limits), joint.rabbet / limits.pin_part.value
    is_bamboo = least < limits.pin_least.value
    thin, thick = joint.pin < least - TOLERANCE, joint.pin > most + TOLERANCE
    remedy: Words = ""
    if (thin or thick) and most < least - TOLERANCE:
        remedy = say("Make the rabbet {:up} deep, for pins of {:up}.", limits.pin_part.value * least, least)
    elif thin or thick:
        remedy = say("Take pins of {:up bare} to {:down}.", least, most)
    return Finding(
        rule="pin",
        verdict=Verdict.CAUTION if thin or thick else Verdict.PASS,
        message=say(
            "A pin is {} thick{}; it takes {:bare} to be driven, and a rabbet {} deep takes {:bare}.",
            joint.pin,
            ", of bamboo in a bored hole" if is_bamboo else "",
            least,
            joint.rabbet,
            most,
        ),
        remedy=remedy,
        about=joint.mark,
        found=joint.pin,
        needed=least if thin else most,
        source=limits.pin_least.source if thin else limits.pin_part.source,
    )


def pin_reach(joint: PinnedRabbet) -> Finding:
    """Whether a pin goes far enough into the end grain of the front.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    limits = joint.limits
    least = limits.pin_sides_least.value * joint.side
    return at_least(
        "pin length",
        joint.pin_length,
        least,
        say(
            "A pin is {} long; through a side of {:bare} it needs {:bare}.",
            joint.pin_length,
            joint.side,
            least,
        ),
        say("Make the pins {:up} long or longer.", least),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=limits.pin_sides_least.source,
    )


def pins_and_groove(joint: PinnedRabbet, groove: Groove) -> Finding:
    """Whether every pin goes through whole wood, clear of the groove for the bottom.

    Args:
        joint: the joint
        groove: the groove

    Returns:
        A pass or a stop.

    Source: geometry of the joint: the groove runs out into the rabbet, and a pin that meets it holds nothing.
    """
    half = joint.pin / 2
    meets = not clear_of(groove, pin_places(joint.height, joint.margin, joint.pins), half)
    remedy: Words = ""
    if meets:
        spacing = max(joint.spacing, joint.limits.spacing_most.value)
        margin = usual_margin(joint.height, joint.pin, spacing, joint.pins, groove, joint.limits)
        remedy = say("Put the first and the last pin {} from the edges.", margin)
        if not clear_of(groove, pin_places(joint.height, margin, joint.pins), half):
            # Centred between two pins a groove that is no wider than their gap meets neither.
            low = joint.margin + (joint.spacing - min(groove.width, joint.spacing - joint.pin)) / 2
            remedy = say(
                "Make the groove {:down} wide or narrower, its lower edge at {}.",
                joint.spacing - joint.pin,
                low,
            )
    return Finding(
        rule="pins and groove",
        verdict=Verdict.STOP if meets else Verdict.PASS,
        message=say(
            "A pin meets the groove from {:bare} to {}."
            if meets
            else "No pin meets the groove from {:bare} to {}.",
            groove.height,
            groove.top,
        ),
        remedy=remedy,
        about=joint.mark,
        source="geometry of the joint",
    )


def groove_in_the_rabbet(joint: PinnedRabbet, groove: Groove) -> Finding:
    """Whether the groove for the bottom runs out behind the lip, where nobody sees it.

    Args:
        joint: the joint
        groove: the groove

    Returns:
        A pass or a stop.

    Source: geometry of the joint: a groove deeper than the rabbet cuts into the lip, and shows in its end.
    """
    shows = groove.depth > joint.rabbet + TOLERANCE
    return Finding(
        rule="groove and lip",
        verdict=Verdict.STOP if shows else Verdict.PASS,
        message=say(
            "The groove is {} deep, the rabbet {}; the groove {}.",
            groove.depth,
            joint.rabbet,
            "shows in the end of the lip" if shows else "runs through both boards and is hidden by the lip",
        ),
        remedy=say("Make the groove {:down} deep, or stop it in the front.", joint.rabbet) if shows else "",
        about=joint.mark,
        found=groove.depth,
        needed=joint.rabbet,
        source="geometry of the joint",
    )
