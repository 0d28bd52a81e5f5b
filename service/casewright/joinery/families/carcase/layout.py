"""Where the tails of a wide case board stand: narrower ones at the edges, an even row between them.

The middle tails are an even row with a pin at either end, so that the dividers, their walk and their one
correction are those of any even row. One tail or two, as on a rail, have none between them and are all of the
row. Positions run from the front edge, which is the reference edge.
"""

import math
from dataclasses import dataclass

from casewright.joinery.layout import CannotBeLaidOut, Tail, TailLayout, lay_out
from casewright.joinery.spacing import TOLERANCE, flare, neck
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches, Number

FEWEST = 3
"""Two edge tails and one between them: with fewer there is no edge tail to be narrower."""
LEAST_NECK = 1 / 64
"""What a tail must have left at the baseline to be drawn at all [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CarcaseLayout:
    """The tails across a wide board.

    Attributes:
        width: width of the board, from the front edge to the back edge [in]
        half_pin: half pin at the front edge, at the end of the tails [in]
        back_half_pin: half pin at the back edge, at the end of the tails [in]
        share: width of an edge tail as a part of the others
        edge_tail: an edge tail at the end of the board [in]
        edge_neck: an edge tail at the baseline [in]
        start: upper edge of the first edge tail, where the row of middle tails begins; in an even row a pin
            before the first tail [in]
        middle: the middle tails, from there, with a pin at either end; all tails of an even row
        tails: every tail from the front edge on
    """

    width: Inches
    half_pin: Inches
    back_half_pin: Inches
    share: Number
    edge_tail: Inches
    edge_neck: Inches
    start: Inches
    middle: TailLayout
    tails: tuple[Tail, ...]

    @property
    def is_even(self) -> bool:
        """Whether there are no tails at the edges to be narrower."""
        return len(self.tails) < FEWEST


def dovetailed_length(width: Inches, lap: Inches) -> Inches:
    """The length of a rail, top or bottom that is dovetailed into both sides of a case.

    Rule: width - 2 × lap

    Args:
        width: outside width of the body [in]
        lap: wood left outside the tails; 0 for through tails [in]

    Returns:
        The length over the tails [in]

    Source: geometry of the joint.
    """
    return width - 2 * lap


def middle_tail(room: Inches, pin: Inches, count: Count, share: Number) -> Inches:
    """The width of a middle tail where the tails at both edges are narrower.

    Rule: (room - (count - 1) × pin) / (count - 2 + 2 × share)

    Args:
        room: between the half pins [in]
        pin: pin between two tails, at the end of the tails [in]
        count: number of tails, the edge tails too
        share: width of an edge tail as a part of the others [dimensionless]

    Returns:
        The width of a middle tail at its widest [in]

    Source: geometry of the joint.
    """
    return (room - (count - 1) * pin) / (count - 2 + 2 * share)


def edge_tail_width(middle: Inches, share: Number) -> Inches:
    """The width of the tail at each edge.

    Rule: middle × share

    Args:
        middle: a middle tail at the end of the board [in]
        share: width of an edge tail as a part of the others [dimensionless]

    Returns:
        The width of an edge tail at its widest [in]

    Source: common practice: narrow tails at the edges hold a wide board where it cups first.
    """
    return middle * share


def most_in_a_carcase(room: Inches, pin: Inches, narrowing: Inches, share: Number, least: Inches) -> Count:
    """The greatest number of tails that keeps the edge tails at least so wide at the baseline.

    Rule: whole part of (share × (room + pin) + 2 × (1 - share) × w) / (share × pin + w),
    with w = least + 2 × narrowing

    Args:
        room: between the half pins [in]
        pin: pin between two tails, at the end of the tails [in]
        narrowing: how much a tail narrows on each edge to the baseline [in]
        share: width of an edge tail as a part of the others [dimensionless]
        least: the least width of an edge tail at the baseline [in]

    Returns:
        The count; below 3 when the board is too narrow for such a joint.

    Source: geometry of the joint.
    """
    wide = least + 2 * narrowing
    most = (share * (room + pin) + 2 * (1 - share) * wide) / (share * pin + wide)
    return max(0, math.floor(most + TOLERANCE))


def fewest_in_a_carcase(room: Inches, pin: Inches, share: Number, widest: Inches) -> Count:
    """The smallest number of tails that keeps the middle tails at most so wide.

    Rule: next whole number from (room + pin + 2 × (1 - share) × widest) / (widest + pin), and at least 3

    Args:
        room: between the half pins [in]
        pin: pin between two tails, at the end of the tails [in]
        share: width of an edge tail as a part of the others [dimensionless]
        widest: the greatest width of a middle tail at the end of the board [in]

    Returns:
        The count.

    Source: geometry of the joint.
    """
    return max(FEWEST, math.ceil((room + pin + 2 * (1 - share) * widest) / (widest + pin) - TOLERANCE))


def narrowest_board(
    half_pins: Inches, pin: Inches, narrowing: Inches, share: Number, least: Inches
) -> Inches:
    """The narrowest board that takes three tails whose edge tails are so wide at the baseline.

    Rule: half_pins + 2 × pin + (1 + 2 × share) × (least + 2 × narrowing) / share

    Args:
        half_pins: both half pins together, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        narrowing: how much a tail narrows on each edge to the baseline [in]
        share: width of an edge tail as a part of the others [dimensionless]
        least: the least width of an edge tail at the baseline [in]

    Returns:
        The width of the board [in]

    Source: geometry of the joint.
    """
    return half_pins + 2 * pin + (1 + 2 * share) * (least + 2 * narrowing) / share


def lay_out_carcase(
    width: Inches,
    half_pin: Inches,
    back_half_pin: Inches,
    pin: Inches,
    count: Count,
    share: Number,
    tail_length: Inches,
    slope: Number,
    ledger: Ledger = UNKEPT,
) -> CarcaseLayout:
    """The whole layout of a wide board.

    Args:
        width: width of the board [in]
        half_pin: half pin at the front edge, at the end of the tails [in]
        back_half_pin: half pin at the back edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        count: number of tails, the edge tails too
        share: width of an edge tail as a part of the others [dimensionless]
        tail_length: from the end of the board to the baseline [in]
        slope: how far along for one across, 8 for 1:8 [dimensionless]
        ledger: where the working is kept

    Returns:
        The layout; an even row where there are fewer than three tails.

    Raises:
        CannotBeLaidOut: the sizes leave the tails no width; the message says what would work.

    Source: geometry of the joint.
    """
    half_pins = half_pin + back_half_pin
    room, narrowing = width - half_pins, flare(tail_length, slope)
    if 0 < count < FEWEST:
        return _even_row(width, half_pin, back_half_pin, pin, count, tail_length, slope, ledger)
    if count >= FEWEST:
        wide = ledger.take("tail_width", middle_tail, room=room, pin=pin, count=count, share=share)
        edge = ledger.take("edge_tail", edge_tail_width, middle=wide, share=share)
        edge_neck = ledger.take("edge_neck", neck, tail_width=edge, flare=narrowing)
    if count < FEWEST or edge_neck <= TOLERANCE:
        raise CannotBeLaidOut(_what_would_work(width, half_pins, pin, count, narrowing, share))
    start = half_pin + edge
    middle = lay_out(room - 2 * edge, pin, pin, count - 2, tail_length, slope, ledger)
    last = width - back_half_pin
    return CarcaseLayout(
        width=width,
        half_pin=half_pin,
        back_half_pin=back_half_pin,
        share=share,
        edge_tail=edge,
        edge_neck=edge_neck,
        start=start,
        middle=middle,
        tails=(
            _edge_tail(half_pin, start, narrowing),
            *(tail.raised(start) for tail in middle.tails),
            _edge_tail(last - edge, last, narrowing),
        ),
    )


def _even_row(
    width: Inches,
    half_pin: Inches,
    back_half_pin: Inches,
    pin: Inches,
    count: Count,
    tail_length: Inches,
    slope: Number,
    ledger: Ledger,
) -> CarcaseLayout:
    start, half_pins = half_pin - pin, half_pin + back_half_pin
    need = half_pins + (count - 1) * pin + count * (LEAST_NECK + 2 * flare(tail_length, slope))
    if width < need - TOLERANCE:
        raise CannotBeLaidOut(
            say(
                "A board {} wide has no width for {:d} tails between half pins of {:bare} together; make it "
                "{:up}, or the half pins narrower.",
                width,
                count,
                half_pins,
                need,
            )
        )
    row = lay_out(width - half_pins + 2 * pin, pin, pin, count, tail_length, slope, ledger)
    return CarcaseLayout(
        width=width,
        half_pin=half_pin,
        back_half_pin=back_half_pin,
        share=1.0,
        edge_tail=row.tail_width,
        edge_neck=row.neck,
        start=start,
        middle=row,
        tails=tuple(tail.raised(start) for tail in row.tails),
    )


def _edge_tail(lower: Inches, upper: Inches, narrowing: Inches) -> Tail:
    return Tail(lower_end=lower, upper_end=upper, lower_base=lower + narrowing, upper_base=upper - narrowing)


def _what_would_work(
    width: Inches, half_pins: Inches, pin: Inches, count: Count, narrowing: Inches, share: Number
) -> Words:
    most = most_in_a_carcase(width - half_pins, pin, narrowing, share, LEAST_NECK)
    if most < FEWEST:
        return say(
            "A board {} wide has no width for two edge tails and one between them; with these pins it "
            "needs {:up}. Make the half pins or the pins narrower, or cut an even row.",
            width,
            narrowest_board(half_pins, pin, narrowing, share, LEAST_NECK),
        )
    if count < FEWEST:
        return say("{:d} tails hold nothing; give 1 to {:d}.", count, most)
    return say(
        "A board {} wide has no width left at the baseline for the edge tails of {:d}; "
        "at most {:d} tails would have any.",
        width,
        count,
        most,
    )
