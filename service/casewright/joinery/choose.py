"""Choosing how many tails, and how wide the pins: the layouts that pass, ranked by their looks.

Looks are a matter of taste, so every weight is data and may be set. A score of 100 is a tail three
thicknesses of the side wide, spaced like the piece's other drawers.
"""

import math
from dataclasses import dataclass
from functools import lru_cache
from statistics import median

from casewright.joinery.groove import Groove
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE, divider_setting, flare, most_tails, tail_width
from casewright.measure.making import maker, quickly_made
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Looks:
    """What makes a layout look well, and how much each departure from it costs. Lengths are in inches.

    Attributes:
        tail_sides: how many thicknesses of the side a tail should be wide
        width_weight: points lost when a tail is twice, or half, as wide as that
        family_weight: points lost for a spacing twice that of the family, over what is free
        family_free: the part by which the spacing may differ from the family's at no cost
        wide_tail: a wider tail loses points
        wide_points: how many it loses
        tail_pins: a tail should be at least so many pins wide
        slim_points: points lost when it is not
        single_tail_height: a higher board is not held by one tail
    """

    tail_sides: Sourced
    width_weight: Sourced
    family_weight: Sourced
    family_free: Sourced
    wide_tail: Sourced
    wide_points: Sourced
    tail_pins: Sourced
    slim_points: Sourced
    single_tail_height: Sourced

    def __hash__(self) -> int:
        """By one of the numbers: each ranking is kept under the taste by which it was made."""
        return hash(self.tail_sides.value)


LOOKS = Looks(**sourced("looks"))
"""The taste of a shop that has set none of its own."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One layout that passes, with its score.

    Attributes:
        count: number of tails
        pin: a pin at the end of the tails [in]
        half_pin: a half pin at the end of the tails [in]
        pitch: the setting of the dividers [in]
        tail_width: a tail at the end of the board [in]
        neck: a tail at the baseline [in]
        score: 100 less what was taken off
        off_for_width: points off, because a tail is wider or narrower than it should be
        off_for_family: points off, because the spacing differs from the piece's other drawers
        off_for_wide: points off for very wide tails
        off_for_slim: points off for tails that are little wider than the pins
    """

    count: Count
    pin: Inches
    half_pin: Inches
    pitch: Inches
    tail_width: Inches
    neck: Inches
    score: Number
    off_for_width: Number
    off_for_family: Number
    off_for_wide: Number
    off_for_slim: Number

    @property
    def reasons(self) -> tuple[Words, ...]:
        """Why it has its score: one sentence for each reason that took points off."""
        said: tuple[tuple[Number, Words], ...] = (
            (self.off_for_width, say("a tail is {} wide", self.tail_width)),
            (self.off_for_family, say("its spacing of {} differs from the other drawers'", self.pitch)),
            (self.off_for_wide, say("tails of {} open in dry rooms", self.tail_width)),
            (self.off_for_slim, f"a tail is only {self.tail_width / self.pin:.1f} pins wide"),
        )
        return tuple(say("{:.1f} off: {}.", points, why) for points, why in said if points >= 0.05)


