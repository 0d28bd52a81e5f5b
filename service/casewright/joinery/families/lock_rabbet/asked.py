"""The lock rabbet as it is asked for, its limits, and what is chosen for a size that is left out."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.cutters import widest_cutter
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to
from casewright.measure.saying import say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class LockRabbetLimits:
    """What a lock rabbet is held to, and its habits. Lengths are in inches.

    Attributes:
        end_least: a shorter end of the side before its groove stops the joint
        end_part: so does one shorter than the side divided by this
        reach_part: so does a groove deeper than the side divided by this
        tongue_least: a thinner tongue is cautioned
        lip_least: a thinner lip is cautioned
        size_step: the depth that is chosen is a multiple of this
    """

    end_least: Sourced
    end_part: Sourced
    reach_part: Sourced
    tongue_least: Sourced
    lip_least: Sourced
    size_step: Sourced


LIMITS = LockRabbetLimits(**sourced("lock_rabbet_limits"))
"""The limits of a shop that has set none of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LockRabbet:
    """A lock rabbet as it is asked for.

    Attributes:
        height: height of the boards at the joint [in]
        front: thickness of the front, or of a back that is joined likewise [in]
        side: thickness of the side [in]
        tongue: thickness of the tongue, which is the width of the groove [in]
        reach: length of the tongue, which is the depth of the groove [in]
        from_end: from the end of the side to the near wall of the groove [in]
        lip: what of the front covers the end of the side; 0 for none [in]
        box_width: outside width of the drawer or box; None when it is not known [in]
        drawer_depth: from the face of the front to the rear; None when it is not known [in]
        rack: the shop's cutters
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    height: Inches
    front: Inches
    side: Inches
    tongue: Inches
    reach: Inches
    from_end: Inches
    lip: Inches = 0.0
    box_width: Inches | None = None
    drawer_depth: Inches | None = None
    rack: Rack = RACK
    limits: LockRabbetLimits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(
            height=self.height, front=self.front, side=self.side, tongue=self.tongue, reach=self.reach
        )
        refuse_below_zero(lip=self.lip)
        if not self.from_end > TOLERANCE or self.shoulder < -TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "A front of {} has no room for a lip of {:bare}, a tongue of {:bare} and an end of the "
                    "side before it; make the front {:up} thick, or the tongue thinner.",
                    self.front,
                    self.lip,
                    self.tongue,
                    self.lip + self.tongue + max(self.from_end, shortest_end(self.side, self.limits)),
                )
            )
        if self.reach >= self.side:
            raise CannotBeLaidOut(
                say(
                    "A groove {} deep goes through the side of {:bare}; make it {:bare}.",
                    self.reach,
                    self.side,
                    usual_reach(self.side, self.limits),
                )
            )
        if self.box_width is not None and self.box_width <= 2 * self.side:
            raise CannotBeLaidOut(
                say(
                    "A box {} wide has no room between two sides of {}; make it wider than {}.",
                    self.box_width,
                    self.side,
                    2 * self.side,
                )
            )
        if self.drawer_depth is not None and self.drawer_depth <= self.front:
            raise CannotBeLaidOut(
                say(
                    "A drawer {} deep ends within its front of {}; make it deeper than {:bare}.",
                    self.drawer_depth,
                    self.front,
                    self.front,
                )
            )

    @property
    def has_lip(self) -> bool:
        """Whether the front covers the end of the side."""
        return self.lip > TOLERANCE

    @property
    def shoulder(self) -> Inches:
        """What of the front stands behind the tongue, at the inside face [in]."""
        return self.front - self.lip - self.from_end - self.tongue


def shortest_end(side: Inches, limits: LockRabbetLimits = LIMITS) -> Inches:
    """How long the end of the side is at least before its groove.

    Rule: the greater of end_least and side / end_part

    Args:
        side: thickness of the side [in]
        limits: what the joint is held to

    Returns:
        The least distance from the end to the groove [in]

    Source: common practice.
    """
    return max(limits.end_least.value, side / limits.end_part.value)


def usual_reach(side: Inches, limits: LockRabbetLimits = LIMITS) -> Inches:
    """How deep the groove is where nothing else is said: half the side, down to a 16th.

    Rule: side / reach_part, down to a multiple of size_step if there is one

    Args:
        side: thickness of the side [in]
        limits: what the joint is held to

    Returns:
        The depth of the groove, which is the length of the tongue [in]

    Source: common practice; half in “The Quarter-Quarter-Quarter Drawer System”, This Is Carpentry, 2014,
    too.
    """
    half = side / limits.reach_part.value
    return down_to(half, limits.size_step.value) or half


def usual_tongue(
    side: Inches,
    room: Inches,
    cutters: tuple[Inches, ...] = RACK.cutters,
    limits: LockRabbetLimits = LIMITS,
) -> Inches:
    """How thick the tongue is where nothing else is said: half the side, if its end stays long, by a cutter.

    Rule: the widest cutter up to the lesser of side / 2 and room - shortest end, and at least tongue_least

    Args:
        side: thickness of the side [in]
        room: what of the front is behind its lip [in]
        cutters: widths in the rack, narrowest first [in]
        limits: what the joint is held to

    Returns:
        The thickness of the tongue, which is the width of the groove [in]

    Source: common practice; the end of the side breaks before the tongue does.
    """
    most = min(side / 2, room - shortest_end(side, limits))
    return max(widest_cutter(most, cutters) or 0.0, limits.tongue_least.value)
