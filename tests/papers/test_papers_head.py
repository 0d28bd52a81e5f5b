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
            "Paper revision",
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


@pytest.mark.parametrize(
    ("units", "fact"),
    [
        ((("A", 2),), ["Unit revision", "2"]),
        ((("A", 2), ("B", 1)), ["Unit revisions", "A 2, B 1"]),
    ],
)
def test_a_paper_that_is_issued_says_of_which_design_it_is_made(units, fact):
    head = PaperHead(number="S-0001", job_number="12", revision=1, units=units, issued_on=date(2027, 3, 1))

    facts = head_data(head, "Caution sheet")["facts"]

    assert facts[1:3] == [["Paper revision", "1"], fact]
