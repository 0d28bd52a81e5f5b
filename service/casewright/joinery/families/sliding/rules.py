"""The sizes of a sliding dovetail, each a closed form."""

from itertools import accumulate

from casewright.joinery.defaults import USUAL, Usual
from casewright.joinery.families.sliding.limits import SLIDING, SlidingLimits
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to, floor64
from casewright.measure.units import Inches, Number


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


def deepest_socket(case_side: Inches, limits: Limits = LIMITS) -> Inches:
    """The deepest socket that a case side takes.

    Rule: the lesser of case_side / sliding_depth_part and case_side - sliding_left_least

    Args:
        case_side: thickness of the case side [in]
        limits: what a joint is held to

    Returns:
        The depth; below 0 when the side is too thin for any [in]

    Source: common practice.
    """
    third = case_side / limits.sliding_depth_part.value
    return min(third, case_side - limits.sliding_left_least.value)


def side_for_socket(depth: Inches, limits: Limits = LIMITS) -> Inches:
    """How thick a case side is at least that takes so deep a socket.

    Rule: the greater of depth × sliding_depth_part and depth + sliding_left_least

    Args:
        depth: depth of the socket [in]
        limits: what a joint is held to

    Returns:
        The thickness of the case side [in]

    Source: the deepest socket, solved for the case side.
    """
    return max(depth * limits.sliding_depth_part.value, depth + limits.sliding_left_least.value)


def shoulder_for_neck(divider: Inches, depth: Inches, slope: Number, neck: Inches) -> Inches:
    """The shoulder that leaves a tail so wide at its neck.

    Rule: (divider - neck) / 2 - depth / slope

    Args:
        divider: thickness of the divider [in]
        depth: how far the tail reaches into the case side [in]
        slope: how far along for one across, 6 for 1:6 [dimensionless]
        neck: the tail at its shoulders [in]

    Returns:
        What is cut off each face at the tip; below 0 when the slope alone takes more [in]

    Source: geometry of the joint.
    """
    return (divider - neck) / 2 - depth / slope


def depth_for_neck(divider: Inches, shoulder: Inches, slope: Number, neck: Inches) -> Inches:
    """The depth of the socket that leaves a tail so wide at its neck.

    Rule: (divider - 2 × shoulder - neck) × slope / 2

    Args:
        divider: thickness of the divider [in]
        shoulder: what is cut off each face at the tip [in]
        slope: how far along for one across, 6 for 1:6 [dimensionless]
        neck: the tail at its shoulders [in]

    Returns:
        The depth; below 0 when the shoulders alone take more [in]

    Source: geometry of the joint.
    """
    return (divider - 2 * shoulder - neck) * slope / 2


def neck_wanted(divider: Inches, limits: SlidingLimits = SLIDING) -> Inches:
    """How wide the neck of the tail should be.

    Rule: the greater of divider / neck_part and neck_least

    Args:
        divider: thickness of the divider [in]
        limits: what the joint is held to

    Returns:
        The width [in]

    Source: common practice; the least is from memory.
    """
    return max(divider / limits.neck_part.value, limits.neck_least.value)


def usual_shoulder(
    divider: Inches, depth: Inches, slope: Number, limits: SlidingLimits = SLIDING, usual: Usual = USUAL
) -> Inches:
    """The shoulder of a sliding dovetail: the usual one, or less where a thin divider would lose its neck.

    Rule: sliding_shoulder, or shoulder_for_neck down to 1/64 in where that is less, but no less than
    shoulder_least

    Args:
        divider: thickness of the divider [in]
        depth: how far the tail reaches into the case side [in]
        slope: how far along for one across, 6 for 1:6 [dimensionless]
        limits: what the joint is held to
        usual: the shop's habits

    Returns:
        The shoulder on each face [in]

    Source: common practice.
    """
    room = shoulder_for_neck(divider, depth, slope, neck_wanted(divider, limits))
    least = min(limits.shoulder_least.value, usual.sliding_shoulder.value)
    return max(min(usual.sliding_shoulder.value, floor64(room)), least)


def divider_over_tails(inside: Inches, depth: Inches) -> Inches:
    """The length of the divider over both of its tails.

    Rule: inside + 2 × depth

    Args:
        inside: between the case sides [in]
        depth: depth of the socket in each side [in]

    Returns:
        The length [in]

    Source: geometry of the joint.
    """
    return inside + 2 * depth


def mouth_walls(top_edge: Inches, divider: Inches, neck: Inches) -> tuple[Inches, Inches]:
    """Where the walls of the socket stand at its mouth, the lower and the upper.

    Rule: top_edge - (divider ± neck) / 2

    Args:
        top_edge: upper face of the divider above the lower end of the case side [in]
        divider: thickness of the divider [in]
        neck: the tail at its shoulders, which is the mouth [in]

    Returns:
        Both heights above the lower end of the case side [in]

    Source: geometry of the joint: the tail stands in the middle of the divider.
    """
    return top_edge - (divider + neck) / 2, top_edge - (divider - neck) / 2


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
    deep = down_to(deepest_socket(case_side, limits), usual.sliding_depth_step.value)
    return deep if deep > 0 else case_side / limits.sliding_depth_part.value


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
