"""The form before a lumber order is issued: to whom, by when, and what will be ordered, in short."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from casewright.papers.writing import several
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.pieces.costs.priced import bought_as
from casewright.records.jobs import Job
from casewright.records.papers import PaperKind
from casewright.records.quotes import papers_of_kind
from casewright.shop.papers import job_at_hand, load_paper
from casewright.web.frame.pages import Page, form_of
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderFormPage(Page):
    """What an order will say, before it is issued."""

    template: ClassVar[str] = "paper_pages/new_order.html"
    job: Job
    form: Form
    lines: Sequence[tuple[str, str]]
    revision: int
    remark: str


def order_form(visit: Visit, job: Job, form: Form | None = None) -> OrderFormPage:
    """The form, with what the last order said; `form` is one that came back with faults.

    Raises:
        CannotBuild …: the job cannot be worked out
    """
    rows = papers_of_kind(visit.db, job.id, PaperKind.LUMBER_ORDER)
    said = load_paper(visit.db, rows[0].id).content if rows else {}
    at_hand = job_at_hand(visit.db, visit.shop, job, visit.today)
    return OrderFormPage(
        title="New lumber order",
        job=job,
        form=form or said_before(said),
        lines=tuple(_lines(at_hand.estimate)),
        revision=rows[0].revision + 1 if rows else 1,
        remark=at_hand.remark,
    )


def said_before(said: Mapping[str, Any]) -> Form:
    """The form to issue an order again, with what it said."""
    plain = {name: str(said.get(name) or "") for name in ("supplier", "needed_by", "delivery")}
    surfacing = next((line["surfacing"] for line in said.get("lumber", ())), "")
    return form_of(**plain, surfacing=surfacing, remarks="\n".join(said.get("remarks", ())))


def _lines(estimate: JobEstimate) -> Iterator[tuple[str, str]]:
    """What will be ordered, each with how much of it."""
    for line in estimate.order:
        yield f"{line.wood} {bought_as(line.bought.name, line.cut)}", f"{line.feet} bd ft"
    for sheet in estimate.sheets:
        yield f"{sheet.sheet.nominal} in {sheet.sheet.kind}", several(sheet.count, "sheet")
    for item in estimate.hardware:
        yield item.item, f"{item.quantity}{f' and {item.spare} spare' if item.spare else ''}"
    yield from ((need.product, several(need.buy, "quart")) for need in estimate.finishes if need.buy)
