"""One width of finger for a whole batch, whose boards are then lowered to whole fingers of it."""

from casewright.joinery.chisels import RACK
from casewright.joinery.cutters import nearest_cutter
from casewright.joinery.families.box.checks import LIMITS, BoxLimits
from casewright.joinery.groove import Groove
from casewright.joinery.joint import Chosen, Measure
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to
from casewright.measure.units import Inches


def batch_finger(
    thinner: Inches,
    cutters: tuple[Inches, ...] = RACK.cutters,
    groove: Groove | None = None,
    lowest: Inches | None = None,
    limits: BoxLimits = LIMITS,
) -> Inches:
    """How wide the fingers of a whole batch are, whose boards are lowered to whole fingers.

    Rule: of the cutters from thinner / finger_part to thinner * finger_times, of those of which fingers_least
    go into the lowest box, of those in one finger of which the groove lies where any does, the nearest to
    thinner; thinner itself where there is none

    Args:
        thinner: thickness of the thinner board [in]
        cutters: widths in the rack, narrowest first [in]
        groove: the groove for the bottom; None for none
        lowest: height of the lowest box of the batch; None where it is not known [in]
        limits: what a joint is held to

    Returns:
        The width of a finger [in]

    Source: common practice: one cutter and one key for a batch; a groove in one finger is stopped in one
        board only.
    """
    least, most = thinner / limits.finger_part.value, thinner * limits.finger_times.value
    family = tuple(each for each in cutters if least - TOLERANCE <= each <= most + TOLERANCE)
    if lowest is not None:
        fewest = limits.fingers_least.value
        family = tuple(each for each in family if fewest * each <= lowest + TOLERANCE) or family
    held = tuple(each for each in family if groove is None or _holds(each, groove))
    near = nearest_cutter(thinner, held or family)
    return thinner if near is None else near


def _holds(finger: Inches, groove: Groove) -> bool:
    """Does a groove lie within one finger, or one space?"""
    start = down_to(groove.height + TOLERANCE, finger)
    return groove.top <= start + finger + TOLERANCE


def chosen_batch_finger(
    thinner: Inches, cutters: tuple[Inches, ...], groove: Groove | None, lowest: Inches | None = None
) -> Chosen:
    """The finger of a whole batch, with why it is chosen.

    Args:
        thinner: thickness of the thinner board [in]
        cutters: widths in the rack, narrowest first [in]
        groove: the groove for the bottom; None for none
        lowest: height of the lowest box of the batch; None where it is not known [in]

    Returns:
        The choice.

    Source: common practice.
    """
    finger = batch_finger(thinner, cutters, groove, lowest)
    held = groove is not None and _holds(finger, groove)
    return Chosen(
        name="finger",
        value=finger,
        measure=Measure.LENGTH,
        why="One cutter for the whole batch, near the boards' thickness"
        + (", and the groove lies in one finger." if held else "."),
        source="common practice",
    )
