"""The sliding dovetail of a divider into a case side.

The divider's end is one tail as long as the joint, and the side has its socket. A long joint narrows towards
the front, so that it slides freely until it is nearly home.
"""

from dataclasses import dataclass
from itertools import accumulate

from casewright.joinery.checks import slope_limit
from casewright.joinery.chisels import Rack
from casewright.joinery.defaults import USUAL, Usual
from casewright.joinery.families.sliding.checks import socket_depth, wood_behind_socket
from casewright.joinery.families.sliding.shape import sliding_shape
from casewright.joinery.joint import (
    Choosing,
    Chosen,
    JointKind,
    Measure,
    Measured,
    Setting,
    Solved,
    Values,
    fields,
)
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.solid import Shape
from casewright.joinery.spacing import TOLERANCE, bevel_degrees
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import down_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Degrees, Inches, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Sliding:
    """A sliding dovetail as it is asked for.

    Attributes:
        divider: thickness of the divider [in]
        case_side: thickness of the case side [in]
        depth: how deep the socket is, which is how far the tail reaches into the side [in]
        shoulder: what is cut off each face of the divider at the tail's tip [in]
        slope: how far along for one across, 6 for 1:6
        length: how long the joint is from front to back; 0 when it is not known [in]
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    divider: Inches
    case_side: Inches
    depth: Inches
    shoulder: Inches = USUAL.sliding_shoulder.value
    slope: Number = USUAL.sliding_slope.value
    length: Inches = 0.0
    limits: Limits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(divider=self.divider, case_side=self.case_side, depth=self.depth)
        refuse_below_zero(shoulder=self.shoulder, length=self.length)
        if not self.slope > 0:
            raise ValueError(f"A slope of 1:{self.slope:g} is no slope; 1:6 is usual for a sliding dovetail.")
        if self.depth >= self.case_side:
            raise ValueError(
                say(
                    "A socket {} deep goes through the case side of {:bare}; make it {:bare}.",
                    self.depth,
                    self.case_side,
                    usual_socket_depth(self.case_side),
                )
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class SlidingJoint:
    """A sliding dovetail, worked out.

    Attributes:
        given: what was asked for
        tip: the tail at its widest, at the end of the divider [in]
        neck: the tail at its shoulders [in]
        socket_mouth: the socket at the face of the case side, which is the neck [in]
        socket_floor: the socket at its floor, which is the tip [in]
        wood_left: what is left of the case side behind the socket [in]
        taper: how much narrower the joint is at the end that goes in last; 0 for a short one [in]
        bevel_degrees: angle of the tail's cheeks from square to the end [degree]
        findings: every check that was carried out, passes too
    """

    given: Sliding
    tip: Inches
    neck: Inches
    socket_mouth: Inches
    socket_floor: Inches
    wood_left: Inches
    taper: Inches
    bevel_degrees: Degrees
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the socket first, then the tail."""
        given = self.given
        settings = (
            Setting(name="socket_depth", label="Socket depth", value=given.depth, note="into the case side"),
            Setting(
                name="socket_mouth",
                label="Socket mouth",
                value=self.socket_mouth,
                note="at the face of the side",
            ),
            Setting(name="socket_floor", label="Socket floor", value=self.socket_floor, note="at the bottom"),
            Setting(name="slope", label="Slope", value=given.slope, measure=Measure.SLOPE),
            Setting(name="bevel", label="Bevel", value=self.bevel_degrees, measure=Measure.DEGREES),
            Setting(
                name="shoulder", label="Shoulder", value=given.shoulder, note="off each face of the divider"
            ),
            Setting(name="tip", label="Tail at its tip", value=self.tip, note="at the divider's end"),
            Setting(name="neck", label="Tail at its neck", value=self.neck, note="at the shoulders"),
            Setting(
                name="wood_left", label="Left of the side", value=self.wood_left, note="behind the socket"
            ),
        )
        if not self.taper:
            return settings
        taper = Setting(name="taper", label="Taper", value=self.taper, note="narrower towards the front")
        return (*settings, taper)

    @property
    def shape(self) -> Shape:
        """The joint in space; its taper, a 64th or two, is left out."""
        given = self.given
        return sliding_shape(given.divider, given.case_side, given.depth, self.tip, self.neck, given.length)


def tail_tip(divider: Inches, shoulder: Inches) -> Inches:
    """The tail at its widest, at the end of the divider; the socket's floor is as wide.

    Rule: divider - 2 * shoulder

    Args:
        divider: thickness of the divider [in]
        shoulder: what is cut off each face at the tip [in]

    Returns:
        The width of the tip [in]

    Source: geometry of the joint.
    """
    return divider - 2 * shoulder


def tail_neck(tip: Inches, depth: Inches, slope: Number) -> Inches:
    """The tail at its shoulders, where it is narrowest; the socket's mouth is as wide.

    Rule: tip - 2 * depth / slope

    Args:
        tip: the tail at its widest [in]
        depth: how far the tail reaches into the case side [in]
        slope: how far along for one across, 6 for 1:6 [dimensionless]

    Returns:
        The width of the neck [in]

    Source: geometry of the joint.
    """
    return tip - 2 * depth / slope


def wood_left(case_side: Inches, depth: Inches) -> Inches:
    """What is left of the case side behind the socket.

    Rule: case_side - depth

    Args:
        case_side: thickness of the case side [in]
        depth: depth of the socket [in]

    Returns:
        The wood that is left [in]

    Source: geometry of the joint.
    """
    return case_side - depth


