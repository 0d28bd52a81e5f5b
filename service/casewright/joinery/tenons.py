"""What every tenon and its mortise share: the rules of their sizes, the chisel, and the wood around them.

A tenon's width runs the way its rail's width does, its thickness the way the rail's does, and its length
along the rail from the shoulder. A mortise is measured from the face of the wood that it is cut into.
"""

from collections.abc import Iterator
from itertools import pairwise

from casewright.joinery.chisels import Rack
from casewright.joinery.cutters import made_by
from casewright.joinery.solid import Flat, Prism, block
from casewright.joinery.sourced import Sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_most
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.rounding import down_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number

Room = tuple[Flat, Flat, Flat]
"""A block of wood or of air, from where to where along x, y and z [in]."""

OFF_FACES = 0.381966
"""Where between two faces a view is cut open: no part of a rule, so that it falls into no third face."""


def within(low: Inches, high: Inches) -> Inches:
    """Where to cut a view open between two faces, near their middle and in no other face.

    Args:
        low: the one face [in]
        high: the other [in]

    Returns:
        A place between them [in]

    Source: geometry.
    """
    return low + OFF_FACES * (high - low)


def tenon_width(board: Inches, lower: Inches, upper: Inches) -> Inches:
    """How wide a tenon is left, across its rail or apron.

    Rule: board - lower - upper

    Args:
        board: width of the rail or apron [in]
        lower: what is taken off at its reference edge, by a groove or a shoulder [in]
        upper: what is taken off at the other edge for the haunch [in]

    Returns:
        The width of the tenon, which is the length of its mortise [in]

    Source: geometry of the joint.
    """
    return board - lower - upper


def back_shoulder(thickness: Inches, face: Inches, tenon: Inches) -> Inches:
    """What is cut off behind the tenon.

    Rule: thickness - face - tenon

    Args:
        thickness: thickness of the rail or apron [in]
        face: what is cut off before the tenon [in]
        tenon: thickness of the tenon [in]

    Returns:
        The shoulder at the back [in]

    Source: geometry of the joint.
    """
    return thickness - face - tenon


def mortise_depth(length: Inches, clearance: Inches) -> Inches:
    """How deep a mortise is cut, from the edge of the stile or the face of the leg.

    Rule: length + clearance

    Args:
        length: length of the tenon [in]
        clearance: room below the tenon for the glue [in]

    Returns:
        The depth [in]

    Source: common practice; a tenon as long as its groove is deep needs no mortise but the groove.
    """
    return length + clearance


def haunch_length(groove_depth: Inches, tenon: Inches, length: Inches) -> Inches:
    """How far the haunch reaches into the stile: to the floor of the groove, which it fills.

    Rule: groove_depth; without a groove the lesser of tenon and length

    Args:
        groove_depth: depth of the groove; 0 for none [in]
        tenon: thickness of the tenon [in]
        length: length of the tenon [in]

    Returns:
        The length of the haunch [in]

    Source: common practice; without a groove a haunch is about as long as it is thick.
    """
    return groove_depth or min(tenon, length)


def wood_left(post: Inches, depth: Inches) -> Inches:
    """What is left of the stile or leg behind the mortise.

    Rule: post - depth

    Args:
        post: what the mortise is cut into, measured the way the tenon runs [in]
        depth: depth of the mortise from there [in]

    Returns:
        The wood that is left [in]

    Source: geometry of the joint.
    """
    return post - depth


def tenon_reach(length: Inches, slack: Inches) -> Inches:
    """How far a tenon reaches into the stile or leg when a gap is left at its shoulder.

    Rule: length - slack

    Args:
        length: length of the tenon [in]
        slack: gap at the shoulder; 0 for none [in]

    Returns:
        The reach [in]

    Source: geometry of the joint.
    """
    return length - slack


