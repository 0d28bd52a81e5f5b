"""The checks that only a carcase dovetail is put to: edge tails, edges, lap, and the rabbet for the back."""

from dataclasses import dataclass, replace

from casewright.joinery.families.carcase.layout import (
    CarcaseLayout,
    fewest_in_a_carcase,
    middle_tail,
    most_in_a_carcase,
    narrowest_board,
)
from casewright.joinery.lap import lap_index, lap_needed
from casewright.joinery.lap_checks import lap_strength, lap_thickness
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_most
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class CarcaseLimits:
    """What a carcase dovetail is held to beside any other, and its habits. Lengths are in inches.

    Attributes:
        share: an edge tail is this part of the others
        share_most: a greater part is cautioned
        half_pin: a half pin, where nothing else is said
        half_pin_most: a half pin of more thicknesses of the board is cautioned
        pin: a pin, where nothing else is said
        lap_part: the lap is the pin board divided by this
        lap_step: and a multiple of this, rounded down
        rabbet_most: a rabbet that takes a greater part of a board is cautioned
    """

    share: Sourced
    share_most: Sourced
    half_pin: Sourced
    half_pin_most: Sourced
    pin: Sourced
    lap_part: Sourced
    lap_step: Sourced
    rabbet_most: Sourced


CARCASE = CarcaseLimits(**sourced("carcase_limits"))
"""The limits of a shop that has set none of its own."""


def widest_tail(board: Inches, limits: Limits = LIMITS) -> Inches:
    """The widest a tail may be so that it stays tight in a dry room.

    Rule: the lesser of tail_widest and tail_widest_sides × board

    Args:
        board: thickness of the board with the tails [in]
        limits: what a joint is held to

    Returns:
        The width at the end of the tail [in]

    Source: common practice.
    """
    return min(limits.tail_widest.value, limits.tail_widest_sides.value * board)


def edge_tails_hold(
    layout: CarcaseLayout, board: Inches, limits: Limits = LIMITS, about: str = ""
) -> Finding:
    """JC5: whether the tails at the edges, which are the narrowest, are wide enough at the baseline.

    Args:
        layout: the tails
        board: thickness of the board with the tails [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a stop, with the number of tails that would pass.

    Source: common practice.
    """
    least, row = max(board, limits.neck_least.value), layout.middle
    narrow = layout.edge_neck < least - TOLERANCE
    half_pins = layout.half_pin + layout.back_half_pin
    remedy: Words = ""
    if narrow and layout.is_even:
        count = len(layout.tails)
        need = half_pins + count * (least + 2 * row.flare) + (count - 1) * row.pin
        remedy = say("Make the board {:up} wide, or the half pins narrower.", need)
    elif narrow:
        most = most_in_a_carcase(layout.width - half_pins, row.pin, row.flare, layout.share, least)
        remedy = (
            f"Use {most} tails at most."
            if most >= 3
            else say(
                "Cut an even row, or make the board {:up} wide.",
                narrowest_board(half_pins, row.pin, row.flare, layout.share, least),
            )
        )
    return new_finding(
        rule="JC5",
        verdict=Verdict.STOP if narrow else Verdict.PASS,
        message=say(
            "A tail{} is {} wide at the baseline; it needs {:bare}.",
            "" if layout.is_even else " at an edge",
            layout.edge_neck,
            least,
        ),
        remedy=remedy,
        about=about,
        found=layout.edge_neck,
        needed=least,
        source=limits.neck_least.source,
    )


