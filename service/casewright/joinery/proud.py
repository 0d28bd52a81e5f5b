"""What stands proud of a joint, to be planed off once it is glued."""

from casewright.joinery.limits import LIMITS, Limits
from casewright.measure.comparing import at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import say
from casewright.measure.units import Inches


def proud_for_planing(proud: Inches, what: str, limits: Limits = LIMITS, about: str = "") -> Finding:
    """Whether what stands proud is little enough to be planed off.

    Args:
        proud: how far it stands proud [in]
        what: what stands proud, as the beginning of a sentence
        limits: what a joint is held to
        about: code of the part or joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    most = limits.proud_most.value
    return at_most(
        "proud",
        proud,
        most,
        say("{} stand {} proud; up to {:bare} is planed off.", what, proud, most),
        say("Let them stand {} proud, {:bare} at the most.", most / 2, most),
        about=about,
        verdict=Verdict.CAUTION,
        source=limits.proud_most.source,
    )