def length_over_tenons(
    overall: Inches, post: Inches, other: Inches, length: Inches, slack: Inches = 0.0
) -> Inches:
    """How long a rail or an apron is cut, over its two tenons.

    Rule: overall - post - other + 2 * length - slack

    Args:
        overall: over the outsides of the two stiles or legs [in]
        post: width of the stile, or thickness of the leg, at the one end [in]
        other: and at the other end [in]
        length: length of the tenon at each end [in]
        slack: gap left at one shoulder [in]

    Returns:
        The length of the board [in]

    Source: geometry of the joint.
    """
    return overall - post - other + 2 * length - slack


def usual_length(post: Inches, part: Number, step: Inches, most: Inches) -> Inches:
    """The length of a tenon: a part of what it goes into, down to a step, as far as the wood behind allows.

    Rule: the lesser of part * post and most, down to a multiple of step; that lesser one itself when it is
    below a step

    Args:
        post: what the mortise is cut into, measured the way the tenon runs [in]
        part: which part of it is usual, such as two thirds [1]
        step: lengths are a multiple of this [in]
        most: the longest that leaves the wood that is needed [in]

    Returns:
        The length [in]

    Source: common practice.
    """
    wanted = min(part * post, most)
    return down_to(wanted, step) or wanted


def carved(outside: Room, holes: tuple[Room, ...]) -> tuple[Prism, ...]:
    """A block of wood with rooms cut out of it, in plain pieces that touch and do not overlap.

    Args:
        outside: the block before it is cut, from where to where along x, y and z [in]
        holes: rooms cut out of it likewise; they may overlap, and reach past the block [in]

    Returns:
        The pieces that are left.

    Source: geometry.
    """
    return tuple(_pieces(outside, holes))


def _pieces(outside: Room, holes: tuple[Room, ...]) -> Iterator[Prism]:
    level, upright, away = outside
    for low, high in _between(upright, [hole[1] for hole in holes]):
        here = [hole for hole in holes if hole[1][0] < high - TOLERANCE and hole[1][1] > low + TOLERANCE]
        for left, right in _between(level, [hole[0] for hole in here]):
            cut = [
                hole[2] for hole in here if hole[0][0] < right - TOLERANCE and hole[0][1] > left + TOLERANCE
            ]
            for near, far in _without(away, cut):
                yield block((left, right), (low, high), (near, far))


def _between(span: Flat, cuts: list[Flat]) -> list[Flat]:
    """A stretch divided wherever one of the others begins or ends within it."""
    start, end = span
    found = [start]
    for place in sorted({edge for cut in cuts for edge in cut}):
        if found[-1] + TOLERANCE < place < end - TOLERANCE:
            found.append(place)
    return list(pairwise([*found, end]))


def _without(span: Flat, cuts: list[Flat]) -> Iterator[Flat]:
    """What is left of a stretch when others are taken out of it."""
    at, end = span
    for low, high in sorted(cuts):
        if low > at + TOLERANCE:
            yield at, min(low, end)
        at = max(at, high)
    if end > at + TOLERANCE:
        yield at, end


def how_mortised(tenon: Inches, rack: Rack) -> Words:
    """Which tool of the rack makes a mortise, for the note of a setting.

    Args:
        tenon: thickness of the tenon, which is the width of the mortise [in]
        rack: the shop's chisels and cutters

    Returns:
        Such as `the 1/4 in chisel`, or `the 3/16 in cutter, in 2 passes`.

    Source: common practice: a mortise is as wide as the chisel or cutter that makes it.
    """
    chisel = next((each for each in rack.chisels if abs(each - tenon) <= TOLERANCE), None)
    if chisel is not None:
        return say("the {} chisel", chisel)
    made = made_by(tenon, rack.cutters)
    return made.words if made else "drilled and pared: no tool is so narrow"


