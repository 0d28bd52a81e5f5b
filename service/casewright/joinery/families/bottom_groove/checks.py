"""The checks of a groove for a drawer's bottom: what it leaves, what it holds, and the year's movement."""

from collections.abc import Iterator
from dataclasses import replace

from casewright.joinery.checks import wood_below_groove
from casewright.joinery.cutters import cutter_at_hand
from casewright.joinery.families.bottom_groove.asked import UNDER_THE_BACK, BottomGroove
from casewright.joinery.families.bottom_groove.sizes import muntin_lip
from casewright.joinery.groove_left import GrooveLimits, wood_behind_groove
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches

HANDBOOK = "Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2"


def groove_findings(asked: BottomGroove, grows: Inches, shrinks: Inches) -> Iterator[Finding]:
    """Every check of the groove, passes too.

    Args:
        asked: the groove
        grows: how much the bottom grows front to back when wettest [in]
        shrinks: how much it shrinks when driest [in]

    Returns:
        One finding after the other.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    yield _wood_behind(asked.carrier, asked.groove_depth, asked.carried_by, asked)
    yield _wood_behind(asked.front, asked.front_depth, "front", asked)
    yield wood_below_groove(asked.groove_height, about=asked.mark)
    yield cutter_at_hand("groove", asked.groove_width, asked.rack.cutters, asked.mark)
    yield bottom_stays_held(asked)
    yield bottom_fits_groove(asked)
    yield room_over_runner(asked)
    if asked.grooves == UNDER_THE_BACK:
        yield room_behind(grows, asked)
        yield rear_edge_stays_under_the_back(shrinks, asked)
    else:
        yield room_in_four_grooves(grows, asked)
    if asked.slip:
        yield wood_above_in_slip(asked)
    yield bottom_is_parted(asked)
    if asked.muntin:
        yield muntin_cheeks(asked)
        yield muntin_web(asked)
        yield muntin_above_the_edge(asked)


def _wood_behind(board: Inches, depth: Inches, name: str, asked: BottomGroove) -> Finding:
    limits = asked.limits
    found = wood_behind_groove(
        board,
        depth,
        name,
        GrooveLimits(left_least=limits.left_least, left_part=limits.left_part, planed=limits.planed),
        asked.mark,
    )
    if name != "side" or not found.remedy:
        return found
    slips = say("{} Or glue slips of {} to the sides.", found.remedy, limits.slip.value)
    return replace(found, remedy=slips)


def bottom_stays_held(asked: BottomGroove) -> Finding:
    """Whether the bottom stays in a groove when it has slid over to the other side.

    Args:
        asked: the groove

    Returns:
        A pass or a stop.

    Source: geometry of the drawer; the limit is from memory.
    """
    limit = asked.limits.held_least
    held, needed = asked.groove_depth - 2 * asked.play, limit.value + 2 * asked.play
    loose = held < limit.value - TOLERANCE
    remedy: Words = ""
    if loose:
        remedy = say("Make the groove {:up} deep", needed)
        slips = (
            "" if asked.slip else say(", in slips of {} where the sides are thin", asked.limits.slip.value)
        )
        remedy = say("{}{}.", remedy, slips)
    return Finding(
        rule="bottom held",
        verdict=Verdict.STOP if loose else Verdict.PASS,
        message=say(
            "Slid over to one side, the bottom is held by {} at the other; it needs {:bare}.",
            max(0.0, held),
            limit.value,
        ),
        remedy=remedy,
        about=asked.mark,
        found=held,
        needed=limit.value,
        source=limit.source,
    )


def bottom_fits_groove(asked: BottomGroove) -> Finding:
    """Whether the bottom fills its groove.

    Args:
        asked: the groove

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    limit = asked.limits.sheet_off
    rattles = asked.groove_width - asked.bottom > limit.value + TOLERANCE
    how = "thin its edges to fit" if asked.bottom > asked.groove_width + TOLERANCE else "it goes in as it is"
    return Finding(
        rule="bottom fits groove",
        verdict=Verdict.CAUTION if rattles else Verdict.PASS,
        message=say(
            "The bottom is {:.3} thick and the groove {:.3 bare} wide: {}.",
            asked.bottom,
            asked.groove_width,
            "it rattles" if rattles else how,
        ),
        remedy=say("Cut the groove {:.3} wide, from the sheet itself.", asked.bottom) if rattles else "",
        about=asked.mark,
        found=asked.groove_width - asked.bottom,
        needed=limit.value,
        source=limit.source,
    )


