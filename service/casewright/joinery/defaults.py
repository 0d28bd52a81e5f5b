"""What is chosen for a number that the maker leaves out, with the reason."""

import math
from dataclasses import dataclass

from casewright.joinery.choose import LOOKS, Looks, rank
from casewright.joinery.groove import Groove
from casewright.joinery.joint import Chosen, Measure
from casewright.joinery.lap import lap_needed
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.no_tails import RowSizes, why_no_number
from casewright.joinery.sourced import Sourced, sourced
from casewright.measure.rounding import TOLERANCE, down_to, up_to
from casewright.measure.saying import say
from casewright.measure.units import Inches, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Usual:
    """The habits that choose for a shop. Lengths are in inches.

    Attributes:
        lap_part: the lap is the front divided by this
        lap_step: and a multiple of this
        lap_least: and never less than this
        rabbet_part: the registration rabbet is the side divided by this
        rabbet_step: and a multiple of this, rounded down
        rabbet_least: and never less than this
        half_pin_front: half pin at a drawer's front
        half_pin_back: half pin at its back, and on a box
        pin: a pin
        pin_in_thin_sides: a pin when the sides are thin
        thin_side: sides so thick, or thinner, are thin
        slope_hardwood: slope in hardwood, 8 for 1:8
        slope_softwood: slope in softwood
        sliding_shoulder: shoulder of a sliding dovetail on each face
        sliding_slope: slope of a sliding dovetail
        sliding_depth_step: the depth of its socket is a multiple of this, rounded down
        taper_rise: a long sliding dovetail narrows by this
        taper_run: in this length, and a shorter one is cut parallel
    """

    lap_part: Sourced
    lap_step: Sourced
    lap_least: Sourced
    rabbet_part: Sourced
    rabbet_step: Sourced
    rabbet_least: Sourced
    half_pin_front: Sourced
    half_pin_back: Sourced
    pin: Sourced
    pin_in_thin_sides: Sourced
    thin_side: Sourced
    slope_hardwood: Sourced
    slope_softwood: Sourced
    sliding_shoulder: Sourced
    sliding_slope: Sourced
    sliding_depth_step: Sourced
    taper_rise: Sourced
    taper_run: Sourced


USUAL = Usual(**sourced("defaults"))
"""The habits of a shop that has set none of its own."""


def usual_lap(
    front: Inches, side: Inches | None = None, usual: Usual = USUAL, limits: Limits = LIMITS
) -> Inches:
    """The lap for a front: a quarter of it, to the nearest 1/16, no less than 1/8, more before thick sides.

    Rule: front / lap_part to the nearest lap_step, a half rounded down, and at least lap_least; where the
    side is known, at least lap_needed for it, up to lap_step, but on that account no more than half the front

    Args:
        front: thickness of the front [in]
        side: thickness of the side; None where it is not known [in]
        usual: the shop's habits
        limits: what a joint is held to

    Returns:
        The lap [in]

    Source: Rogowski (2002): tails about three quarters of the front; the rounding is common practice. A
        thick side breaks a thin lap out: the lap index, with limits from shop experience.
    """
    step = usual.lap_step.value
    # A half goes down: 7/8 gives 3/16, the thickest lap that is printed for fronts of 3/4 to 7/8.
    nearest = math.ceil(front / usual.lap_part.value / step - 0.5 - TOLERANCE) * step
    lap = max(nearest, usual.lap_least.value)
    if side is None:
        return lap
    return max(lap, min(up_to(lap_needed(side, limits), step), down_to(front / 2, step)))


def usual_rabbet(side: Inches, usual: Usual = USUAL) -> Inches:
    """The registration rabbet for a side: an eighth of it, down to 1/32.

    Rule: side / rabbet_part down to a multiple of rabbet_step, and at least rabbet_least

    Args:
        side: thickness of the side [in]
        usual: the shop's habits

    Returns:
        The depth of the rabbet [in]

    Source: common practice.
    """
    return max(down_to(side / usual.rabbet_part.value, usual.rabbet_step.value), usual.rabbet_least.value)


def usual_pin(side: Inches, usual: Usual = USUAL) -> Inches:
    """The width of a pin at its narrow side: 1/8, or 3/32 in thin sides.

    Rule: pin_in_thin_sides when side is at most thin_side, else pin

    Args:
        side: thickness of the side [in]
        usual: the shop's habits

    Returns:
        The pin at the end of the tails [in]

    Source: common practice.
    """
    return pin_habit(side, usual).value


def pin_habit(side: Inches, usual: Usual = USUAL) -> Sourced:
    """The width of a pin, with its ground.

    Args:
        side: thickness of the side [in]
        usual: the shop's habits

    Returns:
        The habit that holds for so thick a side.

    Source: common practice.
    """
    thin = side <= usual.thin_side.value + TOLERANCE
    return usual.pin_in_thin_sides if thin else usual.pin


def slope_habit(softwood: bool = False, usual: Usual = USUAL) -> Sourced:
    """The slope of a tail, with its ground.

    Args:
        softwood: whether the tail board is softwood
        usual: the shop's habits

    Returns:
        The habit that holds for such wood.

    Source: common practice.
    """
    return usual.slope_softwood if softwood else usual.slope_hardwood


