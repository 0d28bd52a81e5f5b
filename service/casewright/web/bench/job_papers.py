"""The papers of a drawer's job at the bench, each with whether it still holds for that drawer."""

from dataclasses import dataclass

from casewright.papers.kinds import KINDS
from casewright.records.job_page import PaperRow, papers_of
from casewright.shop.at_bench import AtBench
from casewright.shop.papers import shown_paper_number
from casewright.web.frame.paper_says import newest_of, said_of, wrong_for_drawer
from casewright.web.frame.visits import Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperAtHand:
    """A paper one press away.

    Attributes:
        address: where it is
        name: what it is, and which issue
        is_wrong: whether it is out of date for this drawer
    """

    address: str
    name: str
    is_wrong: bool


def papers_at_hand(visit: Visit, held: AtBench) -> list[PaperAtHand]:
    """The newest paper of each kind that the bench reads; none of them has money on it.

    Args:
        visit: who looks
        held: the drawer
    """
    rows = [
        row for row in newest_of(papers_of(visit.db, held.row.job.id)).values() if KINDS[row.kind].for_bench
    ]
    said = said_of(visit.db, rows)
    built, drawer = held.worked[0], held.drawer
    return [
        PaperAtHand(
            address=f"/papers/{row.id}",
            name=_paper_name(row),
            is_wrong=built is None
            or drawer is None
            or wrong_for_drawer(row, said[row.id], built, held.text, held.figures, drawer.code),
        )
        for row in rows
    ]


def _paper_name(row: PaperRow) -> str:
    revision = f", revision {row.revision}" if row.revision > 1 else ""
    return f"{KINDS[row.kind].title} {shown_paper_number(row.kind, row.number)}{revision}"
