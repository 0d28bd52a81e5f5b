"""Whether the groove for the bottom is hidden behind the lowest tail, and what to move when it is not.

In the side the groove leaves through the end of the lowest tail, inside the socket, where nobody sees it.
Where it crosses a pin instead it leaves a notch on the outside of the drawer.
"""

from dataclasses import dataclass

from casewright.joinery.layout import TailLayout
from casewright.joinery.spacing import TOLERANCE, most_tails, tail_width
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import quickly_made
from casewright.measure.rounding import up_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Groove:
    """The groove that holds a drawer's bottom.

    Attributes:
        height: its lower edge above the bottom edge of the part [in]
        width: how wide it is [in]
        depth: how deep it is [in]
        in_side: whether it is in the side too; else slips carry the bottom there
    """

    height: Inches
    width: Inches
    depth: Inches
    in_side: bool = True

    def __post_init__(self) -> None:
        if not self.height > 0:
            raise ValueError(
                say("A groove {} above the edge leaves no wood below it; {} is usual.", self.height, 3 / 8)
            )
        if not (self.width > 0 and self.depth > 0):
            raise ValueError(
                say(
                    "A groove {} wide and {} deep is no groove; {:bare} by {} is usual.",
                    self.width,
                    self.depth,
                    1 / 4,
                    1 / 4,
                )
            )

    @property
    def top(self) -> Inches:
        """The upper edge of the groove above the bottom edge [in]."""
        return self.height + self.width


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class GrooveFit:
    """How a groove lies against the lowest tail, at the inside face.

    Attributes:
        lower: lower edge of the lowest tail at the baseline [in]
        upper: upper edge of the lowest tail at the baseline [in]
        spare: the least wood between the groove and an edge of the tail; below zero, how much shows [in]
        move: how far to raise the groove so that it is hidden, below zero to lower it; 0 when it is
            hidden, None when it is wider than the tail [in]
        height: the groove height nearest to the asked one that is hidden, in 64ths if any is [in]
        half_pin: a half pin that would hide the groove where it is; None when there is none or no need [in]
        most_tails: the greatest number of tails of which one is as wide as the groove; 0 when there is none
    """

    lower: Inches
    upper: Inches
    spare: Inches
    move: Inches | None
    height: Inches | None
    half_pin: Inches | None
    most_tails: Count = 0

    @property
    def hidden(self) -> bool:
        """Whether no part of the groove shows."""
        return self.move == 0.0


def groove_move(groove_height: Inches, groove_width: Inches, lower: Inches, upper: Inches) -> Inches | None:
    """How far the groove has to move so that the lowest tail hides it.

    Rule: lower - groove_height when that is above 0, else upper - groove_height - groove_width when that is
    below 0, else 0

    Args:
        groove_height: lower edge of the groove above the bottom edge [in]
        groove_width: width of the groove [in]
        lower: lower edge of the lowest tail at the inside face [in]
        upper: upper edge of the lowest tail at the inside face [in]

    Returns:
        Above zero to raise the groove, below zero to lower it, 0 when it is hidden; None when it is wider
        than the tail, so that no move helps [in]

    Source: geometry of the joint.
    """
    if groove_width > upper - lower + TOLERANCE:
        return None
    if groove_height < lower - TOLERANCE:
        return lower - groove_height
    if groove_height + groove_width > upper + TOLERANCE:
        return upper - groove_height - groove_width
    return 0.0


def half_pin_that_hides(layout: TailLayout, groove: Groove) -> Inches | None:
    """A half pin with which the lowest tail hides the groove where it is.

    A groove that is too low needs a narrower half pin; one that is too high needs a wider one, for the upper
    edge of the lowest tail rises by 1 - 2/n for each unit of the half pin when there are n tails.

    Args:
        layout: the row of tails
        groove: the groove

    Returns:
        The half pin at the end of the tails; None when there is no need, or none that hides it [in]

    Source: geometry of the joint.
    """
    lowest = layout.tails[0]
    if groove.height < lowest.lower_base - TOLERANCE:
        half_pin = groove.height - layout.flare
    elif groove.top > lowest.upper_base + TOLERANCE and layout.count != 2:
        half_pin = layout.half_pin + (groove.top - lowest.upper_base) / (1 - 2 / layout.count)
    else:
        return None
    wide = tail_width(layout.height, half_pin, layout.pin, layout.count)
    hides = (
        half_pin > 0
        and wide > 2 * layout.flare
        and half_pin + layout.flare <= groove.height + TOLERANCE
        and groove.top <= half_pin + wide - layout.flare + TOLERANCE
    )
    return half_pin if hides else None


def groove_fit(layout: TailLayout, groove: Groove, ledger: Ledger = UNKEPT) -> GrooveFit:
    """How a groove lies against the lowest tail, and what would hide it.

    Args:
        layout: the row of tails
        groove: the groove
        ledger: where the working is kept

    Returns:
        The edges that it must lie between, what it has to spare, and the moves that would hide it.

    Source: geometry of the joint.
    """
    lower, upper = layout.tails[0].lower_base, layout.tails[0].upper_base
    move = ledger.take(
        "groove_move",
        groove_move,
        groove_height=groove.height,
        groove_width=groove.width,
        lower=lower,
        upper=upper,
    )
    return GrooveFit(
        lower=lower,
        upper=upper,
        spare=min(groove.height - lower, upper - groove.top),
        move=move,
        height=groove.height if move == 0.0 else _hidden_height(groove, lower, upper, move),
        half_pin=None if move == 0.0 else half_pin_that_hides(layout, groove),
        most_tails=most_tails(layout.height, layout.half_pin, layout.pin, layout.flare, groove.width),
    )


def _hidden_height(groove: Groove, lower: Inches, upper: Inches, move: Inches | None) -> Inches | None:
    """The nearest height that hides the groove: a whole 64th if one lies within, so that it can be set."""
    if move is None:
        return None
    highest = upper - groove.width
    whole = up_to(lower, 1 / 64) if move > 0 else -up_to(-highest, 1 / 64)
    return whole if lower - TOLERANCE <= whole <= highest + TOLERANCE else groove.height + move
