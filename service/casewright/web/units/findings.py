"""Checks as a page shows them: stops first, alike ones once, each under a name in words."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from casewright.measure.findings import Finding, Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit

NAMES = {
    "JC1": "lap",
    "JC2": "strength of the lap",
    "JC3": "gauge 2",
    "JC4": "registration rabbet",
    "JC5": "sockets wide enough",
    "JC6": "pins",
    "JC7": "half pins",
    "JC8": "groove hidden",
    "JC9": "tails not too wide",
    "JC10": "front thick enough",
    "JC11": "sides alike",
    "JC12": "slope",
    "JC13": "chisels",
    "JC14": "moisture of front and side",
    "JC16": "tails against sockets",
    "JC17": "front as hard as its sides",
}
"""What a check of a joint is called; its short name stands behind."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingShown:
    """One check, or several that say the same of different parts.

    Attributes:
        rule: what it is called
        verdict: pass, caution or stop
        about: the codes that it names
        message: what was found
        remedy: what to change
        source: where the rule comes from
        field: the id of the field in the unit's form that it is about; empty where there is no form beside it
    """

    rule: str
    verdict: str
    about: tuple[str, ...]
    message: str
    remedy: str
    source: str
    field: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Checks:
    """Every check of a unit.

    Attributes:
        stops: do not cut
        cautions: look at this first
        passes: fine
    """

    stops: tuple[FindingShown, ...]
    cautions: tuple[FindingShown, ...]
    passes: tuple[FindingShown, ...]

    @property
    def words(self) -> str:
        """How many stop, caution and pass, in a few words."""
        counts = [
            (len(self.stops), "stop"),
            (len(self.cautions), "caution"),
        ]
        said = [f"{count} {noun}{'' if count == 1 else 's'}" for count, noun in counts if count]
        return ", ".join(said) or "every check passes"

    @property
    def verdict(self) -> str:
        """The gravest."""
        return "stop" if self.stops else "caution" if self.cautions else "pass"


def nowhere(_: Finding) -> str:
    """Of a finding that stands beside no form."""
    return ""


def checks_of(
    findings: Iterable[Finding], unit: LengthUnit, field: Callable[[Finding], str] = nowhere
) -> Checks:
    """The checks, by verdict, as the shop reads them.

    Args:
        findings: the checks
        unit: the unit in which they are read
        field: gives the id of the form's field that a check is about
    """
    found: dict[tuple[Verdict, str, str, str], list[Finding]] = {}
    for each in findings:
        said = in_unit(each.message, unit), in_unit(each.remedy, unit)
        found.setdefault((each.verdict, each.rule, *said), []).append(each)
    shown = [_shown(group, message, remedy, field) for (_, _, message, remedy), group in found.items()]
    return Checks(
        stops=_of(shown, Verdict.STOP), cautions=_of(shown, Verdict.CAUTION), passes=_of(shown, Verdict.PASS)
    )


def _of(shown: list[FindingShown], verdict: Verdict) -> tuple[FindingShown, ...]:
    return tuple(each for each in shown if each.verdict == verdict.value)


def _shown(group: list[Finding], message: str, remedy: str, field: Callable[[Finding], str]) -> FindingShown:
    first = group[0]
    return FindingShown(
        rule=f"{NAMES[first.rule]} ({first.rule})" if first.rule in NAMES else first.rule,
        verdict=first.verdict.value,
        about=tuple(dict.fromkeys(each.about for each in group if each.about)),
        message=message,
        remedy=remedy,
        source=first.source,
        field="" if first.verdict is Verdict.PASS else field(first),
    )
