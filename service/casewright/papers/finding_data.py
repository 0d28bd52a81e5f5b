"""One check, for machines."""

from typing import Any

from casewright.measure.findings import Finding


def finding_data(finding: Finding) -> dict[str, Any]:
    """One check, for machines.

    Args:
        finding: what was found

    Returns:
        Its verdict, message, remedy, numbers and source.
    """
    return {
        "rule": finding.rule,
        "verdict": finding.verdict.value,
        "about": finding.about,
        "message": str(finding.message),
        "remedy": str(finding.remedy),
        "found": None if finding.found is None else float(finding.found),
        "needed": None if finding.needed is None else float(finding.needed),
        "source": finding.source,
    }
