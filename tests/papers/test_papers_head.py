"""The head of a paper says whose revision it means: the paper's own once it is issued, the unit's before."""

from datetime import date

import pytest

from casewright.papers.head import PaperHead, head_data


@pytest.mark.parametrize(
    ("issued_on", "label", "foot"),
    [
        (None, "Unit revision", "Caution sheet · job 12 · unit revision 3 · draft"),
        (
            date(2027, 3, 1),
            "Revision of this paper",
            "Caution sheet S-0001 · job 12 · revision 3 · 1 March 2027",
        ),
    ],
)
def test_nobody_takes_the_revision_of_a_sheet_for_that_of_the_unit(issued_on, label, foot):
    number = "S-0001" if issued_on else ""

    data = head_data(
        PaperHead(number=number, job_number="12", revision=3, issued_on=issued_on), "Caution sheet"
    )

    assert [label, "3"] in data["facts"]
    assert data["foot"] == foot
