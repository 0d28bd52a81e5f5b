"""The checks of a lap, and the one answer that makes it pass them."""

from casewright.joinery.lap import lap_needed, side_for_index
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number


def front_needed(front: Inches, side: Inches, lap: Inches, limits: Limits = LIMITS) -> Inches:
    """How thick a front is at least whose tails stay as long as they are.

    Rule: the greatest of front - lap + lap_needed, front_least and side + front_over_side

    Args:
        front: thickness of the front [in]
        side: thickness of the side [in]
        lap: what is left of the front before the tails [in]
        limits: what a joint is held to

    Returns:
        The thickness that passes the checks of the lap and of the front [in]

    Source: common practice; the lap by the Fine Woodworking special issue of 2007, p. 84.
    """
    for_lap = front - lap + lap_needed(side, limits)
    return max(for_lap, limits.front_least.value, side + limits.front_over_side.value)


def thicker_lap(
    front: Inches, side: Inches, lap: Inches, limits: Limits = LIMITS, *, locked: bool = False
) -> Words:
    """What makes a lap thick enough, the same for each of its checks.

    Args:
        front: thickness of the front [in]
        side: thickness of the side [in]
        lap: what is left of the front before the tails [in]
        limits: what a joint is held to
        locked: whether the first gauge of the batch is set already

    Returns:
        The front that would do, and the gauge that would do in this front where there is one.

    Source: geometry of the joint.
    """
    needed = lap_needed(side, limits)
    said = say(
        "Make the front at least {:up} thick, for a lap of {}", front_needed(front, side, lap, limits), needed
    )
    gauge = front - needed
    if locked or gauge < front / 2 - TOLERANCE:
        return say("{}.", said)
    return say("{}, or in this front set gauge 1 to {:down}.", said, gauge)


def lap_is_sound(lap: Inches, index: Number, limits: Limits = LIMITS) -> bool:
    """Whether a lap passes each of its checks, so that nobody need say what would make it thicker.

    Args:
        lap: what is left of the front before the tails [in]
        index: the lap index [dimensionless]
        limits: what a joint is held to

    Returns:
        True where it does.

    Source: the checks of the lap, each with its own source.
    """
    thick = lap >= limits.lap_preferred.value - TOLERANCE and lap >= limits.lap_least.value - TOLERANCE
    most = min(limits.lap_index_caution.value, limits.lap_index_stop.value)
    return thick and index <= most + TOLERANCE


def lap_thickness(lap: Inches, limits: Limits = LIMITS, about: str = "", remedy: Words = "") -> Finding:
    """JC1: whether the lap is thick enough to be chopped against.

    Args:
        lap: what is left of the front before the tails [in]
        limits: what a joint is held to
        about: code of the part or joint
        remedy: what makes it thicker; empty to say only how thick it has to be

    Returns:
        A pass, a caution or a stop.

    Source: Fine Woodworking, 2007 special issue, p. 84.
    """
    least, preferred = limits.lap_least, limits.lap_preferred
    verdict, source = Verdict.PASS, preferred.source
    if lap < least.value - TOLERANCE:
        verdict, source = Verdict.STOP, least.source
    elif lap < preferred.value - TOLERANCE:
        verdict = Verdict.CAUTION
    thicker = remedy or say("Make the lap {:up} or thicker.", preferred.value)
    return new_finding(
        rule="JC1",
        verdict=verdict,
        message=say("The lap is {}; it needs {:bare}, better {:bare}.", lap, least.value, preferred.value),
        remedy="" if verdict is Verdict.PASS else thicker,
        about=about,
        found=lap,
        needed=preferred.value,
        source=source,
    )


def lap_strength(
    side: Inches, lap: Inches, index: Number, limits: Limits = LIMITS, about: str = "", remedy: Words = ""
) -> Finding:
    """JC2: whether the lap stands the chopping and a tight tail. A screen that ranks, not a strength.

    Args:
        side: thickness of the side [in]
        lap: what is left of the front before the tails [in]
        index: the lap index [dimensionless]
        limits: what a joint is held to
        about: code of the part or joint
        remedy: what makes the lap thicker; empty to say only how thick it has to be

    Returns:
        A pass, a caution or a stop, with the lap that would pass.

    Source: the lap index, with limits from shop experience.
    """
    caution = limits.lap_index_caution
    verdict, source = Verdict.PASS, caution.source
    if index > limits.lap_index_stop.value + TOLERANCE:
        verdict, source = Verdict.STOP, limits.lap_index_stop.source
    elif index > caution.value + TOLERANCE:
        verdict = Verdict.CAUTION
    ways: Words = ""
    if verdict is not Verdict.PASS:
        thicker = remedy or say("Make the lap {:up} or thicker.", lap_needed(side, limits))
        ways = say("{} Or else chop against a backing block and mill one spare front blank.", thicker)
        if lap >= limits.lap_preferred.value - TOLERANCE:
            ways = say(
                "{} Or make the side {:down} thick, or else chop against a backing block and mill one spare "
                "front blank.",
                thicker,
                side_for_index(lap, caution.value),
            )
    return new_finding(
        rule="JC2",
        verdict=verdict,
        message=say(
            "The lap index is {:.1f} ({} side, {} lap); up to {:g} is safe.", index, side, lap, caution.value
        ),
        remedy=ways,
        about=about,
        found=index,
        needed=caution.value,
        source=source,
    )
