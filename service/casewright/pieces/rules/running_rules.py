"""The arithmetic of running: battens, guides, stops, linings and pulls."""

from casewright.measure.rounding import floor64, near64
from casewright.measure.units import Inches, Pounds, PoundsPerSquareInch

PLAY = 1 / 32
"""Room of a batten in its groove, and of a guide under a bottom (common practice) [in]."""
NOTCH_PLAY = 1 / 16
"""Room of a guide in the notch that rides on it (common practice) [in]."""


def batten_groove_width(batten: Inches) -> Inches:
    """The width of the groove in a side that hangs on a batten.

    Rule: batten + 1/32

    Args:
        batten: thickness of the batten, up and down [in]

    Returns:
        The width of the groove [in]

    Source: common practice.
    """
    return batten + PLAY


def batten_groove_depth(projection: Inches, side_gap: Inches) -> Inches:
    """The depth of the groove in a side that hangs on a batten.

    Rule: projection + 1/32 - side_gap

    Args:
        projection: how far the batten projects from the side of the opening [in]
        side_gap: clearance between drawer and opening at each side [in]

    Returns:
        The depth of the groove [in]

    Source: common practice.
    """
    return projection + PLAY - side_gap


def batten_groove_height(side: Inches, groove: Inches) -> Inches:
    """Where the groove for a batten lies when it is in the middle of the side.

    Rule: (side - groove) / 2, to the nearest 1/64

    Args:
        side: height of the side [in]
        groove: width of the groove [in]

    Returns:
        Bottom edge of the side up to the groove [in]

    Source: common practice.
    """
    return near64((side - groove) / 2)


def batten_up(gap: Inches, groove: Inches) -> Inches:
    """Where a batten is screwed on: its upper face carries the upper side of the groove.

    Rule: gap + groove + 1/32

    Args:
        gap: under the drawer [in]
        groove: bottom edge of the side up to its groove [in]

    Returns:
        Lower edge of the opening up to that of the batten [in]

    Source: geometry; the room in the groove lies below the batten.
    """
    return gap + groove + PLAY


def room_under_bottom(groove_height: Inches, bottom: Inches, groove_width: Inches) -> Inches:
    """The room between a drawer's bottom and what it runs on.

    Rule: groove_height - (bottom - groove_width), the bottom no thinner than its groove

    Args:
        groove_height: bottom edge of the side up to the groove [in]
        bottom: thickness of the bottom [in]
        groove_width: width of the groove [in]

    Returns:
        The room [in]

    Source: geometry of the drawer.
    """
    return groove_height - max(0.0, bottom - groove_width)


def guide_height(room: Inches) -> Inches:
    """The height of a centre guide that goes under the bottom.

    Rule: room - 1/32, rounded down to 1/64

    Args:
        room: between the bottom and the runners [in]

    Returns:
        The most that the guide may be high [in]

    Source: common practice.
    """
    return floor64(room - PLAY)


def guide_length(depth: Inches, front: Inches, inset: Inches) -> Inches:
    """The length of a centre guide: from behind the closed front to the back of the opening.

    Rule: depth - front - inset

    Args:
        depth: depth of the opening [in]
        front: thickness of the front [in]
        inset: how far the front stands behind the rail's face [in]

    Returns:
        The length of the guide [in]

    Source: common practice; its front end stands at the stop line.
    """
    return depth - front - inset


def guide_notch(guide: Inches) -> Inches:
    """The width of the notch that rides on a centre guide.

    Rule: guide + 1/16

    Args:
        guide: width of the guide [in]

    Returns:
        The width of the notch [in]

    Source: common practice.
    """
    return guide + NOTCH_PLAY


def stop_line(front: Inches, inset: Inches) -> Inches:
    """Where the stop blocks stand on the rail.

    Rule: front + inset

    Args:
        front: thickness of the front [in]
        inset: how far the front stands behind the rail's face [in]

    Returns:
        The line behind the face of the rail [in]

    Source: common practice.
    """
    return front + inset


def outstop_line(length: Inches, back: Inches, catch: Inches, travel: Inches, inset: Inches) -> Inches:
    """Where an outstop catches what is on the back of the drawer.

    Rule: inset + length - back - catch - travel

    Args:
        length: length of the drawer [in]
        back: thickness of its back [in]
        catch: thickness of what stands on the inside of the back [in]
        travel: how far the drawer is to open [in]
        inset: how far the front stands behind the rail's face [in]

    Returns:
        The line behind the face of the rail [in]

    Source: geometry.
    """
    return inset + length - back - catch - travel


def outstop_travel(length: Inches, back: Inches, catch: Inches, line: Inches, inset: Inches) -> Inches:
    """How far a drawer opens to an outstop that stands on a line.

    Rule: inset + length - back - catch - line

    Args:
        length: length of the drawer [in]
        back: thickness of its back [in]
        catch: thickness of what stands on the inside of the back [in]
        line: the outstop behind the face of the rail [in]
        inset: how far the front stands behind the rail's face [in]

    Returns:
        The travel [in]

    Source: geometry.
    """
    return inset + length - back - catch - line


def lined_across(inside: Inches, lining: Inches) -> Inches:
    """The width or depth inside a drawer that is lined all around.

    Rule: inside - 2 × lining

    Args:
        inside: clear width or depth of the bare drawer [in]
        lining: thickness of the lining [in]

    Returns:
        What is left [in]

    Source: geometry.
    """
    return inside - 2 * lining


def lined_height(inside: Inches, lining: Inches) -> Inches:
    """The height inside a drawer whose bottom is lined.

    Rule: inside - lining

    Args:
        inside: clear height of the bare drawer [in]
        lining: thickness of the lining [in]

    Returns:
        What is left [in]

    Source: geometry.
    """
    return inside - lining


def spread_load(load: Pounds, width: Inches, depth: Inches) -> PoundsPerSquareInch:
    """How hard a load presses on the bottom that it is spread over.

    Rule: load / (width × depth)

    Args:
        load: what a full drawer holds [lb]
        width: clear width inside [in]
        depth: clear depth inside [in]

    Returns:
        The pressure [psi]

    Source: arithmetic.
    """
    return load / (width * depth)


def middle(left: Inches, width: Inches) -> Inches:
    """The centre line of an opening.

    Rule: left + width / 2

    Args:
        left: its left edge from the outside of the case [in]
        width: its width [in]

    Returns:
        The centre from the outside of the case [in]

    Source: geometry.
    """
    return left + width / 2


def pull_up(front: Inches, down: Inches) -> Inches:
    """How high a pull stands on its front.

    Rule: front - down

    Args:
        front: height of the front [in]
        down: top edge of the front down to the screws [in]

    Returns:
        Bottom edge of the front up to the screws [in]

    Source: geometry.
    """
    return front - down
