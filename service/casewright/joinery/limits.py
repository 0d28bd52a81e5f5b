"""The limits of the joint checks, each with its source, so that a shop can set its own."""

from dataclasses import dataclass

from casewright.joinery.sourced import Sourced, sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What a joint is held to. Lengths are in inches.

    Attributes:
        lap_least: a thinner lap stops the joint
        lap_preferred: a thinner lap is cautioned
        lap_index_caution: a higher lap index is cautioned
        lap_index_stop: a higher lap index stops the joint
        gauge_tolerance: two gauge settings so close are the same
        gauge_group: sides that agree so closely share a setting
        rabbet_least: a shallower registration rabbet is cautioned
        rabbet_greatest_part: the rabbet is at most the side divided by this
        neck_least: a tail is at least so wide at the baseline, and at least as wide as the side is thick
        pin_least: a pin is at least so wide
        pin_over_kerf: a pin is at least the saw's kerf and this
        fret_saw_pin: between tails so close, or closer, the waste is sawn out
        half_pin_least: a narrower half pin is cautioned
        tail_widest: a wider tail is cautioned
        tail_widest_sides: a tail of more thicknesses of the side is cautioned
        front_least: a thinner front is cautioned
        front_over_side: a front is at least so much thicker than the side
        slope_steepest: a slope with a smaller number is cautioned, 5 for 1:5
        slope_least: a slope with a smaller number is refused
        proud_most: what stands proud by more is cautioned
        moisture_apart: front and side differ by at most this, in percentage points
        gravity_apart: a front may be so much lighter than the side, in specific gravity
        below_groove_least: the side keeps at least so much below its groove
        sliding_depth_part: a sliding dovetail's socket is at most the case side divided by this
        sliding_left_least: the case side keeps at least so much behind the socket
    """

    lap_least: Sourced
    lap_preferred: Sourced
    lap_index_caution: Sourced
    lap_index_stop: Sourced
    gauge_tolerance: Sourced
    gauge_group: Sourced
    rabbet_least: Sourced
    rabbet_greatest_part: Sourced
    neck_least: Sourced
    pin_least: Sourced
    pin_over_kerf: Sourced
    fret_saw_pin: Sourced
    half_pin_least: Sourced
    tail_widest: Sourced
    tail_widest_sides: Sourced
    front_least: Sourced
    front_over_side: Sourced
    slope_steepest: Sourced
    slope_least: Sourced
    proud_most: Sourced
    moisture_apart: Sourced
    gravity_apart: Sourced
    below_groove_least: Sourced
    sliding_depth_part: Sourced
    sliding_left_least: Sourced

    def __hash__(self) -> int:
        """By one of the numbers: what was worked out by these limits is kept under them."""
        return hash(self.neck_least.value)


LIMITS = Limits(**sourced("limits"))
"""The limits of a shop that has set none of its own."""
