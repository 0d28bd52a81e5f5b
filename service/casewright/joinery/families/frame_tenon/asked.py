"""A frame's tenon as it is asked for, what it is held to, and the rules that are its own."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import back_shoulder, mortise_depth, tenon_width, usual_length
from casewright.measure.making import quickly_made
from casewright.measure.rounding import near_to, up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameTenonLimits:
    """What a frame's tenon is held to, and its habits. Lengths are in inches.

    Attributes:
        shoulder_least: a narrower shoulder, before or behind the tenon, stops the joint
        part: a tenon is the rail's thickness divided by about this
        thin_part: a tenon thinner than the rail divided by this is cautioned
        thick_part: and so is one thicker than the rail divided by this
        left_least: the stile keeps at least so much behind the mortise
        clearance: a mortise is so much deeper than its tenon is long
        length_part: a tenon reaches this part of the stile's width into it
        length_step: its length is a multiple of this, rounded down
        haunch_part: a haunch is the rail's width divided by this
        haunch_step: and a multiple of this
        groove_depth: how deep a groove is where nothing is said
        end_least: less wood from the mortise to the end of the stile is cautioned
        reach_least: a tenon that reaches in less stops the joint
        width_most: a wider tenon is cautioned
        slack_step: the gap of a rear joint is a multiple of this, rounded up
    """

    shoulder_least: Sourced
    part: Sourced
    thin_part: Sourced
    thick_part: Sourced
    left_least: Sourced
    clearance: Sourced
    length_part: Sourced
    length_step: Sourced
    haunch_part: Sourced
    haunch_step: Sourced
    groove_depth: Sourced
    end_least: Sourced
    reach_least: Sourced
    width_most: Sourced
    slack_step: Sourced


LIMITS = FrameTenonLimits(**sourced("frame_tenon_limits"))
"""The limits of a shop that has set none of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelGroove:
    """The groove for a panel, in the inner edges of rail and stile; it runs out at the ends of both.

    Attributes:
        width: how wide it is [in]
        depth: how deep it is [in]
    """

    width: Inches
    depth: Inches

    def __post_init__(self) -> None:
        refuse_unless_above_zero(groove_width=self.width, groove_depth=self.depth)


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class FrameTenon:
    """A frame's tenon as it is asked for.

    The groove lies around the middle of the tenon's thickness, so that one setting serves both.

    Attributes:
        thickness: thickness of the rail and of the stile [in]
        rail: width of the rail [in]
        stile: width of the stile [in]
        tenon: thickness of the tenon [in]
        face: the shoulder before the tenon [in]
        length: length of the tenon [in]
        groove: the groove for a panel; None for none
        haunch: how far the tenon is set down from the rail's outer edge [in]
        beyond: how far the stile runs on past that edge [in]
        slack: gap left at the shoulder; 0 for a joint that is glued tight [in]
        shrinkage: how much the case loses in depth; None where this is no rear joint of a web frame [in]
        overall: the frame from outside to outside of its stiles; 0 when it is not known [in]
        other_stile: width of the stile at the rail's other end; 0 for as wide as this one [in]
        rack: the shop's chisels
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    thickness: Inches
    rail: Inches
    stile: Inches
    tenon: Inches
    face: Inches
    length: Inches
    groove: PanelGroove | None = None
    haunch: Inches = 0.0
    beyond: Inches = 0.0
    slack: Inches = 0.0
    shrinkage: Inches | None = None
    overall: Inches = 0.0
    other_stile: Inches = 0.0
    rack: Rack = RACK
    limits: FrameTenonLimits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(
            thickness=self.thickness,
            rail=self.rail,
            stile=self.stile,
            tenon=self.tenon,
            length=self.length,
        )
        refuse_below_zero(
            haunch=self.haunch,
            beyond=self.beyond,
            slack=self.slack,
            shrinkage=self.shrinkage or 0.0,
            overall=self.overall,
            other_stile=self.other_stile,
        )
        self._refuse_no_shoulder()
        self._refuse_groove()
        self._refuse_no_width()
        self._refuse_length()
        both = self.stile + (self.other_stile or self.stile)
        if 0 < self.overall <= both + TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "A frame {} across has no room between stiles of {} together; make it more than {:bare}.",
                    self.overall,
                    both,
                    both,
                )
            )

    def _refuse_no_shoulder(self) -> None:
        if self.face > TOLERANCE and self.back > TOLERANCE:
            return
        middle = usual_tenon(self.thickness, self.rack, self.limits)
        raise CannotBeLaidOut(
            say(
                "A tenon of {} at {} from the face leaves no two shoulders on a rail of {}; a tenon of "
                "{} at {} from the face would.",
                self.tenon,
                self.face,
                self.thickness,
                middle,
                (self.thickness - middle) / 2,
            )
        )

    def _refuse_groove(self) -> None:
        if not self.groove:
            return
        low, high = self.groove_span
        if low <= TOLERANCE or high >= self.thickness - TOLERANCE:
            most = self.tenon + 2 * min(self.face, self.back)
            raise CannotBeLaidOut(
                say(
                    "A groove {} wide around the tenon breaks out of the face; make it less than {} wide.",
                    self.groove.width,
                    most,
                )
            )
        deepest = min(self.rail, self.stile)
        if self.groove.depth >= deepest - TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "A groove {} deep goes through wood {} wide; {} is usual.",
                    self.groove.depth,
                    deepest,
                    min(self.limits.groove_depth.value, deepest / 3),
                )
            )

    def _refuse_no_width(self) -> None:
        if self.width > TOLERANCE:
            return
        room = self.rail - self.groove_depth
        raise CannotBeLaidOut(
            say(
                "A haunch of {} leaves no tenon on a rail of {}; make it {:down} or less.",
                self.haunch,
                self.rail,
                room - min(self.tenon, room / 2),
            )
        )

    def _refuse_length(self) -> None:
        if self.length < self.groove_depth - TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "A tenon {} long does not reach the floor of a groove {} deep; make it {:up} or longer.",
                    self.length,
                    self.groove_depth,
                    self.groove_depth,
                )
            )
        if self.depth >= self.stile - TOLERANCE:
            raise CannotBeLaidOut(self._what_fits_the_stile())
        if self.slack >= self.length - TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "With a gap of {} a tenon {} long stays outside its mortise; make it {:up} or longer.",
                    self.slack,
                    self.length,
                    up_to(self.slack + self.limits.reach_least.value, self.limits.length_step.value),
                )
            )

    def _what_fits_the_stile(self) -> Words:
        limits = self.limits
        said = say("A mortise {} deep goes through a stile of {}; make the", self.depth, self.stile)
        length = usual_frame_length(self.stile, self.groove_depth, limits)
        if length + limits.clearance.value < self.stile - TOLERANCE:
            return say("{} tenon {:down} long.", said, length)
        return say("{} stile {:up} or wider.", said, self.depth + limits.left_least.value)

    @property
    def back(self) -> Inches:
        """The shoulder behind the tenon [in]."""
        return back_shoulder(self.thickness, self.face, self.tenon)

    @property
    def groove_depth(self) -> Inches:
        """How deep the groove is; 0 for none [in]."""
        return self.groove.depth if self.groove else 0.0

    @property
    def groove_span(self) -> tuple[Inches, Inches]:
        """From where to where the groove lies, from the face; nowhere when there is none [in]."""
        middle = self.face + self.tenon / 2
        half = self.groove.width / 2 if self.groove else 0.0
        return middle - half, middle + half

    @property
    def width(self) -> Inches:
        """Width of the tenon [in]."""
        return tenon_width(self.rail, self.groove_depth, self.haunch)

    @property
    def is_stub(self) -> bool:
        """Whether the groove itself is the mortise."""
        return (
            self.groove is not None
            and self.length <= self.groove.depth + TOLERANCE
            and self.tenon <= self.groove.width + TOLERANCE
        )

    @property
    def depth(self) -> Inches:
        """Depth of the mortise from the stile's edge [in]."""
        if self.is_stub:
            return self.groove_depth
        return mortise_depth(self.length, self.limits.clearance.value)


