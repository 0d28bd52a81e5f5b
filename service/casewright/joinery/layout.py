"""Where the tails stand on the end of a board: the one layout that every dovetail of even spacing shares.

Positions run up from the bottom edge, which is the reference edge of a drawer part. A pin and a half pin are
measured at the end of the tail board, where dividers are walked; there a tail is widest and a pin narrowest.
Nothing here is rounded: a rounded pitch, added up, can put the last tail 5/128 in from its place.
"""

import math
from dataclasses import dataclass

from casewright.joinery.sizes import refuse_no_dovetail
from casewright.joinery.spacing import (
    TOLERANCE,
    bevel_degrees,
    divider_setting,
    flare,
    half_pin_inside,
    lower_edge,
    lower_edge_at_baseline,
    most_tails,
    neck,
    pin_inside,
    tail_width,
    upper_edge,
    upper_edge_at_baseline,
)
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import maker, quickly_made
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Degrees, Inches, Number


class CannotBeLaidOut(ValueError):
    """The joint that was asked for leaves no width for its tails; the message says what would work."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Tail:
    """One tail, by its four corners, each measured up from the bottom edge.

    Attributes:
        lower_end: its lower edge at the end of the board [in]
        upper_end: its upper edge at the end of the board [in]
        lower_base: its lower edge at the baseline [in]
        upper_base: its upper edge at the baseline [in]
    """

    lower_end: Inches
    upper_end: Inches
    lower_base: Inches
    upper_base: Inches

    def raised(self, offset: Inches) -> "Tail":
        """The same tail, measured from an edge that lies lower by an offset.

        Args:
            offset: how far below the other edge lies [in]

        Returns:
            The tail with each corner that much higher.

        Source: geometry of the joint.
        """
        return new_tail(
            lower_end=self.lower_end + offset,
            upper_end=self.upper_end + offset,
            lower_base=self.lower_base + offset,
            upper_base=self.upper_base + offset,
        )


new_tail = maker(Tail)
"""Makes a tail as `Tail` does, and sooner: a piece has hundreds."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class TailLayout:
    """An evenly spaced row of tails with half pins at both ends.

    Attributes:
        height: height of the tail board's end [in]
        half_pin: half pin at each edge, at the end of the board [in]
        pin: pin between two tails, at the end of the board [in]
        count: number of tails
        tail_length: from the end of the board to the baseline [in]
        slope: how far along for one across, 8 for 1:8
        tail_width: a tail at the end of the board [in]
        pitch: from one tail to the next, which is the setting of the dividers [in]
        flare: how much a tail narrows on each edge between its end and the baseline [in]
        neck: a tail at the baseline [in]
        pin_inside: a pin at the baseline, which is the inside face of the other board [in]
        half_pin_inside: a half pin at the baseline [in]
        bevel_degrees: angle of the tails' edges from square to the end [degree]
        tails: every tail from the bottom up, unrounded
    """

    height: Inches
    half_pin: Inches
    pin: Inches
    count: Count
    tail_length: Inches
    slope: Number
    tail_width: Inches
    pitch: Inches
    flare: Inches
    neck: Inches
    pin_inside: Inches
    half_pin_inside: Inches
    bevel_degrees: Degrees
    tails: tuple[Tail, ...]


