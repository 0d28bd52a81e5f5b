"""The arithmetic of legs and aprons: each size from the sizes it hangs on."""

from casewright.measure.rounding import down_to
from casewright.measure.units import Count, Inches, SquareInches


def leg_length(overall: Inches, top: Inches) -> Inches:
    """The length of a leg, from the floor to the underside of the top.

    Rule: overall - top

    Args:
        overall: floor to the upper face of the top [in]
        top: thickness of the top [in]

    Returns:
        The length [in]

    Source: geometry of the piece.
    """
    return overall - top


def between_rails(apron: Inches, rail: Inches, rows: Count) -> Inches:
    """What is left for openings in the height of the aprons, between the front rails.

    Rule: apron - (rows + 1) × rail

    Args:
        apron: height of the aprons [in]
        rail: thickness of a front rail [in]
        rows: how many rows of drawers

    Returns:
        All opening heights added up [in]

    Source: geometry of the piece.
    """
    return apron - (rows + 1) * rail


def depth_to_apron(depth: Inches, setback: Inches, apron: Inches) -> Inches:
    """The depth of the openings: from the face of the legs to the inside of the back apron.

    Rule: depth - setback - apron

    Args:
        depth: over both legs from front to back [in]
        setback: how far the back apron is set back from the legs' outside faces [in]
        apron: its thickness [in]

    Returns:
        The depth of every opening; long grain sets it, so that it does not shrink [in]

    Source: geometry of the piece.
    """
    return depth - setback - apron


def over_tenons(overall: Inches, leg: Inches, tenon: Inches) -> Inches:
    """The length of an apron or rail between two legs, over both its tenons or dovetails.

    Rule: overall - 2 × leg + 2 × tenon

    Args:
        overall: over both legs [in]
        leg: thickness of a leg [in]
        tenon: how far it reaches into each leg [in]

    Returns:
        The length [in]

    Source: geometry of the joint.
    """
    return overall - 2 * leg + 2 * tenon


def leg_runner_length(depth: Inches, rail: Inches, tongue: Inches) -> Inches:
    """The length of a runner or kicker: a tongue in the rail, the other end against the back apron.

    Rule: depth - rail + tongue

    Args:
        depth: depth of the opening [in]
        rail: width of the front rail [in]
        tongue: how far it reaches into the rail [in]

    Returns:
        The length [in]

    Source: geometry of the piece.
    """
    return depth - rail + tongue


def runner_width(guide: Inches, reach: Inches) -> Inches:
    """The width of a runner: from the apron to the leg's inside, and under the drawer's side.

    Rule: guide + reach

    Args:
        guide: from the inside of the apron to the inside of the leg [in]
        reach: how far it stands into the opening [in]

    Returns:
        The width [in]

    Source: common practice.
    """
    return guide + reach


def rail_reach(usual: Inches, wall: Inches, clear: Inches) -> Inches:
    """How far a front rail reaches into a leg in which a side apron's mortise is in the way.

    Rule: the lesser of usual, and wall - clear down to 1/16; at least 1/4

    Args:
        usual: as far as it reaches where nothing is in the way [in]
        wall: from the leg's inside face to the mortise [in]
        clear: what has to stay between the two [in]

    Returns:
        The length of the tenon or dovetail [in]

    Source: common practice.
    """
    return max(1 / 4, min(usual, down_to(wall - clear, 1 / 16)))


def legs_area(leg: Inches, below: Inches) -> SquareInches:
    """What is seen of four legs below the aprons, all around.

    Rule: 16 × leg × below

    Args:
        leg: thickness of a leg, square [in]
        below: height of the legs below the aprons [in]

    Returns:
        The area [sq in]

    Source: geometry; the little that a taper takes is left in.
    """
    return 16 * leg * below


def tapered_share(leg: Inches, foot: Inches, below: Inches, length: Inches) -> float:
    """How much of a squared leg is left when it is tapered on its two inside faces below the aprons.

    Rule: ((length - below) × leg² + below × (leg² + leg × foot + foot²) / 3) / (length × leg²)

    Args:
        leg: thickness of the leg, square [in]
        foot: what it measures at the floor, square [in]
        below: height over which it is tapered [in]
        length: length of the leg [in]

    Returns:
        The share of the squared leg [dimensionless]

    Source: geometry: a frustum of a pyramid below a prism.
    """
    frustum = below * (leg**2 + leg * foot + foot**2) / 3
    return ((length - below) * leg**2 + frustum) / (length * leg**2)