def room_over_runner(asked: BottomGroove) -> Finding:
    """Whether the underside of the bottom clears the runner.

    Args:
        asked: the groove

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    limit = asked.limits.runner_room
    room = asked.groove_height - max(0.0, asked.bottom - asked.groove_width)
    return at_least(
        "room over runner",
        room,
        limit.value,
        say("The bottom's underside is {} above the runner; it needs {:bare}.", room, limit.value),
        say("Raise the groove {:up}.", limit.value - room),
        about=asked.mark,
        source=limit.source,
    )


def room_behind(grows: Inches, asked: BottomGroove) -> Finding:
    """Whether a bottom that slides in under the back has room to grow behind the drawer.

    Args:
        grows: how much it grows front to back when wettest [in]
        asked: the groove

    Returns:
        A pass or a stop.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; the room is common practice.
    """
    needed = asked.over + grows + asked.limits.behind_least.value
    return at_least(
        "room behind",
        asked.back_gap,
        needed,
        say(
            "Wettest, the bottom reaches {:.3} past the back, and {} is free behind the drawer.",
            asked.over + grows,
            asked.back_gap,
        ),
        say("Leave {:up} behind the drawer, or make the bottom shorter or of plywood.", needed),
        about=asked.mark,
        source=HANDBOOK,
    )


def rear_edge_stays_under_the_back(shrinks: Inches, asked: BottomGroove) -> Finding:
    """Whether the rear edge of a bottom that shrinks stays under the back.

    Args:
        shrinks: how much it shrinks front to back when driest [in]
        asked: the groove

    Returns:
        A pass or a stop.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    most = asked.back + asked.over
    bare = shrinks >= most - TOLERANCE
    return Finding(
        rule="under the back",
        verdict=Verdict.STOP if bare else Verdict.PASS,
        message=say("Driest, the bottom draws back {:.3} of the {} that lie under the back.", shrinks, most),
        remedy=say("Let it reach {:up} past the back, or make it of plywood.", shrinks - asked.back + 1 / 16)
        if bare
        else "",
        about=asked.mark,
        found=shrinks,
        needed=most,
        source=HANDBOOK,
    )


def room_in_four_grooves(grows: Inches, asked: BottomGroove) -> Finding:
    """Whether a bottom that is held all around has room to grow.

    Args:
        grows: how much it grows front to back when wettest [in]
        asked: the groove

    Returns:
        A pass or a stop.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    room = 2 * asked.play
    return at_most(
        "room to grow",
        grows,
        room,
        say("Held all around, the bottom grows {:.3} and has {:.3 bare} to grow.", grows, room),
        "Let it slide in under the back, with 3 grooves, or make it of plywood.",
        about=asked.mark,
        source=HANDBOOK,
    )


def wood_above_in_slip(asked: BottomGroove) -> Finding:
    """Whether a slip has wood enough above its groove.

    Args:
        asked: the groove

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    limit = asked.limits.slip_above
    above = asked.slip_height - asked.top
    return at_least(
        "slip above groove",
        above,
        limit.value,
        say("A slip has {} above its groove; it needs {:bare}.", above, limit.value),
        say("Make the slips {:up} high.", asked.top + limit.value),
        about=asked.mark,
        verdict=Verdict.CAUTION,
        source=limit.source,
    )


def bottom_is_parted(asked: BottomGroove) -> Finding:
    """Whether a wide bottom is parted by a muntin.

    Args:
        asked: the groove

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    limit = asked.limits.muntin_over
    span = (asked.inside - asked.muntin) / (2 if asked.muntin else 1)
    wide = span > limit.value + TOLERANCE
    remedy: Words = ""
    if wide:
        remedy = (
            say(
                "Make the drawer {:down} wide or less, or the bottom of plywood and try its sag.",
                asked.width - 2 * (span - limit.value),
            )
            if asked.muntin
            else say("Part it with a muntin {} wide.", asked.limits.muntin.value)
        )
    return Finding(
        rule="clear width",
        verdict=Verdict.CAUTION if wide else Verdict.PASS,
        message=say("The bottom bridges {}; up to {:bare} it does without more.", span, limit.value),
        remedy=remedy,
        about=asked.mark,
        found=span,
        needed=limit.value,
        source=limit.source,
    )


def muntin_cheeks(asked: BottomGroove) -> Finding:
    """Whether the muntin has wood enough above and below its grooves.

    Args:
        asked: the groove

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    limit = asked.limits.muntin_cheek
    cheek = muntin_lip(asked.muntin_thickness, asked.groove_width)
    return at_least(
        "muntin cheeks",
        cheek,
        limit.value,
        say("A muntin has {} above and below its grooves; it needs {:bare}.", cheek, limit.value),
        say("Make it {:up} thick.", asked.groove_width + 2 * limit.value),
        about=asked.mark,
        source=limit.source,
    )


def muntin_web(asked: BottomGroove) -> Finding:
    """Whether enough is left between the two grooves of a muntin, which is its tongue in the front too.

    Args:
        asked: the groove

    Returns:
        A pass or a caution.

    Source: geometry of the muntin; the limit is from memory.
    """
    limit = asked.limits.muntin_web
    web = asked.muntin - 2 * asked.groove_depth
    return at_least(
        "muntin between grooves",
        web,
        limit.value,
        say("A muntin has {} between its grooves; it needs {:bare}.", web, limit.value),
        say("Make it {:up} wide.", limit.value + 2 * asked.groove_depth),
        about=asked.mark,
        verdict=Verdict.CAUTION,
        source=limit.source,
    )


def muntin_above_the_edge(asked: BottomGroove) -> Finding:
    """Whether the muntin's underside stays above the bottom edge of the drawer.

    Args:
        asked: the groove

    Returns:
        A pass or a stop.

    Source: geometry of the drawer: what stands below the edge drags.
    """
    lip = muntin_lip(asked.muntin_thickness, asked.groove_width)
    room = asked.groove_height - lip
    low = room < -TOLERANCE
    where = "below" if low else "above"
    return Finding(
        rule="muntin over edge",
        verdict=Verdict.STOP if low else Verdict.PASS,
        message=say("The muntin stands {} {} the drawer's bottom edge.", abs(room), where),
        remedy=say("Raise the groove to {:up}, or make the muntin thinner.", lip) if low else "",
        about=asked.mark,
        found=room,
        needed=0.0,
        source="geometry of the drawer",
    )