def edge_tails_narrower(layout: CarcaseLayout, habits: CarcaseLimits = CARCASE, about: str = "") -> Finding:
    """Whether the tails at the edges are narrower, so that more of them hold where a board cups.

    Args:
        layout: the tails
        habits: what a carcase dovetail is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    most = habits.share_most.value
    alike = layout.share > most + TOLERANCE
    room, usual = layout.width - layout.half_pin - layout.back_half_pin, habits.share.value
    edge = usual * middle_tail(room, layout.middle.pin, len(layout.tails), usual) if alike else 0.0
    return new_finding(
        rule="edge tails",
        verdict=Verdict.CAUTION if alike else Verdict.PASS,
        message=say(
            "The tails at the edges are {} wide, {:.2f} of the {} of the others; up to {:.2f} is usual.",
            layout.edge_tail,
            layout.share,
            layout.middle.tail_width,
            most,
        ),
        remedy=say("Give a share of {:.2f}, for edge tails of {}.", usual, edge) if alike else "",
        about=about,
        found=layout.share,
        needed=most,
        source=habits.share_most.source,
    )


def middle_tails_stay_tight(
    layout: CarcaseLayout, board: Inches, limits: Limits = LIMITS, about: str = ""
) -> Finding:
    """JC9: whether the middle tails are narrow enough to stay tight in a dry room.

    Args:
        layout: the tails
        board: thickness of the board with the tails [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a caution, with the number of tails that would pass.

    Source: common practice.
    """
    widest, row = widest_tail(board, limits), layout.middle
    wide = row.tail_width > widest + TOLERANCE
    room = layout.width - layout.half_pin - layout.back_half_pin
    fewest = fewest_in_a_carcase(room, row.pin, layout.share, widest) if wide else 0
    by_board = widest < limits.tail_widest.value
    return new_finding(
        rule="JC9",
        verdict=Verdict.CAUTION if wide else Verdict.PASS,
        message=say("A tail is {} wide; over {:bare} it opens in dry rooms.", row.tail_width, widest),
        remedy=f"Use {fewest} tails or more." if wide else "",
        about=about,
        found=row.tail_width,
        needed=widest,
        source=(limits.tail_widest_sides if by_board else limits.tail_widest).source,
    )


def edges_held(
    layout: CarcaseLayout, board: Inches, habits: CarcaseLimits = CARCASE, about: str = ""
) -> Finding:
    """Whether the outermost tails begin near enough to the edges to hold them.

    Args:
        layout: the tails
        board: thickness of the board with the tails [in]
        habits: what a carcase dovetail is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    widest, most = max(layout.half_pin, layout.back_half_pin), habits.half_pin_most.value * board
    return at_most(
        "edges held",
        widest,
        most,
        say("The outermost tail begins {} from its edge; up to {:bare} holds it.", widest, most),
        say("Make the half pin {:down} or less, and stop the rabbet if it is wider.", most),
        about=about,
        verdict=Verdict.CAUTION,
        source=habits.half_pin_most.source,
    )


def lap_stands(
    lap: Inches, board: Inches, limits: Limits = LIMITS, about: str = ""
) -> tuple[Finding, Finding]:
    """JC1 and JC2: whether the lap is thick enough to be chopped against, and stands a tight tail.

    Args:
        lap: left of the pin board outside the tails [in]
        board: thickness of the board with the tails [in]
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        Both findings, in the words of a case.

    Source: Fine Woodworking, 2007 special issue, p. 84; the lap index with limits from shop experience.
    """
    index, safe = lap_index(board, lap), limits.lap_index_caution.value
    thicker = say(
        "Make the lap {:up} or more: the pin board thicker, or the tails shorter.", lap_needed(board, limits)
    )
    strong = lap_strength(board, lap, index, limits, about)
    return (
        lap_thickness(lap, limits, about, thicker),
        replace(
            strong,
            message=say(
                "The lap index is {:.1f} ({} tail board, {} lap); up to {:g} is safe.",
                index,
                board,
                lap,
                safe,
            ),
            remedy=say("{} Or chop against a backing block.", thicker) if strong.remedy else "",
        ),
    )


def back_rabbet_in_a_pin(
    rabbet: Inches,
    layout: CarcaseLayout,
    stop_pins: Inches,
    stop_tails: Inches | None,
    about: str = "",
) -> Finding:
    """Whether the rabbet for the back lies within the half pin, or has to be stopped in both boards.

    Args:
        rabbet: how far the rabbet reaches in from the back edge [in]
        layout: the tails
        stop_pins: where it stops in the pin board, from its end [in]
        stop_tails: where it stops in the tail board, from its end; None where it is run through [in]
        about: code of the part or joint

    Returns:
        A pass that says where it stops, or a caution.

    Source: geometry of the joint: run through, a wider rabbet would cut a notch into the last tail.
    """
    half_pin = layout.back_half_pin
    message: Words
    if stop_tails is None:
        message = say(
            "The rabbet of {} lies within the half pin of {:bare} at the back edge: run it through in "
            "the tail board, and stop it {} from the end of the pin board.",
            rabbet,
            half_pin,
            stop_pins,
        )
        remedy: Words = ""
    else:
        message = say(
            "The rabbet of {} is wider than the half pin of {:bare} at the back edge; run through, it "
            "would notch the last tail.",
            rabbet,
            half_pin,
        )
        remedy = say(
            "Make that half pin {:up}, or stop the rabbet {} from the end of the tail board and {} from "
            "that of the pin board.",
            rabbet,
            stop_tails,
            stop_pins,
        )
    return new_finding(
        rule="rabbet in a pin",
        verdict=Verdict.PASS if stop_tails is None else Verdict.CAUTION,
        message=message,
        remedy=remedy,
        about=about,
        found=half_pin,
        needed=rabbet,
        source="geometry of the joint",
    )


def rabbet_leaves_wood(
    depth: Inches, board: Inches, habits: CarcaseLimits = CARCASE, about: str = ""
) -> Finding:
    """Whether the rabbet for the back leaves enough of the thinner board.

    Args:
        depth: how far the rabbet reaches in from the inside faces [in]
        board: thickness of the thinner board [in]
        habits: what a carcase dovetail is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    most = habits.rabbet_most.value * board
    return at_most(
        "rabbet depth",
        depth,
        most,
        say("The rabbet is {} deep in a board of {}; up to {:bare} is usual.", depth, board, most),
        say("Make it {:down} deep.", most),
        about=about,
        verdict=Verdict.CAUTION,
        source=habits.rabbet_most.source,
    )
