"""Checks that a card prints: those that did not pass, each with what to change."""

from collections.abc import Iterable

from casewright.measure.findings import Finding, Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.papers.cleaning import words
from casewright.pieces.asked.fields import Spec


class Warned(Spec):
    """A check of the joint that did not pass."""

    stops: bool
    message: str
    remedy: str


def warned_of(findings: Iterable[Finding], unit: LengthUnit) -> tuple[Warned, ...]:
    """The checks that did not pass, as they are kept.

    Args:
        findings: every check
        unit: in which their words are kept

    Returns:
        One for each, in their order.
    """
    return tuple(
        Warned(
            stops=found.verdict is Verdict.STOP,
            message=in_unit(found.message, unit),
            remedy=in_unit(found.remedy, unit),
        )
        for found in findings
        if found.verdict is not Verdict.PASS
    )


def warned_data(warned: Warned) -> list[str]:
    """A check that did not pass, as it is printed.

    Args:
        warned: the check

    Returns:
        `Stop` or `Caution`, what is wrong, and what to change.
    """
    return ["Stop" if warned.stops else "Caution", words(warned.message), words(warned.remedy)]
