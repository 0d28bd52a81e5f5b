"""Each kind of paper: how it is written, read back, printed and shown."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.papers.csv_files import cut_list_csv, lumber_order_csv
from casewright.papers.cut_list import CutListPaper, cut_list_paper
from casewright.papers.cut_list_pdf import cut_list_data, cut_list_pdf
from casewright.papers.head import JobPaper, PaperHead
from casewright.papers.joint_cards import JointCardsPaper, joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_data, joint_cards_pdf
from casewright.papers.order import OrderPaper, order_paper
from casewright.papers.order_pdf import lumber_order_pdf, order_data, order_words
from casewright.papers.pdf import Paper as Sheet
from casewright.records.jobs import Job
from casewright.records.papers import PaperKind
from casewright.records.people import Shop
from casewright.shop.papers import Issue, JobAtHand


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderWords:
    """What an order says beside what is worked out."""

    supplier: str = ""
    needed_by: date | None = None
    delivery: str = ""
    surfacing: str = ""
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """One kind of paper.

    Attributes:
        slug: its name in an address
        title: its name
        for_bench: whether the bench reads it
        read: the paper, from what is kept
        data: what is read on page and paper
        pdf: the paper as PDF
        csv: the paper as CSV; None where it has none
    """

    slug: str
    title: str
    for_bench: bool
    read: Callable[[Mapping[str, Any]], Any]
    data: Callable[[Any], dict[str, Any]]
    pdf: Callable[[Any, Sheet], bytes]
    csv: Callable[[Any], bytes] | None = None


def _order(held: OrderPaper, sheet: Sheet) -> bytes:
    return lumber_order_pdf(held, sheet)


KINDS = {
    PaperKind.LUMBER_ORDER: Kind(
        slug="lumber-order",
        title="Lumber order",
        for_bench=False,
        read=OrderPaper.model_validate,
        data=lambda held: order_data(held, for_shop=True),
        pdf=_order,
        csv=lumber_order_csv,
    ),
    PaperKind.CUT_LIST: Kind(
        slug="cut-list",
        title="Cut list",
        for_bench=True,
        read=CutListPaper.model_validate,
        data=cut_list_data,
        pdf=cut_list_pdf,
        csv=cut_list_csv,
    ),
    PaperKind.JOINT_CARDS: Kind(
        slug="joint-cards",
        title="Joint cards",
        for_bench=True,
        read=JointCardsPaper.model_validate,
        data=joint_cards_data,
        pdf=joint_cards_pdf,
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Writer:
    """Writes one paper of a job.

    Attributes:
        shop: whose paper it is
        job: the job
        at_hand: the job, worked out
        today: the day of issue
        words: what an order says beside
    """

    shop: Shop
    job: Job
    at_hand: JobAtHand
    today: date
    words: OrderWords

    def write(self, kind: PaperKind, issue: Issue) -> dict[str, Any]:
        """The paper as it is kept."""
        head = PaperHead(
            shop=self.shop.name,
            number=issue.number,
            job_number=str(self.job.number),
            job_name=self.job.name,
            revision=issue.revision,
            issued_on=self.today,
            supersedes=issue.supersedes,
            unit=LengthUnit(self.shop.unit),
        )
        return self._paper(kind, head).model_dump(mode="json")

    def _paper(self, kind: PaperKind, head: PaperHead) -> JobPaper:
        estimate = self.at_hand.estimate
        if kind is PaperKind.CUT_LIST:
            return cut_list_paper(head, ((each.unit, each.takeoff) for each in estimate.units))
        if kind is PaperKind.JOINT_CARDS:
            return joint_cards_paper(head, (each.unit for each in estimate.units))
        words = self.words
        return order_paper(
            head,
            estimate.order,
            estimate.sheets,
            estimate.hardware,
            finishes=estimate.finishes,
            materials=estimate.materials,
            counts={each.unit.spec.code: each.unit.spec.count for each in estimate.units},
            supplier=words.supplier,
            needed_by=words.needed_by,
            delivery=words.delivery,
            surfacing=words.surfacing or order_words()["surfacing"],
            remarks=words.remarks,
        )
