"""The order of work at the waste of a dovetail, so that neither a lap nor a baseline breaks out."""

from collections.abc import Iterator

from casewright.joinery.chisels import Chisels
from casewright.joinery.layout import TailLayout
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number

SLICE = 1 / 16
"""How thick a slice of the waste is split off (common practice) [in]."""
THIN_SLICE = 1 / 32
"""How thick it is where the lap is weak (from memory) [in]."""
LEAST_ROOM = 1 / 16
"""How much narrower than a socket its chisel may be and still reach the corners (from memory) [in]."""


def order_at_the_lap(
    layout: TailLayout,
    chisels: Chisels,
    depth: Inches,
    index: Number,
    limits: Limits = LIMITS,
    can_be_replaced: bool = True,
) -> tuple[Words, ...]:
    """How the sockets of a half-blind joint are cut, and what keeps the lap whole.

    Args:
        layout: the row of tails
        chisels: which chisels of the rack clear the joint
        depth: depth of the sockets, from the inside face to the lap line [in]
        index: the lap index [dimensionless]
        limits: what a joint is held to
        can_be_replaced: whether another front of the same look could be had

    Returns:
        One sentence for each step and precaution, in the order of work.

    Source: common practice; the thinner slice before a weak lap is from memory.
    """
    weak = index > limits.lap_index_caution.value + TOLERANCE
    return (
        *_spare(weak, index, can_be_replaced),
        "Set the baseline of the tails and the depth of the sockets with the same gauge.",
        *_between_the_tails(layout, chisels),
        say(
            "Saw the pins on their waste side, aslant, to the lap line and the gauge line and no farther: "
            "{:d} kerfs. What the saw does not reach is pared.",
            2 * layout.count,
        ),
        "Clamp the front on a sacrificial block, its outside face down, so that the lap bears all over.",
        say(
            "First to half the depth, {}: chop across the grain{}, {} from the gauge line, bevel to the "
            "waste, and split the slice off from the end grain.",
            depth / 2,
            _with(chisels.sockets, layout.neck),
            THIN_SLICE if weak else SLICE,
        ),
        say(
            "Then the other half{}: begin at the end grain, away from the lap line, and work towards it in "
            "slices of {}; leave the last {:bare} before it.",
            ", thinner, for the lap is weak" if weak else "",
            THIN_SLICE if weak else SLICE,
            THIN_SLICE,
        ),
        *_corners(layout, chisels),
        "Make the last cut on each line, the lap line by paring from the end grain, never by a blow.",
        "Never lever a chip out against the lap: cut it loose and lift it.",
        "Undercut the floor of each socket slightly.",
        say("Leave the tails no more than {:.3} tight across their width.", 0.004),
        "Glue the cheeks of the tails, not the lap: glue shut in behind a tail bursts it.",
        "Notch the clamping cauls over the pins, so that no clamp bears on the lap.",
    )


def order_through(layout: TailLayout, chisels: Chisels, board: Inches, side: Inches) -> tuple[Words, ...]:
    """How the waste of a through joint is cut from both faces.

    Args:
        layout: the row of tails
        chisels: which chisels of the rack clear the joint
        board: thickness of the board with the pins [in]
        side: thickness of the board with the tails [in]

    Returns:
        One sentence for each step, in the order of work.

    Source: common practice.
    """
    return (
        "Gauge the baselines on both faces: each face is chopped to a line of its own.",
        *_between_the_tails(layout, chisels),
        say(
            "Saw the pins on their waste side, straight down to the baseline and no farther: {:d} kerfs.",
            2 * layout.count,
        ),
        "Clamp the board flat on a sacrificial block.",
        say(
            "Chop half from each face: the pins to {}{}, the tails to {}{}. Begin {} off the baseline, bevel "
            "to the waste, and split each slice off from the end grain.",
            board / 2,
            _with(chisels.sockets, layout.neck),
            side / 2,
            _with(chisels.between_tails, layout.pin_inside),
            SLICE,
        ),
        "Turn the board over before the chips break through, and meet in the middle, a hair hollow.",
        *_corners(layout, chisels),
        "Make the last cut on the baseline, from both faces, once the bulk of the waste is out.",
    )


def _spare(weak: bool, index: Number, can_be_replaced: bool) -> Iterator[Words]:
    """A spare blank has to be milled before anything is cut, so it comes first."""
    if not can_be_replaced:
        yield "Mill one spare front blank in sequence with the others: this front cannot be replaced."
    elif weak:
        yield say("Mill one spare front blank in sequence with the others: the lap index is {:.0f}.", index)


def _with(chisel: Inches | None, room: Inches) -> Words:
    return say(" with a chisel of {:down}", room) if chisel is None else say(" with the {} chisel", chisel)


def _between_the_tails(layout: TailLayout, chisels: Chisels) -> Iterator[Words]:
    if chisels.fret_saw:
        chisel = _with(chisels.between_tails, layout.pin_inside)
        yield say(
            "Between the tails saw the waste out with a fret saw, for the pins are only {} wide; "
            "pare to the baseline{}.",
            layout.pin,
            chisel,
        )
    elif not chisels.enters_from_end and chisels.between_tails is not None:
        yield say(
            "Between the tails the {} chisel works at the baseline only; from the end the gap of {} is too "
            "narrow for it.",
            chisels.between_tails,
            layout.pin,
        )


def _corners(layout: TailLayout, chisels: Chisels) -> Iterator[Words]:
    """A socket widens from its mouth, so a chisel that fills the mouth does not reach the corners behind."""
    if chisels.sockets is not None and layout.tail_width - chisels.sockets > LEAST_ROOM:
        yield say(
            "Clear the corners, where a socket is {} wide and its mouth {:bare}, with a narrower chisel or "
            "one ground aslant.",
            layout.tail_width,
            layout.neck,
        )