new_choice = maker(Choice)
"""Makes a choice as `Choice` does, and sooner: a ranking has dozens."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """One layout that does not pass.

    Attributes:
        count: number of tails
        pin: a pin at the end of the tails [in]
        why: the first reason against it, as a sentence
    """

    count: Count
    pin: Inches
    why: Words


def points_for_width(tail_width: Inches, side: Inches, looks: Looks = LOOKS) -> Number:
    """The points that a tail loses for being wider or narrower than looks well.

    Rule: width_weight * abs(log2(tail_width / (tail_sides * side)))

    Args:
        tail_width: a tail at the end of the board [in]
        side: thickness of the tail board [in]
        looks: what looks well, and the weights

    Returns:
        The points to take off [dimensionless]

    Source: common practice; the weight is from memory.
    """
    return looks.width_weight.value * abs(math.log2(tail_width / (looks.tail_sides.value * side)))


def points_for_family(pitch: Inches, family_pitch: Inches | None, looks: Looks = LOOKS) -> Number:
    """The points that a layout loses for a spacing unlike that of the piece's other drawers.

    Rule: family_weight * max(0, abs(pitch / family_pitch - 1) - family_free); 0 when there is no family

    Args:
        pitch: from one tail to the next [in]
        family_pitch: the spacing of the piece's drawers; None when there are no others [in]
        looks: what looks well, and the weights

    Returns:
        The points to take off [dimensionless]

    Source: common practice; the weight is from memory.
    """
    if family_pitch is None:
        return 0.0
    return looks.family_weight.value * max(0.0, abs(pitch / family_pitch - 1) - looks.family_free.value)


def family_pitch(best_pitches: tuple[Inches, ...]) -> Inches:
    """The spacing that the drawers of one piece should share, so that they look cut by one hand.

    Rule: median of best_pitches

    Args:
        best_pitches: the spacing of each row's own best layout [in]

    Returns:
        The middle one; between the two middle ones when their number is even [in]

    Raises:
        ValueError: there are no drawers.

    Source: common practice.
    """
    if not best_pitches:
        raise ValueError("A piece without a dovetailed drawer has no spacing to share.")
    return median(best_pitches)


def rank(
    height: Inches,
    side: Inches,
    tail_length: Inches,
    half_pin: Inches,
    pin: Inches,
    slope: Number,
    kerf: Inches,
    groove: Groove | None = None,
    family_pitch: Inches | None = None,
    pins: tuple[Inches, ...] = (),
    looks: Looks = LOOKS,
    limits: Limits = LIMITS,
) -> tuple[Choice, ...]:
    """Every layout of a board's end that passes, the best looking first.

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
        pins: other widths of the pin to be tried as well [in]
        looks: what looks well, and the weights
        limits: what a joint is held to

    Returns:
        The layouts, best first; of equals the one with fewer tails first. One whose tails are wide enough to
        open in a dry room comes after those that stay tight. Empty when none passes.

    Source: common practice; the weights are from memory.
    """
    sizes = (float(height), float(side), float(tail_length), float(half_pin), float(slope), float(kerf))
    tried = tuple(dict.fromkeys(map(float, (pin, *pins)))) if pins else (float(pin),)
    family = None if family_pitch is None else float(family_pitch)
    return _ranked(sizes, tried, groove, family, looks, limits)


@lru_cache(maxsize=4096)
def _ranked(
    sizes: tuple[float, float, float, float, float, float],
    pins: tuple[Inches, ...],
    groove: Groove | None,
    family: Inches | None,
    looks: Looks,
    limits: Limits,
) -> tuple[Choice, ...]:
    """The ranking, kept: rows of one height ask for the same, and an edit leaves most rows as they were."""
    alone = _alone(sizes, pins, groove, looks, limits)
    scored = alone if family is None else [_within(family, choice, looks) for choice in alone]
    widest = widest_tail(sizes[1], limits) + TOLERANCE
    return tuple(sorted(scored, key=lambda choice: (choice.tail_width > widest, -choice.score, choice.count)))


@lru_cache(maxsize=4096)
def _alone(
    sizes: tuple[float, float, float, float, float, float],
    pins: tuple[Inches, ...],
    groove: Groove | None,
    looks: Looks,
    limits: Limits,
) -> tuple[Choice, ...]:
    """What passes, scored without a family: a row is ranked so first, to find the spacing that all share."""
    height, side, tail_length, half_pin, slope, kerf = sizes
    choices = []
    narrowing = flare(tail_length, slope)
    least = max(side, limits.neck_least.value)
    for pin in pins:
        if pin < _least_pin(kerf, limits) - TOLERANCE:
            continue
        for count in range(1, most_tails(height, half_pin, pin, narrowing, least) + 1):
            wide = tail_width(height, half_pin, pin, count)
            if _hides(groove, half_pin, wide, narrowing) and _holds(count, height, looks):
                pitch = divider_setting(height, half_pin, pin, count)
                choices.append(_scored(count, pin, half_pin, pitch, wide, narrowing, side, looks))
    return tuple(choices)


def refusals(
    height: Inches,
    side: Inches,
    tail_length: Inches,
    half_pin: Inches,
    pin: Inches,
    slope: Number,
    kerf: Inches,
    groove: Groove | None = None,
    looks: Looks = LOOKS,
    limits: Limits = LIMITS,
) -> tuple[Refusal, ...]:
    """Why each number of tails was refused, up to the first that is too many.

    Args:
        height: height of the tail board's end [in]
        side: thickness of the tail board [in]
        tail_length: from the end of the board to the baseline [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        slope: how far along for one across, 8 for 1:8 [dimensionless]
        kerf: how wide the dovetail saw cuts [in]
        groove: the groove that the lowest tail must hide; None when there is none
        looks: what looks well
        limits: what a joint is held to

    Returns:
        One refusal for each number of tails that does not pass, from one tail up.

    Source: common practice.
    """
    narrowing = flare(tail_length, slope)
    least = max(side, limits.neck_least.value)
    most = most_tails(height, half_pin, pin, narrowing, least)
    found = []
    for count in range(1, most + 2):
        why: Words = ""
        wide = tail_width(height, half_pin, pin, count)
        if pin < _least_pin(kerf, limits) - TOLERANCE:
            why = say("A pin of {} is too narrow; make it {:bare}.", pin, _least_pin(kerf, limits))
        elif count > most:
            left = wide - 2 * narrowing
            why = say("A tail would be {} at the baseline; it needs {:bare}.", left, least)
            if left <= TOLERANCE:
                why = say("Nothing would be left of a tail at the baseline; it needs {}.", least)
        elif not _holds(count, height, looks):
            why = say("One tail does not hold a board {} high.", height)
        elif groove and not _hides(groove, half_pin, wide, narrowing):
            lower, upper = half_pin + narrowing, half_pin + wide - narrowing
            why = say(
                "The lowest tail covers {:bare} to {} at the inside face, and the "
                "groove lies from {:bare} to {:bare}.",
                lower,
                upper,
                groove.height,
                groove.top,
            )
        if why:
            found.append(Refusal(count=count, pin=pin, why=why))
    return tuple(found)


def widest_tail(side: Inches, limits: Limits = LIMITS) -> Inches:
    """How wide a tail may be that is to stay tight in a dry room.

    Rule: the lesser of tail_widest and tail_widest_sides * side

    Args:
        side: thickness of the tail board [in]
        limits: what a joint is held to

    Returns:
        The width [in]

    Source: common practice.
    """
    return min(limits.tail_widest.value, limits.tail_widest_sides.value * side)


def _least_pin(kerf: Inches, limits: Limits) -> Inches:
    return max(limits.pin_least.value, kerf + limits.pin_over_kerf.value)


def _holds(count: Count, height: Inches, looks: Looks) -> bool:
    return count > 1 or height <= looks.single_tail_height.value + TOLERANCE


def _hides(groove: Groove | None, half_pin: Inches, wide: Inches, narrowing: Inches) -> bool:
    return groove is None or (
        groove.height >= half_pin + narrowing - TOLERANCE
        and groove.top <= half_pin + wide - narrowing + TOLERANCE
    )


def _scored(
    count: Count,
    pin: Inches,
    half_pin: Inches,
    pitch: Inches,
    wide: Inches,
    narrowing: Inches,
    side: Inches,
    looks: Looks,
) -> Choice:
    off_for_width = points_for_width(wide, side, looks)
    off_for_wide = looks.wide_points.value if wide > looks.wide_tail.value + TOLERANCE else 0.0
    off_for_slim = looks.slim_points.value if wide / pin < looks.tail_pins.value - TOLERANCE else 0.0
    return new_choice(
        count=count,
        pin=pin,
        half_pin=half_pin,
        pitch=pitch,
        tail_width=wide,
        neck=wide - 2 * narrowing,
        score=100 - off_for_width - off_for_wide - off_for_slim,
        off_for_width=off_for_width,
        off_for_family=0.0,
        off_for_wide=off_for_wide,
        off_for_slim=off_for_slim,
    )


def _within(family: Inches, alone: Choice, looks: Looks) -> Choice:
    """The same layout, its spacing held against that of the family."""
    off_for_family = points_for_family(alone.pitch, family, looks)
    if not off_for_family:
        return alone
    return new_choice(
        count=alone.count,
        pin=alone.pin,
        half_pin=alone.half_pin,
        pitch=alone.pitch,
        tail_width=alone.tail_width,
        neck=alone.neck,
        score=100 - alone.off_for_width - off_for_family - alone.off_for_wide - alone.off_for_slim,
        off_for_width=alone.off_for_width,
        off_for_family=off_for_family,
        off_for_wide=alone.off_for_wide,
        off_for_slim=alone.off_for_slim,
    )
