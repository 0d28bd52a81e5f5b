"""How wide the fingers of a box joint are, and how many go into a height."""

from casewright.joinery.chisels import RACK
from casewright.joinery.cutters import nearest_cutter
from casewright.joinery.families.box.checks import LIMITS, BoxLimits
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to, near_to
from casewright.measure.units import Count, Inches


def usual_fingers(height: Inches, finger: Inches) -> Count:
    """How many fingers and spaces go into a height.

    Rule: height / finger, to the nearest whole number, and at least 2

    Args:
        height: height of the boards at the joint [in]
        finger: width that is aimed at [in]

    Returns:
        Fingers and spaces, counted together [dimensionless]

    Source: geometry of the joint.
    """
    return max(2, int(near_to(height / finger, 1.0)))


def fingers_by_cutter(height: Inches, cutter: Inches) -> Count:
    """How many fingers and spaces go into a height that the cutter does not divide, from the bottom edge up.

    Rule: height / cutter, rounded down, and one more for what is left where that is half a finger or wider;
        less than that goes to the top finger. At least 2

    Args:
        height: height of the boards at the joint [in]
        cutter: width of the cutter [in]

    Returns:
        Fingers and spaces, counted together [dimensionless]

    Source: common practice: the odd finger goes to the top edge, and a thin one would break off.
    """
    whole = int(down_to(height / cutter + TOLERANCE, 1.0))
    left = height - whole * cutter
    return max(2, whole + int(left >= cutter / 2))


def usual_finger(
    height: Inches, thinner: Inches, cutters: tuple[Inches, ...] = RACK.cutters, limits: BoxLimits = LIMITS
) -> Inches:
    """How wide a finger is aimed at: about as wide as the thinner board is thick, by a cutter of the rack.

    Rule: of the cutters from thinner / finger_part to thinner * finger_times by which height is divided into
    fingers_least or more whole fingers, the nearest to thinner; thinner itself where there is none

    Args:
        height: height of the boards at the joint [in]
        thinner: thickness of the thinner board [in]
        cutters: widths in the rack, narrowest first [in]
        limits: what a joint is held to

    Returns:
        The width of a finger [in]

    Source: common practice.
    """
    least, most = thinner / limits.finger_part.value, thinner * limits.finger_times.value
    even = tuple(
        cutter
        for cutter in cutters
        if least - TOLERANCE <= cutter <= most + TOLERANCE
        and abs(height - near_to(height / cutter, 1.0) * cutter) <= TOLERANCE
        and near_to(height / cutter, 1.0) >= limits.fingers_least.value
    )
    near = nearest_cutter(thinner, even)
    return thinner if near is None else near


def finger_width(height: Inches, fingers: Count) -> Inches:
    """How wide a finger comes out.

    Rule: height / fingers

    Args:
        height: height of the boards at the joint [in]
        fingers: fingers and spaces, counted together [dimensionless]

    Returns:
        The width of each [in]

    Source: geometry of the joint.
    """
    return height / fingers
