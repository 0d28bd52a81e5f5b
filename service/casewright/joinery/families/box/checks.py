"""What a box joint is held to."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK
from casewright.joinery.cutters import nearest_cutter
from casewright.joinery.groove import Groove
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict
from casewright.measure.rounding import near_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxLimits:
    """What a box joint is held to, and its habits. Lengths are in inches.

    Attributes:
        fingers_least: fewer fingers and spaces stop the joint
        play_least: less play is cautioned
        play_most: more play is cautioned
        play: what a space is wider than a finger, where nothing else is said
        finger_part: a finger is chosen from cutters between the thinner board divided by this
        finger_times: and the thinner board times this
    """

    fingers_least: Sourced
    play_least: Sourced
    play_most: Sourced
    play: Sourced
    finger_part: Sourced
    finger_times: Sourced


LIMITS = BoxLimits(**sourced("box_limits"))
"""The limits of a shop that has set none of its own."""


def enough_fingers(fingers: Count, height: Inches, limits: BoxLimits = LIMITS, about: str = "") -> Finding:
    """Whether there are fingers enough to hold.

    Args:
        fingers: fingers and spaces, counted together [dimensionless]
        height: height of the boards at the joint [in]
        limits: what the joint is held to
        about: code of the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    least = int(limits.fingers_least.value)
    few = fingers < least
    return Finding(
        rule="number of fingers",
        verdict=Verdict.STOP if few else Verdict.PASS,
        message=say("The joint has {:d} fingers and spaces; it needs {:d}.", fingers, least),
        remedy=say("Make the fingers {:down} wide or narrower.", height / least) if few else "",
        about=about,
        found=fingers,
        needed=least,
        source=limits.fingers_least.source,
    )


def cutter_for(
    finger: Inches,
    fingers: Count,
    cutters: tuple[Inches, ...] = RACK.cutters,
    about: str = "",
) -> Finding:
    """Whether a cutter of the rack is as wide as the finger.

    Args:
        finger: width of a finger [in]
        fingers: fingers and spaces, counted together [dimensionless]
        cutters: widths in the rack, narrowest first [in]
        about: code of the joint

    Returns:
        A pass, or a stop with the height that would suit the nearest cutter.

    Source: common practice: what the cutter leaves is the space, so it has to be the finger's width exactly.
    """
    near = nearest_cutter(finger, cutters)
    fits = near is not None and abs(finger - near) <= TOLERANCE
    message = say("A finger is {} wide, and no cutter is listed on the rack.", finger)
    remedy: Words = say("List the shop's cutters, or stack one to {:.4}.", finger)
    if near is not None:
        message = say("A finger is {} wide; the nearest cutter on the rack is {:bare}.", finger, near)
        remedy = say(
            "Make the boards {} high at the joint for {:d} fingers with the {} cutter, "
            "or stack one to {:.4}.",
            near * fingers,
            fingers,
            near,
            finger,
        )
    return Finding(
        rule="cutter at hand",
        verdict=Verdict.PASS if fits else Verdict.STOP,
        message=message,
        remedy="" if fits else remedy,
        about=about,
        found=finger,
        needed=finger if near is None else near,
        source="common practice: what the cutter leaves is the space, so it is as wide as a finger, exactly",
    )


def play_for_glue(play: Inches, finger: Inches, limits: BoxLimits = LIMITS, about: str = "") -> Finding:
    """Whether the spaces leave room for glue, and no more.

    Args:
        play: how much wider a space is than a finger [in]
        finger: width of a finger [in]
        limits: what the joint is held to
        about: code of the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    least, most = limits.play_least, limits.play_most
    off = not least.value - TOLERANCE <= play <= most.value + TOLERANCE
    return Finding(
        rule="play for the glue",
        verdict=Verdict.CAUTION if off else Verdict.PASS,
        message=say(
            "A space is {:.4} wider than its finger; {:.3 bare} to {:.3} is usual.",
            play,
            least.value,
            most.value,
        ),
        remedy=say(
            "Shim or sand the key of the jig to {:.3}, for a play of {:.3}: a dry joint then goes home by "
            "hand.",
            finger - limits.play.value,
            limits.play.value,
        )
        if off
        else "",
        about=about,
        found=play,
        needed=min(max(play, least.value), most.value),
        source=least.source if play < least.value else most.source,
    )


def groove_in_a_finger(
    groove: Groove,
    front: tuple[tuple[Inches, Inches], ...],
    side: tuple[tuple[Inches, Inches], ...],
    finger: Inches,
    about: str = "",
) -> Finding:
    """Whether the groove stays within one finger, so that it needs to be stopped in one board only.

    Args:
        groove: the groove
        front: fingers of the front, from where to where [in]
        side: fingers of the side likewise [in]
        finger: width of a finger [in]
        about: code of the joint

    Returns:
        A pass that says where the groove is stopped, or a stop.

    Source: geometry of the joint: where a board has a finger, its end shows.
    """
    held = {"front": front, "side": side}
    for board, fingers in held.items():
        for low, high in fingers:
            if low - TOLERANCE <= groove.height and groove.top <= high + TOLERANCE:
                return Finding(
                    rule="groove and fingers",
                    verdict=Verdict.PASS,
                    message=say(
                        "The groove lies in a finger of the {}, from {:bare} to {}; stop it short of that "
                        "board's end, and run it through in the other.",
                        board,
                        low,
                        high,
                    ),
                    about=about,
                    source="geometry of the joint",
                )
    place = max(0.0, near_to(groove.height / finger, 1.0) * finger)
    moves = groove.width <= finger + TOLERANCE
    return Finding(
        rule="groove and fingers",
        verdict=Verdict.STOP,
        message=say(
            "The groove from {:bare} to {} runs over two fingers and shows in both boards' ends.",
            groove.height,
            groove.top,
        ),
        remedy=say("Put its lower edge at {}, or stop it in both boards.", place)
        if moves
        else say("Make the fingers {:up} wide or wider, or stop it in both boards.", groove.width),
        about=about,
        source="geometry of the joint",
    )
