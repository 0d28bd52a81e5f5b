"""Shorthand for a check that compares a number with the one it needs."""

from dataclasses import replace

from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import Words

TOLERANCE = 1e-9
"""A billionth of an inch: above any float's error and far below any gauge."""


def at_least(
    rule: str,
    found: float,
    needed: float,
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
        found: the number that is tested
        needed: the number that it must reach
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
    return Finding(
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
    rule: str, found: float, allowed: float, message: Words, remedy: Words, **rest: object
) -> Finding:
    """A check that passes when what was found is no more than what is allowed.

    Args:
        rule: the short name of the check
        found: the number that is tested
        allowed: the number that it must not pass
        message: what was found, in words
        remedy: what to change when it fails
        rest: as `at_least` takes them

    Returns:
        The finding, with the two numbers as they are.

    Source: common practice.
    """
    mirrored = at_least(rule, -found, -allowed, message, remedy, **rest)  # type: ignore[arg-type]
    return replace(mirrored, found=float(found), needed=float(allowed))
