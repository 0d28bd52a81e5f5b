"""Checks as text: what stops first, then what cautions, each with what to change."""

from collections.abc import Iterable, Iterator

from casewright.measure.findings import Finding, Verdict
from casewright.papers.writing import Writing, section, several, wrapped


def checks_section(findings: Iterable[Finding], writing: Writing, *, everything: bool) -> str:
    """The checks: what stops and cautions first, each with what to change.

    Args:
        findings: every finding
        writing: how sizes are written
        everything: also list those that pass

    Returns:
        The list, and how many pass.
    """
    held = list(findings)
    blocks = []
    for verdict in (Verdict.STOP, Verdict.CAUTION):
        blocks += [_finding(codes, finding, writing) for codes, finding in _alike(held, verdict, writing)]
    passed = sum(1 for finding in held if finding.verdict is Verdict.PASS)
    if everything:
        blocks += [
            _finding(codes, finding, writing) for codes, finding in _alike(held, Verdict.PASS, writing)
        ]
    else:
        blocks.append(f"{several(passed, 'check passes', 'checks pass')}; --checks lists them.")
    return section("Checks", "\n".join(blocks))


def _alike(
    findings: list[Finding], verdict: Verdict, writing: Writing
) -> Iterator[tuple[list[str], Finding]]:
    """Findings of one verdict; those that say the same of several drawers are told once."""
    found: dict[tuple[str, str, str], list[Finding]] = {}
    for finding in findings:
        if finding.verdict is verdict:
            said = (finding.rule, writing.said(finding.message), writing.said(finding.remedy))
            found.setdefault(said, []).append(finding)
    for group in found.values():
        yield [each.about for each in group if each.about], group[0]


def _finding(codes: list[str], finding: Finding, writing: Writing) -> str:
    about = f" ({', '.join(codes)})" if codes else ""
    said = f"{finding.verdict:8} {finding.rule}{about}: {writing.said(finding.message)}"
    remedy = writing.said(finding.remedy)
    return wrapped(f"{said}\n         {remedy}" if remedy else said, 9)
