"""The checks of crossing strips: do they fit, and is there wood left at and beyond their notches?"""

from casewright.joinery.families.cross_lap.asked import CrossLap
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import say


def wood_left(joint: CrossLap) -> Finding:
    """Whether both strips keep enough of their depth at the notches.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    left = min(joint.notch, joint.depth - joint.notch)
    least = joint.depth / joint.limits.left_part.value
    return at_least(
        "wood left at the lap",
        left,
        least,
        say("Of strips {} deep the notches leave {} at the least.", joint.depth, left),
        say("Notch both for about half, {:down}.", joint.depth / joint.limits.part.value),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=joint.limits.left_part.source,
    )


def wood_beyond(joint: CrossLap) -> Finding:
    """Whether the wood between the end of a strip and its first notch holds.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    beyond, least = min((*joint.level_marks, *joint.upright_marks)), joint.limits.end_least
    return at_least(
        "wood beyond the lap",
        beyond,
        least.value,
        say("From the end of a strip to its first notch are {}.", beyond),
        say("Leave {:up} or more, or glue a strip across it before it is notched.", least.value),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=least.source,
    )


def lap_fits(joint: CrossLap) -> Finding:
    """Whether the notches hold the strips.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: from memory.
    """
    most = joint.limits.play_most
    return at_most(
        "lap fits",
        joint.play,
        most.value,
        say("The notches are {:.4} wider than the strips in them.", joint.play),
        say("Make them {:.3} wider at the most: try one on scrap with an offcut of the strip.", most.value),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=most.source,
    )
