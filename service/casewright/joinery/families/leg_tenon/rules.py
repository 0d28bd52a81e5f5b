"""The rules of a leg's tenons: what they are held to, where two meet, and what is usual."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import usual_length
from casewright.measure.rounding import down_to, near_to
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class LegTenonLimits:
    """What the tenons of a leg are held to, and their habits. Lengths are in inches.

    Attributes:
        wall_least: a thinner wall of a mortise stops the joint
        clear_least: two mortises that do not meet stay at least so far apart
        part: a tenon is at least the apron divided by this
        tenon_most: and at most so thick
        shoulder_least: a narrower shoulder is cautioned
        clearance: a mortise is so much deeper than its tenon is long
        mitre_gap: mitred tenons stay so far apart, measured along one of them
        setback: how far an apron is set back where nothing is said
        length_part: a tenon reaches this part of the leg into it
        length_step: its length is a multiple of this, rounded down
        length_least: a shorter tenon is cautioned
        haunch_part: a haunch is the apron's width divided by this
        haunch_most: and never more than this
        haunch_step: and a multiple of this
        lower_shoulder: what is cut off the lower edge where nothing is said
        end_least: less wood from the mortise to the top of the leg is cautioned
        width_most: a wider tenon is cautioned
    """

    wall_least: Sourced
    clear_least: Sourced
    part: Sourced
    tenon_most: Sourced
    shoulder_least: Sourced
    clearance: Sourced
    mitre_gap: Sourced
    setback: Sourced
    length_part: Sourced
    length_step: Sourced
    length_least: Sourced
    haunch_part: Sourced
    haunch_most: Sourced
    haunch_step: Sourced
    lower_shoulder: Sourced
    end_least: Sourced
    width_most: Sourced


LIMITS = LegTenonLimits(**sourced("leg_tenon_limits"))
"""The limits of a shop that has set none of its own."""


def outer_wall(setback: Inches, face: Inches) -> Inches:
    """The wall of a mortise towards the leg's outside face, which is where the leg is gauged.

    Rule: setback + face

    Args:
        setback: how far the apron is set back from the leg's outside face [in]
        face: the shoulder before the tenon [in]

    Returns:
        The wall [in]

    Source: geometry of the joint.
    """
    return setback + face


def inner_wall(leg: Inches, outer_wall: Inches, tenon: Inches) -> Inches:
    """The wall of a mortise towards the leg's inside face.

    Rule: leg - outer_wall - tenon

    Args:
        leg: thickness of the leg [in]
        outer_wall: the wall towards its outside face [in]
        tenon: thickness of the tenon [in]

    Returns:
        The wall [in]

    Source: geometry of the joint.
    """
    return leg - outer_wall - tenon


def mitred_length(cheek: Inches, mitre_gap: Inches) -> Inches:
    """How long a mitred tenon is along one of its cheeks.

    The mitre runs at 45 degrees from the leg's inside corner to its outside corner, so that a cheek is as
    long as it lies away from the inside face, less half of the gap between the two tenons.

    Rule: cheek - mitre_gap / 2

    Args:
        cheek: from the leg's inside face to the cheek [in]
        mitre_gap: how far apart the two tenons stay, measured along one of them [in]

    Returns:
        The length along that cheek [in]

    Source: geometry of the joint.
    """
    return cheek - mitre_gap / 2


def clear_length(inner_wall: Inches, limits: LegTenonLimits = LIMITS) -> Inches:
    """The longest tenon whose mortise stops short of the other one.

    Rule: inner_wall - clear_least - clearance

    Args:
        inner_wall: from the leg's inside face to the other mortise [in]
        limits: what the joint is held to

    Returns:
        The length; below zero when the leg is too thin for two [in]

    Source: geometry of the joint.
    """
    return inner_wall - limits.clear_least.value - limits.clearance.value


def leg_haunch_length(tenon: Inches, length: Inches) -> Inches:
    """How far the haunch reaches into the leg: as far as it is thick, and no farther than the tenon.

    Rule: the lesser of tenon and length

    Args:
        tenon: thickness of the tenon [in]
        length: length of the tenon, at its inner cheek when two are mitred [in]

    Returns:
        The length of the haunch [in]

    Source: common practice.
    """
    return min(tenon, length)


def guide_thickness(leg: Inches, setback: Inches, apron: Inches) -> Inches:
    """From the inside of the apron to the inside of the leg: what a side guide flush with the leg is thick.

    Rule: leg - setback - apron

    Args:
        leg: thickness of the leg [in]
        setback: how far the apron is set back from the leg's outside face [in]
        apron: thickness of the apron [in]

    Returns:
        The distance [in]

    Source: geometry of the joint.
    """
    return leg - setback - apron


def usual_leg_tenon(apron: Inches, rack: Rack = RACK, limits: LegTenonLimits = LIMITS) -> Inches:
    """The thickness of a tenon: the narrowest chisel from a third of the apron up to 1/2 in.

    Rule: the narrowest chisel from apron / part, or tenon_most where that is less, to tenon_most

    Args:
        apron: thickness of the apron [in]
        rack: the shop's chisels
        limits: what the joint is held to

    Returns:
        The thickness; a third of the apron, or tenon_most where that is less, when no such chisel is on the
        rack or it leaves no shoulders [in]

    Source: common practice.
    """
    third = min(apron / limits.part.value, limits.tenon_most.value)
    most = min(limits.tenon_most.value, apron - 2 * limits.shoulder_least.value)
    fitting = [chisel for chisel in rack.chisels if third - TOLERANCE <= chisel <= most + TOLERANCE]
    return min(fitting, default=third)


def usual_face(apron: Inches, setback: Inches, tenon: Inches, limits: LegTenonLimits = LIMITS) -> Inches:
    """The shoulder before the tenon: half of what is left, or as much as the mortise's outer wall needs.

    Rule: the greater of (apron - tenon) / 2 and wall_least - setback, as long as it leaves shoulder_least
    behind the tenon

    Args:
        apron: thickness of the apron [in]
        setback: how far it is set back from the leg's outside face [in]
        tenon: thickness of the tenon [in]
        limits: what the joint is held to

    Returns:
        The shoulder [in]

    Source: common practice.
    """
    middle = (apron - tenon) / 2
    wanted = limits.wall_least.value - setback
    return max(middle, min(wanted, apron - tenon - limits.shoulder_least.value))


def usual_leg_length(
    leg: Inches, outer_wall: Inches, tenon: Inches, aprons: Count, limits: LegTenonLimits = LIMITS
) -> Inches:
    """The length of a leg's tenon: two thirds of the leg, and two either clear of each other or mitred.

    Rule: the lesser of length_part * leg and leg - clearance - wall_least, down to length_step; two that
    would neither stay clear nor meet are shortened to be clear, or where they would then be below
    length_least, made as long as a mitre allows

    Args:
        leg: thickness of the leg [in]
        outer_wall: from its outside face to the mortise [in]
        tenon: thickness of the tenon [in]
        aprons: how many aprons meet, 1 or 2
        limits: what the joint is held to

    Returns:
        The length [in]

    Source: common practice; what two tenons leave each other is geometry of the joint.
    """
    wanted = usual_length(leg, limits.length_part.value, limits.length_step.value, longest_tenon(leg, limits))
    if aprons == 1:
        return wanted
    inner = inner_wall(leg, outer_wall, tenon)
    mitred, gap = mitred_length(leg - outer_wall, limits.mitre_gap.value), limits.mitre_gap.value
    length, clear = min(wanted, mitred), clear_length(inner, limits)
    if length <= clear + TOLERANCE or length > mitred_length(inner, gap) + TOLERANCE:
        return length
    step = limits.length_step.value
    shorter = down_to(clear, step)
    if shorter >= limits.length_least.value - TOLERANCE:
        return shorter
    return min(mitred, longest_tenon(leg, limits))


def longest_tenon(leg: Inches, limits: LegTenonLimits = LIMITS) -> Inches:
    """The longest tenon that leaves the wall behind its mortise that is needed.

    Rule: leg - clearance - wall_least

    Args:
        leg: thickness of the leg [in]
        limits: what the joint is held to

    Returns:
        The length; half of what the clearance leaves when the leg is too thin for any that passes [in]

    Source: geometry of the joint.
    """
    clearance = limits.clearance.value
    most = leg - clearance - limits.wall_least.value
    return most if most > 0 else max(leg - clearance, leg / 2) / 2


def usual_leg_haunch(height: Inches, lower_shoulder: Inches, limits: LegTenonLimits = LIMITS) -> Inches:
    """The haunch of an apron: a third of its width, but no more than 3/4 in.

    Rule: height / haunch_part to the nearest haunch_step, at most haunch_most and half of what is left above
    the lower shoulder

    Args:
        height: width of the apron [in]
        lower_shoulder: what is cut off its lower edge [in]
        limits: what the joint is held to

    Returns:
        The width of the haunch [in]

    Source: common practice; the most is from memory.
    """
    third = near_to(height / limits.haunch_part.value, limits.haunch_step.value)
    return max(0.0, min(third, limits.haunch_most.value, (height - lower_shoulder) / 2))
