"""The checks that only a half-blind joint is put to: its gauges, its groove and its front."""

from casewright.joinery.gauges import GaugeGroup, what_a_wrong_gauge_does
from casewright.joinery.groove import Groove, GrooveFit
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Inches, Number


def second_gauge_as_set(
    side: Inches,
    rabbet: Inches,
    proud: Inches,
    right: tuple[Inches, ...],
    entered: Inches | None,
    limits: Limits = LIMITS,
    about: str = "",
) -> Finding:
    """JC3: whether the second gauge was set to what is left after the rabbet.

    Args:
        side: full thickness of the side [in]
        rabbet: depth of the registration rabbet; 0 when there is none [in]
        proud: how far the side is to stand proud [in]
        right: the right setting, one for each gauge group [in]
        entered: what the maker set; None when nothing was entered [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass; a stop when the rabbet was forgotten; a caution when the setting is out by something else.

    Source: geometry of the joint.
    """
    close = limits.gauge_tolerance.value
    nearest = right[0] if entered is None else min(right, key=lambda setting: abs(setting - entered))
    *others, last = right
    settings = say(" or ".join(["{:bare}"] * len(others) + ["{}"]), *others, last)
    verdict = Verdict.PASS
    remedy: Words = ""
    message = say("Gauge 2 is {}, what is left of the side after the rabbet.", settings)
    if entered is not None and abs(entered - nearest) > close + TOLERANCE:
        forgotten = rabbet > 0 and min(abs(entered - side), abs(entered - side + proud)) <= close
        verdict = Verdict.STOP if forgotten else Verdict.CAUTION
        remedy = say("Set gauge 2 to {}.", nearest)
        if forgotten:
            wrong = what_a_wrong_gauge_does(rabbet, too_deep=entered - nearest)
            message = say("Gauge 2 is set to {}, the side without its rabbet. {}", entered, wrong)
        else:
            out = say("{} too {}", abs(entered - nearest), "deep" if entered > nearest else "shallow")
            message = say("Gauge 2 is set to {}; the sockets would be {}.", entered, out)
    return new_finding(
        rule="JC3",
        verdict=verdict,
        message=message,
        remedy=remedy,
        about=about,
        found=nearest if entered is None else entered,
        needed=nearest,
        source="geometry of the joint",
    )


def measured_in_the_rabbet(
    side: Inches,
    rabbet: Inches,
    measured: tuple[tuple[str, Inches], ...],
    beside: tuple[str, ...],
    about: str = "",
) -> Finding:
    """Whether the sides were measured in their rabbet, and not beside it.

    Args:
        side: full thickness of the side [in]
        rabbet: depth of the registration rabbet; 0 when there is none [in]
        measured: mark of each side, and the thickness that was measured [in]
        beside: marks of those that were measured at their full thickness
        about: code of the part or joint

    Returns:
        A pass; a stop when a side was measured at its full thickness although it has a rabbet.

    Source: geometry of the joint.
    """
    left = side - rabbet
    thickest = max(thickness for mark, thickness in measured if mark in beside or not beside)
    return new_finding(
        rule="measured in the rabbet",
        verdict=Verdict.STOP if beside else Verdict.PASS,
        message=say("{} measured {}, the side without its rabbet.", ", ".join(beside), thickest)
        if beside
        else say("The thickest side measured {}, after the rabbet.", thickest),
        remedy=say("Measure in the rabbet, where about {} is left.", left) if beside else "",
        about=about,
        found=thickest,
        needed=left,
        source="geometry of the joint",
    )


