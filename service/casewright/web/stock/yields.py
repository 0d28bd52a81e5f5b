"""What jobs really took of each wood, what that teaches, and what a usable foot cost."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import refusal
from casewright.pieces.built.refusals import REFUSALS
from casewright.pricing.usable import cost_per_usable_foot
from casewright.records.jobs import Job
from casewright.records.stock import WoodYield
from casewright.records.stock_lists import (
    JobRow,
    bills,
    jobs_with_cut_wood,
    pieces_of_deliveries,
    suppliers,
    yields,
)
from casewright.shop.figures import figures_from
from casewright.shop.jobs import load_job
from casewright.shop.keeping import once
from casewright.shop.papers import job_at_hand
from casewright.shop.receiving import tallies_of
from casewright.shop.refusals import Refused
from casewright.shop.yields import Took, job_took, note_yields
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Office, Visit
from casewright.web.stock.tabs import OFFICE_TABS
from casewright.wood.arrival import tally_difference
from casewright.wood.yields import LEAST_JOBS, TRUST, JobYield, own_ratio

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class YieldShown:
    """What one job took of one wood."""

    row: WoodYield
    job: Job
    waste: float
    table_waste: float
    usable_cents: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodShown:
    """What all jobs took of one wood and grade, and what that teaches."""

    wood: str
    grade: str
    rows: Sequence[YieldShown]
    lesson: str
    is_learned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplierShown:
    """How a supplier's tallies stand against ours."""

    name: str
    billed: str
    counted: str
    short: float


@dataclass(frozen=True, slots=True, kw_only=True)
class YieldsPage(Page):
    """What jobs took, and what a job took that is to be noted."""

    template: ClassVar[str] = "stock/yields.html"
    woods: Sequence[WoodShown]
    sees_cost: bool
    suppliers: Sequence[SupplierShown]
    jobs: Sequence[JobRow]
    chosen: Job | None
    took: Sequence[Took]
    trouble: str
    form: Form
    least: int
    tabs: tuple[tuple[str, str], ...]


@router.get("/stock/yields")
def show_yields(visit: Office, job: str = "") -> Response:
    """What jobs took; of one that is chosen what its boards say."""
    if not job:
        return show(visit, _page(visit))
    chosen = load_job(visit.db, job[:13])
    try:
        return show(visit, _page(visit, chosen, _took(visit, chosen)))
    except REFUSALS as error:
        return show(visit, _page(visit, chosen, trouble=refusal(error, visit.unit)), 422)


@router.post("/stock/yields")
def save_yield(visit: Office) -> Response:
    """Notes what a job took; from three jobs on the shop's figures follow."""
    chosen = load_job(visit.db, visit.typed.get("job")[:13])
    try:
        took = _took(visit, chosen)
    except REFUSALS as error:
        raise Refused(refusal(error, visit.unit), 422) from None

    def make() -> str:
        note_yields(visit.db, visit.shop, chosen, took, visit.who, visit.now)
        return "/stock/yields"

    try:
        return see(once(visit.db, visit.typed.once, visit.now, make), "saved")
    except Refused as refused:
        return show(visit, _page(visit, chosen, took, trouble=str(refused)), 409)


def _took(visit: Visit, job: Job) -> tuple[Took, ...]:
    at_hand = job_at_hand(visit.db, visit.shop, job, visit.today)
    return job_took(visit.db, job, at_hand.estimate, figures_from(at_hand.figures_text))


def _page(
    visit: Visit, chosen: Job | None = None, took: Sequence[Took] = (), trouble: str = ""
) -> YieldsPage:
    return YieldsPage(
        title="Yields",
        woods=_woods(yields(visit.db)),
        sees_cost=visit.is_owner,
        suppliers=_suppliers(visit),
        jobs=jobs_with_cut_wood(visit.db),
        chosen=chosen,
        took=took,
        trouble=trouble,
        form=form_of(),
        least=LEAST_JOBS,
        tabs=OFFICE_TABS,
    )


def _woods(noted: Sequence[tuple[WoodYield, Job]]) -> list[WoodShown]:
    found: dict[tuple[str, str], list[tuple[WoodYield, Job]]] = {}
    for row, job in noted:
        found.setdefault((row.wood, row.grade), []).append((row, job))
    return [_wood(name, grade, rows) for (name, grade), rows in found.items()]


def _wood(name: str, grade: str, noted: Sequence[tuple[WoodYield, Job]]) -> WoodShown:
    jobs = [
        JobYield(job=job.number, reckoned=row.table_bd_ft, cut=row.cut_bd_ft)
        for row, job in noted
        if not job.demo
    ]
    is_learned = len(jobs) >= LEAST_JOBS
    if is_learned:
        ratio = own_ratio(jobs)
        ratios = " + ".join(f"{each.ratio:.3f}" for each in jobs)
        lesson = (
            f"({TRUST} + {ratios}) / {TRUST + len(jobs)} = {ratio:.3f}: so many feet the table would have "
            "bought for each foot that was cut up. Orders reckon with it: waste = 1 − (1 − the table's) × "
            f"{ratio:.3f}."
        )
    else:
        lesson = f"{len(jobs)} of {LEAST_JOBS} jobs; until then, orders reckon with the table of waste."
    return WoodShown(
        wood=name,
        grade=grade,
        rows=[
            YieldShown(
                row=row,
                job=job,
                waste=1 - row.rough_bd_ft / row.cut_bd_ft,
                table_waste=1 - row.rough_bd_ft / row.table_bd_ft,
                usable_cents=None
                if row.cost_cents is None
                else cost_per_usable_foot(row.cost_cents, row.net_bd_ft),
            )
            for row, job in noted
        ],
        lesson=lesson,
        is_learned=is_learned,
    )


def _suppliers(visit: Visit) -> list[SupplierShown]:
    """Lumber that was billed against the shop's own tally, supplier by supplier."""
    names: Mapping[str, str] = {each.id: each.name for each in suppliers(visit.db, ended=True)}
    held = [each for each in bills(visit.db) if each.bill.get("lines")]
    pieces = pieces_of_deliveries(visit.db, [each.delivery_id for each in held])
    found: dict[str, list[float]] = {}
    for each in held:
        counted = tallies_of([piece for piece in pieces if piece.delivery_id == each.delivery_id])
        for key, tallied in counted.items():
            row = each.bill["lines"].get(key)
            if row:
                sums = found.setdefault(each.supplier_id, [0.0, 0.0])
                sums[0] += row["quantity"]
                sums[1] += tallied.feet
    return [
        SupplierShown(
            name=names.get(supplier, ""),
            billed=f"{billed:g}",
            counted=f"{counted:g}",
            short=tally_difference(billed, counted),
        )
        for supplier, (billed, counted) in found.items()
    ]