def chisel_of(tenon: Inches, rack: Rack, about: str = "") -> Finding:
    """Whether a chisel or a cutter of the rack is as wide as the mortise.

    Args:
        tenon: thickness of the tenon, which is the width of the mortise [in]
        rack: the shop's chisels and cutters
        about: code of the joint

    Returns:
        A pass or a caution.

    Source: common practice: a mortise is as wide as the chisel or cutter that makes it.
    """
    nearest = min(rack.chisels, key=lambda chisel: abs(chisel - tenon), default=0.0)
    made = made_by(tenon, rack.cutters)
    chiselled = abs(nearest - tenon) <= TOLERANCE
    routed = made is not None and made.passes == 1
    narrower: Words = made.words if made else say("a cutter of {:bare}", tenon)
    message = say("The mortise is {} wide, and no chisel is listed on the rack.", tenon)
    remedy: Words = say("Cut it with {}, or list the shop's chisels.", narrower)
    if rack.chisels:
        message = say("The mortise is {} wide; the nearest chisel is {:bare}.", tenon, nearest)
        remedy = say("Make the tenon {} thick, or cut the mortise with {}.", nearest, narrower)
    if routed and not chiselled:
        message = say("The mortise is {} wide: {}.", tenon, narrower)
    fits = chiselled or routed
    return new_finding(
        rule="mortise chisel",
        verdict=Verdict.PASS if fits else Verdict.CAUTION,
        message=message,
        remedy="" if fits else remedy,
        about=about,
        found=tenon,
        needed=tenon if fits else nearest or tenon,
        source="common practice: a mortise is as wide as the tool that makes it",
    )


def across_grain(width: Inches, most: Sourced, about: str = "") -> Finding:
    """Whether a tenon is narrow enough to be glued into wood that does not move with it.

    Args:
        width: width of the tenon, across its grain [in]
        most: the widest that is glued in one
        about: code of the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    return at_most(
        "tenon across the grain",
        width,
        most.value,
        say(
            "The tenon is {} wide, across the grain of what it is glued into; up to {} is glued in one.",
            width,
            most.value,
        ),
        say("Divide it into two tenons, each {:down} wide or less.", most.value),
        about=about,
        verdict=Verdict.CAUTION,
        source=most.source,
    )


def tenon_not_a_peg(width: Inches, tenon: Inches, haunch: Inches, about: str = "") -> Finding:
    """Whether the haunch leaves a tenon at least as wide as it is thick.

    Args:
        width: width of the tenon [in]
        tenon: its thickness [in]
        haunch: width of the haunch [in]
        about: code of the joint

    Returns:
        A pass or a stop.

    Source: from memory: a tenon narrower than it is thick turns in its mortise and has little to glue.
    """
    narrow = width < tenon - TOLERANCE
    short = tenon - width
    remedy: Words = ""
    if narrow:
        remedy = (
            say("Make the haunch {:down} wide or less.", haunch - short)
            if haunch > short + TOLERANCE
            else say("Make the board {:up} wider.", short)
        )
    return new_finding(
        rule="tenon width",
        verdict=Verdict.STOP if narrow else Verdict.PASS,
        message=say("The tenon is {} wide; it is to be as wide as it is thick, {:bare}.", width, tenon),
        remedy=remedy,
        about=about,
        found=width,
        needed=tenon,
        source="from memory: a tenon narrower than it is thick turns in its mortise",
    )


def wood_above_mortise(wood: Inches, least: Sourced, post: str, about: str = "") -> Finding:
    """Whether the mortise stays far enough from the end of the stile or leg.

    Args:
        wood: from the mortise to the end, the haunch counted [in]
        least: what is to be left there
        post: what the mortise is cut into, in a maker's words
        about: code of the joint

    Returns:
        A pass; a caution where little is left; a stop where the mortise is open at the end.

    Source: common practice.
    """
    is_open, short = wood <= TOLERANCE, wood < least.value - TOLERANCE
    verdict = Verdict.STOP if is_open else Verdict.CAUTION if short else Verdict.PASS
    message = say("From the mortise to the end of the {} it is {}; {} is needed.", post, wood, least.value)
    if is_open:
        message = say("The mortise is open at the end of the {}; {} of wood is needed.", post, least.value)
    return new_finding(
        rule="mortise near the end",
        verdict=verdict,
        message=message,
        remedy=say("Make the haunch {:up} wider, so that the mortise starts lower.", least.value - wood)
        if short
        else "",
        about=about,
        found=wood,
        needed=least.value,
        source=least.source,
    )