def usual_tenon(thickness: Inches, rack: Rack = RACK, limits: FrameTenonLimits = LIMITS) -> Inches:
    """The thickness of a tenon: the chisel nearest to a third of the rail that leaves both shoulders.

    Rule: the chisel nearest to thickness / part, of those up to thickness - 2 * shoulder_least

    Args:
        thickness: thickness of the rail [in]
        rack: the shop's chisels
        limits: what the joint is held to

    Returns:
        The thickness; a third of the rail when no such chisel is on the rack [in]

    Source: common practice.
    """
    third = thickness / limits.part.value
    most = thickness - 2 * limits.shoulder_least.value
    fitting = [chisel for chisel in rack.chisels if chisel <= most + TOLERANCE]
    return min(fitting, key=lambda chisel: abs(chisel - third), default=third)


def usual_frame_length(
    stile: Inches, groove_depth: Inches = 0.0, limits: FrameTenonLimits = LIMITS
) -> Inches:
    """The length of a frame's tenon: two thirds of the stile, as far as the wood behind the mortise allows.

    Rule: the lesser of length_part * stile and stile - clearance - left_least, down to length_step, and at
    least the groove's depth

    Args:
        stile: width of the stile [in]
        groove_depth: depth of the groove; 0 for none [in]
        limits: what the joint is held to

    Returns:
        The length; half of what is left beside the clearance when the stile is too narrow for any that passes
        [in]

    Source: common practice.
    """
    clearance = limits.clearance.value
    most = stile - clearance - limits.left_least.value
    if most <= 0:
        most = max(stile - clearance, stile / 2) / 2
    part, step = limits.length_part.value, limits.length_step.value
    return max(usual_length(stile, part, step, most), groove_depth)


def usual_slack(shrinkage: Inches, limits: FrameTenonLimits = LIMITS) -> Inches:
    """The gap at the rear shoulder of a web frame: what the case loses in depth, up to a 32nd.

    Rule: shrinkage up to a multiple of slack_step

    Args:
        shrinkage: how much shallower the case is when it is driest [in]
        limits: what the joint is held to

    Returns:
        The gap [in]

    Source: common practice: a frame glued tight would be wider than the dry case and split its sides.
    """
    return up_to(shrinkage, limits.slack_step.value)


def usual_frame_haunch(rail: Inches, groove_depth: Inches, limits: FrameTenonLimits = LIMITS) -> Inches:
    """The haunch of a frame: a third of the rail.

    Rule: rail / haunch_part to the nearest haunch_step, at most half of rail - groove_depth

    Args:
        rail: width of the rail [in]
        groove_depth: depth of the groove; 0 for none [in]
        limits: what the joint is held to

    Returns:
        The width of the haunch [in]

    Source: common practice.
    """
    step = limits.haunch_step.value
    return max(0.0, min(near_to(rail / limits.haunch_part.value, step), (rail - groove_depth) / 2))
