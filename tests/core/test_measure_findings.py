"""What checks found: the gravest decides."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.findings import Finding, Verdict, worst

PASS, CAUTION, STOP = Verdict.PASS, Verdict.CAUTION, Verdict.STOP


def found(verdict: Verdict) -> Finding:
    """A finding of which only the verdict matters."""
    return Finding(rule="lap", verdict=verdict, message="The lap is 3/16 in.")


@pytest.mark.parametrize(
    ("verdicts", "gravest"),
    [
        ([], PASS),
        ([PASS], PASS),
        ([PASS, CAUTION, PASS], CAUTION),
        ([STOP, CAUTION, PASS], STOP),
        ([CAUTION, STOP], STOP),
    ],
)
def test_the_gravest_finding_decides(verdicts, gravest):
    assert worst(map(found, verdicts)) is gravest


@given(st.lists(st.sampled_from(Verdict)), st.randoms())
def test_the_order_of_the_findings_does_not_matter(verdicts, chance):
    shuffled = chance.sample(verdicts, len(verdicts))

    assert worst(map(found, shuffled)) is worst(map(found, verdicts))


def test_a_finding_cannot_be_changed_afterwards():
    finding = found(STOP)

    with pytest.raises(AttributeError):
        finding.verdict = PASS
