"""A check that compares a number with the one it needs."""

from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words
from casewright.measure.units import Number


def at_least(
    rule: str,
    found: Number,
    needed: Number,
    message: Words,
    remedy: Words,
    *,
    about: str = "",
    verdict: Verdict = Verdict.STOP,
    source: str = "common practice",
) -> Finding:
    """A check that passes when what was found is no less than what is needed.

    Args:
        rule: the short name of the check
        found: the number that is tested [in its own unit]
        needed: the number that it must reach [in its own unit]
        message: what was found, in words
        remedy: what to change when it fails
        about: the code of what it concerns
        verdict: how grave a failure is
        source: where the limit comes from

    Returns:
        The finding.

    Source: common practice.
    """
    passed = found >= needed - TOLERANCE
    return new_finding(
        rule=rule,
        verdict=Verdict.PASS if passed else verdict,
        message=message,
        remedy="" if passed else remedy,
        about=about,
        found=float(found),
        needed=float(needed),
        source=source,
    )


def at_most(
    rule: str,
    found: Number,
    allowed: Number,
    message: Words,
    remedy: Words,
    *,
    about: str = "",
    verdict: Verdict = Verdict.STOP,
    source: str = "common practice",
) -> Finding:
    """A check that passes when what was found is no more than what is allowed.

    Args:
        rule: the short name of the check
        found: the number that is tested [in its own unit]
        allowed: the number that it must not pass [in its own unit]
        message: what was found, in words
        remedy: what to change when it fails
        about: the code of what it concerns
        verdict: how grave a failure is
        source: where the limit comes from

    Returns:
        The finding, with the two numbers as they are.

    Source: common practice.
    """
    passed = found <= allowed + TOLERANCE
    return new_finding(
        rule=rule,
        verdict=Verdict.PASS if passed else verdict,
        message=message,
        remedy="" if passed else remedy,
        about=about,
        found=float(found),
        needed=float(allowed),
        source=source,
    )