def lay_out(
    height: Inches,
    half_pin: Inches,
    pin: Inches,
    count: Count,
    tail_length: Inches,
    slope: Number,
    ledger: Ledger = UNKEPT,
) -> TailLayout:
    """The whole layout of an evenly spaced dovetail.

    Args:
        height: height of the tail board's end [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        count: number of tails
        tail_length: from the end of the board to the baseline [in]
        slope: how far along for one across, 8 for 1:8 [dimensionless]
        ledger: where the working is kept

    Returns:
        The tails from the bottom up, with the dividers' setting and the widths at both ends.

    Raises:
        CannotBeLaidOut: the sizes leave the tails no width.

    Source: geometry of the joint.
    """
    _refuse_nonsense(height, half_pin, pin, count, tail_length, slope)
    narrowing = ledger.take("flare", flare, tail_length=tail_length, slope=slope)
    wide = ledger.take("tail_width", tail_width, height=height, half_pin=half_pin, pin=pin, count=count)
    narrow = ledger.take("neck", neck, tail_width=wide, flare=narrowing)
    if narrow <= TOLERANCE:
        raise CannotBeLaidOut(_what_would_work(height, half_pin, pin, count, narrowing))
    pitch = ledger.take(
        "divider_setting", divider_setting, height=height, half_pin=half_pin, pin=pin, count=count
    )
    return TailLayout(
        height=height,
        half_pin=half_pin,
        pin=pin,
        count=count,
        tail_length=tail_length,
        slope=slope,
        tail_width=wide,
        pitch=pitch,
        flare=narrowing,
        neck=narrow,
        pin_inside=ledger.take("pin_inside", pin_inside, pin=pin, flare=narrowing),
        half_pin_inside=ledger.take("half_pin_inside", half_pin_inside, half_pin=half_pin, flare=narrowing),
        bevel_degrees=ledger.take("bevel", bevel_degrees, slope=slope),
        tails=tuple(
            [_tail(number, half_pin, pitch, wide, narrowing, ledger) for number in range(1, count + 1)]
        ),
    )


def _tail(
    number: Count, half_pin: Inches, pitch: Inches, wide: Inches, narrowing: Inches, ledger: Ledger
) -> Tail:
    if ledger is UNKEPT:  # as below, without the names of figures that nobody keeps
        lower = lower_edge(number, half_pin, pitch)
        upper = upper_edge(lower, wide)
        return new_tail(
            lower_end=lower,
            upper_end=upper,
            lower_base=lower_edge_at_baseline(lower, narrowing),
            upper_base=upper_edge_at_baseline(upper, narrowing),
        )
    name = f"tail_{number}"
    lower = ledger.take(f"{name}_lower_end", lower_edge, number=number, half_pin=half_pin, pitch=pitch)
    upper = ledger.take(f"{name}_upper_end", upper_edge, lower_edge=lower, tail_width=wide)
    return new_tail(
        lower_end=lower,
        upper_end=upper,
        lower_base=ledger.take(
            f"{name}_lower_base", lower_edge_at_baseline, lower_edge=lower, flare=narrowing
        ),
        upper_base=ledger.take(
            f"{name}_upper_base", upper_edge_at_baseline, upper_edge=upper, flare=narrowing
        ),
    )


def _refuse_nonsense(
    height: Inches, half_pin: Inches, pin: Inches, count: Count, tail_length: Inches, slope: Number
) -> None:
    if count < 1:
        raise CannotBeLaidOut(f"A joint with {count} tails has nothing to hold it; give it at least 1.")
    # Written so that a size that is not a number fails too.
    for name, size in (("board", height), ("pins", pin), ("tails", tail_length)):
        if not 0 < size < math.inf:
            raise CannotBeLaidOut(say("The {} cannot be {:exact}; give a size above 0.", name, size))
    if not 0 <= half_pin < math.inf:
        raise CannotBeLaidOut(say("A half pin cannot be {:exact}; {:fraction} is usual.", half_pin, 1 / 8))
    try:
        refuse_no_dovetail(slope, "1:8 is usual in hardwood")
    except ValueError as error:
        raise CannotBeLaidOut(error.args[0]) from None


def _what_would_work(height: Inches, half_pin: Inches, pin: Inches, count: Count, narrowing: Inches) -> Words:
    tails = f"{count} tail{'s' if count > 1 else ''}"
    said = say("A board {} high has no width left for {} at the baseline", height, tails)
    most = most_tails(height, half_pin, pin, narrowing, least_neck=1 / 64)
    if most:
        return say("{}; at most {:d} would have any.", said, most)
    least = 2 * half_pin + 2 * narrowing + 1 / 64
    return say(
        "{}; with half pins of {} even one tail needs a board of {}: "
        "make the half pins narrower, the tails shorter or the slope slighter.",
        said,
        half_pin,
        least,
    )
