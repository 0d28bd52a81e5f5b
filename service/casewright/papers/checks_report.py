"""Checks as text: what stops first, then what cautions, each with what to change."""

from collections.abc import Iterable

from casewright.measure.findings import Finding, Verdict
from casewright.papers.writing import section, several, wrapped


def checks_section(findings: Iterable[Finding], *, everything: bool) -> str:
    """The checks: what stops and cautions first, each with what to change.

    Args:
        findings: every finding
        everything: also list those that pass

    Returns:
        The list, and how many pass.
    """
    held = list(findings)
    blocks = []
    for verdict in (Verdict.STOP, Verdict.CAUTION):
        blocks += [_finding(codes, finding) for codes, finding in _alike(held, verdict)]
    passed = sum(1 for finding in held if finding.verdict is Verdict.PASS)
    if everything:
        blocks += [_finding(codes, finding) for codes, finding in _alike(held, Verdict.PASS)]
    else:
        blocks.append(f"{several(passed, 'check passes', 'checks pass')}; --checks lists them.")
    return section("Checks", "\n".join(blocks))


def _alike(findings: list[Finding], verdict: Verdict) -> list[tuple[list[str], Finding]]:
    """Findings of one verdict; those that say the same of several drawers are told once."""
    found: dict[tuple[str, str, str], list[Finding]] = {}
    for finding in findings:
        if finding.verdict is verdict:
            found.setdefault((finding.rule, finding.message, finding.remedy), []).append(finding)
    return [([each.about for each in group if each.about], group[0]) for group in found.values()]


def _finding(codes: list[str], finding: Finding) -> str:
    about = f" ({', '.join(codes)})" if codes else ""
    remedy = f"\n         {finding.remedy}" if finding.remedy else ""
    return wrapped(f"{finding.verdict:8} {finding.rule}{about}: {finding.message}{remedy}", 9)
