"""What a job really took of each wood: noted once it is cut up; from three jobs on it changes the orders."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.people import Shop, ShopFigures
from casewright.records.sessions import Fenced
from casewright.records.stock import StockPiece, WoodYield
from casewright.records.stock_lists import offcuts_of_all, pieces_of_job, yields
from casewright.shop.figures import save_figures
from casewright.shop.refusals import Refused
from casewright.shop.stock import feet_of, label
from casewright.wood.grades import GradeName
from casewright.wood.species import wood
from casewright.wood.waste import order_feet, waste_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Took:
    """What a job took of one wood and grade.

    Attributes:
        wood: the wood
        grade: the grade
        net: feet of its finished parts [bd ft]
        rough: feet of its parts on rough size [bd ft]
        reckoned: feet that the table of waste would have bought [bd ft]
        cut: feet that were cut up, offcuts that were kept left out [bd ft]
        cost_cents: what those feet cost; None where one of the boards has no cost [cent]
        boards: labels of what was cut up
    """

    wood: str
    grade: GradeName
    net: float
    rough: float
    reckoned: float
    cut: float
    cost_cents: int | None
    boards: tuple[str, ...]

    @property
    def waste(self) -> float:
        """Waste on rough size, as a share of what was cut up; below nothing where boards were not noted."""
        return 1 - self.rough / self.cut if self.cut else 0.0


def job_took(db: Fenced, job: Job, estimate: JobEstimate, figures: Figures) -> tuple[Took, ...]:
    """What a job took, from the boards that were cut up for it and the parts that it has; two queries.

    Args:
        db: the session
        job: the job
        estimate: the job, worked out
        figures: the shop's figures

    Returns:
        One entry for each wood of the job, in the grade in which the shop buys it.
    """
    used = [each for each in pieces_of_job(db, job.id) if not each.is_sheet]
    left = offcuts_of_all(db, [each.id for each in used])
    groups = [group for unit in estimate.units for group in unit.takeoff.groups]
    return tuple(
        _took(name, figures.grade_of(name), [each for each in groups if each.wood == name], used, left)
        for name in dict.fromkeys(group.wood for group in groups)
    )


def _took(
    name: str,
    bought: GradeName,
    groups: Sequence[Any],
    used: Iterable[StockPiece],
    left: Sequence[StockPiece],
) -> Took:
    mine = [each for each in used if each.material == name and each.grade in {"", bought.value}]
    ids = {each.id for each in mine}
    kept = [each for each in left if each.from_id in ids]
    costs = [each.cost_cents for each in mine]
    worth = sum(each.cost_cents or 0 for each in kept)
    return Took(
        wood=name,
        grade=bought,
        net=math.fsum(group.net for group in groups),
        rough=math.fsum(group.rough for group in groups),
        reckoned=math.fsum(
            order_feet(group.rough, waste_for(wood(name), bought, group.use, group.cut)) for group in groups
        ),
        cut=math.fsum(map(feet_of, mine)) - math.fsum(map(feet_of, kept)),
        cost_cents=sum(each or 0 for each in costs) - worth if mine and None not in costs else None,
        boards=tuple(label(each) for each in mine),
    )


def note_yields(
    db: Fenced, shop: Shop, job: Job, took: Sequence[Took], who: str, now: datetime
) -> tuple[Took, ...]:
    """Notes what a job took, and lets the shop's figures learn from it.

    A job that is noted again counts once, as it was noted last. From three jobs of one wood and grade on, the
    waste that orders reckon with is the shop's own; the figures are a new revision, as after any change.

    Args:
        db: the session
        shop: the shop
        job: the job
        took: what it took, as `job_took` gives it
        who: who notes it
        now: the moment

    Returns:
        What was noted: woods of which boards were cut up.

    Raises:
        Refused: nothing was cut up for the job, or less than its parts measure
    """
    noted = tuple(each for each in took if each.cut > 0)
    if not noted:
        raise Refused("No board is noted as cut up for this job. Say at each board that it went into it.")
    for each in noted:
        if each.cut < each.rough:
            raise Refused(
                f"{each.wood.capitalize()}: {each.rough:.1f} bd ft of rough parts cannot come out of "
                f"{each.cut:.1f} bd ft of boards. Say of every board that it was cut up for the job."
            )
        db.add(
            WoodYield(
                id=new_id(),
                job_id=job.id,
                wood=each.wood,
                grade=each.grade.value,
                net_bd_ft=each.net,
                rough_bd_ft=each.rough,
                table_bd_ft=each.reckoned,
                cut_bd_ft=each.cut,
                cost_cents=each.cost_cents,
                at=now,
                who=who,
            )
        )
    db.flush()
    _teach(db, shop, who, now)
    return noted


def _teach(db: Fenced, shop: Shop, who: str, now: datetime) -> None:
    """Puts what all jobs took into the shop's figures. Those of the demo teach nothing."""
    found: dict[tuple[str, str], list[Mapping[str, Any]]] = {}
    for row, job in yields(db):
        if not job.demo:
            entry = {
                "job": job.number,
                "reckoned": round(row.table_bd_ft, 4),
                "cut": round(row.cut_bd_ft, 4),
            }
            found.setdefault((row.wood, row.grade), []).append(entry)
    held = db.get(ShopFigures, (shop.shop_id, shop.figures))
    spec: dict[str, Any] = dict(held.spec) if held else {}
    spec["yields"] = [
        {"wood": name, "grade": bought, "jobs": jobs} for (name, bought), jobs in sorted(found.items())
    ]
    if not spec["yields"]:
        del spec["yields"]
    save_figures(db, shop, spec, shop.figures, who, now)
