"""The housing as it is asked for, its limits, and what is chosen for its depth."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.making import quickly_made
from casewright.measure.rounding import down_to
from casewright.measure.saying import say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class HousingLimits:
    """What a housing is held to, and its habits. Lengths are in inches.

    Attributes:
        depth_part: a housing deeper than the case side divided by this stops the joint
        depth_least: a shallower one is cautioned
        depth_step: what is chosen is a multiple of this
        stop: how far back of the front edge it stops where nothing else is said
        stop_least: a nearer stop is cautioned
        play: how much wider it is than the divider where nothing else is said
        play_least: less play is cautioned
        play_most: more play is cautioned
    """

    depth_part: Sourced
    depth_least: Sourced
    depth_step: Sourced
    stop: Sourced
    stop_least: Sourced
    play: Sourced
    play_least: Sourced
    play_most: Sourced


LIMITS = HousingLimits(**sourced("housing_limits"))
"""The limits of a shop that has set none of its own."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Housing:
    """A housing as it is asked for.

    Attributes:
        divider: thickness of the divider or shelf as it was measured [in]
        case_side: thickness of the case side [in]
        depth: how deep the housing is [in]
        play: how much wider it is than the divider [in]
        stop: how far back of the front edge it stops; 0 where it runs through [in]
        length: depth of the divider from front to back; None when it is not known [in]
        inside_width: between the case sides; None when it is not known [in]
        top_edge: upper face of the divider above the lower end of the case side; None for no place [in]
        rack: the shop's cutters
        limits: what the joint is held to
        mark: code of the joint, for its findings
        into: what the board with the housing is called
        housed: what the board in it is called
    """

    divider: Inches
    case_side: Inches
    depth: Inches
    play: Inches = LIMITS.play.value
    stop: Inches = LIMITS.stop.value
    length: Inches | None = None
    inside_width: Inches | None = None
    top_edge: Inches | None = None
    rack: Rack = RACK
    limits: HousingLimits = LIMITS
    mark: str = ""
    into: str = "case side"
    housed: str = "divider"

    def __post_init__(self) -> None:
        refuse_unless_above_zero(divider=self.divider, case_side=self.case_side, depth=self.depth)
        refuse_below_zero(play=self.play, stop=self.stop)
        given = {"length": self.length, "inside_width": self.inside_width, "top_edge": self.top_edge}
        refuse_unless_above_zero(**{name: size for name, size in given.items() if size is not None})
        if self.depth >= self.case_side:
            raise CannotBeLaidOut(
                say(
                    "A housing {} deep goes through the {} of {:bare}; make it {:bare}.",
                    self.depth,
                    self.into,
                    self.case_side,
                    usual_depth(self.case_side, self.limits),
                )
            )
        if self.length is not None and self.stop >= self.length:
            raise CannotBeLaidOut(
                say(
                    "A housing that stops {} back has nothing left of a divider {} from front to back; "
                    "stop it {:bare} back, or run it through.",
                    self.stop,
                    self.length,
                    min(self.limits.stop.value, self.length / 2),
                )
            )
        if self.top_edge is not None and self.top_edge < self.divider:
            raise CannotBeLaidOut(
                say(
                    "A divider of {} with its upper face at {} runs off the end of the {}; "
                    "put its upper face at {:up} or higher.",
                    self.divider,
                    self.top_edge,
                    self.into,
                    self.divider,
                )
            )

    @property
    def is_stopped(self) -> bool:
        """Whether the housing ends before the front edge."""
        return self.stop > TOLERANCE


def usual_depth(case_side: Inches, limits: HousingLimits = LIMITS) -> Inches:
    """How deep a housing is where nothing else is said: a third of the case side, down to a 16th.

    Rule: case_side / depth_part, down to a multiple of depth_step if there is one

    Args:
        case_side: thickness of the case side [in]
        limits: what the joint is held to

    Returns:
        The depth [in]

    Source: “Cutting housing joints”, The Woodworker; the rounding is common practice.
    """
    third = case_side / limits.depth_part.value
    return down_to(third, limits.depth_step.value) or third
