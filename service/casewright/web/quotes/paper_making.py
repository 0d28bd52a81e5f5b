"""Each kind of paper: how it is written from a job."""

from dataclasses import dataclass
from datetime import date
from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.papers.cut_list import cut_list_paper
from casewright.papers.head import JobPaper, PaperHead
from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.order import order_paper
from casewright.papers.order_pdf import order_words
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