def chosen_lap(front: Inches, side: Inches | None = None, usual: Usual = USUAL) -> Chosen:
    """The lap for a front, with the reason.

    Args:
        front: thickness of the front [in]
        side: thickness of the side; None where it is not known [in]
        usual: the shop's habits

    Returns:
        The choice.

    Source: Rogowski (2002); the rounding is common practice.
    """
    lap, plain = usual_lap(front, side, usual), usual_lap(front, usual=usual)
    part = _part(usual.lap_part.value, 4, "A quarter")
    why = say("{} of the {} front, to the nearest {:bare}", part, front, usual.lap_step.value)
    return Chosen(
        name="lap",
        value=lap,
        measure=Measure.LENGTH,
        why=say("{}, and no less than {:bare}.", why, usual.lap_least.value)
        if side is None or lap == plain
        else say("{} would be {}; sides of {} break that out, and ask for {}.", why, plain, side, lap),
        source=usual.lap_part.source if lap == plain else LIMITS.lap_index_caution.source,
    )


def chosen_rabbet(side: Inches, usual: Usual = USUAL) -> Chosen:
    """The registration rabbet for a side, with the reason.

    Args:
        side: thickness of the side [in]
        usual: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    return Chosen(
        name="rabbet",
        value=usual_rabbet(side, usual),
        measure=Measure.LENGTH,
        why=say(
            "{} of the {} side, rounded down to {:bare}.",
            _part(usual.rabbet_part.value, 8, "An eighth"),
            side,
            usual.rabbet_step.value,
        ),
        source=usual.rabbet_part.source,
    )


def _part(divisor: Number, usual: Number, word: str) -> str:
    """A part of a board in words: the usual one by its name, another by its divisor."""
    return word if divisor == usual else f"1/{divisor:g}"


def chosen_half_pin(at_front: bool, usual: Usual = USUAL) -> Chosen:
    """The half pin, with the reason.

    Args:
        at_front: whether the joint is at a drawer's front; at its back, or on a box, when not
        usual: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    habit = usual.half_pin_front if at_front else usual.half_pin_back
    place = "a drawer's front" if at_front else "a drawer's back"
    return Chosen(
        name="half_pin",
        value=habit.value,
        measure=Measure.LENGTH,
        why=say("{} is usual at {}.", habit.value, place),
        source=habit.source,
    )


def chosen_pin(side: Inches, usual: Usual = USUAL) -> Chosen:
    """The pin, with the reason.

    Args:
        side: thickness of the side [in]
        usual: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    habit = pin_habit(side, usual)
    return Chosen(
        name="pin",
        value=habit.value,
        measure=Measure.LENGTH,
        why=say("{} is usual with sides of {}.", habit.value, side),
        source=habit.source,
    )


def chosen_slope(softwood: bool = False, usual: Usual = USUAL) -> Chosen:
    """The slope, with the reason.

    Args:
        softwood: whether the tail board is softwood
        usual: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    habit = slope_habit(softwood, usual)
    return Chosen(
        name="slope",
        value=habit.value,
        measure=Measure.SLOPE,
        why=f"1:{habit.value:g} is usual in {'softwood' if softwood else 'hardwood'}.",
        source=habit.source,
    )


def chosen_tails(
    height: Inches,
    side: Inches,
    tail_length: Inches,
    half_pin: Inches,
    pin: Inches,
    slope: Number,
    kerf: Inches,
    groove: Groove | None = None,
    family_pitch: Inches | None = None,
    looks: Looks = LOOKS,
    limits: Limits = LIMITS,
) -> Chosen:
    """The best looking number of tails, with the reason.

    Args:
        height: height of the tail board's end [in]
        side: thickness of the tail board [in]
        tail_length: from the end of the board to the baseline [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        slope: how far along for one across, 8 for 1:8 [dimensionless]
        kerf: how wide the dovetail saw cuts [in]
        groove: the groove that the lowest tail must hide; None when there is none
        family_pitch: the spacing of the piece's drawers; None to leave it out of account [in]
        looks: what looks well, and the weights
        limits: what a joint is held to

    Returns:
        The choice.

    Raises:
        CannotBeLaidOut: no number of tails passes, with the groove left out of account; the message says
            why, and which sizes would let one pass.

    Source: common practice; the weights are from memory.
    """
    row = RowSizes(
        height=height,
        side=side,
        tail_length=tail_length,
        half_pin=half_pin,
        pin=pin,
        slope=slope,
        kerf=kerf,
        looks=looks,
        limits=limits,
    )
    sizes = row.plain
    choices = rank(*sizes, groove=groove, family_pitch=family_pitch, looks=looks, limits=limits)
    showing = ""
    if groove and not choices:
        # The joint is laid out all the same: its own check then says how far to move the groove.
        choices = rank(*sizes, family_pitch=family_pitch, looks=looks, limits=limits)
        showing = " No number of tails hides the groove."
    if not choices:
        raise CannotBeLaidOut(why_no_number(row))
    best = choices[0]
    looks_best = f"The only number that passes, at {best.score:.1f} of 100 for looks"
    if len(choices) > 1:
        next_best = f"next {choices[1].count}, at {choices[1].score:.1f}"
        looks_best = f"Looks best of the {len(choices)} that pass, at {best.score:.1f} of 100; {next_best}"
    return Chosen(
        name="tails",
        value=best.count,
        measure=Measure.COUNT,
        why=f"{looks_best}.{showing}",
        source=looks.tail_sides.source,
    )
