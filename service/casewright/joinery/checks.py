"""The checks that any dovetail is put to before wood is cut.

Each gives one finding, passes too, with the number that was tested, the number that would pass, and what to
change. The limits are data (see `limits`), so that a shop can tune them to its own failures.
"""

from casewright.joinery.chisels import Chisels, Rack
from casewright.joinery.layout import TailLayout
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import TOLERANCE, bevel_degrees, fewest_tails, most_tails, tail_width
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Inches, Number, Percent

SOCKETS, BETWEEN = "the sockets", "between the tails"
"""Where a chisel clears the waste."""


def rabbet_depth(side: Inches, rabbet: Inches, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC4: whether the registration rabbet is deep enough to register and shallow enough to be harmless.

    Args:
        side: thickness of the rabbeted board [in]
        rabbet: depth of the rabbet; 0 when there is none [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    least = limits.rabbet_least.value
    most = side / limits.rabbet_greatest_part.value
    if rabbet == 0.0:
        return new_finding(
            rule="JC4",
            verdict=Verdict.PASS,
            message="The joint has no registration rabbet.",
            about=about,
            found=rabbet,
            needed=rabbet,
            source=limits.rabbet_least.source,
        )
    if rabbet < least - TOLERANCE:
        limit, source, why = least, limits.rabbet_least.source, "too shallow to register"
    elif rabbet > most + TOLERANCE:
        limit, source, why = most, limits.rabbet_greatest_part.source, "too deep for so thin a side"
    else:
        return new_finding(
            rule="JC4",
            verdict=Verdict.PASS,
            message=say("The rabbet of {} suits a side of {}.", rabbet, side),
            about=about,
            found=rabbet,
            needed=least,
            source=limits.rabbet_least.source,
        )
    return new_finding(
        rule="JC4",
        verdict=Verdict.CAUTION,
        message=say("The rabbet of {} is {} ({}).", rabbet, why, side),
        remedy=say("Make the rabbet {:bare} to {:down} deep; the nearest is {:bare}.", least, most, limit)
        if least <= most
        else "Leave the rabbet out, with a depth of 0.",
        about=about,
        found=rabbet,
        needed=limit,
        source=source,
    )


def neck_width(layout: TailLayout, side: Inches, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC5: whether the tails are wide enough at the baseline.

    Args:
        layout: the row of tails
        side: thickness of the tail board [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a stop, with the number of tails that would pass.

    Source: common practice.
    """
    least = max(side, limits.neck_least.value)
    narrow = layout.neck < least - TOLERANCE
    remedy: Words = ""
    if narrow:
        most = most_tails(layout.height, layout.half_pin, layout.pin, layout.flare, least)
        remedy = (
            f"Use {most} tail{'s' if most > 1 else ''} at most."
            if most
            else say(
                "No number leaves {}: make the board at least {:up} high.",
                least,
                _board_for_one(layout, least),
            )
        )
    return new_finding(
        rule="JC5",
        verdict=Verdict.STOP if narrow else Verdict.PASS,
        message=say("A tail is {} wide at the baseline; it needs {:bare}.", layout.neck, least),
        remedy=remedy,
        about=about,
        found=layout.neck,
        needed=least,
        source=limits.neck_least.source,
    )


def _board_for_one(layout: TailLayout, neck: Inches) -> Inches:
    return 2 * (layout.half_pin + layout.flare) + neck


def pin_width(pin: Inches, kerf: Inches, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC6: whether a pin is strong enough, and wide enough for the saw.

    Args:
        pin: a pin at the end of the tails [in]
        kerf: how wide the dovetail saw cuts [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A stop, or a pass; the pass of a very narrow pin says that the waste is to be sawn out.

    Source: common practice.
    """
    over_kerf = kerf + limits.pin_over_kerf.value
    least = max(limits.pin_least.value, over_kerf)
    source = limits.pin_over_kerf.source if over_kerf > limits.pin_least.value else limits.pin_least.source
    narrow = pin < least - TOLERANCE
    message = say("A pin is {} at its narrow side; it needs {:bare}.", pin, least)
    if not narrow and pin <= limits.fret_saw_pin.value + TOLERANCE:
        message += " Clear the waste between the tails with a fret saw."
    return new_finding(
        rule="JC6",
        verdict=Verdict.STOP if narrow else Verdict.PASS,
        message=message,
        remedy=say("Make the pins {:up} or wider.", least) if narrow else "",
        about=about,
        found=pin,
        needed=least,
        source=source,
    )


def half_pin_width(half_pin: Inches, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC7: whether the half pins are wide enough not to split off.

    Args:
        half_pin: a half pin at the end of the tails [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    least = limits.half_pin_least.value
    return at_least(
        "JC7",
        half_pin,
        least,
        say("A half pin is {}; narrower than {:bare} it splits.", half_pin, least),
        say("Make the half pins {:up} or wider.", least),
        about=about,
        verdict=Verdict.CAUTION,
        source=limits.half_pin_least.source,
    )


def tail_width_limit(layout: TailLayout, side: Inches, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC9: whether the tails are narrow enough to stay tight in a dry room.

    Args:
        layout: the row of tails
        side: thickness of the tail board [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a caution, with the number of tails that would pass.

    Source: common practice.
    """
    by_side = limits.tail_widest_sides.value * side
    widest = min(limits.tail_widest.value, by_side)
    source = limits.tail_widest_sides.source if by_side == widest else limits.tail_widest.source
    wide = layout.tail_width > widest + TOLERANCE
    remedy: Words = ""
    if wide:
        remedy = _narrower_tails(layout, side, widest, limits)
    return new_finding(
        rule="JC9",
        verdict=Verdict.CAUTION if wide else Verdict.PASS,
        message=say("A tail is {} wide; over {:bare} it opens in dry rooms.", layout.tail_width, widest),
        remedy=remedy,
        about=about,
        found=layout.tail_width,
        needed=widest,
        source=source,
    )


def _narrower_tails(layout: TailLayout, side: Inches, widest: Inches, limits: Limits) -> Words:
    """A number of tails that is neither too few for this check nor too many for their necks."""
    sizes = layout.height, layout.half_pin, layout.pin
    fewest = fewest_tails(*sizes, widest)
    most = most_tails(*sizes, layout.flare, max(side, limits.neck_least.value))
    if fewest <= most or most == 0:
        return f"Use {fewest} tails or more."
    thick = tail_width(*sizes, most) / limits.tail_widest_sides.value
    return say("Make the side {:up} thick, with {:d} tail{}.", thick, most, "s" if most > 1 else "")


def slope_limit(slope: Number, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC12: whether the slope is slight enough not to leave short grain at the tails' corners.

    Args:
        slope: how far along for one across, 8 for 1:8 [dimensionless]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    steepest = limits.slope_steepest.value
    return at_least(
        "JC12",
        slope,
        steepest,
        f"The slope is 1:{slope:g} ({bevel_degrees(slope):.2f}°); the steepest is 1:{steepest:g}.",
        f"Set the bevel to 1:{steepest:g} or slighter; 1:8 is usual in hardwood.",
        about=about,
        verdict=Verdict.CAUTION,
        source=limits.slope_steepest.source,
    )


def chisels_at_hand(
    layout: TailLayout, chisels: Chisels, rack: Rack, about: str = "", limits: Limits = LIMITS
) -> Finding:
    """JC13: whether the rack has the chisels that clear the waste, and for thin pins the fret saw.

    A chisel goes into the sockets and one between the tails; where the pins are very thin, the waste is sawn
    out by a blade that passes between the tails.

    Args:
        layout: the row of tails
        chisels: which chisels of the rack clear the joint
        rack: the shop's chisels and saws
        about: code of the part or joint
        limits: what a joint is held to

    Returns:
        A pass, or a caution that lists the gap.

    Source: common practice.
    """
    gaps = {
        SOCKETS: (layout.neck, chisels.sockets),
        BETWEEN: (layout.pin_inside, chisels.between_tails),
    }
    missing = {place: room for place, (room, chisel) in gaps.items() if chisel is None}
    unsawn = _gap_not_sawn(layout.pin, rack, limits) if chisels.fret_saw else None
    narrowest = say("{}", rack.chisels[0]) if rack.chisels else "no chisel at all"
    tightest = min(layout.neck, layout.pin_inside)
    said: list[Words] = []
    remedies: list[Words] = []
    if missing:
        wanted = strung(
            " and ", (say("{:down} or narrower for {}", room, place) for place, room in missing.items())
        )
        said.append(say("The narrowest in the rack is {}; it lacks one of {}.", narrowest, wanted))
        otherwise = [_room_for(place, layout, rack, limits) for place in missing]
        remedies.append(
            strung(", or ", (say("Add a chisel of {}", wanted), *(each for each in otherwise if each)))
        )
        remedies[-1] = say("{}.", remedies[-1])
    else:
        sizes = chisels.sockets or 0.0, chisels.between_tails or 0.0
        said.append(say("Chisels: {} for the sockets, {:bare} between the tails.", *sizes))
    if unsawn:
        said.append(unsawn[0])
        remedies.append(unsawn[1])
    return new_finding(
        rule="JC13",
        verdict=Verdict.CAUTION if remedies else Verdict.PASS,
        message=strung(" ", said),
        remedy=strung(" ", remedies),
        about=about,
        found=rack.chisels[0] if rack.chisels else None,
        needed=tightest,
        source="common practice: a chisel clears a gap that is no narrower than itself",
    )


def _room_for(place: str, layout: TailLayout, rack: Rack, limits: Limits) -> Words:
    """How the gap becomes as wide as the narrowest chisel; wider pins make the sockets narrower."""
    if not rack.chisels:
        return ""
    chisel = rack.chisels[0]
    if place == BETWEEN:
        return say("make the pins {:up} wide for between the tails", chisel - 2 * layout.flare)
    most = most_tails(layout.height, layout.half_pin, layout.pin, layout.flare, chisel)
    fewer = "" if most == 0 else f"use {most} tail{'s' if most > 1 else ''} at most"
    pins = layout.count - 1
    widest = (layout.height - 2 * layout.half_pin - layout.count * (chisel + 2 * layout.flare)) / max(1, pins)
    least = max(limits.pin_least.value, rack.kerf + limits.pin_over_kerf.value)
    narrower = (
        say("make the pins {:down} wide or narrower for the sockets", widest)
        if pins and widest >= least - TOLERANCE and layout.pin_inside >= chisel - TOLERANCE
        else ""
    )
    return strung(", or ", filter(None, (fewer, narrower)))


def _gap_not_sawn(pin: Inches, rack: Rack, limits: Limits) -> tuple[Words, Words] | None:
    """Why the waste of a thin pin cannot be sawn out, and what to do; None where it can be."""
    saw = rack.fret_saw
    if saw is None:
        return (
            say("The waste between pins of {} is sawn out, and the rack has no fret saw.", pin),
            say("Add a fret saw, or make the pins wider than {}.", limits.fret_saw_pin.value),
        )
    least = saw.kerf + limits.pin_over_kerf.value
    if pin >= least - TOLERANCE:
        return None
    return (
        say("The {} cuts {:.3} wide and does not pass between the tails, {} apart.", saw.name, saw.kerf, pin),
        say("Make the pins {:up} or wider, or take a thinner blade.", least),
    )


def wood_below_groove(height: Inches, limits: Limits = LIMITS, about: str = "") -> Finding:
    """Whether enough of the side is left below its groove where the bottom passes under the back.

    Args:
        height: lower edge of the groove above the side's bottom edge [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    least = limits.below_groove_least.value
    return at_least(
        "side below groove",
        height,
        least,
        say("The side keeps {} below its groove; it needs {:bare}.", height, least),
        say("Raise the groove by {}, to {:bare}.", least - height, least),
        about=about,
        verdict=Verdict.CAUTION,
        source=limits.below_groove_least.source,
    )


def moisture_apart(one: Percent, other: Percent, limits: Limits = LIMITS, about: str = "") -> Finding:
    """JC14: whether the two boards have come to the same moisture.

    Args:
        one: moisture content of the pin board [%]
        other: moisture content of the tail board [%]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass, or a stop until they have.

    Source: common practice.
    """
    most = limits.moisture_apart.value
    apart = abs(one - other)
    return at_most(
        "JC14",
        apart,
        most,
        f"The two boards are {apart:.1f} % of moisture apart ({one:.1f} and {other:.1f} %).",
        f"Sticker both in the shop until they are within {most:g} %, then mill and cut.",
        about=about,
        source=limits.moisture_apart.source,
    )
