"""The table of the kinds of papers."""

from casewright.papers.kinds import KINDS
from casewright.records.papers import PaperKind


def test_every_kind_of_paper_is_read_back_and_printed_by_the_one_table():
    assert set(KINDS) == set(PaperKind)
    assert len({kind.slug for kind in KINDS.values()}) == len(PaperKind)
