"""A job worked out for its page: each unit at a glance, and the price of all of them by today's figures."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from casewright.measure.findings import Finding, Verdict, worst
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import refusal
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.pieces.words.wording import plain_size
from casewright.shop.estimating import estimated_job, worked_unit
from casewright.shop.units import LoadedUnit


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitAtAGlance:
    """One unit of a job.

    Attributes:
        id: its id
        code: its mark
        name: what it is called
        count: how many are made
        revision: the revision that holds
        approved: the revision that was locked; None before
        size: overall, width × depth × height; empty where it cannot be built
        drawers: how many one of them has
        price_cents: its part of the price, for all that are alike; None where there is none
        verdict: the gravest of its checks; None where it cannot be built
        cautions: how many checks say caution
        stops: how many checks say stop
        refusal: why it cannot be built; empty where it can
    """

    id: str
    code: str
    name: str
    count: int
    revision: int
    approved: int | None
    size: str = ""
    drawers: int = 0
    price_cents: int | None = None
    verdict: Verdict | None = None
    cautions: int = 0
    stops: int = 0
    refusal: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class JobFigures:
    """A job, worked out.

    Attributes:
        units: its units
        estimate: all of them priced together; None where there is none, or one cannot be built
        refusal: why it could not be priced; empty where it could, or has no unit
    """

    units: tuple[UnitAtAGlance, ...] = ()
    estimate: JobEstimate | None = None
    refusal: str = ""


def job_figures(loaded: Sequence[LoadedUnit], figures: str, today: date, shown: LengthUnit) -> JobFigures:
    """A job worked out by today's figures; a unit that cannot be built says why and holds nothing else up.

    Args:
        loaded: its units
        figures: the shop's figures for the job, as text
        today: the day from which the promise counts
        shown: the unit of sizes
    """
    if not loaded:
        return JobFigures()
    try:
        found = estimated_job(tuple(each.text for each in loaded), figures, today)
    except REFUSALS as error:
        return JobFigures(
            units=tuple(_alone(each, figures, shown) for each in loaded), refusal=refusal(error, shown)
        )
    return JobFigures(
        units=tuple(
            _glance(each, one.unit, one.findings, shown, price)
            for each, one, price in zip(loaded, found.units, found.unit_prices_cents, strict=True)
        ),
        estimate=found,
    )


def _alone(each: LoadedUnit, figures: str, shown: LengthUnit) -> UnitAtAGlance:
    try:
        built = worked_unit(each.text, figures)
    except REFUSALS as error:
        held = each.unit
        return UnitAtAGlance(
            id=held.id,
            code=held.code,
            name=held.name,
            count=held.count,
            revision=held.revision,
            approved=held.approved,
            refusal=refusal(error, shown),
        )
    return _glance(each, built, built.findings, shown, None)


def _glance(
    each: LoadedUnit,
    built: Construction,
    findings: tuple[Finding, ...],
    shown: LengthUnit,
    price_cents: int | None,
) -> UnitAtAGlance:
    held, verdicts = each.unit, [finding.verdict for finding in findings]
    return UnitAtAGlance(
        id=held.id,
        code=held.code,
        name=held.name,
        count=held.count,
        revision=held.revision,
        approved=held.approved,
        size=overall_size(built, shown),
        drawers=len(built.drawers),
        price_cents=price_cents,
        verdict=worst(findings),
        cautions=verdicts.count(Verdict.CAUTION),
        stops=verdicts.count(Verdict.STOP),
    )


def overall_size(built: Construction, shown: LengthUnit) -> str:
    """Width × depth × height over the top, as a tape shows it."""
    sizes = (built.spec.overall_width, built.spec.overall_depth, built.face.overall_height)
    return f"{' × '.join(plain_size(size, shown) for size in sizes)} {shown.value}"