def groove_hidden(groove: Groove, fit: GrooveFit, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC8: whether the lowest tail hides the groove for the bottom.

    Args:
        groove: the groove
        fit: how it lies against the lowest tail
        limits: what a joint is held to; a half pin that would split is not offered
        about: code of the part or joint

    Returns:
        A pass, or a stop with how far to move the groove.

    Source: geometry of the joint.
    """
    lies = say("The groove lies from {:bare} to {}", groove.height, groove.top)
    between = say("the lowest tail covers {:bare} to {} at the inside face", fit.lower, fit.upper)
    remedy: Words = ""
    if not fit.hidden:
        ways = _ways_to_hide(fit, limits)
        remedy = say("{}, or stop the groove short of the ends, use slips, or plug it.", ways)
    return new_finding(
        rule="JC8",
        verdict=Verdict.PASS if fit.hidden else Verdict.STOP,
        message=say(
            "{}; {}: it {}.", lies, between, "is hidden" if fit.hidden else "would show on the outside"
        ),
        remedy=remedy,
        about=about,
        found=groove.height,
        needed=fit.height,
        source="geometry of the joint",
    )


def _ways_to_hide(fit: GrooveFit, limits: Limits) -> Words:
    ways: list[Words] = []
    if fit.move is not None and fit.height is not None:
        way = "Raise" if fit.move > 0 else "Lower"
        ways.append(say("{} the groove by {}, to {:bare}", way, abs(fit.move), fit.height))
    else:
        most = fit.most_tails
        fewer = say("use {:d} tail{} at most, or ", most, "s" if most > 1 else "") if most else ""
        wide = fit.upper - fit.lower
        ways.append(say("The groove is wider than the tail: {}make it {:down} wide or narrower", fewer, wide))
    if fit.half_pin is not None and fit.half_pin >= limits.half_pin_least.value - TOLERANCE:
        ways.append(say("make the half pins {}", fit.half_pin))
    return strung(", or ", ways)


def front_thickness(
    front: Inches, side: Inches, limits: Limits = LIMITS, about: str = "", for_lap: Inches = 0.0
) -> Finding:
    """JC10: whether the front is thick enough for its sides.

    Args:
        front: thickness of the front [in]
        side: thickness of the side [in]
        limits: what a joint is held to
        about: code of the part or joint
        for_lap: how thick its lap wants it, so that one thickness answers both; 0 where the lap passes [in]

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    over_side = side + limits.front_over_side.value
    least = max(limits.front_least.value, over_side)
    source = limits.front_over_side.source if over_side == least else limits.front_least.source
    return at_least(
        "JC10",
        front,
        least,
        say("The front is {} thick; over sides of {:bare} it needs {:bare}.", front, side, least),
        _thicker_front(front, max(least, for_lap), limits, for_lap),
        about=about,
        verdict=Verdict.CAUTION,
        source=source,
    )


def _thicker_front(front: Inches, thick: Inches, limits: Limits, for_lap: Inches) -> Words:
    thin_side = front - limits.front_over_side.value
    if for_lap or front < limits.front_least.value - TOLERANCE:
        return say("Make the front at least {:up} thick.", thick)
    return say("Make the front at least {:up} thick, or the sides {:down} or thinner.", thick, thin_side)


def gauge_spread(groups: tuple[GaugeGroup, ...], limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC11: whether one setting of the second gauge serves all the sides.

    Args:
        groups: the gauge groups of the measured sides, thinnest first
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass, or a caution with one setting for each group and the sides that it serves.

    Source: common practice.
    """
    spread = groups[-1].thickest - groups[0].thinnest
    split = len(groups) > 1
    message = say(
        "The sides differ by {} in the rabbet; one setting serves up to {:bare}.",
        spread,
        limits.gauge_group.value,
    )
    if split and spread <= limits.gauge_group.value + TOLERANCE:
        message = say(
            "The sides differ by {} in the rabbet, and stand in two gauge groups of the whole unit.", spread
        )
    remedy: Words = ""
    if split:
        sets = strung("; ", (say("{} for {}", group.setting, ", ".join(group.marks)) for group in groups))
        remedy = say("Set gauge 2 once for each group: {}.", sets)
    return new_finding(
        rule="JC11",
        verdict=Verdict.CAUTION if split else Verdict.PASS,
        message=message,
        remedy=remedy,
        about=about,
        found=spread,
        needed=limits.gauge_group.value,
        source=limits.gauge_group.source,
    )


def tail_in_socket(tail_length: Inches, socket_depth: Inches, about: str = "") -> Finding:
    """JC16: whether the tails bottom out before the shoulder closes, and burst the lap.

    Args:
        tail_length: measured length of the tails [in]
        socket_depth: measured depth of the sockets [in]
        about: code of the part or joint

    Returns:
        A pass, or a stop until the joint has been relieved.

    Source: geometry of the joint.
    """
    over = tail_length - socket_depth
    long = over > TOLERANCE
    return new_finding(
        rule="JC16",
        verdict=Verdict.STOP if long else Verdict.PASS,
        message=say("The tails are {} long and the sockets {:bare} deep.", tail_length, socket_depth),
        remedy=say("Before assembly, pare {:up} off the tails or out of the sockets' floor.", over)
        if long
        else "",
        about=about,
        found=tail_length,
        needed=socket_depth,
        source="geometry of the joint: a tail that bottoms out bears on the lap",
    )


def front_hardness(front: Number, side: Number, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC17: whether the side is so much harder than the front that its tails crush the sockets.

    Args:
        front: specific gravity of the front [dimensionless]
        side: specific gravity of the side [dimensionless]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    least = side - limits.gravity_apart.value
    return at_least(
        "JC17",
        front,
        least,
        f"The front's specific gravity is {front:.2f}, the side's {side:.2f}.",
        f"Try a joint in scrap for crushing, or take a front of {least:.2f} or heavier.",
        about=about,
        verdict=Verdict.CAUTION,
        source=limits.gravity_apart.source,
    )