def taper(length: Inches, usual: Usual = USUAL) -> Inches:
    """How much a long sliding dovetail narrows towards the front: 1/64 in 6 in.

    Rule: taper_rise * length / taper_run; 0 below taper_run

    Args:
        length: length of the joint from front to back [in]
        usual: the shop's habits

    Returns:
        The narrowing over the whole length; a joint shorter than 6 in is cut parallel [in]

    Source: common practice.
    """
    run = usual.taper_run.value
    return usual.taper_rise.value * length / run if length >= run - TOLERANCE else 0.0


def usual_socket_depth(case_side: Inches, usual: Usual = USUAL, limits: Limits = LIMITS) -> Inches:
    """The depth of a socket: a third of the case side, down to a 16th, as far as the wood behind it allows.

    Rule: the lesser of case_side / sliding_depth_part and case_side - sliding_left_least, down to a multiple
    of sliding_depth_step

    Args:
        case_side: thickness of the case side [in]
        usual: the shop's habits
        limits: what a joint is held to

    Returns:
        The depth; a third of the side when it is too thin for any that passes [in]

    Source: common practice.
    """
    third = case_side / limits.sliding_depth_part.value
    most = min(third, case_side - limits.sliding_left_least.value)
    deep = down_to(most, usual.sliding_depth_step.value)
    return deep if deep > 0 else third


def divider_top_edges(
    case_bottom: Inches, openings_from_bottom: tuple[Inches, ...], divider: Inches
) -> tuple[Inches, ...]:
    """Where the top edge of each divider stands, for a story stick that starts at the case bottom.

    Rule: case_bottom + openings below + divider * dividers up to and with this one

    Args:
        case_bottom: thickness of the case bottom [in]
        openings_from_bottom: height of each opening, the lowest first [in]
        divider: thickness of a divider [in]

    Returns:
        The top edge of every divider, the lowest first: one fewer than there are openings, each measured
        from the underside of the case bottom and unrounded [in]

    Source: geometry of the case.
    """
    return tuple(
        case_bottom + below + divider * number
        for number, below in enumerate(accumulate(openings_from_bottom[:-1]), start=1)
    )


def sliding(joint: Sliding, ledger: Ledger = UNKEPT) -> SlidingJoint:
    """A sliding dovetail, worked out: tail, socket, taper and checks.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Raises:
        CannotBeLaidOut: the shoulders and the slope leave the tail no neck.

    Source: geometry of the joint.
    """
    tip = ledger.take("tip", tail_tip, divider=joint.divider, shoulder=joint.shoulder)
    neck = ledger.take("neck", tail_neck, tip=tip, depth=joint.depth, slope=joint.slope)
    if neck <= TOLERANCE:
        raise CannotBeLaidOut(_what_would_work(joint, tip))
    left = ledger.take("wood_left", wood_left, case_side=joint.case_side, depth=joint.depth)
    limits, mark = joint.limits, joint.mark
    return SlidingJoint(
        given=joint,
        tip=tip,
        neck=neck,
        socket_mouth=neck,
        socket_floor=tip,
        wood_left=left,
        taper=ledger.take("taper", taper, length=joint.length),
        bevel_degrees=ledger.take("bevel", bevel_degrees, slope=joint.slope),
        findings=(
            socket_depth(joint.depth, joint.case_side, limits, mark),
            wood_behind_socket(left, joint.depth, limits, mark),
            slope_limit(joint.slope, limits, mark),
        ),
    )


def _what_would_work(joint: Sliding, tip: Inches) -> Words:
    said = say("With shoulders of {} a divider of {} has no", joint.shoulder, joint.divider)
    if tip <= TOLERANCE:
        return say("{} tail left; make each shoulder less than {:bare}.", said, joint.divider / 2)
    deep = tip * joint.slope / 2
    return say("{} neck left at 1:{:g}; make the socket less than {:bare} deep.", said, joint.slope, deep)


def _chosen_depth(case_side: Inches) -> Chosen:
    return Chosen(
        name="depth",
        value=usual_socket_depth(case_side),
        measure=Measure.LENGTH,
        why=say("A third of the {} case side, down to {:bare}.", case_side, USUAL.sliding_depth_step.value),
        source=LIMITS.sliding_depth_part.source,
    )


def _chosen_shoulder() -> Chosen:
    habit = USUAL.sliding_shoulder
    why = say("{} off each face is usual.", habit.value)
    return Chosen(name="shoulder", value=habit.value, measure=Measure.LENGTH, why=why, source=habit.source)


def _chosen_slope() -> Chosen:
    habit = USUAL.sliding_slope
    why = f"1:{habit.value:g} is usual for a sliding dovetail."
    return Chosen(name="slope", value=habit.value, measure=Measure.SLOPE, why=why, source=habit.source)


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A sliding dovetail from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    case_side = take.number("case_side")
    joint = Sliding(
        divider=take.number("divider"),
        case_side=case_side,
        depth=take.or_choose("depth", _chosen_depth, case_side),
        shoulder=take.or_choose("shoulder", _chosen_shoulder),
        slope=take.or_choose("slope", _chosen_slope),
        length=take.optional("length") or 0.0,
    )
    return Solved(joint=sliding(joint, ledger), chosen=take.chosen)


FIELDS = fields("sliding")

KIND = JointKind(
    name="sliding",
    title="Sliding dovetail of a divider into a case side",
    fields=FIELDS,
    solve=_solve,
)
