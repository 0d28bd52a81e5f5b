"""Each kind of paper: how it is written from a job."""

from dataclasses import dataclass
from datetime import date

from casewright.measure.lengths import LengthUnit
from casewright.papers.head import PaperHead
from casewright.papers.says import says_of
from casewright.records.jobs import Job
from casewright.records.papers import PaperKind
from casewright.records.people import Shop
from casewright.shop.papers import Issue, JobAtHand, Written
from casewright.web.frame.paper_says import OrderWords, paper_of


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

    def write(self, kind: PaperKind, issue: Issue) -> Written:
        """The paper as it is kept, and what it says in short."""
        head = PaperHead(
            shop=self.shop.name,
            number=issue.number,
            job_number=str(self.job.number),
            job_name=self.job.name,
            revision=issue.revision,
            units=tuple((each.unit.code, each.revision.number) for each in self.at_hand.units),
            issued_on=self.today,
            supersedes=issue.supersedes,
            unit=LengthUnit(self.shop.unit),
        )
        content = paper_of(kind, head, self.at_hand.estimate, self.words).model_dump(mode="json")
        return Written(content=content, says=says_of(kind, content))
