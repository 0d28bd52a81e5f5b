"""A carcase dovetail as it is asked for, and what of it is refused."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.defaults import USUAL
from casewright.joinery.families.carcase.checks import CARCASE, CarcaseLimits
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.measure.making import quickly_made
from casewright.measure.rounding import down_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class BackRabbet:
    """The rabbet that takes the back of a case, along the back edge of both boards.

    Attributes:
        width: how far it reaches in from the back edge [in]
        depth: how far it reaches in from the inside faces [in]
    """

    width: Inches
    depth: Inches

    def __post_init__(self) -> None:
        refuse_unless_above_zero(width_of_the_rabbet=self.width, depth_of_the_rabbet=self.depth)


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Carcase:
    """A carcase dovetail as it is asked for.

    Attributes:
        width: width of the boards, from the front edge to the back edge [in]
        tail_board: thickness of the board with the tails [in]
        pin_board: thickness of the board with the pins [in]
        lap: left of the pin board outside the tails; 0 for through tails [in]
        half_pin: half pin at the front edge, at the end of the tails [in]
        back_half_pin: half pin at the back edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        tails: number of tails, the edge tails too
        share: width of an edge tail as a part of the others
        slope: how far along for one across, 8 for 1:8
        rabbet: the rabbet for the back; None for none
        outside: length over both pin boards; None when it is not known [in]
        rack: the shop's chisels and saw
        limits: what any dovetail is held to
        habits: what a carcase dovetail is held to
        mark: code of the joint, for its findings
    """

    width: Inches
    tail_board: Inches
    pin_board: Inches
    lap: Inches
    half_pin: Inches
    back_half_pin: Inches
    pin: Inches
    tails: Count
    share: Number = CARCASE.share.value
    slope: Number = USUAL.slope_hardwood.value
    rabbet: BackRabbet | None = None
    outside: Inches | None = None
    rack: Rack = RACK
    limits: Limits = LIMITS
    habits: CarcaseLimits = CARCASE
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(
            width=self.width,
            tail_board=self.tail_board,
            pin_board=self.pin_board,
            half_pin=self.half_pin,
            half_pin_at_the_back=self.back_half_pin,
            pin=self.pin,
            slope=self.slope,
        )
        refuse_below_zero(lap=self.lap)
        if self.lap >= self.pin_board:
            raise CannotBeLaidOut(
                say(
                    "A lap of {} leaves nothing of a pin board {:bare} thick; {} is usual, 0 for through.",
                    self.lap,
                    self.pin_board,
                    usual_lap_of_a_case(self.pin_board),
                )
            )
        if not 0 < self.share <= 1:
            raise CannotBeLaidOut(
                f"A share of {self.share:g} makes no narrower edge tails; 0.67 is usual, 1 for none."
            )
        if self.rabbet:
            self._refuse_a_rabbet_that_cuts_too_much(self.rabbet)
        if self.outside is not None and self.outside <= 2 * self.pin_board:
            raise CannotBeLaidOut(
                say(
                    "Two pin boards alone are {} long over both; give more than {:bare}, or leave it out.",
                    2 * self.pin_board,
                    2 * self.pin_board,
                )
            )

    def _refuse_a_rabbet_that_cuts_too_much(self, rabbet: BackRabbet) -> None:
        deepest = min(self.tail_board, self.pin_board - self.lap)
        if rabbet.depth >= deepest:
            raise CannotBeLaidOut(
                say(
                    "A rabbet {} deep cuts through the tails; it is to be less than {:bare}, and {:down} "
                    "is half of the thinner board.",
                    rabbet.depth,
                    deepest,
                    self.habits.rabbet_most.value * min(self.tail_board, self.pin_board),
                )
            )
        if rabbet.width >= self.width - self.half_pin:
            raise CannotBeLaidOut(
                say(
                    "A rabbet {} wide, as the back is thick, takes all of a board of {}; make the board more "
                    "than {} wide.",
                    rabbet.width,
                    self.width,
                    rabbet.width + self.half_pin,
                )
            )


def usual_lap_of_a_case(pin_board: Inches, habits: CarcaseLimits = CARCASE) -> Inches:
    """The lap of a case: a third of the board with the pins.

    Rule: pin_board / lap_part, down to a multiple of lap_step, and at least one

    Args:
        pin_board: thickness of the board with the pins [in]
        habits: what a carcase dovetail is held to

    Returns:
        The lap [in]

    Source: common practice.
    """
    step = habits.lap_step.value
    return max(down_to(pin_board / habits.lap_part.value, step), min(step, pin_board / 2))
