"""What would let a row of tails be laid out where no number of tails passes."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from casewright.joinery.choose import LOOKS, Looks, rank, refusals
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import flare, tail_width
from casewright.measure.rounding import down_to, up_to
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Inches, Number

FEW = (1, 2)
"""A board that takes no more tails than these is too small for any other number, too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowSizes:
    """The sizes that decide whether some number of tails passes.

    Attributes:
        height: height of the tail board's end [in]
        side: thickness of the tail board [in]
        tail_length: from the end of the board to the baseline [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        slope: how far along for one across, 8 for 1:8
        kerf: how wide the dovetail saw cuts [in]
        looks: what looks well; it says how high a board one tail holds
        limits: what a joint is held to
    """

    height: Inches
    side: Inches
    tail_length: Inches
    half_pin: Inches
    pin: Inches
    slope: Number
    kerf: Inches
    looks: Looks = LOOKS
    limits: Limits = LIMITS

    @property
    def plain(self) -> tuple[Inches, Inches, Inches, Inches, Inches, Number, Inches]:
        """The sizes in the order in which a ranking takes them."""
        return (
            self.height,
            self.side,
            self.tail_length,
            self.half_pin,
            self.pin,
            self.slope,
            self.kerf,
        )

    @property
    def passes(self) -> bool:
        """Whether some number of tails passes."""
        return bool(rank(*self.plain, looks=self.looks, limits=self.limits))

    @property
    def least_pin(self) -> Inches:
        """The narrowest pin that holds, and leaves room for the saw, up to a 64th [in]."""
        least = max(self.limits.pin_least.value, self.kerf + self.limits.pin_over_kerf.value)
        return up_to(least, 1 / 64)

    @property
    def least_tail(self) -> Inches:
        """The narrowest tail at the end of the board whose neck is wide enough [in]."""
        neck = max(self.side, self.limits.neck_least.value)
        return neck + 2 * flare(self.tail_length, self.slope)


def why_no_number(sizes: RowSizes) -> Words:
    """Why no number of tails passes, each reason once, and the sizes that would let one pass.

    Args:
        sizes: the sizes for which none does

    Returns:
        Whole sentences; each size that they name makes some number pass when it is changed alone, or beside
        the pin where that is too narrow.

    Source: geometry of the joint, and the limits of its checks.
    """
    reasons: list[Words] = []
    first: list[Words] = []
    if sizes.pin < sizes.least_pin and not sizes.passes:
        reasons.append(say("A pin of {} is too narrow.", sizes.pin))
        first.append(say("the pins {:up} or wider", sizes.least_pin))
        sizes = replace(sizes, pin=sizes.least_pin)
    if sizes.passes:
        return _said(reasons, first, [])
    refused = refusals(*sizes.plain, looks=sizes.looks, limits=sizes.limits)
    numbered = len(refused) > 1
    reasons += (say("{:d}: {}", each.count, each.why) if numbered else each.why for each in refused)
    return _said(reasons, first, list(_ways(sizes)))


def _said(reasons: Iterable[Words], first: list[Words], ways: list[Words]) -> Words:
    others = strung(", or ", ways)
    make = strung(" and ", [*first, *([others] if others else [])])
    return say("No number of tails passes. {} Make {}.", strung(" ", reasons), make)


def _ways(sizes: RowSizes) -> Iterator[Words]:
    """Each size that, changed alone, lets a number of tails pass."""
    higher = sorted(up_to(_height(sizes, count), 1 / 64) for count in FEW)
    found = [each for each in higher if each > sizes.height and replace(sizes, height=each).passes]
    if found:
        yield say("the board {:up} high or higher", found[0])
    narrower = (down_to(_half_pin(sizes, count), 1 / 64) for count in FEW)
    fit = [
        each
        for each in narrower
        if sizes.limits.half_pin_least.value <= each < sizes.half_pin and replace(sizes, half_pin=each).passes
    ]
    if fit:
        yield say("the half pins {:down} or narrower", max(fit))
    thinner = (down_to(_side(sizes, count), 1 / 64) for count in FEW)
    thin = [
        each
        for each in thinner
        if sizes.limits.neck_least.value <= each < sizes.side and replace(sizes, side=each).passes
    ]
    if thin:
        yield say("the board with the tails {:down} thick or thinner", max(thin))


def _height(sizes: RowSizes, count: int) -> Inches:
    return 2 * sizes.half_pin + count * sizes.least_tail + (count - 1) * sizes.pin


def _half_pin(sizes: RowSizes, count: int) -> Inches:
    return (sizes.height - count * sizes.least_tail - (count - 1) * sizes.pin) / 2


def _side(sizes: RowSizes, count: int) -> Inches:
    wide = tail_width(sizes.height, sizes.half_pin, sizes.pin, count)
    return wide - 2 * flare(sizes.tail_length, sizes.slope)
