"""What only a sliding dovetail is held to, and its habits."""

from dataclasses import dataclass

from casewright.joinery.sourced import Sourced, sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class SlidingLimits:
    """What only a sliding dovetail is held to. Lengths are in inches.

    Attributes:
        neck_part: a neck of less than the divider divided by this is cautioned
        neck_stop_part: one of less than the divider divided by this stops the joint
        neck_least: so does a thinner neck
        shoulder_least: a slighter shoulder is cautioned
        depth_least: a shallower socket is cautioned
        stop: where a stopped socket usually ends, back of the front edge
        stop_least: a nearer stop is cautioned
    """

    neck_part: Sourced
    neck_stop_part: Sourced
    neck_least: Sourced
    shoulder_least: Sourced
    depth_least: Sourced
    stop: Sourced
    stop_least: Sourced


SLIDING = SlidingLimits(**sourced("sliding_limits"))
"""The limits of a shop that has set none of its own."""
