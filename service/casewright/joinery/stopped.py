"""Whether a housing or a socket that stops short of the front edge leaves enough wood before it."""

from casewright.joinery.sourced import Sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


def stop_before_the_front(
    what: str, stop: Inches, least: Sourced, usual: Inches, shows: Words, about: str = ""
) -> Finding:
    """Whether what is stopped leaves enough wood before it.

    Args:
        what: what is stopped, such as `housing`
        stop: how far back of the front edge it stops; 0 where it runs through [in]
        least: a nearer stop is cautioned
        usual: where it is usually stopped [in]
        shows: what is said of one that runs through
        about: code of the joint

    Returns:
        A pass or a caution; what runs through passes.

    Source: “Cutting housing joints”, The Woodworker: 8 to 12 mm.
    """
    stopped = stop > TOLERANCE
    near = stopped and stop < least.value - TOLERANCE
    message = shows
    if stopped:
        message = say("The {} stops {} back of the front edge; it needs {:bare}.", what, stop, least.value)
    return new_finding(
        rule="stop at the front",
        verdict=Verdict.CAUTION if near else Verdict.PASS,
        message=message,
        remedy=say("Stop it {} back, or run it through.", usual) if near else "",
        about=about,
        found=stop,
        needed=least.value if stopped else None,
        source=least.source,
    )
