"""What a check found: pass, caution or stop, with the number that failed and the one that would pass."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from casewright.measure.lengths import LengthUnit
from casewright.measure.making import maker, quickly_made
from casewright.measure.saying import Words, in_unit, written_in


class Verdict(StrEnum):
    """How a check came out. A stop means: do not cut; a caution means: look at this first."""

    PASS = "pass"  # noqa: S105 - a verdict, not a password
    CAUTION = "caution"
    STOP = "stop"


SEVERITY = {Verdict.PASS: 0, Verdict.CAUTION: 1, Verdict.STOP: 2}


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One check, carried out.

    Attributes:
        rule: the short name of the check, such as `JC1` or `depth season`
        verdict: pass, caution or stop
        message: what was found, in a maker's words, with the numbers
        remedy: what to change so that it passes; empty when nothing need be
        about: the code of the part, joint or drawer that it concerns; empty for the whole unit
        found: the number that was tested, in inches unless the message says otherwise
        needed: the number that would pass, in the same unit
        source: where the limit comes from
    """

    rule: str
    verdict: Verdict
    message: Words
    remedy: Words = ""
    about: str = ""
    found: float | None = None
    needed: float | None = None
    source: str = "common practice"

    def of(self, code: str) -> "Finding":
        """The same finding about another part, joint or drawer, which is alike.

        Args:
            code: of that one

        Returns:
            The finding.

        Source: common practice: what is alike is worked out once.
        """
        return new_finding(
            rule=self.rule,
            verdict=self.verdict,
            message=self.message,
            remedy=self.remedy,
            about=code,
            found=self.found,
            needed=self.needed,
            source=self.source,
        )

    def in_unit(self, unit: LengthUnit) -> "Finding":
        """The same finding as a shop reads it.

        Args:
            unit: the shop's unit

        Returns:
            The finding with its words as text.

        Source: common practice.
        """
        return replace(
            self,
            message=in_unit(self.message, unit),
            remedy=in_unit(self.remedy, unit),
            source=written_in(self.source, unit),
        )


new_finding = maker(Finding)
"""Makes a finding as `Finding` does, and sooner: a piece has some four hundred."""


def worst(findings: Iterable[Finding]) -> Verdict:
    """The gravest verdict of all the findings; pass when there are none.

    Args:
        findings: any number of findings, in any order

    Returns:
        Pass, caution or stop.

    Source: common practice.
    """
    return max((finding.verdict for finding in findings), key=SEVERITY.__getitem__, default=Verdict.PASS)
