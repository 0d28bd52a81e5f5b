"""Crossing strips as they are asked for, their limits, and how deep they are notched."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.measure.rounding import floor64
from casewright.measure.saying import say
from casewright.measure.units import Inches, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossLapLimits:
    """What crossing strips are held to, and the habits. Lengths are in inches.

    Attributes:
        part: a strip is notched for its depth divided by this
        left_part: less left than the depth divided by this is cautioned
        end_least: less wood beyond a notch is cautioned
        play: how much wider a notch is than the strip in it where nothing else is said
        play_most: more play is cautioned
    """

    part: Sourced
    left_part: Sourced
    end_least: Sourced
    play: Sourced
    play_most: Sourced


LIMITS = CrossLapLimits(**sourced("cross_lap_limits"))
"""The limits of a shop that has set none of its own."""


def half_notch(depth: Inches, part: Number) -> Inches:
    """How deep the first of two crossing strips is notched.

    Rule: depth / part, down to 1/64

    Args:
        depth: depth of the strips, front to back [in]
        part: the depth is divided by this [dimensionless]

    Returns:
        The depth of its notches [in]

    Source: common practice.
    """
    return floor64(depth / part)


def other_notch(depth: Inches, notch: Inches) -> Inches:
    """How deep the other strip is notched, so that the edges of both are flush.

    Rule: depth - notch

    Args:
        depth: depth of the strips, front to back [in]
        notch: depth of the notches in the first [in]

    Returns:
        The depth of its notches [in]

    Source: geometry of the joint.
    """
    return depth - notch


def notch_width(crossing: Inches, play: Inches) -> Inches:
    """How wide a notch is.

    Rule: crossing + play

    Args:
        crossing: thickness of the strip that crosses, as it was measured [in]
        play: room beside it [in]

    Returns:
        The width between the walls [in]

    Source: common practice.
    """
    return crossing + play


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossLap:
    """Crossing strips as they are asked for.

    Attributes:
        depth: depth of both, front to back [in]
        level: thickness of the level strips as they were measured [in]
        upright: thickness of the upright strips as they were measured [in]
        notch: how deep the level strips are notched, from the rear edge [in]
        level_marks: left wall of each notch, from the left end of a level strip [in]
        upright_marks: lower wall of each notch, from the lower end of an upright strip [in]
        play: how much wider a notch is than the strip in it [in]
        rack: the shop's cutters
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    depth: Inches
    level: Inches
    upright: Inches
    notch: Inches
    level_marks: tuple[Inches, ...]
    upright_marks: tuple[Inches, ...]
    play: Inches = LIMITS.play.value
    rack: Rack = RACK
    limits: CrossLapLimits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(depth=self.depth, level=self.level, upright=self.upright, notch=self.notch)
        refuse_below_zero(play=self.play)
        if self.notch >= self.depth:
            raise CannotBeLaidOut(
                say(
                    "A notch {} deep cuts a strip of {:bare} in two; make it {:down}.",
                    self.notch,
                    self.depth,
                    self.depth / self.limits.part.value,
                )
            )
