"""The checks of boards joined along their edges: the year's gaps, what covers, and what might break off."""

from collections.abc import Iterator

from casewright.joinery.cutters import cutter_at_hand
from casewright.joinery.families.edge.asked import Edge, EdgeLimits
from casewright.joinery.families.edge.sizes import boards_over, cheek, overlap_that_covers
from casewright.joinery.sourced import Sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches

HANDBOOK = "Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2"


def edge_findings(
    asked: Edge, board: Inches, wettest: Inches, driest: Inches, covers: Inches
) -> Iterator[Finding]:
    """Every check of the joint, passes too.

    Args:
        asked: the boards
        board: width of each, tongue or lap included [in]
        wettest: the gap at a joint when wettest; below nothing the boards push each other [in]
        driest: the gap at a joint when driest [in]
        covers: what a tongue or lap still covers then [in]

    Returns:
        One finding after the other.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    yield room_when_wettest(asked, wettest)
    yield covered_when_driest(asked, board, covers)
    yield gap_when_driest(asked, driest)
    yield room_at_the_ends(asked, board)
    yield board_lies_flat(asked, board)
    yield cheeks_hold(asked)
    if not asked.is_shiplap:
        yield tongue_holds(asked)
        yield cutter_at_hand("groove", asked.tongue, asked.rack.cutters, asked.mark)
    yield tongue_not_too_long(asked)


def room_when_wettest(asked: Edge, wettest: Inches) -> Finding:
    """Whether the boards have room when they are wettest.

    Args:
        asked: the boards
        wettest: the gap at a joint then [in]

    Returns:
        A pass or a stop.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    swells = asked.gap - wettest
    return _finding(
        asked,
        "room when wettest",
        Verdict.STOP if wettest < -TOLERANCE else Verdict.PASS,
        say("Wettest, a board swells {:.3} into a gap of {}.", swells, asked.gap),
        say("Make the gap {:up}, or use more and narrower boards.", swells),
        (asked.gap, swells, HANDBOOK),
    )


def covered_when_driest(asked: Edge, board: Inches, covers: Inches) -> Finding:
    """Whether the tongues or laps still cover when the boards are driest.

    Args:
        asked: the boards
        board: width of each, tongue or lap included [in]
        covers: what a tongue or lap still covers then [in]

    Returns:
        A pass; a caution where they cover less than they should; a stop where hardly anything is left.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; the limits are common practice.
    """
    least = asked.limits.cover_least
    needed = overlap_that_covers(board, asked.gap, asked.movement, asked.shrinking, least.value)
    message: Words = say("Driest, {} {:.3} of its length", _covering(asked), max(0.0, covers))
    return _finding(
        asked,
        "covered when driest",
        _cover(covers, asked.limits),
        say("{}; it needs {:bare}.", message, least.value),
        say("Make the {} {:up} or more, or use more and narrower boards.", _part(asked), needed),
        (covers, least.value, least.source),
    )


def _cover(covers: Inches, limits: EdgeLimits) -> Verdict:
    if covers < limits.cover_stop.value - TOLERANCE:
        return Verdict.STOP
    return Verdict.CAUTION if covers < limits.cover_least.value - TOLERANCE else Verdict.PASS


def gap_when_driest(asked: Edge, driest: Inches) -> Finding:
    """Whether the gaps stay narrow when the boards are driest.

    Args:
        asked: the boards
        driest: the gap at a joint then [in]

    Returns:
        A pass or a caution.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; the limit is from memory.
    """
    most = asked.limits.gap_most
    return _finding(
        asked,
        "gap when driest",
        Verdict.CAUTION if driest > most.value + TOLERANCE else Verdict.PASS,
        say("Driest, each joint is open by {:.3}; up to {:bare} looks meant.", driest, most.value),
        _less_open(asked, most.value),
        (driest, most.value, most.source),
    )


def _less_open(asked: Edge, most: Inches) -> Words:
    """How many boards keep the gap within its limit; a narrower gap where none would."""
    moves = asked.movement * asked.shrinking
    widest = (most - asked.gap) / moves if moves > 0 else 0.0
    if widest <= 2 * asked.overlap:
        return say("Make the gap less than {}, or use quartersawn boards.", most)
    boards = boards_over(asked.covered, widest, asked.overlap, asked.gap)
    return say("Use {:d} boards or more, or quartersawn ones.", boards)


def room_at_the_ends(asked: Edge, board: Inches) -> Finding:
    """Whether the first board and the last have room to swell outwards.

    Args:
        asked: the boards
        board: width of each, tongue or lap included [in]

    Returns:
        A pass or a caution.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; each board is held at its middle.
    """
    swells = board * asked.movement * asked.swelling / 2
    return _finding(
        asked,
        "room at the ends",
        Verdict.CAUTION if asked.end_gap < swells - TOLERANCE else Verdict.PASS,
        say("Held at its middle, the last board swells {:.3} outwards; {} is free.", swells, asked.end_gap),
        say("Leave {:up} free at both ends.", swells),
        (asked.end_gap, swells, HANDBOOK),
    )


def board_lies_flat(asked: Edge, board: Inches) -> Finding:
    """Whether the boards are narrow enough to lie flat.

    Args:
        asked: the boards
        board: width of each, tongue or lap included [in]

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    most = asked.limits.widest
    return _finding(
        asked,
        "board width",
        Verdict.CAUTION if board > most.value + TOLERANCE else Verdict.PASS,
        say("A board is {} wide; up to {:bare} it lies flat in its joint.", board, most.value),
        say("Use {:d} boards or more.", boards_over(asked.covered, most.value, asked.overlap, asked.gap)),
        (board, most.value, most.source),
    )


def cheeks_hold(asked: Edge) -> Finding:
    """Whether the cheeks of the groove, or the laps, are thick enough.

    Args:
        asked: the boards

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    least, left = asked.limits.cheek_least, cheek(asked.thickness, asked.tongue)
    what = "A lap" if asked.is_shiplap else "A cheek of the groove"
    lapped = say("Use boards {:up} thick.", 2 * least.value)
    slimmer = say("Make the tongue {:down} thick, or lap the boards.", asked.thickness - 2 * least.value)
    can_be_slimmer = asked.thickness - 2 * least.value >= asked.limits.tongue_least.value - TOLERANCE
    remedy = "Lap the boards: give a tongue of 0."
    return _finding(
        asked,
        "cheeks",
        Verdict.STOP if left < least.value - TOLERANCE else Verdict.PASS,
        say("{} is {} thick; it needs {:bare}.", what, left, least.value),
        lapped if asked.is_shiplap else slimmer if can_be_slimmer else remedy,
        (left, least.value, least.source),
    )


def tongue_holds(asked: Edge) -> Finding:
    """Whether the tongue is thick enough.

    Args:
        asked: the boards

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    least = asked.limits.tongue_least
    return _finding(
        asked,
        "tongue",
        Verdict.STOP if asked.tongue < least.value - TOLERANCE else Verdict.PASS,
        say("The tongue is {} thick; it needs {:bare}.", asked.tongue, least.value),
        say("Make it {:up} thick, or lap the boards.", least.value),
        (asked.tongue, least.value, least.source),
    )


def tongue_not_too_long(asked: Edge) -> Finding:
    """Whether the tongue or lap is short enough for its thickness not to break off.

    Args:
        asked: the boards

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    limit: Sourced = asked.limits.slender
    most = limit.value * (asked.tongue or cheek(asked.thickness, 0.0))
    return _finding(
        asked,
        f"{_part(asked)} length",
        Verdict.CAUTION if asked.overlap > most + TOLERANCE else Verdict.PASS,
        say("The {} is {} long; up to {:bare} it does not break off.", _part(asked), asked.overlap, most),
        say("Make it {:down} or less, with more and narrower boards if it is to cover.", most),
        (asked.overlap, most, limit.source),
    )


def _part(asked: Edge) -> str:
    return "lap" if asked.is_shiplap else "tongue"


def _covering(asked: Edge) -> str:
    return "a lap covers" if asked.is_shiplap else "a tongue stands in its groove by"


def _finding(
    asked: Edge,
    rule: str,
    verdict: Verdict,
    message: Words,
    remedy: Words,
    tested: tuple[Inches, Inches, str],
) -> Finding:
    found, needed, source = tested
    return new_finding(
        rule=rule,
        verdict=verdict,
        message=message,
        remedy="" if verdict is Verdict.PASS else remedy,
        about=asked.mark,
        found=found,
        needed=needed,
        source=source,
    )
